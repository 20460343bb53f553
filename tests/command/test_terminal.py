"""What a terminal obeys never reaches it from a source, and colours stay away where nobody wants them."""

import io

import pytest
from rich.text import Text

from sizewright.command.terminal import print_indented, safe, terminal, untabbed


class Screen(io.StringIO):
    def isatty(self) -> bool:
        return True


def shown(stream: io.StringIO) -> str:
    terminal(stream).print(Text("error", style="bold red"))
    return stream.getvalue()


@pytest.mark.parametrize("sign", ["\x1b", "\x07", "\r", "\x9b", "\u202e", "\u2066", "\u2028", "\udc80", "\0"])
def test_what_a_terminal_obeys_is_shown_as_a_sign(sign: str) -> None:
    assert safe(f"a{sign}b") == "a�b"


@pytest.mark.parametrize(
    "text", ["72 (80, 88)", "½ in", "Mützen für Köpfe", "編み物", "two\nlines", "soft\u00adhyphen"]
)
def test_what_it_only_shows_is_kept(text: str) -> None:
    assert safe(text) == text


def test_tabs_stop_every_four_cells() -> None:
    assert untabbed("\ta\tb") == "    a   b"
    assert untabbed("編\ta") == "編  a"  # a wide sign takes two cells


def test_a_pipe_gets_no_colours(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm-256color")
    monkeypatch.setenv("FORCE_COLOR", "1")
    assert shown(io.StringIO()) == "error\n"
    assert "\x1b[" in shown(Screen())


@pytest.mark.parametrize(("name", "value"), [("NO_COLOR", "1"), ("TERM", "dumb")])
def test_a_person_can_decline_them(monkeypatch: pytest.MonkeyPatch, name: str, value: str) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm-256color")
    monkeypatch.setenv(name, value)
    assert shown(Screen()) == "error\n"


def test_words_in_square_brackets_are_no_markup() -> None:
    stream = io.StringIO()
    terminal(stream).print(Text("[red]K2[/red] :smiley:"))
    assert stream.getvalue() == "[red]K2[/red] :smiley:\n"


def test_a_paragraph_is_wrapped_on_a_terminal_only(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "40")
    monkeypatch.setenv("NO_COLOR", "1")
    words = "one stitch " * 12
    screen, pipe = Screen(), io.StringIO()
    print_indented(terminal(screen), Text(words), first=2, rest=6)
    print_indented(terminal(pipe), Text(words), first=2, rest=6)
    lines = screen.getvalue().splitlines()
    assert len(lines) > 2
    assert all(len(line) <= 40 for line in lines)
    assert [line[:7] for line in lines[:2]] == ["  one s", "      o"]
    assert pipe.getvalue().count("\n") == 1
