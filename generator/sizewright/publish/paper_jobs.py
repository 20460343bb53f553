"""In: a proofed pattern. Out: its print jobs, one for each edition, with the print pages rendered."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from sizewright.proof.proofed import Proofed
from sizewright.publish.editions import Edition, editions
from sizewright.publish.paper_page import PaperPages
from sizewright.publish.print_job import Job, Press, pictures_on
from sizewright.publish.theme import Theme
from sizewright.read.pattern import Pattern
from sizewright.read.project import Project


@dataclass(frozen=True)
class Printer:
    """Makes the print jobs of a project's patterns; `media` are the pictures that they show."""

    project: Project
    theme: Theme
    media: Mapping[str, bytes]
    presses: dict[bool, Press] = field(default_factory=dict)

    def jobs(self, proofed: Proofed) -> Iterator[Job]:
        """The jobs of one pattern. Raises BadTheme where a template cannot be used."""
        pages = PaperPages(proofed, self.project, self.theme)
        for edition in editions(proofed.graded.pattern, self.project.studio.papers):
            yield self.job(proofed.graded.pattern, edition, pages)

    def job(self, pattern: Pattern, edition: Edition, pages: PaperPages) -> Job:
        """The job of one edition."""
        header = pattern.header
        html = pages.page(edition)
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
