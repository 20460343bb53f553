"""In: a pattern and what its studio has chosen. Out: the editions its PDFs are made in, and where each is in the site.

Everything but `patterns/NAME.pdf` is in a folder of the pattern's name, so that no pattern can take another's place.
"""

from dataclasses import dataclass

from sizewright.publish.print_job import BESIDE
from sizewright.publish.view_sizes import size_choices
from sizewright.publish.view_table import SizeChoice
from sizewright.read.pattern import Pattern
from sizewright.read.project import PaperChoice, Sheet

_ALL = "all"  # the key of no size
_LONGEST = 60  # bytes of a size's name in the name of a file


@dataclass(frozen=True, slots=True)
class Edition:
    """What a pattern is printed as: for all sizes or for one, usual or in large print, and its path on each sheet."""

    size: SizeChoice | None
    place: int | None
    large: bool
    targets: tuple[tuple[str, Sheet], ...]


ALL_SIZES = Edition(None, None, large=False, targets=())


def paper_path(name: str) -> str:
    """Where the PDF is that anybody asks for who does not say which."""
    return f"{BESIDE}{name}.pdf"


def paper_folder(name: str) -> str:
    """Where all other PDFs of a pattern are."""
    return f"{BESIDE}{name}/"


def editions(pattern: Pattern, choice: PaperChoice, below: str = "") -> tuple[Edition, ...]:
    """The editions of a pattern: all sizes first, each of them usual before large.

    `below` is where the pages of its language are in the site.
    """
    sizes = size_choices(pattern.header.sizes) if choice.each_size else ()
    looks = (False, True) if choice.large_print else (False,)
    return tuple(
        Edition(size, place, large, _targets(below, pattern.name, size, choice, large=large))
        for place, size in ((None, None), *enumerate(sizes))
        for large in looks
    )


def _targets(
    below: str, name: str, size: SizeChoice | None, choice: PaperChoice, *, large: bool
) -> tuple[tuple[str, Sheet], ...]:
    return tuple((below + _path(name, size, sheet, choice, large=large), sheet) for sheet in choice.sheets)


def _path(name: str, size: SizeChoice | None, sheet: Sheet, choice: PaperChoice, *, large: bool) -> str:
    """Large print has a folder of its own: no name of a size can be taken for it."""
    if size is None and not large and sheet is choice.sheets[0]:
        return paper_path(name)
    key = _ALL if size is None else size.key if len(size.key.encode()) <= _LONGEST else size.z
    if large:
        return f"{paper_folder(name)}large-print/{name}-{key}-large-print-{sheet}.pdf"
    return f"{paper_folder(name)}{name}-{key}-{sheet}.pdf"
