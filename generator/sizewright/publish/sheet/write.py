"""In: the files of sheets and the folder a person named. Out: the folder made anew in one step, or as it was."""

from collections.abc import Iterable
from pathlib import Path

from sizewright.publish.faults import NotOurs
from sizewright.publish.manifest import Manifest, read_manifest
from sizewright.publish.output import Output
from sizewright.publish.write import new_site


def write_sheets(folder: Path, files: Iterable[Output], mark: str) -> None:
    """Makes the folder hold these files and no others, all of them or none; dotfiles of others stay.

    `mark` is the file that only sheets of this kind have. Raises NotWritten (Busy, NotOurs, CannotWrite): NotOurs where
    the folder holds anything else, be it a published site.
    """
    before = read_manifest(folder)
    if before is not None and before.outputs and mark not in before.outputs:
        message = f"{folder} holds a published site or other sheets, which would be lost. Name another folder."
        raise NotOurs(message)
    with new_site(folder) as draft:
        for file in files:
            draft.put(file)
        draft.finish(Manifest(dict(draft.digests)))
