"""What a pasted pattern explains, and what only some of its sizes work. Patterns invented for these tests."""

import pytest
from tests.read.test_pasted import not_understood

from sizewright.proof.run import proof
from sizewright.read.folder import read_text
from sizewright.read.pasted import pasted


def test_abbreviations_are_no_rows() -> None:
    glossary = "BOR: beginning of round\nCO: cast on\ndec: decrease\nK2tog: knit 2 sts together\nSSK: slip, slip, knit"
    text = f"Hat\n\nABBREVIATIONS\n{glossary}\n\nBRIM\nCast on 80 sts.\nRow 1: Knit.\n"
    for one in (text, text.replace("ABBREVIATIONS\n", "Special words\n\n"), text.replace("IONS\n", "IONS USED:\n\n")):
        found = pasted(one, "hat")
        assert f"{glossary}\n\n## BRIM\n\n```work\nCast on" in found.source
        assert (found.placed, found.unplaced) == (2, ())
    behind = pasted(f"Hat\n\nCast on 80 sts.\n\nAbbreviations: k = knit\n{glossary}\n", "hat")
    assert (behind.placed, behind.unplaced) == (1, ())


SOME_SIZES = (
    "Hat\n\nSizes: S (Women's M, L)\n\nCast on 80 (88, 96) sts.\n\n{}\nNext row: K2tog, k to end.{}\nNext row: Knit.\n"
)


@pytest.mark.parametrize(
    ("line", "sizes"),
    [
        ("Sizes Women's M only:", "Women's M"),
        ("Size l only", "L"),
        ("For sizes S and Women's M only:", "S, Women's M"),
        ("SIZES S (L) ONLY:", "S, L"),
        ("For size S:", "S"),
    ],
)
def test_what_only_some_sizes_work_is_their_passage(line: str, sizes: str) -> None:
    found = pasted(SOME_SIZES.format(line, "\n"), "hat")
    assert f"\n::: sizes {sizes}\n\n```work\nNext row: K2tog, k to end.\n```\n\n:::\n\n```work\nNext" in found.source
    project = read_text(found.source)
    (after, *_) = [one for one in proof(project.patterns[0], project).worked.entries[::-1] if one.span.source]
    names = sizes.split(", ")
    assert after.after == tuple(n - (s in names) for n, s in ((80, "S"), (88, "Women's M"), (96, "L")))
    assert found.unplaced == ()


def test_a_passage_ends_where_other_sizes_begin() -> None:
    source = pasted(SOME_SIZES.format("Sizes S only:", "\nSize L only:"), "hat").source
    assert "::: sizes S\n\n```work\nNext row: K2tog, k to end.\n```\n\n:::\n\n::: sizes L\n" in source
    source = pasted(SOME_SIZES.format("Sizes S only:", "\nAll sizes:"), "hat").source
    assert "K2tog, k to end.\n```\n\n:::\n\n## All sizes:\n\n```work\nNext row: Knit.\n```" in source


@pytest.mark.parametrize("line", ["Sizes M only:", "Size L only: Purl 1 row.", "All other sizes:", "For size XL:"])
def test_sizes_that_are_not_known_are_asked_for(line: str) -> None:
    found = pasted(SOME_SIZES.format(line, "\n"), "hat")
    assert [one.text for one in found.unplaced] == [line]
    assert not_understood(found) == [line]


def test_sizes_below_their_heading() -> None:
    text = (
        "Hat\n\nSIZES\nChild (Women's S, Women's M, Men's)\nTo fit: 6 (7, 8, 9) in\n\nCast on 80 (88, 96, 104) sts.\n"
    )
    assert pasted(text, "hat").told.sizes == ("Child", "Women's S", "Women's M", "Men's")
