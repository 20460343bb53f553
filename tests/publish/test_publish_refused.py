"""In: the sample project, published and then broken. Out: the rest is published where asked, or nothing is touched."""

import json
import logging
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from sizewright.proof.run import proof
from sizewright.publish.faults import CannotWrite, NotOurs, PaperFault
from sizewright.publish.manifest import MANIFEST, Options, digest, up_to_date
from sizewright.publish.run import Published, publish
from sizewright.publish.theme import BadTheme
from sizewright.read.folder import read_project

Publish = Callable[..., Published]
HAT = ("patterns/hat.html", "patterns/hat.json", "patterns/hat.pdf")


class Quiet:
    """A progress that nobody looks at."""

    def start(self, total: int, what: str) -> None:
        """Says nothing."""

    def step(self) -> None:
        """Says nothing."""


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


def test_an_error_leaves_the_site_byte_for_byte(folder: Path, published: Publish) -> None:
    break_hat(folder)
    edit(folder, "patterns/cloth.md", "Cast on 36", "Cast on 40")
    with untouched(folder):
        done = published(folder)
    assert (done.done, done.refused, done.written, done.kept) == (False, ("hat",), (), ())


def test_an_error_in_a_translation_refuses_its_pattern(folder: Path, published: Publish) -> None:
    title = next(one.header.title for one in read_project(folder).patterns if one.name == "hat")
    studio = folder / "content" / "site.yaml"
    studio.write_text(f"{studio.read_text(encoding='utf-8')}\nlanguages: [en, de]\n", encoding="utf-8")
    (folder / "content" / "patterns" / "hat.de.md").write_text(f"<!-- {title} -->\n3 Mützen\n", encoding="utf-8")
    with untouched(folder):
        assert published(folder).refused == ("hat",)


def test_without_refused_the_rest_is_published_and_the_refused_pattern_stays(folder: Path, published: Publish) -> None:
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


def test_a_site_with_a_refused_pattern_is_never_up_to_date(folder: Path, published: Publish) -> None:
    """So that the next run says again what is wrong."""
    break_hat(folder)
    published(folder, without_refused=True)
    assert up_to_date(folder, folder / "site", Options()) is None


def test_a_refused_pattern_stays_over_many_runs_and_comes_back(folder: Path, published: Publish) -> None:
    before = tree(folder / "site")
    break_hat(folder)
    for _ in range(2):
        published(folder, without_refused=True)
    edit(folder, "patterns/hat.md", "\nrequire turns = 7", "")
    done = published(folder)
    assert (done.refused, done.laid_out) == ((), ())
    after = tree(folder / "site")
    del before[MANIFEST], after[MANIFEST]
    assert {path: content for path, (content, _) in after.items()} == {
        path: content for path, (content, _) in before.items()
    }


def test_a_refused_pattern_keeps_pictures_that_are_no_longer_there(folder: Path, published: Publish) -> None:
    picture = (folder / "site/media/hat.svg").read_bytes()
    (folder / "content/media/hat.svg").unlink()
    done = published(folder, without_refused=True)
    assert (done.refused, done.kept) == (("hat",), ("hat",))
    assert (folder / "site/media/hat.svg").read_bytes() == picture


def test_a_pattern_that_was_never_published_is_left_out(folder: Path, published: Publish) -> None:
    break_hat(folder)
    shutil.rmtree(folder / "site")
    done = published(folder, without_refused=True)
    assert (done.done, done.refused, done.kept) == (True, ("hat",), ())
    assert not list((folder / "site").rglob("hat.*"))
    for path in ("index.html", "feed.xml", "sitemap.xml"):
        assert "patterns/hat." not in site(folder, path)


@pytest.mark.parametrize("path", HAT[:2])
def test_a_page_that_was_changed_by_somebody_is_not_kept(folder: Path, path: str, published: Publish) -> None:
    break_hat(folder)
    (folder / "site" / path).write_text("anything")
    done = published(folder, without_refused=True)
    assert (done.refused, done.kept) == (("hat",), ())
    assert not (folder / "site" / path).exists()


def test_a_card_that_is_none_is_not_kept(folder: Path, published: Publish) -> None:
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
    proofed = [proof(pattern, project) for pattern in project.patterns]
    with untouched(folder):
        done = publish(project, proofed, without_refused=without_refused, progress=Quiet())
    assert not done.done


def test_an_error_in_a_shared_table_refuses_everything(folder: Path, published: Publish) -> None:
    (folder / "content/sizes").mkdir()
    (folder / "content/sizes/heads.yaml").write_text("title: Heads\nsizes: 7\n")
    with untouched(folder):
        assert not published(folder, without_refused=True).done


# ---------------------------------------------------------------------------------------------- what else may go wrong


def test_faults_in_papers_are_all_told_and_nothing_is_written(
    folder: Path, log_records: list[logging.LogRecord], published: Publish
) -> None:
    style = folder / "themes/studio/paper/paper.css"
    style.parent.mkdir(parents=True)
    style.write_text("p { frobnicate: 1 }")
    with untouched(folder), pytest.raises(PaperFault) as refusal:
        published(folder)
    log_records.clear()
    assert {fault.partition(":")[0] for fault in refusal.value.faults} == {"patterns/hat.pdf", "patterns/cloth.pdf"}
    assert all("frobnicate" in fault for fault in refusal.value.faults)


def test_a_theme_that_is_not_there(folder: Path, published: Publish) -> None:
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
        publish(project, proofed, without_refused=False, progress=Quiet())


def test_files_of_other_people_in_the_site(folder: Path, published: Publish) -> None:
    (folder / "site/notes.txt").write_text("mine")
    with untouched(folder), pytest.raises(NotOurs, match=r"notes\.txt"):
        published(folder)
