"""In: the yarns of a header. Out: what the instructions may call them, and which yarn answers to a word.

A yarn answers to its key and to what it is `called`; "main" is MC to the trade, and "contrast" CC. Where no yarn is
named the main one is in hand: the one that answers to "main", else the first.
"""

import re
from collections.abc import Iterable, Mapping, Sequence

from sizewright.base.nearest import nearest
from sizewright.read.notation.cursor import COLOUR
from sizewright.read.notation.words import Token
from sizewright.read.pattern import Yarn

MAIN = "main"
_BUILT_IN = (MAIN, "contrast", "contrasting")
_SAME = {"main": "mc", "contrast": "cc", "contrasting": "cc"}
_COLOUR_WORDS = ("colour", "color", "yarn", "col", "shade")
_EMPTY_WORDS = re.compile(rf"\b(?:with|using|in|the|{'|'.join(_COLOUR_WORDS)})\b")
_LONGEST = 3  # words of a name
_VERY_LIKE = 0.8  # "contrst" is a misspelt yarn, "plain" is not "main"


def names_of(yarn: Yarn) -> tuple[str, ...]:
    """What a yarn answers to, in one spelling."""
    return tuple(dict.fromkeys(_plain(name) for name in (yarn.name, *(words.text for words in yarn.called))))


def _plain(name: str) -> str:
    """One spelling of a name: "mc" for "Main colour" and "MC", "cc2" for "contrast 2"."""
    words = " ".join(_EMPTY_WORDS.sub(" ", name.casefold().replace("_", " ")).split())
    found = re.fullmatch(r"(main|contrast|contrasting) ?(\d?)", words)
    return f"{_SAME[found[1]]}{found[2]}" if found else words or name.casefold()


class YarnNames:
    """The yarns of a header by the words of its instructions."""

    def __init__(self, yarns: Iterable[Yarn] = ()) -> None:
        self.yarns = tuple(yarns)
        self._by_yarn = tuple((yarn, names_of(yarn)) for yarn in self.yarns)
        self._known = {name for _, names in self._by_yarn for name in names}

    def answering(self, name: str) -> tuple[Yarn, ...]:
        """The yarns that answer to a word of the instructions, "" the main one; several are held together."""
        wanted = _plain(name or MAIN)
        found = tuple(yarn for yarn, names in self._by_yarn if wanted in names)
        return found if found or name else self.yarns[:1]

    def calls(self, words: Iterable[str]) -> Mapping[str, tuple[Yarn, ...]]:
        """The yarns that answer to all the words a pattern uses.

        The only yarn of a header answers to the only word, whatever that is.
        """
        every = tuple(words)
        named = [word for word in every if word]
        alone = len(self.yarns) == 1 and len({_plain(word) for word in named}) == 1
        return {word: self.yarns if alone else self.answering(word) for word in every}

    def ahead(self, tokens: Sequence[Token], at: int) -> tuple[str, int] | None:
        """The yarn that is named at a token, and where its name ends; None where none is."""
        start = at
        while start < len(tokens) and tokens[start].text in ("the", *_COLOUR_WORDS):
            start += 1
        for length in range(_LONGEST, 0, -1):
            words = tokens[start : start + length]
            end = start + length
            behind = end < len(tokens) and tokens[end].text in _COLOUR_WORDS
            whole = len(words) == length and (length == 1 or words[-1].text not in _COLOUR_WORDS)
            if whole and self._is_name(words, sure=behind):
                return " ".join(word.typed for word in words), end + behind
        return None

    def _is_name(self, words: Sequence[Token], *, sure: bool) -> bool:
        if len(words) == 1 and COLOUR.fullmatch(words[0].typed):
            return True
        typed = " ".join(word.typed.casefold() for word in words)
        return len(typed) > 1 and (_plain(typed) in self._known or (sure and typed in _BUILT_IN))

    def in_remark(self, remark: str) -> str | None:
        """The yarn that a remark in a row's label names, known or misspelt: "Row 3 (RS, with B)"; None without one."""
        for part in re.split(r"[,;]", remark):
            name = " ".join(word for word in part.split() if not _EMPTY_WORDS.fullmatch(word.casefold()))
            if COLOUR.fullmatch(name) or _plain(name) in self._known or name.casefold() in _BUILT_IN:
                return name
            if name and self.nearest(name) is not None:
                return name
        return None

    def nearest(self, name: str) -> str | None:
        """What a yarn is called by that a misspelt word must mean; None where none is so near."""
        known = [name for yarn in self.yarns for name in (yarn.name, *(words.text for words in yarn.called))]
        return nearest(name, known, _VERY_LIKE)
