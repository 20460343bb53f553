"""In: the target of a link or picture in a source. Out: the same, safe and relative to `content/`, or a finding."""

import re
from posixpath import normpath
from urllib.parse import SplitResult, unquote, urlsplit

from sizewright.base.finding import Finding
from sizewright.base.nearest import did_you_mean
from sizewright.base.place import Span
from sizewright.read.rules import MISSING_FILE, UNSAFE_REFERENCE

_SCHEMES = ("http", "https", "mailto")
_PICTURES = (".svg", ".png", ".jpg", ".jpeg", ".webp", ".gif")


def split(address: str) -> SplitResult | None:
    """The parts of an address, None where it is none at all (an open bracket, letters that stand for other signs)."""
    try:
        return urlsplit(address)
    except ValueError:
        return None


class References:
    """Judges references. `media` and `sources` are None where a source stands alone and nothing beside it is known."""

    def __init__(self, folder: str, media: frozenset[str] | None, sources: frozenset[str] | None) -> None:
        self._folder = folder
        self._media = media
        self._sources = sources

    def link(self, target: str, span: Span) -> str | Finding:
        """A web address as it is; a source of the project as "techniques/blocking.md#anchor", below `content/`."""
        parts = split(target)
        if parts is None:
            message = f"“{unquote(target)}” is no address that can be read."
            return UNSAFE_REFERENCE.at(span, message, "Write the address out, as a browser shows it.")
        if parts.scheme in _SCHEMES or (not parts.scheme and not parts.netloc and not parts.path):
            return target
        if parts.scheme or parts.netloc:
            message = f"“{unquote(target)}” is no web address and no page of this project."
            return UNSAFE_REFERENCE.at(span, message, "Begin a web address with “https://”.")
        path = normpath(f"{self._folder}/{unquote(parts.path)}")
        if path.startswith(("..", "/")) or "\\" in path or not path.endswith(".md"):
            message = f"“{unquote(target)}” does not lead to a source of this project."
            return UNSAFE_REFERENCE.at(span, message, "Name the source as a file: ../techniques/blocking.md")
        if self._sources is not None and path not in self._sources:
            mend = did_you_mean(path, self._sources, "Write the file, or mend its name.")
            return MISSING_FILE.at(span, f"There is no source “{path}”.", mend)
        return f"{path}#{parts.fragment}" if parts.fragment else path

    def picture(self, target: str, span: Span) -> str | Finding:
        """The file of a picture, relative to `content/media/`."""
        path = re.sub(r"^(\.\./)?media/", "", unquote(target))
        parts = split(path)
        if (
            parts is None
            or parts.scheme
            or parts.netloc
            or path.startswith("/")
            or ".." in path.split("/")
            or "\\" in path
        ):
            message = f"“{unquote(target)}” is not a picture of this project."
            return UNSAFE_REFERENCE.at(span, message, "Put the picture into content/media/ and write its name alone.")
        if not path.lower().endswith(_PICTURES):
            return UNSAFE_REFERENCE.at(span, f"“{path}” is no picture.", f"Use one of {', '.join(_PICTURES)}.")
        if self._media is not None and path not in self._media:
            mend = did_you_mean(path, self._media, "Put it into content/media/, or mend its name.")
            return MISSING_FILE.at(span, f"There is no picture “{path}” in content/media/.", mend)
        return path
