"""In: the sound patterns and the project around them. Out: the pages of all, made anew where something has changed."""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import replace
from itertools import chain
from pathlib import Path
from urllib.parse import urlsplit

from sizewright.base.language import speaking
from sizewright.command.preview.papers import Sound
from sizewright.publish.card import Card
from sizewright.publish.manifest import digest
from sizewright.publish.output import Output
from sizewright.publish.pages import site_pages
from sizewright.publish.site_in import sites
from sizewright.publish.theme import Theme
from sizewright.read.project import Project


class Pages:
    """The preview's folder. Each file of it is replaced in one step, as the server may read it at any moment."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._held: dict[str, str] = {}  # the digest of every file

    def update(self, project: Project, sound: Mapping[str, Sound], changed: Collection[str] | None) -> bool:
        """Makes the pages of the changed patterns and those that all share; gives whether any came out otherwise.

        `changed` is None where anything may have changed: then all is made, and what is left over is removed.
        Raises BadTheme, and OSError where a picture cannot be read.
        """
        project = _at_the_top(project)
        theme = Theme.find(project.studio.theme, project.folder)
        again = None if changed is None else project.with_bases(changed)  # their pages list what is based on them
        fresh = {name: one for name, one in sound.items() if again is None or name in again}
        pages = _pages(project, sound, fresh, theme)
        before = dict(self._held)
        if changed is None:
            paths = self._put(chain(pages, _files(project, theme)))
            self._remove(self._held.keys() - paths)
        else:
            self._put(pages)
        return before != self._held

    def _put(self, outputs: Iterable[Output]) -> set[str]:
        paths = set()
        for output in outputs:
            paths.add(output.path)
            known = digest(output.content)
            if self._held.get(output.path) != known:
                _write(self.folder / output.path, output.content)
                self._held[output.path] = known
        return paths

    def _remove(self, paths: Collection[str]) -> None:
        for path in paths:
            (self.folder / path).unlink(missing_ok=True)
            del self._held[path]


def _pages(project: Project, sound: Mapping[str, Sound], fresh: Mapping[str, Sound], theme: Theme) -> Iterator[Output]:
    """Those of the fresh patterns, and what shows all of them; of the others only the cards."""
    absent = [pattern.name for pattern in project.patterns if pattern.name not in sound]
    for site in sites(project, [one.proofed for one in sound.values()], theme, refused=absent):
        again = [each for each in site.proofed if each.graded.pattern.name in fresh]
        with speaking(site.language):
            cards = [Card.of(each) for each in site.proofed if each.graded.pattern.name not in fresh]
            outputs = (*site_pages(site.project, again, cards, theme, within=site.within), *site.data())
        yield from outputs


def _files(project: Project, theme: Theme) -> Iterator[Output]:
    yield from theme.assets()
    for name in sorted(project.media):  # what reading found to lie inside the project
        yield Output(f"media/{name}", (project.folder / "content" / "media" / name).read_bytes())


def _write(file: Path, content: bytes) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    fresh = file.with_name(f".{file.name}.new")
    fresh.write_bytes(content)
    fresh.replace(file)


def _at_the_top(project: Project) -> Project:
    """The project at its address without the path: the preview serves it at the top of its own."""
    parts = urlsplit(project.studio.address)
    address = f"{parts.scheme}://{parts.netloc}/" if parts.netloc else ""
    return replace(project, studio=replace(project.studio, address=address))
