"""In: a needle in the words of a header. Out: the same words, with the sizes named in them, each with its place.

"4 mm circular needle", "US 6 (4 mm)", "UK 8": a size may be named in several systems at once. Only what is surely one
size is taken for one: "3.5 to 4 mm" stays words, and so does everything where a hook is named, whose sizes are others.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from sizewright.base.needle_sizes import SYSTEMS, labelled
from sizewright.base.place import Span
from sizewright.base.printing import with_point
from sizewright.read.inserts import Words
from sizewright.read.typed_numbers import exact

MM = "mm"


@dataclass(frozen=True, slots=True)
class Label:
    """A size in one system: "mm", "US" or "UK", or "" where the words do not say which ("size 8")."""

    system: str
    number: str

    @property
    def needles(self) -> tuple[Fraction, ...]:
        """The needles, in mm, that it may mean; in no system told, those of each."""
        match self.system:
            case "mm":
                return (Fraction(self.number),)
            case "":
                own = () if self.number.startswith("0") else (Fraction(self.number),)
                others = (needle for system in SYSTEMS for needle in labelled(system, self.number))
                return tuple(dict.fromkeys((*own, *others)))
        return labelled(self.system, self.number)


@dataclass(frozen=True, slots=True)
class NamedSize:
    """One size among the words, from `start` to `end` of the text, and how it is named there.

    `whole` is whether these words hold the size and nothing else, so that others may stand in their place.
    """

    start: int
    end: int
    labels: tuple[Label, ...]
    whole: bool

    @property
    def needles(self) -> tuple[Fraction, ...]:
        """The needles, in mm, that all its labels may mean: one where the size is sure, none where they disagree."""
        first, *others = (label.needles for label in self.labels)
        return tuple(needle for needle in first if all(needle in other for other in others))


@dataclass(frozen=True, slots=True)
class Needle:
    """A needle, as it was typed, and the sizes named in it."""

    span: Span
    text: str
    sizes: tuple[NamedSize, ...]

    @property
    def sure(self) -> Fraction | None:
        """Its one size in mm; None where it names none, several or one that is not sure."""
        found = self.sizes[0].needles if len(self.sizes) == 1 else ()
        return found[0] if len(found) == 1 else None


_NUMBER = r"\d{1,3}(?:\.\d{1,3}|\s[1-9]/[1-9]|[½¼¾])?"
_SIZE = re.compile(
    rf"(?<![\w.,/½¼¾])(?P<mm>{_NUMBER})\s?(?:mm|millimet(?:re|er)s?)\b"
    rf"|\b(?P<system>U\.?[SK]\.?)\s?(?:(?i:size|no\.?)\s?|#)?(?P<label>{_NUMBER})(?![\w.]|\s?mm\b)"
    rf"|(?:(?i:\bsize|\bno\.)\s?|(?<!\w)#)(?P<bare>{_NUMBER})(?![\w.]|\s?mm\b)"
)
_ALONE = re.compile(_NUMBER)
_JOINT = re.compile(r"\s*[(/,=]?\s*")  # between two names of one size: "US 6 (4 mm)", "4 mm / US 6"
_FROM = re.compile(r"\d[½¼¾]?\s*(?:[-–—/,]|to|or|and)\s*$")  # before the last of several: "3.5 to 4 mm"
_TO = re.compile(r"\s*(?:[-–—]|to|or|and)\s*\d")  # behind the first of several: "US 6 or 7"


def needle(words: Words) -> Needle:
    """A needle with the sizes named in it."""
    text = words.text
    if "hook" in text.casefold():
        return Needle(words.span, text, ())
    if _ALONE.fullmatch(text):
        return Needle(words.span, text, (NamedSize(0, len(text), (Label("", _number(text)),), whole=True),))
    return Needle(words.span, text, tuple(_named(text)))


def _named(text: str) -> Iterator[NamedSize]:
    """The sizes of a text: neighbours in different systems name the same one."""
    found: list[re.Match[str]] = []
    for match in _SIZE.finditer(text):
        if found and not _together(text, found, match):
            yield from _of(text, found)
            found = []
        found.append(match)
    if found:
        yield from _of(text, found)


def _together(text: str, found: list[re.Match[str]], match: re.Match[str]) -> bool:
    joint = text[found[-1].end() : match.start()]
    return bool(_JOINT.fullmatch(joint)) and _label(match).system not in {_label(one).system for one in found}


def _of(text: str, found: list[re.Match[str]]) -> Iterator[NamedSize]:
    start, end = found[0].start(), found[-1].end()
    if _FROM.search(text, 0, start) or _one_of_several(text, found[-1]):
        return
    opened = text[start:end].count("(")
    closed = text.startswith(")", end)
    end += 1 if opened and closed else 0
    yield NamedSize(start, end, tuple(map(_label, found)), whole=opened <= closed)


def _one_of_several(text: str, last: re.Match[str]) -> bool:
    """Whether a bare number behind a label goes on with it: "US 6 or 7"; "4 mm or 2 circular needles" does not."""
    behind = _TO.match(text, last.end())
    return last["mm"] is None and behind is not None and not _SIZE.match(text, behind.end() - 1)


def _label(match: re.Match[str]) -> Label:
    if match["mm"]:
        return Label(MM, _number(match["mm"]))
    if match["label"]:
        return Label(match["system"].replace(".", ""), _number(match["label"]))
    return Label("", _number(match["bare"]))


def _number(text: str) -> str:
    """One spelling for each number: "10 1/2" is "10.5"; "00" is a label of its own."""
    return text if text.startswith("0") and text.isdigit() else with_point(exact(text), 3)
