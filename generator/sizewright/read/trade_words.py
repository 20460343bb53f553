"""In: words of the US or of the UK. Out: the same in the terms of both; one table of the trade's pairs.

Source of a pair: "common practice" and "from memory" say that no published list stands behind it. What is the same on
both sides of the water (knit, purl, k2tog, garter stitch, the rest of the abbreviations) stands in no pair.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property, lru_cache


class Country(StrEnum):
    """Whose terms a text is in."""

    US = "us"
    UK = "uk"

    @property
    def other(self) -> "Country":
        """The other side of the water."""
        return Country.UK if self is Country.US else Country.US


@dataclass(frozen=True)
class Pair:
    """One thing: each form of its name in the US with that in the UK, and the other way about.

    A form that stands for itself stays. `everyday` are forms that prove nothing of the country, as they have another
    meaning too, or are understood in both.
    """

    us: Mapping[str, str]
    uk: Mapping[str, str]
    source: str
    everyday: tuple[str, ...] = ()

    @cached_property
    def proving(self) -> Mapping[Country, re.Pattern[str] | None]:
        """What shows that a text is in the terms of a country; None where nothing does."""
        sides = {Country.US: self.us, Country.UK: self.uk}
        sure = {country: [form for form in side if form not in self.everyday] for country, side in sides.items()}
        return {country: _any_of(forms) if forms else None for country, forms in sure.items()}

    @cached_property
    def explained(self) -> re.Pattern[str]:
        """The one word in brackets or behind a stroke after the other: "gauge (tension)", "cast off or bind off"."""
        us, uk = (_alternatives(side) for side in (self.us, self.uk))
        joint = r"[^\S\n]*(?:[(/=]|\bor\b)[^\S\n]*(?:U[SK]:?[^\S\n]*)?"
        return re.compile(rf"\b(?:(?:{us}){joint}(?:{uk})|(?:{uk}){joint}(?:{us}))\b", re.IGNORECASE)


def _alternatives(forms: Iterable[str]) -> str:
    """The longest first; the words of a form may be parted by a hyphen or a new line, capitals stay capitals."""
    return "|".join(
        f"(?-i:{form})" if form.isupper() else r"[-\s]+".join(map(re.escape, form.split()))
        for form in sorted(forms, key=len, reverse=True)
    )


def _any_of(forms: Iterable[str]) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{_alternatives(forms)})\b", re.IGNORECASE)


def _same(*forms: str) -> dict[str, str]:
    return {form: form for form in forms}


_WERE = ("is", "are", "was", "were", "been", "be")
_GO_ON = ("work", "works", "worked", "working", "continue", "continuing")
_EVEN = {f"{verb} even": f"{verb} straight" for verb in _GO_ON}
_STRAIGHT = {straight: even for even, straight in _EVEN.items()}

# A name that means one stitch here and another there; a page tells it by its rows.
SEED_AND_MOSS = Pair(
    {"seed stitch": "moss stitch", "seed st": "moss st"},
    {"moss stitch": "seed stitch", "moss st": "seed st"},
    "stitchandstory.com (British moss stitch is US seed stitch)",
)
_DOUBLE_MOSS = {"moss stitch": "double moss stitch", "moss st": "double moss st"}
_FROM_DOUBLE = {double: moss for moss, double in _DOUBLE_MOSS.items()}

PAIRS = (
    Pair(
        {"bind off": "cast off", "binding off": "casting off", "bound off": "cast off", "BO": "cast off"},
        {"cast off": "bind off", "casting off": "binding off"} | {f"{be} cast off": f"{be} bound off" for be in _WERE},
        "common practice, no source",
    ),
    Pair(
        {"gauge swatch": "tension square", "gauge swatches": "tension squares", "gauge": "tension"}
        | _same("needle gauge"),
        {"tension square": "gauge swatch", "tension squares": "gauge swatches", "tension swatch": "gauge swatch"}
        | {f"{verb} tension": f"{verb} gauge" for verb in ("check", "check your", "correct", "stated", "to")}
        | {"tension": "gauge", **_same("even tension", "yarn tension")},
        "common practice, no source",
        ("tension", "even tension", "yarn tension", "needle gauge"),
    ),
    Pair(
        {"stockinette stitch": "stocking stitch", "stockinette st": "stocking st", "stockinette": "stocking stitch"},
        {"stocking stitch": "stockinette stitch", "stocking st": "stockinette st"},
        "common practice, no source; “St st” is both",
    ),
    SEED_AND_MOSS,
    Pair(
        _DOUBLE_MOSS | _same("double moss stitch", "double moss st", "Irish moss stitch"),
        _FROM_DOUBLE | _same("Irish moss stitch"),
        "US moss stitch: knittingmagic.biz; what the UK calls it: from memory",
        (*_DOUBLE_MOSS, *_FROM_DOUBLE, "Irish moss stitch"),
    ),
    Pair(
        _same("yo", "yarn over"),
        dict.fromkeys(("yfwd", "yrn", "yon", "yfrn"), "yo"),
        "yfwd: a UK pattern scanned at zanotowane.pl; the others common practice, no source",
    ),
    Pair(_EVEN, _STRAIGHT, "from memory", (*_EVEN, *_STRAIGHT)),
    Pair(
        {"skp": "skpo", "sk2p": "sk2po"},
        {"skpo": "skp", "sk2po": "sk2p"},
        "sk2po: a UK pattern scanned at zanotowane.pl; skpo: from memory",
        ("skp", "sk2p", "skpo", "sk2po"),
    ),
    Pair(
        {"bulky weight": "chunky weight", "worsted weight": "aran weight", "fingering weight": "4-ply weight"},
        {"chunky weight": "bulky weight", "aran weight": "worsted weight", "4-ply weight": "fingering weight"},
        "the yarn standard counts bulky with chunky and worsted with aran (222handspun.com); 4-ply: from memory",
        ("bulky weight", "worsted weight", "fingering weight", "chunky weight", "aran weight", "4-ply weight"),
    ),
)

_SEED_ROWS = (
    "Row 1: *k1, p1; rep from * (k1 where one stitch is left). Each further row: purl what looks knit and knit what "
    "looks purled."
)
_MOSS_ROWS = (
    "Row 1: *k1, p1; rep from * (k1 where one stitch is left). Row 2: knit the knit stitches and purl the purl "
    "stitches, as they look. Row 3: purl what looks knit and knit what looks purled. Row 4: as Row 2. Repeat Rows 1 "
    "to 4."
)
# What the ambiguous names are, by the country of the text they stand in. The rows: stitchandstory.com and
# knittingmagic.biz (US moss stitch, there on an odd number of stitches), restated.
AMBIGUOUS: Mapping[Country, Mapping[str, str]] = {
    Country.US: {"seed stitch": _SEED_ROWS, "moss stitch": _MOSS_ROWS},
    Country.UK: {"moss stitch": _SEED_ROWS, "double moss stitch": _MOSS_ROWS},
}

# A name in quotation marks is what somebody called a thing, and stays.
_QUOTED = r"“[^“”\n]*”"


def country_of(text: str) -> Country | None:
    """Whose terms a text is written in; None where nothing shows it, or words of both stand there."""
    pairs = [pair for pair in PAIRS if pair is not SEED_AND_MOSS]
    found = {country for pair in pairs for country in Country if _proves(pair, country, text)}
    return found.pop() if len(found) == 1 else None


def _proves(pair: Pair, country: Country, text: str) -> bool:
    words = pair.proving[country]
    return words is not None and any(_other(found.group(), country) != found.group() for found in words.finditer(text))


def told_twice(text: str, country: Country, names: tuple[str, ...] = ()) -> Iterator[tuple[str, str]]:
    """A text in stretches, each as it stands and in the terms of the other country; most are the same in both.

    `names` are what the author has called things: they stay wherever they stand.
    """
    at = 0
    if not _may_differ(text, country):
        if text:
            yield text, text
        return
    for found in _searched(country, names).finditer(text):
        if found["word"] is None:
            continue
        if found.start() > at:
            yield text[at : found.start()], text[at : found.start()]
        begins = found.group() != text and _begins(text, found.start())
        yield found.group(), _other(found.group(), country, begins=begins)
        at = found.end()
    if at < len(text):
        yield text[at:], text[at:]


def in_other_terms(text: str, country: Country, names: tuple[str, ...] = ()) -> str:
    """A text in the terms of the other country."""
    return "".join(other for _, other in told_twice(text, country, names))


def _may_differ(text: str, country: Country) -> bool:
    """Whether all words of a form that changes stand in a text: quickly said, as in most texts none does."""
    folded = text.casefold()
    return any(all(word in folded for word in words) for words in _telling(country))


@lru_cache(maxsize=2)
def _telling(country: Country) -> tuple[tuple[str, ...], ...]:
    changing = {tuple(_key(form).split()) for form, other in _forms(country).items() if form != other}
    return tuple(sorted(one for one in changing if not any(set(less) < set(one) for less in changing)))


@lru_cache(maxsize=64)
def _searched(country: Country, names: tuple[str, ...]) -> re.Pattern[str]:
    """What stays, then what has another word in the other country."""
    stays = [_QUOTED, *(rf"\b{re.escape(name)}\b" for name in sorted(names, key=len, reverse=True) if name)]
    stays += [pair.explained.pattern for pair in PAIRS]
    return re.compile(rf"{'|'.join(stays)}|\b(?P<word>{_alternatives(_forms(country))})\b", re.IGNORECASE)


@lru_cache(maxsize=2)
def _forms(country: Country) -> Mapping[str, str]:
    """Every form of a country, with that of the other."""
    sides = (pair.us if country is Country.US else pair.uk for pair in PAIRS)
    return {form: other for side in sides for form, other in side.items()}


def _other(word: str, country: Country, *, begins: bool = False) -> str:
    """The word of the other country, with the capital and the hyphen of this one."""
    plain = " ".join(re.split(r"[-\s]+", word))
    other = _by_key(country)[_key(plain)]
    if "-" in word and other.count(" ") == plain.count(" ") == 1:
        other = other.replace(" ", "-")
    if _key(plain) == _key(other):
        return word
    abbreviated = plain.isupper()
    return other[:1].upper() + other[1:] if begins or (not abbreviated and word[:1].isupper()) else other


@lru_cache(maxsize=2)
def _by_key(country: Country) -> Mapping[str, str]:
    return {_key(form): other for form, other in _forms(country).items()}


def _key(form: str) -> str:
    """One spelling of a form: a hyphen and a new line are as good as a space."""
    return " ".join(re.split(r"[-\s]+", form)).casefold()


def _begins(text: str, at: int) -> bool:
    """Whether an abbreviation in capitals stands where a sentence begins, so that a word needs its capital there."""
    before = text[:at].rstrip()
    return text[at : at + 1].isupper() and (not before or before[-1] in ".:!?")
