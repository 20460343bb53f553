"""In: how far a long piece of work is. Out: a bar on the terminal, only where a person waits for it."""

import time
from types import TracebackType
from typing import Self

from rich.console import Console
from rich.progress import BarColumn, MofNCompleteColumn, Progress, TaskID, TextColumn

_PATIENCE = 0.5  # seconds before a bar appears: what is quicker needs none


class Bar:
    """A bar that shows itself once the work takes longer than a moment, and leaves nothing behind."""

    def __init__(self, console: Console) -> None:
        self._wanted = console.is_terminal and not console.is_dumb_terminal
        self._began = time.monotonic()
        columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn())
        self._progress = Progress(*columns, console=console, transient=True)
        self._task: TaskID | None = None
        self._shown = False

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, fault: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._shown:
            self._progress.stop()

    def step(self, what: str, done: int, total: int) -> None:
        """Says how many of how many are done of the work that `what` names."""
        if not self._wanted:
            return
        if self._task is None:
            self._task = self._progress.add_task(what, total=total)
        self._progress.update(self._task, description=what, completed=done, total=total)
        if not self._shown and time.monotonic() - self._began > _PATIENCE:
            self._progress.start()
            self._shown = True
