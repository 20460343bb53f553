"""In: words of instructions kept as typed. Out: what they say in the spoken language, where they are usual ones.

The table holds messages, which are also what is recognised: capitals and articles aside, a number stands where
`{n}` or `{length}` does, and a usual name of a part where `{part}` does. What is not found raises `NotTold`.
"""

import re
from collections.abc import Iterator, Mapping
from functools import cache
from string import Formatter

from sizewright.base.language import ENGLISH, later, spoken
from sizewright.base.spoken_units import as_typed
from sizewright.read.inserts import LinePiece, Told, Words, joined
from sizewright.read.notation.phrasing import NotTold, phrase
from sizewright.read.notation.usual_names import part_name

_PLANE = 0xF0000  # a number is one character of a private plane of Unicode while its words are looked at
_SIGN = "[\U000f0000-\U000ffffd]"
_NUMBER = rf"\d+(?:\.\d+)?|{_SIGN}"
_SLOTS = {
    "n": _NUMBER,
    "other": _NUMBER,
    "third": _NUMBER,
    "fourth": _NUMBER,
    "length": rf"(?:\d+ \d+/\d+|{_NUMBER})(?: ?(?:cm|mm|in|m|yd)\b)?",
    "part": r"[a-z][a-z' -]*?",
    "second": r"[a-z][a-z' -]*?",
}
_ARTICLES = re.compile(r"\b(?:the|an?|your)\b ?")
_SAME = (
    (re.compile(r"\bstitch(es)?\b"), lambda found: "sts" if found[1] else "st"),
    (re.compile(r"\brem\b"), lambda _: "remaining"),
    (re.compile(r"\bright side facing\b"), lambda _: "rs facing"),
    (re.compile(r"\bwrong side facing\b"), lambda _: "ws facing"),
    (re.compile(r"\binch(?:es)?\b"), lambda _: "in"),
    (re.compile(r"\bscrap yarn\b"), lambda _: "waste yarn"),
    (re.compile(r"\bonto\b"), lambda _: "on"),
    (re.compile(r"\bbreak\b"), lambda _: "cut"),
)

_NECK_EDGES = (
    later("across the back neck"),
    later("along the back neck"),
    later("across the centre front"),
    later("along the left neck edge"),
    later("along the right neck edge"),
    later("down the left neck edge"),
    later("up the right neck edge"),
    later("along the bound-off edge"),
    later("along the armhole edge"),
)
_WHERE = (
    later("on hold"),
    later("on a holder"),
    later("on a stitch holder"),
    later("on waste yarn"),
    later("on a spare needle"),
    later("across the gap"),
    later("over the gap"),
    later("at the gap"),
    later("in the gap"),
    later("from the gap"),
    later("at the underarm"),
    later("along the heel flap"),
    later("along the edge"),
    later("along the side edge"),
    later("along the left edge"),
    later("along the right edge"),
    later("along the neck edge"),
    *_NECK_EDGES,
    later("around the neck"),
    later("around the armhole"),
    later("along {n} rows of the edge"),
    later("over {n} rows"),
    later("using the backward-loop method"),
    later(", skip 1 row"),
    later(", skip {n} rows"),
)
_ASIDES = (
    later("with RS facing"),
    later("with WS facing"),
    later("picking up wraps as you come to them"),
    later("picking up wraps"),
    later("working wraps together with wrapped sts"),
    later("knitting wraps together with wrapped sts"),
    later("working double sts as one"),
    later("closing gaps"),
    later("slipping markers"),
    later("slipping markers as you come to them"),
    later("join second ball of yarn"),
    later("join new ball of yarn"),
    later("at marker"),
    later("ending with a RS row"),
    later("ending with a WS row"),
)
_SENTENCES = (
    later("Place marker and join to work in the round"),
    later("Place marker and join to work in the round, being careful not to twist"),
    later("Join to work in the round, being careful not to twist"),
    later("Place marker and join, being careful not to twist"),
    later("Place marker for beginning of round and join to work in the round"),
    later("Place BOR marker and join to work in the round"),
    later("Cast on {n} sts using the long-tail method"),
    later("Cast on {n} sts loosely"),
    later("Using the long-tail method, cast on {n} sts"),
    later("Cut yarn"),
    later("Cut yarn, leaving a tail of {length}"),
    later("Cut yarn, leaving a {length} tail"),
    later("Cut yarn leaving a {length} tail"),
    later("Cut yarn and pull tail through the last loop"),
    later("Cut yarn and fasten off"),
    later("Pull tail through the last loop"),
    later("Pull tail through the last st"),
    later("Pull yarn through the last st"),
    later("Pull tight"),
    later("Fasten off"),
    later("Weave in ends"),
    later("Weave in all ends"),
    later("Block"),
    later("Sew the shoulder seams"),
    later("Sew the side seams"),
    later("Sew the shoulder and side seams"),
    later("Turn"),
    later("Turn work"),
    later("Do not turn"),
    later("Do not join"),
    later("Do not cut yarn"),
    later("Join yarn"),
    later("Rejoin yarn"),
    later("Thread tail through the remaining {n} sts and pull tight"),
    later("Thread tail through the remaining sts and pull tight"),
    later("Cut yarn and thread tail through the remaining {n} sts"),
    later("Cut yarn, thread tail through the remaining {n} sts and pull tight"),
    later("Cut yarn and thread tail through the remaining {n} sts and pull tight"),
    later("Graft the first {n} sts to the last {other} sts"),
    later("Graft the {n} {part} sts to the {other} {second} sts"),
    later("Bind off all sts loosely"),
    later("Bind off all sts in pattern"),
    later("Bind off all sts loosely in pattern"),
    later("Bind off all sts in rib"),
    later("Bind off all sts loosely in rib"),
    later("Bind off all sts knitwise"),
    later("Bind off all sts purlwise"),
    later("Bind off all {n} sts"),
    later("Bind off remaining {n} sts"),
    later("Bind off remaining {n} sts loosely"),
    later("Bind off remaining {n} sts in pattern"),
    later("Bind off remaining {n} sts in rib"),
    later("Bind off remaining sts"),
    later("Bind off loosely"),
    later("Bind off in pattern"),
    later("Bind off loosely in pattern"),
    later("Place the {n} held sts on needles and join yarn"),
    later("Return the {n} held sts to the needles"),
    later("With RS facing, rejoin yarn to the {n} held sts"),
    later("With RS facing, rejoin yarn to the held sts"),
    later("Place {n} held sts back on needle"),
    later("Make the second {part} the same way"),
    later("Make {n} more {part} the same way"),
    later("Work back and forth in rows"),
    later("Multiple of {n} sts"),
    later("Multiple of {n} sts plus {other}"),
    later("Worked in the round"),
    later("Worked flat"),
    later("Worked in rows"),
    later("Note the rate: {n} sts for every {other} rows"),
    later(
        "Note the counts: {n} sts for each sleeve, {other} of them and as many of the body held at each underarm; "
        "{third} sts in the yoke, {fourth} at the neck"
    ),
)


