"""A section that is turned inside out, of which some stitches do not show the other face of what they show in the base.

**Why it matters.** The reader holds the fabric against the picture: where a row only follows the stitches below it, and
those are not turned, the section would change its face in the middle.

**Example.** `::: inside-out section Body`, where the body begins with `Work as established for 4 rnds.` over a ribbing
that is not turned.

**Instead.** Turn the section below as well, or write the rows yourself: `::: instead of section Body`
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.place import Span
from sizewright.grade.run import grade
from sizewright.read.adapting.rules import NO_MIRROR
from sizewright.read.departure import Departure, Verb
from sizewright.read.project import Project
from sizewright.work.faces import Faces, faces
from sizewright.work.worked import Worked

RULE = Rule("wrong-face", Level.ERROR, __doc__ or "")


def check(worked: Worked, project: Project) -> Iterator[Finding]:
    """The first direction of each section that is turned after which the faces are not those of the base reversed."""
    pattern = worked.graded.pattern
    turned = [one for one in pattern.adapts.departures if one.called.verb is Verb.INSIDE_OUT] if pattern.adapts else []
    left = any(
        one.rule == NO_MIRROR.name and one.span and one.span.source == pattern.source for one in project.findings
    )
    if not pattern.adapts or not turned or left:  # what could not be turned is told of already
        return
    there = {_place(one.span): one for one in faces(grade(pattern.adapts.base))}
    here = faces(worked.graded)
    for departure in turned:
        yield from _judged(departure, here, there, worked.graded.sizes)


def _judged(
    departure: Departure, here: tuple[Faces, ...], there: dict[tuple[str, int, int], Faces], sizes: tuple[str, ...]
) -> Iterator[Finding]:
    for one in here:
        other = there.get(_place(one.span)) if departure.first <= one.span.line < departure.end else None
        wrong = one.reverse(other) if other is not None else ()
        if wrong:
            message = f"Behind this, “{departure.called.title}” does not show the other face of what the base shows."
            mend = "Turn the section below as well, or write these rows yourself."
            yield RULE.at(one.span, message, mend, [sizes[size] for size in wrong] if sizes else ())
            return


def _place(span: Span) -> tuple[str, int, int]:
    shown = span.shown
    return shown.source, shown.line, shown.column
