"""In: lists of abbreviations in a studio's own catalogues, and stray files. Out: terms of a language, or findings."""

from pathlib import Path

import pytest

from sizewright.publish.in_language import told_in
from sizewright.read.folder import read_project
from sizewright.read.project import Project
from sizewright.read.term import Term

FRENCH = """- {term: 2 m ens end, meaning: tricoter 2 mailles ensemble, spellings: [k2tog]}
- {term: 1 jeté, meaning: une maille de plus, spellings: [yo]}
- {term: CP, meaning: couleur principale, spellings: [MC], exact: yes}
"""


def project(folder: Path, languages: str, **files: str) -> Project:
    """A project in some languages with a list in each of `files`, by its code."""
    content = folder / "content"
    content.mkdir(parents=True, exist_ok=True)
    (content / "site.yaml").write_text(f"name: Rook\nlanguages: [{languages}]\n", encoding="utf-8")
    for code, text in files.items():
        path = content / "catalogues" / code.replace("_", "-") / "terms.yaml"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return read_project(folder)


def terms(read: Project, code: str) -> dict[str, Term]:
    """The terms of a site in a language."""
    return {term.term: term for term in told_in(code, read, ())[0].terms}


def wrong(read: Project) -> list[str]:
    """What is found in the lists and in files that nobody reads."""
    return [f"{one.rule}: {one.message}" for one in read.findings if one.rule != "untranslated"]


def test_a_list_is_that_of_a_language_the_program_has_none_for(tmp_path: Path) -> None:
    read = project(tmp_path, "en, fr", fr=FRENCH)
    told = terms(read, "fr")
    assert told["CP"] == Term("CP", "couleur principale", ("CP", "MC"), exact=True)
    assert told["2 m ens end"].spellings == ("2 m ens end", "k2tog")
    assert "C4F" in told
    assert "k2tog" not in told
    assert "k2tog" in terms(read, "en")
    assert wrong(read) == []


def test_it_adds_to_that_of_the_program_and_wins(tmp_path: Path) -> None:
    german = "- {term: U, meaning: Umschlag der Werkstatt}\n- {term: Rwm, meaning: rechts wie Muster}\n"
    read = project(tmp_path, "en, de", de=german)
    told = terms(read, "de")
    assert told["U"].meaning == "Umschlag der Werkstatt"
    assert {"Rwm", "MM", "C4F"} <= told.keys()
    assert wrong(read) == []


def test_a_list_is_read_in_each_country_of_its_language(tmp_path: Path) -> None:
    read = project(tmp_path, "en, fr-CA", fr=FRENCH, fr_CA="- {term: CP, meaning: coloris principal}\n")
    told = terms(read, "fr-CA")
    assert (told["CP"].meaning, told["1 jeté"].meaning) == ("coloris principal", "une maille de plus")


def test_figures_in_the_name_of_a_stitch_are_known_by_it(tmp_path: Path) -> None:
    page = tmp_path / "content" / "pages" / "lace.md"
    page.parent.mkdir(parents=True)
    page.write_text("---\ntitle: Lace\n---\n\nEach yo is a hole.\n", encoding="utf-8")
    told = "<!-- Lace -->\nAjour\n\n<!-- Each yo is a hole. -->\nChaque 1 jeté est un trou.\n"
    page.with_name("lace.fr.md").write_text(told, encoding="utf-8")
    assert wrong(project(tmp_path, "en, fr", fr=FRENCH)) == []
    assert wrong(project(tmp_path, "en, fr", fr="- {term: CP, meaning: couleur principale}\n")) == [
        "other-numbers: The translation of content/pages/lace.md:5:1 has “1”, not in the source."
    ]


@pytest.mark.parametrize(
    ("languages", "code", "text", "said"),
    [
        ("en, de", "fr", FRENCH, "stray-translation: The site is not published in “fr”."),
        ("en, de", "en", FRENCH, "stray-translation: “en” is the language of the sources, whose abbreviations stand"),
        ("en, fr", "fr", f"{FRENCH}- {{term: CP, meaning: x}}\n", "repeated-key: “CP” is explained twice."),
        ("en, fr", "fr", "- {term: CP}\n", "wrong-value: “meaning” is missing here."),
        ("en, fr", "fr", "- {term: CP, meaning: x, uses: 2}\n", "unknown-key: "),
        ("en, fr", "fr", "- {term: CP, meaning: x, exact: perhaps}\n", "wrong-value: "),
        ("en, fr", "fr", "term: [", "unreadable-header: "),
        ("en, fr", "fr", "CP", "wrong-value: "),
    ],
)
def test_what_is_wrong_in_a_list_is_told(tmp_path: Path, languages: str, code: str, text: str, said: str) -> None:
    (found,) = wrong(project(tmp_path, languages, **{code: text}))
    assert found.startswith(said)


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("stitches.de.md", "This translates nothing: there is no stitches.yaml beside it."),
        ("stitches.xx.md", "This translates nothing: there is no stitches.yaml beside it."),
        ("stitches_de.md", "This translates nothing: there is no stitches.yaml beside it."),
        ("site.xx.md", "Nobody reads this file: there is no language “xx”."),
        ("site.fr.md", "The site is not published in “fr”."),
        ("sit.de.md", "This translates nothing: there is no sit.md beside it."),
    ],
)
def test_words_of_the_studio_beside_no_file_of_it_are_told(tmp_path: Path, name: str, said: str) -> None:
    (tmp_path / "content").mkdir()
    (tmp_path / "content" / name).write_text("", encoding="utf-8")
    assert wrong(project(tmp_path, "en, de")) == [f"stray-translation: {said}"]


def test_words_of_a_site_without_its_file_are_told(tmp_path: Path) -> None:
    (tmp_path / "content").mkdir()
    for name in ("site.xx.md", "site.de.md"):
        (tmp_path / "content" / name).write_text("", encoding="utf-8")
    told = "stray-translation: This translates nothing: there is no site.yaml beside it."
    assert wrong(read_project(tmp_path)) == [told, told]
