"""In: what was proofed and the folder a person named. Out: its proof sheets there, and a sentence that says so."""

from pathlib import Path

from sizewright.command.outcome import Stopped
from sizewright.command.proofing import Proofing
from sizewright.command.report_text import number
from sizewright.publish.faults import NotWritten
from sizewright.publish.sheet.sheets import INDEX, SCRIPT, Subject, sheets
from sizewright.publish.sheet.write import write_sheets as write_files


def write_sheets(folder: Path, proofing: Proofing) -> str:
    """Writes the sheets. Raises Stopped where the folder is not ours or cannot be written; it is then what it was."""
    subjects = [Subject(one.source, one.proofed, one.opened.project.studio.metric_first) for one in proofing.checked]
    place = folder if folder.name not in ("", "..") else folder.resolve()
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
        write_files(place, sheets(subjects, proofing.apart, proofing.apart_accepted), SCRIPT)
    except NotWritten as reason:
        raise Stopped(str(reason)) from reason
    sheet = number(len(subjects), "proof sheet")
    return f"{sheet} written; open {(folder / INDEX).as_posix()} in a browser."
