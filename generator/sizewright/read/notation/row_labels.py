"""In: the words before the colon of a row. Out: which rows they are, on which side, worked flat or in the round."""

import re
from dataclasses import dataclass

from sizewright.read.notation.direction_tree import Numbers
from sizewright.read.notation.old_labels import with_label
from sizewright.read.notation.phrase_match import numbers_of
from sizewright.read.notation.tree import Side
from sizewright.read.notation.words import Kind, Sentence, Token, typed

_ROWS = ("row", "rows")
_ROUNDS = ("rnd", "rnds", "round", "rounds")
_BRACKETS = re.compile(r"[(\[][^()\[\]]*[)\]]")
_SAME = {"rnd": "row", "round": "row", "decrease": "dec", "increase": "inc", "dec.": "dec", "inc.": "inc"}
# "Divide for fronts: …", "Join body and sleeves: …": what is worked in one row, under a name of its own.
_DIVIDING = ("divide", "dividing", "division", "separate", "join", "joining", "setup", "set-up")
_ENDS_NAME = ("row", "rnd", "round")
_LONGEST = 24  # tokens; a colon further on belongs to a sentence
_KINDS = {
    "ws": "WS",
    "rs": "RS",
    "even": "even",
    "even-numbered": "even",
    "odd": "odd",
    "odd-numbered": "odd",
    "alternate": "other",
    "other": "other",
}
_EVERY = ("all", "every", "each", "following", *_KINDS)
_SIDES = ("rs", "ws", "right side", "wrong side")
_USUAL = (*_ROWS, *_ROUNDS, *_EVERY, ",", "and", "&", "to", "through", "-", ".", "right", "wrong", "side")


@dataclass(frozen=True, slots=True)
class Label:
    """The label of a row; `remark` is a word in brackets that is no side, such as the yarn, `name` what calls it.

    `heading` is what it says beside its number and its side, or the whole label where it is no usual one.
    """

    text: str
    numbers: Numbers
    side: Side | None
    in_the_round: bool
    remark: str
    name: str
    heading: str


def read_label(sentence: Sentence) -> tuple[Label, Sentence] | None:
    """The label of a sentence and what stands behind it; None where it has none."""
    sentence = with_label(sentence)
    colon = next((place for place, token in enumerate(sentence[:_LONGEST]) if token.text == ":"), None)
    if not colon:
        return None
    words = sentence[:colon]
    texts = [token.text for token in words]
    round_words = any(text in _ROUNDS for text in texts)
    ordinal = (words[0].ordinal and len(words) <= 3) or (len(words) == 1 and words[0].count is not None)
    if not (round_words or any(text in _ROWS for text in texts) or ordinal or texts[0] in _DIVIDING):
        return None
    outside, inside = _parted(words)
    numbers, heading = _numbers(words), _heading(words, outside)
    side = _side(inside) or (None if numbers.every else _side([token.text for token in outside]))
    text, remark = typed(words), _remark(words)
    name = row_name(_BRACKETS.sub("", text))
    if row_name(remark) != remark.casefold() or remark.casefold().endswith(_ENDS_NAME):  # "Next Row (Dec Row)"
        name, remark, heading = row_name(remark), "", f"{_capital(text)}:"
    return Label(text, numbers, side, round_words, remark, name, heading), sentence[colon + 1 :]


def row_name(words: str) -> str:
    """What a row is called by: "dec row" for "Decrease Round" and "Dec Rnd"."""
    return " ".join(_SAME.get(word, word) for word in words.casefold().split() if word != "the")


def _parted(words: Sentence) -> tuple[Sentence, list[str]]:
    """The tokens outside of brackets, and the words inside."""
    opening = next((place for place, token in enumerate(words) if token.text in ("(", "[")), len(words))
    return words[:opening], [token.text for token in words[opening:]]


def _heading(words: Sentence, outside: Sentence) -> str:
    """ "Dec" of "Dec Rnd 3", "" of "Row 3" and "Row 2 and all WS rows"; an unusual label whole."""
    row = next((place for place, token in enumerate(outside) if token.text in (*_ROWS, *_ROUNDS)), len(outside))
    before, after = outside[:row], outside[row + 1 :]
    if all(_usual(token) for token in before) and all(_usual(token) for token in after):
        return ""
    if row < len(outside) and all(_usual(token) for token in after):
        return _capital(typed(before))
    return f"{_capital(typed(words))}:"


def _usual(token: Token) -> bool:
    return token.kind is Kind.NUMBER or token.text in _USUAL


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _numbers(words: Sentence) -> Numbers:
    """The numbers, and "all WS rows" beside them."""
    texts = [token.text for token in words]
    first = next((place for place, token in enumerate(words) if token.kind is Kind.NUMBER), len(words))
    stop = next((place for place in range(first, len(words)) if texts[place] in ("all", "every", "(")), len(words))
    found = numbers_of(words[first:stop]) if first < len(words) else Numbers()
    every = next((place for place, text in enumerate(texts) if text in ("all", "every", "each", "following")), None)
    if every is None and not found.listed:
        every = next((place for place, text in enumerate(texts) if text.startswith(("even", "odd"))), None)
    if every is None:
        return found
    kind = next((_KINDS[text] for text in texts[every:] if text in _KINDS), "")
    return Numbers(found.listed, found.first, found.last, kind)


def _side(texts: list[str]) -> Side | None:
    if {"rs", "ws"} <= set(texts):  # "Row 1 (RS) and all WS rows": one of them, by number
        return None
    if "ws" in texts or ("wrong" in texts and "side" in texts):
        return Side.WRONG
    return Side.RIGHT if "rs" in texts or ("right" in texts and "side" in texts) else None


def _remark(words: Sentence) -> str:
    """What stands in brackets at the end beside the side."""
    opening = next((place for place, token in enumerate(words) if token.text == "("), len(words))
    inside = typed(words[opening + 1 : -1]) if words[-1].text == ")" else ""  # not "1 to 4 (5, 6)"
    said = [part.strip() for part in inside.split(",")]
    return ", ".join(part for part in said if part.casefold() not in _SIDES)