def usual(words: Told) -> Told:
    """What usual words say. Raises `NotTold`, save in English, where they stand as they are typed."""
    if spoken().code == ENGLISH or not words:
        return words
    numbers = tuple(piece for piece in words if not isinstance(piece, str | Words))
    text = "".join(_flat(words))
    for message, found in _candidates(_plain(text)):
        parts = {name: _part(name, value, numbers) for name, value in found.groupdict().items()}
        return phrase(message, **parts)
    raise NotTold(text)


def _flat(words: Told) -> Iterator[str]:
    at = _PLANE
    for piece in words:
        if isinstance(piece, str | Words):
            yield piece if isinstance(piece, str) else piece.text
        else:
            yield chr(at)
            at += 1


def _plain(text: str) -> str:
    """One spelling of words that mean the same."""
    text = _ARTICLES.sub("", text.casefold())
    for pattern, told in _SAME:
        text = pattern.sub(told, text)
    return " ".join(text.split()).rstrip(".")


def _candidates(text: str) -> Iterator[tuple[str, re.Match[str]]]:
    for message, pattern in _patterns().items():
        found = pattern.fullmatch(text)
        if found is not None:
            yield message, found


@cache
def _patterns() -> Mapping[str, re.Pattern[str]]:
    return {message: _pattern(message) for message in (*_WHERE, *_ASIDES, *_SENTENCES)}


def _pattern(message: str) -> re.Pattern[str]:
    """The English of a message as what is looked for."""
    cut = tuple(Formatter().parse(message))
    plain = _plain("".join(f"{words}{{{name}}}" if name else words for words, name, _, _ in cut))
    source = re.sub(r"\\{(\w+)\\}", lambda found: f"(?P<{found[1]}>{_SLOTS[found[1]]})", re.escape(plain))
    return re.compile(source)


def _part(name: str, value: str, numbers: tuple[LinePiece, ...]) -> Told:
    """What fills a place of a message: a number as it is, a part by its name."""
    if name in ("part", "second"):
        return (part_name(value),)
    sign, behind = value[:1], value[1:]
    if ord(sign) >= _PLANE:
        return joined((numbers[ord(sign) - _PLANE], as_typed(behind)))
    return (as_typed(value),)
