"""The few words that say which side, which place and which manner, in the trees of instructions."""

from enum import StrEnum


class Side(StrEnum):
    """The side of the fabric that faces the knitter."""

    RIGHT = "RS"
    WRONG = "WS"


class Landmark(StrEnum):
    """What a stretch of a row is worked to."""

    END = "end"
    MARKER = "marker"
    TURN = "last turn"
    WRAPPED = "wrapped st"
    DOUBLE = "double st"
    WORKED = "right needle"


class Marking(StrEnum):
    """What is done with a marker."""

    PLACE = "place"
    SLIP = "slip"
    REMOVE = "remove"
    CLEAR = "remove all"


class Adding(StrEnum):
    """Where stitches come from that were not on the needle."""

    CAST_ON = "cast on"
    PICK_UP_KNIT = "pick up and knit"
    PICK_UP_PURL = "pick up and purl"


class Turning(StrEnum):
    """How the work is turned in mid row: as it is, with the next stitch wrapped, or with the last one doubled."""

    PLAIN = "turn"
    WRAP = "w&t"
    DOUBLE = "turn, make double st"


class Manner(StrEnum):
    """How stitches are worked that are not spelled out."""

    AS_THEY_APPEAR = "knit the knits and purl the purls"
    OPPOSITE = "purl the knits and knit the purls"
    ANY = "work"


class Promised(StrEnum):
    """What the count behind a row says."""

    TOTAL = "total"
    FEWER = "fewer"
    MORE = "more"
