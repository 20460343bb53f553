"""In: a port somebody asked for, or none. Out: a server that listens, and a browser where there is a screen."""

import errno
import os
import sys
import webbrowser
from collections.abc import Callable

from sizewright.command.outcome import Stopped
from sizewright.command.preview.board import Board
from sizewright.command.preview.papers import Papers
from sizewright.command.preview.server import HOST, PreviewServer

FIRST_PORT = 8642
_TRIES = 50
_TAKEN = (errno.EADDRINUSE, errno.EACCES)


def open_server(
    port: int | None, board: Board, papers: Papers, on_fault: Callable[[BaseException], None]
) -> PreviewServer:
    """A server on that port, or on the first free one from 8642 on where none was asked for. Raises Stopped."""
    for candidate in range(FIRST_PORT, FIRST_PORT + _TRIES) if port is None else (port,):
        try:
            return PreviewServer(candidate, board, papers, on_fault)
        except OSError as refusal:
            if refusal.errno not in _TAKEN:
                raise
            reason = "is in use by another program" if refusal.errno == errno.EADDRINUSE else "may not be used"
    if port is None:
        raise Stopped(
            f"No port from {FIRST_PORT} to {FIRST_PORT + _TRIES - 1} on {HOST} is free; choose one with --port."
        )
    raise Stopped(f"Port {port} on {HOST} {reason}. Choose another one, or leave --port out for the next free one.")


def open_browser(address: str) -> None:
    """Shows the address in the person's browser; without a screen none is started, as it would take the terminal."""
    has_screen = sys.platform in ("win32", "darwin") or any(map(os.environ.get, ("DISPLAY", "WAYLAND_DISPLAY")))
    if has_screen and sys.stdout.isatty():
        webbrowser.open(address)
