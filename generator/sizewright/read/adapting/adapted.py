"""In: the text of a pattern that is based on another. Out: the two as one pattern, read, and what is wrong.

1. Both headers are read as keys, and made one (`header.merged`).
2. The departures of the body are found in the base, and the bodies are put together (`composed`).
3. The whole is read as any source is, and the sections turned inside out are turned (`turned`).
4. The same is done with each departure alone, so that what it changes by itself can be told.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from sizewright.base.finding import Finding, has_error
from sizewright.base.place import Lines, Span
from sizewright.read.adapting.composed import Composer, Placed, apart
from sizewright.read.adapting.directives import read_directives
from sizewright.read.adapting.header import judged, merged, read_based_on, read_departures
from sizewright.read.adapting.places import Place, Places
from sizewright.read.adapting.rules import CONTRARY_SIZES, MISSING_BASE
from sizewright.read.adapting.turned import turned
from sizewright.read.departure import BasedOn, Called, Departure, Part, Verb
from sizewright.read.header import find_header, header_of
from sizewright.read.pattern import Adaptation, Header, Pattern
from sizewright.read.source import SourceReader
from sizewright.read.values import Values
from sizewright.read.yaml_tree import Table, read_yaml
from sizewright.read.yarn_names import YarnNames

_WORDS = ("notions", "cautions", "care", "finished", "tolerance")  # keys that no row and no yarn depends on
Found = Callable[[str], Lines | str]  # the lines of a pattern by its name, or why they cannot be had
Read = tuple[Pattern, tuple[Finding, ...]]


def based_on(lines: Lines) -> BasedOn | None:
    """What a source says it is based on; None where it is no adaptation."""
    own = _keys(lines)
    node = next((node for key, node in own.entries if key.text == "based_on"), None) if own else None
    return read_based_on(Values(lines), "based_on", node) if node is not None else None


def read_adaptation(lines: Lines, name: str, reader: SourceReader, found: Found) -> Read:
    """The adaptation in some lines; without its base only its header is read."""
    told = based_on(lines)
    missing = _missing(name, told, found) if told is not None else None
    base_lines = found(told.pattern.text) if told is not None and missing is None else ""
    if told is None or isinstance(base_lines, str):
        pattern, findings = reader.read(Lines(lines.source, _header_text(lines)), name)
        return pattern, (*findings, *([missing] if missing else []))
    base, of_base = reader.read(base_lines, told.pattern.text)
    return _Adapter(lines, name, reader, told, base, of_base).read()


def _missing(name: str, told: BasedOn, found: Found) -> Finding | None:
    """What is wrong with a base, looked for under its name; a circle of bases is shown."""
    chain = [name, told.pattern.text]
    lines = found(chain[-1])
    if isinstance(lines, str):
        return MISSING_BASE.at(told.pattern.span, *lines.split("\n"))
    if _keys(lines) is None:
        message = f"The header of the base “{chain[-1]}” cannot be read."
        return MISSING_BASE.at(told.pattern.span, message, f"Mend {lines.source} first.")
    while chain[-1] not in chain[:-1]:
        others = based_on(lines)
        if others is None:
            break
        chain.append(others.pattern.text)
        lines = found(chain[-1])
        if isinstance(lines, str):
            break
    if chain[-1] in chain[:-1]:
        message = f"These patterns are based on one another in a circle: {' → '.join(chain)}."
        return MISSING_BASE.at(told.pattern.span, message, "Base one of them on none.")
    if len(chain) > 2:
        message = f"“{chain[1]}” is itself based on another pattern: {' → '.join(chain)}."
        mend = f"Base it on “{chain[-1]}”, and name “{chain[1]}” in its credits."
        return MISSING_BASE.at(told.pattern.span, message, mend)
    return None


def _keys(lines: Lines) -> Table | None:
    place = find_header(lines)
    if place is None or not place[1]:
        return None
    node, _ = read_yaml(lines, place[0] + 1, place[1])
    return node if isinstance(node, Table) else None


def _header_text(lines: Lines) -> str:
    place = find_header(lines)
    return "\n".join(lines.lines[: place[1]]) if place and place[1] else lines.text


@dataclass(frozen=True, slots=True)
class _Whole:
    """What a choice of departures gives."""

    lines: Lines
    header: Header
    departures: tuple[Departure, ...]


class _Adapter:
    """Puts one adaptation and its base together."""

    def __init__(
        self,
        lines: Lines,
        name: str,
        reader: SourceReader,
        told: BasedOn,
        base: Pattern,
        of_base: tuple[Finding, ...],
    ) -> None:
        self.lines, self.name, self.reader = lines, name, reader
        self.told, self.base, self.of_base = told, base, of_base
        self.last = (find_header(lines) or (1, 1))[1]
        self.base_last = (find_header(base.lines) or (1, 1))[1]
        self.findings: list[Finding] = []

    def read(self) -> Read:
        """The adaptation with all its departures."""
        keys, placed = self.departures()
        pattern, findings = self.whole(keys, placed)
        departures = pattern.adapts.departures if pattern.adapts else ()
        alone = tuple(map(self.alone, departures)) if len(departures) > 1 and not has_error(findings) else ()
        adapts = replace(pattern.adapts, alone=alone) if pattern.adapts else None
        return replace(pattern, adapts=adapts), (*self.findings, *findings)

    def departures(self) -> tuple[tuple[Called, ...], tuple[Placed, ...]]:
        """The departures in keys, and those in the body with their places; what is wrong with them is noted."""
        values = Values(self.lines)
        own, base = _keys(self.lines), _keys(self.base.lines)
        node = next((node for key, node in own.entries if key.text == "departures"), None) if own else None
        taken = read_departures(values, "departures", node) if node is not None else ()
        keys, wrong = judged(own, base, taken) if own and base else ((), ())
        called, unread = read_directives(self.lines, self.last + 1)
        places = Places(self.base)
        found = [(one, places.find(one)) for one in called]
        placed, clashing = apart([Placed(one, place) for one, place in found if isinstance(place, Place)])
        unknown = (place for _, place in found if isinstance(place, Finding))
        self.findings.extend((*wrong, *unread, *unknown, *clashing))
        return keys, placed

    def alone(self, departure: Departure) -> Pattern | None:
        """The base with one departure only; None where it cannot be read so."""
        called = departure.called
        if called.part is Part.TEXT or (called.part is Part.KEY and called.name in _WORDS):
            return self.base  # it changes words alone
        keys, placed = ((called,), ()) if called.part is Part.KEY else ((), self.placed_of(called))
        pattern, findings = self.whole(keys, placed)
        return None if has_error(findings) else pattern

    def placed_of(self, called: Called) -> tuple[Placed, ...]:
        place = Places(self.base).find(called)
        return (Placed(called, place),) if isinstance(place, Place) else ()

    def whole(self, keys: tuple[Called, ...], placed: Sequence[Placed]) -> Read:
        """The pattern with some of the departures, and what is wrong with it."""
        composer = Composer(self.lines, self.base.lines, (self.last, self.base_last))
        in_body = composer.departures(placed, len(keys) + 1)
        lines = composer.lines
        values = Values(lines)
        header = self.header(lines, values, keys)
        first = self.last + self.base_last + 1
        body, findings = self.reader.body(lines, first, header, in_body)
        body, unturned = turned(body, in_body, self.reader.stitches, YarnNames(header.yarns))
        in_keys = tuple(self.in_key(number, one) for number, one in enumerate(keys, start=1))
        adapts = Adaptation(self.base, self.of_base, self.lines, self.told, (*in_keys, *in_body))
        pattern = Pattern(self.name, lines, header, body, adapts=adapts)
        return pattern, (*values.findings, *self.sizes(header), *findings, *unturned)

    def header(self, lines: Lines, values: Values, keys: tuple[Called, ...]) -> Header:
        """The header of both; `lines` hold the two, one behind the other."""
        own, wrong = read_yaml(lines, 2, self.last)
        base, _ = read_yaml(lines, self.last + 2, self.last + self.base_last)
        values.findings.extend(wrong)
        span = Span(lines.source, 1, 1, self.last + self.base_last, 4, lines.home(1))
        if not isinstance(own, Table) or not isinstance(base, Table):
            return Header(span)
        return header_of(span, merged(own, base, keys), values, "pattern", self.reader.tables, self.reader.cautions)

    def sizes(self, header: Header) -> tuple[Finding, ...]:
        """The finding where the sizes are not those of the base."""
        sizes = tuple(size.name for size in header.sizes)
        wanted = self.base.size_names
        if sizes == wanted or not header.sizes:
            return ()
        given, there = header.sizes[0].span, self.base.header.sizes[0].span if wanted else self.base.header.span
        message = (
            f"The sizes {', '.join(sizes)} are not those of the base, {', '.join(wanted) or 'which has one'} ({there})."
        )
        return (CONTRARY_SIZES.at(given, message, "Leave “sizes” out, or give the same sizes in the same order."),)

    def in_key(self, number: int, one: Called) -> Departure:
        """A departure in a key, and what the base says by it."""
        base = _keys(self.base.lines)
        found = next(((key, node) for key, node in base.entries if key.text == one.name), None) if base else None
        if found is None or one.verb is Verb.WITH:
            return Departure(number, one)
        key, node = found
        return Departure(number, one, stood=self.base.lines.text_of(node.span), place=key.span)
