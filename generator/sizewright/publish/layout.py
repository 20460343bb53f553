"""In: a print job. Out: its PDFs, one a sheet, tagged and reproducible, with what is wrong with them.

The renderer sees no folder and no network: its fetcher knows the files of the job and nothing else. No clock is read,
so the same job gives the same bytes on any day. The renderer is loaded with the first job and not before: it takes half
a second and needs a system library.
"""

import io
import logging
import mimetypes
from collections.abc import Iterator
from contextlib import contextmanager, redirect_stderr, redirect_stdout
from dataclasses import replace
from functools import cache, lru_cache
from types import ModuleType
from typing import Any
from urllib.parse import unquote, urlsplit

import pydyf

from sizewright.publish.faults import NoPango
from sizewright.publish.kept_drawings import kept_drawings
from sizewright.publish.print_job import BESIDE, NOWHERE, Files, Job, Paper, Press
from sizewright.publish.sheets import set_on_sheet, too_large
from sizewright.publish.tags import finish
from sizewright.read.project import Sheet

_NO_PANGO = (
    "PDFs need the Pango library, which is not installed here. Install it (Debian and Ubuntu: libpango-1.0-0, "
    "libpangoft2-1.0-0 and libharfbuzz-subset0; Fedora: pango; macOS: brew install pango)."
)

_VARIANT, _VERSION = "pdf/ua-1", b"1.7"


def lay_out(job: Job) -> tuple[Paper, ...]:
    """The papers of a job, in any process that has this package; one alone where something is wrong.

    What the renderer warns of, refuses or trips over is in the faults of the first. Raises NoPango.
    """
    stylesheets, fonts, faults = set_up(job.press)
    with _said() as said:
        try:
            papers = _papers(job, stylesheets, fonts)
        except _weasyprint().urls.FatalURLFetchingError as error:
            return (Paper(job.path, b"", (*said, str(error))),)
        except Exception as error:  # a mistake of the renderer's must not become a traceback
            return (Paper(job.path, b"", (*said, f"the renderer failed: {type(error).__name__}: {error}")),)
    wrong = tuple(dict.fromkeys((*faults, *said)))
    return (replace(papers[0], faults=wrong), *papers[1:])


@lru_cache(maxsize=2)
def set_up(press: Press) -> tuple[tuple[Any, ...], Any, tuple[str, ...]]:
    """Stylesheets and fonts, parsed once a process, and what was said against them. Raises NoPango."""
    weasyprint = _weasyprint()
    fonts = weasyprint.text.fonts.FontConfiguration()
    fetcher = _fetcher(press.root, press.files)
    with _said() as said:
        parsed = tuple(
            weasyprint.CSS(string=content.decode(), base_url=press.root + path, url_fetcher=fetcher, font_config=fonts)
            for path, content in press.files
            if path.endswith(".css")
        )
    return parsed, fonts, tuple(said)


def _papers(job: Job, stylesheets: tuple[Any, ...], fonts: Any) -> list[Paper]:  # noqa: ANN401 (the renderer has no types)
    root = job.press.root
    fetcher = _fetcher(root, (*job.press.files, *job.pictures))
    page = _weasyprint().HTML(string=job.html, base_url=root + BESIDE, url_fetcher=fetcher)
    document = page.render(
        font_config=fonts,
        stylesheets=list(stylesheets),
        cache=kept_drawings(job, _weasyprint().images.SVGImage),
        pdf_variant=_VARIANT,
        pdf_forms=job.forms,
    )
    document.metadata.created = job.created or None
    document.metadata.modified = job.modified or job.created or None
    _tell_lost_links(document)
    for fault in filter(None, (too_large(document, sheet) for _, sheet in job.targets)):
        _LOGGER.warning(fault)
    contents: list[bytes] = []
    *others, (_, last) = job.targets

    def write_others(document: Any, pdf: Any) -> None:  # noqa: ANN401
        finish(document, pdf)
        if others:
            _compress(pdf)
        contents.extend(_written(pdf, sheet) for _, sheet in others)
        set_on_sheet(pdf, last)

    contents.append(document.write_pdf(finisher=write_others, pdf_variant=_VARIANT))
    pages = len(document.pages)
    return [Paper(path, content, (), pages) for (path, _), content in zip(job.targets, contents, strict=True)]


def _compress(pdf: Any) -> None:  # noqa: ANN401
    """Compresses what is on the pages once for all sheets, as the renderer does it for each."""
    for item in pdf.objects:
        if isinstance(item, pydyf.Stream) and item.compress:
            _, _, content = item.data.partition(b"\nstream\n")
            item.stream[:] = [content.removesuffix(b"\nendstream")]
            item.extra["Filter"] = "/FlateDecode"
            item.compress = False


def _written(pdf: Any, sheet: Sheet) -> bytes:  # noqa: ANN401
    """The PDF on one sheet. What the renderer adds to it as it writes is taken away again, for the next one."""
    set_on_sheet(pdf, sheet)
    before, output = len(pdf.objects), io.BytesIO()
    pdf.write(output, _VERSION, identifier=False, compress=True)
    del pdf.objects[before:]
    pdf.current_position = 0
    return output.getvalue()


def _tell_lost_links(document: Any) -> None:  # noqa: ANN401
    """Links to other files of a site without an address: on paper they would lead to a place that is not there."""
    for page in document.pages:
        for kind, target, *_ in page.links:
            if kind == "external" and target.startswith(NOWHERE):
                text = "the link “%s” leads out of the paper and the site has no address"
                _LOGGER.warning(text, target.removeprefix(NOWHERE))


@cache
def _weasyprint() -> ModuleType:
    """The renderer."""
    try:
        # It prints a banner where its library is missing.
        with redirect_stdout(io.StringIO()), redirect_stderr(io.StringIO()):
            import weasyprint  # noqa: PLC0415
    except (ImportError, OSError) as error:
        raise NoPango(_NO_PANGO) from error
    module: ModuleType = weasyprint
    return module


def _fetcher(root: str, files: Files) -> Any:  # noqa: ANN401
    """What the renderer may load: `data:` addresses and the given files. All else stops it."""
    urls = _weasyprint().urls
    by_path = dict(files)

    class Enclosed(urls.URLFetcher):  # type: ignore[misc,name-defined]
        def fetch(self, url: str, headers: object = None) -> Any:  # noqa: ANN401
            if url.startswith("data:"):
                return super().fetch(url, headers)
            path = _below(root, url)
            if path not in by_path:
                # This one the renderer does not catch.
                words = f"“{url.removeprefix(NOWHERE)}” is not a file that the paper may show"
                raise urls.FatalURLFetchingError(words)
            kind = mimetypes.guess_type(path)[0] or "application/octet-stream"
            return urls.URLFetcherResponse(url, by_path[path], {"Content-Type": kind})

    return Enclosed()


def _below(root: str, url: str) -> str:
    """The path in the site that an address means, "" for one outside."""
    bare = urlsplit(url)._replace(query="", fragment="").geturl()
    return unquote(bare.removeprefix(root)) if bare.startswith(root) else ""


_LOGGER = logging.getLogger("weasyprint")


class _Collector(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.said: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.said.append(record.getMessage().replace(NOWHERE, ""))


@contextmanager
def _said() -> Iterator[list[str]]:
    """What the renderer says at WARNING and above: missing glyphs, unknown CSS, pictures without words."""
    collector = _Collector()
    _LOGGER.addHandler(collector)
    try:
        yield collector.said
    finally:
        _LOGGER.removeHandler(collector)
