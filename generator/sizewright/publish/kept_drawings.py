"""In: the pictures of a page. Out: those that are drawings, each drawn once a process and kept as it is written.

A picture of cloth takes the renderer longer than all the words around it, and the papers of all sizes show the same.
What is written of a drawing made of shapes alone depends on itself and the size it is shown in, and on nothing else.
One with words needs the fonts of its document, one with patterns or half-tones has parts elsewhere in it: these are
left to the renderer. The names with an underscore are the renderer's own affair: its version is pinned, and the tests
hold that a PDF is the same, byte for byte, as without what is kept.
"""

import re
from base64 import b64decode
from collections.abc import Iterator
from functools import lru_cache
from typing import Any
from urllib.parse import quote
from xml.etree import ElementTree as ET

import pydyf

from sizewright.publish.print_job import Job

_IN_PAGE = re.compile(r'"(data:image/svg\+xml;base64,([A-Za-z0-9+/]+=*))"')
# What a drawing must not have: other elements than these, and what leads to a part beside it or says what is not there.
_OTHERS = re.compile(
    rb"<(?!/|(?:\?xml|svg|title|desc|defs|g|path|use|rect|circle|ellipse|line|polyline|polygon)\b)|url\(|color\("
)
_PARTS = ("XObject", "Pattern", "Shading")
_OPAQUE = re.compile(r"[aA][\d.]+")  # the states in which the renderer draws with an opacity, by their names


def kept_drawings(job: Job, svg_image: Any) -> dict[str, Any]:  # noqa: ANN401 (the renderer has no types)
    """The drawings on the page of a job, by the addresses it shows them by; `svg_image` is the renderer's class."""
    found = ((address, kept_drawing(address, content, svg_image)) for address, content in _drawings(job))
    return {address: image for address, image in found if image is not None}


def _drawings(job: Job) -> Iterator[tuple[str, bytes]]:
    for address, content in _IN_PAGE.findall(job.html):
        yield address, b64decode(content)
    for path, picture in job.pictures:
        if path.endswith(".svg"):
            yield job.press.root + quote(path), picture


@lru_cache(maxsize=64)
def kept_drawing(address: str, content: bytes, svg_image: Any) -> "KeptDrawing | None":  # noqa: ANN401
    """A drawing that is drawn once, None where it is left to the renderer."""
    if _OTHERS.search(content):
        return None
    try:
        tree = ET.fromstring(content)  # noqa: S314 (no declaration is let through, so no entity can be in it)
    except ET.ParseError:
        return None  # the renderer says what is wrong with it
    return KeptDrawing(svg_image(tree, address, None, None))


class KeptDrawing:
    """A picture as the renderer asks for it, and what is written of it, by the size it is shown in."""

    def __init__(self, image: Any) -> None:  # noqa: ANN401
        self._image = image
        self._written: dict[tuple[float, float], tuple[bytes, dict[str, Any]] | None] = {}

    def get_intrinsic_size(self, resolution: float, font_size: float) -> Any:  # noqa: ANN401
        """Its width, height and ratio, each None where it has none."""
        return self._image.get_intrinsic_size(resolution, font_size)

    def draw(self, stream: Any, width: float, height: float, style: Any) -> None:  # noqa: ANN401
        """Writes it on a page."""
        size = (width, height)
        if size not in self._written:
            self._written[size] = self.written(stream, width, height, style)
        written = self._written[size]
        if written is None:
            self._image.draw(stream, width, height, style)
            return
        content, states = written
        for name, state in states.items():
            stream._resources["ExtGState"].setdefault(name, pydyf.Dictionary(state))  # noqa: SLF001
        stream.stream.append(content)

    def written(self, stream: Any, *how: Any) -> tuple[bytes, dict[str, Any]] | None:  # noqa: ANN401
        """What is written of it, on a stream of its own, and the states it is drawn in; None where more is needed."""
        resources = {name: pydyf.Dictionary() for name in ("ExtGState", *_PARTS)}
        fonts: dict[str, Any] = {}
        colours = stream._resources["ColorSpace"]  # noqa: SLF001
        aside = stream.clone(resources={**resources, "ColorSpace": colours}, fonts=fonts, images={}, tags=None)
        self._image.draw(aside, *how)
        # The renderer says what it trips over and leaves off in the middle of it.
        whole = aside.stream and len(aside._ctm_stack) == 1  # noqa: SLF001
        states = dict(resources["ExtGState"])
        elsewhere = fonts or any(resources[name] for name in _PARTS) or not all(map(_OPAQUE.fullmatch, states))
        if elsewhere or not whole:
            return None
        return pydyf.Stream(aside.stream).data.partition(b"stream\n")[2].removesuffix(b"\nendstream"), states
