"""In: what is to be printed and the old site. Out: their PDFs in the draft, laid out only where they changed."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from sizewright.publish.faults import PaperFault
from sizewright.publish.manifest import Manifest, digest
from sizewright.publish.output import Output
from sizewright.publish.paper import lay_out_all
from sizewright.publish.print_job import Job, Paper, Printed
from sizewright.publish.progress import Progress
from sizewright.publish.write import Draft


@dataclass(frozen=True, slots=True)
class Put:
    """The PDFs of a site by their paths: their keys, what is told of them, and which were laid out anew."""

    keys: Mapping[str, str] = field(default_factory=dict)
    printed: Mapping[str, Printed] = field(default_factory=dict)
    laid_out: tuple[str, ...] = ()


def put_papers(wanted: Iterable[Job], draft: Draft, old: Manifest | None, progress: Progress) -> Put:
    """Puts every PDF. Raises NoPango, PaperFault and BadTheme."""
    keys: dict[str, str] = {}
    printed: dict[str, Printed] = {}
    jobs = []
    for job in wanted:
        key = job.key
        keys.update((path, key) for path, _ in job.targets)
        same = _same(job, key, draft.site, old)
        if not same:
            jobs.append(job)
        for paper in same:
            draft.put(Output(paper.path, paper.content))
            printed[paper.path] = Printed(paper.pages, len(paper.content))
    printed |= _lay_out(jobs, draft, progress)
    return Put(keys, printed, tuple(path for job in jobs for path, _ in job.targets))


def _lay_out(jobs: Sequence[Job], draft: Draft, progress: Progress) -> dict[str, Printed]:
    faults: list[str] = []
    printed: dict[str, Printed] = {}
    progress.start(sum(len(job.targets) for job in jobs), "PDFs")
    for paper in (paper for papers in lay_out_all(jobs) for paper in papers):
        faults += (f"{paper.path}: {fault}" for fault in paper.faults)
        if not faults:
            draft.put(Output(paper.path, paper.content))
            printed[paper.path] = Printed(paper.pages, len(paper.content))
        progress.step()
    if faults:
        raise PaperFault(tuple(faults))
    return printed


def _same(job: Job, key: str, site: Path, old: Manifest | None) -> tuple[Paper, ...]:
    """The old PDFs where all of them show the same; none where one does not, or is not as it was written."""
    found = []
    for path, _ in job.targets:
        if old is None or old.papers.get(path) != key or path not in old.pages:
            return ()
        try:
            content = (site / path).read_bytes()
        except OSError:
            return ()
        if digest(content) != old.outputs.get(path):
            return ()
        found.append(Paper(path, content, (), old.pages[path]))
    return tuple(found)
