"""In: patterns that somebody has looked at. Out: a file beside each that says what was signed off, by whom and when."""

import os
import tempfile
from datetime import UTC, datetime
from pathlib import Path

import click
from rich.text import Text

from sizewright.base.finding import Level
from sizewright.command.outcome import DONE, REFUSED, Stopped
from sizewright.command.progress import Bar
from sizewright.command.proofing import Checked, proof_opened
from sizewright.command.reading import open_paths
from sizewright.command.report_text import number
from sizewright.command.terminal import safe, standard_error, standard_output
from sizewright.proof.records import sign_off_text
from sizewright.proof.signing import may_be_signed
from sizewright.read.sign_off import SUFFIX


@click.command("sign-off", short_help="Record that somebody has looked at a pattern and found it good.")
@click.argument("paths", metavar="PATH...", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option("--by", required=True, help="Who signs it off.")
@click.option("--on", default="", help="When, as you write a date; today where it is not given.")
@click.pass_context
def sign_off_command(ctx: click.Context, paths: tuple[Path, ...], by: str, on: str) -> None:
    """Record that somebody has looked at a pattern and found it good.

    A PATH is a pattern file, or a project folder for all its patterns. Beside NAME.md the file NAME.sign-off is
    written: every quantity and row by size, and every acceptance with its reason, one a line. From then on “proof”
    tells what has moved since, by size; other words that change none of these do not count.

    With “publish_only: signed-off” in content/site.yaml a pattern that is not signed off as it is is not published. A
    pattern with errors cannot be signed off.

    The exit code is 0 where all were signed off, 1 where one has errors (nothing is written then), and 2 where a PATH
    cannot be read.

    \b
    Examples:
      sizewright sign-off content/patterns/hat.md --by "Ann Editor"
      sizewright sign-off . --by "Ann Editor" --on 2026-10-12
    """
    if not by.strip():
        raise Stopped("Say who signs it off: --by NAME.")
    out = standard_output()
    with Bar(standard_error()) as bar:
        checked = proof_opened(open_paths(paths), bar).checked
    refused = [one for one in checked if not may_be_signed(one.proofed)]
    for one in refused:
        errors = sum(finding.level is Level.ERROR for finding in one.findings)
        out.print(Text(safe(f"Not signed off: {one.source} has {number(errors, 'error')}.")), soft_wrap=True)
    if refused:
        out.print(Text("Nothing was written; “sizewright proof” shows what is wrong."), soft_wrap=True)
        ctx.exit(REFUSED)
    day = on.strip() or datetime.now(UTC).astimezone().date().isoformat()
    for one in checked:
        file = _written(one, by, day)
        out.print(Text(safe(f"Signed off: {file}")), soft_wrap=True)
    ctx.exit(DONE)


def _written(one: Checked, by: str, day: str) -> Path:
    """The file beside the pattern, written in one step. Raises OSError."""
    file = Path(one.source).with_suffix(SUFFIX)
    text = sign_off_text(one.proofed.worked, one.proofed.accepted, by, day)
    handle, name = tempfile.mkstemp(dir=file.parent, prefix=f".{file.name}.")
    try:
        with os.fdopen(handle, "wb") as new:
            new.write(text.encode("utf-8", "backslashreplace"))
        Path(name).chmod(0o644)
        Path(name).replace(file)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
    return file
