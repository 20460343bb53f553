"""In: generated patterns. Out: ratios, printed, each of two timings taken in the same run. Not a test."""

import subprocess
import sys
from collections.abc import Callable
from fractions import Fraction
from importlib import import_module
from math import ceil, floor
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter
from typing import Any

import pint
from jinja2 import Template
from markdown_it import MarkdownIt

from sizewright.grade.run import grade
from sizewright.proof.run import proof
from sizewright.publish.manifest import Options, inputs_digest, up_to_date
from sizewright.publish.pages import site_pages
from sizewright.publish.run import publish, site_folder
from sizewright.publish.theme import Theme
from sizewright.read.folder import read_project, read_single, read_text

SIZES = 12
QUANTITIES = 60
PATTERNS = int(sys.argv[1]) if len(sys.argv) > 1 else 200


def header(title: str) -> str:
    sizes = "\n".join(f"  S{size}: {{chest: {80 + 5 * size} cm}}" for size in range(SIZES))
    return f"---\ntitle: {title}\nsizes:\n{sizes}\ngauge: {{stitches: 22 st / 10 cm, rows: 30 row / 10 cm}}\n---\n\n"


def grade_block() -> str:
    lines = [f"q{n} = (chest + {n} cm) * stitch_gauge / 2, nearest multiple of 4 plus 2" for n in range(QUANTITIES)]
    return "```grade\n" + "\n".join(lines) + "\n```\n"


# Five kinds of formula in turn, each on what stands before it: what a pattern is made of.
MIXED = (
    "q{n} = chest + {n} cm",
    "q{n} = q{before} * stitch_gauge / 2, nearest multiple of 4 plus 2",
    "q{n} = (q{before} - 2 st) / stitch_gauge",
    "q{n} = q{before} * row_gauge, up to even",
    "q{n} = q{before} / 2 + 3 row",
)


def mixed_block() -> str:
    lines = [MIXED[n % len(MIXED)].format(n=n, before=n - 1) for n in range(QUANTITIES)]
    return "```grade\n" + "\n".join(lines) + "\n```\n"


def best_of_both(one: Callable[[], object], other: Callable[[], object], times: int = 15) -> tuple[float, float]:
    """The shortest run of each, in seconds, taken in turn, so that a busy machine is busy for both."""
    found = [float("inf"), float("inf")]
    for _ in range(times):
        for place, action in enumerate((one, other)):
            start = perf_counter()
            action()
            found[place] = min(found[place], perf_counter() - start)
    return found[0], found[1]


def by_hand(chests: list[Fraction], stitches: Fraction, rows: Fraction) -> list[list[Fraction]]:
    """The arithmetic of the mixed block, written out."""
    found = []
    for n in range(0, QUANTITIES, len(MIXED)):
        around = [chest + n for chest in chests]
        cast_on = [Fraction(floor((one * stitches / 2 - 2) / 4 + Fraction(1, 2))) * 4 + 2 for one in around]
        across = [(one - 2) / stitches for one in cast_on]
        rounds = [Fraction(ceil(one * rows / 2)) * 2 for one in across]
        found += [around, cast_on, across, rounds, [one / 2 + 3 for one in rounds]]
    return found


def by_pint(chests: list[Any], unit: Any, stitches: Any) -> None:  # noqa: ANN401 - pint's own quantities
    """Two operations a size of each quantity, the units known beforehand."""
    for n in range(QUANTITIES):
        more = n * unit
        for chest in chests:
            _ = (chest + more) * stitches


def grading(folder: Path) -> None:
    source = folder / "pattern.md"
    source.write_text(header("A") + mixed_block(), encoding="utf-8")
    (pattern,) = read_single(source).patterns
    chests, stitches, rows = [Fraction(80 + 5 * size) for size in range(SIZES)], Fraction(22, 10), Fraction(3)
    graded = grade(pattern)
    assert [list(graded.quantities[f"q{n}"].result.values) for n in range(QUANTITIES)] == by_hand(
        chests, stitches, rows
    )
    engine, hand = best_of_both(lambda: grade(pattern), lambda: by_hand(chests, stitches, rows))
    say(f"grading {QUANTITIES} x {SIZES}: {engine * 1000:.1f} ms, {engine / hand:.2f} of by hand (goal 1.5)")
    units: pint.UnitRegistry[Any] = pint.UnitRegistry(non_int_type=Fraction)
    quantities, gauge = [chest * units.cm for chest in chests], stitches / units.cm
    of_pint, fraction = best_of_both(
        lambda: by_pint(quantities, units.cm, gauge), lambda: by_pint(chests, Fraction(1), stitches), 3
    )
    say(f"an operation of pint: {of_pint / fraction:.0f} times that of a fraction")
    say(f"two operations of pint for each value: {of_pint / engine:.1f} times the whole grading")


