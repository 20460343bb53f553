"""The command `sign-off` and what “proof” and “publish” make of it. The band is invented."""

import json
from pathlib import Path
from shutil import copytree

import pytest
from click.testing import CliRunner, Result
from hypothesis import given
from hypothesis import strategies as st

from sizewright.base.finding import Finding
from sizewright.base.place import Lines
from sizewright.command.main import sizewright
from sizewright.proof.run import proof
from sizewright.read.folder import read_project
from sizewright.read.sign_off import read_sign_off

FILE = Path("band.sign-off")


def run(*words: str) -> Result:
    return CliRunner().invoke(sizewright, words)


def signed(band: Path) -> str:
    done = run("sign-off", str(band), "--by", "Ann Editor", "--on", "12 Oct")
    assert (done.exit_code, done.output) == (0, "Signed off: band.sign-off\n")
    return FILE.read_text(encoding="utf-8")


def changed(band: Path, *pairs: tuple[str, str]) -> list[tuple[str, list[str]]]:
    """What proof tells of the sign-off after a change: message and sizes."""
    text = band.read_text(encoding="utf-8")
    for before, after in pairs:
        assert before in text, before
        text = text.replace(before, after)
    band.write_text(text, encoding="utf-8")
    told = json.loads(run("proof", "--format", "json", str(band)).output)
    found = told["patterns"][0]["findings"] + told["findings"]
    return [(one["message"], one["sizes"]) for one in found if "sign" in one["rule"]]


def test_the_file_says_who_when_and_what_one_a_line(band: Path) -> None:
    lines = signed(band).splitlines()
    assert lines[:4] == ["sign-off | format 1", "by | Ann Editor", "on | 12 Oct", "sizes | Small | Large"]
    assert "quantity | cast_on in st | 92 | 108" in lines
    assert "quantity | stitch_gauge in st/cm | 2" in lines
    assert "does | Rnd 1 | *K2, p2; rep from * to end." in lines
    assert any(line.startswith("row | ") and line.endswith("Rnd 1 | 92 to 92 | 108 to 108") for line in lines)
    assert changed(band) == []
    assert signed(band).splitlines() == lines, "the same pattern gives the same file"


def test_acceptances_are_signed_with_their_reasons(band: Path) -> None:
    changed(band, ("require cast_on", "require cast_on = cast_on + 1 st\nrequire cast_on"))
    accepted = 'accepted: [{rule: broken-promise, text: "cast_on + 1 st", reason: as the kit has it}]\n---\n\n```grade'
    changed(band, ("---\n\n```grade", accepted))
    text = signed(band)
    assert "accepted | broken-promise on “cast_on + 1 st”: as the kit has it | accepted\n" in text
    found = changed(band, ("as the kit has it", "for no reason"))
    assert len(found) == 2
    assert "as the kit has it is gone" in found[1][0] + found[0][0]


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("title: Test Band", "title: A Better Band\nsummary: A band."),
        ("```work", "Some words before it.\n\n```work"),
        ("Join to work", "Place no marker: words.\nJoin to work"),
        ("Rnd 1: *K2, p2", "Rib Rnd: *K2, P2"),
    ],
)
def test_words_alone_do_not_unsign(band: Path, before: str, after: str) -> None:
    if "marker" in after or "Rib" in after:
        changed(band, ("Rep Rnd 1 until", "Rep last round until"))
        after = after.replace("Place no marker: words.\n", "")
    signed(band)
    assert changed(band, (before, after)) == []


def test_what_moved_is_told_by_size(band: Path) -> None:
    signed(band)
    found = changed(band, ("depth = 9 (10) cm", "depth = 9 (12) cm"))
    assert ("Size Large: depth was 10 cm, is 12 cm.", ["Large"]) in found
    assert all(sizes == ["Large"] for _, sizes in found)
    found = changed(band, ("head * 0.9", "head * 0.8"))
    assert ("cast_on: Small: was 92 st, is 84 st; Large: was 108 st, is 96 st.", ["Small", "Large"]) in found


