"""In: the demo's pullover in its ten sizes. Out: ratios, printed: all its PDFs of one size against the bare renderer.

The bare renderer has the same pages, the same style sheets parsed once, and fonts set up once. All are taken in turn,
in one run. With two rounds it takes two minutes on two idle cores; `bench_papers.py 1` takes half of that.
"""

import os
import sys
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from time import perf_counter

import weasyprint
from weasyprint.text.fonts import FontConfiguration

from sizewright.proof.run import proof
from sizewright.publish.kept_drawings import kept_drawing
from sizewright.publish.layout import _fetcher, lay_out, set_up
from sizewright.publish.paper import lay_out_all
from sizewright.publish.paper_jobs import Printer
from sizewright.publish.print_job import BESIDE, Job
from sizewright.publish.theme import Theme
from sizewright.read.folder import read_project

ROOT = Path(__file__).parents[2]
TIMES = int(sys.argv[1]) if len(sys.argv) > 1 else 2


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
    kept_drawing.cache_clear()
    for job in jobs:
        lay_out(job)


def two_processes(jobs: Sequence[Job]) -> None:
    """Ours, as a publish does it, the start of its processes counted."""
    for _ in lay_out_all(jobs):
        pass


def taken(actions: Sequence[Callable[[], None]]) -> list[tuple[float, float]]:
    """The shortest run of each: seconds by the clock, and by the processor, which a busy machine leaves as they are.

    The second time they are taken in the opposite order, so that none always has the warmer machine.
    """
    found = [(float("inf"), float("inf"))] * len(actions)
    for time in range(TIMES):
        for place in range(len(actions))[:: -1 if time % 2 else 1]:
            clock, busy = perf_counter(), sum(os.times()[:4])
            actions[place]()
            run = perf_counter() - clock, sum(os.times()[:4]) - busy
            found[place] = min(found[place][0], run[0]), min(found[place][1], run[1])
    return found


def main() -> None:
    """Prints the ratios."""
    both = jobs_of_sizes()
    single = [replace(job, targets=job.targets[:1]) for job in both]
    plain, ours, pair = taken((lambda: bare(single), lambda: one_process(single), lambda: two_processes(single)))
    start = sum(os.times()[:4])
    one_process(both)
    two_sheets = sum(os.times()[:4]) - start
    clock, busy = plain
    sys.stdout.write(
        f"{len(single)} PDFs of one size, bare renderer: {clock:.1f} s by the clock, {busy:.1f} s by the processor\n"
        f"the same, tagged for PDF/UA: {ours[0] / clock:.2f} by the clock (goal 1.1), {ours[1] / busy:.2f}\n"
        f"by two processes: {pair[0] / clock:.2f} by the clock (goal 0.6), {pair[1] / busy:.2f}\n"
        f"on A4 and on Letter, the bare renderer on both: {two_sheets / (2 * busy):.2f} by the processor\n"
    )


if __name__ == "__main__":
    main()
