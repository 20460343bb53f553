"""In: project folders and pattern files. Out: their instructions in house style, shown or written in their place."""

from pathlib import Path

import click
from rich.console import Console
from rich.text import Text

from sizewright.command.outcome import DONE, REFUSED
from sizewright.command.reading import open_paths
from sizewright.command.restating import RestatedFile, restated_files, rewrite
from sizewright.command.terminal import safe, standard_output


@click.command("restate", short_help="Show instructions in house style, or rewrite them so.")
@click.argument("paths", metavar="[PATH]...", nargs=-1, type=click.Path(path_type=Path))
@click.option("--write", is_flag=True, help="Rewrite the lines that differ, and nothing else.")
@click.pass_context
def restate_command(ctx: click.Context, paths: tuple[Path, ...], *, write: bool) -> None:
    """Show instructions in house style, or rewrite them so.

    A PATH is a project folder or one pattern file; without any, the project in this folder is taken. Each line of a
    work or stitch block that is said otherwise in house style is shown as typed (-) and in house style (+). Both say
    the same: one spelling of each stitch, one way to write a repeat, a side, a count.

    A line of which a word is not understood stays as typed, and so do lines that are declared and lines that a plan
    writes. With --write nothing but those lines changes, and each file in one step.

    The exit code is 0 where nothing differs or all is rewritten, 1 where lines differ, and 2 where a PATH cannot be
    read.

    \b
    Examples:
      sizewright restate content/patterns/hat.md           what would change in one pattern
      sizewright restate --write content/patterns/hat.md   change it
    """
    files = restated_files(open_paths(paths or (Path(),)))
    console = standard_output()
    differing = [file for file in files if file.differing]
    for file in differing:
        if write:
            rewrite(file)
        else:
            _print_lines(console, file)
    console.print(Text(_summary(files, written=write)), soft_wrap=True)
    ctx.exit(REFUSED if differing and not write else DONE)


def _print_lines(console: Console, file: RestatedFile) -> None:
    for line in file.differing:
        console.print(Text(safe(f"{file.source}:{line.first}")), soft_wrap=True)
        console.print(Text(safe(f"- {line.typed}"), style="red"), soft_wrap=True)
        console.print(Text(safe(f"+ {line.house}"), style="green"), soft_wrap=True)
    console.print()


def _summary(files: tuple[RestatedFile, ...], *, written: bool) -> str:
    lines = sum(len(file.lines) for file in files)
    count = sum(len(file.differing) for file in files)
    if not count:
        return f"{_counted(lines)}, none said otherwise in house style"
    return f"{count} of {_counted(lines)} {'rewritten' if written else 'said otherwise'} in house style"


def _counted(lines: int) -> str:
    return f"{lines} line{'' if lines == 1 else 's'} of instructions"
