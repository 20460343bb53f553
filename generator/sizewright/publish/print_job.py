"""In: a print page and the files it may show. Out: a job that any process can do, and the key of what it would show."""

import hashlib
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, cached_property
from importlib import metadata
from pathlib import Path
from urllib.parse import unquote

# Where a page of a site without an address is laid out; no real place can have the name (RFC 2606, section 2).
NOWHERE = "https://site.invalid/"

Files = tuple[tuple[str, bytes], ...]

# What decides how a page comes out beside the page itself: the renderer, and our own use of it.
_RENDERER = ("weasyprint", "pydyf", "fonttools", "tinycss2", "tinyhtml5")
_OUR_USE = ("layout.py", "tags.py")

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
    """One PDF to lay out: its path in the site, the page, the pictures on it and its dates (ISO 8601, "" for none).

    With `forms` its boxes can be filled in.
    """

    path: str
    html: str
    pictures: Files
    created: str
    modified: str
    press: Press
    forms: bool = False

    @property
    def key(self) -> str:
        """The digest of everything the PDF shows and of what lays it out: the same key means the same PDF."""
        dates = f"{self.created}\0{self.modified}\0{'form' if self.forms else ''}"
        page = (self.path.encode(), self.html.encode(), *_flat(self.pictures))
        return _digest(_renderer_digest().encode(), self.press.digest.encode(), dates.encode(), *page)


@dataclass(frozen=True, slots=True)
class Paper:
    """A PDF and what the renderer said against it; with a fault it must not be shown to anybody."""

    path: str
    content: bytes
    faults: tuple[str, ...]


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
