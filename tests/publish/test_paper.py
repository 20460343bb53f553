"""In: print pages of our own making. Out: PDFs that checkers hold for sound, the same each time, nothing let in."""

import hashlib
import json
import multiprocessing
import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from pathlib import Path

import pdfua
import pytest

from sizewright.publish import print_job
from sizewright.publish.faults import PaperFault
from sizewright.publish.layout import lay_out
from sizewright.publish.paper import MANY, lay_out_all
from sizewright.publish.print_job import Job, Press, pictures_on
from sizewright.publish.theme import Theme
from sizewright.read.project import Sheet

PICTURE = b'<svg xmlns="http://www.w3.org/2000/svg" width="90" height="60"><rect width="90" height="60"/></svg>'
PRESS = Press(tuple((file.path, file.content) for file in Theme.find("studio", Path(__file__).parent).paper_files()))

PAGE = Path(__file__).with_name("paper.html").read_text(encoding="utf-8")


def job(html: str = PAGE, path: str = "patterns/hat.pdf", press: Press = PRESS) -> Job:
    return Job(((path, Sheet.A4),), html, (("media/hat one.svg", PICTURE),), "2026-03-01", "2026-10-12", press)


def said(*line: str | Path) -> str:
    """What a checker prints; it fails the test by its exit code."""
    return subprocess.run([*map(str, line)], capture_output=True, text=True, check=True, timeout=120).stdout


