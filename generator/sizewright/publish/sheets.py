"""In: a document laid out once. Out: its pages in the middle of a sheet of paper; what is known of sheets.

Print pages are laid out on the part that all sheets share. So it costs little to offer several, and a page has the same
number on each: two people with different printers speak of the same page.
"""

from typing import Any

from sizewright.read.project import Sheet

# Width and height in mm: ISO 216, and ANSI/ASME Y14.1 (8.5 by 11 in).
SIZES = {Sheet.A4: (210.0, 297.0), Sheet.LETTER: (215.9, 279.4)}
NAMES = {Sheet.A4: "A4", Sheet.LETTER: "Letter"}

_POINT = 72 / 25.4  # points of a PDF a mm
_PIXEL = 25.4 / 96  # mm a px of CSS
_NEAR = 0.1  # mm that a page may be larger by


def set_on_sheet(pdf: Any, sheet: Sheet) -> None:  # noqa: ANN401 (the renderer has no types)
    """Makes every page of a PDF as large as a sheet, around the middle it has."""
    width, height = (side * _POINT for side in SIZES[sheet])
    for reference in pdf.page_references:
        page = pdf.objects[int(reference.split()[0])]
        left, lower, right, upper = page["MediaBox"]
        x, y = (left + right) / 2, (lower + upper) / 2
        box = [round(side, 3) for side in (x - width / 2, y - height / 2, x + width / 2, y + height / 2)]
        for name in ("MediaBox", "TrimBox", "BleedBox"):
            page[name][:] = box


def too_large(document: Any, sheet: Sheet) -> str:  # noqa: ANN401
    """Words for a page that a sheet has no room for, "" where all of them have."""
    width, height = SIZES[sheet]
    for page in document.pages:
        across, down = page.width * _PIXEL, page.height * _PIXEL
        if across > width + _NEAR or down > height + _NEAR:
            return (
                f"a page of {across:.1f} by {down:.1f} mm has no room on {NAMES[sheet]}: "
                "write “@page { size: 210mm 279.4mm }” in the theme, which every sheet has room for"
            )
    return ""
