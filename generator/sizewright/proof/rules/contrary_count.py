"""A sentence that tells how many stitches there are now, and the rows before it leave another number.

**Why it matters.** A reader who counts and finds another number believes the sentence, unravels, and knits the same
rows again to the same number. Looked at are plain sentences, “You now have 72 sts.”, “There are 72 stitches on the
needle.”; not those that tell of a part, “72 stitches between the markers”.

**Example.** “There are now 60 (70) stitches.” behind a row that leaves 64 (72)

**Instead.** Mend the number, or put the count behind the row: `(64 (72) sts)`.
"""

import re
from collections.abc import Iterator, Mapping
from fractions import Fraction

from sizewright.base.finding import Finding, Level, Rule
from sizewright.base.units import PLAIN, STITCHES
from sizewright.proof.telling import by_size
from sizewright.proof.wording import INSERT, Wording
from sizewright.read.inserts import Insert
from sizewright.read.names_used import inserts_of
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("contrary-count", Level.WARNING, __doc__)

_NUMBERS = re.compile(r"\d+")
_TOLD = re.compile(
    rf"\b(?:you (?:should |will )?(?:now )?have|there (?:are|should be)(?: now)?)\s"
    rf"(?P<count>{INSERT}+|\d+(?:\s?\(\s*\d+(?:\s*,\s*\d+)*\s*\))?)\s(?:sts|stitches)"
    r"(?=[.,;:!)]|\s(?:on (?:the|your) needles?|in all|in total|altogether|left|remaining|now)\b)",
    re.I,
)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each sentence that is not so in some size."""
    wording = Wording.of(worked.graded.pattern)
    inserts = {(one.span.line, one.span.column): one for one in inserts_of(worked.graded.pattern)}
    for found in _TOLD.finditer(wording.prose):
        wrong = [
            (size, f"{told} told, {there} there")
            for at, size in enumerate(worked.graded.sizes or ("",))
            if (told := _told(worked, found, inserts, at)) is not None
            and (there := _there(worked, wording, found, at)) not in (None, told)
        ]
        if wrong:
            message = f"This count is not the one that the rows leave: {by_size(wrong)}."
            mend = "Mend the number, or the rows before it."
            yield RULE.at(wording.span(found, "count"), message, mend, tuple(size for size, _ in wrong if size))


def _told(
    worked: Worked, found: re.Match[str], inserts: Mapping[tuple[int, int], Insert], size: int
) -> int | Fraction | None:
    """The count a sentence gives for a size; None where it gives none."""
    text = found["count"]
    if not text.startswith(INSERT):
        numbers = [int(number) for number in _NUMBERS.findall(text)]
        alone = len(numbers) == 1
        return numbers[0] if alone else numbers[size] if len(numbers) == len(worked.graded.sizes) else None
    insert = inserts.get(worked.graded.pattern.lines.place(found.start("count")))
    values = worked.graded.inserts.get(insert.key) if insert else None
    if insert is None or values is None or values.dimension not in (STITCHES, PLAIN):
        return None
    read = {at for at, _ in worked.graded.read_in(insert.sizes)}
    return values.values[size] if size in read else None


def _there(worked: Worked, wording: Wording, found: re.Match[str], size: int) -> int | None:
    """The stitches that the rows before a sentence leave in a size; None where nobody can say."""
    place = wording.lines.place(found.start())
    before = [entry for entry in worked.entries if (entry.span.line, entry.span.column) < place]
    counts = [entry.after[size] for entry in before if entry.before[size] is not None or entry.after[size] is not None]
    return counts[-1] or None if counts else None
