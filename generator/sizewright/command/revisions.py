"""In: a git revision and a path, as a person types them. Out: the project as it was then, written down.

The local git is asked, without a shell, and only for what it has: nothing is fetched, and no file of the person's is
touched. Pictures are there by name alone, and whatever is no plain file is left out.
"""

import os
import subprocess
from collections.abc import Iterator
from pathlib import Path, PurePosixPath

from sizewright.command.outcome import Stopped

_PLAIN_FILES = ("100644", "100755")
_PATIENCE = 120  # seconds
_SURROUNDINGS = {"GIT_NO_LAZY_FETCH": "1", "GIT_TERMINAL_PROMPT": "0", "GIT_OPTIONAL_LOCKS": "0", "LC_ALL": "C"}


class Repository:
    """The repository around a folder. Raises Stopped where there is none, or no git."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._top = Path(os.fsdecode(self._asked("rev-parse", "--show-toplevel").rstrip(b"\n")))

    def within(self, path: Path) -> str:
        """A path as the repository calls it. Raises Stopped where it leads out of it."""
        try:
            return Path(os.path.normpath(self._folder / path)).resolve().relative_to(self._top.resolve()).as_posix()
        except ValueError:
            raise Stopped(f"{path} lies outside the repository {self._top}.") from None

    def commit(self, revision: str) -> str:
        """The commit a revision means. Raises Stopped."""
        try:
            found = self._asked("rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}")
        except Stopped:
            raise Stopped(f"“{revision}” is neither a file or folder nor a revision that git knows here.") from None
        return found.decode("ascii").strip()

    def write(self, commit: str, below: str, folder: Path) -> None:
        """Writes the sources below a path, as they were, into a folder, by their paths in the repository."""
        listed = self._asked("ls-tree", "-r", "-z", "--full-tree", commit, "--", *([below] if below != "." else []))
        for name, content in self._contents(listed):
            path = folder / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(content)

    def _contents(self, listed: bytes) -> Iterator[tuple[PurePosixPath, bytes]]:
        wanted: list[tuple[PurePosixPath, bytes]] = []
        for entry in filter(None, listed.split(b"\0")):
            about, _, name = entry.partition(b"\t")
            mode, _, key = about.split(b" ")
            path = PurePosixPath(os.fsdecode(name))
            if mode.decode("ascii") not in _PLAIN_FILES or ".." in path.parts or path.is_absolute():
                continue
            if path.suffix in (".md", ".yaml"):
                wanted.append((path, key))
            else:
                yield path, b""
        told = self._asked("cat-file", "--batch", sent=b"".join(key + b"\n" for _, key in wanted)) if wanted else b""
        at = 0
        for path, _ in wanted:
            end = told.index(b"\n", at)
            length = int(told[at:end].rsplit(b" ", 1)[1])
            yield path, told[end + 1 : end + 1 + length]
            at = end + 1 + length + 1

    def _asked(self, *words: str, sent: bytes = b"") -> bytes:
        """What git answers. Raises Stopped with its reason, or where it is missing."""
        try:
            done = subprocess.run(  # noqa: S603 (no shell; revisions stand behind --end-of-options, paths behind --)
                ["git", "-C", str(self._folder), *words],  # noqa: S607 (the git of the person's own path)
                input=sent,
                capture_output=True,
                check=False,
                timeout=_PATIENCE,
                env={**os.environ, **_SURROUNDINGS},
            )
        except FileNotFoundError:
            raise Stopped("A revision needs git, which is not installed here. Name files or folders instead.") from None
        except subprocess.TimeoutExpired:
            raise Stopped(f"git gave no answer within {_PATIENCE} seconds.") from None
        if done.returncode:
            reason = done.stderr.decode("utf-8", "replace").strip().removeprefix("fatal: ") or "it gave no reason"
            raise Stopped(f"git cannot tell: {reason}")
        return done.stdout
