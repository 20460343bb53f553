"""In: a proofed pattern. Out: its print jobs, one for each edition, with the print pages rendered."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace

from sizewright.proof.proofed import Proofed
from sizewright.publish.editions import Edition, editions
from sizewright.publish.paper_page import PaperPages
from sizewright.publish.print_job import Job, Press, pictures_on
from sizewright.publish.theme import Theme
from sizewright.publish.view_numbers import as_text
from sizewright.publish.within import ALONE, Within
from sizewright.read.pattern import Pattern
from sizewright.read.project import Project


@dataclass(frozen=True)
class Printer:
    """Makes the print jobs of a project's patterns; `media` are the pictures that they show.

    `within` tells which language of several they are in; it has to be spoken.
    """

    project: Project
    theme: Theme
    media: Mapping[str, bytes]
    within: Within = ALONE
    presses: dict[bool, Press] = field(default_factory=dict)

    def jobs(self, proofed: Proofed) -> Iterator[Job]:
        """The jobs of one pattern. Raises BadTheme where a template cannot be used."""
        pages = PaperPages(proofed, self.project, self.theme, self.within)
        for edition in editions(proofed.graded.pattern, self.project.studio.papers, self.within.below):
            yield self.job(proofed.graded.pattern, edition, pages)

    def at(self, proofed: Proofed, path: str) -> Job | None:
        """The job of one PDF alone, by its path in the site; None where it is none of the pattern's."""
        for edition in editions(proofed.graded.pattern, self.project.studio.papers, self.within.below):
            for target in edition.targets:
                if target[0] == path:
                    pages = PaperPages(proofed, self.project, self.theme, self.within)
                    return replace(self.job(proofed.graded.pattern, edition, pages), targets=(target,))
        return None

    def job(self, pattern: Pattern, edition: Edition, pages: PaperPages) -> Job:
        """The job of one edition."""
        header = pattern.header
        html = as_text(pages.page(edition))
        return Job(
            targets=edition.targets,
            html=html,
            pictures=pictures_on(html, self.media),
            created=header.published.date.isoformat() if header.published else "",
            modified=header.revised.date.isoformat() if header.revised else "",
            press=self.press(large=edition.large),
        )

    def press(self, *, large: bool) -> Press:
        """The files of an edition, read once."""
        if large not in self.presses:
            files = tuple((output.path, output.content) for output in self.theme.paper_files(large=large))
            self.presses[large] = Press(files, self.project.studio.address)
        return self.presses[large]
