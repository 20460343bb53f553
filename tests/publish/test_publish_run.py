"""In: the sample project, published and changed. Out: its site written whole, and only what changed is made again."""

import shutil
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

from sizewright.proof.run import proof
from sizewright.publish.manifest import MANIFEST, Options, digest, read_manifest, up_to_date
from sizewright.publish.run import Published, paper_of, publish, site_folder
from sizewright.read.folder import read_project

Publish = Callable[..., Published]


@dataclass
class Steps:
    """A progress that remembers what it was told: how many of what, and how many came."""

    told: list[tuple[str, int]] = field(default_factory=list)
    came: dict[str, int] = field(default_factory=dict)

    def start(self, total: int, what: str) -> None:
        self.told.append((what, total))

    def step(self) -> None:
        what = self.told[-1][0]
        self.came[what] = self.came.get(what, 0) + 1


def edit(folder: Path, file: str, old: str, new: str) -> None:
    path = folder / "content" / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


def tree(folder: Path) -> dict[str, tuple[bytes, int]]:
    """Every file below, its content and its time."""
    return {
        path.relative_to(folder).as_posix(): (path.read_bytes(), path.stat().st_mtime_ns)
        for path in folder.rglob("*")
        if path.is_file()
    }


def contents(site: Path) -> dict[str, bytes]:
    """Every file of a site but the manifest, which also knows the program that wrote it."""
    return {path: content for path, (content, _) in tree(site).items() if path != MANIFEST}


def site(folder: Path, path: str) -> str:
    return (folder / "site" / path).read_text(encoding="utf-8")


def test_everything_is_written(finished: Path) -> None:
    files = set(tree(finished / "site"))
    for path in (
        "patterns/hat.html",
        "patterns/hat.json",
        "patterns/hat.pdf",
        "patterns/cloth.pdf",
        "index.html",
        "404.html",
        "about.html",
        "techniques/bobbles.html",
    ):
        assert path in files
    assert {"feed.xml", "sitemap.xml", "theme/studio.css", MANIFEST} <= files
    assert {path.name for path in finished.iterdir()} == {"content", "site"}


def test_only_pictures_that_are_shown_are_copied(finished: Path) -> None:
    assert {path for path in tree(finished / "site") if path.startswith("media/")} == {"media/hat.svg"}


def test_the_manifest_knows_every_file(finished: Path) -> None:
    manifest = read_manifest(finished / "site")
    assert manifest is not None
    assert manifest.outputs == {path: digest(content) for path, content in contents(finished / "site").items()}
    assert set(manifest.papers) == {"patterns/hat.pdf", "patterns/cloth.pdf"}
    assert manifest.patterns == 2


def test_every_local_address_in_the_pages_feed_and_sitemap_is_there(finished: Path) -> None:
    address = "https://rook.example/knits/"
    for path in ("feed.xml", "sitemap.xml"):
        for part in site(finished, path).split(address)[1:]:
            target = part.partition('"')[0].partition("<")[0].partition("#")[0]
            assert (finished / "site" / (target or "index.html")).is_file(), target


def test_progress(folder: Path, published: Publish) -> None:
    steps = Steps()
    shutil.rmtree(folder / "site")
    published(folder, progress=steps)
    assert steps.told == [("PDFs", 2), ("pages", 2)]
    assert steps.came == {"pages": 2, "PDFs": 2}


def test_a_second_publish_changes_nothing(folder: Path, published: Publish) -> None:
    before = tree(folder / "site")
    done = published(folder)
    assert (done.done, done.written, done.laid_out, done.removed) == (True, (), (), ())
    after = tree(folder / "site")
    del before[MANIFEST], after[MANIFEST]
    assert after == before


def test_the_same_content_gives_the_same_site_elsewhere(folder: Path, published: Publish) -> None:
    before = contents(folder / "site")
    shutil.rmtree(folder / "site")
    published(folder)
    assert contents(folder / "site") == before


