"""A number, row or acceptance that is not what somebody signed off.

**Why it matters.** A technical editor signed other numbers. Nobody has looked at what has moved since, and one changed
formula moves numbers far from it.

**Example.** `cast_on` was signed off as 80 (90, 100) stitches, and a new ease makes it 84 (96, 104).

**Instead.** Look at what moved, and sign the pattern off again: `sizewright sign-off PATH --by NAME`
"""

from collections.abc import Iterator, Sequence

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.moved import Moved
from sizewright.read.pattern import Pattern
from sizewright.read.sign_off import SignOff

RULE = Rule("moved-since-sign-off", Level.WARNING, __doc__)


def check(pattern: Pattern, signed: SignOff, moved: Sequence[Moved]) -> Iterator[Finding]:
    """A finding for everything that moved; the counts behind rows are one, as one change moves all behind it."""
    since = f"Signed off by {signed.by} on {signed.on}."
    rows = [one for one in moved if one.kind == "row"]
    for one in moved:
        if one.kind != "row":
            yield RULE.at(one.span or pattern.header.span, _capital(one.message), since, one.sizes)
    if rows:
        first = rows[0]
        more = f" So did the counts of {len(rows) - 1} more." if len(rows) > 1 else ""
        sizes = {size for one in rows for size in one.sizes}
        ordered = [size for size in pattern.size_names if size in sizes]
        yield RULE.at(first.span or pattern.header.span, _capital(first.message) + more, since, ordered)


def _capital(message: str) -> str:
    """A sentence's first letter; the name of a quantity stays as it is."""
    first = message.split(maxsplit=1)[0]
    return message[:1].upper() + message[1:] if first in ("count", "acceptance", "what", "a") else message
