"""In: every import under generator/sizewright. Out: they point down only, and each library keeps to its own stage."""

import ast
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest

# Higher numbers may import lower ones. `proof` and `draw` stand side by side and do not know each other.
LEVELS = {"base": 0, "read": 1, "grade": 2, "work": 3, "proof": 4, "draw": 4, "publish": 5, "command": 6}

LIBRARIES = {
    "babel": "base",
    "pint": "base",
    "defusedxml": "read",
    "lark": "read",
    "markdown_it": "read",
    "mdit_py_plugins": "read",
    "yaml": "read",
    "svg": "draw",
    "jinja2": "publish",
    "markupsafe": "publish",
    "pydyf": "publish",
    "weasyprint": "publish",
    "click": "command",
    "rich": "command",
    "watchfiles": "command",
}

# Modules beside the stages: what `python -m sizewright` starts belongs to the last of them; others may import none.
TOP = {"__main__.py": "command"}

# Imports that may stand inside a function, each with its reason.
LATE = {"weasyprint": "takes a third of a second and needs Pango, which pages without PDFs do not"}


@dataclass(frozen=True, slots=True)
class Import:
    """One import: where it stands (file, line, stage; "" is the package's own top) and the full name of what it brings.

    `hidden` is one that does not show when the module is loaded: in a function, or made by a call.
    """

    place: str
    stage: str
    name: str
    hidden: bool


def called(node: ast.Call) -> str | None:
    """The module a call imports: "?" where only the running program knows its name."""
    if ast.unparse(node.func) not in {"__import__", "import_module", "importlib.import_module"}:
        return None
    match node.args:
        case [ast.Constant(value=str(name)), *_]:
            return name
    return "?"


def names(node: ast.AST, package: list[str]) -> list[str]:
    """The full names a node imports, relative ones resolved against the package it stands in."""
    match node:
        case ast.Import():
            return [alias.name for alias in node.names]
        case ast.ImportFrom(module=module, level=level):
            base = [*package[: len(package) - level + 1], *filter(None, [module])] if level else [module or ""]
            return [".".join([*base, alias.name]) for alias in node.names]
        case ast.Call():
            return [name for name in [called(node)] if name]
    return []


def walked(node: ast.AST, *, inside: bool = False) -> Iterator[tuple[ast.AST, bool]]:
    """Every node below, and whether it stands inside a function."""
    for child in ast.iter_child_nodes(node):
        yield child, inside
        yield from walked(
            child, inside=inside or isinstance(child, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda)
        )


@cache
def imports(package: Path) -> tuple[Import, ...]:
    """All imports of all modules of a package named sizewright, as it was when first asked for."""
    found = []
    for file in sorted(package.rglob("*.py")):
        folders = file.relative_to(package).parts[:-1]
        stage = folders[0] if folders else TOP.get(file.name, "")
        for node, inside in walked(ast.parse(file.read_text(encoding="utf-8"))):
            place = f"{file.relative_to(package)}:{getattr(node, 'lineno', 0)}"
            for name in names(node, ["sizewright", *folders]):
                found.append(Import(place, stage, name, hidden=inside or isinstance(node, ast.Call)))  # noqa: PERF401
    return tuple(found)


def stage_fault(found: Import) -> str | None:
    """What is wrong with an import of one of the project's own modules."""
    _, _, rest = found.name.partition(".")
    target = rest.split(".")[0]
    if target not in LEVELS:
        return None  # the package's own top, such as its version
    if found.stage not in LEVELS:
        return "the package's own top imports a stage"
    if target == found.stage or LEVELS[target] < LEVELS[found.stage]:
        return None
    return "proof and draw do not know each other" if LEVELS[target] == LEVELS[found.stage] else "an import points up"


def library_fault(found: Import) -> str | None:
    """What is wrong with an import of somebody else's module."""
    library = found.name.split(".")[0]
    if library in sys.stdlib_module_names or LIBRARIES.get(library) == found.stage:
        return None
    return f"belongs to {LIBRARIES[library]}" if library in LIBRARIES else "a library that no stage owns"


def hiding_fault(found: Import) -> str | None:
    """What is wrong with when an import happens."""
    return "hidden in a function or a call" if found.hidden and found.name.split(".")[0] not in LATE else None


def faults(package: Path) -> list[str]:
    """Everything wrong with the imports of a package, as "file:line: name: what"."""
    seen = imports(package)
    if not seen:
        return ["no imports seen: the check looked at nothing"]
    wrong = []
    for found in seen:
        own = found.name.split(".")[0] == "sizewright"
        whats = (stage_fault(found) if own else library_fault(found), hiding_fault(found))
        wrong += [f"{found.place}: {found.name}: {what}" for what in whats if what]
    folders = {file.relative_to(package).parts[0] for file in package.rglob("*.py") if file.parent != package}
    return wrong + [f"{folder}: no such stage" for folder in sorted(folders - set(LEVELS))]


