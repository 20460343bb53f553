"""What somebody who waits is told while a site is made."""

from typing import Protocol


class Progress(Protocol):
    """Told how far the work is, for somebody who waits."""

    def start(self, total: int, what: str) -> None:
        """A stretch of work begins: so many of what ("pages", "PDFs")."""

    def step(self) -> None:
        """One of them is done."""
