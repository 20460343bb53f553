"""In: the stitch blocks of a source. Out: the rows of a stitch pattern by its name."""

from collections.abc import Mapping

from sizewright.base.place import Span
from sizewright.read.notation.direction_tree import Row
from sizewright.work.faults import Stopped, UnknownFabric


class Patterns:
    """The stitch patterns of a source: their rows by name in small letters; `half_read` have a row not understood."""

    def __init__(self, blocks: Mapping[str, tuple[Row, ...]], half_read: frozenset[str]) -> None:
        self.blocks = blocks
        self._half_read = half_read

    def called(self, name: str, span: Span, size: int) -> str:
        """The name under which a pattern is kept. Raises `Stopped`."""
        known = self.found(name)
        if known is None:
            raise Stopped(UnknownFabric(span, size, name))
        if known in self._half_read:  # told where the row stands that was not read
            raise Stopped(None)
        return known

    def found(self, name: str) -> str | None:
        """The name under which a pattern of this name is kept; None where the source has none."""
        word = name.casefold().replace("-", " ").removesuffix(" pattern").removesuffix(" stitch").strip()
        for known, rows in self.blocks.items():
            plain = known.replace("-", " ")
            if word in (plain, plain.removesuffix(" stitch")) and (rows or known in self._half_read):
                return known
        return None

    def rows(self, name: str, span: Span, size: int) -> tuple[Row, ...]:
        """The rows of a pattern. Raises `Stopped`."""
        return self.blocks[self.called(name, span, size)]
