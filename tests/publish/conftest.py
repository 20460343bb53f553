"""In: the small project in `sample/`. Out: it read, proofed and written as a site, once for all tests of the pages."""

import functools
import json
import shutil
import subprocess
from collections.abc import Callable, Iterator
from dataclasses import replace
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import Any

import pytest
from tests.shared.demo import Unseen

from sizewright.proof.proofed import Proofed
from sizewright.proof.run import proof
from sizewright.publish.card import Card
from sizewright.publish.editions import editions
from sizewright.publish.links import Links
from sizewright.publish.manifest import Options, inputs_digest
from sizewright.publish.output import Output
from sizewright.publish.pages import data_page, site_pages
from sizewright.publish.progress import Progress
from sizewright.publish.run import Published, publish
from sizewright.publish.theme import Theme
from sizewright.publish.view import PatternView
from sizewright.publish.view_pattern import pattern_view
from sizewright.publish.view_terms import Terms
from sizewright.read.folder import read_project
from sizewright.read.project import PaperChoice, Project

SAMPLE = Path(__file__).parent / "sample"

# What is looked at in the plain theme.
SHOWN_PLAIN = ("patterns/hat.html", "index.html", "techniques/bobbles.html", "drawn/", "theme/joined-")

# A pattern refused this time, of which the last good pages stay.
KEPT = Card(
    "old-shawl",
    "Old shawl",
    summary="Refused today.",
    kind="shawl",
    published="2025-01-01",
    sizes=("Small", "Huge"),
    weights=("lace",),
    techniques=("bobbles",),
)


@pytest.fixture(scope="session")
def sample_project() -> Project:
    project = read_project(SAMPLE)
    assert project.findings == ()
    # Its pages offer every PDF there can be; laid out are few (its site.yaml).
    return replace(project, studio=replace(project.studio, papers=PaperChoice()))


@pytest.fixture(scope="session")
def sample_proofed(sample_project: Project) -> tuple[Proofed, ...]:
    proofed = tuple(proof(pattern, sample_project) for pattern in sample_project.patterns)
    assert not [finding for one in proofed if one.refused for finding in one.findings]
    return proofed


@pytest.fixture(scope="session")
def sample_theme() -> Theme:
    return Theme.find("studio", SAMPLE)


@pytest.fixture(scope="session")
def sample_outputs(
    sample_project: Project, sample_proofed: tuple[Proofed, ...], sample_theme: Theme
) -> dict[str, Output]:
    """Every page and data file, and what the theme adds, by path."""
    pages = list(site_pages(sample_project, sample_proofed, [KEPT], sample_theme))
    data = [
        Output(f"patterns/{one.graded.pattern.name}.json", data_page(one, sample_project)) for one in sample_proofed
    ]
    outputs = [*pages, *data, *sample_theme.assets()]
    by_path = {output.path: output for output in outputs}
    assert len(by_path) == len(outputs), "a path is written twice"
    return by_path


@pytest.fixture(scope="session")
def sample_papers(sample_project: Project) -> tuple[str, ...]:
    """The paths of all PDFs that the pages of the sample offer."""
    made = (edition for pattern in sample_project.patterns for edition in editions(pattern, PaperChoice()))
    return tuple(path for edition in made for path, _ in edition.targets)


@pytest.fixture(scope="session")
def sample_site(
    sample_outputs: dict[str, Output], sample_papers: tuple[str, ...], tmp_path_factory: pytest.TempPathFactory
) -> Path:
    """The site on disk, with its pictures; what other parts of publishing write stands as an empty file."""
    site = tmp_path_factory.mktemp("site")
    written = [*sample_outputs.values(), *(Output(path, b"") for path in ("feed.xml", *sample_papers))]
    written += [Output("sw.js", b""), Output("site.webmanifest", b"{}")]
    written += [Output(f"media/{file.name}", file.read_bytes()) for file in (SAMPLE / "content/media").iterdir()]
    written += [Output("patterns/old-shawl.html", sample_outputs["patterns/cloth.html"].content)]
    for output in written:
        file = site / output.path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(output.content)
    return site


@pytest.fixture(scope="session")
def plain_site(
    sample_project: Project, sample_proofed: tuple[Proofed, ...], tmp_path_factory: pytest.TempPathFactory
) -> Path:
    """A few pages of the sample in the plain theme."""
    site, theme = tmp_path_factory.mktemp("plain"), Theme.find("plain", SAMPLE)
    pages = [
        page for page in site_pages(sample_project, sample_proofed, [KEPT], theme) if page.path.startswith(SHOWN_PLAIN)
    ]
    assert len(pages) > len(SHOWN_PLAIN)
    for output in (*pages, *theme.assets()):
        file = site / output.path
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(output.content)
    (site / "media").mkdir()
    (site / "media/hat.svg").write_bytes((SAMPLE / "content/media/hat.svg").read_bytes())
    return site


