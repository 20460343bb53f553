"""`sizewright restate`: lines in house style beside those typed, and files rewritten that prove the same as before."""

import shutil
import stat
from collections.abc import Callable
from pathlib import Path
from subprocess import CompletedProcess

import pytest
from tests.read.test_adapting import BASE

from sizewright.command.outcome import Stopped
from sizewright.command.reading import open_paths
from sizewright.command.restating import restated_files, rewrite
from sizewright.grade.run import grade
from sizewright.read.folder import read_single
from sizewright.work.run import work

Run = Callable[..., CompletedProcess[str]]

SCARF = """---
title: Scarf
sizes:
  S: {chest: 80 cm}
  M: {chest: 90 cm}
gauge: {stitches: 20 st / 10 cm, rows: 30 row / 10 cm}
---
Text with {cast_on} sts, and K2, P2 in it.  <!-- a comment -->

```grade
cast_on = 24 (28)
```

```stitch Ripple
Multiple of 4 sts.
1st Row (Right Side): *K2, P2; repeat from * to end
Row 2: work sts as they appear
```

```work
CO {cast_on} sts.
Row 1: *sl1 pwise wyif, K 1 ; repeat from * to end.   # a note of the designer
Row 1: *sl1 pwise wyif, K 1 ; repeat from * to end. ({cast_on} sts)
Row 2: purl all sts
Row 3: K2 TOG, k to end, (23 (27) sts)
Row 4: wibble 3, K to end ({cast_on - 1 st} sts)
Work the panel as drawn .   # declared: {cast_on} sts, 2 rows
Row 1: K 3, [K2, P2]
   3 times,  then K to end
Repeat row 1 3 times
Cut yarn ,  leaving a tail.
Cast off all sts
```
"""
# What is said otherwise in house style; everything else stays as it is, byte for byte.
CHANGES = {
    "1st Row (Right Side): *K2, P2; repeat from * to end": "Row 1 (RS): *K2, p2; rep from * to end.",
    "Row 2: work sts as they appear": "Row 2: Knit the knits and purl the purls.",
    "CO {cast_on} sts.": "Cast on {cast_on} sts.",
    "Row 1: *sl1 pwise wyif, K 1 ; repeat from * to end. (": "Row 1: *Sl 1 purlwise wyif, k1; rep from * to end. (",
    "Row 2: purl all sts": "Row 2: Purl.",
    "Row 3: K2 TOG, k to end, (23 (27) sts)": "Row 3: K2tog, k to end. (23 (27) sts)",
    "Row 1: K 3, [K2, P2]\n   3 times,  then K to end": "Row 1: K3, [k2, p2] 3 times, k to end.",
    "Repeat row 1 3 times": "Rep Row 1 three more times.",
    "Cast off all sts": "Bind off all sts.",
}


def in_house_style(text: str) -> str:
    for typed, house in CHANGES.items():
        assert text.count(typed) == 1, typed
        text = text.replace(typed, house)
    return text


def ledger(file: Path) -> list[tuple[object, ...]]:
    """What every row of a pattern comes to, however it is labelled, and the stitch patterns measured."""
    worked = work(grade(read_single(file).patterns[0]))
    rows = [(entry.piece, entry.before, entry.after, entry.rows, entry.declared) for entry in worked.entries]
    return [*rows, *((one.name, one.multiple, one.plus, one.rows) for one in worked.stitch_patterns)]


