"""In: the rules of the tool. Out: what the page on what is checked says of each."""

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from sizewright.proof.run import RULES
from sizewright.read.markdown import html_of

PATH = "rules.html"


@dataclass(frozen=True, slots=True)
class RuleView:
    """A rule: its name, whether it stops publication ("error") or asks for a second look, and its page."""

    name: str
    level: str
    page: Markup


def rule_views() -> Iterator[RuleView]:
    """Every rule, by name."""
    for name, rule in sorted(RULES.items()):
        yield RuleView(name, str(rule.level), Markup(html_of(rule.page.strip())))  # noqa: S704 (of the reader)
