"""In: what a source refers to. Out: the address a page uses for it, relative, so that the site works from disk.

On paper there is nothing beside the document: there a link is its full address on the web, or only words where the
studio has not said where it publishes.
"""

from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import quote, unquote, urlsplit

from sizewright.publish.picture_size import Size, picture_size

# Schemes a page may lead to; anything else ("javascript:") stays words. The reader has already found fault with it.
_OUTSIDE = ("http", "https", "mailto")


@dataclass(frozen=True, slots=True)
class Links:
    """Makes addresses for one page; `home` leads to the top of the pages in its language, `address` is the site's.

    `pictures` is the folder of the project's pictures, where they can be measured. `below` is where the pages of its
    language are in the site ("de/", "" for the first), and `untranslated` are pages that the first language alone has.
    """

    home: str
    address: str = ""
    paper: bool = False
    pictures: Path | None = None
    below: str = ""
    untranslated: frozenset[str] = frozenset()

    @property
    def root(self) -> str:
        """What leads to the top of the site, where its files are; print pages lie there in every language."""
        return self.home if self.paper else self.home + "../" * self.below.count("/")

    def to(self, path: str, fragment: str = "") -> str:
        """The address of a page of the site, or of a place in it; "" on paper where that is unknown."""
        page = self.absolute(path) if self.paper else self._page(path, self.root, self.home)
        return f"{page}#{quote(fragment)}" if page and fragment else page

    def absolute(self, path: str) -> str:
        """The full address on the web of a page of the site, "" where the studio has given none."""
        top = f"{self.address.rstrip('/')}/"
        return self._page(path, top, top + self.below) if self.address else ""

    def _page(self, path: str, root: str, home: str) -> str:
        return (root if path in self.untranslated else home) + quote(path)

    def full(self, file: str) -> str:
        """The full address on the web of a file that pages load, "" where the studio has given none."""
        return f"{self.address.rstrip('/')}/{quote(file)}" if self.address else ""

    def media(self, file: str) -> str:
        """The address of a picture; on paper too, where it is loaded and not followed."""
        return self.file(f"media/{file}")

    def size(self, file: str) -> Size | None:
        """How large a picture is, so that a page keeps room for it; None where that is not known."""
        path = self.pictures / file if self.pictures is not None else None
        if path is None or not path.resolve().is_relative_to(path.parents[file.count("/")].resolve()):
            return None  # one that leads out of its folder is refused when it is written
        with suppress(OSError):
            return picture_size(path.read_bytes())
        return None

    def file(self, path: str) -> str:
        """The address of a file of the site that a page loads."""
        return self.root + quote(path)

    def followed(self, address: str) -> str:
        """The address a link of the text leads to; the project's sources are named as `techniques/blocking.md`."""
        parts = urlsplit(address)
        if parts.scheme or parts.netloc:
            return address if parts.scheme.lower() in _OUTSIDE else ""
        if not parts.path:
            return address
        source, _, fragment = address.partition("#")
        path = unquote(source.removeprefix("pages/").removesuffix(".md")) + ".html"
        return self.to(path, unquote(fragment))


def film_address(address: str, start: int) -> str:
    """The address of a film from a second on: a media fragment (W3C Media Fragments URI 1.0, section 4.2.1)."""
    return f"{address}#t={start}" if start and "#" not in address else address