@pytest.fixture(scope="module")
def pdf(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The page as a PDF file."""
    (paper,) = lay_out(job())
    assert paper.faults == ()
    path = tmp_path_factory.mktemp("paper") / "hat.pdf"
    path.write_bytes(paper.content)
    return path


def test_the_file_is_sound(pdf: Path) -> None:
    said("qpdf", "--check", pdf)


def test_every_font_is_embedded_and_the_theme_s_own(pdf: Path) -> None:
    rows = [line.split() for line in said("pdffonts", pdf).splitlines()[2:]]
    assert {row[0].partition("+")[2] for row in rows} == {
        "Atkinson-Hyperlegible",
        "Atkinson-Hyperlegible-Bold",
    }
    assert all(row[1:3] == ["CID", "TrueType"] and row[4:7] == ["yes", "yes", "yes"] for row in rows)


def test_what_it_says_of_itself(pdf: Path) -> None:
    told = dict(line.split(":", 1) for line in said("pdfinfo", "-isodates", pdf).splitlines())
    assert told["Title"].strip() == "Hat “one”"
    assert told["Author"].strip() == "Ann Thorn"
    assert told["Tagged"].strip() == "yes"
    assert told["CreationDate"].strip().startswith("2026-03-01")
    assert told["ModDate"].strip().startswith("2026-10-12")


def test_a_checker_of_pdf_ua_finds_nothing(pdf: Path) -> None:
    """Its rule on empty headings trips over its own PDF library (pdfua 0.1.3), so that one is looked at here."""
    report = pdfua.validate(str(pdf))
    assert report.findings == ()
    assert {outcome.rule.id if hasattr(outcome, "rule") else outcome.rule_id for outcome in report.skipped} <= {
        "UA-14-001"
    }
    assert len(report.outcomes) > 10
    tags = said("pdfinfo", "-struct-text", pdf)
    for level, text in ((1, "Hat"), (2, "Sizes"), (2, "Rights")):
        assert f'H{level} (block)\n    Span (inline)\n      "{text}"' in tags


def test_tags(pdf: Path) -> None:
    """ISO 14289-1: headers say their scope (7.5), pictures their words (7.3), lists hold items only (7.6)."""
    tags = [line.strip() for line in said("pdfinfo", "-struct-text", pdf).splitlines()]
    scopes = [line for line in tags if line.startswith("/Scope")]
    assert scopes == ["/Scope /Column"] * 3 + ["/Scope /Row"]
    assert "Figure:" in tags
    assert '"/Alt": "u:A hat"' in said("qpdf", "--json", "--json-key=qpdf", pdf)
    assert "Div" not in tags
    assert tags.count("L (block)") == 3
    assert tags.count("LI (block)") == 4 + 2


def test_running_heads_and_page_numbers_are_no_part_of_the_text(pdf: Path) -> None:
    """ISO 14289-1, 7.8. They are seen on the page, and not heard in the tags."""
    seen, heard = said("pdftotext", pdf, "-"), said("pdfinfo", "-struct-text", pdf)
    assert "1 of" in seen
    assert "1 of" not in heard
    plain = subprocess.run(
        ["qpdf", "--qdf", "--object-streams=disable", str(pdf), "-"], capture_output=True, check=True, timeout=60
    ).stdout
    assert plain.count(b"/Artifact\n<</Type /Pagination>>\nBDC") >= 1


def test_links_are_printed_and_headings_are_bookmarks(pdf: Path) -> None:
    told = json.loads(said("qpdf", "--json", "--json-key=qpdf", "--json-key=outlines", pdf))
    values = [entry["value"] for entry in told["qpdf"][1].values() if "value" in entry]
    links = [value for value in values if isinstance(value, dict) and value.get("/Subtype") == "/Link"]
    assert len(links) == 2
    assert all(link["/F"] == 4 for link in links)  # ISO 32000-1, table 165: bit 3, Print
    assert [mark["title"] for mark in told["outlines"]] == ["Hat"]
    assert [mark["title"] for mark in told["outlines"][0]["kids"]] == ["Sizes", "Rights"]


def test_no_path_of_the_machine_is_in_it(pdf: Path) -> None:
    plain = subprocess.run(
        ["qpdf", "--qdf", "--object-streams=disable", str(pdf), "-"], capture_output=True, check=True, timeout=60
    ).stdout
    for trace in (b"file:", b"site.invalid", str(Path(__file__).parents[2]).encode(), b"weasyprint-"):
        assert trace not in plain


def test_with_an_address_links_to_the_site_are_full(tmp_path: Path) -> None:
    page = PAGE.replace("</h1>", '</h1><p><a href="../about.html">About</a></p>')
    (paper,) = lay_out(job(page, press=replace(PRESS, address="https://rook.example/knits")))
    assert paper.faults == ()
    (tmp_path / "hat.pdf").write_bytes(paper.content)
    assert "https://rook.example/knits/about.html" in said("pdfinfo", "-url", tmp_path / "hat.pdf")


PROGRAM = """
import hashlib, sys
sys.path.insert(0, sys.argv[1])
import test_paper
print(hashlib.sha256(test_paper.lay_out(test_paper.job())[0].content).hexdigest())
"""


def test_the_same_bytes_in_any_process(pdf: Path) -> None:
    """Whatever the order of its hashes, its time zone, its language and its folder."""
    surroundings = {**os.environ, "PYTHONHASHSEED": "7", "TZ": "Pacific/Auckland", "LC_ALL": "C", "HOME": "/"}
    line = [sys.executable, "-c", PROGRAM, str(Path(__file__).parent)]
    done = subprocess.run(line, env=surroundings, cwd="/", capture_output=True, text=True, check=True, timeout=120)
    assert done.stdout.strip() == hashlib.sha256(pdf.read_bytes()).hexdigest()


# -------------------------------------------------------------------------------------------------------- side by side


def jobs(number: int) -> list[Job]:
    return [job(PAGE.replace("Hat</h1>", f"Hat {turn}</h1>"), f"patterns/hat-{turn}.pdf") for turn in range(number)]


def test_two_processes_give_what_one_gives() -> None:
    several = jobs(MANY + 1)
    assert list(lay_out_all(several)) == [lay_out(each) for each in several]
    assert multiprocessing.active_children() == []


def test_another_executor_does_the_work() -> None:
    done: list[str] = []

    class Counted(ThreadPoolExecutor):
        def submit(self, fn: Callable[..., object], /, *args: Job, **kwargs: object) -> object:  # type: ignore[override]
            done.extend(each.path for each in args)
            return super().submit(fn, *args, **kwargs)

    with Counted(1) as executor:
        papers = list(lay_out_all(jobs(2), executor))
    assert done == [paper.path for (paper,) in papers] == ["patterns/hat-0.pdf", "patterns/hat-1.pdf"]


def test_a_process_that_is_ended_from_outside() -> None:
    papers = lay_out_all(jobs(40))
    next(papers)
    for child in multiprocessing.active_children():
        child.kill()
    with pytest.raises(PaperFault, match="ended from outside"):
        list(papers)


def children(parent: int) -> list[int]:
    """The processes that a process has started and that still run."""
    found = []
    for stat in Path("/proc").glob("[0-9]*/stat"):
        try:
            _, _, rest = stat.read_text().rpartition(") ")
        except OSError:
            continue
        state, its_parent = rest.split()[:2]
        if int(its_parent) == parent and state != "Z":
            found.append(int(stat.parent.name))
    return found


def running(processes: list[int]) -> list[int]:
    return [each for each in processes if Path(f"/proc/{each}").exists()]


def waited_for(condition: Callable[[], object]) -> bool:
    end = time.monotonic() + 30
    while not condition() and time.monotonic() < end:
        time.sleep(0.05)
    return bool(condition())


def test_no_process_outlives_one_that_is_killed() -> None:
    program = (
        "import sys; sys.path.insert(0, sys.argv[1]); import test_paper\n"
        "if __name__ == '__main__':\n"
        "    for (paper,) in test_paper.lay_out_all(test_paper.jobs(500)): print(paper.path, flush=True)"
    )
    line = [sys.executable, "-c", program, str(Path(__file__).parent)]
    with subprocess.Popen(line, stdout=subprocess.PIPE) as parent:
        assert parent.stdout is not None
        assert parent.stdout.readline() == b"patterns/hat-0.pdf\n"
        workers = children(parent.pid)
        parent.send_signal(signal.SIGKILL)
    assert len(workers) >= 2
    assert waited_for(lambda: not running(workers))


# ---------------------------------------------------------------------------------------------------------------- keys


def test_the_key_changes_with_everything_that_shows(monkeypatch: pytest.MonkeyPatch) -> None:
    base = job()
    assert base.key == job().key
    (path, style), *fonts = PRESS.files
    others = [
        replace(base, html=PAGE + " "),
        replace(base, pictures=()),
        replace(base, pictures=(("media/hat one.svg", PICTURE + b" "),)),
        replace(base, created="2026-03-02"),
        replace(base, modified=""),
        replace(base, targets=(("patterns/cap.pdf", Sheet.A4),)),
        replace(base, targets=(("patterns/hat.pdf", Sheet.LETTER),)),
        replace(base, forms=True),
        replace(base, press=replace(PRESS, address="https://rook.example/")),
        replace(base, press=replace(PRESS, files=((path, style + b" "), *fonts))),
        replace(base, press=replace(PRESS, files=((path, style), *fonts[1:]))),
    ]
    keys = [each.key for each in (base, *others)]
    monkeypatch.setattr("importlib.metadata.version", lambda _name: "0.0")
    print_job._renderer_digest.cache_clear()  # noqa: SLF001
    keys.append(base.key)
    print_job._renderer_digest.cache_clear()  # noqa: SLF001
    assert len(set(keys)) == len(keys)


def test_the_pictures_on_a_page() -> None:
    media = {"hat one.svg": b"1", "deep/cap.png": b"2", "other.svg": b"3"}
    page = '<img src="../media/hat%20one.svg"><img src="../media/deep/cap.png"><img src="../media/gone.svg">'
    assert pictures_on(page, media) == (("media/deep/cap.png", b"2"), ("media/hat one.svg", b"1"))
