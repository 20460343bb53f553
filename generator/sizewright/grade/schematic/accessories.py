"""Hats, mittens and socks in schematics."""

from fractions import Fraction

from sizewright.base.language import later
from sizewright.grade.schematic.shape import (
    HALF,
    Demand,
    Dimension,
    Edge,
    Edges,
    Outline,
    Path,
    Point,
    Shape,
    Side,
    across,
    at_most,
    below,
    detail,
    level,
    path,
    same_as,
    symmetric,
)

ZERO = Fraction(0)
_THIRD, _QUARTER = Fraction(1, 3), Fraction(1, 4)


def _hat(edges: Edges) -> Outline:
    half, height, crown, brim = edges["around"] / 4, edges["height"], edges["crown"], edges["brim"]
    sides = height - crown
    dome = ((half, sides + crown * Fraction(11, 20)), (half * HALF, height), (ZERO, height))
    dimensions = (
        across("around", Side.BELOW, half, ZERO, HALF),
        Dimension("height", Side.LEFT, (-half, ZERO), (ZERO, height)),
        Dimension("crown", Side.RIGHT, (half, sides), (ZERO, height)),
        Dimension("brim", Side.RIGHT, (half, ZERO), (half, brim)),
    )
    return Outline(symmetric(path((half, ZERO), (half, sides), dome)), level(half, brim), dimensions)


def _mitten(edges: Edges) -> Outline:
    """The thumb stands at the right, on the gusset that leads to it."""
    half, wrist, cuff, top = edges["hand"] / 4, edges["cuff_around"] / 4, edges["cuff"], edges["top"]
    tip = cuff + edges["length"]
    right = _with_thumb(edges, half, wrist)
    curve = _rounded((half, tip - top), half, top)
    left = symmetric(path((wrist, ZERO), (wrist, cuff), (half, cuff), (half, tip - top), curve))
    mirrored = left.steps[4:]  # from the tip back down the left side
    outline = Path(right.start, (*right.steps, ((half, tip - top),), curve, *mirrored))
    return Outline(outline, level(wrist, cuff), _mitten_lines(edges, half, wrist, tip))


def _with_thumb(edges: Edges, half: Fraction, wrist: Fraction) -> Path:
    """The right side from the cuff up to above the thumb, where there is one; it leans away from the hand."""
    cuff, thumb, long = edges["cuff"], edges["thumb"] / 2, edges["thumb_length"]
    start, *side = ((wrist, ZERO), (wrist, cuff), (half, cuff))
    if not thumb:
        return path(start, *side)
    opening = cuff + edges["thumb_height"]
    end, round_part = opening + long, min(thumb / 2, long)
    tip, bend = end - round_part, end - round_part * _QUARTER

    def at(across_it: Fraction, y: Fraction) -> Point:
        return half + thumb * (across_it + (y - opening) / long * _THIRD), y

    return path(
        start,
        *side,
        (half + thumb, opening),
        at(Fraction(1), tip),
        (at(Fraction(1), bend), at(3 * _QUARTER, end), at(HALF, end)),
        (at(_QUARTER, end), at(ZERO, bend), at(ZERO, tip)),
        (half, opening),
    )


def _mitten_lines(edges: Edges, half: Fraction, wrist: Fraction, tip: Fraction) -> tuple[Dimension, ...]:
    cuff, thumb = edges["cuff"], half + edges["thumb"] / 2
    opening = cuff + edges["thumb_height"]
    end = opening + edges["thumb_length"]
    return (
        across("hand", Side.ABOVE, half, tip - edges["top"], HALF),
        across("cuff_around", Side.BELOW, wrist, ZERO, HALF),
        Dimension("thumb", Side.BELOW, (half, opening), (thumb, opening), HALF),
        Dimension("length", Side.LEFT, (-half, cuff), (ZERO, tip)),
        Dimension("cuff", Side.LEFT, (-wrist, ZERO), (-wrist, cuff)),
        Dimension("thumb_height", Side.RIGHT, (half, cuff), (thumb, opening)),
        Dimension("thumb_length", Side.RIGHT, (thumb, opening), (half + edges["thumb"] * Fraction(5, 12), end)),
        Dimension("top", Side.RIGHT, (half, tip - edges["top"]), (ZERO, tip)),
    )


def _rounded(start: Point, half: Fraction, top: Fraction) -> tuple[Point, ...]:
    """From the right side of a piece to the middle of its tip."""
    x, y = start
    return (x, y + top * Fraction(6, 10)), (half * Fraction(5, 10), y + top), (ZERO, y + top)


