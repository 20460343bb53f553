"""A technique in the list of a pattern whose words stand nowhere in it.

**Why it matters.** The list tells a reader what to learn first. A technique that is not needed sends a beginner away.
Looked at are the words a technique says it teaches (`terms:`), and its own title.

**Example.** `techniques: [grafting]` in a scarf that is bound off

**Instead.** Take it out of the list.
"""

import re
from collections.abc import Iterator

from sizewright.base.finding import Finding, Level, Rule
from sizewright.proof.wording import Wording, header_words
from sizewright.read.pattern import Pattern, StitchBlock, WorkBlock
from sizewright.read.project import Project
from sizewright.work.worked import Worked

RULE = Rule("unused-technique", Level.WARNING, __doc__)

_WORD = re.compile(r"[^\W\d_]{4,}")
_STEM = 4  # letters that "graft" and "grafting", "block" and "blocking" share


def check(worked: Worked, project: Project) -> Iterator[Finding]:
    """A finding for each technique that nothing in the pattern speaks of."""
    pattern = worked.graded.pattern
    if not any(isinstance(piece, WorkBlock | StitchBlock) for piece in pattern.body):
        return
    by_name = {technique.name: technique for technique in project.techniques}
    text = f"{Wording.of(pattern).body}\n{' '.join(words.text for words in header_words(pattern.header))}".casefold()
    gauged = " gauge swatch tension " if pattern.header.gauges else ""
    for words in pattern.header.techniques:
        technique = by_name.get(words.text)
        if technique is not None and technique.header.terms and not _spoken_of(technique, text + gauged):
            message = f"“{technique.header.title}” is listed, and nothing in the pattern speaks of it."
            yield RULE.at(words.span, message, "Take it out of “techniques:”, or say where it is used.")


def _spoken_of(technique: Pattern, text: str) -> bool:
    terms = [words.text.casefold() for words in technique.header.terms]
    if any(re.search(rf"(?<![^\W\d_]){re.escape(term)}(?![^\W\d_])", text) for term in terms):
        return True
    return any(word[: max(_STEM, len(word) - 3)] in text for word in _WORD.findall(technique.header.title.casefold()))
