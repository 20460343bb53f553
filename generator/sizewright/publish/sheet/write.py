"""In: the files of proof sheets and the folder a person named. Out: the folder made anew in one step, or as it was."""

from collections.abc import Iterable
from pathlib import Path

from sizewright.publish.faults import NotOurs
from sizewright.publish.manifest import Manifest, read_manifest
from sizewright.publish.output import Output
from sizewright.publish.sheet.sheets import SCRIPT
from sizewright.publish.write import new_site


def write_sheets(folder: Path, files: Iterable[Output]) -> None:
    """Makes the folder hold these files and no others, all of them or none; dotfiles of others stay.

    Raises NotWritten (Busy, NotOurs, CannotWrite): NotOurs where the folder holds anything that no proof wrote, be it
    a published site.
    """
    before = read_manifest(folder)
    if before is not None and before.outputs and SCRIPT not in before.outputs:
        message = f"{folder} holds a published site, which would be lost. Name another folder for the proof sheets."
        raise NotOurs(message)
    with new_site(folder) as draft:
        for file in files:
            draft.put(file)
        draft.finish(Manifest(dict(draft.digests)))
