"""What working gives: the ledger of every row in every size, the stitch patterns measured, and what went wrong."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.place import Span
from sizewright.grade.graded import Graded
from sizewright.work.at_row_gauge import Stretch
from sizewright.work.course import Leg
from sizewright.work.faults import Fault, Forgotten
from sizewright.work.yarn_need import YarnNeed


@dataclass(frozen=True, slots=True)
class Entry:
    """One written direction in the ledger, by size: stitches before and after it, and the rows it was worked.

    None where the size does not read it, or where it could not be worked. `declared` where its effect was not proved
    but said by the designer, `to_length` where its rows go on until a length is measured. `used` are by size the
    stitches worked from the first one up to here, by yarn as the rows call it.
    """

    piece: str
    label: str
    span: Span
    before: tuple[int | None, ...]
    after: tuple[int | None, ...]
    rows: tuple[int, ...]
    declared: bool = False
    to_length: bool = False
    used: tuple[tuple[tuple[str, int], ...], ...] = ()


@dataclass(frozen=True, slots=True)
class BlockCount:
    """A count promised in a row of a stitch block that is not found over a `width`."""

    span: Span
    label: str
    promised: int
    found: int
    width: int


@dataclass(frozen=True, slots=True)
class Clash:
    """A row of a stitch block that cannot be worked over what the row `before` leaves ("" for the first row).

    `needs` and `leaves` are the least counts of each; `more` says that the row could be worked over others too.
    """

    span: Span
    label: str
    before: str
    needs: tuple[int, ...]
    leaves: tuple[int, ...]
    more: bool


@dataclass(frozen=True, slots=True)
class StitchPattern:
    """A stitch pattern as its rows really are: the multiple and the stitches beside it, None where nothing fits.

    `repeats` are the stitches of one repeat behind each row, `beside` those beside the repeats; a count may change and
    come back. `worked_over` is the least width all rows can be worked over, and what they leave of it. `understood` is
    False where a row was not read, so that nothing is known of the rest. `panel` are the stitches of a "Panel of 10
    sts", and `widths` the counts over which the rows can be worked again and again.
    """

    name: str
    span: Span
    multiple: int | None
    plus: int
    rows: int
    stated: tuple[int, int] | None
    repeats: tuple[int, ...] = ()
    beside: tuple[int, ...] = ()
    cast_on: int | None = None
    broken: tuple[BlockCount, ...] = ()
    clash: Clash | None = None
    worked_over: tuple[int, int] | None = None
    understood: bool = True
    panel: int | None = None
    widths: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a piece, from cast-on or take-up to its end, by size: the rows worked and their length in cm.

    None where a size does not make it or it could not be worked; a length is None too where there is no row gauge.
    `gauge` is the name of the row gauge it is measured by. By size, `stretches` are the rows that are worked to a
    length, and `headings` those it is worked under, each with the rows before it.
    """

    piece: str
    span: Span
    rows: tuple[int | None, ...]
    lengths: tuple[Fraction | None, ...]
    gauge: str
    stretches: tuple[tuple[Stretch, ...], ...]
    headings: tuple[tuple[tuple[str, int], ...], ...]


@dataclass(frozen=True, slots=True, eq=False)
class Worked:
    """A pattern carried out for every size; it equals only itself.

    `stitches` counts those worked, by yarn as the rows call it and by size, and `uncounted` has the directions of each
    size that could not be counted. `yarns` is what the yarns of the header come to. `forgotten` are stitches still
    live at the end, which a pattern may mean or not. `courses` are the directions of each size in working order.
    """

    graded: Graded
    entries: tuple[Entry, ...]
    stitch_patterns: tuple[StitchPattern, ...]
    stitches: Mapping[str, tuple[int, ...]]
    faults: tuple[Fault, ...]
    uncounted: tuple[tuple[Span, ...], ...]
    yarns: tuple[YarnNeed, ...]
    forgotten: tuple[Forgotten, ...] = ()
    parts: tuple[Part, ...] = ()
    courses: tuple[tuple[Leg, ...], ...] = ()
