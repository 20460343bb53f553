"""In: a pattern or a project, and the sheets test knitters sent back. Out: what is not as expected, by size."""

from collections.abc import Iterable, Iterator
from fractions import Fraction
from pathlib import Path

import click

from sizewright.command.outcome import DONE, REFUSED, Stopped
from sizewright.command.progress import Bar
from sizewright.command.proofing import Checked, proof_opened
from sizewright.command.reading import open_paths
from sizewright.command.report_tested import Results, json_tested, text_tested
from sizewright.command.terminal import standard_error, write_bytes
from sizewright.proof.expected import Expectation, expectations
from sizewright.proof.signing import may_be_signed
from sizewright.proof.tested import Judged, compared
from sizewright.read.returned import Returned, Trouble, read_returned, same

_FORMS = {"text": text_tested, "json": json_tested}


@click.command("tested", short_help="Compare sheets that test knitters sent back with what is expected, by size.")
@click.argument("path", type=click.Path(path_type=Path))
@click.argument("returned", metavar="RETURNED...", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option(
    "--tolerance",
    metavar="PERCENT",
    type=click.IntRange(0, 100),
    help="How far gauge, lengths, rows to a length and yarn may be off; without it 2, 3, 5 and 10. Counts never may.",
)
@click.option(
    "--format",
    "form",
    type=click.Choice(list(_FORMS)),
    default="text",
    show_default=True,
    help="Text for a person, or JSON.",
)
@click.pass_context
def tested_command(
    ctx: click.Context, path: Path, returned: tuple[Path, ...], tolerance: int | None, form: str
) -> None:
    """Compare sheets that test knitters sent back with what is expected, by size.

    PATH is the pattern file or the project folder; each RETURNED is a CSV file that “sizewright test-sheets” wrote and
    somebody filled in, or a folder of them. What differs is told stage by stage, knitter beside knitter. A box that is
    no number, a sheet of another version or another size is told and never guessed at.

    The exit code is 0 where everything that was filled in is as expected, 1 where something differs or cannot be read,
    and 2 where PATH or a RETURNED is not there.

    \b
    Examples:
      sizewright tested content/patterns/hat.md returned/ann.csv
      sizewright tested . returned --format json
    """
    files = tuple(_files(returned))
    with Bar(standard_error()) as bar:
        checked = proof_opened(open_paths((path,)), bar).checked
    share = None if tolerance is None else Fraction(tolerance, 100)
    results = _results(checked, files, share)
    write_bytes(_FORMS[form](results))
    ctx.exit(REFUSED if results.differ else DONE)


def _files(returned: Iterable[Path]) -> Iterator[Path]:
    """Every file once, those of a folder by name. Raises Stopped."""
    found: dict[Path, None] = {}
    for path in returned:
        if not path.exists():
            raise Stopped(f"{path} is not there.")
        inside = sorted(one for one in path.iterdir() if one.suffix.casefold() == ".csv") if path.is_dir() else [path]
        if not inside:
            raise Stopped(f"{path} holds no CSV file.")
        found.update(dict.fromkeys(inside))
    yield from found


def _results(checked: Iterable[Checked], files: Iterable[Path], share: Fraction | None) -> Results:
    sheets: list[Judged] = []
    troubles: list[Trouble] = []
    sound: list[Expectation] = []
    faulty = {}
    for one in checked:
        if may_be_signed(one.proofed):
            sound += expectations(one.proofed.worked)
        else:
            faulty[same(one.proofed.graded.pattern.name)] = one.source
    seen: dict[bytes, str] = {}
    for file in files:
        source, content = file.as_posix(), file.read_bytes()
        if content in seen:
            troubles.append(Trouble(source, 0, f"This file is the same as {seen[content]}.", "It was counted once."))
            continue
        seen[content] = source
        found, wrong = read_returned(source, content)
        troubles += wrong
        for returned in found:
            tested, wrong = _compared(sound, faulty, returned, share)
            troubles += wrong
            sheets += [tested] if tested else []
    return Results(tuple(sheets), tuple(troubles))


def _compared(
    sound: list[Expectation], faulty: dict[str, str], returned: Returned, share: Fraction | None
) -> tuple[Judged | None, tuple[Trouble, ...]]:
    source = faulty.get(same(returned.pattern))
    if source is not None:
        message = f"{source} has errors, so what it expects is not sure."
        return None, (Trouble(returned.source, 0, message, "“sizewright proof” shows what is wrong."),)
    return compared(sound, returned, share)
