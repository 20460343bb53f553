"""In: words and their German. Out: whether figures that belong to the name of a stitch are taken for other numbers."""

import pytest

from sizewright.base.place import Lines
from sizewright.read.translating.compared import compared
from sizewright.read.translating.pairs import commented, read_pairs
from sizewright.read.translating.texts import Text


def wrong(words: str, told: str) -> list[str]:
    """What the findings say of the two."""
    lines = Lines("a.de.md", f"{commented(words)}\n{told}\n")
    (pair,) = read_pairs(lines).pairs
    return [
        finding.message.partition("translation of ")[2]
        for finding in compared(pair, Text(pair.span, words), "en", "de")
    ]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("The holes are a yo beside an ssk.", "Die Löcher sind 1 U neben 2 M überz zus-str."),
        ("Each yo of the 3 is followed by k2tog.", "Auf jeden U der 3 folgt 2 M re zus-str."),
        ("After the sk2p, a yo and another yo.", "Nach dem dopp überz Abn 1 U und noch 1 U."),
        ("Work k2tog tbl, then k2tog and p2tog.", "2 M re verschr zus-str, dann 2 M re zus-str und 2 M li zus-str."),
        ("Make an sssk.", "3 M überz zus-str arbeiten."),
    ],
)
def test_figures_in_the_name_of_a_stitch_are_no_other_numbers(words: str, told: str) -> None:
    assert wrong(words, told) == []


@pytest.mark.parametrize(
    ("words", "told", "added"),
    [
        ("Beside an ssk.", "Neben 3 M überz zus-str.", "“3”"),
        ("A yo, on 4 sts.", "1 U auf 5 M.", "“5”"),
        ("A yo.", "1 U und 1 U.", "“1”"),
        ("Over {k2tog} sts.", "Über 2 M re zus-str.", "“2”"),
    ],
)
def test_every_other_figure_is(words: str, told: str, added: str) -> None:
    (message,) = wrong(words, told)
    assert f"has {added}, not in the source" in message
