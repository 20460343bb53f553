"""In: sites of a few files. Out: they are swapped in whole, whatever happens; what is not ours is never touched."""

import json
import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from sizewright.publish import write
from sizewright.publish.faults import CannotWrite, NotOurs, NotWritten
from sizewright.publish.lock import lock_file
from sizewright.publish.manifest import MANIFEST, Manifest, read_manifest
from sizewright.publish.output import Output
from sizewright.publish.write import MARKER, new_site, work_folder

HERE = Path(__file__).parent


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """The place of a site in a project folder; nothing is there yet."""
    return tmp_path / "site"


def written(site: Path, **files: str) -> None:
    """Writes a site of these files; `_` in a name stands for the folder `patterns`."""
    with new_site(site) as draft:
        for name, text in files.items():
            draft.put(Output(f"{name.replace('_', '/')}.html", text.encode()))
        draft.finish(Manifest(draft.digests))


def tree(folder: Path) -> dict[str, bytes]:
    """Every file below a folder, its content or where it links to."""
    return {
        path.relative_to(folder).as_posix(): os.fsencode(path.readlink()) if path.is_symlink() else path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_symlink() or path.is_file()
    }


@contextmanager
def left_alone(site: Path, kind: type[NotWritten]) -> Iterator[list[str]]:
    """What is done inside is refused, nothing in the folder around the site has changed, and nothing is left in it."""
    before = tree(site.parent)
    said: list[str] = []
    with pytest.raises(kind) as refusal:
        yield said
    said.append(str(refusal.value))
    assert tree(site.parent) == before
    assert "Traceback" not in said[0]
    assert said[0].endswith(".")


def test_a_first_site(site: Path) -> None:
    written(site, index="start", patterns_hat="hat")
    assert set(tree(site)) == {"index.html", "patterns/hat.html", MANIFEST}
    manifest = read_manifest(site)
    assert manifest is not None
    assert set(manifest.outputs) == {"index.html", "patterns/hat.html"}
    assert {path.name for path in site.parent.iterdir()} == {"site"}


def test_a_site_takes_the_place_of_the_one_before(site: Path) -> None:
    written(site, index="one", patterns_hat="hat")
    written(site, index="two", patterns_mitten="mitten")
    assert {path: text for path, text in tree(site).items() if path != MANIFEST} == {
        "index.html": b"two",
        "patterns/mitten.html": b"mitten",
    }


def test_what_is_the_same_stays_the_same_file(site: Path) -> None:
    written(site, index="one", patterns_hat="hat")
    for name in ("index", "patterns/hat"):
        os.utime(site / f"{name}.html", ns=(10**18, 10**18))
    with new_site(site) as draft:
        draft.put(Output("index.html", b"two"))
        draft.put(Output("patterns/hat.html", b"hat"))
        draft.finish(Manifest(draft.digests))
    assert (draft.written, draft.unchanged) == (["index.html"], ["patterns/hat.html"])
    assert (site / "patterns/hat.html").stat().st_mtime_ns == 10**18
    assert (site / "index.html").stat().st_mtime_ns != 10**18


