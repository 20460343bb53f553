"""In: a project folder. Out: its site written, or refused with the reasons."""

from pathlib import Path

import click
from rich.console import Console
from rich.text import Text

from sizewright.base.finding import has_error
from sizewright.command.outcome import DONE, REFUSED, Stopped
from sizewright.command.progress import Bar
from sizewright.command.proofing import Proofing, proof_opened
from sizewright.command.reading import Opened, check_folder, open_folder
from sizewright.command.report_text import number, print_report
from sizewright.command.terminal import print_indented, safe, standard_error, standard_output
from sizewright.publish.faults import NotWritten, PaperFault
from sizewright.publish.manifest import Options, Stored, inputs_digest, up_to_date
from sizewright.publish.run import Published, publish, site_folder
from sizewright.publish.theme import BadTheme


@click.command("publish", short_help="Proof everything, then write the site and the PDFs.")
@click.argument("folder", default=".", type=click.Path(path_type=Path))
@click.option(
    "--without-refused",
    is_flag=True,
    help="Publish the sound patterns; one with errors keeps the pages it had, or is left out if it had none.",
)
@click.pass_context
def publish_command(ctx: click.Context, folder: Path, *, without_refused: bool) -> None:
    """Proof everything, then write the site and the PDFs into FOLDER/site.

    With an error anywhere nothing is written, and the site stays what it was. What has not changed is not made again.

    The exit code is 0 where the site was published or was up to date, 1 where it was refused, and 2 where the folder
    cannot be read or written.

    \b
    Examples:
      sizewright publish                    the project in this folder
      sizewright publish ../studio          another one
      sizewright publish --without-refused  all but the patterns that have errors
    """
    check_folder(folder)
    out, options = standard_output(), Options()
    inputs = inputs_digest(folder, options)  # before anything is read: what is saved meanwhile is for the next run
    stored = up_to_date(folder, site_folder(folder), options, inputs)
    if stored:
        _say(out, _nothing_new(stored, folder))
        ctx.exit(DONE)
    proofing, made = _proof_and_publish(open_folder(folder), inputs, without_refused=without_refused)
    print_report(out, proofing)
    match made:
        case PaperFault(faults=faults):
            _say(out, "Refused: nothing was written, as PDFs have faults.", *faults)
            ctx.exit(REFUSED)
        case Published(done=False):
            _say(out, *_refused(made, proofing, folder))
            ctx.exit(REFUSED)
        case _:
            _say(out, *_published(made, folder))
            ctx.exit(DONE)


def _proof_and_publish(
    opened: Opened, inputs: str, *, without_refused: bool
) -> tuple[Proofing, Published | PaperFault]:
    with Bar(standard_error()) as bar:
        proofing = proof_opened([opened], bar)
        proofed = [one.proofed for one in proofing.checked]
        try:
            made = publish(opened.project, proofed, without_refused=without_refused, progress=bar, inputs=inputs)
        except PaperFault as fault:
            return proofing, fault
        except (NotWritten, BadTheme) as reason:
            raise Stopped(str(reason)) from reason
    return proofing, made


def _say(out: Console, *lines: str) -> None:
    for line in lines:
        print_indented(out, Text(safe(line)), rest=2)


def _nothing_new(stored: Stored, folder: Path) -> str:
    found = f"{number(stored.patterns, 'pattern')}, {number(stored.warnings, 'warning')}"
    shown = "; “sizewright proof” shows them" if stored.warnings else ""
    return f"Nothing has changed since {_site(folder)} was published ({found}{shown})."


def _published(made: Published, folder: Path) -> list[str]:
    pages, papers = (sum(path.endswith(kind) for path in made.written) for kind in (".html", ".pdf"))
    others = len(made.written) - pages - papers
    written = [
        number(count, word) for count, word in ((pages, "page"), (papers, "PDF"), (others, "other file")) if count
    ]
    counts = [f"{', '.join(written)} written" if written else "nothing new"]
    counts += [
        f"{count} {word}"
        for count, word in ((len(made.unchanged), "unchanged"), (len(made.removed), "removed"))
        if count
    ]
    lines = [f"Published in {_site(folder)}: {'; '.join(counts)}."]
    left_out = [name for name in made.refused if name not in made.kept]
    if made.kept:
        lines.append(f"Refused, and kept as last published: {', '.join(made.kept)}.")
    if left_out:
        lines.append(f"Refused, and left out, as never published: {', '.join(left_out)}.")
    return lines


def _refused(made: Published, proofing: Proofing, folder: Path) -> list[str]:
    site = _site(folder)
    stays = f", and {site} is what it was" if site_folder(folder).exists() else ""
    lines = [f"Refused: nothing was written{stays}."]
    if made.refused and not has_error(proofing.apart) and len(made.refused) < len(proofing.checked):
        names = ", ".join(made.refused)
        lines.append(f"“sizewright publish --without-refused” publishes the rest without {names}.")
    return lines


def _site(folder: Path) -> str:
    return f"{site_folder(folder).as_posix()}/"
