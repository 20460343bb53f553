"""In: lines of instructions. Out: sentences of tokens: words, numbers and signs, each with its place."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import Enum, auto
from fractions import Fraction

from sizewright.base.place import Span
from sizewright.read.inserts import Insert, LinePiece, Told, TypedList, Words, joined, typed_piece
from sizewright.read.notation.tree import Count
from sizewright.read.pattern import InstructionLine
from sizewright.read.typed_numbers import exact

_MOST_IN_WORDS = 12
_TEENS = (
    *("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"),
    *("thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"),
)
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
ALL_NUMBER_WORDS = {word: number for number, word in enumerate(_TEENS, start=1)} | {
    f"{ten}-{one}".removesuffix("-"): 10 * (place + 2) + number
    for place, ten in enumerate(_TENS)
    for number, one in enumerate(("", *_TEENS[:9]))
}
# Those that are written as words today; longer ones stand in older books.
NUMBER_WORDS = {word: number for word, number in ALL_NUMBER_WORDS.items() if number <= _MOST_IN_WORDS}
# Behind these words "one" is no number: "make one" is a stitch, "in one stitch" a place.
_LONGEST = 5  # figures; a longer number is no count of anything knitted
_KEEPS_WORD = ("make", "in", "into")

_TOKEN = re.compile(
    r"""(?P<cable>\d+/\d+(?:/\d+)?\s?(?:LPC|RPC|LC|RC)\b)
      | (?P<ordinal>\d+(?=(?:st|nd|rd|th)\s+(?:row|rnd|round)\b)|\d+(?=(?:st|nd|rd|th):))(?:st|nd|rd|th)
      | (?P<by>\d+\s?[x×]\s?\d+)
      | (?P<word>[^\W\d_](?:[^\W_]|&)*(?:[-'’][^\W_]+)*)
      | (?P<number>\d+[ ]\d+/0*[1-9]\d*|\d*[ ]?[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|\d+\.\d+|\d+)
      | (?P<sign>\*\*|[^\s])""",
    re.VERBOSE | re.IGNORECASE,
)

_WORKED = ("work", "knit", "purl", "k", "p", "continue", "cont", "rep", "repeat")
_NEEDLES = ("needle", "needles", "dpn", "dpns")
_LABEL = re.compile(
    r"(?:rows?|rnds?|rounds?) #(?: (?:to|-|and|,|&|through) #)*(?: \( (?:rs|ws|(?:right|wrong) side) \))?"
)


class Kind(Enum):
    """What a token is."""

    WORD = auto()
    NUMBER = auto()
    SIGN = auto()


@dataclass(frozen=True, slots=True)
class Token:
    """One word, number or sign. `text` is in small letters; `typed` as it stands."""

    kind: Kind
    text: str
    typed: str
    span: Span
    count: Count | None = None
    ordinal: bool = False


Sentence = tuple[Token, ...]


def sentences(lines: Sequence[InstructionLine]) -> Iterator[Sentence]:
    """The sentences of a block. A line ends a sentence, but for one that goes on in a line set further in."""
    for paragraph in paragraphs(lines):
        yield from _split([token for line in paragraph for token in tokens(line)])


def paragraphs(lines: Sequence[InstructionLine]) -> Iterator[tuple[InstructionLine, ...]]:
    """Each line with those set further in that go on with it."""
    waiting: list[InstructionLine] = []
    left = min((line.span.column for line in lines), default=1)
    for line in lines:
        if line.span.column == left and waiting:
            yield tuple(waiting)
            waiting = []
        waiting.append(line)
    if waiting:
        yield tuple(waiting)


def _split(found: Sequence[Token]) -> Iterator[Sentence]:
    """Cut at full stops; one inside brackets ends nothing."""
    sentence: list[Token] = []
    depth = 0
    for place, token in enumerate(found):
        depth += {"(": 1, "[": 1, ")": -1, "]": -1}.get(token.text, 0)
        if token.text == "." and depth <= 0:
            if _repeats(found[place + 1 :]):
                continue
            if _labels(sentence) and place + 1 < len(found):
                sentence.append(replace(token, text=":"))  # "Row 1. Knit"
                continue
            if len(sentence) == 1 and sentence[0].count is not None and place + 1 < len(found):
                sentence.append(replace(token, text=":"))  # "1. Knit 5, purl 5" is the first row
                continue
            if sentence:
                yield tuple(sentence)
            sentence = []
        elif depth <= 0 and sentence and _goes_over(sentence, token, found[place + 1 :]):
            yield tuple(sentence)
            sentence = []
        else:
            sentence.append(token)
    if sentence:
        yield tuple(sentence)


def _repeats(behind: Sequence[Token]) -> bool:
    """ ".--Repeat" belongs to the row before it."""
    texts = tuple(token.text for token in behind[:3])
    from_star = texts[:1] in (("rep",), ("repeat",)) and texts[1:] in (("from", "*"), ("between", "*"))
    return from_star or (texts[:1] == ("-",) and "repeat" in texts)


def _labels(sentence: Sequence[Token]) -> bool:
    """Whether all that stands before a full stop is the label of a row."""
    text = " ".join(token.text for token in sentence)
    return _LABEL.fullmatch(text) is not None


def _goes_over(before: Sequence[Token], token: Token, behind: Sequence[Token]) -> bool:
    """Whether a word stands between two sentences: in "Change to smaller needles and work in rib", or before a row."""
    if token.text != "and":
        return token.text == ";" and _next_row(behind)
    changed = before[0].text in ("change", "switch") and before[-1].text in _NEEDLES
    return changed and bool(behind) and behind[0].text in _WORKED


def _next_row(behind: Sequence[Token]) -> bool:
    """ "Row 1: Knit; Row 2: Purl": behind ";" a row begins."""
    return (
        len(behind) > 2 and _LABEL.fullmatch(" ".join(t.text for t in behind[:2])) is not None and behind[2].text == ":"
    )


def tokens(line: InstructionLine) -> Iterator[Token]:
    """The tokens of one line."""
    column = line.span.column
    for piece in line.pieces:
        if isinstance(piece, str):
            yield from _words(piece, line.span, column)
            column += len(piece)
        elif isinstance(piece, Words):
            yield from (replace(token, span=piece.span) for token in _words(piece.text, line.span, column))
        else:
            yield from _number(piece)
            column = piece.span.end_column


def _number(piece: Insert | TypedList) -> Iterator[Token]:
    """A number; printed as "twice" or "3 times", or as "4th", it is read as it is printed."""
    style = piece.style.text if isinstance(piece, Insert) and piece.style else ""
    yield Token(Kind.NUMBER, "#", typed_piece(piece), piece.span, Count(piece.span, piece), ordinal=style == "ordinal")
    if style == "times":
        yield Token(Kind.WORD, "times", "", piece.span)


def _words(text: str, line: Span, column: int) -> Iterator[Token]:
    before = ""
    for match in _TOKEN.finditer(text):
        typed = match.group()
        span = Span(line.source, line.line, column + match.start(), line.line, column + match.end(), line.home)
        folded = typed.casefold().replace("’", "'")
        if match["number"] or match["ordinal"]:
            figures = match["number"] or match["ordinal"]
            value = exact(figures) if len(figures) <= _LONGEST else Fraction(1, 2)
            count = Count(span, int(value)) if figures.isdecimal() and value.denominator == 1 else None
            yield Token(Kind.NUMBER, "#", typed, span, count, ordinal=match["ordinal"] is not None)
        elif folded in ALL_NUMBER_WORDS and before not in _KEEPS_WORD:
            yield Token(Kind.NUMBER, "#", typed, span, Count(span, ALL_NUMBER_WORDS[folded]))
        elif folded == "_":
            continue  # set in italics
        elif match["sign"]:
            yield Token(Kind.SIGN, {"–": "-", "—": "-", "−": "-"}.get(folded, folded), typed, span)
        else:
            yield Token(Kind.WORD, " ".join(folded.split()), typed, span)
        before = folded


def spanned(found: Sequence[Token]) -> Span:
    """The stretch from the first of some tokens to the last."""
    first, last = found[0].span, found[-1].span
    return Span(first.source, first.line, first.column, last.end_line, last.end_column, first.home)


def typed(found: Sequence[Token]) -> str:
    """The words as they stand, spaced as they are in print."""
    return "".join(piece if isinstance(piece, str) else typed_piece(piece) for piece in told(found))


def told(found: Sequence[Token]) -> Told:
    """The same, with `{...}` and typed lists as they are."""
    pieces: list[LinePiece] = []
    before: Token | None = None
    for token in found:
        if not token.typed:  # the word "times" that a number brings along
            continue
        if before is not None and not _touching(before, token):
            pieces.append(" ")
        value = token.count.value if token.count is not None else None
        pieces.append(token.typed if value is None or isinstance(value, int) else value)
        before = token
    return joined(pieces)


def _touching(before: Token, token: Token) -> bool:
    """Whether two words stand without a space between. Those of a plan's sentence all stand behind its one brace."""
    if before.span == token.span:
        return before.text in ("(", "[") or token.text in (")", "]", ",", ";", ":")
    return token.span.line == before.span.end_line and token.span.column == before.span.end_column


def told_sentence(found: Sequence[Token]) -> Told:
    """The words of a sentence as they stand, its first letter a capital."""
    pieces = told(found)
    first = pieces[0] if pieces else None
    return (first[:1].upper() + first[1:], *pieces[1:]) if isinstance(first, str) else pieces
