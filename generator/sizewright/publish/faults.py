"""What can keep a site from being written: exceptions whose text is a sentence for the person at the keyboard."""


class NotWritten(Exception):  # noqa: N818 (named for the fault, like a finding)
    """The site could not be written; `site/` is still what it was before."""


class Busy(NotWritten):
    """Another run is writing the same site at this moment."""


class NotOurs(NotWritten):
    """`site/` holds files that the tool did not write and would have to throw away."""


class CannotWrite(NotWritten):
    """The folder, the disk or the system stands in the way."""


class NoPango(NotWritten):
    """PDFs cannot be made, as a system library is missing."""


class PaperFault(NotWritten):
    """What the PDF renderer found wrong in the papers; `faults` has one sentence for each."""

    def __init__(self, faults: tuple[str, ...]) -> None:
        super().__init__("\n".join(faults))
        self.faults = faults
