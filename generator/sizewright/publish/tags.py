"""In: a document laid out and its PDF, not yet written. Out: the same with the tags that PDF/UA-1 asks for and lacks.

What the renderer leaves out, each with the clause of ISO 14289-1 that asks for it. The names with an underscore are the
renderer's own affair: its version is pinned, and the tests hold the result against checkers it does not know.
"""

from collections.abc import Iterator
from typing import Any

_PRINT_FLAG = 4  # ISO 32000-1, table 165, bit 3
_SCOPES = {"row": "/Row", "rowgroup": "/Row", "col": "/Column", "colgroup": "/Column"}


def finish(document: Any, pdf: Any) -> None:  # noqa: ANN401 (the renderer has no types)
    """Mends the tags of a PDF in place."""
    _say_scopes(document)
    _print_links(pdf)
    _straighten_lists(pdf)
    _set_margins_apart(pdf)


def _say_scopes(document: Any) -> None:  # noqa: ANN401
    """A table's header says whether it heads a row or a column (7.5)."""
    for page in document.pages:
        for box in page._page_box.descendants():  # noqa: SLF001
            if box.element_tag == "th" and box.element is not None and hasattr(box, "mark"):
                box.mark["A"]["Scope"] = _SCOPES.get(box.element.get("scope", "col"), "/Column")


def _print_links(pdf: Any) -> None:  # noqa: ANN401
    """What is seen on the screen is printed too (7.18.1)."""
    for item in _dictionaries(pdf):
        if item.get("Subtype") == "/Link":
            item["F"] = _PRINT_FLAG


def _straighten_lists(pdf: Any) -> None:  # noqa: ANN401
    """A list holds items and nothing between them (7.6): `div` in a `dl` is HTML's, not a reader's."""
    for item in _dictionaries(pdf):
        if item.get("S") == "/L":
            item["K"][:] = list(_without_div(pdf, item))


def _without_div(pdf: Any, parent: Any) -> Iterator[Any]:  # noqa: ANN401
    for kid in parent["K"]:
        element = _behind(pdf, kid)
        if element is None or element.get("S") != "/Div":
            yield kid
            continue
        for grandkid in element["K"]:
            inner = _behind(pdf, grandkid)
            if inner is not None:
                inner["P"] = parent.reference
            yield grandkid


def _set_margins_apart(pdf: Any) -> None:  # noqa: ANN401
    """Running heads and page numbers are no part of the text (7.8): the renderer tags them and hangs them nowhere."""
    root = next(item for item in _dictionaries(pdf) if item.get("Type") == "/StructTreeRoot")
    in_tree = {element.number for element in _tree(pdf, root)}
    apart = [item for item in _dictionaries(pdf) if item.get("Type") == "/StructElem" and item.number not in in_tree]
    _forget(pdf, root, {item.reference for item in apart})
    numbers: dict[bytes, set[int]] = {}
    for item in apart:
        numbers.setdefault(item["Pg"], set()).update(kid for kid in item["K"] if isinstance(kid, int))
        item.clear()
    for page, of_page in numbers.items():
        _make_artifacts(_behind(pdf, _behind(pdf, page)["Contents"]).stream, of_page)


def _forget(pdf: Any, root: Any, references: set[bytes]) -> None:  # noqa: ANN401
    """Takes elements out of the lists that lead from a page to its tags; the places of the others stay."""
    for entry in _behind(pdf, root["ParentTree"])["Nums"]:
        if isinstance(entry, list):
            entry[:] = [b"null" if reference in references else reference for reference in entry]


def _make_artifacts(stream: list[Any], numbers: set[int]) -> None:
    """Marks text as what a page is furnished with; the renderer wrote a tag, a list of properties and an operator."""
    for place, part in enumerate(stream):
        if isinstance(part, dict) and part.get("MCID") in numbers:
            stream[place - 1] = "/Artifact"
            del part["MCID"]
            part["Type"] = "/Pagination"


def _tree(pdf: Any, element: Any) -> Iterator[Any]:  # noqa: ANN401
    yield element
    for kid in element.get("K", ()):
        found = _behind(pdf, kid)
        if found is not None and found.get("Type") == "/StructElem":
            yield from _tree(pdf, found)


def _dictionaries(pdf: Any) -> list[Any]:  # noqa: ANN401
    return [item for item in pdf.objects if isinstance(item, dict)]


def _behind(pdf: Any, value: Any) -> Any:  # noqa: ANN401
    """What a reference leads to; None for a value that is none."""
    return pdf.objects[int(value.split()[0])] if isinstance(value, bytes) else None
