"""Sources of our own, invented for these tests, and what is made of them."""

import subprocess
from collections.abc import Callable, Sequence
from pathlib import Path

import pytest
from click.testing import CliRunner

from sizewright.base.finding import Finding
from sizewright.command.main import sizewright
from sizewright.command.proofing import Checked, Proofing, gathered
from sizewright.command.reading import Opened
from sizewright.grade.run import grade
from sizewright.proof.proofed import Proofed
from sizewright.read.folder import read_single
from sizewright.work.run import work

BAND = """---
title: Test Band
licence: invented for a test
sizes:
  Small: {head: 52 cm}
  Large: {head: 60 cm}
gauge:
  stitches: 20 st / 10 cm
  rows: 28 rnd / 10 cm
  needle: 5 mm
needles: [5 mm circular needle]
yarn: {weight: medium, length: 200 m, mass: 100 g}
---

```grade
cast_on = head * 0.9 * stitch_gauge, nearest multiple of 4
half = cast_on / 2
depth = 9 (10) cm
require cast_on fits multiple of 4
```

```work
Cast on {cast_on} sts. Join to work in the round.
Rnd 1: *K2, p2; rep from * to end.
Rep Rnd 1 until piece measures {depth}.
Bind off all sts.
```
"""

Made = Callable[..., Proofing]


@pytest.fixture
def band(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A sound pattern file that stands alone, and the working folder around it."""
    monkeypatch.chdir(tmp_path)
    file = Path("band.md")
    file.write_text(BAND, encoding="utf-8")
    return file


@pytest.fixture
def made(band: Path) -> Made:
    """A report's input with any findings: `made(findings, apart)`; the pattern itself is read and graded for real."""

    def make(findings: Sequence[Finding] = (), apart: Sequence[Finding] = ()) -> Proofing:
        project = read_single(band)
        assert project.findings == ()
        graded = grade(project.patterns[0])
        assert graded.findings == ()
        opened = Opened(project, ".", str(band))
        checked = Checked(str(band), Proofed(work(graded), tuple(findings)), opened, tuple(findings))
        whole = gathered([opened], [checked])
        return Proofing(whole.checked, tuple(apart), whole.texts)

    return make


@pytest.fixture
def typed(monkeypatch: pytest.MonkeyPatch) -> Callable[..., subprocess.CompletedProcess[str]]:
    """What the command says in this process, which need not be started anew: `typed("proof", folder, cwd=...)`.

    What hangs on the process itself (its streams, signals, modules) is tested with `sizewright`, which starts one.
    """

    def run(*words: str | Path, cwd: Path | None = None) -> subprocess.CompletedProcess[str]:
        if cwd is not None:
            monkeypatch.chdir(cwd)
        line = [str(word) for word in words]
        done = CliRunner().invoke(sizewright, line, prog_name="sizewright", env={"NO_COLOR": "1"})
        if done.exception is not None and not isinstance(done.exception, SystemExit):
            raise done.exception
        return subprocess.CompletedProcess(line, done.exit_code, done.stdout, done.stderr)

    return run
