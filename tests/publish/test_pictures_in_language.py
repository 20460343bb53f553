"""A picture with words in it has one of its own in another language, and both are published."""

from pathlib import Path

import pytest

from sizewright.publish.in_language import told_in
from sizewright.publish.run import pictures_of
from sizewright.read.folder import read_project
from sizewright.read.pattern import Image, Pattern
from sizewright.read.project import Project

_SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="8" height="5"/>'
_TECHNIQUE = """---
title: Decreases
summary: Two that lean.
terms: [dec]
picture: {file: lean.svg, alt: Two that lean}
---

![A row](rows/row.svg)

![A plain swatch](plain.svg)
"""
_GERMAN = """<!-- Decreases -->
Abnahmen

<!-- Two that lean. -->
Zwei geneigte.
"""


@pytest.fixture
def project(tmp_path: Path) -> Project:
    content = tmp_path / "content"
    (content / "media" / "rows").mkdir(parents=True)
    (content / "techniques").mkdir()
    (content / "site.yaml").write_text("name: S\nauthor: A\nlanguages: [en, de]\n")
    (content / "techniques" / "decreases.md").write_text(_TECHNIQUE)
    (content / "techniques" / "decreases.de.md").write_text(_GERMAN)
    for name in ("lean.svg", "lean.de.svg", "lean.fr.svg", "rows/row.svg", "rows/row.de.svg", "plain.svg"):
        (content / "media" / name).write_text(_SVG)
    return read_project(tmp_path)


def shown(pattern: Pattern) -> list[str]:
    own = [pattern.header.picture.file] if pattern.header.picture else []
    return own + [piece.file for piece in pattern.body if isinstance(piece, Image)]


def test_a_page_shows_the_pictures_of_its_language(project: Project) -> None:
    assert shown(project.techniques[0]) == ["lean.svg", "rows/row.svg", "plain.svg"]
    (german,) = told_in("de", project, ())[0].techniques
    assert shown(german) == ["lean.de.svg", "rows/row.de.svg", "plain.svg"]


def test_the_pictures_of_every_language_of_the_site_are_published(project: Project) -> None:
    published = ["lean.de.svg", "lean.svg", "plain.svg", "rows/row.de.svg", "rows/row.svg"]
    assert list(pictures_of(project, ())) == published
