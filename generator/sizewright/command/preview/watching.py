"""In: a project folder. Out: the files that have changed in it, each time some have that the site is made from."""

import os
import time
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

from watchfiles import watch

_WATCHED = ("content", "themes")
_LOOK_AGAIN = 1000  # milliseconds after which a look is taken, although the system has reported nothing
_GATHER = 300  # milliseconds at most in which what is saved together is gathered

Stamps = frozenset[tuple[Path, int, int]]


def changes(project: Path) -> Iterator[frozenset[Path]]:
    """Yields every file at once, and then, each time some differ from what they were at the last word, those.

    The system's reports only say when to look: where they are lost, as on some network drives, the look that is taken
    once a second finds the change.
    """
    seen = stamps(project)
    yield _files(seen)
    while True:
        for _ in _looks(project):
            now = stamps(project)
            if now != seen:
                changed, seen = now ^ seen, now
                yield _files(changed)


def _files(those: Stamps) -> frozenset[Path]:
    return frozenset(file for file, _, _ in those)


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


def _below(folder: Path) -> Iterator[tuple[Path, int, int]]:
    for place, folders, names in os.walk(folder):
        folders[:] = [name for name in folders if not name.startswith(".")]
        for name in names:
            if not name.startswith((".", "#")) and not name.endswith("~"):
                yield from _stamp(Path(place, name))


def _stamp(file: Path) -> Iterator[tuple[Path, int, int]]:
    try:
        state = file.stat()
    except OSError:  # gone between the listing and now
        return
    yield file, state.st_mtime_ns, state.st_size
