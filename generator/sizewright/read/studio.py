"""In: `content/site.yaml`. Out: the studio."""

import re
from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Literal

from sizewright.read.acceptances import read_levels
from sizewright.read.cautions import Caution, StudioCaution
from sizewright.read.languages import read_languages
from sizewright.read.paper_choice import read_papers
from sizewright.read.project import Studio
from sizewright.read.references import split
from sizewright.read.rules import UNSAFE_REFERENCE
from sizewright.read.trade_words import Country
from sizewright.read.values import Values
from sizewright.read.yaml_tree import Node, Table, read_yaml

_ONLY = ("signed-off",)
_WHERE_OF: Mapping[str, Literal["named", "children", "everywhere"]] = MappingProxyType(
    {"named": "named", "children": "children", "everywhere": "everywhere"}
)
_WHERE = tuple(_WHERE_OF)
_CAUTION = "{pins: {title: …, text: …, source: …, where: everywhere}}"
_UNITS = ("metric", "imperial")
_TERMS = tuple(country.value for country in Country)


def read_studio(values: Values) -> Studio:
    """The studio of a file; what is wrong with it is left in `values`."""
    lines = values.lines
    node, findings = read_yaml(lines, 1, len(lines.lines) + 1)
    values.findings.extend(findings)
    keys = values.table("site.yaml", node, "{name: …}") if node is not None else None
    if keys is None:
        return Studio()
    default = Studio()

    def text(key: str, otherwise: str = "") -> str:
        words = keys.take(key, values.words)
        return words.text if words else otherwise

    units = keys.take("units", lambda key, node: values.one_of(key, node, _UNITS))
    terms = keys.take("terms", lambda key, node: values.one_of(key, node, _TERMS))
    theme = keys.take("theme", lambda key, node: _theme(values, key, node))
    publish_only = keys.take("publish_only", lambda key, node: values.one_of(key, node, _ONLY))
    metric_first = units is None or units.text == "metric"
    studio = Studio(
        keys.span,
        text("name", default.name),
        text("description", default.description),
        keys.take("address", lambda key, node: _address(values, key, node)) or "",
        text("author", default.author),
        read_languages(values, keys),
        metric_first,
        theme or default.theme,
        Country(terms.text) if terms else None,
        text("notice", default.notice),
        publish_only.text if publish_only else "",
        keys.take("cautions", lambda key, node: tuple(_cautions(values, key, node))) or (),
        read_papers(values, keys, metric_first=metric_first),
        keys.take("rules", lambda key, node: read_levels(values, key, node)) or (),
    )
    keys.close()
    return studio


def _cautions(values: Values, key: str, node: Node) -> Iterator[StudioCaution]:
    """The studio's own cautions, by their names."""
    if values.table(key, node, _CAUTION) is None or not isinstance(node, Table):
        return
    for name, entry in node.entries:
        keys = values.table(name.text, entry, _CAUTION)
        if keys is None:
            continue
        title, source = (keys.take(part, values.words) for part in ("title", "source"))
        text = keys.require("text", values.words, "Keep the pins away from children.")
        where = keys.take("where", lambda key, node: values.one_of(key, node, _WHERE))
        keys.close()
        if text is not None:
            told = Caution(title.text if title else "", (text.text,), (source.text,) if source else ())
            yield StudioCaution(name.text, told, _WHERE_OF[where.text] if where else "named")


def _address(values: Values, key: str, node: Node) -> str:
    """The base address, closed with a slash, so that names can be joined to it."""
    words = values.words(key, node)
    if words is None:
        return ""
    parts = split(words.text)
    if parts is None or parts.scheme not in ("http", "https") or not parts.netloc or parts.query or parts.fragment:
        message = f"“{words.text}” is no base address of a site."
        values.findings.append(UNSAFE_REFERENCE.at(words.span, message, "Write for example “https://studio.example/”."))
        return ""
    return words.text if words.text.endswith("/") else f"{words.text}/"


def _theme(values: Values, key: str, node: Node) -> str | None:
    words = values.words(key, node)
    if words is None or re.fullmatch(r"[\w-]+", words.text):
        return words.text if words else None
    values.fault(words.span, f"“{words.text}” is no name of a theme.", "Name a folder of themes/: “theme: studio”.")
    return None