def _sock(edges: Edges) -> Outline:
    """Seen from the side, the heel at the left."""
    leg, foot, instep = edges["leg_around"] / 2, edges["foot"], edges["foot_around"] / 2
    heel, toe, ribbing = edges["heel"], edges["toe"], edges["ribbing"]
    top, ball = heel + edges["leg"], foot - toe
    bend, corner = min(ball - leg, top - instep) / 3, min(heel, instep, leg) / 2
    outline = path(
        (ZERO, top),
        (ZERO, corner),
        ((ZERO, corner / 3), (corner / 3, ZERO), (corner, ZERO)),
        (ball, ZERO),
        ((ball + toe * HALF, ZERO), (foot, instep / 5), (foot, instep * HALF)),
        ((foot, instep * Fraction(4, 5)), (ball + toe * HALF, instep), (ball, instep)),
        (leg + bend, instep),
        ((leg + bend / 3, instep), (leg, instep + bend / 3), (leg, instep + bend)),
        (leg, top),
    )
    begun = path((ZERO, heel), (leg, instep + bend)), path((ball, ZERO), (ball, instep))  # the heel, the toe
    lines = (*begun, path((ZERO, top - ribbing), (leg, top - ribbing))) if ribbing else begun
    dimensions = (
        Dimension("leg_around", Side.ABOVE, (ZERO, top), (leg, top), HALF),
        Dimension("leg", Side.LEFT, (ZERO, heel), (ZERO, top)),
        Dimension("heel", Side.LEFT, (ZERO, ZERO), (ZERO, heel)),
        Dimension("foot", Side.BELOW, (ZERO, ZERO), (foot, instep * HALF)),
        Dimension("toe", Side.BELOW, (ball, ZERO), (foot, instep * HALF)),
        Dimension("foot_around", Side.RIGHT, (ball, ZERO), (ball, instep), HALF),
        Dimension("ribbing", Side.LEFT, (ZERO, top - ribbing), (ZERO, top)),
    )
    return Outline(outline, lines, dimensions)


ACCESSORIES = (
    Shape(
        "hat",
        "A hat knitted in the round. `hat = hat(around = …, height = …, crown = …, brim = …)`",
        (
            Edge("around", later("Around")),
            Edge("height", later("Height")),
            Edge("crown", later("Depth of crown"), same_as("height", _THIRD)),
            detail("brim", later("Brim")),
        ),
        (
            at_most("crown", "height"),
            Demand(
                "brim",
                "less than height below the crown",
                ("height", "crown"),
                lambda edges: not edges["brim"] or edges["brim"] + edges["crown"] < edges["height"],
            ),
        ),
        _hat,
    ),
    Shape(
        "mitten",
        "A mitten, or without a thumb a bag or bootee. `mitten = mitten(hand = …, length = …, cuff = …, thumb = …, "
        "thumb_height = …, thumb_length = …)` Both `length`, to the tip, and `thumb_height`, to where the thumb leaves "
        "the hand, begin at the top of the cuff, or at the lower edge where there is no cuff; `thumb_length` "
        "begins where `thumb_height` ends.",
        (
            Edge("hand", later("Hand, around")),
            Edge("length", later("Length above the cuff")),
            detail("cuff", later("Cuff")),
            Edge("cuff_around", later("Cuff, around"), same_as("hand"), needs="cuff"),
            Edge("top", later("Depth of top shaping"), same_as("hand", _QUARTER)),
            detail("thumb", later("Thumb, around")),
            Edge("thumb_height", later("Cuff to thumb"), same_as("length", _THIRD), needs="thumb"),
            Edge("thumb_length", later("Length of thumb"), same_as("length", _THIRD), needs="thumb"),
        ),
        (
            at_most("top", "length"),
            below("thumb", "hand"),
            Demand(
                "thumb_height",
                "no more than length without the top",
                ("length", "top"),
                lambda edges: not edges["thumb"] or edges["thumb_height"] + edges["top"] <= edges["length"],
            ),
            Demand(
                "thumb_height",
                "less than length with thumb length above it",
                ("length", "thumb_length"),
                lambda edges: not edges["thumb"] or edges["thumb_height"] + edges["thumb_length"] < edges["length"],
            ),
        ),
        _mitten,
    ),
    Shape(
        "sock",
        "A sock, seen from the side. "
        "`sock = sock(leg = …, leg_around = …, foot = …, foot_around = …, heel = …, toe = …)`",
        (
            Edge("leg", later("Length of leg to heel")),
            Edge("leg_around", later("Leg, around")),
            Edge("foot", later("Length of foot")),
            Edge("foot_around", later("Foot, around"), same_as("leg_around")),
            Edge("heel", later("Depth of heel"), same_as("leg_around", _QUARTER)),
            Edge("toe", later("Depth of toe"), same_as("foot_around", _QUARTER)),
            detail("ribbing", later("Ribbing")),
        ),
        (
            below("ribbing", "leg"),
            Demand(
                "foot",
                "more than toe and half of leg around together",
                ("toe", "leg_around"),
                lambda edges: edges["foot"] > edges["toe"] + edges["leg_around"] / 2,
            ),
            Demand(
                "leg",
                "more than half of foot around without the heel",
                ("foot_around", "heel"),
                lambda edges: edges["leg"] + edges["heel"] > edges["foot_around"] / 2,
            ),
        ),
        _sock,
    ),
)
