"""In: the keys `based_on:` and `departures:` of a header. Out: what it is based on, and its departures in keys."""

from collections.abc import Mapping

from sizewright.base.finding import Finding
from sizewright.base.nearest import did_you_mean
from sizewright.read.adapting.rules import UNKNOWN_PLACE, UNREAD_DEPARTURE, clash
from sizewright.read.departure import BasedOn, Called, Part, Verb
from sizewright.read.values import Keys, Values
from sizewright.read.yaml_tree import Listing, Node, Scalar, Table

# Each adaptation's own: what the base says of itself by these is not said of it.
OWN = (
    "title", "summary", "designer", "published", "revised", "picture", "changes", "based_on", "departures",
)  # fmt: skip
# Of both: the adaptation's entries come behind those of its base.
JOINED = ("credits", "accepted")
# Taken from the base where it says nothing, and said anew without a reason: no stitch depends on them.
FREE = ("licence", "skill", "kind", "techniques")
# Whatever else differs is a departure, which gives its reason.
DEPARTED = ("table", "sizes", "gauge", "needles", "yarn", "notions", "cautions", "care", "finished", "tolerance")

_BASED = "{pattern: undercombe-hat, permission: …, credit: …}"
_DEPARTED = "[{instead of: yarn, because: …}]"
_VERBS = (Verb.INSTEAD, Verb.WITHOUT, Verb.WITH)


def read_based_on(values: Values, key: str, node: Node) -> BasedOn | None:
    """`based_on:` of a header."""
    keys = values.table(key, node, _BASED)
    if keys is None:
        return None
    pattern = keys.require("pattern", values.words, "undercombe-hat")
    permission = keys.take("permission", values.words)
    credit = keys.take("credit", values.words)
    keys.close()
    return BasedOn(keys.span, pattern, permission, credit) if pattern else None


def read_departures(values: Values, key: str, node: Node) -> tuple[Called, ...]:
    """`departures:` of a header: those in its keys."""
    found = (_called(values, keys) for keys in values.tables(key, node, _DEPARTED))
    return tuple(one for one in found if one is not None)


def _called(values: Values, keys: Keys) -> Called | None:
    named = [(verb, words) for verb in _VERBS if (words := keys.take(verb, values.words)) is not None]
    because = keys.require("because", values.words, "the class knits in another yarn")
    was = keys.take("was", values.words)
    keys.close()
    if len(named) != 1:
        values.fault(keys.span, "This departure names no key of the header.", f"Write for example “{_DEPARTED}”.")
        return None
    ((verb, name),) = named
    if because is None:
        return None
    if name.text not in DEPARTED:
        mend = did_you_mean(name.text, DEPARTED, f"It may be one of: {', '.join(DEPARTED)}.")
        values.findings.append(UNKNOWN_PLACE.at(name.span, f"“{name.text}” is no key to depart in.", mend))
        return None
    return Called(name.span, verb, Part.KEY, name.text, "", because, was)


def entries_of(table: Table | None) -> Mapping[str, tuple[Scalar, Node]]:
    """The entries of a header by their keys."""
    return {key.text: (key, node) for key, node in table.entries} if table else {}


def merged(own: Table, base: Table, taken: tuple[Called, ...]) -> Table:
    """The header of an adaptation, of which `taken` are the departures in keys that count."""
    mine, its = entries_of(own), entries_of(base)
    by_key = {one.name: one for one in taken}
    entries = [mine[key] for key in mine if key in (*OWN, *FREE) or key not in (*JOINED, *DEPARTED)]
    entries += [its[key] for key in FREE if key in its and key not in mine]
    for key in JOINED:
        if key in its or key in mine:
            entries.append(_joined(its.get(key), mine.get(key)))
    for key in DEPARTED:
        departure = by_key.get(key)
        if departure is None and key in its:
            entries.append(its[key])
        elif departure is not None and departure.verb is not Verb.WITHOUT and key in mine:
            entries.append(mine[key])
    return Table(own.span, tuple(entries))


def judged(own: Table, base: Table, taken: tuple[Called, ...]) -> tuple[tuple[Called, ...], tuple[Finding, ...]]:
    """The departures in keys that fit the two headers, and what is wrong with the others and with keys that differ."""
    mine, its = entries_of(own), entries_of(base)
    named = {one.name for one in taken}
    findings = [_untold(mine[key][0], there=key in its) for key in mine if key in DEPARTED and key not in named]
    good: dict[str, Called] = {}
    for one in taken:
        finding = _misplaced(one, there=one.name in its) or _unsaid(one, here=one.name in mine)
        if finding is None and one.name in good:
            finding = clash(one, good[one.name])
        if finding is None:
            good[one.name] = one
        else:
            findings.append(finding)
    return tuple(good.values()), tuple(findings)


def _untold(key: Scalar, *, there: bool) -> Finding:
    verb = Verb.INSTEAD if there else Verb.WITH
    message = f"“{key.text}” is not as in the base, and nothing says why."
    return UNREAD_DEPARTURE.at(key.span, message, f"Add to “departures:” an entry {{{verb}: {key.text}, because: …}}.")


def _misplaced(one: Called, *, there: bool) -> Finding | None:
    """A departure in a key the base lacks, or one with a key that it has."""
    if there is (one.verb is not Verb.WITH):
        return None
    verb = Verb.INSTEAD if there else Verb.WITH
    message = f"The base has {'a' if there else 'no'} key “{one.name}”."
    return UNKNOWN_PLACE.at(one.span, message, f"Write “{verb}: {one.name}”.")


def _unsaid(one: Called, *, here: bool) -> Finding | None:
    """A departure whose key is not said, or one without a key that is."""
    if here is (one.verb is not Verb.WITHOUT):
        return None
    message = f"“{one.name}” {'stands in this header all the same' if here else 'is not in this header'}."
    mend = "Take one of the two out." if here else f"Add “{one.name}: …”, as it is to be."
    return UNREAD_DEPARTURE.at(one.span, message, mend)


def _joined(first: tuple[Scalar, Node] | None, second: tuple[Scalar, Node] | None) -> tuple[Scalar, Node]:
    """One list of two; one alone may stand without brackets."""
    present = [one for one in (first, second) if one is not None]
    nodes = [node.items if isinstance(node, Listing) else (node,) for _, node in present]
    key, node = present[-1]
    return key, Listing(node.span, tuple(item for items in nodes for item in items))
