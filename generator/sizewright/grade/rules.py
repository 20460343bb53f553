"""The faults of grading: what can be wrong with a formula that can be read, one table."""

from sizewright.base.finding import Level, Rule

UNKNOWN_NAME = Rule(
    "unknown-name",
    Level.ERROR,
    """A name in a formula, or in braces in the text, that nothing defines.

**Why it matters.** The number that was meant cannot be printed, in any size.

**Example.** `cast_on = arund * stitch_gauge`

**Instead.** `cast_on = around * stitch_gauge`""",
)

UNKNOWN_FUNCTION = Rule(
    "unknown-function",
    Level.ERROR,
    """A function that the grading language does not have, or one that is given too many or too few values.

**Why it matters.** Nothing is guessed: what is not known is not worked out.

**Example.** `maximum(a, b)`; `half(a, b)`

**Instead.** `max(a, b)`; `half(a)`""",
)

REPEATED_NAME = Rule(
    "repeated-name",
    Level.ERROR,
    """A name that is defined twice, or that the header gives already.

**Why it matters.** Two definitions can disagree, and the reader of the source cannot see which one is printed.

**Example.** `cast_on = 72 st` in one block and `cast_on = 80 st` in another.

**Instead.** One definition, or a second name: `sleeve_cast_on`.""",
)

CIRCLE = Rule(
    "circle",
    Level.ERROR,
    """Names that are defined by one another.

**Why it matters.** No number can come out.

**Example.** `a = b + 2 st` and `b = a - 2 st`

**Instead.** Give one of them a value that does not rely on the other.""",
)

WRONG_UNITS = Rule(
    "wrong-units",
    Level.ERROR,
    """Values joined that measure different things: stitches, rows, lengths, masses, plain numbers mix only by a gauge.

**Why it matters.** Centimetres taken for stitches are the commonest way to print a number that cannot be knitted.

**Example.** `head + 4`; `chest, nearest multiple of 4`

**Instead.** `head + 4 cm`; `chest * stitch_gauge, nearest multiple of 4`""",
)

DIVISION_BY_ZERO = Rule(
    "division-by-zero",
    Level.ERROR,
    """A division whose divisor is nothing in some size.

**Why it matters.** There is no number to print for that size.

**Example.** `cast_on / repeats`, with no repeats in the smallest size.

**Instead.** Mend the divisor, or keep it above zero: `cast_on / max(1, repeats)`.""",
)

OVERSIZED_NUMBER = Rule(
    "oversized-number",
    Level.ERROR,
    """A value with far more digits than anything that is knitted.

**Why it matters.** It is a mistake in a formula, such as a product of counts, and would take longer and longer to work
out.

**Example.** `a = 99999999 * 99999999 * 99999999`, and so on

**Instead.** Divide by what was multiplied once too often.""",
)

BAD_STEP = Rule(
    "bad-step",
    Level.ERROR,
    """A rounding, or a promise to fit a multiple, whose step is not a whole number above zero.

**Why it matters.** No count fits a multiple of 2½ stitches.

**Example.** `cast_on = around * stitch_gauge, nearest multiple of 5/2`

**Instead.** `nearest multiple of 5`""",
)

MISSING_MEASUREMENT = Rule(
    "missing-measurement",
    Level.ERROR,
    """A body measurement that a formula uses and some size does not have.

**Why it matters.** Every number that relies on it would be missing for that size.

**Example.** `head` used in a formula, and `Adult: {hand: 20 cm}` among the sizes.

**Instead.** `Adult: {head: 56 cm, hand: 20 cm}`""",
)

IMPOSSIBLE_SHAPING = Rule(
    "impossible-shaping",
    Level.ERROR,
    """A plan of shaping that cannot be worked with what it is given: more changes than stitches or rows have room for.

**Why it matters.** The sentence a reader knits from would be nonsense in that size.

**Example.** `crown = decrease_evenly(20 st, 12)`: 12 decreases take 24 stitches.

**Instead.** Fewer changes, or two rows of them: `crown = decrease_evenly(20 st, 6)`""",
)

IMPOSSIBLE_OUTLINE = Rule(
    "impossible-outline",
    Level.ERROR,
    """A piece of a schematic that cannot be drawn with its measurements: one is nothing, or contradicts another.

**Why it matters.** A neck wider than the shoulders is a mistake in the numbers; the drawing is only where it shows.

**Example.** `front = front(width = 50 cm, length = 60 cm, neck = 55 cm, neck_depth = 8 cm)`

**Instead.** A neck that leaves something for the shoulders: `neck = 18 cm`""",
)

GRADE_RULES = tuple(value for value in dict(globals()).values() if isinstance(value, Rule))
