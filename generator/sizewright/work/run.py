"""In: a graded pattern. Out: it carried out, row by row, for every size."""

from collections import Counter
from collections.abc import Sequence

from sizewright.base.place import Span
from sizewright.grade.graded import Graded
from sizewright.read.pattern import StitchBlock
from sizewright.work.blocks import stitch_blocks
from sizewright.work.chart_check import disagreements
from sizewright.work.made import Made, MadePart, Step
from sizewright.work.maker import Maker
from sizewright.work.stitch_patterns import measured
from sizewright.work.worked import Entry, Part, Worked
from sizewright.work.yarn_need import yarn_needs


def work(graded: Graded) -> Worked:
    """The pattern worked in every size, and its stitch patterns measured."""
    blocks = stitch_blocks(graded)
    made = [Maker(graded, size, blocks).make() for size in range(len(graded.sizes) or 1)]
    patterns = tuple(measured(block, graded) for block in graded.pattern.body if isinstance(block, StitchBlock))
    colours = sorted({colour for one in made for colour in one.worked})
    stitches = {colour: tuple(one.worked[colour] for one in made) for colour in colours}
    faults = tuple(fault for one in made for fault in one.faults)
    forgotten = tuple(one for part in made for one in part.forgotten)
    uncounted = tuple(tuple(one.uncounted) for one in made)
    yarns = yarn_needs(graded.pattern.header, stitches, tuple(map(bool, uncounted)))
    return Worked(
        graded,
        _ledger(made),
        patterns,
        stitches,
        (*faults, *disagreements(graded, patterns)),
        uncounted,
        yarns,
        forgotten,
        _parts(made),
        tuple(tuple(one.course) for one in made),
    )


def _parts(made: Sequence[Made]) -> tuple[Part, ...]:
    """The parts of all sizes side by side, in the order they are begun."""
    keyed: dict[tuple[Span, int], dict[int, MadePart]] = {}
    for size, one in enumerate(made):
        alike = Counter[Span]()
        for part in one.parts:
            keyed.setdefault((part.span, alike[part.span]), {})[size] = part
            alike[part.span] += 1
    return tuple(_part(parts, len(made)) for _, parts in sorted(keyed.items()))


def _part(parts: dict[int, MadePart], count: int) -> Part:
    first = next(iter(parts.values()))
    by_size = [parts.get(size) for size in range(count)]
    rows = tuple(part.rows if part else None for part in by_size)
    lengths = tuple(part.length if part else None for part in by_size)
    stretches = tuple(part.stretches if part else () for part in by_size)
    headings = tuple(part.headings if part else () for part in by_size)
    return Part(first.piece, first.span, rows, lengths, first.gauge, stretches, headings)


def _ledger(made: Sequence[Made]) -> tuple[Entry, ...]:
    """The steps of all sizes side by side, in reading order.

    The sentences of a plan stand at one place, and some of them are alike: the second of a size goes with the second of
    the others.
    """
    keyed: dict[tuple[Span, str, int], dict[int, Step]] = {}
    for size, one in enumerate(made):
        alike = Counter[tuple[Span, str]]()
        for step in one.steps:
            key = (step.span, step.label)
            keyed.setdefault((*key, alike[key]), {})[size] = step
            alike[key] += 1
    return tuple(_entry(steps, len(made)) for _, steps in sorted(keyed.items(), key=lambda item: item[0][0]))


def _entry(steps: dict[int, Step], count: int) -> Entry:
    first = next(iter(steps.values()))
    by_size = [steps.get(size) for size in range(count)]
    return Entry(
        first.piece,
        first.label,
        first.span,
        tuple(step.before if step else None for step in by_size),
        tuple(step.after if step else None for step in by_size),
        tuple(step.rows if step else 0 for step in by_size),
        first.declared,
        any(step.to_length for step in steps.values()),
        tuple(step.used if step else () for step in by_size),
    )
