"""In: sources and their words in another language. Out: the tree in that language, with every number of the source."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from tests.read.translated import GERMAN, SOURCE, again, as_it_is, demo, german_cowl, told

from sizewright.base.language import language, speaking
from sizewright.base.place import Lines
from sizewright.publish.in_language import telling
from sizewright.publish.usual_names import spoken_name
from sizewright.publish.view_sizes import size_choices
from sizewright.read.folder import read_text
from sizewright.read.pattern import Heading, Image, Insert, Markup, NoteOpen, Pattern, Piece
from sizewright.read.translating.beside import judged_beside, own_texts, read_translation
from sizewright.read.translating.pairs import commented
from sizewright.read.translating.rules import STALE_TRANSLATION
from sizewright.read.translating.texts import texts_of
from sizewright.read.translating.told import in_language

QUANTITY = "<!-- finished height -->\nfertige Höhe\n"


@pytest.fixture(scope="module")
def sources(repository: Path) -> tuple[Pattern, ...]:
    """The sources of the demo."""
    return demo(repository)


def numbered(body: tuple[Piece, ...]) -> Iterator[Piece]:
    """What no translation may change: all that is not words."""
    for piece in body:
        match piece:
            case Markup():
                continue
            case Heading():
                yield replace(piece, text="")
            case Image():
                yield replace(piece, alt="")
            case NoteOpen():
                yield replace(piece, title="")
            case _:
                yield piece


def upside_down(words: str) -> str:
    """Other words with the same numbers, marks and links: every word of small letters alone is turned around."""
    return " ".join(word[::-1] if word.isalpha() and word.islower() else word for word in words.split(" "))


def test_a_source_in_its_own_words_is_the_source_itself(sources: tuple[Pattern, ...]) -> None:
    for pattern in sources:
        same = told(pattern, as_it_is(pattern))
        assert list(judged_beside(same, same.translations[0])) == [], pattern.name
        assert replace(in_language(same, "de"), translations=()) == replace(pattern, translations=())


def test_a_translation_changes_no_number_no_block_and_no_anchor(sources: tuple[Pattern, ...]) -> None:
    changed = 0
    for pattern in sources:
        text = "\n".join(f"{commented(one.words)}\n{upside_down(one.words)}\n" for one in texts_of(pattern))
        other = in_language(told(pattern, text), "de")
        changed += other.body != pattern.body
        assert list(numbered(other.body)) == list(numbered(pattern.body)), pattern.name
        assert other.size_names == pattern.size_names
        assert [one.formula for one in other.header.finished] == [one.formula for one in pattern.header.finished]
    assert changed == len(sources)


def test_without_a_translation_of_its_own_a_passage_says_which_language_it_is_in(sources: tuple[Pattern, ...]) -> None:
    for pattern in sources:
        other = in_language(told(pattern, ""), "de")
        assert other.header == pattern.header
        assert list(numbered(other.body)) == list(numbered(pattern.body))
        html = "".join(piece.html for piece in other.body if isinstance(piece, Markup))
        passages = sum(text.passage is not None for text in texts_of(pattern))
        assert html.count(' lang="en"') >= passages > 0
        bare = html.replace('<div lang="en">\n', "").replace('<span lang="en">', "")
        was = "".join(piece.html for piece in pattern.body if isinstance(piece, Markup))
        assert bare.replace("</div>\n", "").replace("</span>", "") == was


@pytest.fixture(scope="module")
def cowl() -> Pattern:
    """The cowl with its German."""
    return german_cowl()


def test_header_and_body_are_in_the_other_language(cowl: Pattern) -> None:
    other = in_language(cowl, "de")
    assert (other.header.title, other.header.finished[0].label) == ("Schlauchschal", "Höhe")
    assert other.header.sizes[2].remarks["note"].text == "for a tall reader"  # rules go by it; it is shown by its name
    assert other.translations[0].names["for a tall reader"] == "für Große"
    heading = next(piece for piece in other.body if isinstance(piece, Heading))
    assert (heading.text, heading.anchor) == ("Die Kante", "the-edge")
    styles = [piece.style.text if piece.style else "" for piece in other.body if isinstance(piece, Insert)]
    assert styles == ["long", ""]  # the very numbers of the source, in the order of the German sentence
    assert [piece.alt for piece in other.body if isinstance(piece, Image)] == ["Die aufgerollte Kante"]
    assert in_language(cowl, "fr") is cowl


def test_a_needle_keeps_its_size_with_a_decimal_comma(cowl: Pattern) -> None:
    needle = in_language(cowl, "de").header.needles[0]
    assert needle.sure == cowl.header.needles[0].sure
    (size,) = needle.sizes
    assert needle.text[size.start : size.end] == "3,5 mm"


def test_names_stay_inside_and_are_told_apart(cowl: Pattern) -> None:
    other = in_language(cowl, "de")
    names = other.translations[0].names
    assert other.size_names == ("S", "M", "Largest of all")
    assert other.header.yarns[0].colour == cowl.header.yarns[0].colour
    told = ("Largest of all", "moss", "The edge", "Why so deep")
    assert [names[name] for name in told] == ["Größte", "Moos", "Die Kante", "Warum so hoch"]


def test_a_line_in_words_of_its_own_keeps_its_numbers(cowl: Pattern) -> None:
    ((span, line),) = in_language(cowl, "de").translations[0].lines_told.items()
    assert cowl.line_at(span).startswith("Knit to the mark")
    before, sizes, between, edge, behind = line
    assert (before, between, behind) == ("Über ", " M re bis zur Marke bei ", ".")
    typed = next(one for one in cowl.body if hasattr(one, "lines")).lines[1].pieces
    assert sizes is typed[3]
    assert edge is typed[1]


def test_a_line_that_can_be_printed_is_not_asked_for_and_may_be_told(cowl: Pattern) -> None:
    cast_on = "Cast on 80 (88, 96) sts. Join to work in the round."
    assert [text.asked for text in texts_of(cowl) if text.words == cast_on] == [False]
    pair = f"<!-- {cast_on} -->\n80 (88, 96) M anschlagen und schließen."
    own, findings = read_translation(Lines("cowl.de.md", f"{GERMAN}\n{pair}\n"), "en", "de")
    assert findings == ()
    assert STALE_TRANSLATION.name not in [one.rule for one in judged_beside(cowl, own)]
    lines = in_language(replace(cowl, translations=(own,)), "de").translations[0].lines_told
    assert any(line[-1] == " M anschlagen und schließen." for line in lines.values())
    assert pair in again(cowl, f"{GERMAN}\n{pair}\n")


def test_only_what_is_asked_for_is_missing(cowl: Pattern) -> None:
    (missing,) = judged_beside(cowl, cowl.translations[0])  # two sizes, the fabric, two yarns, a note, fibre, "oatmeal"
    assert missing.message.startswith("8 texts are not translated: cowl.md:3:9: “S”; ")


def test_what_is_asked_for_is_said_in_the_order_of_the_source(cowl: Pattern) -> None:
    words = [text.words.split("\n")[0] for text in texts_of(cowl) if text.asked]
    assert words == [
        *("Cowl", "S", "M", "Largest of all", "for a tall reader", "stockinette", "3.5 mm circular needle"),
        *("A", "B", "moss", "a wool", "wool", "oatmeal", "Depth", "## The edge"),
        "The edge is {edge} deep; [block](../techniques/blocking.md) it to {edge:long}.",
        *("Why so deep", "- It curls.", "Knit to the mark you made at {edge}, over 80 (88, 96) sts."),
    ]


def test_an_adaptation_is_asked_only_for_what_its_base_does_not_say(sources: tuple[Pattern, ...]) -> None:
    hat = next(pattern for pattern in sources if pattern.name == "purlside-hat")
    assert hat.adapts is not None
    own = {text.words for text in own_texts(hat, texts_of(hat), based_told=True)}
    assert "in class we measure instead" in own
    assert not own & {text.words for text in texts_of(hat.adapts.base)}
    in_base = """<!-- ## Brim -->
