"""The command on a real terminal (a pseudo-terminal): colours, width and the bar, and how a person turns them off."""

import os
import pty
import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from sizewright.command import progress
from sizewright.command.progress import Bar
from sizewright.command.terminal import terminal

COMMAND = Path(sys.executable).with_name("sizewright")
Show = Callable[..., str]


@pytest.fixture
def show(band: Path) -> Show:
    """What `proof` of a broken pattern prints on a terminal."""
    broken = band.read_text(encoding="utf-8").replace("fits multiple of 4", "fits multiple of 7")
    band.write_text(broken, encoding="utf-8")

    def shown(**env: str) -> str:
        surroundings = {name: value for name, value in os.environ.items() if name not in ("NO_COLOR", "COLUMNS")}
        screen, end = pty.openpty()
        process = subprocess.Popen(
            [COMMAND, "proof", band], stdout=end, stderr=end, env={**surroundings, "TERM": "xterm", **env}
        )
        os.close(end)
        text = b"".join(iter(lambda: _read(screen), b""))
        os.close(screen)
        assert process.wait(timeout=60) == 1
        return text.decode().replace("\r\n", "\n")

    return shown


def _read(screen: int) -> bytes:
    try:
        return os.read(screen, 65536)
    except OSError:  # Linux says so when the other end has closed
        return b""


def test_colours_on_a_terminal(show: Show) -> None:
    assert "\x1b[1;31merror" in show()


@pytest.mark.parametrize("env", [{"NO_COLOR": "1"}, {"TERM": "dumb"}])
def test_none_where_they_are_declined(show: Show, env: dict[str, str]) -> None:
    text = show(**env)
    assert "\x1b" not in text
    assert "error  “cast_on” does not fit" in text


def test_lines_are_wrapped_at_its_width(show: Show) -> None:
    text = re.sub(r"\x1b\[[0-9;]*m", "", show(COLUMNS="50"))
    assert max(map(len, text.splitlines())) <= 50
    assert "1 error in 1 pattern\n" in text


def test_the_bar_is_for_a_person_who_waits(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(progress, "_PATIENCE", 0.0)

    def shown(*, is_terminal: bool) -> str:
        with (tmp_path / "screen").open("w+", encoding="utf-8") as stream:
            monkeypatch.setattr(stream, "isatty", lambda: is_terminal, raising=False)
            with Bar(terminal(stream)) as bar:
                for what in ("patterns", "PDFs"):
                    bar.start(3, what)
                    for _ in range(3):
                        bar.step()
            stream.seek(0)
            return stream.read()

    assert shown(is_terminal=False) == ""
    text = shown(is_terminal=True)
    assert "PDFs" in text
    assert "3/3" in text
    assert text.endswith("\x1b[2K")  # the line is cleared: nothing stays behind


def test_a_log_shows_that_long_work_goes_on(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(progress, "_PAUSE", -1)
    with (tmp_path / "log").open("w+", encoding="utf-8") as stream:
        with Bar(terminal(stream)) as bar:
            bar.start(2, "PDFs")
            bar.step()
            bar.step()
        stream.seek(0)
        assert stream.read() == "PDFs: 1 of 2\nPDFs: 2 of 2\n"


def test_no_bar_for_what_is_done_at_once(show: Show) -> None:
    assert "━" not in show()
