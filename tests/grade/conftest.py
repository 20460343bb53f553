"""In: the lines of a grade block. Out: a pattern with nothing else in it, read and graded."""

from collections.abc import Callable
from pathlib import Path

import pytest

from sizewright.grade.graded import Graded
from sizewright.grade.run import grade
from sizewright.read.folder import read_single

SIZES = "sizes:\n  A: {chest: 80 cm}\n  B: {chest: 90 cm}\n  C: {chest: 40 in}\n"


@pytest.fixture(scope="session")
def graded(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., Graded]:
    """`graded(*lines, header="...")`: what reading finds fails the test; `header` are further lines of the header."""
    source: Path = tmp_path_factory.mktemp("grade") / "pattern.md"

    def graded(*lines: str, header: str = "") -> Graded:
        block = "\n".join(lines)
        source.write_text(f"---\ntitle: A\n{header}---\n\n```grade\n{block}\n```\n", encoding="utf-8")
        project = read_single(source)
        assert project.findings == (), project.findings
        return grade(project.patterns[0])

    return graded


@pytest.fixture(scope="session")
def sizes() -> str:
    """Header lines with three sizes."""
    return SIZES
