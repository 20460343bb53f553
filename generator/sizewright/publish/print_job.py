"""In: a print page and the files it may show. Out: a job that any process can do, and the key of what it would show."""

import hashlib
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, cached_property
from importlib import metadata
from pathlib import Path
from urllib.parse import unquote

from sizewright.read.project import Sheet

# Where a page of a site without an address is laid out; no real place can have the name (RFC 2606, section 2).
NOWHERE = "https://site.invalid/"

# Where the pages of patterns are: what a print page names, it names from there, wherever its PDFs are.
BESIDE = "patterns/"

Files = tuple[tuple[str, bytes], ...]

# What decides how a page comes out beside the page itself: the renderer, and our own use of it.
_RENDERER = ("weasyprint", "pydyf", "fonttools", "tinycss2", "tinyhtml5")
_OUR_USE = ("kept_drawings.py", "layout.py", "sheets.py", "tags.py")

_PICTURE = re.compile(r"""\bmedia/([^"'\s<>()?#]+)""")


@dataclass(frozen=True)
class Press:
    """What all print pages of a site share: the theme's print files by their paths in the site, and its address."""

    files: Files
    address: str = ""

    @property
    def root(self) -> str:
        """The address that every path is below."""
        return f"{self.address.rstrip('/')}/" if self.address else NOWHERE

    @cached_property
    def digest(self) -> str:
        """The digest of it, so that its fonts are not read again for every page."""
        return _digest(self.address.encode(), *_flat(self.files))


@dataclass(frozen=True, slots=True)
class Job:
    """What is laid out once: a page, the pictures on it and its dates (ISO 8601, "" for none).

    `targets` are the PDFs made of it, by their paths in the site, each on its sheet. With `forms` their boxes can be
    filled in.
    """

    targets: tuple[tuple[str, Sheet], ...]
    html: str
    pictures: Files
    created: str
    modified: str
    press: Press
    forms: bool = False

    @property
    def path(self) -> str:
        """The path of its first PDF."""
        return self.targets[0][0]

    @property
    def key(self) -> str:
        """The digest of everything its PDFs show and of what lays them out: the same key means the same PDFs."""
        dates = f"{self.created}\0{self.modified}\0{'form' if self.forms else ''}"
        targets = "\0".join(part for target in self.targets for part in target)
        page = (targets.encode(), self.html.encode(), *_flat(self.pictures))
        return _digest(_renderer_digest().encode(), self.press.digest.encode(), dates.encode(), *page)


@dataclass(frozen=True, slots=True)
class Paper:
    """A PDF, its pages, and what the renderer said against it; with a fault it must not be shown to anybody."""

    path: str
    content: bytes
    faults: tuple[str, ...]
    pages: int = 0


@dataclass(frozen=True, slots=True)
class Printed:
    """What a reader is told of a PDF before it is fetched: its pages, and its size in bytes."""

    pages: int
    size: int


def pictures_on(html: str, media: Mapping[str, bytes]) -> Files:
    """The pictures a print page names, each as its path in the site with its bytes."""
    named = {unquote(name) for name in _PICTURE.findall(html)}
    return tuple((f"media/{name}", media[name]) for name in sorted(named) if name in media)


@cache
def _renderer_digest() -> str:
    versions = " ".join(metadata.version(name) for name in _RENDERER)
    sources = (Path(__file__).with_name(name).read_bytes() for name in _OUR_USE)
    return _digest(versions.encode(), *sources)


def _flat(files: Files) -> tuple[bytes, ...]:
    return tuple(part for path, content in files for part in (path.encode(), content))


def _digest(*parts: bytes) -> str:
    total = hashlib.sha256()
    for part in parts:
        # The length first, so that no two lists of parts run together into the same bytes.
        total.update(len(part).to_bytes(8, "big") + part)
    return total.hexdigest()
