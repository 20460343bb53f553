"""In: a number and its figures. Out: the words of the spoken language for how often, which one and how many."""

from fractions import Fraction

from sizewright.base.language import later, later_as, tr, tr_as

_TIMES = {1: later("once"), 2: later("twice")}
_ORDINALS = {1: later("{n}st"), 2: later("{n}nd"), 3: later("{n}rd")}
_SMALL = (
    later_as("number", "zero"),
    later_as("number", "one"),
    later_as("number", "two"),
    later_as("number", "three"),
    later_as("number", "four"),
    later_as("number", "five"),
    later_as("number", "six"),
    later_as("number", "seven"),
    later_as("number", "eight"),
    later_as("number", "nine"),
    later_as("number", "ten"),
    later_as("number", "eleven"),
    later_as("number", "twelve"),
)


def times(value: Fraction, figures: str) -> str:
    """How often: "once", "twice", "12 times"."""
    word = _TIMES.get(value.numerator) if value.denominator == 1 else None
    return tr(word) if word else tr("{n} times", n=figures)


def ordinal(value: Fraction, figures: str) -> str:
    """Which one, of a whole number: "1st", "12th"."""
    whole = int(value)
    usual = whole % 100 not in (11, 12, 13) and _ORDINALS.get(whole % 10)
    return tr(usual or "{n}th", n=figures)


def in_words(value: Fraction, figures: str) -> str:
    """How many: "four"; in figures from thirteen on."""
    return small_in_words()[int(value)] if value.denominator == 1 and 0 <= value < len(_SMALL) else figures


def small_in_words() -> tuple[str, ...]:
    """The numbers that are told in words, from zero on."""
    return tuple(tr_as("number", word) for word in _SMALL)
