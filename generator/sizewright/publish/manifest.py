"""In: a written site and the files it was made from. Out: whether it would come out the same again.

Only contents are compared, never times: a file that was touched is not a file that changed, and one that was changed
within the same second is not missed.
"""

import hashlib
import json
import os
import sys
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from importlib import metadata
from pathlib import Path
from typing import TypeGuard

import sizewright

MANIFEST = ".sizewright.json"
_MADE_BY = "sizewright"

# The libraries whose version can change what is written.
_LIBRARIES = ("jinja2", "lark", "markdown-it-py", "mdit-py-plugins", "pint", "pyyaml", "svg.py", "weasyprint")


@dataclass(frozen=True, slots=True)
class Options:
    """What a person may choose that changes the site."""

    papers: bool = True


@dataclass(frozen=True, slots=True)
class Stored:
    """What the last publish found, for a run that has nothing to do."""

    patterns: int
    warnings: int


@dataclass(frozen=True, slots=True)
class Manifest:
    """What was written: the digest of every file, what it was made from, and key and pages of every PDF by its path.

    `corrections` are those the feed tells of each pattern, as days and texts, for a run that refuses the pattern.
    `inputs` is None where the site must not be taken for up to date: something was refused, or was not looked at.
    """

    outputs: Mapping[str, str]
    papers: Mapping[str, str] = field(default_factory=dict)
    corrections: Mapping[str, Sequence[Sequence[str]]] = field(default_factory=dict)
    inputs: str | None = None
    patterns: int = 0
    warnings: int = 0
    pages: Mapping[str, int] = field(default_factory=dict)


def digest(content: bytes) -> str:
    """The digest that files are compared by."""
    return hashlib.sha256(content).hexdigest()


def as_json(manifest: Manifest) -> bytes:
    """The manifest as it is written."""
    told = {
        "made_by": _MADE_BY,
        "outputs": dict(manifest.outputs),
        "papers": dict(manifest.papers),
        "pages": dict(manifest.pages),
        "corrections": dict(manifest.corrections),
        "inputs": manifest.inputs,
        "patterns": manifest.patterns,
        "warnings": manifest.warnings,
    }
    return (json.dumps(told, indent=1, sort_keys=True, ensure_ascii=False) + "\n").encode()


def read_manifest(site: Path) -> Manifest | None:
    """The manifest of a site, or None where there is none that we wrote."""
    try:
        told: object = json.loads((site / MANIFEST).read_bytes())
    except (OSError, ValueError, RecursionError):
        return None
    if not isinstance(told, dict) or told.get("made_by") != _MADE_BY:
        return None
    outputs, papers, corrections = told.get("outputs"), told.get("papers"), told.get("corrections")
    pages = told.get("pages", {})  # an older site does not tell them
    if not (_is_texts(outputs) and _is_texts(papers) and _is_numbers(pages) and _is_corrections(corrections)):
        return None
    inputs, patterns, warnings = told.get("inputs"), told.get("patterns"), told.get("warnings")
    if not (isinstance(patterns, int) and isinstance(warnings, int)):
        return None
    known = inputs if isinstance(inputs, str) else None
    return Manifest(outputs, papers, corrections, known, patterns, warnings, pages)


def _is_texts(told: object) -> TypeGuard[dict[str, str]]:
    return isinstance(told, dict) and all(isinstance(value, str) for value in told.values())


def _is_numbers(told: object) -> TypeGuard[dict[str, int]]:
    return isinstance(told, dict) and all(isinstance(value, int) for value in told.values())


def _is_corrections(told: object) -> TypeGuard[dict[str, list[list[str]]]]:
    return isinstance(told, dict) and all(
        isinstance(entry, list) and len(entry) == 2 and all(isinstance(text, str) for text in entry)
        for entries in told.values()
        for entry in (entries if isinstance(entries, list) else (None,))
    )


def up_to_date(folder: Path, site: Path, options: Options, inputs: str | None = None) -> Stored | None:
    """What the last publish found, where a new one would write the same files again; None in any doubt.

    `inputs` is `inputs_digest(folder, options)` where the caller has it already.
    """
    manifest = read_manifest(site)
    if manifest is None or manifest.inputs is None:
        return None
    try:
        if manifest.inputs != (inputs or inputs_digest(folder, options)):
            return None
        for path, recorded in manifest.outputs.items():
            if digest((site / path).read_bytes()) != recorded:
                return None
    except OSError:
        return None
    return Stored(manifest.patterns, manifest.warnings)


def inputs_digest(folder: Path, options: Options) -> str:
    """The digest of everything a site is made from: content, themes, this package, the libraries and the options.

    Take it before anything is read: what is edited while a site is being made is then seen by the next run.
    Raises OSError where a file cannot be read.
    """
    package = Path(sizewright.__file__).parent
    total = hashlib.sha256()
    # In the work tree the themes are beside the package's parent, in a wheel inside the package.
    for name, place in (
        ("content", folder / "content"),
        ("own themes", folder / "themes"),
        ("package", package),
        ("themes", package.parents[1] / "themes"),
    ):
        for path, content in _tree(place, folder.resolve()):
            total.update(f"{name}\0{path}\0{digest(content)}\n".encode())
    total.update(f"{sys.version}\0{_library_versions()}\0{options}".encode())
    return total.hexdigest()


def _library_versions() -> str:
    return " ".join(f"{name}={metadata.version(name)}" for name in _LIBRARIES)


def _tree(place: Path, within: Path, above: tuple[Path, ...] = ()) -> Iterator[tuple[str, bytes]]:
    """Every file below a folder, in a fixed order, by its path from there.

    A link counts by where it leads, and by what is behind it only inside the project: nothing outside is ever read.
    """
    if not place.is_dir():
        return
    for entry in sorted(place.iterdir()):
        if entry.is_symlink():
            yield entry.name, os.fsencode(entry.readlink())
            if not entry.resolve().is_relative_to(within):
                continue
        if entry.is_file():
            yield entry.name, entry.read_bytes()
        elif entry.is_dir() and entry.name != "__pycache__" and (real := entry.resolve()) not in above:
            for path, content in _tree(entry, within, (*above, real)):
                yield f"{entry.name}/{path}", content