def test_other_stitches_with_the_same_count_are_told(band: Path) -> None:
    signed(band)
    (found,) = changed(band, ("*K2, p2", "*P2, k2"))
    assert found[0].startswith("Sizes Small, Large: Rnd 1 was “*K2, p2")


def test_a_size_more_is_told(band: Path) -> None:
    signed(band)
    found = changed(band, ("  Large:", "  Middle: {head: 56 cm}\n  Large:"), ("9 (10)", "9 (10, 10)"))
    assert found == [("Sizes were Small, Large, are Small, Middle, Large.", [])]


def test_a_pattern_with_errors_is_not_signed_off(band: Path) -> None:
    changed(band, ("fits multiple of 4", "fits multiple of 7"))
    refused = run("sign-off", str(band), "--by", "Ann Editor")
    assert (refused.exit_code, FILE.exists()) == (1, False)
    assert "Not signed off: band.md has 1 error." in refused.output


def test_it_is_signed_by_somebody(band: Path) -> None:
    assert run("sign-off", str(band)).exit_code == 2
    assert run("sign-off", str(band), "--by", "  ").exit_code == 2
    signed(band)
    assert run("sign-off", str(band), "--by", "A | B\nC").exit_code == 0
    assert FILE.read_text(encoding="utf-8").splitlines()[1] == "by | A ¦ B C"
    assert changed(band) == []


@pytest.mark.parametrize("content", [b"", b"\xff\xfe", b"sign-off | format 2\n", b"sign-off | format 1\nby | A\n"])
def test_a_file_that_cannot_be_read_is_a_finding(band: Path, content: bytes) -> None:
    FILE.write_bytes(content)
    found = json.loads(run("proof", "--format", "json", str(band)).output)
    assert [one["rule"] for one in found["findings"]] == ["unreadable-sign-off"]
    assert run("proof", str(band)).exit_code == 0


@given(st.text(alphabet="sign-off |format1\nbyonszequatidrw–", max_size=80), st.integers(0, 400), st.integers(0, 40))
def test_no_text_is_a_traceback(text: str, at: int, less: int) -> None:
    good = "sign-off | format 1\nby | A\non | B\nsizes | S | M\nquantity | a | 1 | 2\nrow | Rnd 1 | 1 to 2\n"
    for source in (text, good[:at] + text + good[at + less :]):
        found = read_sign_off(Lines("x.sign-off", source))
        if not isinstance(found, Finding):
            assert all(len(record.values) == len(found.sizes) for record in found.records)


def test_a_studio_may_publish_only_what_is_signed_off(band: Path) -> None:
    patterns = Path("content/patterns")
    patterns.mkdir(parents=True)
    pattern = band.rename(patterns / band.name)
    Path("content/site.yaml").write_text("name: Test\npublish_only: signed-off\n", encoding="utf-8")
    refused = run("publish", ".")
    assert (refused.exit_code, Path("site").exists()) == (1, False)
    assert "Nobody has signed this pattern off, and this studio publishes only what is signed off." in refused.output
    assert run("sign-off", ".", "--by", "Ann Editor", "--on", "12 Oct").exit_code == 0
    assert run("proof", ".").exit_code == 0
    changed(pattern, ("9 (10) cm", "9 (11) cm"))
    again = run("publish", ".")
    assert (again.exit_code, Path("site").exists()) == (1, False)
    assert "moved since Ann Editor signed this pattern off on 12 Oct." in again.output


def test_every_demo_pattern_keeps_its_sign_off(repository: Path, tmp_path: Path) -> None:
    """A sign-off read back equals what was signed, whatever a real pattern holds."""
    copytree(repository / "content", tmp_path / "content")
    assert run("sign-off", str(tmp_path), "--by", "Ann Editor", "--on", "12 Oct").exit_code == 0
    project = read_project(tmp_path)
    assert project.patterns
    for pattern in project.patterns:
        assert pattern.sign_off is not None
        assert [one for one in proof(pattern, project).findings if "sign" in one.rule] == []
