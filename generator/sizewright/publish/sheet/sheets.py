"""In: proofed patterns. Out: a folder of proof sheets: one page a pattern, two tables beside it, and an index."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from sizewright.base.finding import Finding, Level
from sizewright.base.printing import as_text, printed
from sizewright.grade.graded import Promise, Values
from sizewright.proof.acceptance import Accepted
from sizewright.proof.proofed import Proofed
from sizewright.publish.output import Output
from sizewright.publish.sheet.found import Found, apart_view, rule_views
from sizewright.publish.sheet.ledger import ledger_parts, multiple_views
from sizewright.publish.sheet.measurements import finished_groups, gauge_texts, part_groups, shifted_groups
from sizewright.publish.sheet.printed import printed_groups
from sizewright.publish.sheet.quantities import quantity_views
from sizewright.publish.sheet.regraded import regraded_view
from sizewright.publish.sheet.spreadsheet import ledger_csv, quantities_csv
from sizewright.publish.sheet.view import EntryView, IndexView, PromiseView, Ref, SheetView
from sizewright.publish.sheet.yarns import yarn_groups
from sizewright.publish.view_gauge import needle_html

_HERE = Path(__file__).parent / "templates"
INDEX, SCRIPT = "index.html", "proof.js"


@dataclass(frozen=True, slots=True)
class Subject:
    """A proofed pattern, its source as a person here types it, and which unit system its studio puts first."""

    source: str
    proofed: Proofed
    metric_first: bool = True


def sheets(
    subjects: Sequence[Subject], apart: Sequence[Finding], accepted: Sequence[Accepted] = ()
) -> Iterator[Output]:
    """Every file of the folder; `apart` was found outside of patterns, and `accepted` there with a reason."""
    entries = []
    for name, subject in _named(subjects):
        view = sheet_view(name, subject)
        worked = subject.proofed.worked
        yield Output(f"{name}.html", _rendered("sheet.html", sheet=view))
        yield Output(f"{name}-quantities.csv", quantities_csv(worked.graded))
        yield Output(f"{name}-ledger.csv", ledger_csv(worked))
        entries.append(_entry(view))
    found = [*((finding, "") for finding in apart), *((one.finding, one.reason) for one in accepted)]
    views = tuple(apart_view(finding, number, reason) for number, (finding, reason) in enumerate(found, 1))
    index = IndexView(tuple(entries), views, tuple(rule_views(views)))
    yield Output(INDEX, _rendered("index.html", index=index))
    yield Output(SCRIPT, (_HERE / SCRIPT).read_bytes())


def sheet_view(name: str, subject: Subject) -> SheetView:
    """One sheet; `name` is what its files are called."""
    worked, metric_first = subject.proofed.worked, subject.metric_first
    graded, found = worked.graded, Found.of(subject.proofed)
    header = graded.pattern.header
    return SheetView(
        title=header.title or name,
        name=name,
        source=subject.source,
        summary=_summary(found),
        sizes=graded.sizes or ("",),
        found=found.left(),
        accepted=found.accepted(),
        quantities=tuple(quantity_views(graded, found)),
        printed=tuple(printed_groups(graded, metric_first=metric_first)),
        ledger=tuple(ledger_parts(worked, found)),
        multiples=tuple(multiple_views(worked, found)),
        promises=tuple(_promise(one, found) for one in graded.promises),
        finished=tuple(finished_groups(graded, found, metric_first=metric_first)),
        shifted=tuple(shifted_groups(graded)),
        regraded=regraded_view(graded),
        parts=tuple(part_groups(worked)),
        yarns=tuple(yarn_groups(worked, found)),
        gauges=tuple(gauge_texts(graded)),
        needles=tuple(needle_html(needle).striptags() for needle in header.needles),
        rules=tuple(rule_views((*found.left(), *found.accepted()))),
    )


def _named(subjects: Sequence[Subject]) -> Iterator[tuple[str, Subject]]:
    """What the files of each are called: as the pattern is, with a number where another has the name already."""
    taken = {"index"}
    for subject in subjects:
        name = bare = subject.proofed.graded.pattern.name
        number = 1
        while name.casefold() in taken:
            number += 1
            name = f"{bare}-{number}"
        taken.add(name.casefold())
        yield name, subject


def _entry(view: SheetView) -> EntryView:
    tables = (Ref("quantities", f"{view.name}-quantities.csv"), Ref("ledger", f"{view.name}-ledger.csv"))
    looks = sum(bool(one.looks) for one in view.quantities)
    looks += sum(bool(row.looks) for part in view.ledger for row in part.rows)
    return EntryView(view.title, view.source, f"{view.name}.html", tables, view.summary, looks)


def _summary(found: Found) -> str:
    counts = ((level, sum(one.level == level for one in found.left())) for level in Level)
    told = [f"{count} {level}{'' if count == 1 else 's'}" for level, count in counts if count]
    told += [f"{len(found.accepted())} accepted"] if found.accepted() else []
    return ", ".join(told) or "nothing found"


def _promise(promise: Promise, found: Found) -> PromiseView:
    statement = promise.statement
    right = _listed(promise.right) if promise.right else ""
    return PromiseView(
        " ".join(statement.text.split()),
        statement.span.shown.line,
        _listed(promise.left),
        right,
        found.at(statement.span),
    )


def _listed(values: Values) -> str:
    return as_text(printed(values.values, values.dimension))


def _rendered(template: str, **data: object) -> bytes:
    style = Markup((_HERE / "proof.css").read_text(encoding="utf-8"))  # noqa: S704 (our own style sheet)
    return _environment().get_template(template).render(style=style, **data).encode("utf-8", "backslashreplace")


@cache
def _environment() -> Environment:
    """The tool's own templates; no theme has a say in what a proof tells."""
    return Environment(
        loader=FileSystemLoader(_HERE),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
