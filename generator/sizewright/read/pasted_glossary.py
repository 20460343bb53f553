"""In: the lines of a pasted pattern. Out: those that explain words, "SSK: slip, slip, knit", and order nothing."""

import re
from collections.abc import Iterator, Sequence

_HEADING = re.compile(r"\W*(?:[\w&/' -]*\babbreviations?\b[\w&/' -]{0,30}|glossary)\W*", re.IGNORECASE)
_INLINE = re.compile(r"\s*(?:abbreviations?|glossary)\s*[:\u2013\u2014-]", re.IGNORECASE)
# A word, and what it is short for; "Row", "1" and "Set-up" are labels.
_EXPLAINED = re.compile(
    r"\s*(?![^:=]*\b(?:rows?|rnds?|rounds?|r|set-?up)\b)(?=[^:=]*[a-z])[\w/&,. -]{1,12}\s*[:=]\s*[a-z].*", re.IGNORECASE
)
_CAST_ON = re.compile(r"(?!\s*CO\s*[:=])(?:.*\W)?(?:cast on|CO)\s+\d", re.IGNORECASE)
_MOST_WORDS = 5


def explained_lines(lines: Sequence[str]) -> frozenset[int]:
    """The places of the lines: those below a heading that names them, and those of their form before the cast-on."""
    begins = next((place for place, line in enumerate(lines) if _CAST_ON.match(line)), 0)
    alone = (place for place in range(begins) if _EXPLAINED.fullmatch(lines[place]))
    return frozenset((*_below_headings(lines), *alone))


def _below_headings(lines: Sequence[str]) -> Iterator[int]:
    """The paragraph below each heading, also where an empty line stands between."""
    place = 0
    while place < len(lines):
        inline = bool(_INLINE.match(lines[place]))
        heading = bool(_HEADING.fullmatch(lines[place])) and len(lines[place].split()) <= _MOST_WORDS
        if inline:
            yield place
        place += 1
        if heading and not inline:
            while place < len(lines) and not lines[place].strip():
                place += 1
        if heading or inline:
            while place < len(lines) and lines[place].strip():
                yield place
                place += 1
