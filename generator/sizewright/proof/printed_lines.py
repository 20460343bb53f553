"""In: a pattern carried out. Out: everything it says to a reader that has a number or a stitch in it, line by line."""

from sizewright.proof.body_lines import body_lines
from sizewright.proof.header_lines import header_lines
from sizewright.proof.line import Line
from sizewright.work.worked import Worked


def printed_lines(worked: Worked) -> tuple[Line, ...]:
    """The header's lines, then those of the body."""
    return (*header_lines(worked), *body_lines(worked.graded))
