"""In: proofed patterns. Out: for each size a tester's sheet as a page, as a PDF with a form, and as CSV to fill in."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from sizewright.base.printing import decimal
from sizewright.proof.expected import ASKED, KNITTER, Expectation, expectations
from sizewright.publish.faults import PaperFault
from sizewright.publish.output import Output
from sizewright.publish.paper import lay_out_all
from sizewright.publish.print_job import Job, Press
from sizewright.publish.sheet.spreadsheet import csv_table
from sizewright.publish.tester.view import form_view
from sizewright.publish.theme import BASIC, Theme
from sizewright.publish.view_sizes import slug
from sizewright.read.project import Sheet
from sizewright.read.returned import COLUMNS
from sizewright.work.worked import Worked

INDEX = "testers.html"
_HERE = Path(__file__).parent / "templates"


@dataclass(frozen=True, slots=True)
class Subject:
    """A pattern carried out, the name of its studio ("" where it has none), and the unit system that comes first."""

    worked: Worked
    studio: str = ""
    metric_first: bool = True


@dataclass(frozen=True, slots=True)
class SheetFiles:
    """The sheet of one size in the index: its pattern and size, and the name of its files without their endings."""

    title: str
    size: str
    version: str
    name: str


def sheets(
    subjects: Sequence[Subject], wanted: Callable[[str], bool], done: Callable[[], None] = lambda: None
) -> Iterator[Output]:
    """Every file of the folder, for the sizes that are wanted; `done` is called after each PDF.

    Raises NoPango and PaperFault.
    """
    entries: list[SheetFiles] = []
    jobs: list[Job] = []
    for subject in subjects:
        for one in expectations(subject.worked):
            if wanted(one.size):
                name = _free(f"{slug(one.pattern)}-{slug(one.size) or 'size'}", entries)
                entries.append(SheetFiles(one.title, one.size, one.version, name))
                yield Output(f"{name}.html", sheet_page(one, subject).encode("utf-8", "backslashreplace"))
                yield Output(f"{name}.csv", sheet_csv(one))
                jobs.append(form_job(f"{name}.pdf", one, subject))
    for (paper,) in lay_out_all(jobs):
        if paper.faults:
            raise PaperFault(paper.faults)
        yield Output(paper.path, paper.content)
        done()
    yield Output(
        INDEX, _rendered("index.html", _style("screen.css"), entries=entries).encode("utf-8", "backslashreplace")
    )


def _free(name: str, entries: Iterable[SheetFiles]) -> str:
    """The name, with a number where another sheet has it already."""
    taken = {entry.name for entry in entries} | {"testers"}
    found, number = name, 1
    while found in taken:
        number += 1
        found = f"{name}-{number}"
    return found


def sheet_page(expectation: Expectation, subject: Subject) -> str:
    """The page of one sheet, to read and print."""
    view = form_view(expectation, subject.studio, metric_first=subject.metric_first)
    return _rendered("sheet.html", _style("screen.css"), sheet=view)


def sheet_csv(expectation: Expectation) -> bytes:
    """The sheet for a spreadsheet, its column “got” empty."""
    head = (expectation.pattern, expectation.version, expectation.size)
    told = [(*head, KNITTER, about, "", "", "", "") for about in ASKED]
    told += [
        (*head, line.stage, line.at, line.unit, decimal(line.value).replace("−", "-"), "", "")
        for line in expectation.lines
    ]
    return csv_table(COLUMNS, told)


def form_job(path: str, expectation: Expectation, subject: Subject) -> Job:
    """One sheet as a PDF with a form; in the typeface that the tool ships, whatever the theme of the studio is."""
    view = form_view(expectation, subject.studio, metric_first=subject.metric_first)
    html = _rendered("sheet.html", _style("paper.css"), sheet=view)
    return Job(((path, Sheet.A4),), html, (), "", "", _press(), forms=True)


@cache
def _press() -> Press:
    files = Theme.find(BASIC, _HERE).paper_files()
    kept = (file for file in files if file.path.endswith(("/type.css", ".ttf")))
    return Press(tuple((file.path, file.content) for file in kept))


def _rendered(template: str, more: Markup, **data: object) -> str:
    return _environment().get_template(template).render(style=_style("tester.css"), more=more, **data)


def _style(name: str) -> Markup:
    return Markup((_HERE / name).read_text(encoding="utf-8"))  # noqa: S704 (our own style sheet)


@cache
def _environment() -> Environment:
    """The tool's own templates: a test knitter's sheet looks alike for every studio."""
    return Environment(
        loader=FileSystemLoader(_HERE),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
