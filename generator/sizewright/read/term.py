"""A word of the trade and what it means."""

from dataclasses import dataclass, field

from sizewright.base.place import Span


@dataclass(frozen=True, slots=True)
class Term:
    """An abbreviation or stitch and what it means; `spellings` are all the words a pattern may use for it.

    One that is `exact` is found with the capitals of its spellings alone: "MM" is a marker, "mm" a length.
    """

    term: str
    meaning: str
    spellings: tuple[str, ...]
    technique: str | None = None
    uses: int | None = None  # stitches a studio's own term takes from the needle, where it is a stitch
    makes: int | None = None  # and those it leaves there
    span: Span | None = field(default=None, compare=False)  # where a studio explains it
    exact: bool = False
