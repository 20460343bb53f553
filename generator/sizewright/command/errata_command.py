"""In: two versions of a pattern or a project. Out: the numbers and rows that differ, by size, as errata are told."""

from collections.abc import Callable, Mapping
from types import MappingProxyType

import click

from sizewright.command.outcome import DONE, REFUSED
from sizewright.command.report_errata import Corrected, errata_schema, json_errata, markdown_errata, text_errata
from sizewright.command.terminal import write_bytes
from sizewright.command.versions import Versions, carried_out, versions
from sizewright.proof.errata import errata

_FORMS: Mapping[str, Callable[[tuple[Corrected, ...], Versions], bytes]] = MappingProxyType(
    {"text": text_errata, "json": json_errata, "markdown": markdown_errata}
)


def _print_schema(ctx: click.Context) -> None:
    write_bytes(errata_schema())
    ctx.exit(DONE)


@click.command("errata", short_help="Tell what differs between two versions of a pattern, by size.")
@click.argument("old")
@click.argument("new")
@click.option(
    "--format",
    "form",
    type=click.Choice(list(_FORMS)),
    default="text",
    show_default=True,
    help="Text for a person, JSON, or Markdown: an entry to paste into “changes:” of the header.",
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
def errata_command(ctx: click.Context, old: str, new: str, form: str) -> None:
    """Tell what differs between two versions of a pattern, by size, in the words of an errata page.

    OLD and NEW are pattern files, project folders or git revisions: REVISION:PATH, with the path as you would type it
    here, or a REVISION alone, which means what the other side names, as it was then.

    Numbers, rows, counts, measurements, gauge, needles, yarn and sizes are compared as a reader of each size reads
    them. Other words that say the same are no errata, and neither are rows that only have another name or place.

    The exit code is 0 where there are none, 1 where there are some, and 2 where OLD or NEW cannot be read.

    \b
    Examples:
      sizewright errata old-hat.md content/patterns/hat.md      two files
      sizewright errata v1.0 content/patterns/hat.md            a pattern since a tag
      sizewright errata v1.0:content/patterns/hat.md v1.1:content/patterns/hat.md
      sizewright errata HEAD . --format markdown                the whole project since the last commit
    """
    with versions(old, new) as both:
        found = tuple(_corrected(both))
        write_bytes(_FORMS[form](found, both))
    ctx.exit(REFUSED if any(one.errata for one in found) else DONE)


def _corrected(both: Versions) -> list[Corrected]:
    found = []
    for before, after in both.pairs():
        old, new = carried_out(before), carried_out(after)
        unsure = bool(old.faults or new.faults or old.graded.findings or new.graded.findings)
        unsure = unsure or before.name in both.old.faulty or after.name in both.new.faulty
        found.append(Corrected(after, errata(old, new), unsure))
    return found
