"""The language, tested in itself: sources in tests/language/ with the findings they must give marked on their lines.

`<<rule>>` at the end of a line is a finding expected there, `<<rule: S, M>>` one for these sizes alone, and
`<<not rule>>` says that the line comes close to a fault and is none. A finding that is not marked fails, and so does a
mark without one.
"""

import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest

from sizewright.base.finding import Finding
from sizewright.proof.run import RULES, proof
from sizewright.read.folder import read_single

SOURCES = sorted((Path(__file__).parent / "language").glob("*.md"))
MARK = re.compile(r"\s*<<(?P<none>not )?(?P<rule>[a-z-]+)(?:: (?P<sizes>[^>]+))?>>")

# These need a whole project around the source; tests/read/ and tests/publish/ flag them.
OF_PROJECTS = {"missing-file", "unsafe-picture"}


def marks(text: str) -> Iterator[tuple[int, str, str | None, bool]]:
    for number, line in enumerate(text.split("\n"), start=1):
        for mark in MARK.finditer(line):
            yield number, mark["rule"], mark["sizes"], mark["none"] is not None


def found_in(source: Path, folder: Path) -> tuple[Finding, ...]:
    """What is found in a source without its marks."""
    bare = folder / source.name
    bare.write_text(MARK.sub("", source.read_text(encoding="utf-8")), encoding="utf-8")
    project = read_single(bare)
    return proof(project.patterns[0], project).findings


@pytest.mark.parametrize("source", SOURCES, ids=lambda source: source.stem)
def test_a_source_gives_the_findings_marked_in_it(source: Path, tmp_path: Path) -> None:
    text = source.read_text(encoding="utf-8")
    expected = Counter((line, rule) for line, rule, _, none in marks(text) if not none)
    found = found_in(source, tmp_path)
    told = [(finding.span.line if finding.span else 0, finding.rule) for finding in found]
    assert Counter(told) == expected, [finding.message for finding in found]
    sizes = {(finding.span.line, finding.rule): ", ".join(finding.sizes) for finding in found if finding.span}
    for line, rule, wanted, none in marks(text):
        if wanted is not None and not none:
            assert sizes[line, rule] == wanted


@pytest.mark.parametrize("rule", sorted(set(RULES) - OF_PROJECTS))
def test_a_rule_has_a_case_and_a_near_one_that_is_none(rule: str) -> None:
    found = [(name, none) for source in SOURCES for _, name, _, none in marks(source.read_text(encoding="utf-8"))]
    assert (rule, False) in found, "no source is flagged"
    assert (rule, True) in found, "no source comes close"


@pytest.mark.parametrize("rule", sorted(RULES))
def test_a_rule_has_its_page(rule: str) -> None:
    page = RULES[rule].page
    headings = [page.find(f"**{heading}.**") for heading in ("Why it matters", "Example", "Instead")]
    assert 0 < headings[0] < headings[1] < headings[2]


def test_marks_are_of_rules_that_exist() -> None:
    named = {rule for source in SOURCES for _, rule, _, _ in marks(source.read_text(encoding="utf-8"))}
    assert named <= set(RULES)
