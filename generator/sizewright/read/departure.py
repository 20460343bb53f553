"""The tree of an adaptation: what it is based on, by whose leave, and what it does otherwise, each with its place."""

from dataclasses import dataclass
from enum import StrEnum
from hashlib import sha256

from sizewright.base.place import Span
from sizewright.read.inserts import Words

_LENGTH = 8  # signs of a mark; two passages of one pattern that share it are one in four thousand million


class Verb(StrEnum):
    """What is done at a place of the base."""

    INSTEAD = "instead of"
    WITHOUT = "without"
    BEFORE = "before"
    AFTER = "after"
    INSIDE_OUT = "inside-out"
    WITH = "with"  # a key of the header that the base does not have

    @property
    def adds(self) -> bool:
        """Whether all of the base stays."""
        return self in (Verb.BEFORE, Verb.AFTER, Verb.WITH)


class Part(StrEnum):
    """What kind of place it is."""

    SECTION = "section"  # from its heading to the next of its level
    ROW = "row"  # a line of instructions, called by the words it begins with
    QUANTITY = "quantity"  # a line of a grade block
    TEXT = "text"  # a paragraph, called by the words it begins with
    KEY = "key"  # of the header


@dataclass(frozen=True, slots=True)
class BasedOn:
    """`based_on:` in a header: the name of the base, the leave its designer gave, and the credit to them."""

    span: Span
    pattern: Words
    permission: Words | None = None
    credit: Words | None = None


@dataclass(frozen=True, slots=True)
class Called:
    """One departure as it is written, before its place in the base is looked up.

    `first` and `end` are the lines of its file with what is to stand there, from 1, the end exclusive; the same where
    there is nothing. `was` is the mark of what stood in the base when it was made.
    """

    span: Span
    verb: Verb
    part: Part
    name: str
    under: str
    because: Words
    was: Words | None
    first: int = 0
    end: int = 0

    @property
    def title(self) -> str:
        """ "instead of row Rnd 1 under Brim"."""
        return f"{self.verb} {self.part} {self.name}" + (f" under {self.under}" if self.under else "")


@dataclass(frozen=True, slots=True)
class Departure:
    """What an adaptation does otherwise than its base; `number` counts from 1 as a reader meets them.

    `first` and `end` are its lines in the text that is put together, from 1, the end exclusive: where nothing is left
    they are the same. `stood` are the words of the base at its place, "" where it only adds, and `place` is where.
    `block` says that its lines stand among those of a block.
    """

    number: int
    called: Called
    first: int = 0
    end: int = 0
    stood: str = ""
    place: Span | None = None
    block: bool = False


@dataclass(frozen=True, slots=True)
class DepartureOpen:
    """What follows is not as in the base: the departure of this number."""

    span: Span
    number: int


@dataclass(frozen=True, slots=True)
class DepartureClose:
    """The end of such a stretch."""


def mark_of(text: str) -> str:
    """The mark of some words of a base, by which they are known again: of all but the space among them."""
    return sha256(" ".join(text.split()).encode()).hexdigest()[:_LENGTH]
