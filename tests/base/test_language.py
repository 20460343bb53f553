"""In: small catalogues. Out: messages in the language that is spoken, English where nothing is said otherwise."""

from pathlib import Path

import pytest

from sizewright.base.language import Language, language, named, speaking, spoken, tr, tr_as, tr_many

WORDS = """\
msgid ""
msgstr ""
"Content-Type: text/plain; charset=utf-8\\n"
"Plural-Forms: nplurals=2; plural=(n != 1);\\n"

msgid "Knit {count} stitches"
msgstr "{count} Maschen rechts"

msgid "{n} row"
msgid_plural "{n} rows"
msgstr[0] "{n} Reihe"
msgstr[1] "{n} Reihen"

msgctxt "of a size"
msgid "every single one"
msgstr "alle"
"""


@pytest.fixture
def german(tmp_path: Path) -> Language:
    (tmp_path / "de").mkdir()
    (tmp_path / "de" / "words.po").write_text(WORDS, "utf-8")
    return language("de", (tmp_path,))


def told() -> tuple[str, ...]:
    return (
        tr("Knit {count} stitches", count=4),
        tr_many("{n} row", "{n} rows", 1),
        tr_many("{n} row", "{n} rows", 3),
        tr_as("of a size", "every single one"),
        tr("every single one"),
    )


def test_without_a_language_it_is_english() -> None:
    assert told() == ("Knit 4 stitches", "1 row", "3 rows", "every single one", "every single one")
    assert spoken().code == "en"


def test_within_it_is_the_language(german: Language) -> None:
    with speaking(german):
        assert told() == ("4 Maschen rechts", "1 Reihe", "3 Reihen", "alle", "every single one")
    assert told()[0] == "Knit 4 stitches"


def test_the_languages_own_name(german: Language) -> None:
    """The common locale data repository (CLDR), by way of Babel."""
    assert german.own_name == "Deutsch"


def test_names_are_those_of_one_source(german: Language) -> None:
    with speaking(german.naming({"Newborn": "Neugeborene"})):
        assert (named("Newborn"), named("Child")) == ("Neugeborene", "Child")
    assert named("Newborn") == "Newborn"


@pytest.mark.usefixtures("german")
def test_a_later_folder_tells_it_anew(tmp_path: Path) -> None:
    own = tmp_path / "own" / "de"
    own.mkdir(parents=True)
    (own / "words.po").write_text(WORDS.replace("Maschen rechts", "rechte Maschen"), "utf-8")
    both = language("de", (tmp_path, tmp_path / "own"))
    with speaking(both):
        assert tr("Knit {count} stitches", count=4) == "4 rechte Maschen"


def test_a_country_has_the_words_of_its_language(german: Language, tmp_path: Path) -> None:
    austrian = language("de-AT", (tmp_path,))
    with speaking(austrian):
        assert tr("Knit {count} stitches", count=4) == "4 Maschen rechts"
    assert (austrian.code, austrian.comma, german.comma) == ("de-AT", ",", ",")
