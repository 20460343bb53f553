"""In: a name. Out: a small pattern of that name that proofs clean, and what to do with it next."""

from pathlib import Path
from shlex import quote

import click

from sizewright.command.beginning import Begun, CannotBegin, begin, shown_path
from sizewright.command.outcome import Stopped
from sizewright.command.pasting import pasted_file, what_became
from sizewright.command.terminal import safe
from sizewright.read.pasted import Pasted


@click.command("begin", short_help="Write a small pattern to start from.")
@click.argument("words", metavar="NAME", nargs=-1)
@click.option(
    "--from",
    "source",
    metavar="FILE",
    type=click.Path(path_type=Path),
    help="Begin with the text of a finished pattern, every word of it, instead of the ear band.",
)
@click.option("--project", is_flag=True, help="Make this folder a project, although it is not empty.")
def begin_command(words: tuple[str, ...], source: Path | None, *, project: bool) -> None:
    """Write a small pattern to start from: an ear band in three sizes that proofs clean.

    NAME becomes the address of its page: small letters, digits and hyphens. Inside a project the file is
    content/patterns/NAME.md. An empty folder becomes a project, with a content/site.yaml for the studio's name;
    anywhere else the file is NAME.md, on its own. A file that is there already is never written over.

    With --from the pattern is that of a FILE of plain text: lines that are understood as instructions become work
    blocks. What looks like an instruction and is not understood is listed; behind the cast-on it stands in its block,
    where the proof asks for it. All else stays text. Sizes and gauge are taken over where a line
    tells them for certain. NAME may be left out then: it is that of the FILE.

    \b
    Examples:
      sizewright begin ear-band             a pattern to change into your own
      sizewright begin ear-band --project   the same, in a folder that holds other files too
      sizewright begin --from old-hat.txt   a finished pattern, to be proofed as it stands
    """
    name = " ".join(words) or None  # a name of two words is told how to be written
    if name is None and source is None:
        raise click.UsageError("Missing argument 'NAME'.")
    folder = Path.cwd()
    try:
        address, found = pasted_file(source, name) if source else (name or "", None)
        begun = begin(address, folder, new_project=project, text=found.source if found else None)
    except CannotBegin as reason:
        raise Stopped(str(reason)) from reason
    for line in _told(begun, folder, found):
        click.echo(safe(line))


def _told(begun: Begun, folder: Path, found: Pasted | None) -> list[str]:
    file = shown_path(begun.pattern, folder)
    told = [f"Wrote {file}, an ear band in three sizes. Change it into your own pattern."]
    if found is not None:
        told = list(what_became(found, file))
    if begun.studio:
        told.append(
            f"Wrote {shown_path(begun.studio, folder)}, which makes this folder a project: name your studio there."
        )
    where = "" if begun.project in (None, folder) else f" {quote(str(begun.project))}"
    told += ["", "Next:", f"  sizewright proof {quote(file)}"]
    if begun.project:
        told += [f"  sizewright preview{where}", f"  sizewright publish{where}"]
    else:
        told += [
            "",
            "To publish it, move it into content/patterns/ of a project; “sizewright begin” in an empty folder",
        ]
        told += ["makes one."]
    return told