@pytest.fixture
def scarf(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    file = Path("scarf.md")
    file.write_text(SCARF, encoding="utf-8")
    return file


def rewritten(file: Path) -> str:
    (one,) = restated_files(open_paths((file,)))
    rewrite(one)
    return file.read_bytes().decode("utf-8")


def test_lines_are_shown_as_typed_and_in_house_style(scarf: Path, typed: Run) -> None:
    before = scarf.read_bytes()
    done = typed("restate", str(scarf), cwd=scarf.parent.resolve())
    assert (done.returncode, done.stderr) == (1, "")
    assert "scarf.md:16\n- 1st Row (Right Side): *K2, P2; repeat from * to end\n" in done.stdout
    assert "+ Row 1 (RS): *K2, p2; rep from * to end.\n" in done.stdout
    assert "- Row 3: K2 TOG, k to end, (23 (27) sts)\n+ Row 3: K2tog, k to end. (23 (27) sts)\n" in done.stdout
    assert "wibble" not in done.stdout
    assert done.stdout.endswith("said otherwise in house style\n")
    assert scarf.read_bytes() == before


def test_only_lines_that_are_understood_are_rewritten(scarf: Path) -> None:
    """The text around the blocks, a note in a line, a declared line, one not understood and inserts stay."""
    assert rewritten(scarf) == in_house_style(SCARF)


def test_the_drawn_rows_of_a_chart_are_left_as_they_are(scarf: Path) -> None:
    """Its cells are no words; what is said beside them in words may be restated."""
    rows = "[ o / | \\ o | ] | 3\n[ | | | | | | ] | 1\n"
    chart = f"```chart Birdsfoot\nMultiple of 6 sts plus 1.\nAll WS rows: {{}}\n{rows}```\n"
    scarf.write_text(SCARF + chart.format("purl all sts"), encoding="utf-8")
    assert rewritten(scarf) == in_house_style(SCARF) + chart.format("Purl.")


def test_what_is_rewritten_comes_to_the_same(scarf: Path) -> None:
    before = ledger(scarf)
    assert len(before) > 8
    rewritten(scarf)
    assert ledger(scarf) == before


DEMO = ["tidemark-cowl", "saltmere-scarf", "hazelbeck-mittens", "undercombe-hat", "tarnside-pullover"]


@pytest.mark.parametrize("name", DEMO)
def test_the_demo_in_house_style_comes_to_the_same(name: str, repository: Path, tmp_path: Path) -> None:
    file = tmp_path / f"{name}.md"
    shutil.copy(repository / "content" / "patterns" / f"{name}.md", file)
    before = ledger(file)
    rewritten(file)
    assert ledger(file) == before
    assert [line.typed for line in restated_files(open_paths((file,)))[0].differing] == []


@pytest.mark.parametrize(("end", "mark"), [("\r\n", ""), ("\r", ""), ("\n", "\ufeff")])
def test_line_ends_and_a_byte_order_mark_stay(end: str, mark: str, scarf: Path) -> None:
    scarf.write_bytes((mark + SCARF.replace("\n", end)).encode())
    assert rewritten(scarf) == mark + in_house_style(SCARF).replace("\n", end)


def test_the_file_keeps_its_rights_and_its_place(scarf: Path) -> None:
    link = Path("linked.md")
    link.symlink_to(scarf.resolve())
    scarf.chmod(0o640)
    rewritten(link)
    assert link.is_symlink()
    assert stat.S_IMODE(scarf.stat().st_mode) == 0o640
    assert scarf.read_text(encoding="utf-8") == in_house_style(SCARF)
    assert sorted(file.name for file in Path().iterdir()) == ["linked.md", "scarf.md"]


def test_a_file_that_changed_meanwhile_is_left(scarf: Path) -> None:
    (one,) = restated_files(open_paths((scarf,)))
    changed = SCARF.replace("Row 2: purl all sts", "Row 2: purl all sts\nRow 3: knit")
    scarf.write_text(changed, encoding="utf-8")
    with pytest.raises(Stopped, match="changed"):
        rewrite(one)
    assert scarf.read_text(encoding="utf-8") == changed


def test_a_failed_write_leaves_the_file(scarf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise OSError("no space")

    monkeypatch.setattr(shutil, "copymode", refuse)
    with pytest.raises(OSError, match="no space"):
        rewritten(scarf)
    assert scarf.read_text(encoding="utf-8") == SCARF
    assert [file.name for file in Path().iterdir()] == ["scarf.md"]


@pytest.mark.parametrize(
    ("typed", "house"),
    [
        ("using mc cast on 4 sts", "Using mc cast on 4 sts."),
        ("With MC, CO 4 sts", "With MC, cast on 4 sts."),
        ("Cast on 4 sts with CC", "With CC, cast on 4 sts."),
        ("Cut MC, join CC and knit 4 rows", None),
        ("k 4 rows, at the same time dec 1 st at each end of every row", None),
        ("Cast on 4 sts. (4 sts)", None),
        ("CO 4 sts, (4 sts)", "Cast on 4 sts. (4 sts)"),
        ("Change to the larger needles. k 4 rows", "Change to the larger needles. Knit 4 rows."),
        ("Weave in the ends", None),
    ],
)
def test_sentences_with_yarns_counts_and_words_that_change_nothing(typed: str, house: str | None, scarf: Path) -> None:
    scarf.write_text(f"---\ntitle: A\n---\n```work\n{typed}\n```\n", encoding="utf-8")
    ((line,),) = (one.lines for one in restated_files(open_paths((scarf,))))
    assert (line.house if line.differs else None) == house


ADAPTED = """---
title: Cap
based_on: {pattern: cap, permission: by letter, credit: me}
---
::: after row Rnd 1 under Brim
because: deeper
Rnd 2: K 2, [K2, P2]
   to last 2 sts,  then K to end
:::

::: inside-out section Body
because: purl side out
:::

::: after section Body
because: to hang it up
## Loop

```work
CO 4 sts
k 4 rows
Cast off all sts
```
:::
"""
ADAPTED_CHANGES = {
    "Rnd 2: K 2, [K2, P2]\n   to last 2 sts,  then K to end": "Rnd 2: K2, *k2, p2; rep from * to last 2 sts, k to end.",
    "CO 4 sts": "Cast on 4 sts.",
    "k 4 rows": "Knit 4 rows.",
    "Cast off all sts": "Bind off all sts.",
}


def test_an_adaptation_is_rewritten_and_its_base_left(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Only lines of its own: not those of the base, nor what is turned inside out of them."""
    monkeypatch.chdir(tmp_path)
    patterns = Path("content/patterns")
    patterns.mkdir(parents=True)
    base = BASE.replace("Rnd 2: *K2tog, ssk; rep from * to end.", "Rnd 2: *K2 TOG, ssk; repeat from * to end")
    (patterns / "cap.md").write_text(base, encoding="utf-8")
    other = patterns / "other.md"
    other.write_text(ADAPTED, encoding="utf-8")
    before, house = ledger(other), ADAPTED
    for typed, said in ADAPTED_CHANGES.items():
        house = house.replace(typed, said)
    assert rewritten(other) == house
    assert (patterns / "cap.md").read_text(encoding="utf-8") == base
    assert ledger(other) == before
    assert [line.typed for line in restated_files(open_paths((other,)))[0].differing] == []


def test_wrong_use(tmp_path: Path, typed: Run) -> None:
    done = typed("restate", "nowhere.md", cwd=tmp_path)
    assert (done.returncode, done.stdout) == (2, "")
    assert "nowhere.md" in done.stderr


def test_a_rewritten_file_is_left_as_it_is(scarf: Path, typed: Run) -> None:
    folder = scarf.parent.resolve()
    first = typed("restate", "--write", str(scarf), cwd=folder)
    assert first.returncode == 0
    assert "rewritten in house style" in first.stdout
    text = scarf.read_bytes()
    second = typed("restate", str(scarf), cwd=folder)
    assert (second.returncode, scarf.read_bytes()) == (0, text)
    assert "none said otherwise" in second.stdout
