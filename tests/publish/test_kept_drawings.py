"""In: pages with drawings. Out: PDFs that are the same, byte for byte, whether a drawing is kept or drawn anew."""

import logging
from base64 import b64encode
from pathlib import Path

import pytest

from sizewright.publish import kept_drawings, layout
from sizewright.publish.print_job import Job, Press
from sizewright.publish.theme import Theme
from sizewright.read.project import Sheet

PRESS = Press(tuple((file.path, file.content) for file in Theme.find("studio", Path(__file__).parent).paper_files()))

SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 40" width="60" height="40">{}</svg>'
SHAPES = SVG.format(
    '<defs><g id="a"><path d="M2 2c4 9 8 9 12 0z" fill="#a33" stroke="#222"/></g></defs><use href="#a"/>'
    '<use href="#a" x="20"/><circle cx="40" cy="20" r="9" fill="#36c" fill-opacity="0.5" stroke-dasharray="2 1"/>'
)
# What has parts elsewhere in a PDF: a font, a group, a pattern, a style.
LEFT = {
    "words": SVG.format('<text x="5" y="20" font-size="9">k2</text>'),
    "half-tones": SVG.format('<path d="M0 0h60v40z" opacity="0.5"/>'),
    "a pattern": SVG.format(
        '<defs><pattern id="p" width="5" height="5"><path d="M0 0h3v3z"/></pattern></defs>'
        '<path d="M0 0h60v40z" fill="url(#p)"/>'
    ),
    "a style": SVG.format("<style>path { fill: red }</style><path d='M0 0h60v40z'/>"),
}


def job(*drawings: str, pictures: tuple[tuple[str, bytes], ...] = (), wide: int = 60) -> Job:
    """A page that shows drawings, each in two sizes, before a line of text."""
    shown = [f"data:image/svg+xml;base64,{b64encode(svg.encode()).decode()}" for svg in drawings]
    shown += [f"../{path.replace(' ', '%20')}" for path, _ in pictures]
    images = "".join(
        f'<p><img src="{src}" alt="cloth" style="width: {px}px"> and</p>' for src in shown for px in (wide, 90)
    )
    html = (
        f'<!doctype html><html lang="en"><title>Hat</title><h1 style="color: #357">Hat</h1>{images}<p>k2, p2</p></html>'
    )
    return Job((("patterns/hat.pdf", Sheet.A4),), html, pictures, "2026-03-01", "", PRESS)


def laid_out(one: Job) -> bytes:
    (paper,) = layout.lay_out(one)
    assert paper.faults == ()
    return paper.content


def drawn_anew(one: Job) -> bytes:
    """What the renderer makes of it by itself."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(layout, "kept_drawings", lambda *_: {})
        return laid_out(one)


@pytest.fixture
def written(monkeypatch: pytest.MonkeyPatch) -> list[object]:
    """What was written of each drawing that was drawn to be kept, beginning with none."""
    kept_drawings.kept_drawing.cache_clear()
    found: list[object] = []
    write = kept_drawings.KeptDrawing.written

    def noted(self: kept_drawings.KeptDrawing, *how: object) -> object:
        found.append(write(self, *how))
        return found[-1]

    monkeypatch.setattr(kept_drawings.KeptDrawing, "written", noted)
    return found


def test_what_is_kept_is_what_the_renderer_draws(written: list[object]) -> None:
    everything = job(SHAPES, *LEFT.values(), pictures=(("media/hat one.svg", SHAPES.encode()),))
    expected = drawn_anew(everything)
    assert written == []
    assert [laid_out(everything), laid_out(everything)] == [expected, expected]


def test_a_drawing_is_drawn_once_for_each_size_it_is_shown_in(written: list[object]) -> None:
    for _ in range(2):
        laid_out(job(SHAPES, pictures=(("media/hat one.svg", SHAPES.encode()),)))
    assert len(written) == 4
    other = job(SHAPES, wide=70)
    assert laid_out(other) == drawn_anew(other)
    assert len(written) == 5


@pytest.mark.parametrize("what", LEFT)
def test_a_drawing_with_parts_elsewhere_is_left_to_the_renderer(what: str, written: list[object]) -> None:
    laid_out(job(LEFT[what]))
    assert not any(written)


@pytest.mark.parametrize(("instead", "of"), [("</sv>", "</svg>"), ('fill-opacity="half"', 'fill-opacity="0.5"')])
def test_what_the_renderer_says_against_a_drawing_is_said_every_time(
    instead: str, of: str, log_records: list[logging.LogRecord]
) -> None:
    broken = job(SHAPES.replace(of, instead))
    said = [layout.lay_out(broken)[0].faults for _ in range(2)]
    assert said[0] == said[1]
    (fault,) = said[0]
    assert fault.startswith("Failed to")
    log_records.clear()


def test_a_declaration_is_not_read_here() -> None:
    """Entities that grow: such a picture is the renderer's own affair, and the reading of a project refuses it."""
    content = b'<!DOCTYPE svg [<!ENTITY a "aaaaaaaa">]>' + SHAPES.encode()
    assert kept_drawings.kept_drawing("", content, object) is None
    assert kept_drawings.kept_drawing("", content.decode().encode("utf-16"), object) is None
