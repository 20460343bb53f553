"""In: a cloth. Out: what is seen of it in words, for whoever does not see its picture."""

from collections.abc import Iterator
from itertools import groupby, pairwise

from sizewright.base.language import later
from sizewright.work.cloth import Cloth, ClothRow

_KNIT, _PURL = frozenset("kKis/\\^"), frozenset("pPIdDvS")
_SMOOTH = frozenset("kKsi")


def textures(cloth: Cloth) -> tuple[str, ...]:
    """What it is made of, from its lower edge up: "ribbing", "stockinette stitch", "eyelets"."""
    rows = cloth.rows
    seen = [_texture(row, below) for below, row in pairwise(rows)]
    first = _texture(rows[0], rows[1] if len(rows) > 1 else None) if rows else ""
    lasting = [name for name, alike in groupby([first, *seen]) if name and (len(list(alike)) > 1 or len(rows) < 8)]
    return tuple(dict.fromkeys([*lasting, *_details(cloth)]))


def _texture(row: ClothRow, beside: ClothRow | None) -> str:
    """The fabric a row belongs to, with the one beside it."""
    looks, other = set(row.looks), set(beside.looks) if beside is not None else set()
    if looks <= _PURL and other <= _PURL:
        return later("reverse stockinette stitch")
    if looks <= _KNIT and other <= _KNIT:
        return later("stockinette stitch")
    if (looks <= _KNIT and other <= _PURL) or (looks <= _PURL and other <= _KNIT):
        return later("garter stitch")
    if beside is None or looks <= _KNIT or looks <= _PURL:
        return ""
    return later("ribbing") if _faces(row) == _faces(beside) else later("knit and purl stitches in turn")


def _faces(row: ClothRow) -> str:
    return "".join("p" if look in _PURL else "k" for look in row.looks)


def _details(cloth: Cloth) -> Iterator[str]:
    looks = {look for row in cloth.rows for look in row.looks}
    if "o" in looks:
        yield later("eyelets")
    if any(row.crossings for row in cloth.rows):
        yield later("cables")
    if looks & {"s", "S"}:
        yield later("slipped stitches")
