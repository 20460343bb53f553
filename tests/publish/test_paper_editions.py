"""In: a cap in two sizes, published in every edition on both sheets. Out: PDFs that hold to their promises."""

import json
import os
import re
import shutil
import subprocess
from collections.abc import Callable
from fcntl import LOCK_EX, flock
from pathlib import Path

import pdfua
import pikepdf
import pytest
from bs4 import BeautifulSoup

from sizewright.publish.editions import editions
from sizewright.publish.manifest import read_manifest
from sizewright.publish.run import Published
from sizewright.publish.sheets import SIZES
from sizewright.read.folder import read_project
from sizewright.read.project import PaperChoice, Sheet

Publish = Callable[..., Published]
LARGE_PRINT = "patterns/cap/large-print/"
INCH, POINT = 72, 72 / 25.4
USUAL_ALL = ("patterns/cap.pdf", "patterns/cap/cap-all-letter.pdf")
LARGE_ALL = tuple(f"{LARGE_PRINT}cap-all-large-print-{sheet}.pdf" for sheet in Sheet)


def edit(folder: Path, file: str, old: str, new: str) -> None:
    path = folder / "content" / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


def of_size(key: str) -> tuple[str, ...]:
    usual = (f"patterns/cap/cap-{key}-{sheet}.pdf" for sheet in Sheet)
    return (*usual, *(f"{LARGE_PRINT}cap-{key}-large-print-{sheet}.pdf" for sheet in Sheet))


KEYS = ("small", "tall")
ALL = (*USUAL_ALL, *LARGE_ALL)
PATHS = (*ALL, *(path for key in KEYS for path in of_size(key)))


PATTERN = """---
title: Cap
published: 2026-03-01
licence: CC BY 4.0
kind: hat
picture: {file: hat.svg, alt: A cap}
sizes:
  Small: {head: 48 cm}
  Tall: {head: 60 cm}
gauge: {stitches: 22 st / 10 cm, rows: 30 rnd / 10 cm, needle: 4 mm}
yarn: {weight: light, length: 105 m, mass: 50 g, swatch: {stitches: 2000 st, mass: 12 g}}
needles: [4 mm circular needle]
notions: [1 marker]
finished: [{label: Brim, value: around, body: head}]
changes:
  - {date: 2026-10-12, text: "Tall: Rnd 1 said k3."}
---
```grade
around = head - 2 1/2 cm
cast_on = around * stitch_gauge, nearest multiple of 4
turns = 5 (7)
```

Cast on *loosely*.

## Brim

```work
Cast on {cast_on} sts. Join to work in the round.
Rnd 1: *K2, p2; rep from * to end.
Rep Rnd 1 {turns:times}. ({cast_on} sts)
```

::: sizes Tall
Sew in a lining.
:::

```chart Spots
Multiple of 2 sts.
Worked in the round.
[ | - ] 2
[ - | ] 1
```

```schematic
cap = hat(around = around, height = 19 (23) cm)
```
"""


@pytest.fixture(scope="session")
def cap(tmp_path_factory: pytest.TempPathFactory, repository: Path, published: Publish) -> Path:
    """A studio with one cap, published with all its PDFs, once for all workers. To be read only."""
    shared = tmp_path_factory.getbasetemp()
    folder = (shared.parent if "PYTEST_XDIST_WORKER" in os.environ else shared) / "editions"
    with folder.with_suffix(".lock").open("w") as lock:
        flock(lock, LOCK_EX)
        if not folder.exists():
            (folder / "content/patterns").mkdir(parents=True)
            shutil.copytree(repository / "tests/publish/sample/content/media", folder / "content/media")
            (folder / "content/site.yaml").write_text("name: Rook & Thistle\n", encoding="utf-8")
            (folder / "content/patterns/cap.md").write_text(PATTERN, encoding="utf-8")
            assert sorted(published(folder).laid_out) == sorted(PATHS)
    return folder


@pytest.fixture
def own(cap: Path, tmp_path: Path) -> Path:
    """The same, of one's own."""
    return Path(shutil.copytree(cap, tmp_path / "project"))


