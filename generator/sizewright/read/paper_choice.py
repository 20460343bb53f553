"""In: `papers` of `content/site.yaml`. Out: which PDFs the site has."""

from sizewright.read.pattern import Words
from sizewright.read.project import PaperChoice, Sheet
from sizewright.read.values import Keys, Values
from sizewright.read.yaml_tree import Listing, Node

_EXAMPLE = "{sheets: [a4, letter], each_size: yes, large_print: yes}"
_SHEETS = tuple(Sheet)


def read_papers(values: Values, studio: Keys, *, metric_first: bool) -> PaperChoice:
    """The PDFs of a site; what is left out is made, on the sheet first that goes with the units."""
    usual = PaperChoice(_SHEETS if metric_first else _SHEETS[::-1])
    return studio.take("papers", lambda key, node: _choice(values, key, node, usual)) or usual


def _choice(values: Values, key: str, node: Node, usual: PaperChoice) -> PaperChoice | None:
    keys = values.table(key, node, _EXAMPLE)
    if keys is None:
        return None

    def answer(key: str) -> bool:
        words = keys.take(key, lambda key, node: values.one_of(key, node, ("yes", "no")))
        return words is None or words.text == "yes"

    sheets = keys.take("sheets", lambda key, node: _sheets(values, key, node))
    choice = PaperChoice(sheets or usual.sheets, answer("each_size"), answer("large_print"))
    keys.close()
    return choice


def _sheets(values: Values, key: str, node: Node) -> tuple[Sheet, ...]:
    """The sheets in their order. None at all, and one twice, are faults."""
    items = node.items if isinstance(node, Listing) else (node,)
    if not items:
        values.fault(node.span, f"“{key}” names no sheet.", "Write “sheets: [a4, letter]”, or take the line out.")
    found: list[Words] = []
    for item in items:
        words = values.one_of(key, item, _SHEETS)
        if words is None:
            continue
        if words.text in (one.text for one in found):
            values.fault(words.span, f"“{words.text}” stands twice in “{key}”.", "Take one of the two out.")
        else:
            found.append(words)
    return tuple(Sheet(words.text) for words in found)
