"""In: what a person types. Out: the command carried out, and an exit code that says how it ended."""

import sys

import click

from sizewright.command.begin_command import begin_command
from sizewright.command.errata_command import errata_command
from sizewright.command.function_command import function_command
from sizewright.command.outcome import Careful
from sizewright.command.preview_command import preview_command
from sizewright.command.proof_command import proof_command
from sizewright.command.publish_command import publish_command
from sizewright.command.restate_command import restate_command
from sizewright.command.rule_command import rule_command
from sizewright.command.sign_off_command import sign_off_command
from sizewright.command.terminal import writable
from sizewright.command.test_sheets_command import test_sheets_command
from sizewright.command.tested_command import tested_command
from sizewright.command.translate_command import translate_command


@click.group(
    cls=Careful,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
    epilog="`sizewright COMMAND --help` shows examples of each command.",
)
@click.version_option(package_name="sizewright", message="%(prog)s %(version)s")
@click.option("--debug", is_flag=True, help="After a fault in sizewright itself, show where in the program it arose.")
@click.pass_context
def sizewright(ctx: click.Context, *, debug: bool) -> None:
    """Publish knitting patterns in many sizes whose numbers are worked out, not typed.

    A pattern is a Markdown file with a header, text and blocks of calculations. Every number in it is worked out
    exactly for every size and proofed; what holds in all sizes is published as a web site with PDFs.

    \b
    A first pattern, in an empty folder:
      sizewright begin ear-band
      sizewright preview
      sizewright publish
    """
    ctx.meta[Careful.DEBUG] = debug


for _command in (
    begin_command,
    errata_command,
    function_command,
    preview_command,
    proof_command,
    publish_command,
    restate_command,
    rule_command,
    sign_off_command,
    test_sheets_command,
    tested_command,
    translate_command,
):
    sizewright.add_command(_command)


def main() -> None:
    """Runs the command line and ends the program.

    Exit codes: 0 done, 1 refused or errors found, 2 wrong use or unreadable, 3 a fault of our own, 130 interrupted.
    """
    sys.stdout, sys.stderr = writable(sys.stdout), writable(sys.stderr)
    sizewright(prog_name="sizewright")
