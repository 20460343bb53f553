"""In: an action that is no plain stitch. Out: its words: "pm for raglan", "cast on 4 sts", "drop next 2 sts"."""

from sizewright.base.language import later, later_as
from sizewright.read.inserts import Told
from sizewright.read.notation.kinds import Adding, Marking
from sizewright.read.notation.phrasing import phrase, phrase_as
from sizewright.read.notation.place_parser import BOR
from sizewright.read.notation.printed_pieces import marker, number, place, single, stitches
from sizewright.read.notation.tree import Across, Add, AtEdges, BindOff, Drop, Evenly, Hold, Mark
from sizewright.read.notation.usual_names import binding_name, edge_name, marker_name, part_name
from sizewright.read.notation.usual_phrases import usual

_ACROSS = {"k": later("knit across {stitches}"), "p": later("purl across {stitches}")}
_MARKS = {
    Marking.PLACE: later("pm"),
    Marking.SLIP: later("sm"),
    Marking.REMOVE: later("remove m"),
    Marking.CLEAR: later("removing markers"),
}
_NAMED_MARKS = {
    Marking.PLACE: later("pm for {name}"),
    Marking.SLIP: later("slip {marker}"),
    Marking.REMOVE: later("remove {marker}"),
}
_ADDED = {
    Adding.CAST_ON: later("cast on {stitches}"),
    Adding.PICK_UP_KNIT: later("pick up and knit {stitches}"),
    Adding.PICK_UP_PURL: later("pick up and purl {stitches}"),
}
_PARTS = {2: later("{stitches}, marking halves"), 4: later("{stitches}, marking quarters")}
_EDGES = {"inc": later("inc {stitches} at {edge}"), "dec": later("dec {stitches} at {edge}")}
# Where it is done more than once, in several rows or at both ends, German says "so many each time".
_EDGES_EACH = {
    "inc": later_as("done more than once", "inc {stitches} at {edge}"),
    "dec": later_as("done more than once", "dec {stitches} at {edge}"),
}
_EVENLY = {"inc": later("inc {stitches} evenly"), "dec": later("dec {stitches} evenly")}
_PLAIN = {"k": later("knit, {shaping}"), "p": later("purl, {shaping}")}
_EVENLY_TO = {"inc": later("inc {stitches} evenly {place}"), "dec": later("dec {stitches} evenly {place}")}


def printed_mark(action: Mark) -> Told:
    """ "pm", "pm A", "pm for raglan", "slip raglan marker"."""
    if not action.name or action.what is Marking.CLEAR:
        return phrase(_MARKS[action.what])
    if action.what is not Marking.PLACE:
        return phrase(_NAMED_MARKS[action.what], marker=marker(action.name))
    if action.name == BOR:
        return phrase("pm for BOR")
    if single(action.name):
        return phrase("pm {name}", name=action.name.upper())
    return phrase(_NAMED_MARKS[action.what], name=marker_name(action.name))


# Stitches that come and go


def printed_bind_off(action: BindOff) -> Told:
    """ "bind off 5 sts loosely"."""
    bound = stitches(action.count)
    if not action.manner:
        return phrase("bind off {stitches}", stitches=bound)
    return phrase("bind off {stitches} {manner}", stitches=bound, manner=binding_name(action.manner))


def printed_drop(action: Drop) -> Told:
    """ "drop next 2 sts", "drop next 1 yo"."""
    if action.yarn_over:
        return phrase("drop next {n} yo", n=number(action.count))
    return phrase("drop next {stitches}", stitches=stitches(action.count))


def printed_shape(action: AtEdges | Evenly, *, several: bool = False) -> Told:
    """ "inc 1 st at each end", "dec 8 sts evenly to m"; `several` where it is done in more than one row."""
    kind, shaped = action.stitch.term, stitches(action.count)
    if isinstance(action, AtEdges):
        edge = edge_name(action.edge)
        if several or action.edge == "each end":
            return phrase_as("done more than once", _EDGES_EACH[kind], stitches=shaped, edge=edge)
        return phrase(_EDGES[kind], stitches=shaped, edge=edge)
    if action.place is None:
        evenly = phrase(_EVENLY[kind], stitches=shaped)
    else:
        evenly = phrase(_EVENLY_TO[kind], stitches=shaped, place=place(action.place))
    return phrase(_PLAIN[action.plain.term], shaping=evenly) if action.plain is not None else evenly


def printed_add(action: Add) -> Told:
    """ "cast on 4 sts", "pick up and knit 3 sts across the gap, marking halves"."""
    added = phrase(_ADDED[action.how], stitches=stitches(action.count))
    if action.where:
        where = usual(action.where)
        aside = str(action.where[0]).startswith(",")
        added = (
            phrase("{stitches}{aside}", stitches=added, aside=where)
            if aside
            else phrase("{stitches} {where}", stitches=added, where=where)
        )
    return phrase(_PARTS[action.parts], stitches=added) if action.parts != 1 else added


def printed_hold(action: Hold) -> Told:
    """ "place next 40 sts on hold for left sleeve", "place these 40 sts on hold", "place remaining sts on hold"."""
    where = usual(action.where)
    if action.worked and action.count is None:
        held = phrase("place these sts {where}", where=where)
    elif action.worked and action.count is not None:
        held = phrase("place these {stitches} {where}", stitches=stitches(action.count), where=where)
    elif action.count is None:
        held = phrase("place remaining sts {where}", where=where)
    else:
        held = phrase("place next {stitches} {where}", stitches=stitches(action.count), where=where)
    return phrase("{held} for {part}", held=held, part=part_name(action.name)) if action.name else held


def printed_across(action: Across) -> Told:
    """ "knit across 40 sleeve sts from holder"."""
    if action.name:
        part = part_name(action.name)
        which = (
            phrase("{part} sts", part=part)
            if action.count is None
            else phrase("{n} {part} sts", n=number(action.count), part=part)
        )
    else:
        which = phrase("sts") if action.count is None else phrase("{n} sts", n=number(action.count))
    held = phrase("{stitches} from holder", stitches=which) if action.held else which
    return phrase(_ACROSS[action.stitch.term], stitches=held)
