"""In: a project as it is on the disk now. Out: its pages in the preview's own folder, what was found on the board."""

import time
from dataclasses import replace
from pathlib import Path
from urllib.parse import urlsplit

from rich.console import Console
from rich.text import Text

from sizewright.command.outcome import Stopped, fault_message, sentence
from sizewright.command.preview.board import Board
from sizewright.command.preview.panel import message_panel, panel_of
from sizewright.command.preview.papers import Papers, Sound
from sizewright.command.progress import Silence
from sizewright.command.proofing import Proofing, proof_opened
from sizewright.command.reading import open_folder
from sizewright.command.report_text import print_findings, summary
from sizewright.command.terminal import safe
from sizewright.publish.faults import NotWritten
from sizewright.publish.run import publish
from sizewright.publish.theme import BadTheme
from sizewright.read.project import Project


class Builder:
    """Makes the pages again and again. A refused pattern keeps the pages it had in an earlier round."""

    def __init__(self, folder: Path, site: Path, board: Board, console: Console) -> None:
        self.papers = Papers()
        self._folder = folder
        self._site = site
        self._board = board
        self._console = console
        self._sound: dict[str, Sound] = {}
        self._panel: str | None = None

    def build(self) -> None:
        """Reads, proofs and writes; whatever goes wrong is shown in the page and the preview goes on."""
        began = time.monotonic()
        try:
            opened = open_folder(self._folder)
            proofing = proof_opened([opened], Silence())
            panel, changed = panel_of(proofing), self._write(opened.project, proofing)
        except (Stopped, NotWritten, BadTheme) as reason:
            self._stopped("The pages cannot be made as it is", str(reason))
        except OSError as refusal:
            self._stopped("The pages cannot be made as it is", sentence(refusal))
        except Exception as fault:
            self._stopped("A fault in sizewright itself", fault_message(fault))
        else:
            if changed or panel != self._panel:
                self._tell(proofing, time.monotonic() - began, is_new=panel != self._panel)
                self._show(panel)

    def _write(self, project: Project, proofing: Proofing) -> bool:
        """Writes the pages; gives whether any of them is another one than before."""
        proofed = [one.proofed for one in proofing.checked]
        sound = {one.graded.pattern.name: Sound(project, one) for one in proofed if not one.refused}
        names = {one.graded.pattern.name for one in proofed}
        self._sound = {name: one for name, one in (self._sound | sound).items() if name in names}
        self.papers.offer(self._sound)
        made = publish(
            _at_the_top(project), proofed, without_refused=True, progress=Silence(), papers=False, site=self._site
        )
        return bool(made.written or made.removed)

    def _stopped(self, heading: str, words: str) -> None:
        panel = message_panel(heading, words)
        if panel != self._panel:
            self._console.print(Text(f"{heading}: {safe(words)}"), soft_wrap=True)
            self._show(panel)

    def _show(self, panel: str) -> None:
        self._panel = panel
        self._board.show(self._site, panel)

    def _tell(self, proofing: Proofing, seconds: float, *, is_new: bool) -> None:
        if is_new:
            print_findings(self._console, proofing)
        line = f"{time.strftime('%H:%M:%S')}  {summary(proofing)}  ({seconds:.1f} s)"
        self._console.print(Text(line), soft_wrap=True)


def _at_the_top(project: Project) -> Project:
    """The project at the address of its server without a path: that is where the preview serves it."""
    parts = urlsplit(project.studio.address)
    address = f"{parts.scheme}://{parts.netloc}/" if parts.netloc else ""
    return replace(project, studio=replace(project.studio, address=address))
