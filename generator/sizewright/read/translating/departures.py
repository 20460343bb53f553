"""In: the departures of an adaptation. Out: what their places in the base are called in the language of a translation.

A departure calls its place by the words it begins with: those of a row, of a paragraph, the name of a quantity.
"""

from collections.abc import Iterator

from sizewright.base.language import language, speaking
from sizewright.read.departure import Called, Part
from sizewright.read.inserts import typed_piece
from sizewright.read.notation.retelling import Retelling, whole_lines
from sizewright.read.pattern import Adaptation, InstructionLine, Pattern, StitchBlock, WorkBlock
from sizewright.read.source_terms import country_of_source
from sizewright.read.translating.pairs import key_of
from sizewright.read.translating.translation import Translation


def quantity_words(called: Called) -> str:
    """What a reader is told that a quantity is called, "" for a place of another kind."""
    return called.name.replace("_", " ") if called.part is Part.QUANTITY else ""


def beginning(name: str) -> str:
    """The words by which a place is shown: those before its first number."""
    return name.partition("{")[0].strip()


def places_told(adapts: Adaptation, translation: Translation) -> dict[str, str]:
    """The rows and paragraphs that departures are at, by the words they are shown by."""
    found: dict[str, str] = {}
    for called in (one.called for one in adapts.departures):
        told = ""
        if called.part is Part.ROW:
            told = _row(adapts.base, called.name, translation.into)
        elif called.part is Part.TEXT:
            told = _paragraph(called.name, translation)
        if told:
            found[beginning(called.name)] = told
    return found


def _row(base: Pattern, name: str, into: str) -> str:
    """The label of a row, or what it says before its first number."""
    line = next((line for line in _lines(base) if _typed(line).startswith(key_of(name))), None)
    if line is None:
        return ""
    with speaking(language(into)):
        printed = Retelling.of(base, country_of_source(base)).line(line)
    if printed is None:
        return ""
    told = printed.label if printed.label and ":" not in name else printed.whole
    return str(told[0]).strip().rstrip(":") if isinstance(told[0], str) else ""


def _lines(base: Pattern) -> Iterator[InstructionLine]:
    for piece in base.body:
        if isinstance(piece, WorkBlock | StitchBlock):
            yield from whole_lines(piece.lines)


def _typed(line: InstructionLine) -> str:
    return key_of("".join(map(typed_piece, line.pieces)))


def _paragraph(name: str, translation: Translation) -> str:
    """As many words of its translation as the name has."""
    key = key_of(name)
    told = next((told for words, told in translation.told.items() if words.startswith(key)), "")
    return " ".join(beginning(told).split()[: len(beginning(name).split())]).rstrip(".,;:")
