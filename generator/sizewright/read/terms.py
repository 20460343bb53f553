"""The abbreviations and stitches everybody knows, one table, and those a studio adds in `content/stitches.yaml`.

Source: abbreviations that three and more published lists define alike (trade usage); meanings in our own words.
"""

from sizewright.base.nearest import did_you_mean
from sizewright.read.project import Term
from sizewright.read.rules import REPEATED_KEY
from sizewright.read.values import Keys, Values
from sizewright.read.yaml_tree import read_yaml


def _term(term: str, meaning: str, *spellings: str) -> Term:
    return Term(term, meaning, (term, *spellings))


TERMS = (
    _term("BO", "bind off", "bind off", "cast off"),
    _term("C4F", "cable over 4 stitches, 2 held in front: the cable crosses to the left"),
    _term("C4B", "cable over 4 stitches, 2 held behind: the cable crosses to the right"),
    _term("C6F", "cable over 6 stitches, 3 held in front: the cable crosses to the left"),
    _term("C6B", "cable over 6 stitches, 3 held behind: the cable crosses to the right"),
    _term("CC", "contrasting colour"),
    _term("cn", "cable needle"),
    _term("CO", "cast on", "cast on"),
    _term("dec", "decrease"),
    _term("dpn", "double-pointed needle", "dpns"),
    _term("inc", "increase"),
    _term("k", "knit"),
    _term("k2tog", "knit 2 stitches together: 1 stitch fewer, leaning right"),
    _term("k3tog", "knit 3 stitches together: 2 stitches fewer"),
    _term("kfb", "knit into the front and the back of one stitch: 1 stitch more"),
    _term("m", "marker"),
    _term("m1", "make one: lift the strand between two stitches and knit it through the back loop: 1 stitch more"),
    _term("m1l", "make one leaning left: lift the strand from the front, knit it through the back loop: 1 stitch more"),
    _term("m1r", "make one leaning right: lift the strand from behind, knit it through the front loop: 1 stitch more"),
    _term("m1p", "make one purlwise: lift the strand between two stitches and purl it twisted: 1 stitch more"),
    _term("MC", "main colour"),
    _term("p", "purl"),
    _term("p2tog", "purl 2 stitches together: 1 stitch fewer"),
    _term("p3tog", "purl 3 stitches together: 2 stitches fewer"),
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
    _term("w&t", "wrap the next stitch and turn"),
    _term("WS", "wrong side of the fabric"),
    _term("wyib", "with the yarn behind the work"),
    _term("wyif", "with the yarn in front of the work"),
    _term("yo", "yarn over: 1 stitch more, with a hole", "yfwd", "yrn"),
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
