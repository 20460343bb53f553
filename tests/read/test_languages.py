"""In: `languages` of `site.yaml`, right and wrong. Out: the codes, or what is wrong with the words."""

from pathlib import Path

import pytest

from sizewright.base.place import Lines
from sizewright.read.folder import read_project
from sizewright.read.project import Studio
from sizewright.read.studio import read_studio
from sizewright.read.values import Values


def read(text: str) -> tuple[Studio, list[str]]:
    values = Values(Lines("site.yaml", text))
    return read_studio(values), [finding.message for finding in values.findings]


@pytest.mark.parametrize(
    ("text", "codes"),
    [
        ("name: Rook", ("en",)),
        ("languages: [en, de]", ("en", "de")),
        ("languages: de", ("de",)),
        ("language: fr", ("fr",)),
        ("languages: [en, pt-BR]", ("en", "pt-BR")),
    ],
)
def test_languages_are_codes(text: str, codes: tuple[str, ...]) -> None:
    """BCP 47; the first is that of the sources."""
    studio, messages = read(text)
    assert (studio.languages, studio.language, messages) == (codes, codes[0], [])


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("languages: [en, deutsch]", "“deutsch” is no code of a language."),
        ("languages: [en, DE]", "“DE” is no code of a language."),
        ("languages: [en, pt_BR]", "“pt_BR” is no code of a language."),
        ("languages: [en, en]", "“en” stands twice in “languages”."),
        ("languages: [xx-QQ]", "“xx-QQ” is no code of a language."),
        ("languages: ['']", "“languages” is empty."),
    ],
)
def test_what_is_no_language_is_told(text: str, message: str) -> None:
    studio, messages = read(text)
    assert messages == [message]
    assert studio.languages[0] == "en"


def test_a_language_without_words_is_told(tmp_path: Path) -> None:
    """The program has German, this project words of its own in Danish; in French nobody has said anything."""
    (tmp_path / "content" / "catalogues" / "da").mkdir(parents=True)
    (tmp_path / "content" / "catalogues" / "da" / "own.po").write_text('msgid ""\nmsgstr ""\n', "utf-8")
    (tmp_path / "content" / "site.yaml").write_text("name: Rook\nlanguages: [en-GB, de-AT, da, fr]\n", "utf-8")
    assert [finding.message for finding in read_project(tmp_path).findings] == [
        "There are no messages in “fr”: buttons, headings and instructions would be in English there."
    ]
