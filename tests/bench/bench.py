"""In: generated patterns. Out: ratios, printed, each of two timings taken in the same run. Not a test."""

import sys
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter
from typing import Any

import pint
from jinja2 import Template
from markdown_it import MarkdownIt

from sizewright.grade.run import grade
from sizewright.proof.run import proof
from sizewright.publish.pages import site_pages
from sizewright.publish.theme import Theme
from sizewright.read.folder import read_project, read_single

SIZES = 12
QUANTITIES = 60
PATTERNS = int(sys.argv[1]) if len(sys.argv) > 1 else 200


def header(title: str) -> str:
    sizes = "\n".join(f"  S{size}: {{chest: {80 + 5 * size} cm}}" for size in range(SIZES))
    return f"---\ntitle: {title}\nsizes:\n{sizes}\ngauge: {{stitches: 22 st / 10 cm, rows: 30 row / 10 cm}}\n---\n\n"


def grade_block() -> str:
    lines = [f"q{n} = (chest + {n} cm) * stitch_gauge / 2, nearest multiple of 4 plus 2" for n in range(QUANTITIES)]
    return "```grade\n" + "\n".join(lines) + "\n```\n"


def best(action: Callable[[], object], times: int = 5) -> float:
    """The shortest of some runs, in seconds."""
    taken = []
    for _ in range(times):
        start = perf_counter()
        action()
        taken.append(perf_counter() - start)
    return min(taken)


def by_hand(chests: list[Fraction], gauge: Fraction) -> list[list[Fraction]]:
    """The arithmetic of the grade block, written out."""
    found = []
    for n in range(QUANTITIES):
        exact = [(chest + n) * gauge / 2 for chest in chests]
        found.append([((value - 2) / 4 + Fraction(1, 2)).__floor__() * Fraction(4) + 2 for value in exact])
    return found


def by_pint(chests: list[Fraction], gauge: Fraction, units: pint.UnitRegistry[Any]) -> None:
    for n in range(QUANTITIES):
        for chest in chests:
            _ = (chest * units.cm + Fraction(n) * units.cm) * (gauge / units.cm) / 2


def grading(folder: Path) -> None:
    source = folder / "pattern.md"
    source.write_text(header("A") + grade_block(), encoding="utf-8")
    (pattern,) = read_single(source).patterns
    chests, gauge = [Fraction(80 + 5 * size) for size in range(SIZES)], Fraction(22, 10)
    graded = grade(pattern)
    assert [list(graded.quantities[f"q{n}"].result.values) for n in range(QUANTITIES)] == by_hand(chests, gauge)
    units: pint.UnitRegistry[Any] = pint.UnitRegistry(non_int_type=Fraction)
    engine, hand = best(lambda: grade(pattern)), best(lambda: by_hand(chests, gauge))
    each = best(lambda: by_pint(chests, gauge, units), 2)
    say(f"grading {QUANTITIES} x {SIZES}: {engine * 1000:.1f} ms, {engine / hand:.2f} of by hand (goal 1.5)")
    say(f"pint per operation: {each / engine:.1f} times the engine")


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


def say(line: str) -> None:
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()


if __name__ == "__main__":
    with TemporaryDirectory() as one, TemporaryDirectory() as other:
        grading(Path(one))
        publishing(Path(other))
