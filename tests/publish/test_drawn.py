"""In: patterns with stitch blocks, with and without a picture. Out: charts and cloth on pages, cards and paper."""

import shutil
import subprocess
from base64 import b64decode
from collections.abc import Callable
from pathlib import Path

import pdfua
import pytest
from bs4 import BeautifulSoup

from sizewright.proof.proofed import Proofed
from sizewright.publish.card import Card
from sizewright.publish.layout import lay_out
from sizewright.publish.output import Output
from sizewright.publish.paper_page import paper_page
from sizewright.publish.print_job import Job, Press
from sizewright.publish.run import Published
from sizewright.publish.theme import Theme
from sizewright.publish.view import PatternView
from sizewright.read.project import Project, Sheet

BODY = """
```stitch Two colours
Rnd 1 (main): Knit.
Rnd 2 (contrast): *K3, sl 1 wyib; rep from * to end.
```

```work
Cast on 20 sts.
Row 1 (RS): *K1, p1; rep from * to end.
Row 2: *K1, p1; rep from * to end.
```
"""
YARNS = 'yarn: {main: {fibre: wool, shade: "#1f3a5f"}, contrast: {fibre: wool, colour: cream}}\n'
ALT = "The cloth of Trial, drawn from its rows: ribbing"


def test_a_stitch_block_has_its_rows_its_chart_and_its_cloth(view_of: Callable[[str, str], PatternView]) -> None:
    view = view_of(YARNS, BODY)
    (part,) = [part for part in view.body.parts if part.kind == "stitch"]
    assert len(part.lines) == 2
    assert part.chart is not None
    assert [entry.words for entry in part.chart.key] == ["knit", "slip wyib", "main", "contrast"]
    assert "#1f3a5f" in part.chart.drawing
    assert part.cloth is not None
    assert part.cloth.src == "../drawn/trial-1.svg"
    assert part.cloth.alt.startswith("Two colours as it is knitted, drawn from its rows: ")


def test_a_pattern_without_a_picture_gets_one_of_its_cloth(
    read_pattern: Callable[[str], tuple[Proofed, Project]], view_of: Callable[[str, str], PatternView]
) -> None:
    picture = view_of(YARNS, BODY).picture
    assert picture is not None
    assert (picture.src, picture.alt) == ("../drawn/trial.svg", ALT)
    proofed, _ = read_pattern(f"---\ntitle: Trial\n{YARNS}---\n{BODY}")
    assert (Card.of(proofed).picture, Card.of(proofed).alt) == ("drawn/trial.svg", ALT)


def test_one_without_rows_has_none(view_of: Callable[[str, str], PatternView]) -> None:
    assert view_of("", "Words.").picture is None


def test_what_pages_show_is_written(sample_outputs: dict[str, Output]) -> None:
    drawn = {path for path in sample_outputs if path.startswith("drawn/")}
    assert drawn == {"drawn/cloth.svg", "drawn/hat-1.svg"}  # the hat has a picture of its own
    for path in ("index.html", "patterns/cloth.html", "patterns/hat.html"):
        page = BeautifulSoup(sample_outputs[path].content, "html.parser")
        shown = {str(image["src"]).removeprefix("../") for image in page.select("img[src*='drawn/']")}
        assert shown
        assert shown <= drawn
        assert all(image["alt"] for image in page.select("img[src*='drawn/']"))


def test_a_refused_pattern_keeps_what_its_page_shows(
    finished: Path, tmp_path: Path, published: Callable[..., Published]
) -> None:
    folder = tmp_path / "project"
    shutil.copytree(finished, folder)
    cloth = folder / "content/patterns/cloth.md"
    cloth.write_text(cloth.read_text(encoding="utf-8").replace("Row 1: Knit.", "Row 1: K99."), encoding="utf-8")
    before = (folder / "site/drawn/cloth.svg").read_bytes()
    assert published(folder, without_refused=True, papers=False).kept == ("cloth",)
    assert (folder / "site/drawn/cloth.svg").read_bytes() == before
    assert "drawn/cloth.svg" in (folder / "site/index.html").read_text(encoding="utf-8")


@pytest.fixture
def paper(read_pattern: Callable[[str], tuple[Proofed, Project]]) -> str:
    """The print page of a pattern with everything that is drawn."""
    proofed, project = read_pattern(f"---\ntitle: Trial\n{YARNS}---\n{BODY}")
    return paper_page(proofed, project, Theme.find("studio", Path(__file__).parent))


def test_paper_holds_its_pictures(paper: str) -> None:
    sources = [str(image["src"]) for image in BeautifulSoup(paper, "html.parser").select("img")]
    assert len(sources) == 2
    for source in sources:
        kind, _, content = source.partition(",")
        assert kind == "data:image/svg+xml;base64"
        assert b64decode(content).startswith(b"<svg")


def test_charts_and_cloth_on_paper_have_words(paper: str, tmp_path: Path) -> None:
    """PDF/UA-1, 7.3: every figure has words, those of a key as those of a chart."""
    theme = Theme.find("studio", Path(__file__).parent)
    press = Press(tuple((file.path, file.content) for file in theme.paper_files()))
    (laid,) = lay_out(Job((("patterns/trial.pdf", Sheet.A4),), paper, (), "", "", press))
    assert laid.faults == ()
    file = tmp_path / "trial.pdf"
    file.write_bytes(laid.content)
    assert pdfua.validate(str(file)).findings == ()
    told = subprocess.run(
        ["qpdf", "--json", "--json-key=qpdf", file], capture_output=True, text=True, check=True
    ).stdout
    words = ["Chart of Two colours, 4 stitches by 2 rows", ALT, "Two colours as it is knitted", "Sign: slip wyib"]
    assert [text for text in words if f'"/Alt": "u:{text}' not in told] == []
    assert told.count('"/Alt"') == told.count('"/S": "/Figure"') == 7
