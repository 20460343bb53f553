"""In: a written site and what it was made from. Out: it is up to date only where a new one would be the same."""

import json
import os
import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

import sizewright
from sizewright.publish.manifest import (
    MANIFEST,
    Manifest,
    Options,
    Stored,
    as_json,
    inputs_digest,
    read_manifest,
    up_to_date,
)
from sizewright.publish.output import Output
from sizewright.publish.write import new_site

OPTIONS = Options()


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A project folder with a written site that is up to date."""
    for name, text in (("patterns/hat.md", "# Hat"), ("media/hat.svg", "<svg/>"), ("site.yaml", "name: Larkfold")):
        path = tmp_path / "content" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    write(tmp_path, Manifest({}, inputs=inputs_digest(tmp_path, OPTIONS), patterns=3, warnings=2))
    assert up_to_date(tmp_path, tmp_path / "site", OPTIONS) == Stored(patterns=3, warnings=2)
    return tmp_path


def write(folder: Path, manifest: Manifest) -> None:
    with new_site(folder / "site") as draft:
        draft.put(Output("index.html", b"start"))
        draft.put(Output("patterns/hat.html", b"hat"))
        draft.finish(replace(manifest, outputs=draft.digests))


def fresh(folder: Path) -> bool:
    return up_to_date(folder, folder / "site", OPTIONS) is not None


def test_what_is_written_is_read_again(folder: Path) -> None:
    told = Manifest({"a": "1"}, {"a.pdf": "2"}, {"hat": [["2026-10-12", "Round 4"]]}, "3", 4, 5)
    (folder / "site" / MANIFEST).write_bytes(as_json(told))
    assert read_manifest(folder / "site") == told
    assert as_json(told) == as_json(told)


def test_a_file_that_was_only_touched_has_not_changed(folder: Path) -> None:
    os.utime(folder / "content/patterns/hat.md", ns=(1, 1))
    os.utime(folder / "site/index.html", ns=(1, 1))
    assert fresh(folder)


def change(path: str, text: str) -> Callable[[Path], object]:
    return lambda folder: (folder / path).write_text(text)


CHANGES: dict[str, Callable[[Path], object]] = {
    "a pattern": change("content/patterns/hat.md", "# Cap"),
    "a picture": change("content/media/hat.svg", "<svg />"),
    "the studio": change("content/site.yaml", "name: Lark"),
    "a new file": change("content/patterns/mitten.md", "# Mitten"),
    "a new empty file": change("content/patterns/mitten.md", ""),
    "a file gone": lambda folder: (folder / "content/media/hat.svg").unlink(),
    "a file renamed": lambda folder: (folder / "content/site.yaml").rename(folder / "content/sites.yaml"),
    "a page of the site": change("site/index.html", "strat"),
    "a page gone": lambda folder: (folder / "site/index.html").unlink(),
    "no manifest": lambda folder: (folder / "site" / MANIFEST).unlink(),
    "no site": lambda folder: shutil.rmtree(folder / "site"),
}


@pytest.mark.parametrize("what", CHANGES)
def test_a_change(folder: Path, what: str) -> None:
    CHANGES[what](folder)
    assert not fresh(folder)


def test_a_page_changed_behind_the_clock(folder: Path) -> None:
    """The same size and the same time, as a tool that sets times back leaves it."""
    page = folder / "site/index.html"
    before = page.stat()
    page.write_text("strat")
    os.utime(page, ns=(before.st_atime_ns, before.st_mtime_ns))
    assert not fresh(folder)


def test_a_theme_of_the_project(folder: Path) -> None:
    theme = folder / "themes/own/page.html"
    theme.parent.mkdir(parents=True)
    theme.write_text("one")
    write(folder, Manifest({}, inputs=inputs_digest(folder, OPTIONS)))
    assert fresh(folder)
    theme.write_text("two")
    assert not fresh(folder)


def test_other_options(folder: Path) -> None:
    assert up_to_date(folder, folder / "site", Options(papers=False)) is None


def test_another_version_of_the_program(folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One letter of its source, or of a shipped theme beside it."""
    package = tmp_path / "program/generator/sizewright"
    theme = tmp_path / "program/themes/studio/page.html"
    for path in (package / "__init__.py", theme):
        path.parent.mkdir(parents=True)
        path.write_text("one")
    monkeypatch.setattr(sizewright, "__file__", str(package / "__init__.py"))
    digests = {inputs_digest(folder, OPTIONS)}
    (package / "__init__.py").write_text("two")
    digests.add(inputs_digest(folder, OPTIONS))
    theme.write_text("two")
    digests.add(inputs_digest(folder, OPTIONS))
    assert len(digests) == 3


def test_another_version_of_a_library(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("importlib.metadata.version", lambda _name: "0.0")
    assert not fresh(folder)


def test_a_site_that_says_it_must_not_be_taken_for_up_to_date(folder: Path) -> None:
    write(folder, Manifest({}, inputs=None))
    assert not fresh(folder)


def test_a_link_counts_by_what_is_behind_it_in_the_project(folder: Path) -> None:
    drawings = folder / "drawings"
    drawings.mkdir()
    (drawings / "hat.svg").write_text("one")
    (folder / "content/media/drawings").symlink_to(drawings)
    (folder / "content/media/single.svg").symlink_to(drawings / "hat.svg")
    before = inputs_digest(folder, OPTIONS)
    (drawings / "hat.svg").write_text("two")
    assert inputs_digest(folder, OPTIONS) != before


def test_a_link_out_of_the_project_is_not_followed(folder: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    outside = tmp_path_factory.mktemp("outside")
    (outside / "secret.txt").write_text("one")
    (folder / "content/media/outside").symlink_to(outside)
    (folder / "content/media/gone.svg").symlink_to(outside / "gone.svg")
    (folder / "content/media/round").symlink_to(folder / "content")
    before = inputs_digest(folder, OPTIONS)
    (outside / "secret.txt").write_text("two")
    assert inputs_digest(folder, OPTIONS) == before


json_values = some.recursive(
    some.none() | some.booleans() | some.integers() | some.text(),
    lambda inner: some.lists(inner) | some.dictionaries(some.text(), inner),
    max_leaves=10,
)
keys = some.sampled_from(["made_by", "outputs", "papers", "corrections", "inputs", "patterns", "warnings"])


@settings(deadline=None)  # the time a disk takes says nothing
@given(some.binary() | json_values.map(lambda value: json.dumps(value).encode()))
def test_any_file_in_the_place_of_the_manifest(content: bytes) -> None:
    refused_or_whole(content)


@settings(deadline=None)
@given(some.dictionaries(keys, json_values))
def test_any_manifest(told: dict[str, object]) -> None:
    whole = json.loads(as_json(Manifest({}, {}, {"hat": [["2026-01-01", "x"]]})))
    refused_or_whole(json.dumps({**whole, **told}).encode())


def refused_or_whole(content: bytes) -> None:
    """Read as None, or as a manifest whose parts are what they should be."""
    with TemporaryDirectory() as name:
        (Path(name) / MANIFEST).write_bytes(content)
        manifest = read_manifest(Path(name))
    if manifest is not None:
        as_json(manifest)
        assert all(isinstance(text, str) for text in (*manifest.outputs.values(), *manifest.papers.values()))
        assert all(len(entry) == 2 for entries in manifest.corrections.values() for entry in entries)
