"""In: the actions of a row. Out: its words in house style: "k3, *[k2tog] 3 times, yo; rep from * to last 3 sts, k3".

A repeat of the row itself has a star; those inside it, and those worked so many times, have brackets.
"""

from collections.abc import Sequence
from typing import assert_never

from sizewright.base.language import ENGLISH, later, named, spoken
from sizewright.read.inserts import Told
from sizewright.read.notation.fabric_names import rib_of, usual_fabric
from sizewright.read.notation.kinds import Landmark, Manner, Turning
from sizewright.read.notation.phrasing import NotTold, phrase
from sizewright.read.notation.printed_changes import (
    printed_across,
    printed_add,
    printed_bind_off,
    printed_drop,
    printed_hold,
    printed_mark,
    printed_shape,
)
from sizewright.read.notation.printed_pieces import listed, number, place, stitches, times
from sizewright.read.notation.printed_stitches import printed_work
from sizewright.read.notation.tree import (
    Across,
    Action,
    Add,
    Aside,
    AtEdges,
    BindOff,
    Colour,
    Drop,
    Evenly,
    Follow,
    Hold,
    IntoOne,
    Mark,
    Panel,
    PassOver,
    Place,
    Repeat,
    Turn,
    Work,
)
from sizewright.read.notation.usual_names import fabric_name, yarn_name
from sizewright.read.notation.usual_phrases import usual

_END = Place(Landmark.END)
_TURNS = {
    Turning.PLAIN: later("turn"),
    Turning.WRAP: later("w&t"),
    Turning.DOUBLE: later("German short row"),
}
_PASSED = {1: later("psso"), 2: later("p2sso")}
_INTO = {False: later("({actions}) in next st"), True: later("({actions}) in double yo")}
_WHOLE = {"k": later("knit"), "p": later("purl")}
_MANNERS = {
    Manner.AS_THEY_APPEAR: later("knit the knits and purl the purls"),
    Manner.OPPOSITE: later("purl the knits and knit the purls"),
}


def printed_actions(actions: Sequence[Action], *, inside: bool = False) -> Told:
    """Actions one after the other; `inside` says that a bracket or a star is around them."""
    if not inside and len(actions) == 1:
        whole = _whole_row(actions[0])
        if whole:
            return phrase(whole)
    return listed(printed_action(action, inside=inside) for action in actions)


def _whole_row(action: Action) -> str:
    """ "knit" and "purl" for a row of nothing else."""
    match action:
        case Work(count=None, place=to, colour="", manner="") if to == _END:
            return _WHOLE.get(action.stitch.term, "")
    return ""


def printed_action(action: Action, *, inside: bool = False) -> Told:  # noqa: C901, PLR0911, PLR0912 -- one a kind
    """One action."""
    match action:
        case Work():
            return printed_work(action)
        case Repeat():
            return _bracketed(action) if inside or _in_brackets(action) else _starred(action)
        case IntoOne():
            body = printed_actions(action.actions, inside=True)
            return phrase(_INTO[action.double], actions=body)
        case Mark():
            return printed_mark(action)
        case PassOver():
            return phrase(_PASSED[action.slipped])
        case BindOff():
            return printed_bind_off(action)
        case Add():
            return printed_add(action)
        case Hold():
            return printed_hold(action)
        case Across():
            return printed_across(action)
        case Drop():
            return printed_drop(action)
        case Turn():
            return phrase(_TURNS[action.manner])
        case Aside():
            return usual(action.words)
        case Follow():
            return _follow(action)
        case Panel():
            return _panel(action)
        case Colour():
            return phrase("with {name}", name=colour_name(action))
        case AtEdges() | Evenly():
            return printed_shape(action)
    assert_never(action)


def colour_name(action: Colour) -> str:
    """A yarn by its name; words of a label that are no yarn are told in the language of their source alone."""
    if not action.yarn and spoken().code != ENGLISH:
        raise NotTold(action.name)
    return yarn_name(action.name)


# Stitches that are told by those below them


def _follow(action: Follow) -> Told:
    if action.manner is Manner.ANY:
        if action.count is not None:
            return phrase("work {stitches} in pattern", stitches=stitches(action.count))
        return phrase("work in pattern {place}", place=place(action.place or _END))
    worked = phrase(_MANNERS[action.manner])
    if action.count is not None:
        return phrase("{worked} over next {stitches}", worked=worked, stitches=stitches(action.count))
    if action.place in (None, _END):
        return worked
    return phrase("{worked} {place}", worked=worked, place=place(action.place))


def _panel(action: Panel) -> Told:
    """ "work Row 1 of Old shale over next 10 sts", "work Old shale to m", "work Old shale between markers"."""
    usual = action.name not in spoken().names and (usual_fabric(action.name) or rib_of(action.name))
    panel = fabric_name(action.name) if usual else (named(action.name),)
    if action.row is not None:
        row = number(action.row)
        panel = (
            phrase("Rnd {row} of {name}", row=row, name=panel)
            if action.rounds
            else phrase("Row {row} of {name}", row=row, name=panel)
        )
    if action.count is not None:
        return phrase("work {panel} over next {stitches}", panel=panel, stitches=stitches(action.count))
    if action.between:
        return phrase("work {panel} between markers", panel=panel)
    return phrase("work {panel} {place}", panel=panel, place=place(action.place or _END))


# Repeats


def _in_brackets(action: Repeat) -> bool:
    return action.times is not None and not action.more


def _starred(action: Repeat) -> Told:
    """ "*k2, p2; rep from * to last 2 sts", "*k{n}, pm; rep from * 6 more times"."""
    body = printed_actions(action.actions, inside=True)
    if action.times is not None:
        far = phrase("*{actions}; rep from * {times}", actions=body, times=times(action.times, more=True))
    elif action.ending and action.place in (None, _END):
        far = phrase("*{actions}; rep from *", actions=body)
    else:
        far = phrase("*{actions}; rep from * {place}", actions=body, place=place(action.place or _END))
    return _ended(far, action)


def _bracketed(action: Repeat) -> Told:
    """ "[k2, p2] 3 times", "[k1, p1] to m", "[k2, p2] once, then 6 more times"."""
    body = printed_actions(action.actions, inside=True)
    if action.times is None:
        far = phrase("[{actions}] {place}", actions=body, place=place(action.place or _END))
    elif action.more:
        far = phrase("[{actions}] once, then {times}", actions=body, times=times(action.times, more=True))
    else:
        far = phrase("[{actions}] {times}", actions=body, times=times(action.times))
    return _ended(far, action)


def _ended(repeat: Told, action: Repeat) -> Told:
    if not action.ending:
        return repeat
    ending = printed_actions(action.ending, inside=True)
    if action.replaces:
        return phrase("{repeat}, ending last rep with {ending}", repeat=repeat, ending=ending)
    return phrase("{repeat}, ending with {ending}", repeat=repeat, ending=ending)
