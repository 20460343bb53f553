"""In: copies of the sample project, sound and broken. Out: its site written whole, in part if asked, or not at all."""

import json
import logging
import shutil
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from sizewright.proof.run import proof
from sizewright.publish.faults import CannotWrite, NotOurs, PaperFault
from sizewright.publish.manifest import MANIFEST, Options, digest, inputs_digest, read_manifest, up_to_date
from sizewright.publish.run import Published, paper_of, publish, site_folder
from sizewright.publish.theme import BadTheme
from sizewright.read.folder import read_project

SAMPLE = Path(__file__).parent / "sample"
HAT = ("patterns/hat.html", "patterns/hat.json", "patterns/hat.pdf")


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


def published(
    folder: Path, *, without_refused: bool = False, papers: bool = True, steps: Steps | None = None
) -> Published:
    """Reads, proofs and publishes a project, as the command does."""
    inputs = inputs_digest(folder, Options(papers))
    project = read_project(folder)
    proofed = [proof(pattern, project) for pattern in project.patterns]
    progress = steps or Steps()
    return publish(project, proofed, without_refused=without_refused, papers=papers, progress=progress, inputs=inputs)


@pytest.fixture(scope="module")
def finished(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sample, published once; tests work on copies of it."""
    folder = tmp_path_factory.mktemp("finished") / "project"
    shutil.copytree(SAMPLE, folder)
    shutil.copy(folder / "content/media/hat.svg", folder / "content/media/unused.svg")
    assert published(folder).done
    return folder


@pytest.fixture
def folder(finished: Path, tmp_path: Path) -> Path:
    """A published project of one's own."""
    return Path(shutil.copytree(finished, tmp_path / "project"))


def edit(folder: Path, file: str, old: str, new: str) -> None:
    path = folder / "content" / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


def break_hat(folder: Path) -> None:
    edit(folder, "patterns/hat.md", "turns   = 1 (2, 3)", "turns   = 1 (2, 3)\nrequire turns = 7")


def tree(folder: Path) -> dict[str, tuple[bytes, int]]:
    """Every file below, its content and its time."""
    return {
        path.relative_to(folder).as_posix(): (path.read_bytes(), path.stat().st_mtime_ns)
        for path in folder.rglob("*")
        if path.is_file()
    }


@contextmanager
def untouched(folder: Path) -> Iterator[None]:
    """Whatever is done inside, nothing in the project has changed and nothing has come to it."""
    before = tree(folder)
    yield
    assert tree(folder) == before


def site(folder: Path, path: str) -> str:
    return (folder / "site" / path).read_text(encoding="utf-8")


# ----------------------------------------------------------------------------------------------------- a sound project


def test_everything_is_written(finished: Path) -> None:
    files = set(tree(finished / "site"))
    for path in (*HAT, "patterns/cloth.pdf", "index.html", "404.html", "about.html", "techniques/bobbles.html"):
        assert path in files
    assert {"feed.xml", "sitemap.xml", "theme/studio.css", MANIFEST} <= files
    assert {path.name for path in finished.iterdir()} == {"content", "site"}


def test_only_pictures_that_are_shown_are_copied(finished: Path) -> None:
    assert {path for path in tree(finished / "site") if path.startswith("media/")} == {"media/hat.svg"}


def test_the_manifest_knows_every_file(finished: Path) -> None:
    manifest = read_manifest(finished / "site")
    assert manifest is not None
    contents = {path: content for path, (content, _) in tree(finished / "site").items() if path != MANIFEST}
    assert manifest.outputs == {path: digest(content) for path, content in contents.items()}
    assert set(manifest.papers) == {"patterns/hat.pdf", "patterns/cloth.pdf"}
    assert manifest.patterns == 2


def test_every_local_address_in_the_pages_feed_and_sitemap_is_there(finished: Path) -> None:
    address = "https://rook.example/knits/"
    for path in ("feed.xml", "sitemap.xml"):
        for part in site(finished, path).split(address)[1:]:
            target = part.partition('"')[0].partition("<")[0].partition("#")[0]
            assert (finished / "site" / (target or "index.html")).is_file(), target


def test_progress(folder: Path) -> None:
    steps = Steps()
    shutil.rmtree(folder / "site")
    published(folder, steps=steps)
    assert steps.told == [("pages", 2), ("PDFs", 2)]
    assert steps.came == {"pages": 2, "PDFs": 2}


def test_a_second_publish_changes_nothing(folder: Path) -> None:
    before = tree(folder / "site")
    done = published(folder)
    assert (done.done, done.written, done.laid_out, done.removed) == (True, (), (), ())
    after = tree(folder / "site")
    assert {path: file for path, file in after.items() if path != MANIFEST} == {
        path: file for path, file in before.items() if path != MANIFEST
    }
    assert after[MANIFEST][0] == before[MANIFEST][0]


def test_the_same_content_gives_the_same_site_elsewhere(folder: Path) -> None:
    before = {path: content for path, (content, _) in tree(folder / "site").items()}
    shutil.rmtree(folder / "site")
    published(folder)
    assert {path: content for path, (content, _) in tree(folder / "site").items()} == before


def test_that_nothing_has_changed_is_known_in_a_tenth_of_the_time(folder: Path) -> None:
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


def test_only_what_has_changed_is_laid_out_again(folder: Path) -> None:
    cloth = tree(folder / "site")["patterns/cloth.pdf"]
    edit(folder, "patterns/hat.md", "turn {turns:times}", "turn it {turns:times}")
    done = published(folder)
    assert done.laid_out == ("patterns/hat.pdf",)
    assert set(done.written) == {"patterns/hat.html", "patterns/hat.pdf"}
    assert tree(folder / "site")["patterns/cloth.pdf"] == cloth


def test_a_changed_picture_is_laid_out_again(folder: Path) -> None:
    edit(folder, "media/hat.svg", "<svg", "<svg id='a'")
    assert published(folder).laid_out == ("patterns/hat.pdf",)


def test_a_pdf_that_was_damaged_is_laid_out_again(folder: Path) -> None:
    sound = (folder / "site/patterns/hat.pdf").read_bytes()
    (folder / "site/patterns/hat.pdf").write_bytes(sound[:-1])
    assert published(folder).laid_out == ("patterns/hat.pdf",)
    assert (folder / "site/patterns/hat.pdf").read_bytes() == sound


def test_what_is_no_longer_made_is_removed(folder: Path) -> None:
    (folder / "content/patterns/cloth.md").unlink()
    done = published(folder)
    assert set(done.removed) == {"patterns/cloth.html", "patterns/cloth.json", "patterns/cloth.pdf"}
    assert not (folder / "site/patterns/cloth.html").exists()
    assert "patterns/cloth.html" not in site(folder, "sitemap.xml")


def test_without_papers(folder: Path) -> None:
    done = published(folder, papers=False)
    assert done.done
    assert not list((folder / "site").rglob("*.pdf"))
    assert up_to_date(folder, folder / "site", Options(papers=False)) is not None
    assert up_to_date(folder, folder / "site", Options(papers=True)) is None


def test_without_an_address_there_is_no_sitemap(folder: Path) -> None:
    edit(folder, "site.yaml", "address: https://rook.example/knits/", "")
    assert published(folder).done
    assert not (folder / "site/sitemap.xml").exists()
    assert 'rel="self"' not in site(folder, "feed.xml")


def test_the_paper_of_one_pattern_alone_is_the_one_of_the_site(folder: Path) -> None:
    project = read_project(folder)
    proofed = [proof(pattern, project) for pattern in project.patterns]
    for each in proofed:
        paper = paper_of(project, each)
        assert paper.faults == ()
        assert paper.content == (folder / "site" / paper.path).read_bytes()


# ---------------------------------------------------------------------------------------------------- a broken pattern


def test_an_error_leaves_the_site_byte_for_byte(folder: Path) -> None:
    break_hat(folder)
    edit(folder, "patterns/cloth.md", "Cast on 36", "Cast on 40")
    with untouched(folder):
        done = published(folder)
    assert (done.done, done.refused, done.written, done.kept) == (False, ("hat",), (), ())


def test_without_refused_the_rest_is_published_and_the_refused_pattern_stays(folder: Path) -> None:
    before = tree(folder / "site")
    break_hat(folder)
    edit(folder, "patterns/cloth.md", "Cast on 36", "Cast on 40")
    done = published(folder, without_refused=True)
    assert (done.done, done.refused, done.kept) == (True, ("hat",), ("hat",))
    after = tree(folder / "site")
    assert {path: after[path] for path in (*HAT, "media/hat.svg")} == {
        path: before[path] for path in (*HAT, "media/hat.svg")
    }
    assert "Cast on 40" in site(folder, "patterns/cloth.html")
    assert 'href="patterns/hat.html"' in site(folder, "index.html")
    assert "patterns/hat.html" in site(folder, "sitemap.xml")
    assert "Rnd 2: k2tog &lt;was&gt; ssk." in site(folder, "feed.xml")


def test_a_site_with_a_refused_pattern_is_never_up_to_date(folder: Path) -> None:
    """So that the next run says again what is wrong."""
    break_hat(folder)
    published(folder, without_refused=True)
    assert up_to_date(folder, folder / "site", Options()) is None


def test_a_refused_pattern_stays_over_many_runs_and_comes_back(folder: Path) -> None:
    before = tree(folder / "site")
    break_hat(folder)
    for _ in range(2):
        published(folder, without_refused=True)
    edit(folder, "patterns/hat.md", "\nrequire turns = 7", "")
    done = published(folder)
    assert (done.refused, done.laid_out) == ((), ())
    after = tree(folder / "site")
    assert {path: content for path, (content, _) in after.items()} == {
        path: content for path, (content, _) in before.items()
    }


def test_a_refused_pattern_keeps_pictures_that_are_no_longer_there(folder: Path) -> None:
    picture = (folder / "site/media/hat.svg").read_bytes()
    (folder / "content/media/hat.svg").unlink()
    done = published(folder, without_refused=True)
    assert (done.refused, done.kept) == (("hat",), ("hat",))
    assert (folder / "site/media/hat.svg").read_bytes() == picture


def test_a_pattern_that_was_never_published_is_left_out(folder: Path) -> None:
    break_hat(folder)
    shutil.rmtree(folder / "site")
    done = published(folder, without_refused=True)
    assert (done.done, done.refused, done.kept) == (True, ("hat",), ())
    assert not list((folder / "site").rglob("hat.*"))
    for path in ("index.html", "feed.xml", "sitemap.xml"):
        assert "patterns/hat." not in site(folder, path)


@pytest.mark.parametrize("path", HAT[:2])
def test_a_page_that_was_changed_by_somebody_is_not_kept(folder: Path, path: str) -> None:
    break_hat(folder)
    (folder / "site" / path).write_text("anything")
    done = published(folder, without_refused=True)
    assert (done.refused, done.kept) == (("hat",), ())
    assert not (folder / "site" / path).exists()


def test_a_card_that_is_none_is_not_kept(folder: Path) -> None:
    """A data file of an older version, as it was written then."""
    break_hat(folder)
    old = b'{"card": {"name": 7}}'
    (folder / "site/patterns/hat.json").write_bytes(old)
    told = json.loads(site(folder, MANIFEST))
    told["outputs"]["patterns/hat.json"] = digest(old)
    (folder / "site" / MANIFEST).write_text(json.dumps(told))
    assert published(folder, without_refused=True).kept == ()


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("site.yaml", "name: Rook & Thistle", "name: [Rook]"),
        ("pages/about.md", "{25.4 cm}", "{25.4 cm + 1 st}"),
        ("techniques/bobbles.md", "title: Bobbles", "titel: Bobbles"),
        ("media/hat.svg", "<svg", "<svg onload='x()'"),
    ],
)
@pytest.mark.parametrize("without_refused", [False, True])
def test_an_error_beside_the_patterns_refuses_everything(
    folder: Path, file: str, old: str, new: str, *, without_refused: bool
) -> None:
    edit(folder, file, old, new)
    project = read_project(folder)
    sources = (*project.patterns, *project.pages, *project.techniques)
    proofed = [proof(source, project) for source in sources]
    with untouched(folder):
        done = publish(project, proofed, without_refused=without_refused, progress=Steps())
    assert not done.done


