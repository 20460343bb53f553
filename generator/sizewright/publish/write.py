"""In: the files of a new site, one by one. Out: `site/` swapped for them in one step, or left as it was.

1. The lock is taken, and what a killed run left behind is cleared away.
2. The new site is made in a work folder beside `site/`, so on the same file system, and forced to the disk.
3. The two are swapped in one step (`swap`). Where the system does not know how, the old site is first moved into the
   work folder; a run killed between the two moves is undone by the next one.
4. The old site, now in the work folder, is removed.
"""

import errno
import os
import shutil
import sys
import unicodedata
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path

from sizewright.publish.faults import CannotWrite, NotOurs
from sizewright.publish.lock import alone
from sizewright.publish.manifest import MANIFEST, Manifest, as_json, digest, read_manifest
from sizewright.publish.output import Output
from sizewright.publish.swap import swap

MARKER = "made-by-sizewright"
_MARKER_TEXT = "sizewright makes the next site in this folder and removes it when it is done.\n"

# Beside dotfiles, what a person keeps at the top of a site for the place it is served from.
_KEPT_BY_NAME = {"CNAME"}


def work_folder(site: Path) -> Path:
    """Where the next site of `site` is made."""
    return site.parent / f".{site.name}.sizewright-work"


@contextmanager
def new_site(site: Path) -> Iterator["Draft"]:
    """An empty draft of the next site; nothing of it is seen until its `finish`, and nothing of it stays without.

    Raises Busy, NotOurs and CannotWrite; `site/` is then what it was.
    """
    with ExitStack() as stack:
        with _plainly(site):
            _refuse_odd_place(site)
            stack.enter_context(alone(site))
            _recover(site)
            _clear(work_folder(site))
            _refuse_foreign(site)
            stack.callback(_clear_quietly, work_folder(site))
            draft = Draft(site)
        yield draft


class Draft:
    """The next site while it is being made. `digests` has every file so far."""

    def __init__(self, site: Path) -> None:
        self.site = site
        self.digests: dict[str, str] = {}
        self.written: list[str] = []
        self.unchanged: list[str] = []
        self._work = work_folder(site)
        self._next = self._work / "next"
        self._seen = {MANIFEST}
        self._fresh: list[Path] = []
        self._work.mkdir()
        (self._work / MARKER).write_text(_MARKER_TEXT, encoding="utf-8")
        self._next.mkdir()

    def put(self, output: Output) -> None:
        """Adds one file. What is the same as in the old site is the same file, with its time.

        Raises CannotWrite, also for a path that is there already in other letters: not every system tells them apart.
        """
        self._refuse_double(output.path)
        target = self._next / output.path
        with _plainly(self.site):
            target.parent.mkdir(parents=True, exist_ok=True)
            if self._link(output, target):
                self.unchanged.append(output.path)
            else:
                with target.open("xb") as file:
                    file.write(output.content)
                self._fresh.append(target)
                self.written.append(output.path)
        self.digests[output.path] = digest(output.content)

    def finish(self, manifest: Manifest) -> None:
        """Swaps the new site in. Raises CannotWrite; the old site is then in its place."""
        with _plainly(self.site):
            top = self._next / MANIFEST
            top.write_bytes(as_json(manifest))
            self._fresh.append(top)
            self._carry_dotfiles()
            if self.site.exists():
                shutil.copymode(self.site, self._next)
            _force_to_disk(self._fresh, self._next)
            self._swap_in()
            _force_folder(self.site.parent)

    def _refuse_double(self, path: str) -> None:
        folded = unicodedata.normalize("NFC", path).casefold()
        if folded in self._seen:
            raise CannotWrite(f"Two files of the site would have the name “{path}”. Rename one of their sources.")
        self._seen.add(folded)

    def _link(self, output: Output, target: Path) -> bool:
        """Whether the old site's file could be taken."""
        old = self.site / output.path
        try:
            if old.resolve() != self.site.resolve() / output.path or old.read_bytes() != output.content:
                return False
            _clone_file(old, target)
        except OSError:
            # Whatever is wrong with the old file, the new one can be written.
            target.unlink(missing_ok=True)
            return False
        return True

    def _carry_dotfiles(self) -> None:
        for path, dotfile in _entries(self.site):
            target = self._next / path
            if dotfile and path != MANIFEST and not os.path.lexists(target):
                target.parent.mkdir(parents=True, exist_ok=True)
                _clone(self.site / path, target)

    def _swap_in(self) -> None:
        if not self.site.exists():
            self._next.rename(self.site)
        elif not swap(self._next, self.site):
            _two_moves(self._next, self.site, self._work / "old")


def _two_moves(new: Path, site: Path, aside: Path) -> None:
    site.rename(aside)
    try:
        new.rename(site)
    except OSError:
        aside.rename(site)
        raise


