"""In: a small pattern. Out: what the comparison of two sizes says of its measurements, its yarn and its sections."""

from collections.abc import Callable

from markupsafe import Markup

from sizewright.publish.view import PatternView

ViewOf = Callable[[str, str], PatternView]
HEADER = """sizes: {S: {head: 50 cm}, L: {head: 60 cm}}
gauge: {stitches: 20 st / 10 cm, rows: 28 rnd / 10 cm}
yarn: {main: {weight: light, mass: 50 g, length: 120 m, swatch: {stitches: 1000 st, mass: 10 g}}}
finished: [{label: Around, value: around / stitch_gauge, body: head}]
"""
BODY = """```grade
around = head * stitch_gauge, nearest multiple of 4
```

## Brim

```work
Cast on {around} sts. Join to work in the round.
Rnd 1: *K2, p2; rep from * to end.
Rep Rnd 1 5 more times.
```

::: sizes L
```work
Rnd 7: Knit.
```
:::

### A look at it

## Crown

```work
Rnd 1: *K2tog; rep from * to end.
Rnds 2 and 3: Knit.
Bind off all sts.
```
"""


def plain(cells: tuple[Markup, ...]) -> list[str]:
    return [cell.striptags().replace("\u00a0", " ") for cell in cells]


def test_each_line_has_what_every_size_has(view_of: ViewOf) -> None:
    groups = {
        group.label: {row.label: plain(row.cells) for row in group.rows} for group in view_of(HEADER, BODY).beside
    }
    assert groups["Measurements"] == {
        "Around: to fit head": ["50 cm 19¾ in", "60 cm 23½ in"],
        "Around: finished": ["50 cm 19¾ in", "60 cm 23½ in"],
        "Around: ease": ["0 cm 0 in", "0 cm 0 in"],
    }
    # 20 sts in 10 cm: 100 and 120; six rounds of ribbing, one more in L; every two stitches are knitted together.
    assert groups["Stitches and rows"] == {
        "Brim: stitches cast on": ["100", "120"],
        "Brim: rows or rounds": ["6", "7"],
        "Brim: stitches at the end": ["100", "120"],
        "Crown: rows or rounds": ["3", "3"],
        "Crown: stitches at the end": ["50", "60"],
    }
    assert list(groups["Yarn"]) == ["Yarn: length", "Yarn: mass", "Yarn: balls of 50 g"]


def test_one_size_is_compared_with_none(view_of: ViewOf) -> None:
    assert view_of("sizes: {Only: {head: 50 cm}}\n", "").beside == ()
    assert view_of("", "").beside == ()


def test_two_sleeves_written_out_are_begun_once_and_headings_are_not_needed(view_of: ViewOf) -> None:
    sleeve = "Cast on {n} sts. Join to work in the round.\nRnd 1: Knit.\nPlace all {n} sts on hold for %s sleeve.\n"
    work = f"```work\n{sleeve % 'left'}```\n\n```work\n{sleeve % 'right'}```\n"
    body = "```grade\nn = 40 (44)\n```\n\n" + work
    rows = {row.label: plain(row.cells) for group in view_of("sizes: [S, L]\n", body).beside for row in group.rows}
    assert rows == {
        "Beginning: stitches cast on": ["40", "44"],
        "Beginning: rows or rounds": ["2", "2"],
        "Beginning: stitches at the end": ["40", "44"],
    }
