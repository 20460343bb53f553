"""Round after round of the preview: what is made anew, what stays, and that it ends as one round from nothing would."""

import io
import threading
from collections.abc import Callable, Iterator
from pathlib import Path
from queue import Queue

import pytest

from sizewright.command.beginning import begin
from sizewright.command.preview import building
from sizewright.command.preview.board import Board
from sizewright.command.preview.building import Builder
from sizewright.command.preview.watching import changes, stamps
from sizewright.command.terminal import terminal

PATIENCE = 60  # seconds until what should be heard is given up


class Desk:
    """A project, and a builder that is told of each file that is saved."""

    def __init__(self, project: Path, site: Path) -> None:
        self.project = project
        self.site = site
        self.board = Board()
        self.said = io.StringIO()
        self.builder = Builder(project, site, self.board, terminal(self.said))
        for name in ("one", "two"):
            begin(name, project, new_project=True)
        self.builder.build(frozenset(file for file, _, _ in stamps(project)))

    def save(self, path: str, change: Callable[[str], str]) -> None:
        file = self.project / "content" / path
        text = file.read_text(encoding="utf-8") if file.exists() else ""
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(change(text), encoding="utf-8")
        self.builder.build({file})

    def page(self, path: str) -> str:
        return (self.site / path).read_text(encoding="utf-8")

    def times(self) -> dict[str, int]:
        return {
            str(file.relative_to(self.site)): file.stat().st_mtime_ns for file in self.site.rglob("*") if file.is_file()
        }

    def replaced(self, before: dict[str, int]) -> set[str]:
        return {path for path, moment in self.times().items() if before.get(path) != moment}


# What another gauge changes: the start page knows what each size measures and takes, for its search.
OF_ONE = {"patterns/one.html", "patterns/one.json", "drawn/one.svg", "index.html"}


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[Desk]:
    """After each test the pages must be those that a builder makes which has seen nothing before."""
    desk = Desk(tmp_path / "project", tmp_path / "site")
    yield desk
    fresh = tmp_path / "fresh"
    Builder(desk.project, fresh, Board(), terminal(io.StringIO())).build(frozenset())
    made, expected = (
        {file.relative_to(site): file.read_bytes() for file in site.rglob("*") if file.is_file()}
        for site in (desk.site, fresh)
    )
    assert made == expected


def test_only_what_changed_is_made_anew(desk: Desk) -> None:
    before = desk.times()
    desk.save("patterns/one.md", lambda text: text.replace("19 st /", "21 st /"))
    assert "Cast on" in desk.page("patterns/one.html")
    assert desk.replaced(before) == OF_ONE


def test_a_title_changes_the_start_page_too(desk: Desk) -> None:
    before = desk.times()
    desk.save("patterns/one.md", lambda text: text.replace("title: One", "title: Number one"))
    assert "Number one" in desk.page("index.html")
    assert {"index.html", "patterns/one.html"} <= desk.replaced(before)
    assert "patterns/two.html" not in desk.replaced(before)


def test_what_all_share_changes_all(desk: Desk) -> None:
    desk.save("site.yaml", lambda _: "name: Another studio\naddress: https://studio.example/below/\n")
    for path in ("index.html", "patterns/one.html", "patterns/two.html", "404.html"):
        assert "Another studio" in desk.page(path)
    assert 'href="/theme/' in desk.page("404.html")  # not /below/theme/, where the preview has nothing


def test_translations_come_and_change(desk: Desk) -> None:
    desk.save("site.yaml", lambda text: f"{text}languages: [en, de]\n")
    assert not (desk.site / "de/patterns/one.html").exists()
    desk.save("patterns/one.de.md", lambda _: "<!-- One -->\nEins\n")
    assert "Eins" in desk.page("de/patterns/one.html")
    before = desk.times()
    desk.save("patterns/one.de.md", lambda text: text.replace("Eins", "Nummer eins"))
    assert "Nummer eins" in desk.page("de/patterns/one.html")
    assert "patterns/two.html" not in desk.replaced(before)


def test_patterns_come_and_go(desk: Desk) -> None:
    desk.save("patterns/three.md", lambda _: (desk.project / "content/patterns/one.md").read_text(encoding="utf-8"))
    assert (desk.site / "patterns/three.html").exists()
    gone = desk.project / "content/patterns/one.md"
    gone.unlink()
    desk.builder.build({gone})
    assert not (desk.site / "patterns/one.html").exists()
    assert not (desk.site / "patterns/one.json").exists()


def test_a_save_that_changes_nothing_wakes_nobody(desk: Desk) -> None:
    mark, said = desk.board.shown.mark, desk.said.getvalue()
    desk.save("patterns/one.md", lambda text: text)
    assert (desk.board.shown.mark, desk.said.getvalue()) == (mark, said)


