"""In: the actions of a row. Out: its words in house style: "k3, *[k2tog] 3 times, yo; rep from * to last 3 sts, k3".

A repeat of the row itself has a star; those inside it, and those worked so many times, have brackets.
"""

from collections.abc import Sequence
from typing import assert_never

from sizewright.read.inserts import Told
from sizewright.read.notation.kinds import Landmark, Manner, Marking, Turning
from sizewright.read.notation.printed_pieces import listed, marker, named, number, place, said, stitches, times
from sizewright.read.notation.short_row_words import DOUBLE_AS_ONE, WITH_WRAP
from sizewright.read.notation.stitches import PASS_OVER
from sizewright.read.notation.tree import (
    Across,
    Action,
    Add,
    Aside,
    AtEdges,
    BindOff,
    Colour,
    Count,
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

_END = Place(Landmark.END)
_SHORT = {Marking.PLACE: "pm", Marking.SLIP: "sm", Marking.REMOVE: "remove m"}
_TURNS = {Turning.PLAIN: "turn", Turning.WRAP: "w&t", Turning.DOUBLE: "German short row"}
_PASSED = {slipped: word for word, slipped in PASS_OVER.items()}
_PARTS = {1: "", 2: ", marking halves", 4: ", marking quarters"}
_INTO = {False: "next st", True: "double yo"}
_WHOLE = {"k": "knit", "p": "purl"}


def printed_actions(actions: Sequence[Action], *, inside: bool = False) -> Told:
    """Actions one after the other; `inside` says that a bracket or a star is around them."""
    if not inside and len(actions) == 1:
        whole = _whole_row(actions[0])
        if whole:
            return (whole,)
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
            return _work(action)
        case Repeat():
            return _bracketed(action) if inside or _in_brackets(action) else _starred(action)
        case IntoOne():
            return said("(", printed_actions(action.actions, inside=True), f") in {_INTO[action.double]}")
        case Mark():
            return (_mark(action),)
        case PassOver():
            return (_PASSED[action.slipped],)
        case BindOff():
            return said("bind off ", stitches(action.count), f" {action.manner}".rstrip())
        case Add():
            gap = "" if not action.where or str(action.where[0]).startswith(",") else " "
            return said(f"{action.how} ", stitches(action.count), gap, action.where, _PARTS[action.parts])
        case Hold():
            which = said("next ", stitches(action.count)) if action.count is not None else ("remaining sts",)
            return said("place ", which, " ", action.where, f" for {action.name}" if action.name else "")
        case Across():
            return _across(action)
        case Drop():
            return said("drop next ", said(number(action.count), " yo") if action.yarn_over else stitches(action.count))
        case Turn():
            return (_TURNS[action.manner],)
        case Aside():
            return action.words
        case Follow():
            return _follow(action)
        case Panel():
            return _panel(action)
        case Colour():
            return (f"with {action.name}",)
        case AtEdges():
            return said(f"{action.stitch.term} ", stitches(action.count), f" at {action.edge}")
        case Evenly():
            return said(f"{action.stitch.term} ", stitches(action.count), " evenly", _to(action.place))
    assert_never(action)


def _to(to: Place | None) -> Told:
    return () if to is None else said(" ", place(to))


def _mark(action: Mark) -> str:
    """ "pm", "pm A", "pm for raglan", "slip raglan marker"."""
    if not action.name:
        return _SHORT[action.what]
    if action.what is not Marking.PLACE:
        return f"{action.what.value} {marker(action.name)}"
    single = len(action.name) == 1 or action.name.isdecimal()
    return f"pm {'' if single else 'for '}{named(action.name)}"


def _across(action: Across) -> Told:
    """ "knit across 40 sleeve sts from holder"."""
    count = () if action.count is None else said(number(action.count), " ")
    which = f"{action.name} sts" if action.name else "sts"
    holder = " from holder" if action.held else ""
    return said(f"{_WHOLE[action.stitch.term]} across ", count, which, holder)


# Stitches


def _work(action: Work) -> Told:
    """ "k3", "k1 tbl", "sl 1 wyif", "k2tog twice", "k2 MC", "k to last 3 sts"."""
    term = action.stitch.term
    if action.manner in (WITH_WRAP, DOUBLE_AS_ONE):
        return (f"{_WHOLE[term]} {action.manner}",)
    behind = f" {action.manner}".rstrip() + f" {action.colour}".rstrip()
    if action.place is not None:
        return said(term, behind, _to(action.place))
    if action.stitch.numbered:
        return said(_numbered(term, action.count), behind)
    if action.count is None or action.count.value == 1:
        return said(term, behind)
    return said(term, behind, " ", times(action.count))


def _numbered(term: str, count: Count | None) -> Told:
    """ "k3", "sl 1", "k1 tbl": "k" and "p" touch their number; with "l" and "c" before it a figure is misread."""
    stem, _, twisted = term.partition(" ")
    gap = "" if stem in _WHOLE else " "
    return said(stem, gap, "1" if count is None else number(count), f" {twisted}".rstrip())


def _follow(action: Follow) -> Told:
    if action.manner is Manner.ANY:
        if action.count is not None:
            return said("work ", stitches(action.count), " in pattern")
        return said("work in pattern", _to(action.place or _END))
    if action.count is not None:
        return said(action.manner.value, " over next ", stitches(action.count))
    return said(action.manner.value, _to(None if action.place in (None, _END) else action.place))


def _panel(action: Panel) -> Told:
    """ "work Row 1 of Old shale over next 10 sts", "work Old shale to m", "work Old shale between markers"."""
    row = said("Rnd " if action.rounds else "Row ", number(action.row), " of ") if action.row is not None else ()
    if action.count is not None:
        far = said(" over next ", stitches(action.count))
    else:
        far = (" between markers",) if action.between else _to(action.place)
    return said("work ", row, action.name, far)


# Repeats


def _in_brackets(action: Repeat) -> bool:
    return action.times is not None and not action.more


def _starred(action: Repeat) -> Told:
    """ "*k2, p2; rep from * to last 2 sts", "*k{n}, pm; rep from * 6 more times"."""
    body = printed_actions(action.actions, inside=True)
    if action.times is not None:
        far = said(" ", times(action.times, more=True))
    else:
        far = () if action.ending and action.place in (None, _END) else _to(action.place or _END)
    return said("*", body, "; rep from *", far, _ending(action))


def _bracketed(action: Repeat) -> Told:
    """ "[k2, p2] 3 times", "[k1, p1] to m", "[k2, p2] once, then 6 more times"."""
    body = printed_actions(action.actions, inside=True)
    if action.times is None:
        far = place(action.place or _END)
    elif action.more:
        far = said("once, then ", times(action.times, more=True))
    else:
        far = times(action.times)
    return said("[", body, "] ", far, _ending(action))


def _ending(action: Repeat) -> Told:
    if not action.ending:
        return ()
    lead = ", ending last rep with " if action.replaces else ", ending with "
    return said(lead, printed_actions(action.ending, inside=True))
