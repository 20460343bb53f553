"""Words among instructions that are neither a stitch nor a phrase of the trade."""

from sizewright.base.place import Span


class NotUnderstood(Exception):  # noqa: N818 -- carried to the sentence it belongs to
    """Words that are not understood: where they stand, and how they may be mended."""

    def __init__(self, span: Span, words: str, mend: str) -> None:
        super().__init__(words)
        self.span = span
        self.words = words
        self.mend = mend
