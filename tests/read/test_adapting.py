"""An adaptation is its base with its departures: nothing more, nothing less, each line at home in its own file."""

from pathlib import Path

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from tests.read.notation_trees import ROWS

from sizewright.grade.graded import Graded
from sizewright.grade.run import grade
from sizewright.proof.header_lines import header_lines
from sizewright.proof.line import Line
from sizewright.proof.printed_lines import printed_lines
from sizewright.read.adapting.mirror import ONE_WAY, Mirror, Unmirrored
from sizewright.read.folder import Unreadable, read_again, read_project, read_single
from sizewright.read.notation.direction_tree import Row
from sizewright.read.pattern import Pattern, WorkBlock
from sizewright.work.run import work
from sizewright.work.worked import Worked

BASE = """---
title: Cap
licence: invented
sizes: {S: {head: 50 cm}, L: {head: 60 cm}}
gauge: {stitches: 20 st / 10 cm, rows: 28 rnd / 10 cm}
needles: [4 mm]
yarn: {weight: medium, swatch: {stitches: 100 st, mass: 1 g}}
---

Words before.

```grade
cast_on = head * stitch_gauge, nearest multiple of 4
rounds  = 6 (8)
```

## Brim

```work
Cast on {cast_on} sts. Join to work in the round.
Rnd 1: *K2, p2; rep from * to end.
Rep Rnd 1 {rounds} times.
```

## Body

```work
Rnd 1: Knit.
Rnd 2: *K2tog, ssk; rep from * to end.
Bind off all sts.
```
"""
EMPTY = "---\ntitle: Cap\nbased_on: {pattern: cap, permission: by letter, credit: me}\n---\n"
# Departures that can be made together, in the order of the base.
DEPARTURES = (
    "::: instead of text Words before\nbecause: others\nOther words.\n:::\n",
    "::: instead of quantity rounds\nbecause: deeper\nrounds = 9 (9)\n:::\n",
    "::: after row Rnd 1 under Brim\nbecause: a line\nRnd 2: Purl.\n:::\n",
    "::: inside-out section Body\nbecause: purl side out\n:::\n",
    "::: after section Body\nbecause: to end\n## Finishing\n\nWeave in.\n:::\n",
)


