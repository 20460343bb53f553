"""What templates are given of the PDFs a page offers: plain frozen data, like that of `view.py`."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SheetView:
    """One PDF: its address, its sheet ("A4"), and what is known of it: "7 pages", "84 kB"; "" where it is not made."""

    href: str
    sheet: str
    pages: str
    weight: str


@dataclass(frozen=True, slots=True)
class PapersView:
    """The PDFs of all sizes (`z` and `size` are "") or of one: the usual edition and large print, if any."""

    z: str
    size: str
    usual: tuple[SheetView, ...]
    large: tuple[SheetView, ...]
