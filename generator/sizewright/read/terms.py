"""The abbreviations and stitches everybody knows, one table, and those a studio adds in `content/stitches.yaml`.

Those of another language are in its catalogue, `terms.yaml`.

Source: abbreviations that three and more published lists define alike (trade usage); meanings in our own words.
"""

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import yaml

from sizewright.base.language import CATALOGUES, as_known, language, speaking, tr
from sizewright.base.nearest import did_you_mean
from sizewright.read.notation.cables import crossing_of, crossing_words
from sizewright.read.project import Term
from sizewright.read.rules import REPEATED_KEY
from sizewright.read.trade_words import AMBIGUOUS
from sizewright.read.values import Keys, Values
from sizewright.read.yaml_tree import read_yaml


def _term(term: str, meaning: str, *spellings: str) -> Term:
    return Term(term, meaning, (term, *spellings))


# Cables over equal halves, two strands of unequal width, and two knit strands that cross over a purl ground.
_CABLES = (
    *(f"C{over}{way}" for over in (4, 6, 8, 10, 12) for way in "FB"),
    *(f"T{over}{way}" for over in (3, 4) for way in "FB"),
    *(f"{sizes} {way}" for sizes in ("1/1", "2/1", "2/2", "3/1", "3/3") for way in ("LC", "RC", "LPC", "RPC")),
)


def _cables() -> Iterator[Term]:
    for term in _CABLES:
        crossing = crossing_of(term)
        if crossing is not None:
            words = crossing_words(crossing)
            to_left, to_right = tr("cable to the left: {words}"), tr("cable to the right: {words}")
            yield _term(term, (to_left if crossing.to_left else to_right).format(words=words))


def _ambiguous() -> Iterator[Term]:
    """Names that mean one stitch in the US and another in the UK, told for both; a page tells its own."""
    for name in dict.fromkeys(name for names in AMBIGUOUS.values() for name in names):
        meanings = ((country, names[name]) for country, names in AMBIGUOUS.items() if name in names)
        told = " ".join(f"In {country.name} terms: {rows}" for country, rows in meanings)
        yield _term(name, told, f"{name.removesuffix('itch')}")


TERMS = (
    *_cables(),
    *_ambiguous(),
    _term("BO", "bind off: pass each stitch over the next and off the needle", "bind off", "cast off"),
    _term("BOR", "beginning of the round"),
    _term("CC", "contrasting colour"),
    _term("cn", "cable needle"),
    _term("CO", "cast on", "cast on"),
    _term("dec", "decrease"),
    _term("dpn", "double-pointed needle", "dpns"),
    _term(
        "ds",
        "double stitch: after the turn, slip 1 purlwise with the yarn in front, pull the yarn up and over the needle, "
        "so that two loops stand; they are worked together as one stitch",
        "dst",
        "mds",
        "German short row",
        "double st",
    ),
    _term("inc", "increase"),
    _term("k", "knit"),
    _term("k2tog", "knit 2 stitches together: 1 stitch fewer, leaning right"),
    _term("k3tog", "knit 3 stitches together: 2 stitches fewer"),
    _term("k4tog", "knit 4 stitches together: 3 stitches fewer"),
    _term("k5tog", "knit 5 stitches together: 4 stitches fewer"),
    _term("kfb", "knit into the front and the back of one stitch: 1 stitch more"),
    _term("m", "marker"),
    _term("m1", "make one: lift the strand between two stitches and knit it through the back loop: 1 stitch more"),
    _term("m1l", "make one leaning left: lift the strand from the front, knit it through the back loop: 1 stitch more"),
    _term("m1r", "make one leaning right: lift the strand from behind, knit it through the front loop: 1 stitch more"),
    _term("m1p", "make one purlwise: lift the strand between two stitches and purl it twisted: 1 stitch more"),
    _term(
        "m1lp",
        "make one purlwise leaning left: lift the strand from the front, purl it through the back: 1 stitch more",
        "m1pl",
    ),
    _term(
        "m1rp", "make one purlwise leaning right: lift the strand from behind, purl it in front: 1 stitch more", "m1pr"
    ),
    _term("MC", "main colour"),
    _term("p", "purl"),
    _term("p2tog", "purl 2 stitches together: 1 stitch fewer"),
    _term("p3tog", "purl 3 stitches together: 2 stitches fewer"),
    _term("p4tog", "purl 4 stitches together: 3 stitches fewer"),
    _term("p5tog", "purl 5 stitches together: 4 stitches fewer"),
    _term("pfb", "purl into the front and the back of one stitch: 1 stitch more"),
    _term("pm", "place marker"),
    _term("psso", "pass the slipped stitch over"),
    _term("rem", "remain, remaining"),
    _term("rep", "repeat"),
    _term("rnd", "round", "rnds"),
    _term("RS", "right side of the fabric"),
    _term("s2kp", "slip 2 together as if to knit, knit 1, pass the 2 slipped over: 2 stitches fewer, centred", "cdd"),
    _term("sk2p", "slip 1, knit 2 together, pass the slipped stitch over: 2 stitches fewer, leaning left", "sk2po"),
    _term("skp", "slip 1, knit 1, pass the slipped stitch over: 1 stitch fewer, leaning left", "skpo"),
    _term("sl", "slip a stitch, purlwise where nothing else is said"),
    _term("sm", "slip marker"),
    _term("ssk", "slip 2 one by one as if to knit, knit them together through the back: 1 stitch fewer, leaning left"),
    _term("ssp", "slip 2 one by one as if to knit, purl them together through the back: 1 stitch fewer"),
    _term("st", "stitch", "sts"),
    _term("tbl", "through the back loop"),
    _term("tog", "together"),
    _term("w&t", "wrap the next stitch and turn: slip it, bring the yarn to the other side, slip it back, turn"),
    _term("WS", "wrong side of the fabric"),
    _term("wyib", "with the yarn behind the work"),
    _term("wyif", "with the yarn in front of the work"),
    _term(
        "yo",
        "yarn over: 1 stitch more, with a hole; in UK patterns yfwd between two knit stitches, yfrn from a knit to a "
        "purl stitch, yrn between two purl stitches, yon from a purl to a knit stitch",
        "yfwd",
        "yrn",
        "yon",
        "yfrn",
    ),
)


