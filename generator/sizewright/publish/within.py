"""Where the pages of one language are in a site, and which pages the other languages have."""

from collections.abc import Iterable
from dataclasses import dataclass

from sizewright.publish.view import Link

START = "index.html"


@dataclass(frozen=True, slots=True)
class Among:
    """One language of a site: its code and name, where its pages are ("" or "de/"), and which it has."""

    code: str
    name: str
    below: str
    paths: frozenset[str]


@dataclass(frozen=True, slots=True)
class Within:
    """Which of the languages of a site pages are in; without any they are alone."""

    own: Among | None = None
    all: tuple[Among, ...] = ()

    @property
    def below(self) -> str:
        """Where the pages are, from the top of the site."""
        return self.own.below if self.own else ""

    @property
    def first(self) -> bool:
        """Whether they are those of the first language, that of the sources."""
        return not self.below

    @property
    def untranslated(self) -> frozenset[str]:
        """Pages that the first language has and theirs has not."""
        return self.all[0].paths - self.own.paths if self.own else frozenset()

    def switch(self, path: str, root: str) -> tuple[Link, ...]:
        """The ways from a page to the other languages: to the same page, where it is translated, else to the start."""
        others = (one for one in self.all if one is not self.own)
        return tuple(
            Link(one.name, f"{root}{one.below}{path if path in one.paths else START}", language=one.code)
            for one in others
        )

    def translations(self, path: str, address: str) -> tuple[Link, ...]:
        """The full addresses of a page in all its languages; none where it is in one alone."""
        having = [one for one in self.all if path in one.paths]
        if len(having) < 2 or not address:
            return ()
        return tuple(
            Link(one.name, f"{address.rstrip('/')}/{one.below}{_bare(path)}", language=one.code) for one in having
        )


ALONE = Within()


def folder_of(code: str, codes: Iterable[str]) -> str:
    """Where the pages of a language are: those of the first at the top."""
    return "" if code == next(iter(codes)) else f"{code}/"


def _bare(path: str) -> str:
    return "" if path == START else path