def said(*line: str | Path) -> str:
    return subprocess.run([*map(str, line)], capture_output=True, text=True, check=True, timeout=120).stdout


def test_every_file_is_sound_and_accessible(cap: Path) -> None:
    """By qpdf, with its fonts inside, and each kind by a checker of PDF/UA: sheets differ in nothing that it judges."""
    for path in PATHS:
        file = cap / "site" / path
        said("qpdf", "--check", file)
        rows = [line.split() for line in said("pdffonts", file).splitlines()[2:]]
        assert rows
        assert all(row[4:7] == ["yes", "yes", "yes"] for row in rows)
        if path in (*USUAL_ALL, LARGE_ALL[0], of_size("small")[1], of_size("small")[2]):
            assert pdfua.validate(str(file)).findings == (), path


def test_every_page_has_the_size_of_its_sheet(cap: Path) -> None:
    """ISO 216 and ANSI/ASME Y14.1; what stands on a page is the same on both."""
    texts = {}
    for path in PATHS:
        sheet = Sheet.LETTER if path.endswith("letter.pdf") else Sheet.A4
        with pikepdf.open(cap / "site" / path) as opened:
            for page in opened.pages:
                left, lower, right, upper = map(float, page.mediabox)
                size = (right - left) / POINT, (upper - lower) / POINT
                assert size == pytest.approx(SIZES[sheet], abs=0.05)
                assert page.trimbox == page.mediabox
        texts[path] = said("pdftotext", "-layout", cap / "site" / path, "-")
    for a4, letter in zip(PATHS[::2], PATHS[1::2], strict=True):
        assert texts[a4].split() == texts[letter].split()
        assert texts[a4].count("\f") == texts[letter].count("\f")


def test_large_print_keeps_to_the_guidance(cap: Path) -> None:
    """accessiblepatternsindex.com and snooptiggercrafts.com (2020): 24 pt, sans serif, no italics, one inch of margin,
    left-aligned, black on white, no bullets, links inside, and the notes say so."""
    for path in PATHS:
        if not path.startswith(LARGE_PRINT):
            continue
        file = cap / "site" / path
        told = BeautifulSoup(said("pdftohtml", "-xml", "-zoom", "1", "-i", "-stdout", file), "xml")
        assert min(int(str(font["size"])) for font in told.find_all("fontspec")) >= 24
        assert {str(font["color"]) for font in told.find_all("fontspec")} == {"#000000"}
        assert not re.search("italic|oblique|serif", said("pdffonts", file).replace("sans", ""), re.IGNORECASE)
        for page in BeautifulSoup(said("pdftotext", "-bbox", file, "-"), "html.parser").find_all("page"):
            words = page.find_all("word")
            assert min(float(str(word["xmin"])) for word in words) >= INCH - 0.5
            assert max(float(str(word["xmax"])) for word in words) <= float(str(page["width"])) - INCH + 0.5
        text = said("pdftotext", file, "-")
        assert "large-print edition: 24 point" in text
        assert not set("•◦▪·") & set(text)
        with pikepdf.open(file) as opened:
            links = [link for page in opened.pages for link in page.get("/Annots", ())]
            assert sum("/Dest" in link or "/D" in link.get("/A", {}) for link in links) >= 5


def test_the_small_cap_says_nothing_of_the_tall_one(cap: Path) -> None:
    """In its text, its bookmarks, the words for its pictures and what it says of itself.

    Worked out by hand: (48 cm - 2 1/2 cm) * 22 / 10 = 100.1, to a multiple of 4: 100; the other has 126.5: 128.
    """
    for path in of_size("small"):
        file = cap / "site" / path
        text = said("pdftotext", file, "-")
        assert "Cast on 100 sts." in " ".join(text.split())
        assert "A correction that tells of several sizes" in " ".join(text.split())
        with pikepdf.open(file) as opened:
            told = [*opened.objects, opened.docinfo]
            text += " ".join(
                str(value)
                for one in told
                if isinstance(one, pikepdf.Dictionary)
                for value in one.values()
                if isinstance(value, pikepdf.String)
            )
        assert not re.search(r"\b(128|7 times|23|60|57|58|Tall|lining)\b", text), path
        assert "size Small" in said("pdfinfo", file)


