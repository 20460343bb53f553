"""In: a formula that cannot be read. Out: where the reader stumbles, said so that the designer can mend it."""

import re
from dataclasses import dataclass

from lark.exceptions import UnexpectedCharacters, UnexpectedInput, UnexpectedToken

from sizewright.read.typed_numbers import shortened

_BARE_ROUNDING = re.compile(r"(?<=[^\s,])[ \t]+(?P<word>nearest|up[ \t]+to|down[ \t]+to)\b")
_DECIMAL_COMMA = re.compile(r"\d+,\d+")
_CROSS = re.compile(r"(?<=[\w)])[ \t]+(?P<word>[xX])[ \t]*$")
_OVER = ("over", "per")

# What may stand at a place, said in the order a person would; the first that fits names the expectation.
_EXPECTATIONS = (
    ({"WHOLE"}, "“whole”, “even”, “odd”, “multiple of …” or a length"),
    ({"NUMBER", "NAME", "LPAR"}, "a number or a name"),
    ({"NEAREST"}, "“nearest”, “up to” or “down to”"),
    ({"TO"}, "“to”"),
    ({"OF"}, "“of”"),
    ({"RELATION", "FITS"}, "a comparison (= < <= > >=) or “fits multiple of …”"),
    ({"FITS"}, "“fits multiple of …”"),
    ({"RELATION"}, "a comparison (= < <= > >=)"),
    ({"EQUALS"}, "“=”"),
    ({"MULTIPLE"}, "“multiple of …”"),
    ({"NUMBER"}, "a number"),
    ({"NAME"}, "a name"),
    ({"_PLUS_SIGN", "RPAR"}, "a sign (+ − * /) or “)”"),
    ({"RPAR"}, "“,” or “)”"),
    ({"_PLUS_SIGN"}, "a sign (+ − * /) or the end"),
)
CALCULATION = "Write a number, a name or a calculation, such as cast_on / 2."
_EXAMPLE = "A line of a grade block reads “name = formula” or “require …”."


@dataclass(frozen=True, slots=True)
class Stumble:
    """What was meant: the offset and the words that stand there, what is wrong with them, and how to mend it."""

    start: int
    word: str
    message: str
    mend: str


def stumble_of(fault: UnexpectedInput, text: str, kind: str) -> Stumble:
    """What stands where something else was expected; `kind` is the part of the grammar the text was read as."""
    at, word, expected = _place(fault, text)
    slip = _slip(text, at, word)
    if slip is not None:
        return slip
    if kind in ("definition", "formula") and "RELATION" in expected:
        expected -= {"RELATION", "EQUALS", "FITS"}  # the merged states of the parser offer what only a promise may hold
    if text.count("(", 0, at) <= text.count(")", 0, at):
        expected -= {"RPAR"}
    wanted = next((words for terminals, words in _EXPECTATIONS if terminals <= expected), "something else")
    stands = f"“{word}” stands" if word else "the line ends"
    message = f"In “{shortened(text)}” {stands} where {wanted} was expected."
    return Stumble(at, word, message, CALCULATION if kind == "formula" else _EXAMPLE)


def _place(fault: UnexpectedInput, text: str) -> tuple[int, str, set[str]]:
    """Where a text cannot be read on: the offset, the word that stands there ("" at the end), what was expected."""
    if isinstance(fault, UnexpectedToken) and fault.token.type != "$END":
        return fault.token.start_pos or 0, str(fault.token).strip(), set(fault.expected)
    if isinstance(fault, UnexpectedCharacters):
        at: int = fault.pos_in_stream  # type: ignore[assignment]  # declared as None, always set
        return at, str(fault.char), set(fault.allowed)
    return len(text.rstrip()), "", set(fault.expected) if isinstance(fault, UnexpectedToken) else set()


def _slip(text: str, at: int, word: str) -> Stumble | None:
    """The slip that makes a text stumble over the `word` at an offset; None where it is none of the common ones."""
    return _bare_rounding(text, at) or _decimal_comma(text, at) or _cross(text, at, word) or _spoken_division(at, word)


def _bare_rounding(text: str, at: int) -> Stumble | None:
    found = _BARE_ROUNDING.search(text)
    if found is None or at < found.start("word"):
        return None
    word = " ".join(found["word"].split())
    return Stumble(
        found.start("word"), found["word"], f"“{word}” stands without a comma before it.", f"Write “, {word} …”."
    )


def _decimal_comma(text: str, at: int) -> Stumble | None:
    found = next((found for found in _DECIMAL_COMMA.finditer(text) if found.start() <= at <= found.end()), None)
    if found is None:
        return None
    number = found.group()
    return Stumble(
        found.start(), number, f"“{number}” has a comma in it.", f"Write a decimal point: “{number.replace(',', '.')}”."
    )


def _cross(text: str, at: int, word: str) -> Stumble | None:
    found = _CROSS.search(text, 0, at)
    if found is None and word not in ("x", "X"):
        return None
    start = found.start("word") if found else at
    return Stumble(start, text[start], f"“{text[start]}” is no sign of the language.", "Write “*” for times.")


def _spoken_division(at: int, word: str) -> Stumble | None:
    if word not in _OVER:
        return None
    return Stumble(at, word, f"“{word}” is no sign of the language.", "Write “/”: 22 st / 10 cm.")
