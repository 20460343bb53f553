"""In: the lines of a pasted pattern. Out: what they say for certain of sizes and gauge, as the header of a source."""

import json
import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

# "Sizes: S (M, L)": a name, then the others in brackets. "To fit bust: 34 (38) in" is no list of names.
_SIZES = re.compile(
    r"\s*sizes?\s*:\s*(?P<first>[^(),:;\[\]]{1,40}?)\s*[(\[](?P<rest>[^()\[\]:;]*)[)\]]\s*\.?\s*", re.IGNORECASE
)
_SIZES_ALONE = re.compile(r"\W*sizes?\W*", re.IGNORECASE)  # a heading; the names are the line below
_NUMBER = r"\d+(?:\.\d+)?"
_GAUGE = re.compile(
    rf"\b(?P<stitches>{_NUMBER}) ?(?:sts?|stitches)\s*(?:and|x|by|,|/|&)"
    rf"\s*(?P<rows>{_NUMBER}) ?(?P<word>rows?|rnds?|rounds?)"
    rf"\s*(?:=|over|to|in|per|make|measure)\s*(?P<length>4|10|1)(?: ?(?P<unit>cm|in|inch(?:es)?|\"|″))",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Told:
    """What a pasted text says of itself; what it does not say for certain is empty.

    `titled` is whether the title is its own. `gauge` are its stitches and its rows, as a header has them.
    """

    title: str = ""
    titled: bool = False
    sizes: tuple[str, ...] = ()
    gauge: tuple[str, str] | None = None


def told_in(lines: Sequence[str]) -> Told:
    """The sizes where one line lists them and no other differs, and the gauge where one is told."""
    below = (f"Sizes: {line}" for above, line in pairwise(lines) if _SIZES_ALONE.fullmatch(above))
    sizes = {names for line in (*lines, *below) if (names := _sizes(line))}
    gauges = {found for line in lines if (found := _gauge(line))}
    return Told(sizes=sizes.pop() if len(sizes) == 1 else (), gauge=gauges.pop() if len(gauges) == 1 else None)


def _sizes(line: str) -> tuple[str, ...]:
    found = _SIZES.fullmatch(line)
    if found is None:
        return ()
    names = (found["first"].strip(), *(name.strip() for name in found["rest"].split(",")))
    return names if all(names) and len(set(names)) == len(names) > 1 else ()


def _gauge(line: str) -> tuple[str, str] | None:
    found = _GAUGE.search(line)
    if found is None:
        return None
    unit = "cm" if found["unit"].lower() == "cm" else "in"
    word = "row" if found["word"].lower().startswith("row") else "rnd"
    return f"{found['stitches']} st / {found['length']} {unit}", f"{found['rows']} {word} / {found['length']} {unit}"


def header_of(told: Told) -> str:
    """The header, with a comment for each thing that only the designer knows."""
    title = f"title: {_quoted(told.title)}"
    lines = ["---", title if told.titled else f"{title}   # the text has none of its own"]
    lines += ["# summary: one sentence", "# designer: your name", "# licence: what others may do with it"]
    if told.sizes:
        lines.append(f"sizes: [{', '.join(map(_quoted, told.sizes))}]")
    else:
        lines.append("# sizes: [S, M, L]   # smallest first, as many as the bracket lists have numbers")
    if told.gauge:
        lines += ["gauge:", f"  stitches: {told.gauge[0]}", f"  rows: {told.gauge[1]}", "  # needle: 4 mm"]
    else:
        lines.append("# gauge: {stitches: 22 st / 10 cm, rows: 30 row / 10 cm, needle: 4 mm}")
    lines += ["# needles: [4 mm circular needle]", "# yarn: {main: {weight: light, length: 105 m, mass: 50 g}}"]
    return "\n".join([*lines, "---", ""])


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)
