"""What the page of a pattern says of the reader's own gauge, ready to be set: the fabrics to count in, and the sums."""

from dataclasses import dataclass

from markupsafe import Markup


@dataclass(frozen=True, slots=True)
class FabricView:
    """A fabric whose gauge a reader may tell: its place, its name ("" where it is the only one), what it is worked in.

    `rows` is the word for them, "" where the pattern gives no row gauge.
    """

    place: int
    name: str
    over: str
    rows: str


@dataclass(frozen=True, slots=True)
class MyGaugeView:
    """The fabrics, the finished measurements by their labels, the unit of the studio, and the sums as data.

    `in_rounds` says that whatever rows are counted are rounds.
    Numbers in the data are exact text, one for all sizes or one a size with spaces between, in cm, g, and counts to
    the cm. An expression is such a text, the place of a gauge in `own`, or `[what, part, ...]`.
    """

    fabrics: tuple[FabricView, ...]
    measures: tuple[str, ...]
    unit: str
    data: Markup
    in_rounds: bool
