"""In: how far a long piece of work is. Out: a bar where a person waits for it, else now and then a line."""

import time
from types import TracebackType
from typing import Self

from rich.console import Console
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TaskID, TextColumn

_PATIENCE = 0.5  # seconds before a bar appears: what is quicker needs none
_PAUSE = 15  # seconds from line to line where there is no terminal: a log shows that the work goes on


class Bar:
    """A bar that shows itself once the work takes longer than a moment, and leaves nothing behind.

    Where there is no terminal, what takes long writes a line from time to time.
    """

    def __init__(self, console: Console) -> None:
        self._console = console
        self._wanted = console.is_terminal and not console.is_dumb_terminal
        self._begin = self._told = time.monotonic()
        columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn())
        self._progress = Progress(*columns, console=console, transient=True)
        self._task: TaskID | None = None

    def __enter__(self) -> Self:
        return self

    def __exit__(self, _kind: type[BaseException] | None, _fault: object, _trace: TracebackType | None) -> None:
        if self._progress.live.is_started:
            self._progress.stop()

    def start(self, total: int, what: str) -> None:
        """A stretch of work begins: so many of what ("pages", "PDFs")."""
        if self._task is not None:
            self._progress.remove_task(self._task)
        self._task = self._progress.add_task(what, total=total)

    def step(self) -> None:
        """One of them is done."""
        if self._task is not None:
            self._progress.advance(self._task)
        now = time.monotonic()
        if self._wanted and now - self._begin > _PATIENCE and not self._progress.live.is_started:
            self._progress.start()
        if not self._wanted and now - self._told > _PAUSE:
            self._told = now
            self._tell()

    def _tell(self) -> None:
        for task in self._progress.tasks:
            self._console.print(f"{task.description}: {task.completed:.0f} of {task.total or 0:.0f}", highlight=False)
