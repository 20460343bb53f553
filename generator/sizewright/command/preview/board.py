"""In: what a rebuild gave. Out: what the server shows now, and a signal to the pages that wait for the next state."""

import secrets
from dataclasses import dataclass
from pathlib import Path
from threading import Condition


@dataclass(frozen=True, slots=True)
class Shown:
    """One state of the preview: the folder of pages, the panel over them ("" where nothing was found), and its mark."""

    folder: Path | None
    panel: str
    mark: str


class Board:
    """Holds the newest state; a page that is open waits here for the next one.

    The marks of two boards differ, so that a page left over from a preview that has ended is out of date in the next.
    """

    def __init__(self) -> None:
        self._changed = Condition()
        self._name = secrets.token_hex(4)
        self._count = 0
        self._shown = Shown(None, "", self._name)

    @property
    def shown(self) -> Shown:
        """The newest state."""
        with self._changed:
            return self._shown

    def show(self, folder: Path | None, panel: str) -> None:
        """Puts up a new state and wakes every page that waits."""
        with self._changed:
            self._count += 1
            self._shown = Shown(folder, panel, f"{self._name}-{self._count}")
            self._changed.notify_all()

    def wait_for_other(self, mark: str, seconds: float) -> bool:
        """Whether the state is another one than `mark` before the time is over."""
        with self._changed:
            return self._changed.wait_for(lambda: self._shown.mark != mark, timeout=seconds)
