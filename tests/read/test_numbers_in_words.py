"""In: words and their German. Out: whether the two tell the same numbers and times, in figures or in words."""

import pytest

from sizewright.base.place import Lines
from sizewright.read.translating.compared import compared
from sizewright.read.translating.pairs import commented, read_pairs
from sizewright.read.translating.texts import Text


def wrong(words: str, told: str, into: str = "de") -> list[str]:
    """What the findings say of the two."""
    lines = Lines(f"a.{into}.md", f"{commented(words)}\n{told}\n")
    (pair,) = read_pairs(lines).pairs
    found = compared(pair, Text(pair.span, words), "en", into)
    return [finding.message.partition("a.de.md:1:1 ")[2] or finding.message for finding in found]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("Work two stitches.", "Zwei Maschen stricken."),
        ("Work 2 stitches.", "Zwei Maschen stricken."),
        ("Work two stitches.", "2 Maschen stricken."),
        ("Do it three times, then twice.", "Dreimal, dann zweimal arbeiten."),
        ("Twice as deep.", "Doppelt so hoch."),
        ("Join the two ends.", "Beide Enden verbinden."),
        ("A two-colour rib in four parts.", "Ein zweifarbiges Bündchen in vier Teilen."),
        ("One stitch, then this one.", "Eine Masche, dann diese."),
        ("One stitch.", "1 Masche."),
        ("Twenty-four stitches.", "Vierundzwanzig Maschen."),
        ("The fourth row, and mind it.", "Die vierte Reihe, und darauf achten."),
        ("At 7 pm, at 7.30 p.m. and at 12 am.", "Um 19 Uhr, um 19.30 Uhr und um 0 Uhr."),
        ("At 7 pm.", "Um 7 Uhr abends."),
        ("At 19:30.", "Um 19.30 Uhr."),
    ],
)
def test_the_same_number_however_it_is_told_is_none_other(words: str, told: str) -> None:
    assert wrong(words, told) == []


@pytest.mark.parametrize(
    ("words", "told", "said"),
    [
        ("Work two stitches.", "Drei Maschen stricken.", "lacks “two” and has “Drei”, not in the source."),
        ("Work two stitches.", "Eine Masche stricken.", "lacks “two”."),
        ("Work one stitch.", "Zwei Maschen stricken.", "has “Zwei”, not in the source."),
        ("Work 3 stitches.", "Zwei Maschen stricken.", "lacks “3” and has “Zwei”, not in the source."),
        ("Do it twice.", "Dreimal arbeiten.", "lacks “twice” and has “Dreimal”, not in the source."),
        ("Do it twice.", "Einmal arbeiten.", "lacks “twice”."),
        ("At 7 pm.", "Um 7 Uhr.", "lacks “19:00” and has “07:00”, not in the source."),
        ("At 19:30.", "Um 19.31 Uhr.", "lacks “19:30” and has “19:31”, not in the source."),
        ("At 7 am.", "Die 7 am Rand.", "lacks “07:00” and has “7”, not in the source."),  # "am" is no morning there
    ],
)
def test_another_number_is_one_also_in_words(words: str, told: str, said: str) -> None:
    assert wrong(words, told) == [said]


def test_words_of_a_language_whose_numbers_nobody_told_are_not_compared() -> None:
    assert wrong("Work two stitches.", "Siurau dua pwyth.", "cy") == []
    assert len(wrong("Work 2 stitches.", "Siurau 3 phwyth.", "cy")) == 1
