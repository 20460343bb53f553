"""The sentences of the plans that shape whole pieces: raglans, yokes, armholes, necks, shoulders, crowns, heels.

The first row of each has no number, so that numbered rows a designer writes before it stay apart from those behind it.
"""

from collections.abc import Callable, Mapping

Rhythm = Callable[[str, str], str]

_DECREASED = "k1, k2tog, k to 3 sts before marker, ssk, k1, sm"
_INCREASED = "k1, m1l, k to 1 st before marker, m1r, k1, sm"
_SHARES = (
    "Note the counts: {sleeve} sts for each sleeve, {underarm} of them and as many of the body held at each underarm; "
    "{yoke} sts in the yoke, {neck} at the neck"
)
_PICK_UP = (
    "Pick-up Row (RS): K{heel}, pick up and knit {pick_up} sts along the heel flap, pm, k{top} sts from holder, pm, "
    "pick up and knit {pick_up} sts along the heel flap. ({total} sts)"
)
_GUSSET = "K to 3 sts before marker, k2tog, k1, sm, k to marker, sm, k1, ssk, k to end. (2 sts decreased)"
_BOTH_ENDS = "Dec Row (RS): K1, ssk, k to last 3 sts, k2tog, k1."

_AT_BEGINNING = "Dec Row (RS): K1, ssk, k to end."
_AT_END = "Dec Row (RS): K to last 3 sts, k2tog, k1."
_BOUND_LEFT = ("Next Row (RS): Bind off {bind_off} sts, k to end.", "Next Row (WS): Purl.")
_BOUND_RIGHT = ("Next Row (RS): Knit.", "Next Row (WS): Bind off {bind_off} sts, p to end.")
_NECK_AT_END = (  # two stitches at a time, then one, at the end of right-side rows
    "Row 1 (WS): Bind off 2 sts, p to end.",
    "Row 2 (RS): Knit.",
    "<again:Rep Rows 1 and 2 {again:times}.>",
    "Next Row (WS): Purl.",
    _AT_END,
)
_NECK_AT_BEGINNING = (
    "Row 1 (RS): Bind off 2 sts, k to end.",
    "Row 2 (WS): Purl.",
    "<again:Rep Rows 1 and 2 {again:times}.>",
    _AT_BEGINNING,
)
_SHOULDER = ("<then:Rep Dec Row every other row {then:times}.>", "({shoulder} sts)", "<even:Work {even} rows even.>")
_DIVIDED = "Next Row (RS): K{first}, place next {rest} sts on hold."
_BIND_OFF = "Bind off all sts."
_REJOINED = "With RS facing, rejoin yarn to the {rest} held sts."

_NECK_FIRST = (_DIVIDED, *_NECK_AT_END, *_SHOULDER)
_NECK_SECOND = (
    _REJOINED,
    "Next Row (RS): Bind off {centre} sts, k to end.",
    "Next Row (WS): Purl.",
    *_NECK_AT_BEGINNING,
    *_SHOULDER,
)


def _point() -> tuple[str, ...]:
    """A neck to a point: the rows of one side, and of the other."""
    again = (
        "<times:Rep Dec Row every {every} rows {times:times}.>",
        "<then_times:Rep Dec Row every {then_every} rows {then_times:times}.>",
        *_SHOULDER[1:],
    )
    second = "Next Row (RS): <centre:bind off {centre} st, >k to end."
    return (
        _DIVIDED,
        "Next Row (WS): Purl.",
        _AT_END,
        *again,
        _BIND_OFF,
        _REJOINED,
        second,
        "Next Row (WS): Purl.",
        _AT_BEGINNING,
        *again,
        _BIND_OFF,
    )


def _one_armhole(*rows: str) -> tuple[str, ...]:
    """The armhole of half a front: its bind-off and its decrease row, and what follows them."""
    return (
        *rows,
        "<again:Rep Dec Row every other row {again:times}.>",
        "({left} sts)",
        "<even:Work {even} rows even.>",
    )