def _recover(site: Path) -> None:
    """Puts the old site back where a run was killed between its two moves."""
    aside = work_folder(site) / "old"
    if not os.path.lexists(site) and aside.is_dir() and _is_marked(work_folder(site)):
        aside.rename(site)


def _is_marked(folder: Path) -> bool:
    return not folder.is_symlink() and (folder / MARKER).is_file()


def _clear(folder: Path) -> None:
    """Removes a work folder. The marker goes last, so that a half removed one is still known for what it is.

    Raises CannotWrite for a folder of that name that is not a work folder.
    """
    if not os.path.lexists(folder):
        return
    if not _is_marked(folder):
        try:
            folder.rmdir()  # one that was killed before its marker was written; takes an empty folder only
        except OSError:
            message = f"{folder} is in the way: sizewright needs that name and did not make it. Move it elsewhere."
            raise CannotWrite(message) from None
        return
    for entry in folder.iterdir():
        if entry.is_dir() and not entry.is_symlink():
            shutil.rmtree(entry)
        elif entry.name != MARKER:
            entry.unlink()
    (folder / MARKER).unlink()
    folder.rmdir()


def _clear_quietly(folder: Path) -> None:
    """What cannot be removed now is left to the next run: the site itself is written, or as it was."""
    with suppress(OSError, CannotWrite):
        _clear(folder)


def _refuse_odd_place(site: Path) -> None:
    if site.is_symlink():
        raise CannotWrite(f"{site} is a link. Make it a folder: it is replaced as a whole.")
    if site.exists() and not site.is_dir():
        raise CannotWrite(f"{site} is a file. Move it elsewhere: the site is a folder of that name.")


def _refuse_foreign(site: Path) -> None:
    """Raises NotOurs where files would be lost that we did not write. Dotfiles do not count."""
    manifest = read_manifest(site)
    known = manifest.outputs if manifest else {}
    foreign = [path for path, dotfile in _entries(site) if not dotfile and path not in known]
    if foreign:
        some = ", ".join(foreign[:3]) + (" and others" if len(foreign) > 3 else "")
        message = f"{site} holds files that sizewright did not write ({some}) and would lose. Move them elsewhere."
        raise NotOurs(message)


def _entries(site: Path) -> Iterator[tuple[str, bool]]:
    """Every file of a site by its path, and whether it is a dotfile: what is carried over. Those are not looked into.

    A dotfile may be a folder, and a link to a folder is a file.
    """
    for folder, folders, names in os.walk(site):
        here = Path(folder).relative_to(site)
        links = {name for name in folders if (Path(folder) / name).is_symlink()}
        dotfiles = {name for name in (*folders, *names) if name.startswith(".")}
        if Path(folder) == site:
            dotfiles |= _KEPT_BY_NAME & set(names)
        for name in sorted({*names, *links, *dotfiles}):
            yield (here / name).as_posix(), name in dotfiles
        folders[:] = sorted(set(folders) - links - dotfiles)


def _clone(source: Path, target: Path) -> None:
    if source.is_symlink():
        target.symlink_to(source.readlink())
    elif source.is_dir():
        target.mkdir()
        for entry in source.iterdir():
            _clone(entry, target / entry.name)
        shutil.copystat(source, target)
    elif source.is_file():
        _clone_file(source, target)


def _clone_file(source: Path, target: Path) -> None:
    """The same file under a second name, or a copy with its time where the file system has no second names."""
    try:
        target.hardlink_to(source)
    except OSError:
        shutil.copy2(source, target)


def _force_to_disk(files: list[Path], folder: Path) -> None:
    # Threads, as a file system writes many waiting files in one go: half the time of one after another.
    with ThreadPoolExecutor(8) as threads:
        list(threads.map(_force, files))
    for place, _, _ in os.walk(folder):
        _force_folder(Path(place))


def _force(file: Path) -> None:
    with file.open("rb") as opened:
        os.fsync(opened.fileno())


def _force_folder(folder: Path) -> None:
    if sys.platform == "win32":
        return
    number = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
    try:
        os.fsync(number)
    finally:
        os.close(number)


_NO_ROOM = {errno.ENOSPC, errno.EDQUOT, errno.EFBIG}
_NO_RIGHT = {errno.EACCES, errno.EPERM, errno.EROFS}


@contextmanager
def _plainly(site: Path) -> Iterator[None]:
    """Turns what the system answers into a sentence."""
    try:
        yield
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        where = error.filename or site
        if error.errno in _NO_ROOM:
            message = f"There is no room to write {site} ({reason}). Free some space on that disk."
        elif error.errno in _NO_RIGHT:
            message = f"{where} may not be written ({reason}). Give yourself the right to write in {site.parent}."
        elif error.errno in (errno.EBUSY, errno.EXDEV):
            message = f"{site} cannot be replaced ({reason}). If it is a mounted volume, mount the folder above it."
        else:
            message = f"{site} cannot be written: {where}: {reason}."
        raise CannotWrite(message) from error
