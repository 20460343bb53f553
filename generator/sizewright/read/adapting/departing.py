"""In: the tokens of a body one by one, and the lines of the departures in it. Out: where each begins and ends."""

from collections.abc import Iterator

from markdown_it.token import Token

from sizewright.base.place import Span
from sizewright.read.departure import Departure, DepartureClose, DepartureOpen, Part


class Departing:
    """Opens and closes the departures of a body between its blocks; `shift` are the lines before the body.

    Those within a block are not told here: their lines tell them.
    """

    def __init__(self, departures: tuple[Departure, ...], shift: int) -> None:
        self._waiting = [one for one in departures if not one.block and one.called.part is not Part.KEY]
        self._shift = shift
        self._open: list[tuple[Departure, int]] = []
        self._last: Span | None = None

    def before(self, token: Token, span: Span) -> Iterator[DepartureOpen | DepartureClose]:
        """What stands before a token; `span` is its first line."""
        if token.map is None:
            while self._open and token.nesting < 0 and token.level < self._open[-1][1]:
                yield self._closed()
            return
        line, self._last = token.map[0] + self._shift + 1, span
        while self._waiting and self._waiting[0].end <= self._waiting[0].first < line:
            yield from self._left_out(span)
        while self._open and line >= self._open[-1][0].end:
            yield self._closed()
        while self._waiting and token.nesting >= 0 and token.type != "inline" and line >= self._waiting[0].first:
            one = self._waiting.pop(0)
            yield DepartureOpen(span, one.number)
            self._open.append((one, token.level))
            if line >= one.end:
                yield self._closed()

    def rest(self) -> Iterator[DepartureOpen | DepartureClose]:
        """What is open or waits at the end of the body."""
        while self._open:
            yield self._closed()
        while self._waiting:
            yield from self._left_out(self._last or self._waiting[0].called.span)

    def _left_out(self, span: Span) -> Iterator[DepartureOpen | DepartureClose]:
        """A departure that leaves nothing behind it."""
        yield DepartureOpen(span, self._waiting.pop(0).number)
        yield DepartureClose()

    def _closed(self) -> DepartureClose:
        self._open.pop()
        return DepartureClose()
