"""In: a schematic as it is written. Out: it graded, in a pattern of the sizes that are asked for."""

from collections.abc import Sequence

from sizewright.grade.graded import Graded, Schematic
from sizewright.grade.run import grade
from sizewright.read.folder import read_text


def graded(pieces: Sequence[str], sizes: int) -> Graded:
    """A pattern with so many sizes and one schematic, which can be read."""
    names = "".join(f"  S{number}: {{}}\n" for number in range(sizes)) if sizes > 1 else ""
    header = f"---\ntitle: T\n{'sizes:' if names else ''}\n{names}---\n"
    project = read_text(header + "```schematic\n" + "\n".join(pieces) + "\n```\n", "t.md")
    assert project.findings == ()
    return grade(project.patterns[0])


def graded_schematic(pieces: Sequence[str], sizes: int) -> Schematic:
    """The one schematic of such a pattern; nothing may be wrong with it."""
    found = graded(pieces, sizes)
    assert found.findings == ()
    return found.schematics[0]
