"""In: the words before the colon of a row. Out: which rows they are, on which side, worked flat or in the round."""

import re
from dataclasses import dataclass

from sizewright.read.notation.direction_tree import Numbers
from sizewright.read.notation.phrase_match import numbers_of
from sizewright.read.notation.tree import Side
from sizewright.read.notation.words import Kind, Sentence, typed

_ROWS = ("row", "rows")
_ROUNDS = ("rnd", "rnds", "round", "rounds")
_BRACKETS = re.compile(r"[(\[][^()\[\]]*[)\]]")
_SAME = {"rnd": "row", "round": "row", "decrease": "dec", "increase": "inc", "dec.": "dec", "inc.": "inc"}
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


@dataclass(frozen=True, slots=True)
class Label:
    """The label of a row; `remark` is a word in brackets that is no side, such as the yarn, `name` what calls it."""

    text: str
    numbers: Numbers
    side: Side | None
    in_the_round: bool
    remark: str
    name: str


def read_label(sentence: Sentence) -> tuple[Label, Sentence] | None:
    """The label of a sentence and what stands behind it; None where it has none."""
    colon = next((place for place, token in enumerate(sentence[:_LONGEST]) if token.text == ":"), None)
    if not colon:
        return None
    words = sentence[:colon]
    texts = [token.text for token in words]
    round_words = any(text in _ROUNDS for text in texts)
    ordinal = words[0].ordinal and len(words) <= 3
    if not (round_words or any(text in _ROWS for text in texts) or ordinal):
        return None
    text, remark = typed(words), _remark(words)
    name = row_name(_BRACKETS.sub("", text))
    if row_name(remark) != remark.casefold() or remark.casefold().endswith(_ENDS_NAME):  # "Next Row (Dec Row)"
        name, remark = row_name(remark), ""
    return Label(text, _numbers(words), _side(texts), round_words, remark, name), sentence[colon + 1 :]


def row_name(words: str) -> str:
    """What a row is called by: "dec row" for "Decrease Round" and "Dec Rnd"."""
    return " ".join(_SAME.get(word, word) for word in words.casefold().split() if word != "the")


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
    if "all" in texts or "every" in texts:
        return None
    if "ws" in texts or ("wrong" in texts and "side" in texts):
        return Side.WRONG
    return Side.RIGHT if "rs" in texts or ("right" in texts and "side" in texts) else None


def _remark(words: Sentence) -> str:
    found = re.search(r"\(([^()]+)\)\s*$", typed(words))
    text = found[1].strip() if found else ""
    return "" if text.casefold() in ("rs", "ws", "right side", "wrong side") else text
