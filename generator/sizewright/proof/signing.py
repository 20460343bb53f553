"""In: a pattern carried out, and its sign-off. Out: what moved since, and whether it may be published as it is."""

from collections.abc import Iterator, Sequence

from sizewright.base.finding import Finding, Level
from sizewright.proof.acceptance import Accepted
from sizewright.proof.moved import Moved, moved
from sizewright.proof.proofed import Proofed
from sizewright.proof.records import records_of, sizes_of
from sizewright.proof.rules import moved_since_sign_off, unsigned
from sizewright.read.project import Studio
from sizewright.work.worked import Worked


def signed_findings(worked: Worked, accepted: Sequence[Accepted], studio: Studio) -> Iterator[Finding]:
    """The findings; none of a pattern without a sign-off, where the studio does not ask for one."""
    pattern = worked.graded.pattern
    since: tuple[Moved, ...] = ()
    if pattern.sign_off is not None:
        since = moved(pattern.sign_off, sizes_of(worked), records_of(worked, accepted))
        yield from moved_since_sign_off.check(pattern, pattern.sign_off, since)
    if studio.publish_only:
        yield from unsigned.check(pattern, since)


def may_be_signed(proofed: Proofed) -> bool:
    """Whether a pattern has no errors but that nobody has signed it off."""
    errors = {finding.rule for finding in proofed.findings if finding.level is Level.ERROR}
    return errors <= {unsigned.RULE.name, moved_since_sign_off.RULE.name}
