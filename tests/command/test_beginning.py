"""Where a first pattern is written, and that nothing is ever written over."""

import os
from pathlib import Path

import pytest
from click.testing import CliRunner

from sizewright.command.beginning import CannotBegin, begin, is_address, nearest_address
from sizewright.command.main import sizewright


def files_below(folder: Path) -> list[str]:
    return sorted(str(file.relative_to(folder)) for file in folder.rglob("*") if file.is_file())


@pytest.mark.parametrize("name", ["hat", "hat-2", "2", "a" * 60])
def test_an_address(name: str) -> None:
    assert is_address(name)


@pytest.mark.parametrize(
    ("typed", "near"),
    [
        ("Harbour Hat", "harbour-hat"),
        ("hat.md", "hat"),
        ("Mütze", "mutze"),
        ("../../etc/passwd", "etc-passwd"),
        ("hat--two-", "hat-two"),
        ("HAT", "hat"),
        ("hat\n", "hat"),
        ("編み物", ""),
        ("", ""),
        ("²", "2"),
        ("-rf", "rf"),
        ("a" * 61, "a" * 60),
    ],
)
def test_what_is_none_gets_the_nearest(tmp_path: Path, typed: str, near: str) -> None:
    assert not is_address(typed)
    assert nearest_address(typed) == near
    assert not near or is_address(near)
    with pytest.raises(CannotBegin, match=f"Try “{near}”" if near else "small letters"):
        begin(typed, tmp_path, new_project=False)
    assert files_below(tmp_path) == []


def test_an_empty_folder_becomes_a_project(tmp_path: Path) -> None:
    (tmp_path / ".git").mkdir()
    begun = begin("ear-band", tmp_path, new_project=False)
    assert files_below(tmp_path) == ["content/patterns/ear-band.md", "content/site.yaml"]
    assert (begun.project, begun.studio) == (tmp_path, tmp_path / "content" / "site.yaml")


def test_elsewhere_the_file_stands_alone(tmp_path: Path) -> None:
    (tmp_path / "letter.txt").touch()
    begun = begin("ear-band", tmp_path, new_project=False)
    assert files_below(tmp_path) == ["ear-band.md", "letter.txt"]
    assert (begun.project, begun.studio) == (None, None)


def test_any_folder_becomes_a_project_where_that_is_asked_for(tmp_path: Path) -> None:
    (tmp_path / "letter.txt").touch()
    begin("ear-band", tmp_path, new_project=True)
    assert files_below(tmp_path) == ["content/patterns/ear-band.md", "content/site.yaml", "letter.txt"]


@pytest.mark.parametrize("inside", [".", "content", "content/patterns", "drafts/old"])
def test_inside_a_project_the_pattern_goes_with_the_others(tmp_path: Path, inside: str) -> None:
    studio = tmp_path / "content" / "site.yaml"
    studio.parent.mkdir()
    studio.write_text("name: Ours\n", encoding="utf-8")
    folder = tmp_path / inside
    folder.mkdir(parents=True, exist_ok=True)
    begun = begin("ear-band", folder, new_project=False)
    assert begun.pattern == tmp_path / "content" / "patterns" / "ear-band.md"
    assert begun.pattern.is_file()
    assert studio.read_text(encoding="utf-8") == "name: Ours\n"


def test_a_file_that_is_there_stays_as_it_is(tmp_path: Path) -> None:
    begin("ear-band", tmp_path, new_project=False)
    pattern, studio = (tmp_path / "content" / name for name in ("patterns/ear-band.md", "site.yaml"))
    pattern.write_text("mine", encoding="utf-8")
    studio.write_text("mine too", encoding="utf-8")
    with pytest.raises(CannotBegin, match="there already"):
        begin("ear-band", tmp_path, new_project=False)
    begin("mitt", tmp_path, new_project=True)
    assert (pattern.read_text(encoding="utf-8"), studio.read_text(encoding="utf-8")) == ("mine", "mine too")


def test_a_link_that_leads_nowhere_is_a_file_that_is_there(tmp_path: Path) -> None:
    (tmp_path / "letter.txt").touch()
    outside = tmp_path / "outside.md"
    (tmp_path / "ear-band.md").symlink_to(outside)
    with pytest.raises(CannotBegin, match="there already"):
        begin("ear-band", tmp_path, new_project=False)
    assert not os.path.lexists(outside)


# -------------------------------------------------------------------------------------------------- from a pasted text

SCARF = """Old Scarf

Cast on 41 sts.
Row 1: Knit.
Row 2: Do as you like.
Rep Row 1 19 times.
Bind off all sts.
"""


def run(*words: str) -> tuple[int, str]:
    done = CliRunner().invoke(sizewright, words)
    return done.exit_code, done.output


def test_from_a_text(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("Old Scarf.txt").write_text(SCARF, encoding="utf-8-sig")
    code, said = run("begin", "--from", "Old Scarf.txt")
    assert code == 0
    assert "Wrote old-scarf.md: every word of the text, 4 lines of it as instructions" in said
    assert "left to you in the header: sizes and gauge" in said
    assert "line 5: Row 2: Do as you like." in said
    code, said = run("proof", "old-scarf.md")
    assert (code, said.count("not-understood"), "Do as you like" in said) == (1, 1, True)
    assert run("begin", "--from", "Old Scarf.txt")[0] == 2
    assert run("begin", "another", "--from", "Old Scarf.txt")[0] == 0
    assert files_below(tmp_path) == ["Old Scarf.txt", "another.md", "old-scarf.md"]


@pytest.mark.parametrize(
    ("content", "why"),
    [(b"", "is empty"), (b" \n", "is empty"), (b"\xff\xfe\x00", "no plain text"), (None, "No such file")],
)
def test_what_is_no_text(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, content: bytes | None, why: str) -> None:
    monkeypatch.chdir(tmp_path)
    if content is not None:
        Path("scarf.txt").write_bytes(content)
    code, said = run("begin", "--from", "scarf.txt")
    assert (code, why in said, Path("scarf.md").exists()) == (2, True, False)


def test_a_name_or_a_text_is_needed() -> None:
    assert run("begin") == (2, run("begin")[1])
    assert "Missing argument 'NAME'" in run("begin")[1]
