"""In: the text of a source. Out: it read as a pattern that stands alone."""

from collections.abc import Callable
from pathlib import Path

import pytest

from sizewright.read.folder import read_single
from sizewright.read.project import Project


@pytest.fixture(scope="session")
def read_text(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], Project]:
    """`read_text(text)`: the project of one file with that text, byte for byte."""
    source: Path = tmp_path_factory.mktemp("read") / "pattern.md"

    def read(text: str) -> Project:
        source.write_bytes(text.encode())
        return read_single(source)

    return read
