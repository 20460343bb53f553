"""In: text from sources and findings. Out: lines on a terminal or in a pipe, safe, wrapped, coloured where wanted."""

import io
import os
import sys
from typing import IO, TextIO
from unicodedata import category

from rich.cells import cell_len
from rich.console import Console
from rich.text import Text

# Signs that turn the reading direction: they could make a line look like another one. They are of the category Cf,
# as soft hyphens and joiners are, which do no harm.
_TURNING = frozenset("\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
_UNSEEN = ("Cc", "Cs", "Zl", "Zp")
_NARROWEST = 24


class Terminal(Console):
    """A console that stays quiet, instead of ending the program, when whoever read its lines has gone."""

    def on_broken_pipe(self) -> None:
        """Sends what still comes nowhere: the verdict, and with it the exit code, is the same without a reader."""
        self.quiet = True
        go_nowhere(self.file)


def terminal(stream: IO[str]) -> Terminal:
    """A console on a stream: colours only where a person sees them and has not declined them (NO_COLOR, TERM=dumb)."""
    seen = stream.isatty()
    declined = bool(os.environ.get("NO_COLOR")) or not seen
    return Terminal(
        file=stream,
        force_terminal=seen,
        color_system=None if declined else "auto",
        highlight=False,
        markup=False,
        emoji=False,
        legacy_windows=False,
    )


def standard_output() -> Terminal:
    """The console for results."""
    return terminal(sys.stdout)


def standard_error() -> Terminal:
    """The console for progress and for what went wrong."""
    return terminal(sys.stderr)


def writable(stream: TextIO | None) -> TextIO:
    """The stream, made to take signs that its encoding lacks as "?"; one closed before the start leads nowhere."""
    if stream is None:
        return io.TextIOWrapper(io.FileIO(os.open(os.devnull, os.O_WRONLY), "w"), encoding="utf-8")
    if isinstance(stream, io.TextIOWrapper):
        stream.reconfigure(errors="replace")
    return stream


def go_nowhere(stream: IO[str]) -> None:
    """Points a stream whose reader has gone at nothing, so that closing it at the end cannot fail either."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, stream.fileno())
    os.close(nowhere)


def finish(stream: IO[str]) -> None:
    """Writes what a stream still holds; where that fails (a full disk) it is dropped, and the end is quiet."""
    try:
        stream.flush()
    except OSError:
        go_nowhere(stream)


def write_bytes(content: bytes) -> None:
    """Writes to standard output as it is, whatever encoding the terminal has; a reader who has gone is no fault."""
    try:
        sys.stdout.flush()
        sys.stdout.buffer.write(content)
        sys.stdout.buffer.flush()
    except BrokenPipeError:
        go_nowhere(sys.stdout)


def safe(text: str) -> str:
    """The text without anything that a terminal would obey instead of showing it; such a sign shows as "�"."""
    return "".join("�" if _obeyed(sign) else sign for sign in text.replace("\t", " "))


def _obeyed(sign: str) -> bool:
    return sign != "\n" and (category(sign) in _UNSEEN or sign in _TURNING)


def untabbed(line: str) -> str:
    """The line with its tabs as spaces, stops every four cells, so that marks below it stand where they should."""
    cells: list[str] = []
    width = 0
    for sign in line:
        shown = " " * (4 - width % 4) if sign == "\t" else safe(sign)
        cells.append(shown)
        width += cell_len(shown)
    return "".join(cells)


def print_indented(console: Console, text: Text, *, first: int = 0, rest: int = 0) -> None:
    """Prints a paragraph; on a terminal it is wrapped at its width, in a pipe it stays one line for other programs."""
    if not console.is_terminal:
        console.print(Text(" " * first).append_text(text), soft_wrap=True)
        return
    width = max(console.width - max(first, rest), _NARROWEST)
    for number, line in enumerate(text.wrap(console, width)):
        line.rstrip()
        console.print(Text(" " * (rest if number else first)).append_text(line), soft_wrap=True)