def test_an_error_in_a_shared_table_refuses_everything(folder: Path) -> None:
    (folder / "content/sizes").mkdir()
    (folder / "content/sizes/heads.yaml").write_text("title: Heads\nsizes: 7\n")
    with untouched(folder):
        assert not published(folder, without_refused=True).done


# ---------------------------------------------------------------------------------------------- what else may go wrong


def test_faults_in_papers_are_all_told_and_nothing_is_written(
    folder: Path, log_records: list[logging.LogRecord]
) -> None:
    style = folder / "themes/studio/paper/paper.css"
    style.parent.mkdir(parents=True)
    style.write_text("p { frobnicate: 1 }")
    with untouched(folder), pytest.raises(PaperFault) as refusal:
        published(folder)
    log_records.clear()
    assert {fault.partition(":")[0] for fault in refusal.value.faults} == {"patterns/hat.pdf", "patterns/cloth.pdf"}
    assert all("frobnicate" in fault for fault in refusal.value.faults)


def test_a_theme_that_is_not_there(folder: Path) -> None:
    edit(folder, "site.yaml", "name:", "theme: nowhere\nname:")
    with untouched(folder), pytest.raises(BadTheme, match="nowhere"):
        published(folder)


def test_a_picture_that_became_a_link_out_of_the_project(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "secret").write_text("secret")
    project = read_project(folder)
    proofed = [proof(pattern, project) for pattern in project.patterns]
    (folder / "content/media/hat.svg").unlink()
    (folder / "content/media/hat.svg").symlink_to(tmp_path / "secret")
    with untouched(folder), pytest.raises(CannotWrite, match="leads out"):
        publish(project, proofed, without_refused=False, progress=Steps())


def test_files_of_other_people_in_the_site(folder: Path) -> None:
    (folder / "site/notes.txt").write_text("mine")
    with untouched(folder), pytest.raises(NotOurs, match=r"notes\.txt"):
        published(folder)


def test_a_site_elsewhere(folder: Path, tmp_path: Path) -> None:
    project = read_project(folder)
    proofed = [proof(pattern, project) for pattern in project.patterns]
    with untouched(folder):
        elsewhere = tmp_path / "elsewhere"
        done = publish(project, proofed, without_refused=False, papers=False, progress=Steps(), site=elsewhere)
    assert done.done
    assert (elsewhere / "index.html").read_bytes() == (site_folder(folder) / "index.html").read_bytes()
