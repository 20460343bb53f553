"""In: tests that do something wrong on purpose, run as a pytest of their own. Out: the shared fixtures fail them."""

import functools
from collections.abc import Callable, Iterator
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

import pytest
from playwright.sync_api import Page

pytest_plugins = ["pytester"]

HEAD = '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>A page</title>'
PAGE = HEAD + "{}</head><body><h1>A page</h1>{}</body></html>"

SHARED = ("log", "browser", "checkers")


@pytest.fixture
def outcomes(
    pytester: pytest.Pytester, repository: Path, monkeypatch: pytest.MonkeyPatch
) -> Callable[[str], tuple[dict[str, int], str]]:
    """Runs a test module with the shared fixtures, in a process of its own; gives its outcomes and what it printed."""

    def run(source: str) -> tuple[dict[str, int], str]:
        pytester.makepyfile(source)
        with_shared = [word for name in SHARED for word in ("-p", f"tests.shared.{name}")]
        monkeypatch.setenv("PYTHONPATH", str(repository))
        done = pytester.runpytest_subprocess(*with_shared, "-p", "no:xdist", "-p", "no:cacheprovider", "-W", "error")
        return done.parseoutcomes(), done.stdout.str()

    return run


def test_a_warning_in_the_log_fails_a_test(outcomes: Callable[[str], tuple[dict[str, int], str]]) -> None:
    counts, said = outcomes(
        """
        import logging
        def test_quiet(): logging.getLogger("sizewright").info("fine"); logging.getLogger("other").warning("not ours")
        def test_loud(): logging.getLogger("weasyprint").warning("no glyph for %s", "Q")
        def test_loud_below(): logging.getLogger("sizewright.publish").error("lost")
        def test_expected(log_records):
            logging.getLogger("weasyprint").warning("unknown property")
            assert [r.getMessage() for r in log_records] == ["unknown property"]
            log_records.clear()
        """
    )
    assert counts == {"passed": 4, "errors": 2}
    assert "weasyprint WARNING: no glyph for Q" in said
    assert "sizewright.publish ERROR: lost" in said


def test_trouble_in_the_browser_fails_a_test(
    outcomes: Callable[[str], tuple[dict[str, int], str]], tmp_path: Path
) -> None:
    pages = {
        "sound": PAGE.format("", "<p>Here.</p>"),
        "shouts": PAGE.format("<script>console.error('lost a stitch')</script>", ""),
        "throws": PAGE.format("<script>setTimeout(() => { throw new Error('dropped') })</script>", ""),
        "broken": PAGE.format('<link rel="stylesheet" href="gone.css">', ""),
        "outside": PAGE.format("", '<img alt="" src="https://elsewhere.invalid/spy.png">'),
    }
    for name, text in pages.items():
        (tmp_path / f"{name}.html").write_text(text, encoding="utf-8")
    tests = "".join(
        f"def test_{name}(page_at):\n    page_at(Path({str(tmp_path / name)!r} + '.html')).wait_for_timeout(100)\n"
        for name in pages
    )
    counts, said = outcomes(f"from pathlib import Path\n{tests}")
    assert counts == {"passed": 5, "errors": 4}
    for trouble in (
        "console: lost a stitch",
        "uncaught: ",
        "ERR_FILE_NOT_FOUND",
        "request outside: https://elsewhere.invalid/",
    ):
        assert trouble in said


def test_a_page_can_be_without_javascript_narrow_and_dark(tmp_path: Path, page_at: Callable[..., Page]) -> None:
    file = tmp_path / "page.html"
    file.write_text(PAGE.format("<script>document.title = 'Changed'</script>", ""), encoding="utf-8")
    assert page_at(file).title() == "Changed"
    assert page_at(file, javascript=False).title() == "A page"
    page = page_at(file, width=390, dark=True)
    assert page.evaluate("[innerWidth, matchMedia('(prefers-color-scheme: dark)').matches]") == [390, True]


@pytest.fixture
def served(tmp_path: Path) -> Iterator[str]:
    """The address of this test's folder, served on loopback."""

    class Quiet(SimpleHTTPRequestHandler):
        def log_message(self, format: str, *args: object) -> None:  # noqa: A002 - the name of the standard library
            pass

    with ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=str(tmp_path))) as server:
        Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_port}"
        server.shutdown()


def test_a_served_page_is_at_home_and_its_trouble_can_be_expected(
    served: str, tmp_path: Path, page_at: Callable[..., Page], browser_problems: list[str]
) -> None:
    (tmp_path / "page.html").write_text(PAGE.format('<link rel="icon" href="data:,">', ""), encoding="utf-8")
    page_at(f"{served}/page.html")
    assert browser_problems == []
    page_at(f"{served}/gone.html")
    assert [problem.partition(" (")[0] for problem in browser_problems][:1] == [
        "console: Failed to load resource: the server responded with a status of 404"
    ]
    browser_problems.clear()


def test_the_html_checker_finds_what_is_planted(tmp_path: Path, nu_check: Callable[[Path], list[str]]) -> None:
    # The content model of p, and img's need of alt: HTML Living Standard, sections 4.4.1 and 4.8.3.
    folder = tmp_path / "a folder"
    folder.mkdir()
    (folder / "sound.html").write_text(PAGE.format("", "<p>Here.</p>"), encoding="utf-8")
    assert nu_check(tmp_path) == []
    (folder / "bad.html").write_text(PAGE.format("", "<p><div></div></p>\n<img src=x.png>"), encoding="utf-8")
    found = nu_check(tmp_path)
    assert any("bad.html:1: error: No “p” element in scope" in line for line in found), found
    assert any("bad.html:2: error:" in line and "alt" in line for line in found), found


def test_the_style_checker_finds_what_is_planted(tmp_path: Path, css_check: Callable[[Path], list[str]]) -> None:
    (tmp_path / "a.css").write_text("a { color: red }\n", encoding="utf-8")
    assert css_check(tmp_path) == []
    (tmp_path / "b.css").write_text("a {\n  colr: red }\n", encoding="utf-8")
    assert css_check(tmp_path) == [f"{tmp_path}/b.css:2: Unknown property `colr`"]


def test_a_checker_that_is_shown_nothing_fails(outcomes: Callable[[str], tuple[dict[str, int], str]]) -> None:
    counts, said = outcomes(
        """
        def test_pages(nu_check, tmp_path): nu_check(tmp_path)
        def test_styles(css_check, tmp_path): css_check(tmp_path)
        """
    )
    assert counts == {"failed": 2}
    assert said.count("nothing would be checked") >= 2
