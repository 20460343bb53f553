"""In: the errata of some patterns. Out: them as text, as JSON, and as a passage for the header, in UTF-8."""

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from importlib.resources import files

from sizewright import command
from sizewright.command.report_json import Json
from sizewright.command.terminal import safe
from sizewright.command.versions import Versions
from sizewright.proof.errata import Erratum
from sizewright.proof.errata_words import in_words
from sizewright.read.pattern import Pattern

# The version of the keys below and of `errata.schema.json`, which describes them: it rises when one goes or changes.
VERSION = 1

_UNSURE = "One of the versions has faults; what could not be worked out or carried out is compared as it is typed."


@dataclass(frozen=True, slots=True)
class Corrected:
    """A pattern as it is now, and its errata; `unsure` where a version has faults."""

    pattern: Pattern
    errata: tuple[Erratum, ...]
    unsure: bool

    @property
    def name(self) -> str:
        """What a person calls it."""
        return self.pattern.header.title or self.pattern.name


def text_errata(found: Sequence[Corrected], both: Versions) -> bytes:
    """For a person: each pattern that has errata, and a line that sums up."""
    lines: list[str] = []
    for one in found:
        if one.errata or one.unsure:
            lines += [one.name, *(f"  {in_words(erratum)}" for erratum in one.errata)]
            lines += [f"  Note: {_UNSURE}"] if one.unsure else []
            lines.append("")
    gone, new = both.only()
    lines += [f"{name}: only in {both.old.name}." for name in gone]
    lines += [f"{name}: only in {both.new.name}." for name in new]
    count = sum(len(one.errata) for one in found)
    patterns = f"{len(found)} pattern{'' if len(found) == 1 else 's'}"
    lines.append(f"{count or 'No'} {'erratum' if count == 1 else 'errata'} in {patterns}")
    return _bytes(lines)


def json_errata(found: Sequence[Corrected], both: Versions) -> bytes:
    """For programs: every erratum with its sizes, what it reads and should read, and its sentence."""
    gone, new = both.only()
    told: Json = {
        "version": VERSION,
        "old": both.old.name,
        "new": both.new.name,
        "patterns": [
            {
                "name": one.pattern.name,
                "title": one.pattern.header.title,
                "faults": 1 if one.unsure else 0,
                "errata": [_erratum(erratum) for erratum in one.errata],
            }
            for one in found
        ],
        "only_old": list(gone),
        "only_new": list(new),
        "summary": {"patterns": len(found), "errata": sum(len(one.errata) for one in found)},
    }
    return (json.dumps(told, ensure_ascii=False, indent=2) + "\n").encode("utf-8", "backslashreplace")


def errata_schema() -> bytes:
    """The JSON Schema of what `json_errata` gives, as it is shipped."""
    return files(command).joinpath("errata.schema.json").read_bytes()


def _erratum(erratum: Erratum) -> Json:
    return {
        "change": str(erratum.change),
        "kind": str(erratum.kind),
        "section": erratum.section,
        "name": erratum.name,
        "sizes": [size for size in erratum.sizes if size],
        "reads": erratum.old,
        "should_read": erratum.new,
        "line": erratum.line or None,
        "text": in_words(erratum),
    }


def markdown_errata(found: Sequence[Corrected], both: Versions) -> bytes:
    """For the header: under the name of each pattern one entry of `changes:` in YAML, with today's date."""
    lines: list[str] = []
    today = datetime.now(UTC).astimezone().date().isoformat()
    for one in found:
        if one.errata:
            lines += [f"## {one.name}", "", "```yaml", *_entry(one, today), "```", ""]
        if one.unsure:
            lines += [_UNSURE, ""]
    return _bytes(lines or [f"No errata between {both.old.name} and {both.new.name}."])


def _entry(one: Corrected, today: str) -> Iterator[str]:
    """The text folded over several lines, so that no sign in it means anything to YAML."""
    yield "changes:"
    yield f"  - date: {today}"
    yield "    text: >-"
    yield from (f"      {in_words(erratum)}" for erratum in one.errata)


def _bytes(lines: Sequence[str]) -> bytes:
    return "".join(f"{safe(line)}".rstrip() + "\n" for line in lines).encode("utf-8", "backslashreplace")
