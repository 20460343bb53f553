"""In: the lines that open and close `::: …`. Out: the nodes of passages for some sizes and of notes for learners."""

from collections.abc import Sequence

from sizewright.base.finding import Finding
from sizewright.base.nearest import did_you_mean
from sizewright.base.place import Lines, Span
from sizewright.read.pattern import NoteClose, NoteOpen, PassageClose, PassageOpen
from sizewright.read.rules import UNCLOSED, UNKNOWN_BLOCK, UNKNOWN_SIZE

SIZES = "sizes"
LEARNERS = "learners"
_WORDS = (SIZES, LEARNERS)
_MEND = "Write “::: sizes A, B” or “::: learners”."
_NESTED = "A passage that holds another begins and ends with one colon more: “:::: sizes A, B”, “::::”."

# Blocks that are carried out or drawn: a note is only read.
NOT_IN_NOTES = frozenset({"work", "stitch", "chart", "schematic"})


class PassageReader:
    """Reads the passages of one source in their order, one within another; `sizes` are all sizes of the pattern."""

    def __init__(self, lines: Lines, sizes: tuple[str, ...]) -> None:
        self._lines = lines
        self._sizes = sizes
        self._open: list[PassageOpen | NoteOpen] = []
        self.findings: list[Finding] = []

    @property
    def within(self) -> tuple[str, ...] | None:
        """The sizes of the passage that is open, None outside one."""
        return next((one.sizes for one in reversed(self._open) if isinstance(one, PassageOpen)), None)

    @property
    def in_note(self) -> bool:
        """Whether a note for learners is open."""
        return any(isinstance(one, NoteOpen) for one in self._open)

    def opened(self, info: str, span: Span, last: int) -> PassageOpen | NoteOpen:
        """The passage that `::: info` opens; its lines end with the one of this number."""
        word, _, rest = info.strip().partition(" ")
        if last >= len(self._lines.lines) or not self._lines.lines[last].lstrip(" \t>").startswith(":::"):
            message = f"“::: {info.strip()}” is never closed."
            self.findings.append(UNCLOSED.at(span, message, "Close the passage with a line “:::”."))
        passage = NoteOpen(span, rest.strip()) if word == LEARNERS else PassageOpen(span, self._named(word, rest, span))
        self._open.append(passage)
        return passage

    def closed(self) -> PassageClose | NoteClose:
        """The end of the passage that was opened last."""
        return NoteClose() if isinstance(self._open.pop(), NoteOpen) else PassageClose()

    def _named(self, word: str, rest: str, span: Span) -> tuple[str, ...]:
        """The sizes that a passage is for, of those that read what it stands in."""
        named = tuple(name.strip() for name in rest.split(",") if name.strip())
        if not word:
            message = "This “:::” closes nothing, or opens a passage without a word."
            self.findings.append(UNKNOWN_BLOCK.at(span, message, _NESTED))
        elif word != SIZES:
            mend = did_you_mean(word, _WORDS, _MEND)
            self.findings.append(UNKNOWN_BLOCK.at(span, f"“::: {word}” is no passage the tool knows.", mend))
        elif not named:
            mend = f"Name some of: {', '.join(self._sizes)}." if self._sizes else "This pattern has one size only."
            self.findings.append(UNKNOWN_SIZE.at(span, "“::: sizes” names no size.", mend))
        else:
            self._judge(named, span)
        within = self.within
        return tuple(name for name in (self._sizes if within is None else within) if name in named)

    def _judge(self, named: Sequence[str], span: Span) -> None:
        for name in named:
            if name not in self._sizes:
                sizes = f"The sizes are: {', '.join(self._sizes)}." if self._sizes else "It has one size only."
                mend = f"{did_you_mean(name, self._sizes)} {sizes}".strip()
                self.findings.append(UNKNOWN_SIZE.at(span, f"“{name}” is no size of this pattern.", mend))
