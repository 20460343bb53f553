"""In: the editions of a pattern and what is known of their PDFs. Out: what its page offers to print."""

from collections.abc import Iterator, Mapping, Sequence
from urllib.parse import quote

from sizewright.base.language import tr_many
from sizewright.publish.editions import Edition
from sizewright.publish.print_job import BESIDE, Printed
from sizewright.publish.sheets import NAMES
from sizewright.publish.view_papers import PapersView, SheetView


def papers_view(editions: Sequence[Edition], printed: Mapping[str, Printed]) -> tuple[PapersView, ...]:
    """What is offered, all sizes first. `printed` has the PDFs by their paths, none of them in a preview."""
    return tuple(_views(editions, printed))


def _views(editions: Sequence[Edition], printed: Mapping[str, Printed]) -> Iterator[PapersView]:
    for edition in editions:
        if edition.large:
            continue
        large = next((one for one in editions if one.large and one.size == edition.size), None)
        z, size = (edition.size.z, edition.size.name) if edition.size else ("", "")
        yield PapersView(z, size, _sheets(edition, printed), _sheets(large, printed) if large else ())


def _sheets(edition: Edition, printed: Mapping[str, Printed]) -> tuple[SheetView, ...]:
    return tuple(
        SheetView(quote(path[path.index(BESIDE) + len(BESIDE) :]), NAMES[sheet], *_told(printed.get(path)))
        for path, sheet in edition.targets
    )


def _told(printed: Printed | None) -> tuple[str, str]:
    """Pages and kilobytes of a PDF, "" where they are not known."""
    if printed is None:
        return "", ""
    pages = tr_many("{n} page", "{n} pages", printed.pages)
    return pages, f"{max(1, round(printed.size / 1000))} kB"