def test_the_page_offers_them(cap: Path) -> None:
    manifest = read_manifest(cap / "site")
    assert manifest is not None
    page = BeautifulSoup((cap / "site/patterns/cap.html").read_text(encoding="utf-8"), "html.parser")
    offered = {link["href"]: link.find_next_sibling(class_="remark") for link in page.select(".papers a")}
    assert set(offered) == {path.removeprefix("patterns/") for path in PATHS}
    for href, remark in offered.items():
        path = f"patterns/{href}"
        size = (cap / "site" / path).stat().st_size
        assert remark is not None
        assert remark.text == f"{manifest.pages[path]} pages, {round(size / 1000)} kB"
        assert int(said("pdfinfo", cap / "site" / path).partition("Pages:")[2].split()[0]) == manifest.pages[path]
    assert [one["class"] for one in page.select(".papers > div")] == [["zp"], ["zo", "z0"], ["zo", "z1"]]
    assert [link["href"] for link in page.select(".actions a[type]")] == [
        "cap.pdf",
        *(f"cap/cap-{key}-a4.pdf" for key in KEYS),
    ]


def test_a_change_in_one_size_lays_out_its_own_and_those_of_all(own: Path, published: Publish) -> None:
    """And nothing where there is none."""
    assert published(own).laid_out == ()
    edit(own, "patterns/cap.md", "turns = 5 (7)", "turns = 6 (7)")
    done = published(own)
    assert sorted(done.laid_out) == sorted((*ALL, *of_size("small")))
    assert sorted(path for path in done.written if path.endswith(".pdf")) == sorted(done.laid_out)


def test_a_refused_pattern_keeps_every_one(own: Path, published: Publish) -> None:
    before = read_manifest(own / "site")
    edit(own, "patterns/cap.md", "nearest multiple of 4", "nearest multiple of 3")
    done = published(own, without_refused=True)
    after = read_manifest(own / "site")
    assert before is not None
    assert after is not None
    assert (done.kept, done.laid_out) == (("cap",), ())
    assert (after.papers, after.pages) == (before.papers, before.pages)
    assert all((own / "site" / path).is_file() for path in PATHS)
    edit(own, "patterns/cap.md", "nearest multiple of 3", "nearest multiple of 4")
    assert published(own).laid_out == ()


def test_what_a_studio_does_not_want_is_taken_away(own: Path, published: Publish) -> None:
    edit(own, "site.yaml", "name:", "papers: {each_size: no, large_print: no}\nname:")
    done = published(own)
    assert done.laid_out == ()
    assert set(done.removed) == set(PATHS) - set(USUAL_ALL)
    page = BeautifulSoup((own / "site/patterns/cap.html").read_text(encoding="utf-8"), "html.parser")
    assert [link["href"] for link in page.select(".papers a")] == ["cap.pdf", "cap/cap-all-letter.pdf"]
    assert not page.select(".papers .zp"), "what is for all sizes is offered whatever size is chosen"


def test_no_path_is_taken_twice(read_pattern: Callable[[str], tuple[object, object]], tmp_path: Path) -> None:
    """Whatever sizes are called: like an edition, a sheet, all of them, each other, or at great length."""
    names = ("All", "all", "Large print", "print", "A4", "a4-large-print", "X" * 200, "x" * 200, "½", "¼", "S/M", "s m")
    sizes = "".join(f"  {json.dumps(name)}: {{}}\n" for name in names)
    read_pattern(f"---\ntitle: Trial\nsizes:\n{sizes}---\n")
    (pattern,) = read_project(tmp_path).patterns
    paths = [path for one in editions(pattern, PaperChoice()) for path, _ in one.targets]
    assert len(paths) == (len(names) + 1) * 4
    assert len({path.casefold() for path in paths}) == len(paths)
    assert paths[0] == "patterns/trial.pdf"
    assert all(path.startswith("patterns/trial/") for path in paths[1:])
    assert all(len(part.encode()) <= 255 for path in paths for part in path.split("/"))
