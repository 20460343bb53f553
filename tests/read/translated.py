"""In: sources. Out: them with translations, as tests want them: in their own words, in German, refreshed."""

from dataclasses import replace
from functools import cache
from pathlib import Path

from sizewright.base.place import Lines
from sizewright.read.folder import read_project, read_text
from sizewright.read.pattern import Pattern
from sizewright.read.translating.beside import read_translation
from sizewright.read.translating.pairs import commented, read_pairs
from sizewright.read.translating.refreshed import refreshed
from sizewright.read.translating.texts import texts_of

SOURCE = """---
title: Cowl
sizes: {S: {}, M: {}, Largest of all: {note: for a tall reader}}
gauge: {stitches: 20 st / 10 cm, rows: 28 rnd / 10 cm, needle: 5 mm, over: stockinette}
needles: 3.5 mm circular needle
yarn: {A: {weight: medium, colour: moss, note: a wool}, B: {weight: medium, fibre: wool, called: oatmeal}}
finished: [{label: Depth, value: edge}]
---
```grade
edge = 4 (5, 6) cm
```

## The edge

The edge is {edge} deep; [block](../techniques/blocking.md) it to {edge:long}.

::: learners Why so deep
- It curls.
- ![The edge rolled up](edge.svg)
:::

```work
Cast on 80 (88, 96) sts. Join to work in the round.
Knit to the mark you made at {edge}, over 80 (88, 96) sts.   # declared: 80 (88, 96) sts
Rnd 1: Knit.
```
"""

GERMAN = """<!-- Cowl -->
Schlauchschal

<!-- Largest of all -->
Größte

<!-- for a tall reader -->
für Große

<!-- 3.5 mm circular needle -->
Rundstricknadel 3,5 mm

<!-- moss -->
Moos

<!-- Depth -->
Höhe

<!-- ## The edge -->
## Die Kante

<!-- The edge is {edge} deep; [block](../techniques/blocking.md) it to {edge:long}. -->
Auf {edge:long} [spannen](../techniques/blocking.md); die Kante ist {edge} hoch.

<!-- Why so deep -->
Warum so hoch

<!-- - It curls.
- ![The edge rolled up](edge.svg) -->
- Sie rollt sich.
- ![Die aufgerollte Kante](edge.svg)

<!-- Knit to the mark you made at {edge}, over 80 (88, 96) sts. -->
Über 80 (88, 96) M re bis zur Marke bei {edge}.
"""


def told(pattern: Pattern, text: str) -> Pattern:
    """A source with a translation."""
    translation, findings = read_translation(Lines("x.de.md", text), "en", "de")
    assert findings == ()
    return replace(pattern, translations=(translation,))


def as_it_is(pattern: Pattern) -> str:
    """A file of translations with the words of the source for their own translation."""
    return "\n".join(f"{commented(text.words)}\n{text.words}\n" for text in texts_of(pattern))


@cache
def german_cowl() -> Pattern:
    """The cowl with its German."""
    return told(read_text(SOURCE, "cowl.md").patterns[0], GERMAN)


@cache
def demo(repository: Path) -> tuple[Pattern, ...]:
    """Every pattern and page of the demo and some techniques, as they stand in English."""
    project = read_project(repository)
    return (*project.patterns, *project.techniques[:3], *project.pages)


def again(pattern: Pattern, text: str) -> str:
    """The file of translations as it is refreshed."""
    texts = texts_of(pattern)
    return refreshed(texts, {one.key for one in texts}, read_pairs(Lines("x.de.md", text))).text
