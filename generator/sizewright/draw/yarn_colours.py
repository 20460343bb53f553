"""In: the yarns of a header. Out: a colour (#rrggbb) for every yarn that is named, its lights and shadows."""

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from types import MappingProxyType

from sizewright.read.pattern import Yarn
from sizewright.read.yarn_names import YarnNames

# Words for colours as shade cards use them; the values are our own, as wool shows them (no source).
_WORDS: Mapping[str, str] = MappingProxyType(
    {
        "white": "#f4f1ea",
        "cream": "#efe6d0",
        "ivory": "#efe8d8",
        "natural": "#e8dcc4",
        "oat": "#e2d4b4",
        "oatmeal": "#d9cbb0",
        "sand": "#d8c19a",
        "beige": "#d4bf9e",
        "camel": "#c39a62",
        "tan": "#b98f62",
        "brown": "#7b5236",
        "chocolate": "#53372a",
        "black": "#2d2c2e",
        "charcoal": "#4a4c50",
        "slate": "#5d6a74",
        "grey": "#9a9a98",
        "gray": "#9a9a98",
        "silver": "#c2c5c6",
        "navy": "#27365a",
        "indigo": "#36437a",
        "denim": "#4f6d93",
        "blue": "#3f6ca3",
        "sky": "#8fb9d6",
        "turquoise": "#3b9ea0",
        "teal": "#2b7377",
        "petrol": "#25566a",
        "mint": "#a5d0b7",
        "sage": "#9aae8c",
        "green": "#4c8452",
        "moss": "#6f7b3d",
        "olive": "#73703a",
        "forest": "#2f5a41",
        "lime": "#a6bd4c",
        "yellow": "#e6c34c",
        "gold": "#d2a33c",
        "mustard": "#c2932f",
        "ochre": "#c08a3a",
        "orange": "#d97b34",
        "apricot": "#ecb584",
        "peach": "#efbf9f",
        "coral": "#df7a64",
        "rust": "#ae5230",
        "brick": "#9c4634",
        "red": "#b23535",
        "crimson": "#9d2740",
        "burgundy": "#6d2437",
        "wine": "#6f2a3f",
        "pink": "#dfa0ae",
        "rose": "#c9788a",
        "fuchsia": "#b93b7e",
        "lilac": "#bda3cb",
        "lavender": "#a99bc9",
        "mauve": "#a87f9e",
        "heather": "#97809c",
        "plum": "#6d3f5f",
        "purple": "#6b4a8a",
        "violet": "#6d55a0",
    }
)
_DEPTHS = MappingProxyType({"dark": 0.55, "deep": 0.45, "pale": -0.4, "light": -0.35, "soft": -0.25})
# Yarns nobody says the colour of: shades of undyed wool, each to be told from the one before.
_WOOL = ("#d9ccb2", "#6f6256", "#f0e8d8", "#9d8c76", "#463d37", "#b8a68c")
_PARTS = re.compile(r"[a-z]+")


def yarn_colours(yarns: Sequence[Yarn], names: Sequence[str]) -> dict[str, str]:
    """A colour for every name: that of the yarn that answers to it, or a shade of wool."""
    known = YarnNames(yarns)
    found: dict[str, str] = {}
    wool: dict[Yarn | str, str] = {}
    for yarn in yarns:  # first, so that a yarn has one shade in every drawing of its pattern
        if not told_colour(yarn):
            wool[yarn] = _free((*map(told_colour, yarns), *wool.values()))
    for name in names:
        answering = next(iter(known.answering(name)), None)
        said = told_colour(answering) if answering is not None else _named(name)
        if not said:
            said = wool.setdefault(answering or name, _free((*found.values(), *wool.values())))
        found[name] = said
    return found


def told_colour(yarn: Yarn) -> str:
    """The colour that is told of a yarn, by its shade or in words, as #rrggbb; "" where none is."""
    return yarn.shade.text if yarn.shade is not None else _named(yarn.colour.text if yarn.colour is not None else "")


def _named(words: str) -> str:
    """The colour that words name, "" where they name none."""
    parts = _PARTS.findall(words.casefold())
    colour = next((_WORDS[part] for part in reversed(parts) if part in _WORDS), "")
    depth = next((_DEPTHS[part] for part in parts if part in _DEPTHS), 0.0)
    if not colour:
        return ""
    return shaded(colour, depth) if depth > 0 else lit(colour, -depth)


def _free(taken: Collection[str]) -> str:
    return next((wool for wool in _WOOL if wool not in taken), _WOOL[0])


def contrast(one: str, other: str) -> float:
    """How far two colours are apart in lightness: 1 for the same, 21 for black and white.

    Source: WCAG 2.1, “contrast ratio” and “relative luminance”.
    """
    darker, lighter = sorted(map(_luminance, (one, other)))
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: str) -> float:
    parts = (part / 12.92 if part <= 0.03928 else ((part + 0.055) / 1.055) ** 2.4 for part in _channels(colour))
    return sum(share * part for share, part in zip((0.2126, 0.7152, 0.0722), parts, strict=True))


def lit(colour: str, share: float) -> str:
    """A colour with a share of white in it."""
    return _hex(part + (1 - part) * share for part in _channels(colour))


def shaded(colour: str, depth: float) -> str:
    """A colour in shadow, from 0 to 1.3: darker and fuller, as wool is between its stitches."""
    return _hex(part ** (1 + depth) * (1 - depth * 0.6) for part in _channels(colour))


def _channels(colour: str) -> Iterator[float]:
    return (int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5))


def _hex(parts: Iterator[float]) -> str:
    return "#" + "".join(f"{round(part * 255):02x}" for part in parts)
