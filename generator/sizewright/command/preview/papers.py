"""In: the sound patterns as they are now. Out: the PDF of one of them, laid out when its link is followed."""

import threading
from collections.abc import Mapping
from dataclasses import dataclass

from sizewright.proof.proofed import Proofed
from sizewright.publish.print_job import Paper
from sizewright.publish.run import paper_of, paper_paths
from sizewright.read.project import Project


@dataclass(frozen=True, slots=True)
class Sound:
    """A pattern without errors and the project it was proofed in."""

    project: Project
    proofed: Proofed


class Papers:
    """Lays out PDFs one at a time, and keeps each until the source changes."""

    def __init__(self) -> None:
        self._one_at_a_time = threading.Lock()
        self._sound: Mapping[str, Sound] = {}
        self._made: dict[str, Paper] = {}

    def offer(self, sound: Mapping[str, Sound]) -> None:
        """The patterns there are now, by their names; what was laid out before is forgotten."""
        with self._one_at_a_time:
            self._sound = {path: one for one in sound.values() for path in paper_paths(one.project, one.proofed)}
            self._made = {}

    def paper(self, path: str) -> Paper | None:
        """The PDF at a path of the site, or None where there is none. Raises NoPango and BadTheme."""
        with self._one_at_a_time:
            one = self._sound.get(path)
            if one is not None and path not in self._made:
                self._made[path] = paper_of(one.project, one.proofed, path)
            return self._made.get(path)
