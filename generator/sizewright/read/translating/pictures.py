"""In: a source as it is told in a language, and which pictures there are. Out: it with those that have words in it.

A picture with words of its own may have one beside it for another language: `decreases.de.svg` by `decreases.svg`.
"""

from collections.abc import Collection
from dataclasses import replace
from pathlib import PurePosixPath

from sizewright.read.pattern import Image, Pattern


def picture_in(file: str, language: str, media: Collection[str]) -> str:
    """The picture that is shown in a language: the one for it alone where there is such a one, else the same."""
    path = PurePosixPath(file)
    own = path.with_name(f"{path.stem}.{language}{path.suffix}").as_posix()
    return own if own in media else file


def with_pictures_in(pattern: Pattern, language: str, media: Collection[str]) -> Pattern:
    """A source with the pictures of its header and its body that there are for a language."""
    header = pattern.header
    if header.picture is not None:
        shown = replace(header.picture, file=picture_in(header.picture.file, language, media))
        header = replace(header, picture=shown)
    body = tuple(
        replace(piece, file=picture_in(piece.file, language, media)) if isinstance(piece, Image) else piece
        for piece in pattern.body
    )
    return replace(pattern, header=header, body=body)
