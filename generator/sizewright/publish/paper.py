"""In: print jobs. Out: the papers of each, in the order of the jobs, laid out here or by two processes side by side.

A job is done by a function of the package on plain data, so any `concurrent.futures.Executor` can do it, one that
reaches other machines too. Threads would gain nothing: the renderer holds the interpreter.
"""

import os
import signal
import sys
import threading
from collections.abc import Iterator, Sequence
from concurrent.futures import Executor, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import suppress
from multiprocessing import get_context, parent_process
from multiprocessing.connection import wait

from sizewright.publish.faults import NoPango, PaperFault
from sizewright.publish.layout import lay_out, set_up
from sizewright.publish.print_job import Job, Paper, Press

# From so many papers on, two processes are worth their start (each loads the renderer, about half a second).
MANY = 4
_PROCESSES = 2


def lay_out_all(jobs: Sequence[Job], executor: Executor | None = None) -> Iterator[tuple[Paper, ...]]:
    """The papers of each job, as soon as they are done. `executor` does them elsewhere.

    Raises NoPango where the renderer cannot be loaded, PaperFault where a process was ended from outside.
    """
    if executor is not None:
        yield from executor.map(lay_out, jobs)
    elif len(jobs) < MANY:
        yield from map(lay_out, jobs)
    else:
        yield from _side_by_side(jobs)


def _side_by_side(jobs: Sequence[Job]) -> Iterator[tuple[Paper, ...]]:
    # Started afresh, not forked: the progress bar of a terminal is a thread, and a forked copy of one can hang.
    pool = ProcessPoolExecutor(_PROCESSES, get_context("spawn"), _warm, (jobs[0].press,))
    try:
        yield from pool.map(lay_out, jobs)
    except BrokenProcessPool as error:
        _let_go(pool)
        raise PaperFault(("A process that lays out PDFs was ended from outside, as when memory runs out.",)) from error
    finally:
        pool.shutdown(cancel_futures=True)


def _let_go(pool: ProcessPoolExecutor) -> None:
    # Before CPython 3.11.5 (its issue 94777) a broken pool waits for ever to hand a job larger than a pipe holds to
    # processes that are gone. With the last reader closed the writing fails and the wait ends; later versions do it
    # themselves, and closing it twice would be a fault of its own.
    if sys.version_info >= (3, 11, 5):
        return
    queue = pool._call_queue  # type: ignore[attr-defined]  # noqa: SLF001 - nothing public reaches it
    with suppress(OSError):  # a later version may be closing it at this moment
        queue._reader.close()  # noqa: SLF001


def _warm(press: Press) -> None:
    """Makes a fresh process ready: the renderer loaded, styles and fonts parsed; it ends when its parent does."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the parent is told too, and ends the work in order
    threading.Thread(target=_end_with_parent, daemon=True).start()
    try:
        set_up(press)
    except NoPango:
        return  # the first job says so


def _end_with_parent() -> None:
    parent = parent_process()
    if parent is not None:
        wait([parent.sentinel])
        os._exit(1)
