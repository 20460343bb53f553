"""In: print pages that are wrong or reach for what is not theirs. Out: a fault for each, and nothing let in."""

import logging
import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from sizewright.publish.layout import lay_out
from sizewright.publish.print_job import Job, Press
from sizewright.publish.theme import Theme
from sizewright.read.project import Sheet

PICTURE = b'<svg xmlns="http://www.w3.org/2000/svg" width="90" height="60"><rect width="90" height="60"/></svg>'
PRESS = Press(tuple((file.path, file.content) for file in Theme.find("studio", Path(__file__).parent).paper_files()))
PAGE = Path(__file__).with_name("paper.html").read_text(encoding="utf-8")


def job(html: str = PAGE, press: Press = PRESS) -> Job:
    return Job((("patterns/hat.pdf", Sheet.A4),), html, (("media/hat one.svg", PICTURE),), "2026-03-01", "", press)


SYSTEM = "root:x:0:0"
BAD = {
    "a file of the system": '<img src="file:///etc/passwd" alt="x">',
    "a path that climbs": '<img src="../../../../../../etc/passwd" alt="x">',
    "a path that climbs, in disguise": '<img src="../media/%2e%2e/%2e%2e/etc/passwd" alt="x">',
    "the network": '<img src="http://192.0.2.1/x.png" alt="x">',
    "a style from the network": '<link rel="stylesheet" href="https://elsewhere.example/x.css">',
    "an import of styles": "<style>@import url(file:///etc/passwd);</style>",
    "a file attached": '<link rel="attachment" href="file:///etc/passwd" title="x">',
    "a background": '<p style="background: url(file:///etc/passwd)">x</p>',
    "a picture in a drawing": '<svg width="9" height="9"><title>x</title><image href="file:///etc/passwd"/></svg>',
    "a picture in a picture": '<img src="../media/spy.svg" alt="x">',
    "a picture that is not the page's": '<img src="../media/other.svg" alt="x">',
    "a picture without words": '<img src="../media/hat%20one.svg">',
    "a broken picture": '<img src="../media/broken.png" alt="x">',
    "a style that is none": '<p style="frobnicate: 1">x</p>',
    "a link out of the paper": '<a href="../about.html">x</a>',
    "a link to an anchor that is not there": '<a href="#nowhere">x</a>',
    "a sign that no font has": "<p>\u0378</p>",
}
SPY = b'<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><image href="file:///etc/passwd"/></svg>'


@pytest.mark.parametrize("what", BAD)
def test_a_fault(what: str, log_records: list[logging.LogRecord]) -> None:
    bad = job(PAGE.replace("</h1>", f"</h1>{BAD[what]}", 1))
    bad = replace(bad, pictures=(*bad.pictures, ("media/spy.svg", SPY), ("media/broken.png", b"not a picture")))
    (paper,) = lay_out(bad)
    log_records.clear()
    assert paper.faults
    assert all(fault.strip() for fault in paper.faults)
    assert SYSTEM.encode() not in paper.content
    assert lay_out(job())[0].faults == (), "one faulty page spoils the next"


def test_a_page_without_a_language(log_records: list[logging.LogRecord]) -> None:
    assert lay_out(job(PAGE.replace(' lang="en"', "")))[0].faults
    log_records.clear()


def test_a_style_of_the_theme_that_is_none(log_records: list[logging.LogRecord]) -> None:
    """It is told with every page, though styles are parsed once."""
    press = Press((("theme/paper/paper.css", b"p { frobnicate: 1 }"),))
    (first,), (second,) = lay_out(job("<html lang=en><title>x</title><p>x", press=press)), lay_out(job(press=press))
    log_records.clear()
    assert any("frobnicate" in fault for fault in first.faults)
    assert any("frobnicate" in fault for fault in second.faults)


def test_a_mistake_of_the_renderer_is_a_fault(log_records: list[logging.LogRecord]) -> None:
    """`li::marker` with content ends weasyprint 70.0 in a TypeError."""
    page = PAGE.replace("</head>", '<style>li::marker { content: "x" }</style></head>')
    (paper,) = lay_out(job(page))
    log_records.clear()
    assert paper.content == b""
    assert "the renderer failed" in paper.faults[-1]


def test_embedded_data_is_let_in() -> None:
    page = PAGE.replace(
        "</h1>", '</h1><img alt="x" src="data:image/svg+xml,%3Csvg xmlns=%27http://www.w3.org/2000/svg%27/%3E">'
    )
    assert lay_out(job(page))[0].faults == ()


def test_without_pango(tmp_path: Path) -> None:
    """As weasyprint is where its library is missing: it prints a banner and raises OSError. We say a sentence."""
    (tmp_path / "weasyprint.py").write_text("print('banner')\nraise OSError('cannot load library libgobject-2.0-0')\n")
    program = (
        f"import sys; sys.path.insert(0, {str(tmp_path)!r}); import test_paper\ntest_paper.lay_out(test_paper.job())"
    )
    surroundings = {**os.environ, "PYTHONPATH": str(Path(__file__).parent)}
    line = [sys.executable, "-c", program]
    done = subprocess.run(line, env=surroundings, capture_output=True, text=True, check=False, timeout=60)
    assert done.stdout == ""
    last = done.stderr.splitlines()[-1]
    assert last.startswith("sizewright.publish.faults.NoPango: PDFs need the Pango library")
    assert "libpango-1.0-0" in last
