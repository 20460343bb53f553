"""In: a passage of a source, its tokens and pieces, and its words in a language. Out: its pieces in these."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from html import escape
from typing import TypeVar

from markdown_it.token import Token

from sizewright.read.body import heading_level, plain_words
from sizewright.read.markdown import INSERT, PASSAGE_CLOSE, PASSAGE_OPEN, rendered, tokens_of
from sizewright.read.pattern import Address, Heading, Image, Insert, Markup, Piece

_Piece = TypeVar("_Piece")


class Retold:
    """The numbers, links, pictures and the heading of a passage, to be taken up where the translation has them."""

    def __init__(self, tokens: Sequence[Token], pieces: Sequence[Piece]) -> None:
        within = [child for token in tokens for child in token.children or ()]
        typed = [str(one.content) for one in within if one.type == INSERT and one.info == "closed"]
        self._inserts = list(zip(typed, (one for one in pieces if isinstance(one, Insert)), strict=False))
        links = [str(one.attrs.get("href", "")) for one in within if one.type == "link_open"]
        self._links = list(zip(links, (one for one in pieces if isinstance(one, Address)), strict=False))
        files = [str(one.attrs.get("src", "")) for one in within if one.type == "image"]
        self._images = list(zip(files, (one for one in pieces if isinstance(one, Image)), strict=False))
        self._heading = next((one for one in pieces if isinstance(one, Heading)), None)

    def told(self, words: str) -> Iterator[Piece]:
        """The pieces of the passage in these words; what they have and the source has not is a finding elsewhere."""
        tokens = tokens_of(words)
        for index, token in enumerate(tokens):
            match token.type:
                case "inline":
                    yield from self._inline(token.children or [])
                case "heading_open":
                    yield self._opened(token, tokens[index + 1].content)
                case "heading_close":
                    yield Markup(f"</h{self._level(token)}>\n")
                case _ if token.type in (PASSAGE_OPEN, PASSAGE_CLOSE):
                    continue
                case _:
                    yield Markup(rendered(tokens, index))

    def _opened(self, token: Token, words: str) -> Piece:
        if self._heading is None:
            return Markup(f"<h{self._level(token)}>")
        return replace(self._heading, text=plain_words(words))

    def _level(self, token: Token) -> int:
        return self._heading.level if self._heading is not None else heading_level(token)

    def _inline(self, children: list[Token]) -> Iterator[Piece]:
        for index, child in enumerate(children):
            match child.type:
                case _ if child.type == INSERT:
                    insert = _taken(self._inserts, child.content)
                    yield insert if insert is not None else Markup(escape(child.content))
                case "image":
                    image = _taken(self._images, str(child.attrs.get("src", "")))
                    yield replace(image, alt=child.content) if image is not None else Markup(escape(child.content))
                case "link_open":
                    link = _taken(self._links, str(child.attrs.get("href", "")))
                    yield link if link is not None else Markup("<a>")
                case _:
                    yield Markup(rendered(children, index))


def _taken(waiting: list[tuple[str, _Piece]], typed: str) -> _Piece | None:
    """The piece that stands in the source as typed, the first of several; None where there is none."""
    found = next((one for one in waiting if one[0] == typed), None)
    if found is None:
        return None
    waiting.remove(found)
    return found[1]
