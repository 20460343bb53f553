"""In: the words of a cable. Out: which stitches cross in front of which, and the stitch as one that can be worked.

The abbreviations as the trade uses them (common practice, from memory, no published source at hand): in "2/1 LPC" the
first number is the strand in front, which is knit, the last the one behind; L crosses to the left (held in front), R to
the right (held behind); P purls what lies behind, or, in "2/1/2 RPC", the stitch between. "C4F" crosses halves.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import groupby
from types import MappingProxyType

from sizewright.base.language import later
from sizewright.read.inserts import Told
from sizewright.read.notation.phrasing import phrase
from sizewright.read.notation.stitches import Stitch

_SLASHED = re.compile(r"([1-9]\d{0,2})/(?:([1-9]\d{0,2})/)?([1-9]\d{0,2}) ?([lr])(p?)c")
_LETTERED = re.compile(r"([ct])([1-9]\d{0,2})([fbrl])")
_HELD = re.compile(r"sl (?P<held>\d+) to cn(?:, hold in (?P<where>front|back))?, (?P<worked>.+) from cn")
_GROUP = re.compile(r"([kp])(\d+)")
_TWISTS = {"rt": "1/1 RC", "lt": "1/1 LC"}


@dataclass(frozen=True, slots=True)
class Crossing:
    """Stitches that change places: those in front travel to one side, those behind to the other.

    `front`, `middle` and `back` have one letter a stitch, "k" or "p", in the order they are worked on the right side.
    """

    to_left: bool
    front: str
    back: str
    middle: str = ""

    @property
    def over(self) -> int:
        """The stitches it takes, and leaves."""
        return len(self.front) + len(self.middle) + len(self.back)

    @property
    def worked(self) -> str:
        """One letter a stitch in the order they are worked, from the right as the right side shows them."""
        return "".join(self.groups)

    @property
    def groups(self) -> tuple[str, str, str]:
        """The groups in the order they are worked: those held in front are worked last."""
        ends = (self.back, self.front) if self.to_left else (self.front, self.back)
        return ends[0], self.middle, ends[1]


@dataclass(frozen=True, slots=True)
class Spelled:
    """A cable spelled out: "sl 3 to cn, hold in front, k3, k3 from cn".

    `where` is "front", "back" or "" where it is not said; `before` and `held` have one letter a stitch, as they are
    worked first and from the cable needle.
    """

    where: str
    before: str
    held: str

    @property
    def groups(self) -> tuple[tuple[str, int], ...]:
        """How they are worked, "k" or "p", and how many in a row."""
        return tuple((kind, len(tuple(same))) for part in (self.before, self.held) for kind, same in groupby(part))


# How front, middle and back are worked: whether the word has a P, and whether it has a middle.
_WAYS: Mapping[tuple[bool, bool], tuple[str, str, str]] = MappingProxyType(
    {
        (False, False): ("k", "k", "k"),
        (False, True): ("k", "k", "k"),
        (True, False): ("k", "k", "p"),
        (True, True): ("k", "p", "k"),
    }
)


def crossing_of(term: str) -> Crossing | None:
    """The crossing a stitch's term stands for; None where it is no cable, or does not say what lies in front."""
    word = " ".join(term.casefold().split())
    word = _TWISTS.get(word, word).casefold()
    slashed = _SLASHED.fullmatch(word)
    if slashed is not None:
        front, middle, back, side, purled = slashed.groups()
        ways = _WAYS[bool(purled), middle is not None]
        counts = (int(front), int(middle or 0), int(back))
        groups = tuple(way * count for way, count in zip(ways, counts, strict=True))
        return Crossing(side == "l", groups[0], groups[2], groups[1])
    return _lettered(word) or _spelled_crossing(word)


