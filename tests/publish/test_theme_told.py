"""In: the templates, the views and theme.md. Out: what a designer may use is told, and nothing else."""

import re
from dataclasses import fields, is_dataclass
from pathlib import Path
from typing import get_args, get_type_hints

import pytest

from sizewright.publish.view import Filter, PatternView, TechniqueView, TextView
from sizewright.publish.view_card import CardView, FindView
from sizewright.publish.view_method import MethodView
from sizewright.publish.view_rules import RuleView
from sizewright.publish.view_site import Page, Site

GIVEN = (Site, Page, PatternView, TechniqueView, TextView, CardView, FindView, Filter, MethodView, RuleView)


@pytest.fixture(scope="module")
def studio(repository: Path) -> Path:
    return repository / "themes/studio"


@pytest.fixture(scope="module")
def told(studio: Path) -> str:
    return (studio / "theme.md").read_text(encoding="utf-8")


def entries(told: str, heading: str) -> dict[str, set[str]]:
    """The names in each entry of a section, by the name the entry begins with; what stands "as" a name is left out."""
    section = told.split(f"## {heading}\n")[1].split("\n## ", maxsplit=1)[0]
    found = re.findall(
        r"^- `([\w.]+)`(?:, [^:\n]+)?: (.*?)(?=\n(?:\S|\n|  On paper)|\Z)", section, re.MULTILINE | re.DOTALL
    )
    return {name: set(re.findall(r"`(\w+)`", words)) for name, words in found}


def views(kind: object, found: dict[str, type]) -> dict[str, type]:
    """A view and all that can be reached from it."""
    if isinstance(kind, type) and is_dataclass(kind) and kind.__name__ not in found:
        found[kind.__name__] = kind
        for hint in get_type_hints(kind).values():
            views(hint, found)
    for inner in get_args(kind):
        views(inner, found)
    return found


def test_every_field_is_told(told: str) -> None:
    known: dict[str, type] = {}
    for kind in GIVEN:
        views(kind, known)
    assert len(known) > 30
    expected = {
        name: {field.name for field in fields(kind)}
        | {own for own, value in vars(kind).items() if isinstance(value, property)}
        for name, kind in known.items()
    }
    assert entries(told, "Fields") == expected, "theme.md, “Fields”, tells other names than the views have"


def test_every_block_is_told(studio: Path, told: str) -> None:
    blocks = {
        path.name: set(re.findall(r"{%-? block (\w+)", path.read_text(encoding="utf-8")))
        for path in studio.glob("*.html")
    }
    shared = blocks.pop("base.html")
    assert {"look", "main"} < shared
    section = told.split("## Blocks\n")[1].split("\n## ", maxsplit=1)[0]
    assert shared <= set(re.findall(r"`(\w+)`", section.split("\n- ")[0]))
    own = {name: found if name == "paper.html" else found - shared for name, found in blocks.items()}
    assert entries(told, "Blocks") == {name: found for name, found in own.items() if found}


def test_every_file_is_told(studio: Path, told: str) -> None:
    files = [path.relative_to(studio).as_posix() for path in studio.rglob("*.html")]
    files += [path.name for kind in ("css", "js") for path in (studio / "assets").glob(f"*.{kind}")]
    assert len(files) > 25
    named = set(re.findall(r"`([\w/]+\.\w+)`", told))
    assert sorted(set(files) - named) == [], "theme.md does not say what they are"
    assert {name for name in named if name.endswith(".css")} - {path.name for path in studio.rglob("*.css")} == {
        "assets/plain.css",
        "assets/type.css",
    }
