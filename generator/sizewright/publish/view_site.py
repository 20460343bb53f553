"""What templates are given of the site and of a page as one of it: plain frozen data, like that of `view.py`."""

from dataclasses import dataclass

from markupsafe import Markup

from sizewright.base.language import is_english
from sizewright.publish.view import Link


@dataclass(frozen=True, slots=True)
class Site:
    """What all pages of one depth share in one language.

    `root` leads from a page to the top of the site, where its files are: "", "../" or "/below/"; `home` to the top of
    the pages in its language.
    """

    studio: str
    description: str
    author: str
    language: str
    notice: str
    root: str
    home: str
    places: tuple[Link, ...]
    pages: tuple[Link, ...]

    @property
    def english(self) -> bool:
        """Whether its pages are in English, which alone has the terms of the US and of the UK."""
        return is_english(self.language)


@dataclass(frozen=True, slots=True)
class Page:
    """One page; `path` is its place among those of its language, `canonical` its address on the web ("" where unknown).

    `languages` lead to it in the others, to their start page where it is not translated; `translations` are the full
    addresses of all it is there in, itself among them.
    """

    title: str
    description: str
    path: str
    canonical: str
    structured: Markup | None = None
    languages: tuple[Link, ...] = ()
    translations: tuple[Link, ...] = ()
