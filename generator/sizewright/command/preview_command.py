"""In: a project folder. Out: its pages on loopback while the command runs, those of the newest source."""

import signal
import threading
from pathlib import Path
from tempfile import TemporaryDirectory
from types import FrameType

import click
from rich.console import Console

from sizewright.command.outcome import fault_message
from sizewright.command.preview.board import Board
from sizewright.command.preview.building import Builder
from sizewright.command.preview.opening import open_browser, open_server
from sizewright.command.preview.server import PreviewServer
from sizewright.command.preview.watching import changes
from sizewright.command.reading import open_folder
from sizewright.command.terminal import standard_error, standard_output


@click.command("preview", short_help="Show the site while it is being written.")
@click.argument("folder", default=".", type=click.Path(path_type=Path))
@click.option(
    "--port", metavar="N", type=click.IntRange(0, 65535), help="Serve on this port; 0 lets the system choose one."
)
@click.option("--no-open", is_flag=True, help="Do not open the page in a browser.")
def preview_command(folder: Path, port: int | None, *, no_open: bool) -> None:
    """Show the site while it is being written: each time a source is saved, the page loads itself again.

    The site is made in a temporary folder and served to this machine only; site/ is not touched. What is found in the
    source is shown on the page and here. A pattern with errors keeps the pages it had before, with the findings above
    them. Ctrl-C ends the preview.

    \b
    Examples:
      sizewright preview                  the project in this folder
      sizewright preview ../studio        another one
      sizewright preview --port 9000      at http://127.0.0.1:9000/
      sizewright preview --no-open        print the address only
    """
    open_folder(folder)  # where there is no project, say so and end
    board, console = Board(), standard_output()
    signal.signal(signal.SIGTERM, _interrupt)
    with TemporaryDirectory(prefix="sizewright-preview-") as place:
        builder = Builder(folder, Path(place) / "site", board, console)
        server = open_server(port, board, builder.papers, _tell_fault)
        try:
            _serve(server, builder, folder, console, no_open=no_open)
        except KeyboardInterrupt:
            console.print()  # the terminal has written ^C on the line
        finally:
            server.shutdown()
            server.server_close()


def _serve(server: PreviewServer, builder: Builder, folder: Path, console: Console, *, no_open: bool) -> None:
    threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.1}, daemon=True).start()
    rounds = changes(folder)
    builder.build(next(rounds))
    console.print(f"The preview is at {server.address} until Ctrl-C ends it.")
    if not no_open:
        open_browser(server.address)
    for changed in rounds:
        builder.build(changed)


def _tell_fault(fault: BaseException) -> None:
    standard_error().print(fault_message(fault), soft_wrap=True)


def _interrupt(_signal: int, _frame: FrameType | None) -> None:
    raise KeyboardInterrupt
