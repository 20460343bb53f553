"""In: sources and their words in another language. Out: the tree in that language, with every number of the source."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from sizewright.base.place import Lines
from sizewright.read.folder import read_project, read_text
from sizewright.read.pattern import Heading, Image, Insert, Markup, NoteOpen, Pattern, Piece
from sizewright.read.translating.beside import judged_beside, own_texts, read_translation
from sizewright.read.translating.pairs import commented, read_pairs
from sizewright.read.translating.refreshed import refreshed
from sizewright.read.translating.rules import STALE_TRANSLATION
from sizewright.read.translating.texts import texts_of
from sizewright.read.translating.told import in_language

QUANTITY = "<!-- finished height -->\nfertige Höhe\n"


@pytest.fixture(scope="module")
def sources(repository: Path) -> tuple[Pattern, ...]:
    """Every pattern and page of the demo and some techniques, as they stand in English."""
    project = read_project(repository)
    return (*project.patterns, *project.techniques[:3], *project.pages)


def told(pattern: Pattern, text: str) -> Pattern:
    """A source with a translation."""
    translation, findings = read_translation(Lines("x.de.md", text), "en", "de")
    assert findings == ()
    return replace(pattern, translations=(translation,))


def as_it_is(pattern: Pattern) -> str:
    """A file of translations with the words of the source for their own translation."""
    return "\n".join(f"{commented(text.words)}\n{text.words}\n" for text in texts_of(pattern))


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


SOURCE = """---
title: Cowl
sizes: {S: {}, M: {}, Largest of all: {note: for a tall reader}}
gauge: {stitches: 20 st / 10 cm, rows: 28 rnd / 10 cm, needle: 5 mm, over: stockinette}
needles: 3.5 mm circular needle
yarn: {A: {weight: medium, colour: moss, note: a wool}, B: {weight: medium, fibre: wool, called: oatmeal}}
finished: [{label: Depth, value: edge}]
---
```grade
edge = 4 (5, 6) cm
```

## The edge

The edge is {edge} deep; [block](../techniques/blocking.md) it to {edge:long}.

::: learners Why so deep
- It curls.
- ![The edge rolled up](edge.svg)
:::

```work
Cast on 80 (88, 96) sts. Join to work in the round.
Knit to the mark you made at {edge}, over 80 (88, 96) sts.   # declared: 80 (88, 96) sts
Rnd 1: Knit.
```
"""

GERMAN = """<!-- Cowl -->
Schlauchschal

<!-- Largest of all -->
Größte

<!-- for a tall reader -->
für Große

<!-- 3.5 mm circular needle -->
Rundstricknadel 3,5 mm

<!-- moss -->
Moos

<!-- Depth -->
Höhe

<!-- ## The edge -->
## Die Kante

<!-- The edge is {edge} deep; [block](../techniques/blocking.md) it to {edge:long}. -->
Auf {edge:long} [spannen](../techniques/blocking.md); die Kante ist {edge} hoch.

<!-- Why so deep -->
Warum so hoch

<!-- - It curls.
- ![The edge rolled up](edge.svg) -->
- Sie rollt sich.
- ![Die aufgerollte Kante](edge.svg)

<!-- Knit to the mark you made at {edge}, over 80 (88, 96) sts. -->
Über 80 (88, 96) M re bis zur Marke bei {edge}.
"""


@pytest.fixture(scope="module")
def cowl() -> Pattern:
    return told(read_text(SOURCE, "cowl.md").patterns[0], GERMAN)


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


# -------------------------------------------------------------------------------------------------- the file refreshed


def again(pattern: Pattern, text: str) -> str:
    texts = texts_of(pattern)
    return refreshed(texts, {one.key for one in texts}, read_pairs(Lines("x.de.md", text))).text


def test_a_file_is_written_filled_and_refreshed_without_a_change(sources: tuple[Pattern, ...]) -> None:
    for pattern in sources:
        empty = again(pattern, "")
        pairs = read_pairs(Lines("x.de.md", empty))
        assert pairs.findings == ()
        assert [pair.key for pair in pairs.pairs] == [text.key for text in texts_of(pattern) if text.asked]
        assert again(pattern, empty) == empty
        filled = as_it_is(pattern)
        assert again(pattern, filled) == filled


def test_refreshing_keeps_every_translation_and_remark(cowl: Pattern) -> None:
    text = f"""<!-- The edge is deep. -->
Die Kante ist hoch.

<!--- To be asked: is it a scarf? --->

{GERMAN}
<!--- Behind all. --->
"""
    after = again(cowl, text)
    assert "\n<!-- S -->\n\n" in after
    assert after.index("To be asked") < after.index("Schlauchschal")
    assert after.endswith("<!-- The edge is deep. -->\nDie Kante ist hoch.\n\n<!--- Behind all. --->\n")
    assert "does not hold the words below" in after
    before = {(pair.key, pair.translation) for pair in read_pairs(Lines("x", text)).pairs}
    assert before <= {(pair.key, pair.translation) for pair in read_pairs(Lines("x", after)).pairs}
    assert again(cowl, after) == after


# What may mean something in a file of pairs, in Markdown or in a header, put together at random.
SIGNS = (
    "<!--",
    "-->",
    "<!---",
    "\n",
    "\n\n",
    "{edge}",
    "{edge",
    "}",
    "::: sizes S",
    ":::",
    "```work",
    "## ",
    "- ",
    "> ",
    "|-|",
    "---",
)
words = some.lists(some.sampled_from((*SIGNS, "[block](../techniques/blocking.md)", "![", "](", "3,5 mm", "Cowl", " ")))


@settings(max_examples=40)
@given(words, words)
def test_nothing_in_a_translation_is_a_traceback(cowl: Pattern, title: list[str], edge: list[str]) -> None:
    passage = "The edge is {edge} deep; [block](../techniques/blocking.md) it to {edge:long}."
    pairs = zip(("Cowl", "3.5 mm circular needle", passage), (title, title, edge), strict=True)
    text = "\n\n".join(f"{commented(said)}\n{''.join(told)}" for said, told in pairs)
    translation, _ = read_translation(Lines("cowl.de.md", text), "en", "de")
    list(judged_beside(cowl, translation))
    other = in_language(replace(cowl, translations=(translation,)), "de")
    assert [piece for piece in other.body if hasattr(piece, "lines")] == [
        one for one in cowl.body if hasattr(one, "lines")
    ]


def test_words_may_hold_the_end_of_a_comment() -> None:
    words = "an arrow -->\nand --> another -->"
    (pair,) = read_pairs(Lines("x", f"{commented(words)}\nein Pfeil\n")).pairs
    assert (pair.key, pair.translation) == (" ".join(words.split()), "ein Pfeil")
