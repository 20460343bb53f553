"""In: a stitch worked. Out: its words in house style: "k3", "sl 1 wyif", "k2tog twice", "k to last 3 sts"."""

from sizewright.base.language import later, later_as, named, tr_as
from sizewright.read.inserts import LinePiece, Told
from sizewright.read.notation.cables import Spelled, spelled_of
from sizewright.read.notation.phrasing import phrase
from sizewright.read.notation.printed_pieces import listed, number, place, times
from sizewright.read.notation.short_row_words import DOUBLE_AS_ONE, WITH_WRAP
from sizewright.read.notation.stitches import Stitch
from sizewright.read.notation.tree import Count, Work
from sizewright.read.notation.usual_names import manner_name, yarn_name

# With a number: "k" and "p" touch it; with "l" and "c" before it a figure is misread.
_COUNTED = {
    "k": later("k{n}"),
    "p": later("p{n}"),
    "k tbl": later("k{n} tbl"),
    "p tbl": later("p{n} tbl"),
    "sl": later("sl {n}"),
    "inc": later("inc {n}"),
    "dec": later("dec {n}"),
}
_RESOLVED = {
    ("k", WITH_WRAP): later("knit wrapped st together with its wrap"),
    ("p", WITH_WRAP): later("purl wrapped st together with its wrap"),
    ("k", DOUBLE_AS_ONE): later("knit double st as one"),
    ("p", DOUBLE_AS_ONE): later("purl double st as one"),
}
_NAMES = frozenset(
    (
        later_as("stitch", "k"),
        later_as("stitch", "p"),
        later_as("stitch", "k tbl"),
        later_as("stitch", "p tbl"),
        later_as("stitch", "sl"),
        later_as("stitch", "inc"),
        later_as("stitch", "dec"),
        later_as("stitch", "yo"),
        later_as("stitch", "k2tog"),
        later_as("stitch", "k2tog tbl"),
        later_as("stitch", "p2tog"),
        later_as("stitch", "p2tog tbl"),
        later_as("stitch", "k3tog"),
        later_as("stitch", "k3tog tbl"),
        later_as("stitch", "p3tog"),
        later_as("stitch", "k4tog"),
        later_as("stitch", "p4tog"),
        later_as("stitch", "k5tog"),
        later_as("stitch", "p5tog"),
        later_as("stitch", "ssk"),
        later_as("stitch", "ssp"),
        later_as("stitch", "sssk"),
        later_as("stitch", "sssp"),
        later_as("stitch", "skp"),
        later_as("stitch", "sk2p"),
        later_as("stitch", "s2kp"),
        later_as("stitch", "m1"),
        later_as("stitch", "m1l"),
        later_as("stitch", "m1r"),
        later_as("stitch", "m1p"),
        later_as("stitch", "m1lp"),
        later_as("stitch", "m1rp"),
        later_as("stitch", "kfb"),
        later_as("stitch", "pfb"),
        later_as("stitch", "kfbf"),
        later_as("stitch", "RT"),
        later_as("stitch", "LT"),
        later_as("stitch", "make double st"),
        later_as("stitch", "mb"),
    )
)
_HELD = {
    "front": later("sl {n} to cn, hold in front, {worked} from cn"),
    "back": later("sl {n} to cn, hold in back, {worked} from cn"),
    "": later("sl {n} to cn, {worked} from cn"),
}


def printed_work(action: Work) -> Told:
    """ "k3", "k1 tbl", "sl 1 wyif", "k2tog twice", "k2 MC", "k to last 3 sts"."""
    resolved = _RESOLVED.get((action.stitch.term, action.manner))
    if resolved is not None:
        return phrase(resolved)
    if action.place is not None:
        return phrase(
            "{stitch} {place}", stitch=_with_manner(stitch_name(action.stitch), action), place=place(action.place)
        )
    if action.stitch.numbered:
        return _with_manner(phrase(_COUNTED[action.stitch.term], n=_one_or(action.count)), action)
    worked = _with_manner(stitch_name(action.stitch), action)
    if action.count is None or action.count.value == 1:
        return worked
    return phrase("{stitch} {times}", stitch=worked, times=times(action.count))


def stitch_name(stitch: Stitch) -> Told:
    """A stitch by its name: "k2tog"; a cable and one of a studio's own go by theirs."""
    return term_name(stitch.term)


def term_name(term: str) -> Told:
    """The same of a stitch by its term alone."""
    if term in _NAMES:
        return (tr_as("stitch", term),)
    spelled = spelled_of(term)
    return _spelled(spelled) if spelled is not None else (named(term),)


def _spelled(spelled: Spelled) -> Told:
    """A cable that has no short name: "sl 3 to cn, hold in front, k3, k3 from cn"."""
    worked = (phrase(_COUNTED[kind], n=str(count)) for kind, count in spelled.groups)
    return phrase(_HELD[spelled.where], n=str(len(spelled.held)), worked=listed(worked))


def _one_or(count: Count | None) -> LinePiece:
    return "1" if count is None else number(count)


def _with_manner(stitch: Told, action: Work) -> Told:
    """The stitch with how it is worked and in which yarn."""
    if action.manner:
        stitch = phrase("{stitch} {manner}", stitch=stitch, manner=manner_name(action.manner))
    return phrase("{stitch} {colour}", stitch=stitch, colour=yarn_name(action.colour)) if action.colour else stitch
