"""In: the present site and the patterns that are refused. Out: their last good files, for the new site to keep."""

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from html import unescape
from pathlib import Path
from urllib.parse import unquote

from sizewright.publish.card import Card
from sizewright.publish.editions import paper_folder, paper_path
from sizewright.publish.feed import Correction, Listed
from sizewright.publish.manifest import Manifest, digest
from sizewright.publish.output import Output

# What a pattern's page loads from beside it: pictures, styles and scripts.
_LOADED = re.compile(r"""\.\./((?:media|drawn|theme)/[^"'\s?#,<>]+)""")


@dataclass(frozen=True, slots=True)
class Kept:
    """A refused pattern as it was last published: what the start page and the feed tell of it, and its files.

    `loaded` are the pictures and styles of its page, for where the new site has no such file; `papers` and `pages` have
    the keys and the pages of its PDFs.
    """

    listed: Listed
    files: tuple[Output, ...]
    loaded: tuple[Output, ...]
    papers: Mapping[str, str]
    pages: Mapping[str, int]


def keep(site: Path, manifest: Manifest | None, names: Sequence[str], below: str = "") -> tuple[Kept, ...]:
    """The patterns of these names as they stand in the site; one that was never published is left out.

    `below` is where the pages of their language are.
    """
    if manifest is None:
        return ()
    found = (_kept(site, manifest, name, below) for name in names)
    return tuple(kept for kept in found if kept is not None)


def _kept(site: Path, manifest: Manifest, name: str, below: str) -> Kept | None:
    page, data = (_file(site, manifest, f"{below}patterns/{name}.{kind}") for kind in ("html", "json"))
    if page is None or data is None:
        return None
    try:
        card = Card.from_json(json.loads(data.content)["card"])
    except (ValueError, KeyError, TypeError):
        return None
    if card.name != name:
        return None
    corrections = tuple(Correction(day, text) for day, text in manifest.corrections.get(below + name, ()))
    pdfs = tuple(_papers(site, manifest, name, below))
    return Kept(
        Listed(card, corrections),
        (page, data, *pdfs),
        tuple(_loaded(site, manifest, page, card)),
        {file.path: manifest.papers[file.path] for file in pdfs if file.path in manifest.papers},
        {file.path: manifest.pages[file.path] for file in pdfs if file.path in manifest.pages},
    )


def _papers(site: Path, manifest: Manifest, name: str, below: str) -> Iterator[Output]:
    """All PDFs of a pattern: its page links to every one."""
    usual, folder = below + paper_path(name), below + paper_folder(name)
    for path in manifest.outputs:
        file = _file(site, manifest, path) if path == usual or path.startswith(folder) else None
        if file is not None:
            yield file


def _file(site: Path, manifest: Manifest, path: str) -> Output | None:
    """A file of the site as it was written; None where it was never written, is gone, or was changed since."""
    recorded = manifest.outputs.get(path)
    if recorded is None:
        return None
    try:
        content = (site / path).read_bytes()
    except OSError:
        return None
    return Output(path, content) if digest(content) == recorded else None


def _loaded(site: Path, manifest: Manifest, page: Output, card: Card) -> Iterator[Output]:
    named = {unquote(unescape(path)) for path in _LOADED.findall(page.content.decode())}
    for path in sorted(named | {card.picture}):
        file = _file(site, manifest, path)
        if file is not None:
            yield file
