"""In: a published site. Out: what a page weighs on its way to a reader, compressed, without its pictures.

Run as `python tests/bench/page_weight.py site` it prints one line a pattern's page. Sizes are those of gzip, level 9; a
server that speaks Brotli sends less. Fonts are compressed already; those are sent that a sign of the page needs.
"""

import gzip
import re
import sys
from dataclasses import dataclass
from pathlib import Path

_LINKED = re.compile(r'<(?:link rel="stylesheet" href|script src)="([^"]+)"')
_FACE = re.compile(r'@font-face\s*{[^}]*url\("([^"]+)"\)[^}]*unicode-range:([^;]+);')


@dataclass(frozen=True, slots=True)
class Weight:
    """Bytes as sent: the page itself, its style sheets, scripts and fonts."""

    page: int
    styles: int
    scripts: int
    fonts: int

    @property
    def whole(self) -> int:
        """All of it together."""
        return self.page + self.styles + self.scripts + self.fonts


def weight(page: Path) -> Weight:
    """What is sent for a page to a reader who comes for the first time."""
    text = page.read_text(encoding="utf-8")
    files = [(page.parent / name).resolve() for name in _LINKED.findall(text)]
    styles = [file for file in files if file.suffix == ".css"]
    scripts = [file for file in files if file.suffix == ".js"]
    fonts = sum(_fonts(sheet, set(map(ord, text))) for sheet in styles)
    return Weight(_compressed(page), sum(map(_compressed, styles)), sum(map(_compressed, scripts)), fonts)


def _compressed(file: Path) -> int:
    return len(gzip.compress(file.read_bytes(), 9))


def _fonts(sheet: Path, signs: set[int]) -> int:
    """The fonts of a style sheet that have any of the signs."""
    faces = _FACE.findall(sheet.read_text(encoding="utf-8"))
    needed = [name for name, ranges in faces if any(_has(one, signs) for one in ranges.split(","))]
    return sum((sheet.parent / name).stat().st_size for name in needed)


def _has(span: str, signs: set[int]) -> bool:
    first, _, last = span.strip().removeprefix("U+").partition("-")
    return not signs.isdisjoint(range(int(first, 16), int(last or first, 16) + 1))


def main() -> None:
    """Prints the weight of every pattern's page, in kB (1000 bytes)."""
    print("page styles scripts fonts  whole (kB)")  # noqa: T201 (what it is for)
    for page in sorted((Path(sys.argv[1]) / "patterns").glob("*.html")):
        found = weight(page)
        parts = (found.page, found.styles, found.scripts, found.fonts, found.whole)
        print(" ".join(f"{part / 1000:6.1f}" for part in parts), page.stem)  # noqa: T201 (what it is for)


if __name__ == "__main__":
    main()
