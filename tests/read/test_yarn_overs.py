"""In: rows with yarn overs. Out: their UK words by the stitches beside them; read again they are the same rows."""

import re
from itertools import chain
from pathlib import Path

import pytest
from tests.read.notation_again import directions, source, without_places

from sizewright.publish.told_lines import ToldLines
from sizewright.publish.view_explained import Explained
from sizewright.publish.view_words import WordsView
from sizewright.read.folder import read_project
from sizewright.read.pattern import Pattern, StitchBlock, WorkBlock
from sizewright.read.trade_words import Country

US = WordsView(Country.US, Country.US)
_TWICE = re.compile(r'<span class="us">(.*?)</span><span class="uk">(.*?)</span>')


def in_uk(pattern: Pattern) -> list[str]:
    """The lines of a pattern as a reader of UK terms has them, braces for numbers."""
    told = ToldLines.of(pattern)
    lines = chain.from_iterable(piece.lines for piece in pattern.body if isinstance(piece, WorkBlock | StitchBlock))
    views = (told.view(line, line.pieces, lambda _: "7", Explained(words=US)) for line in lines)
    whole = (f"{view.label} {view.text} {f'({view.count})' if view.count else ''}".strip() for view in views)
    return [_TWICE.sub(r"\2", line) for line in whole]


@pytest.mark.parametrize(
    ("row", "told"),
    [
        # yfwd: a UK pattern scanned at zanotowane.pl (small lace, with sk2po); the others common practice, no source
        ("*Yo, k1, sk2p, k1, yo, k1; rep from * to end.", "*Yo, k1, sk2po, k1, yfwd, k1; rep from * to end."),
        ("K1, *yo, k1, sk2p, k1, yo, k1; rep from * to end.", "K1, *yfwd, k1, sk2po, k1, yfwd, k1; rep from * to end."),
        ("K1, yo, p2tog, k to end.", "K1, yfrn, p2tog, k to end."),
        ("P2, yo, p2tog, p to end.", "P2, yrn, p2tog, p to end."),
        ("P2, yo, k2tog, p to end.", "P2, yon, k2tog, p to end."),
        ("P1, yo, ssp, yo, ssk, yo, k to end.", "P1, yrn, ssp, yon, ssk, yfwd, k to end."),
        ("K3, [k2tog] 3 times, [yo, k1] 6 times, k to end.", "K3, [k2tog] 3 times, [yfwd, k1] 6 times, k to end."),
        (
            "K3, [yo, p1] 6 times, k to end.",
            "K3, [yo, p1] 6 times, k to end.",
        ),  # behind a knit stitch once, then a purl
        ("P3, [yo, p1, k1] 6 times, k to end.", "P3, [yo, p1, k1] 6 times, k to end."),
        ("Yo, k to end.", "Yo, k to end."),
        ("K to end, yo.", "K to end, yo."),
        ("K1, yo twice, k2tog, k to end.", "K1, yo twice, k2tog, k to end."),
        ("K2, pm, yo, sm, p to end.", "K2, pm, yfrn, sm, p to end."),
        ("K1, yo, sl 1, k1, psso, yo, k to end.", "K1, yfwd, sl 1, k1, psso, yfwd, k to end."),
        ("K1, yo, sl 1 wyif, k to end.", "K1, yo, sl 1 wyif, k to end."),
        ("K1, yo, work to end as established.", "K1, yo, work to end as established."),
        ("(K1, yo, k1) in next st, k to end.", "(K1, yo, k1) in next st, k to end."),
        ("K1, yarn over, p to end.", "K1, yfrn, p to end."),
    ],
)
def test_a_yarn_over_is_called_by_the_stitches_beside_it(row: str, told: str) -> None:
    pattern = source(f"Cast on 20 sts.\nRow 1: {row}").patterns[0]
    assert in_uk(pattern)[1] == f"Row 1: {told}"
    again = source(f"Cast on 20 sts.\nRow 1: {told}").patterns[0]
    assert bare(again) == bare(pattern)


def bare(pattern: Pattern) -> object:
    """The trees without the places where they stand."""
    return [without_places(block) for block in directions(pattern)]


def test_the_demo_is_read_again_in_uk_terms(repository: Path) -> None:
    """Every row of the demo with a yarn over, told in UK terms, is the same row."""
    found = 0
    for pattern in read_project(repository).patterns:
        for line in in_uk(pattern):
            if re.search(r"\b(?:yfwd|yfrn|yrn|yon)\b", line):
                found += 1
                back = re.sub(r"\b(?:yfwd|yfrn|yrn|yon)\b", "yo", line)
                first, second = (source(one) for one in (line, back))
                assert bare(first.patterns[0]) == bare(second.patterns[0])
                assert "not-understood" not in [one.rule for one in first.findings]
    assert found


def test_a_yarn_over_is_explained_where_it_stands_first_in_either_terms() -> None:
    pattern = source("Cast on 20 sts.\nRow 1: K1, yo, k1, yo, k to end.").patterns[0]
    line = next(piece for piece in pattern.body if isinstance(piece, WorkBlock)).lines[1]
    us = ToldLines.of(pattern).view(line, line.pieces, str, Explained(words=US)).text
    assert us.count('<span class="us">yo</span><span class="uk">yfwd</span>') == 2
    uk = ToldLines.of(pattern).view(line, line.pieces, str, Explained(words=WordsView(Country.UK, Country.UK))).text
    assert "yo" in uk
    assert "yfwd" not in uk  # the author of a text in UK terms wrote "yo"
