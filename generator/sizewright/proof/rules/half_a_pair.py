"""A pattern for a pair whose instructions make one, and whose yarn is therefore for one.

**Why it matters.** The yarn is what every stitch of the instructions takes. A reader who buys it for one sock has two
feet.

**Example.** `kind: socks`, one cast-on, and nothing that says that a second sock is made

**Instead.** Say it among the instructions, `Make the second sock the same way.`, or in a heading: `## Sock (make 2)`.
"""

import re
from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.yarn_calls import directions_of
from sizewright.read.notation.direction_tree import CastOn, SameAgain
from sizewright.read.pattern import Heading
from sizewright.read.project import Project
from sizewright.work.tally import times_made
from sizewright.work.worked import Worked

RULE = Rule("half-a-pair", Level.WARNING, __doc__)
_PAIRS = re.compile(
    r"\b(?:mittens|mitts|gloves|socks|stockings|slippers|booties|bootees|gaiters|(?:wrist|leg)[ -]?warmers)\b",
    re.I,
)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding at the swatch of the first yarn that has one."""
    pattern = worked.graded.pattern
    header = pattern.header
    pair = _PAIRS.search(f"{header.kind.text if header.kind else ''} {header.title}")
    swatch = next((need.yarn.swatch for need in worked.yarns if need.yarn.swatch), None)
    directions = tuple(directions_of(pattern))
    pieces = sum(isinstance(direction, CastOn) for direction in directions)
    again = any(isinstance(direction, SameAgain) for direction in directions)
    several = any(isinstance(piece, Heading) and times_made(piece.text) > 1 for piece in pattern.body)
    if pair and swatch and pieces == 1 and not again and not several:
        noun = pair.group().casefold()
        message = f"The instructions make one of a pair of {noun}, and the yarn is for that one."
        mend = f"Add to the last block: “Make the second {noun.removesuffix('s')} the same way.”"
        yield RULE.at(swatch.span, message, mend)