def test_imports_point_down_and_libraries_keep_to_their_stage(repository: Path) -> None:
    assert faults(repository / "generator" / "sizewright") == []


def test_every_stage_is_looked_at(repository: Path) -> None:
    package = repository / "generator" / "sizewright"
    assert {folder for folder in LEVELS if (package / folder / "__init__.py").is_file()} == set(LEVELS)
    assert len({found.stage for found in imports(package)}) > 1


PLANTED = {
    "upward": (
        "read/a.py",
        "from sizewright.grade.graded import Graded",
        "read/a.py:1: sizewright.grade.graded.Graded: an import points up",
    ),
    "upward, plain": ("base/a.py", "import sizewright.command", "base/a.py:1: sizewright.command: an import points up"),
    "upward, stage by name": (
        "read/a.py",
        "from sizewright import work",
        "read/a.py:1: sizewright.work: an import points up",
    ),
    "upward, relative": (
        "read/a.py",
        "from ..publish import site",
        "read/a.py:1: sizewright.publish.site: an import points up",
    ),
    "upward, deep": (
        "read/b/c.py",
        "from ...draw.x import y",
        "read/b/c.py:1: sizewright.draw.x.y: an import points up",
    ),
    "only for types": (
        "work/a.py",
        "from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    from sizewright.proof import run",
        "work/a.py:3: sizewright.proof.run: an import points up",
    ),
    "the top": (
        "__init__.py",
        "from sizewright.base import units",
        "__init__.py:1: sizewright.base.units: the package's own top imports a stage",
    ),
    "neighbours": (
        "proof/a.py",
        "import sizewright.draw.chart",
        "proof/a.py:1: sizewright.draw.chart: proof and draw do not know each other",
    ),
    "neighbours, other way": (
        "draw/a.py",
        "from ..proof import run",
        "draw/a.py:1: sizewright.proof.run: proof and draw do not know each other",
    ),
    "foreign library": ("grade/a.py", "from pint import Quantity", "grade/a.py:1: pint.Quantity: belongs to base"),
    "foreign library, dotted": (
        "command/a.py",
        "import yaml.nodes as n",
        "command/a.py:1: yaml.nodes: belongs to read",
    ),
    "unknown library": ("base/a.py", "import numpy", "base/a.py:1: numpy: a library that no stage owns"),
    "hidden": ("grade/a.py", "def f():\n    import json", "grade/a.py:2: json: hidden in a function or a call"),
    "hidden in a method": (
        "grade/a.py",
        "class A:\n  async def f(self):\n    from os import path",
        "grade/a.py:3: os.path: hidden in a function or a call",
    ),
    "hidden in a call": (
        "base/a.py",
        "import importlib\nx = importlib.import_module('sizewright.command')",
        "base/a.py:2: sizewright.command: hidden in a function or a call",
    ),
    "hidden in words": ("base/a.py", "m = __import__('j' + 'son')", "base/a.py:1: ?: hidden in a function or a call"),
    "late elsewhere": ("draw/a.py", "def f():\n    import weasyprint", "draw/a.py:2: weasyprint: belongs to publish"),
    "no such stage": ("utils/a.py", "import json", "utils: no such stage"),
    "nothing": ("base/a.py", "x = 1", "no imports seen: the check looked at nothing"),
}


@pytest.mark.parametrize(("place", "source", "expected"), PLANTED.values(), ids=PLANTED)
def test_a_planted_fault_is_found(tmp_path: Path, place: str, source: str, expected: str) -> None:
    file = tmp_path / "sizewright" / place
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(source, encoding="utf-8")
    assert expected in faults(tmp_path / "sizewright")


@pytest.mark.parametrize(
    ("place", "source"),
    [
        ("publish/a.py", "from sizewright.proof import run\nfrom sizewright.draw import chart\nimport jinja2"),
        ("publish/a.py", "def f():\n    from weasyprint.urls import URLFetcher"),
        ("draw/a.py", "from sizewright import __version__\nfrom . import chart\nimport svg, json"),
        ("base/a.py", "from __future__ import annotations\nimport pint"),
    ],
)
def test_a_sound_import_is_let_through(tmp_path: Path, place: str, source: str) -> None:
    file = tmp_path / "sizewright" / place
    file.parent.mkdir(parents=True)
    file.write_text(source, encoding="utf-8")
    assert faults(tmp_path / "sizewright") == []