def terms_in(code: str, listed: tuple[Term, ...] = ()) -> tuple[Term, ...]:
    """The known terms of a language: those of its catalogue, and the short words of cables, which are the same.

    `listed` are those of the studio's own catalogue, which win. A language without either has those of English.
    """
    path = next((path for name in as_known(code) if (path := CATALOGUES / name / "terms.yaml").is_file()), None)
    if path is None and not listed:
        return TERMS
    with speaking(language(code)):
        cables = tuple(_cables())
    own = {term.term for term in listed}
    usual = (*cables, *(_of_catalogue(path) if path is not None else ()))
    return (*(term for term in usual if term.term not in own), *listed)


@cache
def _of_catalogue(path: Path) -> tuple[Term, ...]:
    told = yaml.safe_load(path.read_text(encoding="utf-8"))
    return tuple(
        Term(one["term"], one["meaning"], (one["term"], *one.get("spellings", ())), exact=one.get("exact", False))
        for one in told
    )


def read_terms(values: Values) -> tuple[Term, ...]:
    """The known terms with those of a studio's file; its own meaning wins."""
    lines = values.lines
    node, findings = read_yaml(lines, 1, len(lines.lines) + 1)
    values.findings.extend(findings)
    own: dict[str, Term] = {}
    if node is not None:
        for keys in values.tables("stitches.yaml", node, "[{term: mb, meaning: make bobble}]"):
            term = _read_term(keys, values)
            if term is not None and term.term in own:
                message = f"“{term.term}” is explained twice."
                values.findings.append(REPEATED_KEY.at(keys.span, message, did_you_mean(term.term, ()) or "Keep one."))
            elif term is not None:
                own[term.term] = term
    known = tuple(term for term in TERMS if term.term not in own)
    return tuple(sorted((*known, *own.values()), key=lambda term: term.term.casefold()))


def _read_term(keys: Keys, values: Values) -> Term | None:
    term = keys.require("term", values.words, "mb")
    meaning = keys.require("meaning", values.words, "make bobble")
    spellings = keys.take("spellings", values.many) or ()
    technique = keys.take("technique", values.words)
    uses, makes = (keys.take(key, values.count) for key in ("uses", "makes"))
    keys.close()
    if term is None or meaning is None:
        return None
    words = (term.text, *(spelling.text for spelling in spellings))
    return Term(term.text, meaning.text, words, technique.text if technique else None, uses, makes, term.span)