def test_the_same_without_second_names_for_files(site: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    written(site, patterns_hat="hat")
    os.utime(site / "patterns/hat.html", ns=(10**18, 10**18))

    def refuse(*_: object) -> None:
        raise PermissionError

    monkeypatch.setattr(Path, "hardlink_to", refuse)
    written(site, patterns_hat="hat")
    assert (site / "patterns/hat.html").read_text() == "hat"
    assert (site / "patterns/hat.html").stat().st_mtime_ns == 10**18


def test_dotfiles_are_carried_over(site: Path) -> None:
    """Of the person, of the server, of the place it is served from; wherever they lie."""
    (site / "patterns/deep").mkdir(parents=True)
    (site / "patterns/.htaccess").write_text("deny\n")
    (site / "patterns/deep/.keep").touch()
    (site / ".gitignore").write_text("*\n")
    (site / ".nojekyll").touch()
    (site / "CNAME").write_text("patterns.example\n")
    (site / ".well-known").mkdir()
    (site / ".well-known/security.txt").write_text("Contact: mailto:post@patterns.example\n")
    (site / ".elsewhere").symlink_to("/nowhere/at/all")
    before = tree(site)
    written(site, index="one")
    written(site, index="two")
    after = tree(site)
    assert {path: after[path] for path in before} == before
    assert (site / ".elsewhere").is_symlink()


def test_the_rights_of_the_folder_stay(site: Path) -> None:
    site.mkdir(mode=0o750)
    written(site, index="one")
    assert site.stat().st_mode & 0o777 == 0o750


def test_a_draft_that_is_not_finished_leaves_nothing(site: Path) -> None:
    written(site, index="one")
    before = tree(site.parent)
    with new_site(site) as draft:
        draft.put(Output("index.html", b"two"))
    assert tree(site.parent) == before
    with pytest.raises(ZeroDivisionError), new_site(site):
        raise ZeroDivisionError
    assert tree(site.parent) == before


@pytest.mark.parametrize("published", [False, True])
def test_files_of_other_people_are_not_lost(site: Path, *, published: bool) -> None:
    if published:
        written(site, index="one")
    (site / "notes").mkdir(parents=True)
    (site / "notes/year.txt").write_text("mine")
    with left_alone(site, NotOurs) as said:
        written(site, index="two")
    assert "notes/year.txt" in said[0]


def test_a_link_to_a_folder_of_other_people_is_not_lost(site: Path) -> None:
    written(site, index="one")
    (site / "photos").symlink_to(site.parent)
    with left_alone(site, NotOurs) as said:
        written(site, index="two")
    assert "photos" in said[0]


def test_a_manifest_that_is_not_ours_counts_for_nothing(site: Path) -> None:
    site.mkdir()
    (site / "index.html").write_text("mine")
    (site / MANIFEST).write_text(json.dumps({"outputs": {"index.html": "0"}, "papers": {}}))
    with left_alone(site, NotOurs):
        written(site, index="two")


def test_a_site_that_is_a_link_or_a_file(site: Path, tmp_path: Path) -> None:
    real = tmp_path / "real"
    real.mkdir()
    site.symlink_to(real)
    with left_alone(site, CannotWrite) as said:
        written(site, index="one")
    assert "is a link" in said[0]
    site.unlink()
    site.write_text("a file")
    with left_alone(site, CannotWrite) as said:
        written(site, index="one")
    assert "is a file" in said[0]


def test_a_folder_in_the_way_is_not_removed(site: Path) -> None:
    work_folder(site).mkdir()
    (work_folder(site) / "thesis.txt").write_text("mine")
    with left_alone(site, CannotWrite) as said:
        written(site, index="one")
    assert str(work_folder(site)) in said[0]


def test_a_link_in_the_way_is_not_followed(site: Path, tmp_path: Path) -> None:
    other = tmp_path / "other"
    other.mkdir()
    (other / MARKER).touch()
    (other / "thesis.txt").write_text("mine")
    work_folder(site).symlink_to(other)
    with left_alone(site, CannotWrite):
        written(site, index="one")


@pytest.mark.parametrize("marked", [False, True])
def test_what_a_killed_run_left_is_cleared(site: Path, *, marked: bool) -> None:
    """Killed before the marker was written, or with half a site made."""
    written(site, index="one")
    work_folder(site).mkdir()
    lock_file(site).touch()
    if marked:
        (work_folder(site) / MARKER).touch()
        (work_folder(site) / "next/patterns").mkdir(parents=True)
        (work_folder(site) / "next/patterns/hat.html").write_text("half")
        (work_folder(site) / "next/out").symlink_to(site)
    written(site, index="two")
    assert (site / "index.html").read_text() == "two"
    assert {path.name for path in site.parent.iterdir()} == {"site"}


def test_a_run_killed_between_two_moves_is_undone(site: Path) -> None:
    written(site, index="one")
    before = tree(site)
    work_folder(site).mkdir()
    (work_folder(site) / MARKER).touch()
    site.rename(work_folder(site) / "old")
    with new_site(site):
        assert tree(site) == before


def test_two_moves_where_the_system_cannot_swap(site: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(write, "swap", lambda _one, _other: False)
    written(site, index="one")
    written(site, index="two")
    assert (site / "index.html").read_text() == "two"
    assert {path.name for path in site.parent.iterdir()} == {"site"}


@pytest.mark.parametrize("second", ["patterns/HAT.html", "patterns/hat.html", MANIFEST])
def test_two_files_of_one_name(site: Path, second: str) -> None:
    """Some systems do not tell capitals apart: there the second file would replace the first."""
    written(site, index="one")
    with left_alone(site, CannotWrite), new_site(site) as draft:
        draft.put(Output("patterns/hat.html", b"hat"))
        draft.put(Output(second, b"other"))


@pytest.mark.parametrize("path", ["../out.html", "/etc/out.html", "patterns/../../out.html", "a\\..\\out", "", "c:/x"])
def test_no_path_leads_out_of_the_site(site: Path, path: str) -> None:
    with pytest.raises(ValueError, match="not a path below the site"), new_site(site) as draft:
        draft.put(Output(path, b"out"))
    assert list(site.parent.iterdir()) == []


def test_a_link_in_the_old_site_is_not_written_through(site: Path, tmp_path: Path) -> None:
    written(site, patterns_hat="hat")
    diary = tmp_path / "diary.html"
    diary.write_text("mine")
    (site / "patterns/hat.html").unlink()
    (site / "patterns/hat.html").symlink_to(diary)
    written(site, patterns_hat="new")
    assert diary.read_text() == "mine"
    assert not (site / "patterns/hat.html").is_symlink()
    assert (site / "patterns/hat.html").read_text() == "new"
