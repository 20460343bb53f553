"""In: a rule and a place. Out: a finding, which is data; its looks are decided where it is printed."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from sizewright.base.place import Span


class Level(StrEnum):
    """An error stops publication; a warning is for a second look; a note tells what there is not, and may stay so."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Finding:
    """One fault: what stands there and what was expected (`message`), the mend, where, in which sizes."""

    rule: str
    level: Level
    message: str
    mend: str
    span: Span | None
    sizes: tuple[str, ...] = ()

    def place_key(self) -> tuple[str, int, int, str]:
        """Sorts findings as a person reads the files, those without a place first."""
        if self.span is None:
            return ("", 0, 0, self.rule)
        return (self.span.source, self.span.line, self.span.column, self.rule)


@dataclass(frozen=True, slots=True)
class Rule:
    """A fault the tool looks for. `page` is Markdown: what it finds, why it matters, an example, the mend.

    One that is `asked` is looked for only where a studio asks for it.
    """

    name: str
    level: Level
    page: str
    asked: bool = False

    @property
    def gist(self) -> str:
        """What it finds, in a few words: the first sentence of its page."""
        return " ".join(self.page.split("\n\n")[0].split())

    def at(
        self,
        span: Span | None,
        message: str,
        mend: str = "",
        sizes: Sequence[str] = (),
    ) -> Finding:
        """The finding that this rule makes at a place."""
        return Finding(self.name, self.level, message, mend, span, tuple(sizes))


def has_error(findings: Sequence[Finding]) -> bool:
    """Whether any of the findings stops publication."""
    return any(finding.level is Level.ERROR for finding in findings)
