"""A row that changes the number of stitches and does not say how many there are then.

**Why it matters.** The count is the only thing that tells a reader that the row came out. Give the new total where
the row is worked once, the stitches gained or lost where it comes again, and the total behind a repeat
(kniterations.wordpress.com, 2017; fiatfiberarts.com, 2019). It is told once for a stretch without counts. A count in
the text below, or behind the next plain row, will do. Rows of lace whose stitches come back need none, nor do rows
that are turned before their end.

**Example.** `Dec Rnd: *K6, k2tog; rep from * to end.`

**Instead.** `Dec Rnd: *K6, k2tog; rep from * to end. (63 (70, 77) sts)`
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.place import Span
from sizewright.proof.actions import actions_in
from sizewright.proof.telling import by_size
from sizewright.proof.wording import INSERT, Wording
from sizewright.read.notation.direction_tree import (
    Apart,
    CastOn,
    Declared,
    Direction,
    Gather,
    Join,
    Meanwhile,
    RepeatRows,
    Row,
    Spaced,
    TakeUp,
)
from sizewright.read.notation.tree import Turn
from sizewright.read.pattern import WorkBlock
from sizewright.read.project import Project
from sizewright.work.made import label_of
from sizewright.work.worked import Entry, Worked

RULE = Rule("missing-count", Level.WARNING, __doc__)

_AHEAD = 12  # directions within which the stitches of a lace pattern must be back
_TOLD = re.compile(
    rf"[\d){INSERT}]\s?(?:sts|stitches)\b|\b(?:two|three|four|five|six|seven|eight|nine|ten) (?:sts|stitches)\b"
)


@dataclass(frozen=True, slots=True)
class _Step:
    """A direction as it was worked: whether it says a count, and whether it changed it."""

    direction: Direction
    entry: Entry | None
    says: bool

    @property
    def changes(self) -> bool:
        """Whether some size has another count behind it, and not simply none any more."""
        return self.entry is not None and any(
            before is not None and after and before != after
            for before, after in zip(self.entry.before, self.entry.after, strict=True)
        )


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding at the first row of each stretch in which counts change unsaid."""
    prose = Wording.of(worked.graded.pattern)
    steps = list(_steps(worked))
    told = False
    back: set[int] = set()  # the rows that bring back what a row before them took or gave
    for at, step in enumerate(steps):
        returns = _back(steps, at) if step.changes and not step.says else None
        if returns is not None:
            back.add(returns)
        elif step.says or at in back:
            told = False
        elif step.changes and not told and not _turned(step.direction) and not _made_good(steps, at, prose):
            told = True
            yield _finding(worked, step)


def _steps(worked: Worked) -> Iterator[_Step]:
    entries: Mapping[tuple[Span, str], Entry] = {(entry.span, entry.label): entry for entry in worked.entries}
    for piece in worked.graded.pattern.body:
        for direction in piece.directions if isinstance(piece, WorkBlock) else ():
            says = _says(direction) or _of_plan(worked, direction.span)
            yield _Step(direction, entries.get((direction.span, label_of(direction))), says)


def _of_plan(worked: Worked, span: Span) -> bool:
    """Whether these are the words of a plan, whose sentences say what they say."""
    lines = worked.graded.pattern.lines
    return lines.text.startswith("{", lines.offset(span.line, span.column))


def _says(direction: Direction) -> bool:
    """Whether a direction says how many stitches there are, or how many more or fewer."""
    match direction:
        case Row(promise=promise) | Join(promise=promise) | Apart(promise=promise) | Meanwhile(promise=promise):
            return promise is not None
        case RepeatRows(promise=promise, extent=extent):
            return promise is not None or extent.left is not None
        case Spaced(promise=promise, spacings=spacings):
            return promise is not None or any(spacing.until for spacing in spacings)
        case CastOn() | Declared():
            return True
        case Gather(count=count) | TakeUp(count=count):
            return count is not None
        case _:
            return False


def _turned(direction: Direction) -> bool:
    """Whether a row is turned before its end: a heel is counted when it is done (common practice, no source)."""
    return any(isinstance(action, Turn) for action in actions_in(direction))


def _made_good(steps: Sequence[_Step], at: int, prose: Wording) -> bool:
    """Whether the count is said soon: in the text, behind a plain row or behind a repeat."""
    behind = steps[at + 1 : at + 1 + _AHEAD]
    first = next((step for step in behind if step.says or step.changes), None)
    if first is not None and first.says and not (first.changes and isinstance(first.direction, Row)):
        return True
    end = first.direction.span if first else None
    start = prose.lines.offset(steps[at].direction.span.end_line, steps[at].direction.span.end_column)
    stop = prose.lines.offset(end.line, end.column) if end else len(prose.prose)
    return bool(_TOLD.search(prose.prose, start, stop))


def _back(steps: Sequence[_Step], at: int) -> int | None:
    """The row behind which the stitches are as many again, before anybody counts them; None where there is none."""
    entry = steps[at].entry
    for place, later in enumerate(steps[at + 1 : at + 1 + _AHEAD], start=at + 1):
        if later.says or later.entry is None:
            return None
        if entry is not None and later.changes and later.entry.after == entry.before:
            return place
    return None


def _finding(worked: Worked, step: _Step) -> Finding:
    assert step.entry is not None  # noqa: S101 -- only a step in the ledger changes anything
    sizes = worked.graded.sizes or ("",)
    counts = list(zip(sizes, step.entry.before, step.entry.after, strict=True))
    changed = [(size, before, after) for size, before, after in counts if after and before not in (None, after)]
    told = by_size((size, f"{before} sts become {after}") for size, before, after in changed)
    total = _total([after for _, _, after in counts])
    message = f"{step.entry.label} changes the count and does not say so: {told}."
    return RULE.at(
        step.direction.span, message, f"Add “({total})” behind it.", [size for size, _, _ in changed if size]
    )


def _total(counts: Sequence[int | None]) -> str:
    first, *rest = ("–" if count is None else str(count) for count in counts)
    return f"{first} sts" if {*rest} <= {first} else f"{first} ({', '.join(rest)}) sts"
