"""In: the headings passed while a part is worked. Out: the row that a length is measured from."""


class Sections:
    """Where in the rows of a part each heading and each block of instructions begins."""

    def __init__(self) -> None:
        self.heading = ""
        self._starts: list[tuple[str, int]] = []
        self._block = 0

    def enter(self, heading: str, rows: int) -> None:
        """A heading stands before the row that comes next."""
        self.heading = heading
        self._starts.append((heading.casefold(), rows))

    def enter_block(self, rows: int) -> None:
        """A block of instructions begins."""
        self._block = rows

    def begin(self) -> None:
        """A new part begins under the present heading, at row 0."""
        self._starts = [(self.heading.casefold(), 0)]
        self._block = 0

    def origin(self, since: str, rows: int) -> int:
        """The row a length is measured from: the cast-on edge, here, a section by its heading, or this block."""
        if not since or since.startswith(("cast", "beginning", "bottom", "lower")):
            return 0
        if since == "here":
            return rows
        word = since.removeprefix("end of ").removeprefix("the ").strip()
        for place, (heading, start) in enumerate(self._starts):
            if word in heading:
                ends = self._starts[place + 1][1] if place + 1 < len(self._starts) else start
                return ends if since.startswith("end of") else start
        return self._block
