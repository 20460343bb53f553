"""In: the name of a function, plan or shape of formulas, or none. Out: its page, or the list of all."""

import click

from sizewright.base.nearest import did_you_mean
from sizewright.command.outcome import DONE
from sizewright.command.terminal import standard_output
from sizewright.publish.view_method import MethodView, method_views


@click.command("function", short_help="Show what a function of formulas does, takes and gives.")
@click.argument("name", required=False)
@click.pass_context
def function_command(ctx: click.Context, name: str | None) -> None:
    """Show what a function, a plan of shaping or a shape of schematics does, what it takes and what it gives.

    The same stands on the page on the numbers of each site. Without a NAME all are listed.

    \b
    Examples:
      sizewright function
      sizewright function sleeve_cap
    """
    known = tuple(method_views())
    found = tuple(one for one in known if name in (None, one.name))  # a plan and a shape may share a name
    if name is not None and not found:
        mend = did_you_mean(name, (one.name for one in known), "See “sizewright function”.")
        raise click.UsageError(f"There is no function “{name}”. {mend}")
    console = standard_output()
    for one in found:
        console.print(one.name, style="bold", highlight=False, markup=False)
        for line in _page(one) if name is not None else (_gist(one),):
            console.print(f"  {line}", highlight=False, markup=False, soft_wrap=not console.is_terminal)
    ctx.exit(DONE)


def _page(one: MethodView) -> tuple[str, ...]:
    """What it does, what it takes in its order, and the numbers it gives."""
    takes, gives = (f"Takes {'; '.join(one.takes)}.",), (f"Gives {'; '.join(one.gives)}.",)
    return (one.page, *(takes if one.takes else ()), *(gives if one.gives else ()))


def _gist(one: MethodView) -> str:
    """The first sentence of what it does; a shape is said to be one."""
    shape = "A shape of schematics. "
    kind, told = (shape, one.page.removeprefix(shape)) if one.page.startswith(shape) else ("", one.page)
    return f"{kind}{told.split('. ')[0].removesuffix('.')}."
