"""In: a schematic as it is written. Out: it graded, in a pattern of the sizes that are asked for."""

from collections.abc import Callable, Sequence

import pytest

from sizewright.grade.graded import Schematic
from sizewright.grade.run import grade
from sizewright.read.folder import read_text


def graded_schematic(pieces: Sequence[str], sizes: int) -> Schematic:
    """The one schematic of a pattern with so many sizes; nothing may be wrong with it."""
    names = "".join(f"  S{number}: {{}}\n" for number in range(sizes)) if sizes > 1 else ""
    header = f"---\ntitle: T\n{'sizes:' if names else ''}\n{names}---\n"
    project = read_text(header + "```schematic\n" + "\n".join(pieces) + "\n```\n", "t.md")
    graded = grade(project.patterns[0])
    assert (project.findings, graded.findings) == ((), ())
    return graded.schematics[0]


@pytest.fixture
def schematic() -> Callable[[Sequence[str], int], Schematic]:
    return graded_schematic
