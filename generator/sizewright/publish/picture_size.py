"""In: the bytes of a picture. Out: its width and height in pixels, so that a page keeps room for it before it is there.

Formats: PNG (11.2.1), GIF89a (18), JPEG (ITU-T T.81, B.2.2), WebP (RFC 9649, 2.5 to 2.7), and SVG 2 (8.2).
"""

import re
from dataclasses import dataclass

_FRAMES = frozenset(range(0xC0, 0xD0)) - {0xC4, 0xC8, 0xCC}  # the segments of a JPEG that tell its size
_ROOT = re.compile(rb"<svg\b[^>]*>", re.IGNORECASE)
_SIDE = re.compile(rb"\s(width|height)\s*=\s*[\"']\s*([\d.]+)(?:px)?\s*[\"']")
_BOX = re.compile(rb"\sviewBox\s*=\s*[\"']\s*(?:[-\d.eE]+[\s,]+){2}([\d.]+)[\s,]+([\d.]+)\s*[\"']")


@dataclass(frozen=True, slots=True)
class Size:
    """Width and height in pixels, both above 0."""

    width: int
    height: int


def picture_size(content: bytes) -> Size | None:
    """The size a picture tells of itself; None where it tells none, or is of another format."""
    try:
        width, height = _told(content)
    except (IndexError, ValueError):
        return None
    return Size(width, height) if width > 0 and height > 0 else None


def _told(content: bytes) -> tuple[int, int]:
    """Both sides. Raises IndexError and ValueError for a file that ends too soon or holds something else."""
    if content.startswith(b"\x89PNG\r\n\x1a\n"):
        return _big(content[16:20]), _big(content[20:24])
    if content.startswith(b"GIF8"):
        return _little(content[6:8]), _little(content[8:10])
    if content.startswith(b"\xff\xd8"):
        return _jpeg(content)
    if content.startswith(b"RIFF"):
        return _webp(content)
    return _svg(content)


def _big(part: bytes) -> int:
    return int.from_bytes(part, "big")


def _little(part: bytes) -> int:
    return int.from_bytes(part, "little")


def _jpeg(content: bytes) -> tuple[int, int]:
    at = 2
    while content[at] == 0xFF:
        if content[at + 1] in _FRAMES:
            return _big(content[at + 7 : at + 9]), _big(content[at + 5 : at + 7])
        at += 2 + max(2, _big(content[at + 2 : at + 4]))
    raise ValueError("no segment begins where one should")


def _webp(content: bytes) -> tuple[int, int]:
    match content[12:16]:
        case b"VP8X":
            return _little(content[24:27]) + 1, _little(content[27:30]) + 1
        case b"VP8L":
            sides = _little(content[21:25])
            return (sides & 0x3FFF) + 1, (sides >> 14 & 0x3FFF) + 1
        case b"VP8 ":
            return _little(content[26:28]) & 0x3FFF, _little(content[28:30]) & 0x3FFF
    raise ValueError("not a picture in WebP")


def _svg(content: bytes) -> tuple[int, int]:
    """Its width and height where both are told in pixels, else those of its view box."""
    root = _ROOT.search(content)
    if root is None:
        raise ValueError("no SVG")
    sides = {found[1]: float(found[2]) for found in _SIDE.finditer(root[0])}
    if len(sides) == 2:
        return round(sides[b"width"]), round(sides[b"height"])
    box = _BOX.search(root[0])
    if box is None:
        raise ValueError("an SVG without a size")
    return round(float(box[1])), round(float(box[2]))