def _lettered(word: str) -> Crossing | None:
    """ "C6B", "T4F" and "T3B"; where an odd number is halved no rule tells, but "T3" is always a 2 over a 1."""
    found = _LETTERED.fullmatch(word)
    if found is None:
        return None
    way, over, side = found[1], int(found[2]), found[3]
    if over % 2 and (way, over) != ("t", 3):
        return None
    return Crossing(side in "fl", "k" * (over - over // 2), ("p" if way == "t" else "k") * (over // 2))


def _spelled_crossing(word: str) -> Crossing | None:
    spelled = spelled_of(word)
    if spelled is None or not spelled.where:
        return None
    in_front = spelled.where == "front"
    return Crossing(in_front, *((spelled.held, spelled.before) if in_front else (spelled.before, spelled.held)))


def crossing_words(crossing: Crossing) -> str:
    """How a crossing is worked on the right side: "slip 3 to a cable needle, hold in front, k3, then k3 from it"."""
    first, middle, last = map(_counted, crossing.groups)
    held = str(len(crossing.groups[2]))
    if not middle:
        return _text(phrase(_TWO[crossing.to_left], n=held, first=first, last=last))
    second = str(len(crossing.middle))
    return _text(phrase(_THREE[crossing.to_left], n=held, second=second, first=first, middle=middle, last=last))


_TWO = {
    True: later("slip {n} to a cable needle, hold in front, {first}, then {last} from it"),
    False: later("slip {n} to a cable needle, hold behind, {first}, then {last} from it"),
}
_THREE = {
    True: later(
        "slip {n} to a cable needle, hold in front, slip {second} to a second one, hold behind, {first}, "
        "then {middle} from the second and {last} from the first"
    ),
    False: later(
        "slip {n} to a cable needle, hold behind, slip {second} to a second one, hold behind, {first}, "
        "then {middle} from the second and {last} from the first"
    ),
}
_WORKED = {"k": later("k{n}"), "p": later("p{n}")}


def _counted(way: str) -> str:
    groups = ((kind, str(len(tuple(same)))) for kind, same in groupby(way))
    return ", ".join(_text(phrase(_WORKED[kind], n=count)) for kind, count in groups)


def _text(told: Told) -> str:
    return "".join(map(str, told))


def abbreviation(crossing: Crossing) -> str | None:
    """The short word for a crossing, "2/1 LPC"; None where the trade has none."""
    counts = [str(len(group)) for group in (crossing.front, crossing.middle, crossing.back) if group]
    for purled in ("", "P"):
        word = f"{'/'.join(counts)} {'L' if crossing.to_left else 'R'}{purled}C"
        if crossing_of(word) == crossing:
            return word
    return None


def spelled_cable(spelled: Spelled) -> Stitch:
    """The stitch of a cable spelled out, under its short word where there is one."""
    crossing = None
    if spelled.where:
        in_front = spelled.where == "front"
        ends = (spelled.held, spelled.before) if in_front else (spelled.before, spelled.held)
        crossing = Crossing(in_front, *ends)
    short = abbreviation(crossing) if crossing is not None else None
    return _stitch(short or _words(spelled), spelled.before + spelled.held)


def _words(spelled: Spelled) -> str:
    """The cable spelled out in house style."""
    worked = ", ".join(f"{kind}{count}" for kind, count in spelled.groups)
    where = f", hold in {spelled.where}" if spelled.where else ""
    return f"sl {len(spelled.held)} to cn{where}, {worked} from cn"


def spelled_of(term: str) -> Spelled | None:
    """What such words say; None where a stitch's term is none of them."""
    found = _HELD.fullmatch(term)
    if found is None:
        return None
    worked = "".join(kind * int(count) for kind, count in _GROUP.findall(found["worked"]))
    held = int(found["held"])
    return Spelled(found["where"] or "", worked[:-held], worked[-held:])


def named_cable(word: str) -> Stitch | None:
    """The stitch of a cable's short word such as "C6B", "2/1/2 RPC"; None where the word is no cable."""
    folded = " ".join(word.casefold().split())
    lettered, slashed = _LETTERED.fullmatch(folded), _SLASHED.fullmatch(folded)
    if lettered is None and slashed is None:
        return None
    crossing = crossing_of(folded)
    if crossing is not None:
        return _stitch(_short(folded, slashed), crossing.worked)
    return _stitch(folded.upper(), "k" * int(lettered[2])) if lettered is not None else None


def _short(word: str, slashed: re.Match[str] | None) -> str:
    return word.upper() if slashed is None else f"{word[: slashed.start(4)].strip()} {word[slashed.start(4) :]}".upper()


def _stitch(term: str, worked: str) -> Stitch:
    """A cable: its stitches change places, none is lost; a knit one looks "c", a purled one "p"."""
    return Stitch(term, len(worked), worked.replace("k", "c"), (term,))