def publishing(folder: Path) -> None:
    patterns = folder / "content" / "patterns"
    patterns.mkdir(parents=True)
    words = "\n\n".join(f"Cast on {{q{n}}} sts and work {{q{n + 1}}} rows, *as before*." for n in range(20))
    for number in range(PATTERNS):
        (patterns / f"p{number}.md").write_text(header(f"P{number}") + grade_block() + words, encoding="utf-8")
    start = perf_counter()
    project = read_project(folder)
    proofed = [proof(pattern, project) for pattern in project.patterns]
    readied = perf_counter()
    theme = Theme.find(project.studio.theme, folder)
    pages = list(site_pages(project, proofed, (), theme))
    done = perf_counter()
    counts = " ".join(["72 (" + ", ".join(["80"] * (SIZES - 1)) + ")"])
    expanded = words
    for n in range(QUANTITIES):
        expanded = expanded.replace(f"{{q{n}}}", counts)
    template = Template("<html><title>{{ title }}</title>{{ body }}</html>", autoescape=True)
    bare_start = perf_counter()
    for number in range(PATTERNS):
        template.render(title=f"P{number}", body=MarkdownIt("commonmark").enable("table").render(expanded))
    bare = perf_counter() - bare_start
    share = (done - readied) / bare
    say(f"{len(pages)} pages of {PATTERNS} patterns: {done - readied:.2f} s = {share:.1f} of bare (goal 2)")
    say(f"with reading and proofing: {done - start:.2f} s = {(done - start) / bare:.1f} of bare")


class Silent:
    """Progress that nobody watches."""

    def start(self, total: int, what: str) -> None:
        pass

    def step(self) -> None:
        pass


def publishing_again(folder: Path) -> None:
    """The first publish of the patterns that stand in a folder, pages only, and a second with nothing changed.

    Both with the start of the program, as a person waits for it; what that takes is told beside.
    """
    begun = perf_counter()
    subprocess.run([sys.executable, "-m", "sizewright", "--version"], check=True, capture_output=True)
    started = perf_counter() - begun
    options = Options(papers=False)
    begun = perf_counter()
    inputs = inputs_digest(folder, options)
    project = read_project(folder)
    proofed = [proof(pattern, project) for pattern in project.patterns]
    made = publish(project, proofed, without_refused=False, papers=False, inputs=inputs, progress=Silent())
    first = perf_counter() - begun
    if not made.done:
        raise SystemExit("the generated patterns were refused")
    begun = perf_counter()
    if up_to_date(folder, site_folder(folder), options) is None:
        raise SystemExit("the second publish did not see that nothing had changed")
    second = perf_counter() - begun
    share = (second + started) / (first + started)
    say(f"second publish, nothing changed: {second / first:.3f} of the first (goal 0.1)")
    say(f"both with {started:.2f} s to start the program: {share:.2f}")


def reading_published() -> None:
    """How many published rows are read without help, each by itself: those the tests of published patterns hold."""
    sys.path.insert(0, str(Path(__file__).parents[2]))
    modern = import_module("tests.work.test_published_stitch_patterns").PATTERNS
    old = import_module("tests.work.test_public_domain").LAMBERT
    rows = [row for *_, lines in modern.values() for row in lines]
    rows += [row for _, _, *lines in old.values() for row in lines]
    read = [row for row in rows if not read_text(f"---\ntitle: A\n---\n```stitch A\n{row}\n```\n", "a.md").findings]
    say(f"{len(read)} of {len(rows)} published rows read without help")


def say(line: str) -> None:
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()


if __name__ == "__main__":
    reading_published()
    with TemporaryDirectory() as one, TemporaryDirectory() as other:
        grading(Path(one))
        publishing(Path(other))
        publishing_again(Path(other))
