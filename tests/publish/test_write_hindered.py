"""In: a site, and another run, the system or a signal in the way. Out: it is the old site or the new one, no other."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from sizewright.publish.faults import Busy
from sizewright.publish.lock import alone
from sizewright.publish.manifest import Manifest
from sizewright.publish.output import Output
from sizewright.publish.write import new_site

HERE = Path(__file__).parent


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A site in a project folder, written once."""
    written(tmp_path / "site", "one")
    return tmp_path / "site"


def written(site: Path, text: str) -> None:
    with new_site(site) as draft:
        draft.put(Output("index.html", text.encode()))
        draft.finish(Manifest(draft.digests))


def tree(folder: Path) -> dict[str, bytes]:
    """Every file below a folder."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_a_second_run_at_the_same_time_waits_its_turn(site: Path) -> None:
    with alone(site):
        before = tree(site.parent)
        with pytest.raises(Busy, match="another run"):
            written(site, "two")
        assert tree(site.parent) == before
    written(site, "two")
    assert (site / "index.html").read_text() == "two"


def test_a_second_process_at_the_same_time(site: Path) -> None:
    program = (
        "import sys; from pathlib import Path; from sizewright.publish.lock import alone\n"
        "with alone(Path(sys.argv[1])): print('held', flush=True); sys.stdin.read()"
    )
    pipe = subprocess.PIPE
    with subprocess.Popen([sys.executable, "-c", program, str(site)], stdin=pipe, stdout=pipe) as other:
        assert other.stdout is not None
        assert other.stdout.readline() == b"held\n"
        with pytest.raises(Busy):
            written(site, "two")
        other.kill()  # and with its holder the lock is gone
    written(site, "two")
    assert (site / "index.html").read_text() == "two"


# ---------------------------------------------------------------------------------------- what the system may refuse

IN_A_PROCESS = """
import os, resource, sys
from pathlib import Path
from sizewright.publish.faults import NotWritten
from sizewright.publish.manifest import Manifest
from sizewright.publish.output import Output
from sizewright.publish.write import new_site
site = Path(sys.argv[1])
exec(sys.argv[2])
try:
    with new_site(site) as draft:
        draft.put(Output("index.html", b"x" * 100_000))
        draft.finish(Manifest(draft.digests))
except NotWritten as refusal:
    print(type(refusal).__name__, refusal)
"""


def refused_by_the_system(site: Path, set_up: str) -> str:
    """What a process says that tries to write under these limits."""
    line = [sys.executable, "-c", IN_A_PROCESS, str(site), set_up]
    done = subprocess.run(line, capture_output=True, text=True, check=True, timeout=60)
    assert done.stderr == ""
    return done.stdout


def test_no_room_on_the_disk(site: Path) -> None:
    """A limit on the size of a file is what a process can set itself; the system then answers as a full disk does."""
    before = tree(site.parent)
    said = refused_by_the_system(site, "resource.setrlimit(resource.RLIMIT_FSIZE, (50_000, 50_000))")
    assert said.startswith("CannotWrite There is no room")
    assert tree(site.parent) == before


def test_a_folder_that_may_not_be_written(site: Path) -> None:
    """Somebody without rights here: where the tests run as root, root becomes nobody first."""
    before = tree(site.parent)
    for folder in (site.parent, *list(site.parent.parents)[:2]):
        folder.chmod(0o755)
    site.parent.chmod(0o555)
    said = refused_by_the_system(site, "os.getuid() or os.setuid(65534)")
    site.parent.chmod(0o755)
    assert said.startswith("CannotWrite")
    assert "may not be written" in said
    assert tree(site.parent) == before


# ------------------------------------------------------------------------------------------------------------- killed


def killed(site: Path, way: str, kills: int) -> dict[str, int]:
    """What was found after so many writers were killed; see killed.py."""
    line = [sys.executable, str(HERE / "killed.py"), str(site), way, str(kills)]
    done = subprocess.run(line, capture_output=True, text=True, check=True, timeout=120)
    found: dict[str, int] = json.loads(done.stdout)
    return found


def test_killed_at_any_moment_the_site_is_the_old_or_the_new_one(site: Path) -> None:
    found = killed(site, "publish", 100)
    assert found.get("broken", 0) == 0
    assert found["missing"] == 0
    assert found["a"] + found["b"] == 100
    # How many fall on each side is for the machine's timing to say; that both were seen is what makes it a test.
    assert found["a"] > 0
    assert found["b"] > 0
    assert found["midway"] > 10, "too few were killed in the middle of their work"


def test_killed_where_the_system_cannot_swap_the_next_run_mends_it(site: Path) -> None:
    found = killed(site, "two moves", 60)
    assert found.get("broken", 0) == 0
    assert found["a"] + found["b"] == 60
    assert found["midway"] > 10, "too few were killed in the middle of their work"


def test_the_killing_finds_a_writer_that_writes_in_place(site: Path) -> None:
    assert killed(site, "overwrite", 20)["broken"] > 0
