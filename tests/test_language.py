"""In: sources in the language itself, their findings marked on their lines. Out: just those findings are made.

A marker stands at the end of a line and is taken off before the source is read: `<<unknown-name>>`, more exactly
`<<unknown-name @9>>` with its column, `<<broken-repeat: S, L>>` with its sizes, `<<broken-repeat ~ 2 left over>>` with
words of its message or mend, `<<warning sizes-out-of-order>>` with a level that is not its rule's. `<<not rule>>` says
that a line comes close to a fault and is none. The sources in `clean/` have no finding; projects stand in `projects/`,
and what is found in one beside any line, in its file `expected`: `PATH:LINE MARKER`, or `- MARKER` without a place.
"""

import re
import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from sizewright.base.finding import Finding
from sizewright.proof.run import RULES, elsewhere, proof
from sizewright.read.folder import read_project, read_text

HERE = Path(__file__).parent / "language"
FLAGGED = sorted(HERE.glob("*.md"))
CLEAN = sorted((HERE / "clean").glob("*.md"))
PROJECTS = sorted((HERE / "projects" / "flagged").iterdir())
CLEAN_PROJECTS = sorted((HERE / "projects" / "clean").iterdir())
MARKED = (".md", ".yaml")
SECTIONS = ("**Why it matters.**", "**Example.**", "**Instead.**")

MARKER = re.compile(
    r"<<(?P<level>warning |error |note |not )?(?P<rule>[a-z-]+)(?: @(?P<column>\d+))?"
    r"(?:: (?P<sizes>[^~<>]+?))?(?: ~ (?P<words>[^<>]+))?>>"
)
MARKERS = re.compile(r"(?:[ \t]*<<[^<>]*>>)+$", re.M)


@dataclass(frozen=True)
class Expected:
    """What a marker asks for; what it does not say is None and may be anything."""

    place: tuple[str, int] | None
    rule: str
    level: str
    column: int | None
    sizes: tuple[str, ...] | None
    words: str | None

    def is_met_by(self, finding: Finding) -> bool:
        """Whether the finding is the one that was asked for."""
        span = finding.span.shown if finding.span else None
        return (
            (self.rule, self.level) == (finding.rule, finding.level)
            and self.place == ((span.source, span.line) if span else None)
            and self.column in (None, span.column if span else None)
            and self.sizes in (None, finding.sizes)
            and (self.words is None or self.words in f"{finding.message} {finding.mend}")
        )


def expectation(marker: re.Match[str], place: tuple[str, int] | None) -> Expected:
    """The expectation a marker at a place means."""
    level = marker["level"] or RULES[marker["rule"]].level
    sizes = tuple(marker["sizes"].split(", ")) if marker["sizes"] else None
    column = int(marker["column"]) if marker["column"] else None
    return Expected(place, marker["rule"], level.strip(), column, sizes, marker["words"])


def marked(text: str, source: str) -> tuple[str, list[Expected]]:
    """A source without its markers, and what they ask for."""
    found = [
        (marker, (source, number))
        for number, line in enumerate(text.split("\n"), start=1)
        for marker in MARKER.finditer(line)
    ]
    assert text.count("<<") == len(found), f"{source} holds a marker that cannot be read"
    return MARKERS.sub("", text), [expectation(*one) for one in found if one[0]["level"] != "not "]


def apart(expected: list[Expected], found: list[Finding]) -> list[str]:
    """What was asked for and not found, and what was found and not asked for."""
    left = list(found)
    missing = []
    for one in sorted(expected, key=lambda one: (one.words is None, one.sizes is None, one.column is None)):
        met = next((finding for finding in left if one.is_met_by(finding)), None)
        if met is None:
            missing.append(f"missing: {one}")
        else:
            left.remove(met)
    return missing + [f"unexpected: {one.span} {one.level} {one.rule}: {one.message} {one.mend}" for one in left]


def findings_of(text: str, source: str) -> list[Finding]:
    """Everything that is found in one source that stands alone."""
    project = read_text(text, source)
    return list(proof(project.patterns[0], project).findings)


def laid_out(case: Path, folder: Path) -> list[Expected]:
    """A project case copied into a folder without its markers, and what they ask for."""
    shutil.copytree(case, folder, symlinks=True)
    expected = list(from_list(folder / "expected"))
    for path in sorted(folder.rglob("*")):
        if path.suffix in MARKED and path.is_file() and not path.is_symlink():
            text, more = marked(path.read_text(encoding="utf-8"), path.relative_to(folder).as_posix())
            path.write_text(text, encoding="utf-8")
            expected.extend(more)
    return expected


def from_list(file: Path) -> Iterator[Expected]:
    """What the file of a project case asks for that cannot be marked where it stands."""
    for line in file.read_text(encoding="utf-8").splitlines() if file.is_file() else ():
        where, _, rest = line.partition(" ")
        source, _, number = where.rpartition(":")
        marker = MARKER.fullmatch(rest)
        assert marker is not None, line
        yield expectation(marker, None if where == "-" else (source, int(number)))