## Bündchen

<!-- The brim is {brim} deep and is worn flat.
For a brim to turn up, work the ribbing twice as deep before you go on, and
measure the rest from the fold. -->
Das Bündchen ist {brim} hoch und wird flach getragen."""
    base, _ = read_translation(Lines("b.de.md", in_base), "en", "de")
    translation, _ = read_translation(
        Lines("a.de.md", f"{commented('in class we measure instead')}\nwir messen\n\n{QUANTITY}"), "en", "de", base
    )
    other = in_language(replace(hat, translations=(translation,)), "de")
    assert "Bündchen" in [piece.text for piece in other.body if isinstance(piece, Heading)]
    assert other.adapts is not None
    assert "wir messen" in [one.called.because.text for one in other.adapts.departures]
    names = other.translations[0].names  # what the places of departures are called, and the headings over them
    assert (names["finished height"], names["The brim is"], names["Brim"]) == (
        "fertige Höhe",
        "Das Bündchen ist",
        "Bündchen",
    )
    assert names["Rep Rnd 1 until piece measures"].startswith("1. Rd wdh")


def test_what_a_designer_measures_and_a_row_of_a_table_can_be_told() -> None:
    """Usual measurements are messages of the program; of a designer's own the translation is asked, and it is shown."""
    source = SOURCE.replace("S: {}, M: {}", "S: {head: 5 cm, cord_loop: 9 cm}, M: {like: Glove 8, head: 6 cm}")
    pattern = read_text(source, "cowl.md").patterns[0]
    asked = {text.words for text in texts_of(pattern)}
    assert {"cord loop", "Glove 8"} <= asked
    assert "head" not in asked
    other = in_language(told(pattern, "<!-- cord loop -->\nKordelring\n\n<!-- Glove 8 -->\nGröße 8\n"), "de")
    assert other.header.sizes[1].remarks["like"].text == "Glove 8"
    with speaking(language("de", ())), telling(other):
        assert (spoken_name("cord_loop"), size_choices(other.header.sizes)[1].remark) == ("Kordelring", "Größe 8")
