"""In: the files that have changed. Out: the pages as the source is now, and what was found, on the board."""

import time
from collections.abc import Collection
from pathlib import Path

from rich.console import Console
from rich.text import Text

from sizewright.base.finding import has_error
from sizewright.command.outcome import Stopped, fault_message, sentence
from sizewright.command.preview.board import Board
from sizewright.command.preview.pages import Pages
from sizewright.command.preview.panel import message_panel, panel_of
from sizewright.command.preview.papers import Papers, Sound
from sizewright.command.proofing import Checked, Proofing, checked_of, gathered
from sizewright.command.reading import Opened, open_again, open_folder
from sizewright.command.report_text import print_findings, summary
from sizewright.command.terminal import safe
from sizewright.proof.run import proof
from sizewright.publish.theme import BadTheme
from sizewright.read.project import Project
from sizewright.read.translating.beside import language_of, source_name


class Builder:
    """Makes the pages round after round. A refused pattern keeps the pages it had in an earlier one."""

    def __init__(self, folder: Path, site: Path, board: Board, console: Console) -> None:
        self.papers = Papers()
        self._folder = folder
        self._pages = Pages(site)
        self._board = board
        self._console = console
        self._opened: Opened | None = None
        self._checked: dict[str, Checked] = {}
        self._sound: dict[str, Sound] = {}
        self._panel: str | None = None

    def build(self, changed: Collection[Path]) -> None:
        """Reads, proofs and writes; whatever goes wrong is shown in the page and the preview goes on."""
        began = time.monotonic()
        try:
            proofing, is_other = self._round(changed)
        except (Stopped, BadTheme) as reason:
            self._fail("The pages cannot be made as it is", str(reason))
        except OSError as refusal:
            self._fail("The pages cannot be made as it is", sentence(refusal))
        except Exception as fault:  # a mistake of ours must not end a day's preview
            self._fail("A fault in sizewright itself", fault_message(fault))
        else:
            self._tell(proofing, time.monotonic() - began, is_other=is_other)

    def _round(self, changed: Collection[Path]) -> tuple[Proofing, bool]:
        """One round. After one that failed nothing that was known before is relied on in the next."""
        known, self._opened = self._opened, None
        opened, again = self._read(known, changed)
        sources = {opened.shown(pattern.source): pattern for pattern in opened.project.patterns}
        self._checked = {
            source: self._checked[source]
            if again is not None and source in self._checked and pattern.name not in again
            else checked_of(opened, source, proof(pattern, opened.project))
            for source, pattern in sorted(sources.items())
        }
        proofing = gathered([opened], tuple(self._checked.values()))
        if has_error(proofing.apart):
            return proofing, False  # no page is sure to be right, so they all stay what they were
        is_other = self._write(opened, again)
        self._opened = opened
        return proofing, is_other

    def _read(self, known: Opened | None, changed: Collection[Path]) -> tuple[Opened, frozenset[str] | None]:
        """The project, and the names of the patterns that changed; None where more than patterns may have."""
        patterns = self._folder / "content" / "patterns"
        if known is not None and all(file.parent == patterns and _is_of_one(known.project, file) for file in changed):
            names = known.project.with_adaptations(map(source_name, changed))
            opened = open_again(known, names)
            return opened, names if opened.project.tables is known.project.tables else None
        return open_folder(self._folder), None

    def _write(self, opened: Opened, again: Collection[str] | None) -> bool:
        """Makes the pages; gives whether any came out otherwise than before."""
        proofed = {one.proofed.graded.pattern.name: one.proofed for one in self._checked.values()}
        sound = {name: Sound(opened.project, one) for name, one in proofed.items() if not one.refused}
        self._sound = {name: one for name, one in {**self._sound, **sound}.items() if name in proofed}
        self.papers.offer(self._sound)
        return self._pages.update(opened.project, self._sound, again)

    def _fail(self, heading: str, words: str) -> None:
        panel = message_panel(heading, words)
        if panel != self._panel:
            self._console.print(Text(f"{heading}: {safe(words)}"), soft_wrap=True)
            self._show(panel)

    def _tell(self, proofing: Proofing, seconds: float, *, is_other: bool) -> None:
        panel = panel_of(proofing)
        if panel == self._panel and not is_other:
            return
        if panel != self._panel:
            print_findings(self._console, proofing)
        line = f"{time.strftime('%H:%M:%S')}  {summary(proofing)}  ({seconds:.1f} s)"
        self._console.print(Text(line), soft_wrap=True)
        self._show(panel)

    def _show(self, panel: str) -> None:
        self._panel = panel
        self._board.show(self._pages.folder, panel)


def _is_of_one(project: Project, file: Path) -> bool:
    """Whether a file is of one pattern alone; a translation that comes or goes changes the links of other pages too."""
    code = language_of(file)
    if not code:
        return file.suffix == ".md"
    told = (pattern.translations for pattern in project.patterns if pattern.name == source_name(file))
    return file.is_file() and any(one.into == code for translations in told for one in translations)