def findings_in(folder: Path) -> list[Finding]:
    """Everything that is found in a project: in its patterns and beside them."""
    project = read_project(folder)
    proofed = [finding for pattern in project.patterns for finding in proof(pattern, project).findings]
    return [*proofed, *elsewhere(project).findings]


def named(path: Path) -> str:
    return path.stem


@pytest.mark.parametrize("path", FLAGGED, ids=named)
def test_a_flagged_source_has_the_findings_marked_on_its_lines_and_no_other(path: Path) -> None:
    text, expected = marked(path.read_text(encoding="utf-8"), path.name)
    assert "<<" in path.read_text(encoding="utf-8"), "this source has no marker, so it belongs to the clean ones"
    assert "\n".join(apart(expected, findings_of(text, path.name))) == ""


@pytest.mark.parametrize("path", CLEAN, ids=named)
def test_a_clean_source_has_no_finding(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert "<<" not in text
    assert "\n".join(apart([], findings_of(text, path.name))) == ""


@pytest.mark.parametrize("case", PROJECTS, ids=named)
def test_a_flagged_project_has_the_findings_marked_in_its_files_and_no_other(case: Path, tmp_path: Path) -> None:
    expected = laid_out(case, tmp_path / "project")
    assert expected, "this project has no marker, so it belongs to the clean ones"
    read = read_project(tmp_path / "project").findings
    assert len(set(read)) == len(read), "something is found twice"
    assert "\n".join(apart(expected, findings_in(tmp_path / "project"))) == ""


@pytest.mark.parametrize("case", CLEAN_PROJECTS, ids=named)
def test_a_clean_project_has_no_finding(case: Path, tmp_path: Path) -> None:
    assert laid_out(case, tmp_path / "project") == []
    assert "\n".join(apart([], findings_in(tmp_path / "project"))) == ""


@pytest.mark.parametrize("rule", RULES)
def test_every_rule_has_a_page(rule: str) -> None:
    sentence, *sections = [part.strip() for part in RULES[rule].page.strip().split("\n\n")]
    assert sentence.endswith(".")
    assert tuple(next((mark for mark in SECTIONS if part.startswith(mark)), part) for part in sections) == SECTIONS


@pytest.fixture(scope="module")
def markers() -> list[re.Match[str]]:
    """All markers of all cases."""
    files = [path for case in PROJECTS for path in case.rglob("*") if path.suffix in MARKED or path.name == "expected"]
    return [marker for path in (*FLAGGED, *files) for marker in MARKER.finditer(path.read_text(encoding="utf-8"))]


@pytest.mark.parametrize("rule", RULES)
def test_every_rule_has_a_flagged_case(rule: str, markers: list[re.Match[str]]) -> None:
    assert any(marker["rule"] == rule and marker["level"] != "not " for marker in markers)


@pytest.mark.parametrize("rule", RULES)
def test_every_rule_has_a_clean_case(rule: str, markers: list[re.Match[str]]) -> None:
    clean = {path.stem for path in CLEAN} | {case.name for case in CLEAN_PROJECTS}
    assert rule in clean or any(marker["rule"] == rule and marker["level"] == "not " for marker in markers)


def test_markers_and_clean_cases_are_of_rules_that_exist(markers: list[re.Match[str]]) -> None:
    named = {marker["rule"] for marker in markers}
    named |= {re.sub(r"-\d+$", "", case.stem) for case in (*CLEAN, *CLEAN_PROJECTS)}
    assert named - set(RULES) == set()


# ----------------------------------------------------------------------------------------- the harness checks itself

SAMPLE = "---\ntitle: Cowl\n---\n{width} <<unknown-name @2>>\n"


def test_an_unexpected_and_a_missing_finding_are_seen() -> None:
    text, expected = marked(SAMPLE, "x.md")
    found = [one for one in findings_of(text, "x.md") if one.level == "error"]
    assert apart(expected, found) == []
    assert [line.partition(":")[0] for line in apart([], found)] == ["unexpected"]
    assert [line.partition(":")[0] for line in apart(expected, [])] == ["missing"]


@pytest.mark.parametrize("wrong", ["unknown-unit", "warning unknown-name", "unknown-name @3", "unknown-name: S"])
def test_a_marker_that_asks_for_something_else_is_not_met(wrong: str) -> None:
    text, expected = marked(SAMPLE.replace("unknown-name @2", wrong), "x.md")
    found = [one for one in findings_of(text, "x.md") if one.level == "error"]
    assert len(apart(expected, found)) == 2


def test_a_marker_that_cannot_be_read_fails() -> None:
    with pytest.raises(AssertionError, match="cannot be read"):
        marked("{width} <<unknown name>>", "x.md")


# ------------------------------------------------------------------------------------- what is written about the rules


def test_the_table_of_what_editors_check_names_rules_that_exist() -> None:
    text = (Path(__file__).parent.parent / "DEVELOPERS.md").read_text(encoding="utf-8")
    table = text[text.index("## What technical editors check") : text.index("## To add")]
    named = set(re.findall(r"`([a-z]+(?:-[a-z]+)+)`", table))
    assert len(named) > 40
    assert named - set(RULES) == set()
