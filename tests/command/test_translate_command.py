"""In: `sizewright translate` on sources and projects. Out: files to be filled in, in which nothing is ever lost."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from sizewright.command.main import sizewright
from sizewright.read.folder import read_project

PAGE = """---
title: Washing
---

Wash at 30 °C.

{more}"""


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """A project with one page, published in English and German."""
    for folder in ("pages", "patterns"):
        (tmp_path / "content" / folder).mkdir(parents=True)
    (tmp_path / "content" / "site.yaml").write_text("name: A studio\nlanguages: [en, de]\n", encoding="utf-8")
    (tmp_path / "content" / "pages" / "washing.md").write_text(PAGE.format(more=""), encoding="utf-8")
    return tmp_path


def translate(path: Path, into: str = "de") -> Result:
    return CliRunner().invoke(sizewright, ["translate", str(path), "--into", into])


def test_a_project_gets_a_file_for_every_source_with_something_to_say(project: Path) -> None:
    told = translate(project)
    assert told.exit_code == 0
    files = sorted(path.relative_to(project / "content").as_posix() for path in project.rglob("*.de.md"))
    assert files == ["pages/washing.de.md", "site.de.md"]
    assert "pages/washing.de.md: 2 of 2 texts are still to be translated" in told.output
    missing = [finding.rule for finding in read_project(project).findings]
    assert missing == ["missing-translation"] * 2


def test_a_file_is_filled_and_refreshed(project: Path) -> None:
    source, file = (project / "content" / "pages" / name for name in ("washing.md", "washing.de.md"))
    translate(source)
    filled = "<!-- Washing -->\nWaschen\n\n<!-- Wash at 30 °C. -->\nBei 30 °C waschen.\n"
    assert file.read_text(encoding="utf-8") == filled.replace("Waschen\n", "\n").replace("Bei 30 °C waschen.\n", "\n")
    file.write_text(filled, encoding="utf-8")
    assert "washing.de.md: all is translated" in translate(source).output
    assert file.read_text(encoding="utf-8") == filled
    source.write_text(PAGE.replace("30 °C", "40 °C").format(more="Lay it flat.\n"), encoding="utf-8")
    assert "2 of 3 texts are still to be translated; 1 at the end" in translate(source).output
    text = file.read_text(encoding="utf-8")
    assert text.index("Waschen") < text.index("<!-- Wash at 40 °C. -->\n\n") < text.index("<!-- Lay it flat. -->\n\n")
    assert text.endswith("<!-- Wash at 30 °C. -->\nBei 30 °C waschen.\n")
    line = text[: text.index("<!-- Wash at 40 °C. -->")].count("\n") + 1
    found = [
        finding for finding in read_project(project).findings if finding.span and finding.span.source.endswith(".de.md")
    ]
    assert [(finding.rule, finding.span and finding.span.line) for finding in found] == [
        ("missing-translation", line),
        ("stale-translation", text.count("\n") - 1),
    ]
    assert found[0].mend == "Write what is missing below its comment, which stands in the file already."
    assert found[1].mend == f"They stand in line {line}, to be filled in; then take this pair out."


def test_a_file_with_text_that_would_be_lost_is_left_as_it_is(project: Path) -> None:
    file = project / "content" / "pages" / "washing.de.md"
    file.write_text("Waschen\n", encoding="utf-8")
    told = translate(project)
    assert told.exit_code == 2
    assert "washing.de.md:1:1: “Waschen” stands behind no words of the source" in told.output
    assert file.read_text(encoding="utf-8") == "Waschen\n"
    assert not (project / "content" / "site.de.md").exists()


@pytest.mark.parametrize(
    ("path", "into", "words"),
    [
        ("", "en", "the language of the sources"),
        ("", "xq", "no code of a language"),
        ("content/pages/none.md", "de", "is not there"),
        ("content/pages/washing.de.md", "de", "is a translation itself"),
        ("content/heads.yaml", "de", "holds nothing that is translated"),
    ],
)
def test_what_cannot_be_translated_is_told(project: Path, path: str, into: str, words: str) -> None:
    for name in ("content/pages/washing.de.md", "content/heads.yaml"):
        (project / name).write_text("", encoding="utf-8")
    told = translate(project / path, into)
    assert told.exit_code == 2
    assert words in told.output
