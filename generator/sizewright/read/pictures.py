"""In: the pictures of a project. Out: what may not be published: an SVG that runs or fetches something.

A picture is opened by browsers on its own, so a script in one would run on the reader's machine under the site's name.
"""

import re
from typing import Any
from xml.etree.ElementTree import Element, ParseError, TreeBuilder

from defusedxml.common import DefusedXmlException
from defusedxml.ElementTree import DefusedXMLParser

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
_FORBIDDEN = ("script", "foreignObject", "iframe", "object", "embed", "handler", "listener", "set", "animate")
_HTML = "{http://www.w3.org/1999/xhtml}"
_REFERENCES = ("href", "src")
# A picture within the picture must be one that cannot run anything either.
_EMBEDDED = re.compile(r"#|data:image/(?:png|jpeg|gif|webp)[;,]", re.IGNORECASE)
_CSS_ESCAPE = re.compile(r"\\(?:([0-9a-fA-F]{1,6})\s?|(.))", re.DOTALL)
_CSS_FETCHES = ("@import", "image-set(", "src(")
_MEND = "Save the drawing again as a plain SVG, its images embedded."


class _Tree(TreeBuilder):
    """A tree that remembers the instructions to programs, which the usual one drops."""

    def __init__(self) -> None:
        super().__init__()
        self.instructions: list[str] = []

    def pi(self, target: str, text: str | None = None) -> "Element[Any]":
        self.instructions.append(target)
        return super().pi(target, text)


def judge_picture(data: bytes, ending: str, source: str) -> Finding | None:
    """The finding for a picture that may not be published. `source` is the path as a person would type it."""
    place = Span(source, 1, 1, 1, 1)
    if ending == ".svg":
        return _judge_svg(data, place)
    if not data.startswith(_SIGNATURES.get(ending, (b"",))):
        return UNSAFE_PICTURE.at(place, f"“{source}” is not the picture its ending says it is.", "Save it again.")
    return None


def _judge_svg(data: bytes, place: Span) -> Finding | None:
    tree = _Tree()
    parser = DefusedXMLParser(target=tree, forbid_dtd=True)
    try:
        parser.feed(data)
        root = parser.close()
    except (ParseError, DefusedXmlException, ValueError, LookupError) as fault:
        return UNSAFE_PICTURE.at(place, f"“{place.source}” cannot be read as an SVG picture: {fault}.", _MEND)
    dangers = [f"an instruction “{target}”" for target in tree.instructions]
    dangers.extend(danger for element in root.iter() if (danger := _danger(element)))
    return UNSAFE_PICTURE.at(place, f"“{place.source}” holds {dangers[0]}.", _MEND) if dangers else None


def _danger(element: Element) -> str | None:
    name = _local(element.tag)
    if name in _FORBIDDEN or element.tag.startswith(_HTML):
        return f"an element “{name}”"
    if name == "style" and _fetches("".join(element.itertext())):
        return "a style that fetches something"
    for key, value in element.attrib.items():
        attribute = _local(key)
        if attribute.lower().startswith("on"):
            return f"an event handler “{attribute}”"
        if attribute in _REFERENCES and not _EMBEDDED.match(value):
            return f"a reference to “{value[:60]}”"
        if _fetches(value):
            return f"“{value[:60]}”, which fetches something"
    return None


def _local(name: str) -> str:
    return name.rpartition("}")[2]


def _fetches(style: str) -> bool:
    plain = _CSS_ESCAPE.sub(_unescaped, style)
    folded = "".join(plain.split()).lower()
    if any(sign in folded for sign in _CSS_FETCHES):
        return True
    return any(not part.lstrip("'\"").startswith("#") for part in folded.split("url(")[1:])


def _unescaped(escape: re.Match[str]) -> str:
    code = int(escape[1], 16) if escape[1] else 0
    return chr(code) if 0 < code <= 0x10FFFF else escape[2] or ""
