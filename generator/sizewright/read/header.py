"""In: the lines between `---`. Out: the header, every value typed and placed, and what is wrong with it."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import reduce

from sizewright.base.place import Lines, Span
from sizewright.base.units import LENGTH, ROW_GAUGE, STITCH_GAUGE
from sizewright.read.acceptances import read_accepted
from sizewright.read.adapting.header import read_based_on, read_departures
from sizewright.read.cautions import CAUTIONS
from sizewright.read.ease import read_ease
from sizewright.read.needles import needle
from sizewright.read.pattern import Change, Film, Finished, Gauge, Header, Measure, Picture, Size, Words
from sizewright.read.project import SizeTable
from sizewright.read.references import split
from sizewright.read.rules import MISSING_ALT, MISSING_TITLE, UNREADABLE_HEADER, UNSAFE_REFERENCE
from sizewright.read.sizes import read_sizes, with_tables
from sizewright.read.values import Keys, Values
from sizewright.read.yaml_tree import Listing, Node, Scalar, Table, read_yaml
from sizewright.read.yarns import read_yarns

SKILLS = ("basic", "easy", "intermediate", "complex")  # project levels of the Craft Yarn Council
_GAUGE_KEYS = ("stitches", "rows", "over", "needle")


def find_header(lines: Lines) -> tuple[int, int] | None:
    """The lines of the header, from 1: of its first `---` and of its last; None where there is none."""
    if lines.lines[0].rstrip() != "---":
        return None
    for number, line in enumerate(lines.lines[1:], start=2):
        if line.rstrip() == "---":
            return 1, number
    return 1, 0


def read_header(
    lines: Lines, values: Values, kind: str, tables: Mapping[str, SizeTable], cautions: Sequence[str] = ()
) -> tuple[Header, int]:
    """The header of a "pattern", "technique" or "page", and the first line, from 1, of the text behind it.

    `cautions` are the names of the studio's own.
    """
    place = find_header(lines)
    if place is None:
        span = lines.whole_line(1)
        values.findings.append(UNREADABLE_HEADER.at(span, "The source does not begin with a header.", _EXAMPLE))
        return Header(span), 1
    first, last = place
    if not last:
        span = lines.whole_line(1)
        values.findings.append(UNREADABLE_HEADER.at(span, "The header has no end.", "Close it with a line “---”."))
        return Header(span), len(lines.lines) + 1
    node, findings = read_yaml(lines, first + 1, last)
    values.findings.extend(findings)
    span = Span(lines.source, first, 1, last, 4)
    if not isinstance(node, Table):
        if not findings:
            values.findings.append(UNREADABLE_HEADER.at(span, "The header holds no keys.", _EXAMPLE))
        return Header(span), last + 1
    return header_of(span, node, values, kind, tables, cautions), last + 1


def header_of(
    span: Span,
    node: Table,
    values: Values,
    kind: str,
    tables: Mapping[str, SizeTable],
    cautions: Sequence[str],
) -> Header:
    """The header of a mapping of keys; `span` is all of it."""
    return _Reader(values.lines, values, Keys(values, node), tables, (*CAUTIONS, *cautions)).read(span, kind)


_EXAMPLE = "Begin with three lines: “---”, “title: …” and “---”."


class _Reader:
    def __init__(
        self, lines: Lines, values: Values, keys: Keys, tables: Mapping[str, SizeTable], known_cautions: tuple[str, ...]
    ) -> None:
        self.lines = lines
        self.values = values
        self.keys = keys
        self.tables = tables
        self.known_cautions = known_cautions

    def read(self, span: Span, kind: str) -> Header:
        take, values = self.keys.take, self.values
        title = take("title", values.words)
        if title is None:
            message = "The header has no title."
            values.findings.append(MISSING_TITLE.at(self.lines.whole_line(span.line), message, "Add “title: …”."))
        common = Header(
            span,
            title=title.text if title else "",
            summary=take("summary", values.words),
            picture=take("picture", self.picture),
            published=take("published", values.day),
            revised=take("revised", values.day),
            accepted=take("accepted", lambda key, node: read_accepted(values, key, node)) or (),
        )
        match kind:
            case "pattern":
                header = self.pattern(common)
            case "technique":
                header = self.technique(common)
            case _:
                header = common
        self.keys.close()
        self.check_dates(header)
        return header

    def check_dates(self, header: Header) -> None:
        published, revised = header.published, header.revised
        if published and revised and revised.date < published.date:
            message = f"“revised: {revised.date}” is before “published: {published.date}”."
            self.values.fault(revised.span, message, "Mend one of the two dates.")

    def pattern(self, common: Header) -> Header:
        take, values = self.keys.take, self.values
        sizes = self.sizes()
        names = tuple(size.name for size in sizes)
        gauges = take("gauge", self.gauges) or ()
        return replace(
            common,
            designer=take("designer", values.words),
            licence=take("licence", values.words),
            skill=take("skill", lambda key, node: values.one_of(key, node, SKILLS)),
            kind=take("kind", values.words),
            sizes=sizes,
            gauges=gauges,
            needles=tuple(map(needle, take("needles", values.many) or ())),
            yarns=take("yarn", lambda key, node: read_yarns(values, key, node, gauges)) or (),
            notions=take("notions", values.many) or (),
            techniques=take("techniques", values.many) or (),
            cautions=take("cautions", self.cautions) or (),
            care=take("care", values.many) or (),
            credits=take("credits", values.many) or (),
            finished=take("finished", lambda key, node: self.finished(key, node, names)) or (),
            tolerance=take("tolerance", self.tolerance),
            changes=take("changes", self.changes) or (),
            based_on=take("based_on", lambda key, node: read_based_on(values, key, node)),
            departures=take("departures", lambda key, node: read_departures(values, key, node)) or (),
        )

    def technique(self, common: Header) -> Header:
        take, values = self.keys.take, self.values
        return replace(
            common,
            skill=take("skill", lambda key, node: values.one_of(key, node, SKILLS)),
            terms=take("terms", values.many) or (),
            films=take("films", self.films) or (),
        )

    def sizes(self) -> tuple[Size, ...]:
        named = self.keys.take("table", self.values.many) or ()
        sizes = self.keys.take("sizes", lambda _, node: read_sizes(self.values, node)) or ()
        return with_tables(self.values, sizes, named, self.tables)

    def picture(self, key: str, node: Node) -> Picture | None:
        keys = self.values.table(key, node, "{file: hat.svg, alt: The hat from the side}")
        if keys is None:
            return None
        file = keys.require("file", self.values.words, "hat.svg")
        alt = keys.take("alt", self.values.words)
        keys.close()
        if file is None:
            return None
        if alt is None:
            mend = "Add “alt: …”: what a reader should know who does not see it."
            self.values.findings.append(MISSING_ALT.at(file.span, f"“{file.text}” has no words for it.", mend))
        return Picture(file.span, file.text, alt.text if alt else "")

    def gauges(self, key: str, node: Node) -> tuple[Gauge, ...]:
        if not isinstance(node, Table):
            self.values.table(key, node, _GAUGE_EXAMPLE)
            return ()
        if all(isinstance(entry, Table) for _, entry in node.entries):
            for name, _ in node.entries:
                self.values.usable(name, "body")
            return tuple(gauge for name, entry in node.entries if (gauge := self.gauge(name.text, entry)))
        gauge = self.gauge("", node)
        return (gauge,) if gauge else ()

    def gauge(self, name: str, node: Node) -> Gauge | None:
        values = self.values
        keys = values.table(name or "gauge", node, _GAUGE_EXAMPLE)
        if keys is None:
            return None
        rows = keys.take("rows", lambda key, node: values.measure(key, node, ROW_GAUGE, "30 row / 10 cm"))
        gauge = Gauge(
            keys.span,
            name,
            keys.take("stitches", lambda key, node: values.measure(key, node, STITCH_GAUGE, "22 st / 10 cm")),
            rows,
            keys.take("over", values.words),
            needle(words) if (words := keys.take("needle", values.words)) else None,
            in_the_round=rows is not None and any(word in rows.typed for word in ("rnd", "round")),
        )
        keys.close()
        return gauge

    def cautions(self, key: str, node: Node) -> tuple[Words, ...]:
        """The name of a caution, or a text of the designer's own, which has more words than one."""
        found = []
        for item in node.items if isinstance(node, Listing) else (node,):
            words = self.values.words(key, item)
            if words is None:
                continue
            known = " " in words.text or self.values.one_of(key, item, self.known_cautions)
            if known:
                found.append(words)
        return tuple(found)

    def finished(self, key: str, node: Node, sizes: tuple[str, ...]) -> tuple[Finished, ...]:
        found = []
        for keys in self.values.tables(key, node, "[{label: Brim, value: brim_around, body: head}]"):
            label = keys.require("label", self.values.words, "Brim circumference")
            value = keys.require("value", lambda key, node: self.values.words(key, node) and node, "brim_around")
            body = keys.take("body", self.values.words)
            ease = keys.take("ease", lambda key, node: read_ease(self.values, key, node))
            tolerance = keys.take("tolerance", self.tolerance)
            keys.close()
            if ease is not None and body is None:
                message = f"“ease: {ease.typed}” has no body that it is meant for."
                self.values.fault(ease.span, message, "Name a measurement of the sizes: “body: chest”.")
            formula = self.values.formula(value, sizes) if isinstance(value, Scalar) else None
            if label and formula:
                found.append(Finished(keys.span, label.text, formula, body, ease, tolerance))
        return tuple(found)

    def tolerance(self, key: str, node: Node) -> Measure | None:
        return self.values.measure(key, node, LENGTH, "1 cm")

    def changes(self, key: str, node: Node) -> tuple[Change, ...]:
        found = []
        for keys in self.values.tables(key, node, "[{date: 2026-10-12, text: …}]"):
            date = keys.require("date", self.values.day, "2026-10-12")
            text = keys.require("text", self.values.words, "Rnd 4 of size M: k8, was k9.")
            keys.close()
            if date and text:
                found.append(Change(keys.span, date, text))
        return tuple(sorted(found, key=lambda change: change.date.date, reverse=True))

    def films(self, key: str, node: Node) -> tuple[Film, ...]:
        found = []
        for keys in self.values.tables(key, node, '[{title: …, address: "https://…", start: "1:25"}]'):
            title = keys.require("title", self.values.words, "Long-tail cast-on, slowly")
            address = keys.require("address", self.values.words, '"https://…"')
            start = keys.take("start", self.seconds) or 0
            keys.close()
            if title and address and self.safe(address):
                found.append(Film(keys.span, title.text, address.text, start))
        return tuple(found)

    def safe(self, address: Words) -> bool:
        parts = split(address.text)
        if parts is not None and parts.scheme in ("http", "https") and parts.netloc:
            return True
        message = f"“{address.text}” is no web address."
        self.values.findings.append(UNSAFE_REFERENCE.at(address.span, message, "Begin it with “https://”."))
        return False

    def seconds(self, key: str, node: Node) -> int | None:
        words = self.values.words(key, node)
        if words is None:
            return None
        parts = words.text.split(":")
        if len(parts) <= 3 and all(part.isascii() and part.isdigit() and len(part) <= 4 for part in parts):
            return reduce(lambda seconds, part: seconds * 60 + int(part), parts, 0)
        self.values.fault(words.span, f"“{words.text}” is no time.", 'Write minutes and seconds: "1:25".')
        return None


_GAUGE_EXAMPLE = "{stitches: 22 st / 10 cm, rows: 30 row / 10 cm}"