def _v_front(bound: tuple[str, str], armhole: str, neck: str) -> tuple[str, ...]:
    """Half a front whose armhole and neck begin together: its bind-off, and its rows at one edge and at the other."""
    full = _BOTH_ENDS.removeprefix("Dec Row (RS): ")
    return (
        *bound,
        f"Full Dec Row (RS): {full}",
        "<full:Rep Full Dec Row every other row {full:times}.>",
        "Next Row (WS): Purl.",
        armhole.replace("Dec Row", "Row 1"),
        "Row 2 (WS): Purl.",
        f"Row 3 (RS): {full}",
        "Row 4 (WS): Purl.",
        "<again:Rep Rows 1 to 4 {again:times}.>",
        neck,
        "<times:Rep Dec Row every {every} rows {times:times}.>",
        "<then_times:Rep Dec Row every {then_every} rows {then_times:times}.>",
        *_SHOULDER[1:],
    )


_FRONTS: Mapping[str, tuple[str, ...]] = {
    "left_front_armhole": _one_armhole(*_BOUND_LEFT, _AT_BEGINNING),
    "right_front_armhole": _one_armhole(*_BOUND_RIGHT, _AT_END),
    "left_front_neck": (
        "Next Row (RS): Knit.",
        "Next Row (WS): Bind off {centre} sts, p to end.",
        "Row 1 (RS): Knit.",
        "Row 2 (WS): Bind off 2 sts, p to end.",
        "<again:Rep Rows 1 and 2 {again:times}.>",
        _AT_END,
        *_SHOULDER,
    ),
    "right_front_neck": (
        "Next Row (RS): Bind off {centre} sts, k to end.",
        "Next Row (WS): Purl.",
        *_NECK_AT_BEGINNING,
        *_SHOULDER,
    ),
    "v_neckline": _point(),
    "left_front_v_neck": _v_front(_BOUND_LEFT, _AT_BEGINNING, _AT_END),
    "right_front_v_neck": _v_front(_BOUND_RIGHT, _AT_END, _AT_BEGINNING),
}


def _slope(out: str, back: str, sides: tuple[str, str]) -> tuple[str, ...]:
    """Short rows, each turned before the last: `out` and `back` are the stitches of the two ways."""
    right, wrong = sides
    across = {"k": "Knit", "p": "Purl"}
    return (
        f"Next Row ({right}): {out.upper()} to last {{first}} sts, turn.",
        f"Next Row ({wrong}): {across[back]}.",
        f"Row 1 ({right}): {out.upper()} to {{step}} sts before gap, turn.",
        f"Row 2 ({wrong}): {across[back]}.",
        "<again:Rep Rows 1 and 2 {again:times}.>",
        f"Row 3 ({right}): {out.upper()} to {{then_step}} sts before gap, turn.",
        f"Row 4 ({wrong}): {across[back]}.",
        "<then_again:Rep Rows 3 and 4 {then_again:times}.>",
        f"Next Row ({right}): {across[out]}. ({{total}} sts)",
    )


def _yoke(rhythm: Rhythm) -> tuple[str, ...]:
    """Three decrease rounds, with the rounds before each."""
    return tuple(
        line
        for name in ("first", "second", "third")
        for line in (
            f"<to_{name}:Work {{to_{name}}} rnds even.>",
            f"{name.title()} Dec Rnd: {rhythm('k2tog', f'{name}_')}. ({{after_{name}}} sts)",
        )
    )


def _all_around(section: str, changed: str) -> str:
    """A round with the shaping of a raglan in all four sections."""
    return f"*{section}; rep from * 3 more times. (8 sts {changed})"


def _mixed(section: str, changed: str) -> tuple[str, ...]:
    """Four rounds of a raglan in which the body, a sleeve, both or neither change in the second, all in the fourth."""
    body, sleeve = (
        "<body: [{section}, k to marker, sm] {{body:times}}>",
        "<sleeve: [k to marker, sm, {section}] {{sleeve:times}}>",
    )
    both, neither = "<both: [{section}] {{both:times}}>", "<neither: k to end>"
    return (
        "Rnd 1: Knit.",
        f"Rnd 2:{''.join((body, sleeve, both, neither)).format(section=section)}.",
        "Rnd 3: Knit.",
        f"Rnd 4: {_all_around(section, changed)}",
        "<again:Rep Rnds 1 to 4 {again:times}.>",
    )


