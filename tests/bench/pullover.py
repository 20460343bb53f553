"""In: nothing. Out: the source of a whole pullover in twelve sizes, made for the benchmark.

It is worked from the top: a raglan yoke, a body with a band of colours, two sleeves.
"""

SIZES = 12

HEADER = f"""---
title: A pullover for the benchmark
sizes:
{chr(10).join(f"  S{size}: {{chest: {80 + 5 * size} cm, arm: {28 + size} cm}}" for size in range(SIZES))}
gauge: {{stitches: 22 st / 10 cm, rows: 30 rnd / 10 cm, needle: 4 mm}}
yarn: {{main: {{weight: light}}}}
needles: [4 mm circular needle]
notions: [stitch markers, waste yarn]
licence: CC BY 4.0
---
"""

NUMBERS = """
```grade
body = (chest + 8 cm) * stitch_gauge, nearest multiple of 24
sleeve = (arm + 6 cm) * stitch_gauge, nearest even
under = 8
half = body / 2 - under * 1 st
rise = min((half - 20 st) / 2 st, (sleeve - 6 st) / 2 st), down to whole
back = half - rise * 2 st
top = sleeve - rise * 2 st
neck = back * 2 + top * 2
yoke = neck + rise * 8 st
taper = (sleeve + under * 1 st - 48 st) / 2 st, nearest whole
cuff = sleeve + under * 1 st - taper * 2 st
long = 42 (42, 43, 43, 44, 44, 45, 45, 46, 46, 47, 47) cm
require body fits multiple of 24
require yoke = half * 2 + sleeve * 2
```
"""

COLOURS = """
```stitch Waves
Multiple of 24 sts.
Worked in the round.
Rnd 1: *3A, 1B, 5A, 3B; rep from * to end.
Rnd 2: *2A, 3B, 4A, 3B; rep from * to end.
Rnd 3: *1A, 5B, 3A, 3B; rep from * to end.
Rnd 4: *[2B, 1A] 2 times, 6B; rep from * to end.
Rnd 5: *2B, 2A; rep from * to end.
Rnd 6: *4A, 4B; rep from * to end.
Rnd 7: *1A, 1B; rep from * to end.
Rnd 8: *3A, 1B, 5A, 3B; rep from * to end.
Rnd 9: *2A, 3B, 4A, 3B; rep from * to end.
Rnd 10: *1A, 5B, 3A, 3B; rep from * to end.
Rnd 11: *[2B, 1A] 2 times, 6B; rep from * to end.
Rnd 12: *2B, 2A; rep from * to end.
Rnd 13: *4A, 4B; rep from * to end.
Rnd 14: *11A, 13B; rep from * to end.
```
"""

YOKE = """
## Yoke

```work
Cast on {neck} sts. Place marker and join to work in the round.
Rnd 1: *K1, p1; rep from * to end.
Rep Rnd 1 7 more times.
Set-up Rnd: K{back}, pm, k{top}, pm, k{back}, pm, k to end.
Rnd 1: *K1, m1l, k to 1 st before m, m1r, k1, sm; rep from * to end. (8 sts increased)
Rnd 2: Knit.
Rep Rnds 1 and 2 {rise - 1} more times. ({yoke} sts)
```

## Body

```work
Next Rnd: K to m, rm, place next {sleeve} sts on hold, rm, cast on {under} sts, k to m, rm,
  place next {sleeve} sts on hold, cast on {under} sts. ({half * 2 + under * 2 st} sts)
Rnd 1: Knit.
Rep Rnd 1 9 more times.
Work Rnds 1 to 14 of Waves 2 times.
Rnd 2: Knit.
Rep Rnd 2 until piece measures {long} from yoke.
Rnd 3: *K2, p2; rep from * to end.
Rep Rnd 3 17 more times.
Bind off all sts.
```
"""

SLEEVE = """
## {side} sleeve

```work
Place the {{sleeve}} held sts on needles and join yarn.
Rnd 1: K{{sleeve}}, pick up and knit {{under}} sts. ({{sleeve + under * 1 st}} sts)
Rnd 2: Knit.
Rep Rnd 2 7 more times.
Dec Rnd: K1, k2tog, k to last 3 sts, ssk, k1. (2 sts decreased)
Rnd 3: Knit.
Rnd 4: Knit.
Rnd 5: Knit.
Rnd 6: Knit.
Rep last 5 rnds {{taper - 1}} more times. ({{cuff}} sts)
Rnd 7: Knit.
Rep Rnd 7 until sleeve measures 45 cm.
Rnd 8: *K1, p1; rep from * to end.
Rep Rnd 8 17 more times.
Bind off all sts.
```
"""


def pullover() -> str:
    """The whole source."""
    return HEADER + NUMBERS + COLOURS + YOKE + SLEEVE.format(side="Left") + SLEEVE.format(side="Right")
