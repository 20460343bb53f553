"""In: a path below the site and its bytes. Out: one file to be written, whose path cannot leave the site."""

from dataclasses import dataclass
from pathlib import PurePosixPath


@dataclass(frozen=True, slots=True)
class Output:
    """One file of the site; `path` is relative to it, with forward slashes.

    Raises ValueError for a path that leaves the site: every path is made by this program, so that is our own mistake.
    """

    path: str
    content: bytes

    def __post_init__(self) -> None:
        parts = self.path.split("/")
        if any(part in ("", ".", "..") for part in parts) or "\\" in self.path or "\0" in self.path:
            raise ValueError(f"not a path below the site: {self.path!r}")
        if PurePosixPath(self.path).is_absolute() or ":" in parts[0]:
            raise ValueError(f"not a path below the site: {self.path!r}")
