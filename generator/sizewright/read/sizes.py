"""In: the `sizes:` of a header or of a shared table. Out: sizes with their body measurements, each with its place."""

from collections.abc import Mapping

from sizewright.base.nearest import did_you_mean
from sizewright.base.place import Lines
from sizewright.read.pattern import Measure, Size, Words
from sizewright.read.project import SizeTable
from sizewright.read.rules import MISSING_FILE, REPEATED_KEY, UNKNOWN_SIZE
from sizewright.read.values import Keys, Values
from sizewright.read.yaml_tree import Listing, Node, Scalar, Table, read_yaml

# What may be said of a size in words; every other key is a measurement.
REMARKS = ("age", "note", "like")


def read_sizes(values: Values, node: Node) -> tuple[Size, ...]:
    """The sizes, in the order they stand."""
    if isinstance(node, Listing):
        return _listed(values, node)
    if not isinstance(node, Table):
        values.fault(node.span, "“sizes” takes a name and measurements for each size.", "Write “M: {head: 56 cm}”.")
        return ()
    return tuple(_size(values, key, entry) for key, entry in node.entries if values.words("sizes", key))


def _listed(values: Values, node: Listing) -> tuple[Size, ...]:
    """Sizes of which nothing but the name is said."""
    sizes: dict[str, Size] = {}
    for item in node.items:
        words = values.words("sizes", item) if isinstance(item, Scalar) else None
        if words is None and not isinstance(item, Scalar):
            values.fault(item.span, "This list takes names alone.", "Write “sizes: {S: {head: 52 cm}, M: {…}}”.")
        elif words is not None and words.text in sizes:
            message = f"“{words.text}” is listed twice."
            values.findings.append(REPEATED_KEY.at(words.span, message, "Keep one of them."))
        elif words is not None:
            sizes[words.text] = Size(words.span, words.text, {}, {})
    return tuple(sizes.values())


def _size(values: Values, key: Scalar, node: Node) -> Size:
    if isinstance(node, Scalar) and not node.text and not node.quoted:
        return Size(key.span, key.text, {}, {})
    keys = values.table(key.text, node, "{head: 56 cm}")
    if keys is None:
        return Size(key.span, key.text, {}, {})
    remarks = {word: text for word in REMARKS if (text := keys.take(word, values.words)) is not None}
    measurements = dict(_measurements(values, keys))
    return Size(key.span, key.text, measurements, remarks)


def _measurements(values: Values, keys: Keys) -> tuple[tuple[str, Measure], ...]:
    found = []
    for key, node in keys.rest():
        if not values.usable(key, "head"):
            continue
        measure = values.measure(key.text, node, None, "56 cm")
        if measure is not None:
            found.append((key.text, measure))
    return tuple(found)


def with_tables(
    values: Values, sizes: tuple[Size, ...], named: tuple[Words, ...], tables: Mapping[str, SizeTable]
) -> tuple[Size, ...]:
    """The sizes, each with the measurements of its row in the shared tables; what the size itself says wins."""
    used = []
    for word in named:
        if word.text in tables:
            used.append(tables[word.text])
        else:
            mend = did_you_mean(word.text, tables, "Put a table into content/sizes/.")
            message = f"There is no size table “{word.text}”."
            values.findings.append(MISSING_FILE.at(word.span, message, mend))
    if used and not sizes:
        message = "A size table is named, but no sizes are listed."
        values.fault(named[0].span, message, f"Add “sizes: [{', '.join(row.name for row in used[0].sizes)}]”.")
    for size in sizes:
        if "like" in size.remarks and not named:
            message = "“like” names a row of a size table, but the header names none."
            values.fault(size.remarks["like"].span, message, "Add “table: NAME” to the header.")
    return tuple(_joined(values, size, tuple(used)) for size in sizes)


def _joined(values: Values, size: Size, tables: tuple[SizeTable, ...]) -> Size:
    like = size.remarks.get("like")
    wanted = like.text if like else size.name
    rows = [row for table in tables for row in table.sizes if row.name.casefold() == wanted.casefold()]
    if not rows and tables and (like or not size.measurements):
        known = [row.name for table in tables for row in table.sizes]
        mend = did_you_mean(wanted, known, f"Known are: {', '.join(known)}.")
        span = like.span if like else size.span
        values.findings.append(UNKNOWN_SIZE.at(span, f"No size table has a size “{wanted}”.", mend, (size.name,)))
    measurements: dict[str, Measure] = {}
    remarks: dict[str, Words] = {}
    for row in rows:
        measurements |= row.measurements
        remarks |= row.remarks
    return Size(size.span, size.name, measurements | dict(size.measurements), remarks | dict(size.remarks))


def read_size_table(name: str, lines: Lines, values: Values) -> SizeTable | None:
    """One file of `content/sizes/`."""
    node, findings = read_yaml(lines, 1, len(lines.lines) + 1)
    values.findings.extend(findings)
    if node is None:
        return None
    keys = values.table(name, node, "{title: …, source: …, sizes: …}")
    if keys is None:
        return None
    title = keys.require("title", values.words, "Head circumferences")
    source = keys.require("source", values.words, "who published these measurements")
    keys.take("note", values.words)
    sizes = keys.require("sizes", lambda _, node: read_sizes(values, node), "{M: {head: 56 cm}}")
    keys.close()
    if title is None or source is None:
        return None
    return SizeTable(name, title.text, source, sizes or ())