def test_while_the_studio_cannot_be_read_every_page_stays(desk: Desk) -> None:
    before = desk.times()
    desk.save("site.yaml", lambda text: text + "nmae: x\n")
    desk.save("patterns/one.md", lambda text: text.replace("19 st /", "21 st /"))
    assert desk.replaced(before) == set()
    assert "“nmae”" in desk.board.shown.panel
    desk.save("site.yaml", lambda text: text.replace("nmae: x\n", ""))
    assert desk.replaced(before) == OF_ONE
    assert desk.board.shown.panel == ""


def test_after_a_file_that_could_not_be_read_all_is_looked_at(desk: Desk) -> None:
    one, two = (desk.project / "content/patterns" / name for name in ("one.md", "two.md"))
    sound = one.read_bytes()
    one.write_bytes(b"\xff")
    desk.builder.build({one})
    assert "not UTF-8" in desk.board.shown.panel
    one.write_bytes(sound.replace(b"19 st /", b"21 st /"))
    two.touch()
    desk.builder.build({two})  # the report of the other file was lost
    assert desk.board.shown.panel == ""


def test_a_fault_of_ours_does_not_end_it(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    with monkeypatch.context() as patched:
        patched.setattr(building, "proof", lambda *_: 1 / 0)
        desk.save("patterns/one.md", lambda text: text.replace("19 st /", "21 st /"))
    assert "A fault in sizewright itself" in desk.board.shown.panel
    assert "ZeroDivisionError" in desk.said.getvalue()
    desk.save("patterns/two.md", lambda text: text.replace("19 st /", "20 st /"))
    assert desk.board.shown.panel == ""


def test_a_theme_of_the_project_is_followed(desk: Desk) -> None:
    file = desk.project / "themes" / "studio" / "index.html"
    file.parent.mkdir(parents=True)
    file.write_text('{% extends "base.html" %}{% block main %}<h1>Ours</h1>{% endblock %}', encoding="utf-8")
    desk.builder.build({file})
    assert "<h1>Ours</h1>" in desk.page("index.html")
    file.write_text("{% block %}", encoding="utf-8")
    desk.builder.build({file})
    assert "The pages cannot be made" in desk.board.shown.panel
    assert "<h1>Ours</h1>" in desk.page("index.html")
    file.unlink()
    desk.builder.build({file})
    assert "<h1>Ours</h1>" not in desk.page("index.html")


def test_a_picture_is_there_and_a_hostile_one_is_not(desk: Desk) -> None:
    drawing = '<svg xmlns="http://www.w3.org/2000/svg"><title>t</title></svg>'
    desk.save("media/hat.svg", lambda _: drawing)
    assert desk.page("media/hat.svg") == drawing
    desk.save("media/bad.svg", lambda _: drawing.replace("<title>", '<script>alert("x")</script><title>'))
    assert not (desk.site / "media/bad.svg").exists()
    (desk.project / "content/media/bad.svg").unlink()


@pytest.fixture
def heard(tmp_path: Path) -> Queue[frozenset[Path]]:
    """What the watch of a project reports, from another thread, as it never ends by itself."""
    (tmp_path / "content" / "patterns").mkdir(parents=True)
    (tmp_path / "content" / "patterns" / "a.md").write_text("a", encoding="utf-8")
    reports: Queue[frozenset[Path]] = Queue()

    def listen() -> None:
        for changed in changes(tmp_path):
            reports.put(changed)

    threading.Thread(target=listen, daemon=True).start()
    assert reports.get(timeout=PATIENCE) == {tmp_path / "content" / "patterns" / "a.md"}
    return reports


def test_every_way_to_save_is_heard(tmp_path: Path, heard: Queue[frozenset[Path]]) -> None:
    file = tmp_path / "content" / "patterns" / "a.md"
    file.write_text("in place", encoding="utf-8")
    assert heard.get(timeout=PATIENCE) == {file}
    (tmp_path / "fresh").write_text("moved over it", encoding="utf-8")
    (tmp_path / "fresh").replace(file)
    assert heard.get(timeout=PATIENCE) == {file}
    file.unlink()
    assert heard.get(timeout=PATIENCE) == {file}


def test_files_of_editors_are_not(tmp_path: Path, heard: Queue[frozenset[Path]]) -> None:
    folder = tmp_path / "content" / "patterns"
    for name in (".a.md.swp", "a.md~", "#a.md#"):
        (folder / name).touch()
    (folder / "b.md").touch()
    assert heard.get(timeout=PATIENCE) == {folder / "b.md"}


def test_a_folder_that_appears_later_is_watched(tmp_path: Path, heard: Queue[frozenset[Path]]) -> None:
    theme = tmp_path / "themes" / "studio" / "index.html"
    theme.parent.mkdir(parents=True)
    theme.touch()
    assert heard.get(timeout=PATIENCE) == {theme}
    content = tmp_path / "content"
    content.rename(tmp_path / "away")
    assert heard.get(timeout=PATIENCE) == {content / "patterns" / "a.md"}
    (tmp_path / "away").rename(content)
    assert heard.get(timeout=PATIENCE) == {content / "patterns" / "a.md"}
    (content / "patterns" / "a.md").write_text("again", encoding="utf-8")
    assert heard.get(timeout=PATIENCE) == {content / "patterns" / "a.md"}
