"""In: generated pieces. Out: what carrying out rows costs, printed: rows a second, ten times wider, a whole pullover.

Not a test. Ratios are of two timings taken in turn in the same run; times are those of the processor, so that a busy
machine changes little.
"""

import sys
from collections.abc import Callable
from pathlib import Path
from time import process_time

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.bench.pullover import SIZES, pullover

from sizewright.grade.run import grade
from sizewright.proof.run import proof
from sizewright.read.folder import read_text
from sizewright.read.pattern import StitchBlock
from sizewright.work.run import work
from sizewright.work.stitch_patterns import measured

# Four rounds, written out again and again, so that each is worked.
WIDE = """---
title: A
---
```work
Cast on {} sts. Place marker and join to work in the round.
"""
ROUNDS = """Rnd 1: K1, *k2tog, yo, k2, sl 1, k1, psso, yo; rep from * to last 5 sts, p5.
Rnd 2: *K3, p3; rep from * to end.
Rnd 3: K1, m1l, *ssk, yo, [k1, p1] twice; rep from * to last 5 sts, k2tog, k3.
Rnd 4: *With A, k3, with B, k3; rep from * to end.
"""
TIMES = 100


def best_of_both(one: Callable[[], object], other: Callable[[], object], times: int = 9) -> tuple[float, float]:
    """The shortest run of each, in seconds of the processor, taken in turn."""
    found = [float("inf"), float("inf")]
    for _ in range(times):
        for place, action in enumerate((one, other)):
            start = process_time()
            action()
            found[place] = min(found[place], process_time() - start)
    return found[0], found[1]


def wider() -> None:
    """A piece of 240 stitches against one of 2400."""
    rounds = ROUNDS * TIMES + "```\n"
    narrow, wide = (grade(read_text(WIDE.format(count) + rounds, "a.md").patterns[0]) for count in (240, 2400))
    (last, *_), (wide_last, *_) = (reversed(work(graded).entries) for graded in (narrow, wide))
    assert last.after == (240,), last
    assert wide_last.after == (2400,), wide_last
    one, other = best_of_both(lambda: work(narrow), lambda: work(wide))
    say(f"{4 * TIMES} rows of 240 sts: {4 * TIMES / one:,.0f} rows a second")
    say(f"ten times wider: {other / one:.2f} times the cost (goal 1.2)")


def whole_pullover() -> None:
    """A pullover in twelve sizes: reading, working and proofing, against its arithmetic alone."""
    source = pullover()
    project = read_text(source, "a.md")
    (pattern,) = project.patterns
    proofed = proof(pattern, project)
    errors = [finding for finding in proofed.findings if finding.level == "error"]
    assert not errors, errors  # that shaping goes on past a length is told, and costs as much
    graded = grade(pattern)
    rows = sum(sum(entry.rows) for entry in work(graded).entries)
    read, whole = best_of_both(lambda: read_text(source, "a.md"), lambda: proof(pattern, project))
    carried_out, arithmetic = best_of_both(lambda: work(graded), lambda: grade(pattern))
    say(f"a pullover in {SIZES} sizes, {rows:,} rows: read and proofed in {read + whole:.2f} s (goal: well under 1 s)")
    say(f"  reading: {read / whole:.0%} of proofing, of which nearly all is carrying out")
    say(f"  carrying out: {carried_out / arithmetic:.0f} times its arithmetic, {rows / carried_out:,.0f} rows a second")
    block = next(piece for piece in pattern.body if isinstance(piece, StitchBlock))
    one, _ = best_of_both(lambda: measured(block, graded), lambda: None)
    say(f"  its stitch pattern measured: {one / whole:.1%} of proofing")


def say(line: str) -> None:
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()


if __name__ == "__main__":
    wider()
    whole_pullover()
