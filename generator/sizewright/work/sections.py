"""In: the headings passed while a part is worked. Out: the row that a length is measured from."""


class Sections:
    """Where in the rows of a part each heading and each block of instructions begins."""

    def __init__(self) -> None:
        self.heading = ""
        self.starts: list[tuple[str, int]] = []  # each heading of the part, and the rows before it
        self._block = 0
        self._picked_up = 0

    def enter(self, heading: str, rows: int) -> None:
        """A heading stands before the row that comes next."""
        self.heading = heading
        self.starts.append((heading, rows))

    def enter_block(self, rows: int) -> None:
        """A block of instructions begins."""
        self._block = rows

    def begin(self) -> None:
        """A new part begins under the present heading, at row 0."""
        self.starts = [(self.heading, 0)]
        self._block = self._picked_up = 0

    def pick_up(self, rows: int) -> None:
        """Stitches come onto empty needles: what is measured from here on begins with them."""
        self._block = self._picked_up = rows

    def origin(self, since: str, rows: int) -> int:
        """The row a length is measured from: where the part begins, here, a section by its heading, or this block."""
        if not since or since.startswith("beginning"):
            return self._picked_up
        if since.startswith(("cast", "bottom", "lower")):
            return 0
        if since == "here":
            return rows
        word = since.removeprefix("end of ").removeprefix("the ").strip()
        for place, (heading, start) in enumerate(self.starts):
            if word in heading.casefold():
                ends = self.starts[place + 1][1] if place + 1 < len(self.starts) else start
                under = place + 1 == len(self.starts)
                begins = max(start, self._picked_up) if under else start
                return ends if since.startswith("end of") else begins
        return self._block
