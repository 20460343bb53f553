"""In: what generator/setup.sh installs. Out: where a tool is; where it is missing, how to get it, and a failed test."""

import shutil
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent.parent
SET_UP = "run `sh generator/setup.sh test`, which installs it"


def tool(*names: str) -> str:
    """The first of these commands that is installed; fails the test where none is."""
    found = next(filter(None, map(shutil.which, names)), None)
    if found is None:
        pytest.fail(f"{' or '.join(names)} is not installed: {SET_UP}", pytrace=False)
    return found


def installed(path: Path) -> str:
    """The path of an installed checker; fails the test where it is missing."""
    if not path.is_file():
        pytest.fail(f"{path.relative_to(ROOT)} is not installed: {SET_UP}", pytrace=False)
    return str(path)
