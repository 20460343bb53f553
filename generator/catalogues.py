"""In: the sources of the program and of the shipped themes. Out: the message catalogues brought up to date with them.

    .venv/bin/python generator/catalogues.py [CODE ...]

Without a code all languages that are there; a new code begins one. What is new stands there untranslated, what is gone
is gone, and what was only changed a little is marked fuzzy: look it over and take the mark away.
"""

import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_file
from babel.messages.pofile import read_po, write_po

from sizewright.base import script_messages
from sizewright.read.notation.phrasing import CONTEXT

TOP = Path(__file__).resolve().parents[1]
PROGRAM = TOP / "generator" / "sizewright"
FOLDER = PROGRAM / "catalogues"
KEYWORDS: Mapping[str, tuple[int | tuple[int, str], ...] | None] = {
    "tr": None,
    "later": None,
    "tr_many": (1, 2),
    "tr_as": ((1, "c"), 2),
    "later_as": ((1, "c"), 2),
    "phrase": None,
    "told_word": None,
    "phrase_many": (1, 2),
    "phrase_as": ((1, "c"), 2),
    "_": None,
    "gettext": None,
    "ngettext": (1, 2),
    "pgettext": ((1, "c"), 2),
    **script_messages.KEYWORDS,
}


@dataclass(frozen=True, slots=True)
class Part:
    """One catalogue of every language: where its messages are, and how they are found."""

    name: str
    method: str
    folder: Path
    pattern: str
    without: tuple[str, ...] = ()
    context: str | None = None  # that of its messages which name none

    def files(self) -> Iterator[Path]:
        """The sources, in order."""
        for path in sorted(self.folder.rglob(self.pattern)):
            if not any(path.is_relative_to(self.folder / folder) for folder in self.without):
                yield path


PARTS = (
    Part("words", "python", PROGRAM, "*.py", ("read/notation",)),
    Part("notation", "python", PROGRAM / "read" / "notation", "*.py", context=CONTEXT),
    Part("pages", "jinja2.ext.babel_extract", TOP / "themes", "*.html"),
    Part("scripts", "javascript", TOP / "themes", "*.js"),
)


def wanted(part: Part) -> Catalog:
    """The messages of a part, none of them translated."""
    found = _empty()
    for path in part.files():
        options = {"trimmed": "true", "silent": "false"} if part.name == "pages" else {}
        for _, message, comments, context in extract_from_file(part.method, path, KEYWORDS, (), options):
            place = path.relative_to(TOP).as_posix()
            found.add(message, locations=[(place, 1)], auto_comments=comments, context=context or part.context)
    return found


def _empty(code: str | None = None) -> Catalog:
    comment = "# Messages of sizewright; see generator/catalogues.py."
    address = {"msgid_bugs_address": "-", "last_translator": "-", "language_team": "-"}
    return Catalog(
        code, header_comment=comment, project="sizewright", version="1", fuzzy=False, charset="utf-8", **address
    )


def kept(part: Part, code: str) -> Catalog:
    """The catalogue of a part as it stands; an empty one where there is none."""
    path = FOLDER / code / f"{part.name}.po"
    if not path.exists():
        return _empty(code)
    with path.open("rb") as opened:
        return read_po(opened, locale=code, abort_invalid=True)


def bring_up_to_date(part: Part, code: str) -> None:
    """Writes one catalogue anew."""
    catalogue = kept(part, code)
    catalogue.update(wanted(part), update_header_comment=False, update_creation_date=False)
    catalogue.obsolete.clear()
    path = FOLDER / code / f"{part.name}.po"
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("wb") as opened:
        write_po(opened, catalogue, width=0, omit_header=False, sort_by_file=True, include_lineno=False)


if __name__ == "__main__":
    for language in sys.argv[1:] or sorted(folder.name for folder in FOLDER.iterdir() if folder.is_dir()):
        for each in PARTS:
            bring_up_to_date(each, language)
