"""In: the project's own folder. Out: the installed command, and the published demo."""

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

from sizewright.proof.proofed import Proofed
from sizewright.proof.run import proof
from sizewright.publish.run import paper_of, paper_paths, publish
from sizewright.read.folder import read_project
from sizewright.read.project import Project

PRINTED = "undercombe-hat.pdf"  # the PDF of the demo that is laid out


@pytest.fixture(scope="session")
def repository() -> Path:
    """The project's own folder; tests read it and never write in it."""
    return ROOT


@pytest.fixture(scope="session")
def demo_project(repository: Path) -> Project:
    """The demo studio, read once for all tests of a process."""
    return read_project(repository)


@pytest.fixture(scope="session")
def demo_proofed(demo_project: Project) -> tuple[Proofed, ...]:
    """Its patterns, proofed."""
    return tuple(proof(pattern, demo_project) for pattern in demo_project.patterns)


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


class Unseen:
    """A progress that nobody looks at."""

    def start(self, total: int, what: str) -> None:
        """Says nothing."""

    def step(self) -> None:
        """Says nothing."""


@pytest.fixture(scope="session")
def demo_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The published demo: the `site/` of a copy of the project, published once for all workers. To be read only.

    Of its PDFs one is laid out, in each language; the others, minutes of work, stand as empty files.
    """
    shared = tmp_path_factory.getbasetemp()
    if "PYTEST_XDIST_WORKER" in os.environ:
        shared = shared.parent  # every worker has a folder of its own below one that belongs to this run
    folder = shared / "demo"
    done = shared / "demo.done"
    with alone(shared / "demo.lock"):
        if not done.exists():
            shutil.rmtree(folder, ignore_errors=True)  # what another worker could not finish
            for part in ("content", "themes"):
                shutil.copytree(ROOT / part, folder / part)
            publish_demo(folder)
            done.touch()
    return folder / "site"


def publish_demo(folder: Path) -> None:
    """Publishes it, and stands empty files where its PDFs belong that are not laid out."""
    project = read_project(folder)
    proofed = [proof(pattern, project) for pattern in project.patterns]
    made = publish(project, proofed, without_refused=False, papers=False, progress=Unseen())
    assert made.done, f"refused: {made.refused}"
    for one in proofed:
        for path in paper_paths(project, one):
            laid_out = paper_of(project, one, path) if Path(path).name == PRINTED else None
            assert not (laid_out and laid_out.faults), laid_out
            file = folder / "site" / path
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_bytes(laid_out.content if laid_out else b"")
