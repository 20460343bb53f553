"""In: a source, read. Out: whose terms it is written in, those of the US or of the UK."""

import re
from collections.abc import Iterator

from sizewright.read.inserts import Words
from sizewright.read.pattern import Markup, Pattern, StitchBlock, WorkBlock
from sizewright.read.trade_words import Country, country_of

_TAG = re.compile(r"<[^>]*>")


def country_of_source(pattern: Pattern) -> Country | None:
    """The country its instructions, its text and its gauges show; None where they show none, or both."""
    return country_of("\n".join(_words(pattern)))


def _words(pattern: Pattern) -> Iterator[str]:
    yield from (gauge.over.text for gauge in pattern.header.gauges if gauge.over)
    for piece in pattern.body:
        match piece:
            case Markup(html=html):
                yield _TAG.sub(" ", html)
            case WorkBlock(lines=lines) | StitchBlock(lines=lines):
                pieces = (piece for line in lines for piece in (*line.pieces, "\n"))
                told = (piece.text if isinstance(piece, Words) else piece for piece in pieces)
                yield "".join(words if isinstance(words, str) else "#" for words in told)
