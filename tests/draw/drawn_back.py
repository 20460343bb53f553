"""In: the SVG of a piece of a schematic. Out: what can be measured on it, read back from its coordinates alone."""

import re
from dataclasses import dataclass
from xml.etree import ElementTree as ET

SVG = "{http://www.w3.org/2000/svg}"
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?:e-?\d+)?")


@dataclass(frozen=True)
class Measure:
    """A line of measurement as it is drawn, in px, with the words of its label."""

    letter: str
    words: str
    length: float


@dataclass(frozen=True)
class Shown:
    """What is shown together: for all sizes ("zp"), or for one."""

    classes: tuple[str, ...]
    measures: tuple[Measure, ...]


def _numbers(text: str) -> list[float]:
    return [float(one) for one in _NUMBER.findall(text)]


def root_of(svg: str) -> ET.Element:
    # What is parsed is what the program has just written.
    return ET.fromstring(svg)  # noqa: S314


def groups(root: ET.Element) -> list[ET.Element]:
    return [group for group in root.iter(f"{SVG}g") if "z" not in group.get("class", "").split()]


def shown(root: ET.Element) -> list[Shown]:
    """The measurements of every group that can be shown; a line is followed by the two ticks at its ends."""
    found = []
    for group in groups(root):
        paths = [path for path in group if path.get("class") == "dimension"]
        points = _numbers(paths[0].get("d", "")) if paths else []
        lines = [points[at : at + 4] for at in range(0, len(points), 12)]
        texts = ["".join(text.itertext()).replace("\u00a0", " ") for text in group if text.tag == f"{SVG}text"]
        assert len(lines) == len(texts)
        measures = tuple(
            Measure(words.split(" ")[0], words.partition(" ")[2], abs(x2 - x1) + abs(y2 - y1))
            for (x1, y1, x2, y2), words in zip(lines, texts, strict=True)
        )
        found.append(Shown(tuple(group.get("class", "").split()), measures))
    return found


def outlines(root: ET.Element) -> dict[str, tuple[float, float, float, float]]:
    """The box around the points of each size's outline: left, upper, right, lower."""
    boxes = {}
    for group in root.iter(f"{SVG}g"):
        classes = group.get("class", "").split()
        if "z" in classes:
            points = _numbers(next(path for path in group if path.get("class") == "outline").get("d", ""))
            xs, ys = points[::2], points[1::2]
            boxes[classes[1]] = (min(xs), min(ys), max(xs), max(ys))
    return boxes
