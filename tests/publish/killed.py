"""In: a folder, a way of writing and a number. Out: what was found in it after so many writers were killed.

Run as a process of its own by test_write: it forks writers that write one of two sites over the other without end,
kills each with SIGKILL at a random moment, and compares what stands there then with the two sites, byte for byte.
"""

import hashlib
import json
import os
import random
import signal
import sys
import time
from collections import Counter
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from sizewright.publish import write
from sizewright.publish.manifest import Manifest
from sizewright.publish.output import Output
from sizewright.publish.write import new_site, work_folder

FILES = 12


def contents(edition: str) -> list[Output]:
    """One of the two sites: most files differ, some are the same in both."""
    changed = [Output(f"patterns/{edition}-{number}.html", edition.encode() * 3000) for number in range(FILES)]
    same = [Output(f"theme/{number}.css", b"same" * 500) for number in range(3)]
    return [*changed, *same, Output("index.html", edition.encode())]


def publish(site: Path, edition: str) -> None:
    with new_site(site) as draft:
        for output in contents(edition):
            draft.put(output)
        draft.finish(Manifest(draft.digests))


def overwrite(site: Path, edition: str) -> None:
    """What a plain writer does; the test of the test."""
    for output in contents(edition):
        path = site / output.path
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(output.content)


def digest(site: Path) -> str:
    """Of all names and contents below the site."""
    total = hashlib.sha256()
    for path in sorted(site.rglob("*")):
        total.update(f"{path.relative_to(site)} {path.is_dir()}".encode())
        total.update(path.read_bytes() if path.is_file() else b"")
    return total.hexdigest()


def kill_one(site: Path, writer: Callable[[Path, str], None], longest: float) -> None:
    """Forks one writer and kills it after a random while."""
    child = os.fork()
    if child == 0:
        turn = 0
        while True:
            writer(site, "ab"[turn % 2])
            turn += 1
    time.sleep(random.uniform(0, longest))  # noqa: S311 - no secret
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)


def main(site: Path, way: str, kills: int) -> None:
    writer = overwrite if way == "overwrite" else publish
    if way == "two moves":
        vars(write)["swap"] = lambda _one, _other: False
    expected = {}
    started = time.monotonic()
    for edition in "ab":
        writer(site, edition)
        expected[digest(site)] = edition
    longest = time.monotonic() - started
    found: Counter[str] = Counter()
    for _ in range(kills):
        kill_one(site, writer, longest)
        found["midway"] += work_folder(site).exists()
        found["missing"] += not site.exists()
        if way == "two moves":
            with suppress(RuntimeError), new_site(site):
                raise RuntimeError  # a run that begins, mends what was left, and writes nothing
        found[expected.get(digest(site), "broken")] += 1
    print(json.dumps(found))  # noqa: T201 - its answer


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2], int(sys.argv[3]))