_WORDS: Mapping[str, tuple[str, ...]] = {
    "raglan": (
        "<even:Work {even} rnds even.>",
        f"Full Dec Rnd: {_all_around(_DECREASED, 'decreased')}",
        "<slow:Rep Full Dec Rnd every 4 rnds {slow:times}.>",
        *_mixed(_DECREASED, "decreased"),
        "<fast:Rep Full Dec Rnd every other rnd {fast:times}.>",
        "({left} sts)",
    ),
    "raglan_from_neck": (
        f"Full Inc Rnd: {_all_around(_INCREASED, 'increased')}",
        "<fast:Rep Full Inc Rnd every other rnd {fast:times}.>",
        *_mixed(_INCREASED, "increased"),
        "<slow:Rep Full Inc Rnd every 4 rnds {slow:times}.>",
        "({total} sts)",
        "<even:Work {even} rnds even.>",
    ),
    "yoke_shares": (_SHARES,),
    "armhole": (
        "Next Row (RS): Bind off {bind_off} sts, k to end.",
        "Next Row (WS): Bind off {bind_off} sts, p to end.",
        _BOTH_ENDS,
        "<again:Rep Dec Row every other row {again:times}.>",
        "({left} sts)",
        "<even:Work {even} rows even.>",
    ),
    "sleeve_cap": (
        "Next Row (RS): Bind off {bind_off} sts, k to end.",
        "Next Row (WS): Bind off {bind_off} sts, p to end.",
        _BOTH_ENDS,
        "<first:Rep Dec Row every {fast_every} rows {first:times}.>",
        "<slow:Rep Dec Row every {slow_every} rows {slow:times}.>",
        "<last:Rep Dec Row every {fast_every} rows {last:times}.>",
        "<even:Work {even} rows even.>",
        "Row 1 (RS): Bind off 2 sts, k to end.",
        "Row 2 (WS): Bind off 2 sts, p to end.",
        "<steps_again:Rep Rows 1 and 2 {steps_again:times}.>",
        "({top} sts)",
        "Bind off all sts.",
    ),
    "neckline": (*_NECK_FIRST, _BIND_OFF, *_NECK_SECOND, _BIND_OFF),
    "neckline_first_side": _NECK_FIRST,
    "neckline_second_side": _NECK_SECOND,
    "shoulder_slope": _slope("k", "p", ("RS", "WS")),
    "shoulder_slope_on_wrong_side": _slope("p", "k", ("WS", "RS")),
    "hat_crown": (
        "<even:Work {even} rnds even.>",
        "Set-up Rnd: [K{section}, pm] {inner:times}, k to end.",
        "Dec Rnd: *K to 2 sts before marker, k2tog, sm; rep from * to end. ({lost} sts decreased)",
        "<slow:Rep Dec Rnd every other rnd {slow:times}.>",
        "<fast:Rep Dec Rnd every rnd {fast:times}.>",
        "({left_over} sts)",
    ),
    "heel_turn": (
        "Next Row (RS): K{to_side}, ssk, k1, turn.",
        "Next Row (WS): Sl 1, p{back}, p2tog, p1, turn.",
        "Row 1 (RS): Sl 1, k to 1 st before gap, ssk, k1, turn.",
        "Row 2 (WS): Sl 1, p to 1 st before gap, p2tog, p1, turn.",
        "<again:Rep Rows 1 and 2 {again:times}.>",
        "({left} sts)",
    ),
    "sock_gusset": (
        _PICK_UP,
        "Join to work in the round.",
        f"Dec Rnd: {_GUSSET}",
        "<again:Rep Dec Rnd every other rnd {again:times}.>",
        "({foot} sts)",
    ),
}


def garment_words(rhythm: Rhythm) -> Mapping[str, tuple[str, ...]]:
    """The sentences by the plans' names; `rhythm` gives the words of gaps with a change behind each."""
    return {**_WORDS, **_FRONTS, "yoke_decreases": _yoke(rhythm)}
