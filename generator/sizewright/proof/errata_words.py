"""In: a correction. Out: it in the words of an errata page: "Size M: Dec Rnd reads k8, should read k9."."""

import re
from collections import Counter
from collections.abc import Sequence
from difflib import SequenceMatcher
from typing import assert_never

from sizewright.proof.errata import Change, Erratum
from sizewright.proof.line import Kind

_SHOWN = (Kind.FACT, Kind.DRAWN)
_ENDS = ".,;:"
_STITCH = re.compile(r"[*\[]*[A-Z][a-z]*\d")  # the first word of a row: "K8", "*K2"
_CAST_ON = re.compile(r"Cast on (?P<count>\d+ sts?)\.")
_FEW = 2  # places of a line that are told by themselves; where more differ the whole line is told
_AROUND = 2  # words of a sentence on either side of what differs


def in_words(erratum: Erratum) -> str:
    """The sentence."""
    who, what = _who(erratum), _what(erratum)
    return f"{who}: {what}" if who else what[:1].upper() + what[1:]


def _who(erratum: Erratum) -> str:
    names = [name for name in erratum.sizes if name]
    if not names or erratum.change in (Change.SIZE_ADDED, Change.SIZE_LEFT_OUT):
        return ""
    if erratum.every and len(names) > 1:
        return "All sizes"
    if len(names) == 1:
        return f"Size {names[0]}"
    return f"Sizes {', '.join(names[:-1])} and {names[-1]}"


def _what(erratum: Erratum) -> str:  # noqa: PLR0911 (one arm a kind)
    match erratum.change:
        case Change.SIZE_ADDED:
            return f"Size {erratum.name} is new."
        case Change.SIZE_LEFT_OUT:
            return f"Size {erratum.name} is no longer given."
        case Change.ADDED:
            if erratum.kind in _SHOWN:
                return f"add {erratum.name}: {_closed(erratum.new)}"
            where = f"after {_short(erratum.after)}, " if erratum.after else ""
            return f"{_under(erratum)}{where}add {_quoted(erratum, erratum.new)}"
        case Change.LEFT_OUT:
            if erratum.kind in _SHOWN:
                return f"leave out {erratum.name}: {_closed(erratum.old)}"
            return f"{_under(erratum)}leave out {_quoted(erratum, erratum.old)}"
        case Change.MOVED:
            where = f" after {_short(erratum.after)}" if erratum.after else " first"
            return f"{_under(erratum)}{_quoted(erratum, erratum.new)} comes{where}."
        case Change.CORRECTED:
            return _corrected(erratum)
    assert_never(erratum.change)


def _corrected(erratum: Erratum) -> str:
    old, new = erratum.old, erratum.new
    if erratum.kind in _SHOWN:
        return f"{erratum.name} is {new.rstrip('.')}, not {_closed(old)}"
    counts = _CAST_ON.fullmatch(old), _CAST_ON.fullmatch(new)
    if counts[0] and counts[1]:
        return f"{_under(erratum)}cast on {counts[1]['count']}, not {counts[0]['count']}."
    if erratum.kind is Kind.TEXT:
        was, is_now = _in_sentence(old, new)
        return f"{_under(erratum)}“{was}” should read “{is_now}”."
    parts = _parts(old, new)
    if erratum.name and parts:
        reads, should = (" and ".join(side) for side in zip(*parts, strict=True))
        return f"{_under(erratum)}{erratum.name} reads {reads}, should read {should}."
    lead = f"{erratum.name} reads " if erratum.name else ""
    should = ", should read" if erratum.name else " should read"
    return f"{_under(erratum)}{lead}“{old}”{should} “{new}”"


def _under(erratum: Erratum) -> str:
    return f"under “{erratum.section}”, " if erratum.section and not erratum.plain else ""


def _quoted(erratum: Erratum, words: str) -> str:
    return f"“{erratum.name}: {words}”" if erratum.name else f"“{words}”"


def _short(words: str) -> str:
    return words if len(words) < 40 and not words.endswith(".") else f"“{words}”"


def _closed(words: str) -> str:
    return words if words.endswith(".") else f"{words}."


def _regions(old: Sequence[str], new: Sequence[str]) -> list[tuple[int, int, int, int]]:
    codes = SequenceMatcher(None, old, new, autojunk=False).get_opcodes()
    return [(a, b, c, d) for kind, a, b, c, d in codes if kind != "equal"]


def _parts(old: str, new: str) -> list[tuple[str, str]]:
    """What differs by itself, "k8" and "k9"; nothing where that would not tell which of several is meant."""
    before, after = old.split(), new.split()
    found = []
    for a, b, c, d in _regions(before, after):
        if not (a < b and c < d):
            return []
        start, end = _with_unit(before, a, b)
        was = " ".join(before[start:end])
        if _times(was, old) != 1:
            return []
        shift = (a - start, end - b)
        found.append((was, " ".join(after[c - shift[0] : d + shift[1]])))
    if len(found) > _FEW:
        return []
    return [(_plain(was), _plain(is_now)) for was, is_now in found]


def _with_unit(words: Sequence[str], first: int, end: int) -> tuple[int, int]:
    """A bare number goes with the word behind it, "(64 sts)", "11 times"; and "yo" with the times behind it."""
    last = words[end - 1].strip("(")
    bare = last.isdigit() or last.replace(".", "").replace("/", "").isdigit()
    return first, end + 1 if bare and end < len(words) else end


def _times(part: str, whole: str) -> int:
    words, sought = [word.strip(_ENDS + "*[]").casefold() for word in whole.split()], part.split()
    plain = [word.strip(_ENDS + "*[]").casefold() for word in sought]
    runs = Counter(tuple(words[at : at + len(plain)]) for at in range(len(words)))
    return runs[tuple(plain)]


def _plain(part: str) -> str:
    """Without the marks around it, and small where only its place gave it a capital."""
    if _STITCH.match(part):
        part = part.lower() if part.isascii() and " " not in part else part
    part = part.rstrip(_ENDS)
    if part.count("[") != part.count("]"):
        part = part.strip("[]")
    if part.count("(") != part.count(")"):
        part = part.strip("()")
    return part.lstrip("*")


def _in_sentence(old: str, new: str) -> tuple[str, str]:
    """What differs in a sentence, with some words around; "…" stands for the rest."""
    before, after = old.split(), new.split()
    regions = _regions(before, after)
    if not regions:
        return old, new
    first = max(0, min(regions[0][0], regions[0][2]) - _AROUND)
    behind = max(0, min(len(before) - regions[-1][1], len(after) - regions[-1][3]) - _AROUND)
    told = []
    for words in (before, after):
        end = len(words) - behind
        told.append(f"{'…' if first else ''}{' '.join(words[first:end]).rstrip('.')}{'…' if behind else ''}")
    return told[0], told[1]
