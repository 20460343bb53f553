"""A stitch pattern whose stated multiple is not the one its rows have, or whose rows fit no count together.

**Why it matters.** A reader who casts on by the stated multiple finds out in the third row that it does not come out.

**Example.** `Multiple of 16 sts plus 6.` above rows that repeat over 18.

**Instead.** State the multiple the rows have; the finding names it. A stated multiple that is wider than need be is no
error, but a warning.
"""

from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.project import Project
from sizewright.work.widths import WIDEST
from sizewright.work.worked import StitchPattern, Worked

RULE = Rule("wrong-multiple", Level.ERROR, __doc__)
_WIDE = Rule(RULE.name, Level.WARNING, RULE.page)


def check(worked: Worked, project: Project) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each stitch block."""
    for pattern in worked.stitch_patterns:
        if pattern.clash is not None or not pattern.understood:
            continue  # the row is told of
        if pattern.panel is not None and pattern.widths:
            yield from _panel(pattern, pattern.panel)
        elif pattern.multiple is None and pattern.widths:
            yield _unsaid(pattern)
        elif pattern.multiple is None and pattern.rows:
            yield RULE.at(pattern.span, _never(pattern), "Mend the row that gains or loses stitches the others do not.")
        elif pattern.multiple is not None and pattern.stated is not None:
            yield from _compared(pattern, pattern.multiple, *pattern.stated)
        yield from _cast_on(pattern)


def _panel(pattern: StitchPattern, stated: int) -> Iterator[Finding]:
    """The rows of a panel must fit the stitches it says it has."""
    if stated in pattern.widths or stated >= WIDEST:
        return
    fitting = sorted(sorted(pattern.widths, key=lambda width: abs(width - stated))[:2])
    near = " or ".join(f"“Panel of {one} sts.”" for one in fitting)
    message = f"“{pattern.name}” says a panel of {stated} sts, and its rows do not fit them."
    yield RULE.at(pattern.span, message, f"Write {near}, or mend the rows.")


def _unsaid(pattern: StitchPattern) -> Finding:
    """Rows that fit some counts and no multiple are those of a panel, which the block does not say."""
    message = f"The rows of “{pattern.name}” fit {' or '.join(map(str, pattern.widths[:2]))} sts alone."
    mend = f"Write “Panel of {pattern.widths[0]} sts.” above them, or mend the row that is to fit more."
    return RULE.at(pattern.span, message, mend)


def _never(pattern: StitchPattern) -> str:
    if pattern.worked_over is not None and pattern.worked_over[0] != pattern.worked_over[1]:
        before, after = pattern.worked_over
        return (
            f"The rows of “{pattern.name}” cannot be worked again: over {before} sts there are {after} after the last."
        )
    return f"The rows of “{pattern.name}” fit no count of stitches together."


def _cast_on(pattern: StitchPattern) -> Iterator[Finding]:
    """A cast-on in the block must fit its rows."""
    count, multiple = pattern.cast_on, pattern.multiple
    if count is None or multiple is None or (count - pattern.plus) % multiple == 0:
        return
    below = count - (count - pattern.plus) % multiple
    near = " or ".join(str(one) for one in (below, below + multiple) if one > 0)
    yield RULE.at(
        pattern.span, f"“{pattern.name}” casts on {count} sts, and its rows do not fit them.", f"Cast on {near}."
    )


def _compared(pattern: StitchPattern, multiple: int, stated: int, stated_plus: int) -> Iterator[Finding]:
    if stated == multiple and (stated_plus - pattern.plus) % multiple == 0:
        return
    said, real = _words(stated, stated_plus), _words(multiple, pattern.plus)
    message = f"“{pattern.name}” says a {said}, but its rows have a {real}."
    fits = stated and stated % multiple == 0 and (stated_plus - pattern.plus) % multiple == 0
    yield (_WIDE if fits else RULE).at(
        pattern.span, message, f"Write “Multiple of {real.removeprefix('multiple of ')}.”"
    )


def _words(multiple: int, plus: int) -> str:
    return f"multiple of {multiple} sts" + (f" plus {plus}" if plus else "")
