"""In: nothing. Out: rows as structures of the tests' own, and the words a pattern would print for them.

A count is a tuple of one number a size, or of a single one for all sizes; it is printed as "8" or "8 (9, 10)".
"""

from dataclasses import dataclass

Count = tuple[int, ...]


def number(count: Count, size: int) -> int:
    """The number of a count in one size."""
    return count[size] if len(count) > 1 else count[0]


def typed(count: Count) -> str:
    """A count as a pattern prints it."""
    if len(set(count)) == 1:
        return str(count[0])
    return f"{count[0]} ({', '.join(map(str, count[1:]))})"


@dataclass(frozen=True, slots=True)
class Some:
    """A stitch so many times: "k3", "k3 A"."""

    name: str
    count: Count = (1,)
    yarn: str = ""


@dataclass(frozen=True, slots=True)
class Place:
    """The end of the row, or the next marker, or so many stitches before either."""

    before: Count = (0,)
    marker: bool = False


@dataclass(frozen=True, slots=True)
class Upto:
    """A stitch again and again up to a place: "k to last 3 sts"."""

    name: str
    place: Place


@dataclass(frozen=True, slots=True)
class Again:
    """A stretch so many times in all, or up to a place.

    `ending` stands behind the repeats ("end p3"), or, where `instead`, in place of the last parts of the last one.
    """

    body: tuple["Part", ...]
    times: Count | None = None
    place: Place = Place()
    ending: tuple["Part", ...] = ()
    instead: bool = False
    spelling: int = 0


@dataclass(frozen=True, slots=True)
class Marking:
    """ "pm", "sm" or "rm"."""

    word: str


@dataclass(frozen=True, slots=True)
class Yarn:
    """ "with A": from here on."""

    name: str


@dataclass(frozen=True, slots=True)
class Off:
    """ "bind off 3 sts"."""

    count: Count


@dataclass(frozen=True, slots=True)
class On:
    """ "cast on 3 sts", "pick up and knit 3 sts"."""

    count: Count
    word: str


@dataclass(frozen=True, slots=True)
class Over:
    """ "psso": slipped stitches are passed over the one worked behind them."""

    slipped: int


@dataclass(frozen=True, slots=True)
class Below:
    """The rest of the row as it appears, or the opposite."""

    opposite: bool


Part = Some | Upto | Again | Marking | Yarn | Off | On | Over | Below


@dataclass(frozen=True, slots=True)
class WrittenRow:
    """One row, worked `times` times ("Rows 3 to 5: ..."), with what it says of the side and the count behind it.

    `promise` is ("total" | "fewer" | "more", count).
    """

    first: int
    parts: tuple[Part, ...]
    times: Count = (1,)
    side: str = ""
    promise: tuple[str, Count] | None = None


@dataclass(frozen=True, slots=True)
class WrittenAgain:
    """The last so many written rows so many times more."""

    back: int
    times: Count
    spelling: int = 0


@dataclass(frozen=True, slots=True)
class Written:
    """A piece: stitches cast on, then rows."""

    cast_on: Count
    in_the_round: bool
    rows: tuple[WrittenRow | WrittenAgain, ...]

    @property
    def lines(self) -> tuple[str, ...]:
        """The lines of its instructions: one for the cast-on, one a row."""
        join = " Place marker and join to work in the round." if self.in_the_round else ""
        return (f"Cast on {typed(self.cast_on)} sts.{join}", *(row_words(row, self.in_the_round) for row in self.rows))


def row_words(row: WrittenRow | WrittenAgain, in_the_round: bool) -> str:  # noqa: FBT001 -- what kind of rows they are
    """The line of one row."""
    name = "Rnd" if in_the_round else "Row"
    if isinstance(row, WrittenAgain):
        rows = f"last {row.back} {name.lower()}s" if row.back > 1 else f"last {name.lower()}"
        return f"Rep {rows} {typed(row.times)} {('more times', 'times', 'times more')[row.spelling]}."
    side = f" ({row.side})" if row.side else ""
    last = tuple(row.first + times - 1 for times in row.times)
    label = f"{name} {row.first}" if last == (row.first,) else f"{name}s {row.first} to {typed(last)}"
    words = ", ".join(part_words(part) for part in row.parts)
    return f"{label}{side}: {words[0].upper()}{words[1:]}.{_promise_words(row.promise)}"


def _promise_words(promise: tuple[str, Count] | None) -> str:
    if promise is None:
        return ""
    kind, count = promise
    said = {"total": "sts", "fewer": "sts decreased", "more": "sts increased"}[kind]
    return f" ({typed(count)} {said})"


def part_words(part: Part) -> str:  # noqa: PLR0911 -- one arm a kind of part
    """The words of one part of a row."""
    match part:
        case Some():
            return _some_words(part)
        case Upto(name, place):
            return f"{name} {_place_words(place, 0)}"
        case Again():
            return _again_words(part)
        case Marking(word):
            return word
        case Yarn(name):
            return f"with {name}"
        case Off(count):
            return f"bind off {typed(count)} sts"
        case On(count, word):
            return f"{word} {typed(count)} sts"
        case Over(slipped):
            return "psso" if slipped == 1 else "p2sso"
        case Below(opposite):
            return "purl the knits and knit the purls" if opposite else "knit the knits and purl the purls"


# Stitches whose number stands in the name: a count is told by "3 times" behind it.
NAMED = ("2tog", "3tog", "ss", "sk", "s2", "kfb", "pfb", "C4", "C6", "m1", "2/2", "RT", "LT")


def _some_words(part: Some) -> str:
    yarn = f" {part.yarn}" if part.yarn else ""
    if part.name == "(k1, p1, k1)":
        return "(k1, p1, k1) in next st"
    if any(mark in part.name for mark in NAMED):
        return f"{part.name}{yarn}" if part.count == (1,) else f"[{part.name}{yarn}] {typed(part.count)} times"
    if part.name.endswith(" tbl"):
        return f"{part.name.split()[0]}{typed(part.count)} tbl{yarn}"
    if part.name == "yo":
        return f"yo{yarn}" if part.count == (1,) else f"[yo{yarn}] {typed(part.count)} times"
    if part.name == "sl":
        return f"sl {typed(part.count)}"
    return f"{part.name}{typed(part.count)}{yarn}"


def _place_words(place: Place, spelling: int) -> str:
    if place.marker:
        return f"to {typed(place.before)} sts before m" if place.before != (0,) else "to m"
    if place.before == (0,):
        return ("to end", "around", "to end", "across")[spelling % 4]
    return f"to last {typed(place.before)} sts"


def _again_words(part: Again) -> str:
    words = ", ".join(part_words(one) for one in part.body)
    bracket = part.spelling % 2
    if part.times is not None:
        if bracket:
            return f"[{words}] {typed(part.times)} times"
        return f"*{words}; rep from * {typed(tuple(times - 1 for times in part.times))} more times"
    place = _place_words(part.place, part.spelling // 2)
    if part.ending:
        last = ", ".join(part_words(one) for one in part.ending)
        return f"*{words}; rep from * {place}, {'ending last rep' if part.instead else 'end'} {last}"
    if bracket:
        return f"[{words}] {place}" if part.spelling % 4 == 1 else f"*{words}* {place}"
    return f"*{words}; rep from * {place}"