@pytest.fixture(scope="module")
def serve() -> Iterator[Callable[[Path], str]]:
    """`serve(folder)`: the address of a folder on loopback, with what stands in it at the moment of asking."""
    servers = []

    def begin(folder: Path) -> str:
        server = ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(_Quiet, directory=str(folder)))
        Thread(target=server.serve_forever, daemon=True).start()
        servers.append(server)
        return f"http://127.0.0.1:{server.server_port}"

    yield begin
    for server in servers:
        server.shutdown()
        server.server_close()


@pytest.fixture(scope="module")
def knits_folder(sample_site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the sample below a path, which tests may publish anew."""
    return Path(shutil.copytree(sample_site, tmp_path_factory.mktemp("served") / "knits"))


@pytest.fixture(scope="module")
def knits(knits_folder: Path, serve: Callable[[Path], str]) -> str:
    """Its address."""
    return f"{serve(knits_folder.parent)}/knits"


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 (the name of the standard library)
        pass

    def end_headers(self) -> None:
        self.send_header("Cache-Control", "no-store")
        super().end_headers()


@pytest.fixture(scope="session")
def in_node(repository: Path) -> Callable[..., Any]:
    """Runs scripts of the studio theme without a browser: `in_node(["exact"], "return exact.…", data)`, data as JSON.

    The program is the body of a function of `given`. One process of node a call: give it all there is to do at once.
    """
    node = shutil.which("node")
    if node is None:
        pytest.fail("node is not installed: run `sh generator/setup.sh test`, which installs it", pytrace=False)

    def run(scripts: list[str], program: str, given: object, language: str = "en") -> Any:  # noqa: ANN401 (JSON)
        files = [repository / f"themes/studio/assets/{name}.js" for name in ("tr", *scripts)]
        page = f'globalThis.document = {{ documentElement: {{ lang: "{language}" }} }};'
        words = [page, *(file.read_text(encoding="utf-8") for file in files)]
        words.append(
            f"const asked = (given) => {{ {program} }};\n"
            'const given = JSON.parse(require("node:fs").readFileSync(0, "utf8"));\n'
            "process.stdout.write(JSON.stringify(asked(given)));"
        )
        done = subprocess.run(
            [node, "-e", "\n".join(words)],
            input=json.dumps(given),
            capture_output=True,
            text=True,
            check=False,
            timeout=60,
        )
        assert done.returncode == 0, done.stderr
        return json.loads(done.stdout)

    return run


@pytest.fixture
def read_pattern(tmp_path: Path) -> Callable[[str], tuple[Proofed, Project]]:
    """A pattern of a few lines, read and graded: `read_pattern(header and body)`."""

    def read(text: str) -> tuple[Proofed, Project]:
        file = tmp_path / "content" / "patterns" / "trial.md"
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8")
        project = read_project(tmp_path)
        return proof(project.patterns[0], project), project

    return read


@pytest.fixture
def view_of(read_pattern: Callable[[str], tuple[Proofed, Project]]) -> Callable[[str, str], PatternView]:
    """What the page of a pattern shows: `view_of(lines of the header, body)`."""

    def view(header: str, body: str) -> PatternView:
        proofed, project = read_pattern(f"---\ntitle: Trial\n{header}---\n{body}\n")
        links = Links("../")
        return pattern_view(proofed.worked, project, links, Terms.of(project, links))

    return view


def read_and_publish(
    folder: Path, *, without_refused: bool = False, papers: bool = True, progress: Progress | None = None
) -> Published:
    inputs = inputs_digest(folder, Options(papers))
    project = read_project(folder)
    proofed = [proof(pattern, project) for pattern in project.patterns]
    steps = progress or Unseen()
    return publish(project, proofed, without_refused=without_refused, papers=papers, progress=steps, inputs=inputs)


@pytest.fixture(scope="session")
def published() -> Callable[..., Published]:
    """Reads, proofs and publishes, as the command does: `published(folder, without_refused=, papers=, progress=)`."""
    return read_and_publish


@pytest.fixture(scope="session")
def finished(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sample with a picture nobody shows, published once. To be read only."""
    folder = tmp_path_factory.mktemp("finished") / "project"
    shutil.copytree(SAMPLE, folder)
    shutil.copy(folder / "content/media/hat.svg", folder / "content/media/unused.svg")
    assert read_and_publish(folder).done
    return folder


@pytest.fixture
def folder(finished: Path, tmp_path: Path) -> Path:
    """The same, of one's own."""
    return Path(shutil.copytree(finished, tmp_path / "project"))
