"""In: a line of instructions. Out: its label, its words and the stitch count promised at its end, each as markup.

The count looks unlike the instruction (style rule: fiatfiberarts.com 2019, "count must look unlike instructions"), and
the label stands out, so that a reader finds the row again after looking at the needles.
"""

import re
from collections.abc import Callable, Iterable, Iterator, Sequence

from markupsafe import Markup

from sizewright.publish.view import Line
from sizewright.publish.view_explained import Explained
from sizewright.read.notation.printed_rows import Line as PrintedLine
from sizewright.read.pattern import Insert, LinePiece, TypedList, Words

# A number of the line while its words are looked at: one character of a private plane of Unicode.
_PLANE = 0xF0000
_SIGN = re.compile(r"[\U000F0000-\U000FFFFD]")

# "Rnd 1:", "Rows 2 and 4 (WS):", "Next Rnd (dec):", "1st row:": short, no comma, and one of the words for a pass.
_LABEL = re.compile(r"(?=[^:]{0,60}\b(?:row|rnd|round)s?\b)[^:;,]{1,60}:(?=\s|$)", re.IGNORECASE)
_NUMBER = r"(?:\d+|[\U000F0000-\U000FFFFD])"
_STITCHES = r"st(?:s|itch(?:es)?)?\b"
_COUNT = re.compile(
    rf"\s*(?:[(\[]\s*=?\s*{_NUMBER}\s*{_STITCHES}[^()\[\]]*[)\]]\.?"  # (88 sts), [8 sts decreased]
    rf"|(?<=[.;:—–])\s+{_NUMBER}\s*{_STITCHES}(?:\s+[a-z ]{{1,30}})?\.?)\s*$",  # ... to end. 88 sts.
    re.IGNORECASE,
)
_YARN_OVER = re.compile(r"\b(?:yo|yarn over)\b", re.IGNORECASE)
_NOTHING = Markup()


def line_view(
    pieces: Iterable[LinePiece],
    number: Callable[[Insert | TypedList], str],
    explained: Explained | None = None,
    yarn_overs: Sequence[str] = (),
) -> Line:
    """One line; `number` gives the markup of a number among the words, `explained` how the words are told.

    `yarn_overs` are what those among the words are called in UK terms, "" for one that is called alike.
    """
    numbers: list[str] = []
    text = _signed(pieces, numbers, number).strip()
    text = text[:1].upper() + text[1:]  # the words of a plan may begin a line
    label, rest = _label(text)
    rest, count = _count(rest)
    told = explained or Explained()
    if any(yarn_overs) and len(_YARN_OVER.findall(text)) == len(yarn_overs) == len(_YARN_OVER.findall(rest)):
        rest = _with_yarn_overs(rest, iter(yarn_overs), numbers, told)
    return Line(
        _filled(told.plain(label), numbers), _filled(told.line(rest), numbers), _filled(told.plain(count), numbers)
    )


def printed_view(
    line: PrintedLine, number: Callable[[Insert | TypedList], str], explained: Explained | None = None
) -> Line:
    """A line that was printed in its parts."""
    numbers: list[str] = []
    told = explained or Explained()
    return Line(
        _filled(told.plain(_signed(line.label, numbers, number)), numbers),
        _filled(told.line(_signed(line.words, numbers, number)), numbers),
        _filled(told.plain(_signed(line.count, numbers, number)), numbers),
    )


def _with_yarn_overs(text: str, called: Iterator[str], numbers: list[str], told: Explained) -> str:
    """The words with a sign for each yarn over that has another word in UK terms, which is added to `numbers`."""

    def sign(found: re.Match[str]) -> str:
        word = next(called)
        markup = told.yarn_over(found.group(), word) if word else None
        if markup is None:
            return found.group()
        numbers.append(markup)
        return chr(_PLANE + len(numbers) - 1)

    return _YARN_OVER.sub(sign, text)


def _signed(pieces: Iterable[LinePiece], numbers: list[str], number: Callable[[Insert | TypedList], str]) -> str:
    """The words with a sign for each number, whose markup is added to `numbers`."""
    words: list[str] = []
    for piece in pieces:
        if isinstance(piece, str | Words):
            words.append(_SIGN.sub("", piece if isinstance(piece, str) else piece.text))
            continue
        words.append(chr(_PLANE + len(numbers)))
        numbers.append(number(piece))
    return "".join(words)


def pieces_words(pieces: Iterable[LinePiece]) -> str:
    """Words, with a figure where a number stands."""
    found = (piece.text if isinstance(piece, Words) else piece for piece in pieces)
    return "".join(piece if isinstance(piece, str) else "1" for piece in found)


def _label(text: str) -> tuple[str, str]:
    found = _LABEL.match(text)
    return (text[: found.end()], text[found.end() :].lstrip()) if found else ("", text)


def _count(text: str) -> tuple[str, str]:
    """The words and the count behind them, without its bracket: the count is set apart by its looks."""
    found = _COUNT.search(text)
    return (text[: found.start()].rstrip(), found.group().strip(" ()[].=")) if found else (text, "")


def _filled(words: Markup, numbers: list[str]) -> Markup:
    """The words with the numbers back in their places."""
    escaped = str(words)
    if numbers:
        escaped = _SIGN.sub(lambda sign: numbers[ord(sign.group()) - _PLANE], escaped)
    return Markup(escaped)  # noqa: S704 (escaped above)
