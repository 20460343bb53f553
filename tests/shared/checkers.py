"""In: folders of pages and style sheets. Out: what the checkers of HTML and of CSS say about them."""

import json
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from tests.shared.tools import ROOT, installed, tool

CHECKERS = ROOT / "tests" / "node_modules"
# Java that ends soon is not worth its second compiler: half of the work. What the first makes needs a larger stack.
QUICK = ("-XX:TieredStopAtLevel=1", "-Xss2m")


def checked(command: list[str]) -> Any:  # noqa: ANN401 - the checkers' own JSON
    """What a checker prints as JSON; exit code 0 or 1 is its verdict, all else, or no JSON, is a checker that broke."""
    done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=300)
    said = (
        done.stdout + done.stderr
    )  # csstree-validator prints what it found on the latter, and nothing where all is well
    try:
        return json.loads(said if said.strip() or done.returncode else "[]")
    except ValueError:
        pytest.fail(f"the checker broke ({done.returncode}): {' '.join(command)}\n{said}", pytrace=False)


def must_hold(folder: Path, pattern: str) -> None:
    """A checker that is shown nothing finds nothing."""
    if next(folder.rglob(pattern), None) is None:
        pytest.fail(f"no {pattern} under {folder}: nothing would be checked", pytrace=False)


@pytest.fixture(scope="session")
def nu_check() -> Callable[[Path], list[str]]:
    """`nu_check(folder)`: errors and warnings of the Nu HTML checker on all pages below, as "file:line: kind: text"."""

    def check(folder: Path) -> list[str]:
        must_hold(folder, "*.html")
        jar = installed(CHECKERS / "vnu-jar" / "build" / "dist" / "vnu.jar")
        said = checked(
            [tool("java"), *QUICK, "-jar", jar, "--skip-non-html", "--stdout", "--format", "json", str(folder)]
        )
        places = [f"{m.get('url', '').removeprefix('file:')}:{m.get('lastLine', '?')}" for m in said["messages"]]
        texts = [f"{m.get('subType', m['type'])}: {m['message']}" for m in said["messages"]]
        return [f"{place}: {text}" for place, text in zip(places, texts, strict=True)]

    return check


@pytest.fixture(scope="session")
def css_check() -> Callable[[Path], list[str]]:
    """`css_check(folder)`: what csstree-validator finds in all style sheets below it, "file:line: message"."""

    def check(folder: Path) -> list[str]:
        must_hold(folder, "*.css")
        script = installed(CHECKERS / "csstree-validator" / "bin" / "validate.js")
        said = checked([tool("node"), script, "--reporter", "json", str(folder)])
        return [f"{m['name']}:{m['line']}: {m['message']} {m['details'] or ''}".rstrip() for m in said]

    return check
