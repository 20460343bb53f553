"""In: the pictures of a project. Out: what may not be published: an SVG that runs or fetches something.

A picture is opened by browsers on its own, so a script in one would run on the reader's machine under the site's name.
"""

from pathlib import Path
from xml.etree.ElementTree import Element, ParseError, TreeBuilder

from defusedxml import ElementTree
from defusedxml.common import DefusedXmlException

from sizewright.base.finding import Finding
from sizewright.base.place import Span
from sizewright.read.rules import UNSAFE_PICTURE

_SIGNATURES = {
    ".png": (b"\x89PNG\r\n\x1a\n",),
    ".jpg": (b"\xff\xd8\xff",),
    ".jpeg": (b"\xff\xd8\xff",),
    ".gif": (b"GIF87a", b"GIF89a"),
    ".webp": (b"RIFF",),
}
_FORBIDDEN = ("script", "foreignObject", "iframe", "object", "embed", "handler", "set", "animate")
_REFERENCES = ("href", "src")
_MEND = "Save the drawing again as a plain SVG, its images embedded."


def judge_picture(path: Path, source: str) -> Finding | None:
    """The finding for a picture that may not be published. `source` is the path as a person would type it."""
    place = Span(source, 1, 1, 1, 1)
    data = path.read_bytes()
    if path.suffix.lower() == ".svg":
        return _judge_svg(data, place)
    if not data.startswith(_SIGNATURES.get(path.suffix.lower(), (b"",))):
        return UNSAFE_PICTURE.at(place, f"“{source}” is not the picture its ending says it is.", "Save it again.")
    return None


class _Builder(TreeBuilder):
    def pi(self, target: str, text: str | None = None) -> Element:  # noqa: ARG002 -- the signature of the parser's target
        """A style sheet named before the drawing would be fetched; the tree itself does not show it."""
        raise ValueError(f"it holds the instruction “{target}”")


def _judge_svg(data: bytes, place: Span) -> Finding | None:
    try:
        parser = ElementTree.XMLParser(target=_Builder(), forbid_dtd=True)
        parser.feed(data)
        root: Element = parser.close()
    except (ParseError, DefusedXmlException, ValueError, LookupError) as fault:
        return UNSAFE_PICTURE.at(place, f"“{place.source}” cannot be read as an SVG picture: {fault}.", _MEND)
    for element in root.iter():
        danger = _danger(element)
        if danger:
            return UNSAFE_PICTURE.at(place, f"“{place.source}” holds {danger}.", _MEND)
    return None


def _danger(element: Element) -> str | None:
    name = _local(element.tag)
    if name in _FORBIDDEN:
        return f"an element “{name}”"
    if name == "style" and _fetches(element.text or ""):
        return "a style that fetches something"
    for key, value in element.attrib.items():
        attribute = _local(key)
        if attribute.lower().startswith("on"):
            return f"an event handler “{attribute}”"
        if attribute in _REFERENCES and not _embedded(value):
            return f"a reference to “{value[:60]}”"
        if _fetches(value):
            return f"“{value[:60]}”, which fetches something"
    return None


def _local(name: str) -> str:
    return name.rpartition("}")[2]


def _embedded(target: str) -> bool:
    """Whether a reference stays inside the picture: an anchor of its own, or an image embedded as data."""
    return target.startswith(("#", "data:image/"))


def _fetches(style: str) -> bool:
    folded = "".join(style.split()).lower()
    return "@import" in folded or any(not part.lstrip("'\"").startswith("#") for part in folded.split("url(")[1:])
