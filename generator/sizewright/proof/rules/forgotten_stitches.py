"""Stitches that are still on the needles or on a holder when the pattern ends.

**Why it matters.** The reader is left with live stitches: a sleeve never knitted, a neck never bound off.

**Example.** `Place next 40 sts on hold for second sleeve.`, and only the first sleeve is taken up again.

**Instead.** Take them up again by their name ("Place 40 held second sleeve sts on needles."), and end each piece:
bind off, graft, or draw the yarn through.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.place import Span
from sizewright.proof.grouped import name_of
from sizewright.proof.telling import by_size
from sizewright.read.project import Project
from sizewright.work.faults import Forgotten
from sizewright.work.worked import Worked

RULE = Rule("forgotten-stitches", Level.WARNING, __doc__)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """One finding for each holder and for what is on the needle, for all sizes concerned."""
    places: dict[tuple[Span, str], list[Forgotten]] = {}
    for one in worked.forgotten:
        places.setdefault((one.span, one.words), []).append(one)
    for (span, words), found in places.items():
        told = by_size((name_of(worked, one.size), f"{one.count} sts") for one in found)
        where = f"on hold ({words})" if words not in ("", "on hold") else words or "on the needles"
        message = f"Stitches are still {where} when the pattern ends: {told}."
        mend = "Take them up again and end the piece: bind off, graft, or draw the yarn through."
        sizes = tuple(name for one in found if (name := name_of(worked, one.size)))
        yield RULE.at(span, message, mend, sizes)
