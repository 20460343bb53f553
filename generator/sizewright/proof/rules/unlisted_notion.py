"""Something the instructions need that the materials do not list: markers, a cable needle, a holder, a tapestry needle.

**Why it matters.** A reader packs what the list says. Without it the evening ends in mid row, with forty stitches to be
held and nothing to hold them. Told is only what is surely needed: a marker that is placed, a cable of more than two
stitches, stitches put on hold, ends woven in. Where nothing at all is listed, all of it is told once.

**Example.** `notions: [tapestry needle]`, and in the rows `pm`

**Instead.** `notions: [tapestry needle, 2 stitch markers]`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.place import Span
from sizewright.proof.notions import NOTIONS
from sizewright.proof.wording import Wording
from sizewright.read.pattern import Pattern
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("unlisted-notion", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each thing that is lacking in the list, one for all where there is no list."""
    pattern = worked.graded.pattern
    lacking = list(_lacking(pattern))
    if pattern.header.notions:
        for name, place in lacking:
            yield RULE.at(place, f"This needs {name}, and the notions list none.", f"Add {name} to “notions:”.")
    elif lacking:
        names = [name for name, _ in lacking]
        message = f"The header lists no notions, and the instructions need {_and(names)}."
        yield RULE.at(pattern.header.span, message, f"Add “notions: [{', '.join(names)}]”.")


def _lacking(pattern: Pattern) -> Iterator[tuple[str, Span]]:
    header, wording = pattern.header, Wording.of(pattern)
    listed = " / ".join((*(words.text for words in header.notions), *(needle.text for needle in header.needles)))
    for notion in NOTIONS:
        place = notion.needed(pattern, wording)
        if place is not None and not notion.listed.search(listed):
            yield notion.name, place


def _and(names: list[str]) -> str:
    *before, last = names
    return f"{', '.join(before)} and {last}" if before else last
