"""In: `content/catalogues/CODE/terms.yaml` of a studio. Out: its abbreviations in each further language of the site."""

from collections.abc import Iterable, Iterator, Mapping

from sizewright.base.finding import Finding
from sizewright.base.language import as_known
from sizewright.base.place import Lines
from sizewright.read.rules import REPEATED_KEY
from sizewright.read.term import Term
from sizewright.read.translating.rules import STRAY_TRANSLATION
from sizewright.read.values import Keys, Values
from sizewright.read.yaml_tree import read_yaml

LIST = "terms.yaml"
_EXAMPLE = "[{term: 2 m ens end, meaning: tricoter 2 mailles ensemble, spellings: [k2tog]}]"
_EXACT = ("yes", "no")


def read_lists(
    files: Iterable[tuple[str, Lines]], languages: tuple[str, ...]
) -> tuple[Mapping[str, tuple[Term, ...]], tuple[Finding, ...]]:
    """The terms by the language of a site they are for; `files` are the lists by the name of their folder.

    A list in "de" is one for "de-AT" too, where that has none of its own for a term.
    """
    found: list[Finding] = []
    lists: dict[str, tuple[Term, ...]] = {}
    for code, lines in files:
        values = Values(lines)
        lists[code] = tuple(_read(values))
        found.extend(values.findings)
        if not any(code in as_known(into) for into in languages[1:]):
            found.append(_stray(code, lines, languages))
    told = {into: _joined(lists.get(code, ()) for code in as_known(into)) for into in languages[1:]}
    return {into: terms for into, terms in told.items() if terms}, tuple(found)


def _joined(several: Iterable[tuple[Term, ...]]) -> tuple[Term, ...]:
    """The terms of the wider language and of its own, which win."""
    return tuple({term.term: term for terms in several for term in terms}.values())


def _stray(code: str, lines: Lines, languages: tuple[str, ...]) -> Finding:
    if code in as_known(languages[0]):
        message = f"“{code}” is the language of the sources, whose abbreviations stand in content/stitches.yaml."
        return STRAY_TRANSLATION.at(lines.whole_line(1), message, "Put them there, and take this file away.")
    mend = f"Add it to content/site.yaml: “languages: [{', '.join((*languages, code))}]”."
    return STRAY_TRANSLATION.at(lines.whole_line(1), f"The site is not published in “{code}”.", mend)


def _read(values: Values) -> Iterator[Term]:
    node, findings = read_yaml(values.lines, 1, len(values.lines.lines) + 1)
    values.findings.extend(findings)
    known: set[str] = set()
    for keys in values.tables(LIST, node, _EXAMPLE) if node is not None else ():
        term = _term(keys, values)
        if term is not None and term.term in known:
            values.findings.append(REPEATED_KEY.at(keys.span, f"“{term.term}” is explained twice.", "Keep one."))
        elif term is not None:
            known.add(term.term)
            yield term


def _term(keys: Keys, values: Values) -> Term | None:
    term = keys.require("term", values.words, "2 m ens end")
    meaning = keys.require("meaning", values.words, "tricoter 2 mailles ensemble")
    spellings = keys.take("spellings", values.many) or ()
    exact = keys.take("exact", lambda key, node: values.one_of(key, node, _EXACT))
    keys.close()
    if term is None or meaning is None:
        return None
    words = (term.text, *(spelling.text for spelling in spellings))
    return Term(term.text, meaning.text, words, exact=exact is not None and exact.text == "yes")
