"""In: the project's own folder. Out: the installed command, and the demo that it published."""

import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from fcntl import LOCK_EX, flock
from pathlib import Path

import pytest
from tests.shared.tools import ROOT


@pytest.fixture(scope="session")
def repository() -> Path:
    """The project's own folder; tests read it and never write in it."""
    return ROOT


@pytest.fixture(scope="session")
def demo_patterns() -> tuple[Path, ...]:
    """The files of the demo's patterns, without the translations that stand beside them."""
    return tuple(path for path in sorted((ROOT / "content" / "patterns").glob("*.md")) if "." not in path.stem)


@contextmanager
def alone(lock: Path) -> Iterator[None]:
    """Between processes: only one at a time gets in; the lock ends with its process, however that ends."""
    with lock.open("w") as held:
        flock(held, LOCK_EX)
        yield


@pytest.fixture(scope="session")
def sizewright() -> Callable[..., subprocess.CompletedProcess[str]]:
    """Runs the installed command: `sizewright("proof", folder, cwd=..., env={...})`; never raises for its exit code."""
    command = Path(sys.executable).with_name("sizewright")

    def run(
        *words: str | Path, cwd: Path | None = None, env: dict[str, str] | None = None
    ) -> subprocess.CompletedProcess[str]:
        line = [str(command), *map(str, words)]
        surroundings = {**os.environ, "NO_COLOR": "1", **(env or {})}
        return subprocess.run(line, cwd=cwd, env=surroundings, capture_output=True, text=True, check=False, timeout=300)

    return run


@pytest.fixture(scope="session")
def demo_site(
    tmp_path_factory: pytest.TempPathFactory, sizewright: Callable[..., subprocess.CompletedProcess[str]]
) -> Path:
    """The published demo: the `site/` of a copy of the project, published once for all workers. To be read only.

    Of its PDFs the usual ones alone: all of them take a minute of two processors.
    """
    shared = tmp_path_factory.getbasetemp()
    if "PYTEST_XDIST_WORKER" in os.environ:
        shared = shared.parent  # every worker has a folder of its own below one that belongs to this run
    project = shared / "demo"
    said = shared / "demo.said"
    with alone(shared / "demo.lock"):
        if not said.exists():
            for part in ("content", "themes"):
                shutil.copytree(ROOT / part, project / part)
            with (project / "content" / "site.yaml").open("a", encoding="utf-8") as studio:
                studio.write("papers: {sheets: [a4], each_size: no, large_print: no}\n")
            done = sizewright("publish", project)
            said.write_text(f"{done.returncode}\n{done.stdout}{done.stderr}", encoding="utf-8")
    code, _, text = said.read_text(encoding="utf-8").partition("\n")
    if code != "0" or not (project / "site" / "index.html").is_file():
        pytest.fail(f"the demo was not published (exit code {code}):\n{text}", pytrace=False)
    return project / "site"
