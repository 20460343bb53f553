"""In: the file of a finished pattern, as text. Out: it as the source of a pattern, and what of it found no place."""

from collections.abc import Iterator
from pathlib import Path

from sizewright.command.beginning import CannotBegin, nearest_address, title_of
from sizewright.command.report_text import number
from sizewright.read.pasted import Pasted, Unplaced, pasted

_LARGEST = 2_000_000  # bytes; no pattern comes near it
_MANY = 20  # lines shown


def pasted_file(path: Path, name: str | None) -> tuple[str, Pasted]:
    """The address of the pattern and its source; without a `name` that of the file is taken.

    Raises CannotBegin for what is no text, and OSError where the file cannot be read.
    """
    address = name or nearest_address(path.stem)
    if not address:
        raise CannotBegin(f"“{path.name}” gives no name for a page. Type one: sizewright begin NAME --from {path.name}")
    content = path.read_bytes()
    if len(content) > _LARGEST:
        raise CannotBegin(f"{path} is too large for a pattern.")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise CannotBegin(f"{path} is no plain text in UTF-8. Save it as that: a word processor calls it so.") from None
    if not text.strip():
        raise CannotBegin(f"{path} is empty.")
    return address, pasted(text, title_of(address))


def what_became(found: Pasted, file: str) -> Iterator[str]:
    """What was made of it, and what is left to the designer."""
    lines = number(found.placed, "line")
    yield f"Wrote {file}: every word of the text, {lines} of it as instructions that can be carried out."
    lacking = [word for word, given in (("sizes", found.told.sizes), ("gauge", found.told.gauge)) if not given]
    if lacking:
        yield f"Not sure from the text, so left to you in the header: {' and '.join(lacking)}."
    if found.unplaced:
        yield "Not understood as instructions. They stand in blocks all the same, for the proof to say why, or as text:"
        yield from map(_shown, found.unplaced[:_MANY])
        if len(found.unplaced) > _MANY:
            yield f"  and {len(found.unplaced) - _MANY} more"


def _shown(one: Unplaced) -> str:
    return f"  line {one.line}{'' if one.in_block else ', left as text'}: {one.text}"
