"""In: the paths a person typed. Out: the projects there, read; a path that cannot be read stops the command."""

import os
from collections.abc import Collection, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path, PurePath

from sizewright.command.outcome import Stopped
from sizewright.read.folder import Unreadable, read_again, read_project, read_single
from sizewright.read.project import Project


@dataclass(frozen=True, slots=True)
class Opened:
    """A project, and how a person who stands here types the way to it; `alone` is the one file that was asked for."""

    project: Project
    way: str
    alone: str = ""

    def shown(self, source: str) -> str:
        """The path of a source as the person would type it: reading knows it from the project folder on."""
        return source if source == self.alone else (PurePath(self.way) / source).as_posix()


def check_folder(folder: Path) -> None:
    """Raises Stopped where there is no folder of that name."""
    if not folder.is_dir():
        raise Stopped(f"{folder} is {'a file, not a project folder' if folder.exists() else 'not there'}.")


def open_folder(folder: Path) -> Opened:
    """The project in a folder. Raises Stopped where there is none or it cannot be read."""
    check_folder(folder)
    return _open(folder)


def open_again(opened: Opened, names: Collection[str]) -> Opened:
    """The project with these patterns of it read again; the same tables mean that all else is as it was."""
    with _told():
        return replace(opened, project=read_again(opened.project, names))


def open_paths(paths: Sequence[Path]) -> tuple[Opened, ...]:
    """The project of every path, in that order: a folder, or a file on its own. Raises Stopped."""
    return tuple(_open(path) for path in dict.fromkeys(paths))


def _open(path: Path) -> Opened:
    with _told():
        if path.is_dir():
            return Opened(read_project(path), str(path))
        project = read_single(path)
        return Opened(project, os.path.relpath(project.folder), str(path))


@contextmanager
def _told() -> Iterator[None]:
    try:
        yield
    except Unreadable as reason:
        raise Stopped(str(reason)) from reason
