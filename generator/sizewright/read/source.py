"""In: the text of one pattern, page or technique. Out: it read, and what is wrong with it."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from sizewright.base.finding import Finding
from sizewright.base.place import Lines
from sizewright.read.body import BodyReader
from sizewright.read.departure import Departure
from sizewright.read.header import read_header
from sizewright.read.notation.stitches import Vocabulary
from sizewright.read.pattern import Header, Pattern, Piece
from sizewright.read.project import SizeTable
from sizewright.read.references import References
from sizewright.read.values import Values

KINDS = MappingProxyType({"patterns": "pattern", "pages": "page", "techniques": "technique"})


@dataclass(frozen=True, slots=True)
class SourceReader:
    """Reads the sources of one folder of a project.

    `cautions` are the studio's own; `media` and `sources` are the files that may be named, or None.
    """

    folder: str
    tables: Mapping[str, SizeTable]
    cautions: tuple[str, ...]
    stitches: Vocabulary
    media: frozenset[str] | None = None
    sources: frozenset[str] | None = None

    def read(self, lines: Lines, name: str) -> tuple[Pattern, tuple[Finding, ...]]:
        """A source that is no adaptation."""
        values = Values(lines)
        header, first_line = read_header(lines, values, KINDS[self.folder], self.tables, self.cautions)
        pieces, findings = self.body(lines, first_line, header)
        return Pattern(name, lines, header, pieces), (*values.findings, *findings)

    def body(
        self, lines: Lines, first_line: int, header: Header, departures: tuple[Departure, ...] = ()
    ) -> tuple[tuple[Piece, ...], tuple[Finding, ...]]:
        """The body behind a header, with what is wrong in it and with what the header names."""
        references = References(self.folder, self.media, self.sources)
        body = BodyReader(lines, first_line, header, references, self.stitches, departures)
        pieces = body.read()
        findings = list(body.findings)
        if header.picture is not None:
            judged = references.picture(header.picture.file, header.picture.span)
            if isinstance(judged, Finding):
                findings.append(judged)
        for words in header.techniques:
            judged = references.link(f"../techniques/{words.text}.md", words.span)
            if isinstance(judged, Finding):
                findings.append(judged)
        return pieces, tuple(findings)
