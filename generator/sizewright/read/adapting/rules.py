"""The faults of an adaptation: what can be wrong between it and its base before anything is worked, one table."""

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.departure import Called

MISSING_BASE = Rule(
    "missing-base",
    Level.ERROR,
    """An adaptation whose base is not there, cannot be read, or is an adaptation itself.

**Why it matters.** Only the departures stand in its own file; without the base there is no pattern to knit. An
adaptation of an adaptation would need the leave of both designers and could not be told to a reader in one list.

**Example.** `based_on: {pattern: undercomb-hat, …}`, where the file is called `undercombe-hat.md`.

**Instead.** Name a pattern of the same folder, without its ending, that is no adaptation:
`based_on: {pattern: undercombe-hat, …}`""",
)

UNREAD_DEPARTURE = Rule(
    "unread-departure",
    Level.ERROR,
    """A departure that cannot be read: of an unknown kind, without a reason, with nothing in it; or words outside.

**Why it matters.** What does not say where it belongs in the base is in nobody's instructions, and a reader who meets
a departure wants to know why it is made.

**Example.** `::: instead section Brim`; a departure without `because:`; a paragraph between two of them.

**Instead.** `::: instead of section Brim`, behind it a line `because: …`, then what is to stand there, then `:::`.""",
)

UNKNOWN_PLACE = Rule(
    "unknown-place",
    Level.ERROR,
    """A departure that names a section, row, quantity, paragraph or key its base does not have, or has more than once.

**Why it matters.** The base may have been changed since: what was to be replaced would stand in the pattern as ever.

**Example.** `::: without section Hem`, where the base has the sections Brim, Body and Crown.

**Instead.** The words of the base: `::: without section Brim`. A row is called by the words it begins with, and by the
heading it stands under: `::: instead of row Rnd 1 under Brim`""",
)

CLASHING_DEPARTURES = Rule(
    "clashing-departures",
    Level.ERROR,
    """Two departures at one place of the base.

**Why it matters.** Only one of them can be what a reader knits.

**Example.** `::: without section Brim`, and further down `::: instead of row Rnd 1 under Brim`

**Instead.** Keep one, and say all that is otherwise there in it.""",
)

CONTRARY_SIZES = Rule(
    "contrary-sizes",
    Level.ERROR,
    """An adaptation whose sizes are not those of its base, in their order.

**Why it matters.** Every bracket list of the base answers to its sizes; with others each number would go to a stranger.

**Example.** `sizes: {S: {…}, L: {…}}`, where the base has S, M and L.

**Instead.** Leave `sizes` out, or give the same sizes other measurements.""",
)

NO_MIRROR = Rule(
    "no-mirror",
    Level.ERROR,
    """Something in a section that is turned inside out which has no counterpart on the other face.

**Why it matters.** Knit and purl can be exchanged, and k2tog with p2tog; where the trade has no stitch for the other
face, a guess would be knitted by everybody. Cables, bobbles and centred decreases are such.

**Example.** `::: inside-out section Crown`, where a row says `s2kp`.

**Instead.** Write the rows of that section yourself: `::: instead of section Crown`""",
)

ADAPTING_RULES = tuple(value for value in dict(globals()).values() if isinstance(value, Rule))


def clash(one: Called, other: Called) -> Finding:
    """The finding where two departures are at one place; it stands at the second and names the first."""
    message = f"“{one.title}” and “{other.title}” in {other.span.line_near(one.span)} are at one place of the base."
    return CLASHING_DEPARTURES.at(one.span, message, "Keep one, and say in it all that is otherwise there.")
