"""In: the name of a rule, or none. Out: its page, or the list of all rules."""

import click
from rich.console import Console
from rich.markdown import Markdown

from sizewright.base.finding import Rule
from sizewright.base.nearest import did_you_mean
from sizewright.command.outcome import DONE
from sizewright.command.terminal import standard_output
from sizewright.proof.run import RULES


@click.command("rule", short_help="Show what a rule finds, why it matters and how to mend it.")
@click.argument("name", required=False)
@click.pass_context
def rule_command(ctx: click.Context, name: str | None) -> None:
    """Show what a rule finds, why it matters to a knitter, an example, and what to write instead.

    The name of a rule stands in brackets behind each finding. Without a NAME all rules are listed.

    \b
    Examples:
      sizewright rule
      sizewright rule broken-repeat
    """
    if name is not None and name not in RULES:
        raise click.UsageError(f"There is no rule “{name}”. {did_you_mean(name, RULES, 'See “sizewright rule”.')}")
    console = standard_output()
    if name is None:
        for rule in sorted(RULES.values(), key=lambda one: one.name):
            console.print(f"{rule.name} ({rule.level})", style="bold", highlight=False, markup=False)
            console.print(f"  {rule.gist}", highlight=False, markup=False, soft_wrap=not console.is_terminal)
    else:
        _print_page(console, RULES[name])
    ctx.exit(DONE)


def _print_page(console: Console, rule: Rule) -> None:
    console.print(f"{rule.name} ({rule.level})\n", style="bold", highlight=False, markup=False)
    if console.is_terminal:
        console.print(Markdown(rule.page.strip()))
    else:
        console.print(rule.page.strip(), highlight=False, markup=False, soft_wrap=True)
