"""A stitch or abbreviation of `content/stitches.yaml` that nothing in the project uses.

**Why it matters.** Every reader of the list of abbreviations learns it for nothing; more often than not the patterns
spell it otherwise than the list does, and their readers find no meaning.

**Example.** `- {term: mkb, meaning: make knot}`, and the patterns write `mk`

**Instead.** Take it out, or add the word that the patterns use: `spellings: [mk]`.
"""

import re
from collections.abc import Iterator, Mapping

from sizewright.base.finding import Finding, Level, Rule
from sizewright.read.project import Project

RULE = Rule("idle-term", Level.WARNING, __doc__)


def check(project: Project, rules: Mapping[str, Rule]) -> Iterator[Finding]:  # noqa: ARG001 -- every rule is given both
    """A finding for each term of the studio's own, where all of the project was read and it has patterns."""
    if not project.whole or not project.patterns:
        return
    sources = (*project.patterns, *project.pages, *project.techniques)
    text = "\n".join(pattern.lines.text for pattern in sources).casefold()
    for term in project.terms:
        if term.span is not None and not any(_stands(spelling, text) for spelling in term.spellings):
            message = f"“{term.term}” is explained here, and nothing in the project uses it."
            yield RULE.at(term.span, message, "Take it out, or add the word that the patterns use to “spellings:”.")


def _stands(spelling: str, text: str) -> bool:
    """Whether a word stands in a text, a number behind it or none."""
    return re.search(rf"(?<!\w){re.escape(spelling.casefold())}\d*(?!\w)", text) is not None