def test_that_nothing_has_changed_is_known_in_a_tenth_of_the_time(folder: Path, published: Publish) -> None:
    """In the time of the processor, as other programs run too."""
    shutil.rmtree(folder / "site")
    start = time.process_time()
    published(folder)
    first = time.process_time() - start
    start = time.process_time()
    stored = up_to_date(folder, folder / "site", Options())
    second = time.process_time() - start
    assert stored is not None
    assert stored.patterns == 2
    assert second <= first / 10, f"{second:.3f} s after {first:.3f} s"


def test_only_what_has_changed_is_laid_out_again(folder: Path, published: Publish) -> None:
    cloth = tree(folder / "site")["patterns/cloth.pdf"]
    edit(folder, "patterns/hat.md", "turn {turns:times}", "turn it {turns:times}")
    done = published(folder)
    assert done.laid_out == ("patterns/hat.pdf",)
    assert set(done.written) == {"patterns/hat.html", "patterns/hat.pdf", "sw.js"}
    assert tree(folder / "site")["patterns/cloth.pdf"] == cloth


def test_a_changed_picture_is_laid_out_again(folder: Path, published: Publish) -> None:
    edit(folder, "media/hat.svg", "<svg", "<svg id='a'")
    assert published(folder).laid_out == ("patterns/hat.pdf",)


def test_a_pdf_that_was_damaged_is_laid_out_again(folder: Path, published: Publish) -> None:
    sound = (folder / "site/patterns/hat.pdf").read_bytes()
    (folder / "site/patterns/hat.pdf").write_bytes(sound[:-1])
    assert published(folder).laid_out == ("patterns/hat.pdf",)
    assert (folder / "site/patterns/hat.pdf").read_bytes() == sound


def test_what_is_no_longer_made_is_removed(folder: Path, published: Publish) -> None:
    (folder / "content/patterns/cloth.md").unlink()
    done = published(folder)
    own = {path for path in done.removed if not path.startswith("theme/joined-")}  # of its page, which has no sizes
    assert own == {
        *(f"patterns/cloth.{kind}" for kind in ("html", "json", "pdf")),
        "drawn/cloth.svg",
    }
    assert not (folder / "site/patterns/cloth.html").exists()
    assert "patterns/cloth.html" not in site(folder, "sitemap.xml")


def test_pages_that_were_proofed_too_are_no_patterns(folder: Path) -> None:
    project = read_project(folder)
    proofed = [proof(source, project) for source in (*project.patterns, *project.pages, *project.techniques)]
    assert publish(project, proofed, without_refused=False, progress=Steps()).written == ()


def test_without_papers(folder: Path, published: Publish) -> None:
    done = published(folder, papers=False)
    assert done.done
    assert not list((folder / "site").rglob("*.pdf"))
    assert up_to_date(folder, folder / "site", Options(papers=False)) is not None
    assert up_to_date(folder, folder / "site", Options(papers=True)) is None


def test_without_an_address_there_is_no_sitemap(folder: Path, published: Publish) -> None:
    edit(folder, "site.yaml", "address: https://rook.example/knits/", "")
    assert published(folder).done
    assert not (folder / "site/sitemap.xml").exists()
    assert 'rel="self"' not in site(folder, "feed.xml")


def test_the_paper_of_one_pattern_alone_is_the_one_of_the_site(folder: Path) -> None:
    project = read_project(folder)
    proofed = [proof(pattern, project) for pattern in project.patterns]
    for each in proofed:
        paper = paper_of(project, each, f"patterns/{each.graded.pattern.name}.pdf")
        assert paper.faults == ()
        assert paper.content == (folder / "site" / paper.path).read_bytes()


def test_a_site_elsewhere(folder: Path, tmp_path: Path) -> None:
    project = read_project(folder)
    proofed = [proof(pattern, project) for pattern in project.patterns]
    before, elsewhere = tree(folder), tmp_path / "elsewhere"
    done = publish(project, proofed, without_refused=False, papers=False, progress=Steps(), site=elsewhere)
    assert tree(folder) == before
    assert done.done
    assert (elsewhere / "index.html").read_bytes() == (site_folder(folder) / "index.html").read_bytes()
