"""In: patterns, a folder and perhaps some sizes. Out: for each size a sheet for a test knitter: page, PDF form, CSV."""

from pathlib import Path

import click
from rich.text import Text

from sizewright.base.finding import Level
from sizewright.base.nearest import did_you_mean
from sizewright.command.outcome import DONE, REFUSED, Stopped
from sizewright.command.progress import Bar
from sizewright.command.proofing import Checked, proof_opened
from sizewright.command.reading import open_paths
from sizewright.command.report_text import number
from sizewright.command.terminal import safe, standard_error, standard_output
from sizewright.proof.expected import ONE_SIZE
from sizewright.proof.signing import may_be_signed
from sizewright.publish.faults import NotWritten
from sizewright.publish.sheet.write import write_sheets
from sizewright.publish.tester.sheets import INDEX, Subject, sheets


@click.command("test-sheets", short_help="Write sheets for test knitters: what each size should come to, with boxes.")
@click.argument("path", type=click.Path(path_type=Path))
@click.option(
    "--to",
    metavar="FOLDER",
    required=True,
    type=click.Path(path_type=Path),
    help="The folder the sheets are written to; it is made, or made anew.",
)
@click.option("--size", "sizes", metavar="NAME", multiple=True, help="Only this size; may be given several times.")
@click.pass_context
def test_sheets_command(ctx: click.Context, path: Path, to: Path, sizes: tuple[str, ...]) -> None:
    """Write sheets for test knitters: what each size should come to, with boxes.

    PATH is a pattern file, or a project folder for all its patterns. For each size there is a page to print, a PDF
    whose boxes can be filled in, and a CSV file for a spreadsheet: stitches wherever they change, rows, measurements
    and yarn at the end of each part, the gauge and the finished measurements. “sizewright tested” compares what comes
    back.

    The exit code is 0 where they were written, 1 where a pattern has errors (nothing is written then), and 2 where PATH
    cannot be read, there is no such size, or the FOLDER cannot be written.

    \b
    Examples:
      sizewright test-sheets content/patterns/hat.md --to testers
      sizewright test-sheets content/patterns/hat.md --to testers --size "Adult M" --size "Adult L"
    """
    out = standard_output()
    with Bar(standard_error()) as bar:
        checked = proof_opened(open_paths((path,)), bar).checked
        refused = [one for one in checked if not may_be_signed(one.proofed)]
        for one in refused:
            errors = sum(finding.level is Level.ERROR for finding in one.findings)
            out.print(Text(safe(f"No sheet for {one.source}: it has {number(errors, 'error')}.")), soft_wrap=True)
        if refused:
            out.print(Text("Nothing was written; “sizewright proof” shows what is wrong."), soft_wrap=True)
            ctx.exit(REFUSED)
        wanted = _wanted(checked, sizes)
        made = _write(to, checked, wanted, bar)
    told = f"{number(made, 'sheet')} for test knitters written; open {(to / INDEX).as_posix()} in a browser."
    out.print(Text(safe(told)), soft_wrap=True)
    ctx.exit(DONE)


def _wanted(checked: tuple[Checked, ...], sizes: tuple[str, ...]) -> frozenset[str]:
    """The sizes there are, or those that were asked for. Raises Stopped where one is not there."""
    names = {size.casefold(): size for one in checked for size in _sizes(one)}
    for size in sizes:
        if size.casefold() not in names:
            known = list(names.values())
            mend = did_you_mean(size, known, f"The sizes are {', '.join(known)}.")
            raise Stopped(f"There is no size “{size}”. {mend}")
    return frozenset(names[size.casefold()] for size in sizes) or frozenset(names.values())


def _sizes(one: Checked) -> tuple[str, ...]:
    return one.proofed.graded.sizes or (ONE_SIZE,)


def _write(folder: Path, checked: tuple[Checked, ...], wanted: frozenset[str], bar: Bar) -> int:
    """Writes the sheets and says how many. Raises Stopped; the folder is then what it was."""
    subjects = []
    for one in checked:
        studio = one.opened.project.studio
        subjects.append(Subject(one.proofed.worked, studio.name, studio.metric_first))
    made = sum(size in wanted for one in checked for size in _sizes(one))
    bar.start(made, "Laying out forms")
    place = folder if folder.name not in ("", "..") else folder.resolve()
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
        write_sheets(place, sheets(subjects, wanted.__contains__, bar.step), INDEX)
    except NotWritten as reason:
        raise Stopped(str(reason)) from reason
    return made
