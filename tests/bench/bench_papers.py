"""In: the demo's pullover in its ten sizes. Out: ratios, printed: all its PDFs of one size against the bare renderer.

The bare renderer has the same pages, the same style sheets parsed once, and fonts set up once. Each pair of timings is
taken in turn, in one run.
"""

import sys
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from time import perf_counter

import weasyprint
from weasyprint.text.fonts import FontConfiguration

from sizewright.proof.run import proof
from sizewright.publish.layout import _fetcher, lay_out, set_up
from sizewright.publish.paper import lay_out_all
from sizewright.publish.paper_jobs import Printer
from sizewright.publish.print_job import BESIDE, Job
from sizewright.publish.theme import Theme
from sizewright.read.folder import read_project

ROOT = Path(__file__).parents[2]
TIMES = int(sys.argv[1]) if len(sys.argv) > 1 else 3


def jobs_of_sizes() -> list[Job]:
    """The usual edition of each size, on both sheets."""
    project = read_project(ROOT)
    (pattern,) = (one for one in project.patterns if one.name == "tarnside-pullover")
    printer = Printer(project, Theme.find(project.studio.theme, ROOT), {})
    jobs = printer.jobs(proof(pattern, project))
    return [job for job in jobs if "large-print" not in job.path and "-all-" not in job.targets[-1][0]]


def bare(jobs: Sequence[Job]) -> None:
    """What anybody would write who has these pages."""
    fonts = FontConfiguration()
    press = jobs[0].press
    fetcher = _fetcher(press.root, press.files)
    styles = [
        weasyprint.CSS(string=content.decode(), base_url=press.root + path, url_fetcher=fetcher, font_config=fonts)
        for path, content in press.files
        if path.endswith(".css")
    ]
    for job in jobs:
        page = weasyprint.HTML(string=job.html, base_url=press.root + BESIDE, url_fetcher=fetcher)
        page.write_pdf(stylesheets=styles, font_config=fonts, pdf_variant="pdf/ua-1")


def one_process(jobs: Sequence[Job]) -> None:
    """Ours, in this process, from nothing."""
    set_up.cache_clear()
    for job in jobs:
        lay_out(job)


def two_processes(jobs: Sequence[Job]) -> None:
    """Ours, as a publish does it, the start of its processes counted."""
    for _ in lay_out_all(jobs):
        pass


def shortest(actions: Sequence[Callable[[], None]]) -> list[float]:
    """The shortest run of each in seconds, taken in turn, so that a busy machine is busy for all."""
    found = [float("inf")] * len(actions)
    for _ in range(TIMES):
        for place, action in enumerate(actions):
            start = perf_counter()
            action()
            found[place] = min(found[place], perf_counter() - start)
    return found


def main() -> None:
    """Prints the ratios."""
    both = jobs_of_sizes()
    single = [replace(job, targets=job.targets[:1]) for job in both]
    plain, ours, pair, two_sheets = shortest(
        (lambda: bare(single), lambda: one_process(single), lambda: two_processes(single), lambda: one_process(both))
    )
    sys.stdout.write(
        f"{len(single)} PDFs of one size, bare renderer: {plain:.1f} s\n"
        f"the same, tagged for PDF/UA: {ours / plain:.2f} of that (goal 1.1)\n"
        f"by two processes: {pair / plain:.2f} of that (goal 0.6)\n"
        f"on A4 and on Letter: {two_sheets / (2 * plain):.2f} of the bare renderer on both\n"
    )


if __name__ == "__main__":
    main()
