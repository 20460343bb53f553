"""In: a project folder. Out: one word each time something in it has changed that the site is made from."""

import os
import time
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

from watchfiles import watch

_WATCHED = ("content", "themes")
_LOOK_AGAIN = 1000  # milliseconds after which a look is taken, although the system has reported nothing
_GATHER = 300  # milliseconds at most in which what is saved together is gathered

Stamps = frozenset[tuple[str, int, int]]


def changes(project: Path) -> Iterator[None]:
    """Yields at once, and then each time the files differ from what they were at the last word.

    The system's reports only say when to look: where they are lost, as on some network drives, the look that is taken
    once a second finds the change.
    """
    seen = stamps(project)
    yield
    while True:
        for _ in _looks(project):
            now = stamps(project)
            if now != seen:
                seen = now
                yield


def _looks(project: Path) -> Iterator[None]:
    """Yields whenever it is time to look, until a folder is made or replaced: the new one has to be watched."""
    places = _places(project)
    with suppress(FileNotFoundError):  # removed between the question and the watch
        for _ in _reports(project, places):
            yield
            if _places(project) != places:
                return
    time.sleep(_LOOK_AGAIN / 1000)
    yield


def _reports(project: Path, places: dict[Path, int]) -> Iterator[object]:
    """The system's reports. Of a project without content only its top is watched, which may hold large folders."""
    return watch(
        *(places or (project,)),
        recursive=bool(places),
        debounce=_GATHER,
        step=30,
        rust_timeout=_LOOK_AGAIN,
        yield_on_timeout=True,
        ignore_permission_denied=True,
    )


def _places(project: Path) -> dict[Path, int]:
    """The folders to watch, each with the number the system knows it by: another folder of the same name is another."""
    found = {}
    for place in (project / name for name in _WATCHED):
        with suppress(OSError):
            found[place] = place.stat().st_ino
    return found


def stamps(project: Path) -> Stamps:
    """Name, time and size of every file that counts; hidden files and those of editors (`hat.md~`) do not."""
    return frozenset(stamp for name in _WATCHED for stamp in _below(project / name))


def _below(folder: Path) -> Iterator[tuple[str, int, int]]:
    for place, folders, names in os.walk(folder):
        folders[:] = [name for name in folders if not name.startswith(".")]
        for name in names:
            if not name.startswith((".", "#")) and not name.endswith("~"):
                yield from _stamp(os.path.join(place, name))  # noqa: PTH118 (a studio has thousands of files)


def _stamp(file: str) -> Iterator[tuple[str, int, int]]:
    try:
        state = os.stat(file)  # noqa: PTH116
    except OSError:  # gone between the listing and now
        return
    yield file, state.st_mtime_ns, state.st_size
