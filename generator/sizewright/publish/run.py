"""In: the proofed project. Out: the written site, or the reason why nothing was written.

Whatever happens, `site/` is the old site or the new one: all is made beside it and swapped in at the end (`write`).
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from sizewright.base.finding import Level
from sizewright.base.language import speaking
from sizewright.proof.proofed import Proofed
from sizewright.proof.run import elsewhere
from sizewright.publish.editions import editions
from sizewright.publish.faults import CannotWrite
from sizewright.publish.in_language import sound_in
from sizewright.publish.kept import keep
from sizewright.publish.layout import lay_out
from sizewright.publish.manifest import Manifest, read_manifest
from sizewright.publish.offline import offline_files
from sizewright.publish.output import Output
from sizewright.publish.pages import site_pages
from sizewright.publish.paper_jobs import Printer
from sizewright.publish.print_job import Job, Paper
from sizewright.publish.progress import Progress
from sizewright.publish.put_papers import Put, put_papers
from sizewright.publish.site_in import SiteIn, sites
from sizewright.publish.sitemap import SITEMAP, sitemap
from sizewright.publish.theme import Theme
from sizewright.publish.within import folder_of
from sizewright.publish.write import Draft, new_site
from sizewright.read.pattern import Image, Pattern
from sizewright.read.project import Project
from sizewright.read.translating.pictures import picture_in

_FOLDER = "patterns"


@dataclass(frozen=True, slots=True)
class Published:
    """What became of a publish. Paths are those of the site, names those of patterns.

    `done` is False where it was refused and nothing was written at all. `kept` are refused patterns whose last good
    pages stay in the site; `laid_out` are the PDFs that were made anew.
    """

    done: bool
    written: tuple[str, ...] = ()
    unchanged: tuple[str, ...] = ()
    removed: tuple[str, ...] = ()
    laid_out: tuple[str, ...] = ()
    kept: tuple[str, ...] = ()
    refused: tuple[str, ...] = ()


def site_folder(folder: Path) -> Path:
    """Where the site of a project is written."""
    return folder / "site"


def publish(  # noqa: PLR0913 (all but two by their names)
    project: Project,
    proofed: Sequence[Proofed],
    *,
    without_refused: bool,
    progress: Progress,
    papers: bool = True,
    inputs: str | None = None,
    site: Path | None = None,
) -> Published:
    """Writes the site of a project, all of it or nothing; `site` is another folder for it than the project's own.

    An error in a pattern refuses everything, or with `without_refused` that pattern; one elsewhere always everything.
    `inputs` is `inputs_digest` from before the project was read: by it the next run tells that nothing has changed.
    Raises NotWritten (Busy, NotOurs, CannotWrite, NoPango, PaperFault) and BadTheme; nothing is written then.
    """
    refused, beside = _errors(project, proofed)
    if beside or (refused and not without_refused):
        return Published(done=False, refused=refused)
    theme = Theme.find(project.studio.theme, project.folder)
    sound = {pattern.source for pattern in project.patterns if pattern.name not in refused}
    good = tuple(each for each in proofed if each.graded.pattern.source in sound)
    media = pictures_of(project, good)
    with new_site(site or site_folder(project.folder)) as draft:
        old = read_manifest(draft.site)
        told = sites(project, good, theme, lambda below: keep(draft.site, old, refused, below), refused)
        put = put_papers(_jobs(told, theme, media), draft, old, progress) if papers else Put()
        run = _Run(told, theme, media, draft, progress, put)
        run.put_pages()
        run.put_rest()
        draft.finish(run.manifest(_warnings(project, proofed), None if refused else inputs))
    return Published(
        done=True,
        written=tuple(draft.written),
        unchanged=tuple(draft.unchanged),
        removed=tuple(path for path in old.outputs if path not in draft.digests) if old else (),
        laid_out=put.laid_out,
        kept=tuple(each.listed.card.name for each in told[0].kept),
        refused=refused,
    )


def paper_paths(project: Project, proofed: Proofed) -> Iterator[str]:
    """Where all PDFs of a pattern are in the site, in all its languages."""
    codes = project.studio.languages
    for code in codes:
        for each in sound_in(code, project, (proofed,)):
            for edition in editions(each.graded.pattern, project.studio.papers, folder_of(code, codes)):
                yield from (path for path, _ in edition.targets)


def paper_of(project: Project, proofed: Proofed, path: str) -> Paper:
    """One PDF of a pattern, by its path in the site; KeyError where it has none there.

    Raises NoPango, CannotWrite (a picture that cannot be read) and BadTheme.
    """
    theme, media = Theme.find(project.studio.theme, project.folder), pictures_of(project, (proofed,))
    for site in sites(project, (proofed,), theme):
        with speaking(site.language):
            jobs = [Printer(site.project, theme, media, site.within).at(each, path) for each in site.proofed]
        for job in filter(None, jobs):
            return lay_out(job)[0]
    raise KeyError(path)


def _errors(project: Project, proofed: Sequence[Proofed]) -> tuple[tuple[str, ...], bool]:
    """The names of the patterns with an error, and whether there is one elsewhere: in a page, a table, the studio."""
    names = {pattern.source: pattern.name for pattern in project.patterns}
    found = [(finding.span.source if finding.span else "", finding) for finding in elsewhere(project).findings]
    for each in proofed:
        own = each.graded.pattern.source
        found += ((own, finding) for finding in each.findings)  # those in its translations as well
    wrong = {source for source, finding in found if finding.level is Level.ERROR}
    refused = sorted(name for source, name in names.items() if source in wrong)
    return tuple(refused), not wrong <= set(names)


def _warnings(project: Project, proofed: Sequence[Proofed]) -> int:
    """How many warnings there are."""
    found = {*elsewhere(project).findings, *(finding for each in proofed for finding in each.findings)}
    return sum(finding.level is Level.WARNING for finding in found)


def _jobs(told: Sequence[SiteIn], theme: Theme, media: Mapping[str, bytes]) -> Iterator[Job]:
    """All PDFs in all languages."""
    for site in told:
        printer = Printer(site.project, theme, media, site.within)
        for each in site.proofed:
            with speaking(site.language):
                jobs = tuple(printer.jobs(each))
            yield from jobs


@dataclass(frozen=True, slots=True)
class _Run:
    """One publish under way: everything it needs, and the steps that put files into the draft."""

    sites: tuple[SiteIn, ...]
    theme: Theme
    media: Mapping[str, bytes]
    draft: Draft
    progress: Progress
    papers: Put

    @property
    def first(self) -> SiteIn:
        """The site in the language of the sources."""
        return self.sites[0]

    def put_pages(self) -> None:
        self.progress.start(sum(len(site.proofed) for site in self.sites), "pages")
        for site in self.sites:
            with speaking(site.language):
                self.put_site(site)

    def put_site(self, site: SiteIn) -> None:
        cards = tuple(each.listed.card for each in site.kept)
        for output in site_pages(site.project, site.proofed, cards, self.theme, self.papers.printed, site.within):
            if output.path not in self.draft.digests:  # several languages load the same files
                self.draft.put(output)
            if PurePosixPath(output.path).parent.name == _FOLDER:
                self.progress.step()
        for output in site.data():
            self.draft.put(output)

    def put_rest(self) -> None:
        """Everything beside pages and PDFs; the kept files last, as a new file of the same name goes first."""
        for output in self.theme.assets():
            self.draft.put(output)
        for name, content in self.media.items():
            self.draft.put(Output(f"media/{name}", content))
        for each in (each for site in self.sites for each in site.kept):
            for output in (*each.files, *each.loaded):
                if output.path not in self.draft.digests:
                    self.draft.put(output)
        studio = self.first.project.studio
        if studio.address:
            days = {
                f"{site.within.below}{_FOLDER}/{card.name}.html": card.revised or card.published
                for site in self.sites
                for card in site.cards
            }
            self.draft.put(Output(SITEMAP, sitemap(studio.address, tuple(self.draft.digests), days)))
        languages = {site.within.below: site.without_network() for site in self.sites}
        for output in offline_files(studio, self.draft.digests, languages):
            self.draft.put(output)

    def manifest(self, warnings: int, inputs: str | None) -> Manifest:
        kept = [each for site in self.sites for each in site.kept]
        papers = {**self.papers.keys, **{path: key for each in kept for path, key in each.papers.items()}}
        pages = {path: one.pages for path, one in self.papers.printed.items()}
        pages |= {path: count for each in kept for path, count in each.pages.items()}
        corrections = {
            site.within.below + listed.card.name: [(each.day, each.text) for each in listed.corrections]
            for site in self.sites
            for listed in site.listed
            if listed.corrections
        }
        patterns = len(self.first.proofed) + len(self.first.kept)
        return Manifest(self.draft.digests, papers, corrections, inputs, patterns, warnings, pages)


def _pictures(source: Pattern) -> Iterator[str]:
    if source.header.picture:
        yield source.header.picture.file
    yield from (piece.file for piece in source.body if isinstance(piece, Image))


def pictures_of(project: Project, good: Sequence[Proofed]) -> dict[str, bytes]:
    """The pictures that pages show, in every language. Raises CannotWrite where one cannot be read."""
    sources = (*(each.graded.pattern for each in good), *project.pages, *project.techniques)
    names = {name for source in sources for name in _pictures(source)}
    names |= {picture_in(name, code, project.media) for name in names for code in project.studio.languages[1:]}
    folder = project.folder / "content" / "media"
    return {name: _picture(folder, name) for name in sorted(names & project.media)}


def _picture(folder: Path, name: str) -> bytes:
    path = folder / name
    try:
        if not path.resolve().is_relative_to(folder.resolve()):
            raise CannotWrite(f"{path} leads out of its folder. Copy the picture itself there.")
        return path.read_bytes()
    except OSError as error:
        raise CannotWrite(f"{path} cannot be read ({(error.strerror or str(error)).lower()}).") from error
