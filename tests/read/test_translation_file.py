"""In: files of translations. Out: what they are refreshed to, in which nothing is lost, and never an exception."""

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from tests.read.translated import GERMAN, again, as_it_is, demo, german_cowl

from sizewright.base.place import Lines
from sizewright.read.pattern import Pattern
from sizewright.read.translating.beside import judged_beside, read_translation
from sizewright.read.translating.pairs import commented, read_pairs
from sizewright.read.translating.texts import texts_of
from sizewright.read.translating.told import in_language


@pytest.fixture(scope="module")
def sources(repository: Path) -> tuple[Pattern, ...]:
    """The sources of the demo."""
    return demo(repository)


@pytest.fixture(scope="module")
def cowl() -> Pattern:
    """The cowl with its German."""
    return german_cowl()


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
