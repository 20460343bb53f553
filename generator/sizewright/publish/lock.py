"""In: the folder of a site. Out: the certainty that nobody else writes it for as long as the lock is held.

The lock belongs to the open file, so the system gives it back when a process is killed; a lock file that was left
behind stops nobody.
"""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from sizewright.publish.faults import Busy

if sys.platform == "win32":
    import msvcrt
else:
    import fcntl


def lock_file(site: Path) -> Path:
    """Where the lock of a site is: beside it, gone when nobody writes."""
    return site.parent / f".{site.name}.sizewright-lock"


@contextmanager
def alone(site: Path) -> Iterator[None]:
    """Holds the lock of a site.

    Raises `Busy` where another process or thread holds it, OSError where the folder cannot be written.
    """
    path = lock_file(site)
    held = _take(path, site)
    try:
        yield
    finally:
        # Removed while still held: whoever opened it meanwhile sees that it is no longer the file of that name.
        with suppress(OSError):
            path.unlink()
        os.close(held)


def _take(path: Path, site: Path) -> int:
    while True:
        number = os.open(path, os.O_RDWR | os.O_CREAT | getattr(os, "O_NOFOLLOW", 0), 0o666)
        try:
            _lock(number)
        except BlockingIOError:
            os.close(number)
            message = f"{site} is being published by another run of sizewright. Wait until it has finished."
            raise Busy(message) from None
        if _is_at(number, path):
            return number
        os.close(number)


def _lock(number: int) -> None:
    if sys.platform == "win32":
        try:
            msvcrt.locking(number, msvcrt.LK_NBLCK, 1)
        except OSError as error:
            raise BlockingIOError from error
    else:
        fcntl.flock(number, fcntl.LOCK_EX | fcntl.LOCK_NB)


def _is_at(number: int, path: Path) -> bool:
    try:
        return os.path.samestat(os.fstat(number), path.lstat())
    except FileNotFoundError:
        return False
