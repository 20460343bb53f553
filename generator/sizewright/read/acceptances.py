"""In: the `accepted` of a header, the `rules` of `site.yaml`. Out: what is accepted at its place, what is set for all.

A place is told by words of its line and, where those stand more than once, by the heading above it: both survive
whatever is written before them, which the number of a line does not.
"""

from collections.abc import Iterator

from sizewright.read.acceptance import Acceptance, LevelSet
from sizewright.read.inserts import Words
from sizewright.read.values import Keys, Values
from sizewright.read.yaml_tree import Node, Scalar, Table

LEVELS = ("off", "warning", "error")
_ACCEPTED = '[{rule: missing-count, text: "Rnd 5:", reason: the next round gives it}]'


def read_accepted(values: Values, key: str, node: Node) -> tuple[Acceptance, ...]:
    """The acceptances of a header; one without its rule or its reason is a finding, and none."""
    return tuple(_accepted(values, key, node))


def _accepted(values: Values, key: str, node: Node) -> Iterator[Acceptance]:
    for keys in values.tables(key, node, _ACCEPTED):
        rule = keys.require("rule", values.words, "missing-count")
        reason = keys.require("reason", values.words, "the next round gives it")
        text, under = (keys.take(name, lambda key, node: _as_typed(values, key, node)) for name in ("text", "under"))
        sizes = keys.take("sizes", values.many) or ()
        keys.close()
        if rule is not None and reason is not None:
            yield Acceptance(keys.span, rule, reason, text, under, sizes)


def _as_typed(values: Values, key: str, node: Node) -> Words | None:
    """Words of a line of the source, in which braces may stand."""
    if isinstance(node, Scalar) and node.text.strip():
        return Words(node.span, " ".join(node.text.split()))
    return values.words(key, node)


def read_levels(values: Values, key: str, node: Node) -> tuple[LevelSet, ...]:
    """The levels of `rules: {missing-count: off}`, or with a reason: `{wrong-count: {level: warning, reason: …}}`."""
    if values.table(key, node, "{missing-count: off}") is None or not isinstance(node, Table):
        return ()
    return tuple(found for name, entry in node.entries if (found := _level(values, Words(name.span, name.text), entry)))


def _level(values: Values, rule: Words, node: Node) -> LevelSet | None:
    if not isinstance(node, Table):
        level = values.one_of(rule.text, node, LEVELS)
        return LevelSet(rule.span, rule, level) if level else None
    keys = Keys(values, node)
    level = keys.require("level", lambda key, entry: values.one_of(key, entry, LEVELS), "warning")
    reason = keys.take("reason", values.words)
    keys.close()
    return LevelSet(rule.span, rule, level, reason) if level else None
