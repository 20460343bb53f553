"""In: project folders and pattern files. Out: every finding in them, for a person or as JSON; nothing is written."""

from collections.abc import Callable, Mapping
from pathlib import Path
from types import MappingProxyType

import click

from sizewright.command.outcome import DONE, REFUSED
from sizewright.command.progress import Bar
from sizewright.command.proofing import Proofing, proof_opened
from sizewright.command.reading import open_paths
from sizewright.command.report_json import json_report, json_schema
from sizewright.command.report_lines import lines_report
from sizewright.command.report_sarif import sarif_report
from sizewright.command.report_text import print_report
from sizewright.command.sheeting import write_sheets
from sizewright.command.terminal import standard_error, standard_output, write_bytes

_REPORTS: Mapping[str, Callable[[Proofing], bytes]] = MappingProxyType(
    {"json": json_report, "lines": lines_report, "sarif": sarif_report}
)


def _print_schema(ctx: click.Context) -> None:
    write_bytes(json_schema())
    ctx.exit(DONE)


@click.command("proof", short_help="Find what is wrong in patterns, without writing anything.")
@click.argument("paths", metavar="[PATH]...", nargs=-1, type=click.Path(path_type=Path))
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "lines", "json", "sarif"]),
    default="text",
    show_default=True,
    help="Text for a person, one line a finding for a script, JSON, or SARIF 2.1.0 for an editor.",
)
@click.option(
    "--to",
    metavar="FOLDER",
    type=click.Path(path_type=Path),
    help="Write a proof sheet of every pattern into this folder: a page to read and print, and tables as CSV.",
)
@click.option(
    "--schema",
    is_flag=True,
    is_eager=True,
    expose_value=False,
    callback=lambda ctx, _, asked: _print_schema(ctx) if asked else None,
    help="Print the JSON Schema of --format json, and end.",
)
@click.pass_context
def proof_command(ctx: click.Context, paths: tuple[Path, ...], form: str, to: Path | None) -> None:
    """Find what is wrong in patterns, without writing anything.

    A PATH is a project folder or one pattern file, which need not belong to a project. Without any, the project in this
    folder is proofed. Each finding says where it is, which sizes it concerns and how to mend it.

    With --to, a FOLDER of proof sheets is made too, or made anew: for each pattern a page that shows where every number
    comes from, and its quantities and its ledger as CSV. A folder that holds anything else is left as it is.

    The exit code is 0 where there are no errors (there may be warnings), 1 where there are, and 2 where a PATH cannot
    be read or the FOLDER cannot be written.

    \b
    Examples:
      sizewright proof                             the project in this folder
      sizewright proof content/patterns/hat.md     one pattern
      sizewright proof draft.md ../other-studio    a file on its own, and a project elsewhere
      sizewright proof --to proof                  a proof sheet of every pattern, in the folder "proof"
      sizewright proof --format json > found.json  every quantity, exact, for every size
      sizewright proof --format lines | grep error one line a finding
    """
    opened = open_paths(paths or (Path(),))
    with Bar(standard_error()) as bar:
        proofing = proof_opened(opened, bar)
    written = write_sheets(to, proofing) if to is not None else ""
    if form == "text":
        print_report(standard_output(), proofing, written)
    else:
        write_bytes(_REPORTS[form](proofing))
    ctx.exit(REFUSED if proofing.refused else DONE)