@pytest.fixture(scope="module")
def beside(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("adapted")
    (folder / "cap.md").write_text(BASE, encoding="utf-8")
    return folder


def adapted(folder: Path, *departures: str, head: str = EMPTY) -> Pattern:
    """The adaptation with some departures, in which nothing is wrong."""
    file = folder / "other.md"
    file.write_text(head + "\n".join(departures), encoding="utf-8")
    project = read_single(file)
    assert project.findings == ()
    return project.patterns[0]


def told(worked: Worked) -> object:
    """All that an adaptation must have of its base, as data: quantities, rows, yarn, and what a reader reads."""
    graded: Graded = worked.graded
    quantities = [(one.name, one.result) for one in graded.quantities.values()]
    rows = [(one.label, one.before, one.after, one.rows) for one in worked.entries]
    yarn = [(one.stitches, one.worked, one.reserved) for one in worked.yarns]
    return quantities, rows, worked.stitches, yarn, [said(line) for line in printed_lines(worked)]


def said(line: Line) -> object:
    return line.kind, line.section, line.name, line.said, line.counts


# In the round, with a stitch block and two yarns, flat with a chart, and one that says most.
@pytest.mark.parametrize("name", ["undercombe-hat", "tidemark-cowl", "saltmere-scarf", "hazelbeck-mittens"])
def test_an_empty_adaptation_is_its_base(name: str, repository: Path, tmp_path: Path) -> None:
    """By size, row and yarn, and in what a reader reads."""
    base = read_single(repository / "content/patterns" / f"{name}.md").patterns[0]
    text = (repository / "content/patterns" / f"{name}.md").read_text(encoding="utf-8")
    (tmp_path / f"{name}.md").write_text(_with_sizes(text, base), encoding="utf-8")
    plain = work(grade(read_single(tmp_path / f"{name}.md").patterns[0]))
    empty = work(grade(adapted_of(tmp_path, EMPTY.replace("Cap", base.header.title).replace("cap", name))))
    assert told(empty) == told(plain)
    assert list(map(said, header_lines(empty))) == list(map(said, header_lines(plain))) != []


def adapted_of(folder: Path, head: str) -> Pattern:
    (folder / "other.md").write_text(head, encoding="utf-8")
    return read_single(folder / "other.md").patterns[0]


def _with_sizes(text: str, base: Pattern) -> str:
    """A source that stands alone, its sizes written out where a shared table has them."""
    rows = ["sizes:"]
    for size in base.header.sizes:
        measures = ", ".join(f"{name}: {one.typed}" for name, one in size.measurements.items())
        rows.append(f"  {size.name}: {{{measures}}}")
    head, _, body = text.removeprefix("---\n").partition("\n---\n")
    kept, skipping = [], False
    for line in head.split("\n"):
        skipping = line.startswith(("sizes:", "table:")) or (skipping and line.startswith((" ", "-")))
        if not skipping:
            kept.append(line)
    return "\n".join(["---", *kept, *(rows if base.header.sizes else []), "---", body])


def test_what_is_put_behind_a_turned_section_stays_as_it_is_typed(beside: Path) -> None:
    loop = "## Loop\n\n```work\nCast on 4 sts.\nKnit 4 rows.\nBind off all sts.\n```"
    turned = "::: inside-out section Body\nbecause: purl side out\n:::\n"
    pattern = adapted(beside, turned, f"::: after section Body\nbecause: a loop\n{loop}\n:::\n")
    blocks = [piece for piece in pattern.body if isinstance(piece, WorkBlock)]
    assert [line.pieces for line in blocks[-2].lines][1] == ("Rnd 2: *P2tog, ssp; rep from * to end.",)
    assert [line.pieces for line in blocks[-1].lines][1] == ("Knit 4 rows.",)


@given(st.sets(st.sampled_from(range(len(DEPARTURES)))), st.randoms(use_true_random=False))
@settings(max_examples=8, derandomize=True)
def test_departures_may_stand_in_any_order(beside: Path, chosen: set[int], random: object) -> None:
    """What is put together follows the base; and with one taken out again it is as if that had never been made."""
    ordered = [DEPARTURES[at] for at in sorted(chosen)]
    mixed = list(ordered)
    random.shuffle(mixed)  # type: ignore[attr-defined]
    one = adapted(beside, *ordered)
    assert body_of(adapted(beside, *mixed)) == body_of(one)
    assert len(one.adapts.departures if one.adapts else ()) == len(chosen)
    if not chosen:
        assert body_of(one) == BASE.partition("\n---\n")[2]


def body_of(pattern: Pattern) -> str:
    return pattern.lines.text.split("\n---\n")[-1]


@pytest.mark.parametrize("departure", DEPARTURES)
def test_a_departure_taken_out_restores_the_base(beside: Path, departure: str) -> None:
    before = told(work(grade(adapted(beside))))
    with_it = adapted(beside, departure)
    assert told(work(grade(with_it))) != before or "text" in departure or "## Finishing" in departure
    assert told(work(grade(adapted(beside)))) == before


def test_each_line_is_at_home_in_its_own_file(beside: Path) -> None:
    pattern = adapted(beside, *DEPARTURES)
    files = {
        source: (beside / Path(source).name).read_text(encoding="utf-8").split("\n")
        for source in ("cap.md", str(beside / "other.md"))
    }
    for number, text in enumerate(pattern.lines.lines, start=1):
        shown = pattern.lines.whole_line(number).shown
        assert not text or files[shown.source][shown.line - 1] == text
    rows = {entry.label: entry.span.shown for entry in work(grade(pattern)).entries}
    assert (rows["Rnd 2"].source, rows["Bind off"].source) == ("cap.md",) * 2
    assert {entry.span.shown.source for entry in work(grade(pattern)).entries} == set(files)


def test_a_fault_is_found_in_the_file_that_holds_it(beside: Path) -> None:
    pattern = adapted(beside, DEPARTURES[2].replace("Purl.", "*K3, p4; rep from * to end."))
    fault, *_ = work(grade(pattern)).faults
    assert fault.span.shown.source.endswith("other.md")
    assert fault.span.shown.line == 7


def test_sections_are_turned_in_words_and_trees(beside: Path) -> None:
    pattern = adapted(beside, DEPARTURES[3])
    lines = [f"{line.section} {line.name}: {line.said[0]}" for line in printed_lines(work(grade(pattern)))]
    assert [line for line in lines if line.startswith(("Brim Rnd", "Body Rnd"))] == [
        "Brim Rnd 1: *K2, p2; rep from * to end.",
        "Body Rnd 1: Purl.",
        "Body Rnd 2: *P2tog, ssp; rep from * to end.",
    ]


def test_what_is_based_on_a_changed_pattern_is_read_again_with_it(tmp_path: Path) -> None:
    patterns = tmp_path / "content/patterns"
    patterns.mkdir(parents=True)
    (patterns / "cap.md").write_text(BASE, encoding="utf-8")
    (patterns / "other.md").write_text(EMPTY, encoding="utf-8")
    project = read_project(tmp_path)
    assert project.with_adaptations(["other"]) == {"other"}
    (patterns / "cap.md").write_text(BASE.replace("Rnd 1: Knit.", "Rnd 1: Purl."), encoding="utf-8")
    again = read_again(project, project.with_adaptations(["cap"]))
    assert ["Rnd 1: Purl." in pattern.lines.text for pattern in again.patterns] == [True, True]
    assert read_again(project, ["cap"]).patterns[1].lines.text == project.patterns[1].lines.text


def test_a_single_file_asks_for_its_base(tmp_path: Path) -> None:
    (tmp_path / "other.md").write_text(EMPTY, encoding="utf-8")
    (finding,) = read_single(tmp_path / "other.md").findings
    assert finding.rule == "missing-base"
    assert "Put cap.md beside this file" in finding.mend


def test_a_base_that_is_no_text_is_told(tmp_path: Path) -> None:
    (tmp_path / "other.md").write_text(EMPTY, encoding="utf-8")
    (tmp_path / "cap.md").write_bytes(b"---\ntitle: \xff\n---\n")
    (finding,) = read_single(tmp_path / "other.md").findings
    assert "not UTF-8" in finding.message


def test_a_base_is_looked_for_in_its_folder_only(tmp_path: Path) -> None:
    (tmp_path / "other.md").write_text(EMPTY.replace("cap", '"../cap"'), encoding="utf-8")
    (finding,) = read_single(tmp_path / "other.md").findings
    assert finding.rule == "missing-base"
    with pytest.raises(Unreadable):
        read_single(tmp_path / "nothing.md")


@given(ROWS)
@settings(derandomize=True, max_examples=30, deadline=None)
def test_what_is_turned_twice_is_as_it_was(row: Row) -> None:
    """And nothing of it but the stitches changes: as many stitches are taken and left."""
    assume(not any(f"term='{term}'" in repr(row) for term in ONE_WAY))
    mirror = Mirror(frozenset(("old shale",)))
    try:
        turned = mirror.direction(row)
    except Unmirrored:
        return
    assert isinstance(turned, Row)
    assert mirror.direction(turned) == row
    assert (turned.label, turned.numbers, turned.side, turned.promise) == (
        row.label,
        row.numbers,
        row.side,
        row.promise,
    )
