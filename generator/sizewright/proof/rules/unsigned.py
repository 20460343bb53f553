"""A pattern that nobody has signed off as it is, in a studio that publishes only what is.

**Why it matters.** The studio asked for it: `publish_only: signed-off` in `content/site.yaml`. What a technical editor
has not seen would otherwise be in print by a slip.

**Example.** A pattern without its file `NAME.sign-off`, or with one that says other numbers.

**Instead.** Have it looked at, then `sizewright sign-off PATH --by NAME`
"""

from collections.abc import Iterator, Sequence

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.moved import Moved
from sizewright.read.pattern import Pattern

RULE = Rule("unsigned", Level.ERROR, __doc__)


def check(pattern: Pattern, moved: Sequence[Moved]) -> Iterator[Finding]:
    """A finding where there is no sign-off, or where something moved since."""
    mend = "Have it looked at, then “sizewright sign-off PATH --by NAME”."
    signed = pattern.sign_off
    if signed is None:
        message = "Nobody has signed this pattern off, and this studio publishes only what is signed off."
        yield RULE.at(pattern.header.span, message, mend)
    elif moved:
        count = f"{len(moved)} thing{'s' if len(moved) > 1 else ''}"
        message = f"{count} moved since {signed.by} signed this pattern off on {signed.on}."
        yield RULE.at(pattern.header.span, message, mend)
