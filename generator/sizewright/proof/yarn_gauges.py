"""In: a header. Out: the gauges that can be held against the published table of yarn weights, each with its weight.

The table is of stockinette stitch in one strand of one yarn. A gauge is judged only where it is surely that: over
stockinette stitch (which a lone gauge that says nothing is taken for), in a pattern whose yarns all have the same
weight, with no word of two strands held together; and not in lace weight, for which the table is a guideline only.
"""

import re
from collections.abc import Iterator

from sizewright.read.pattern import Gauge, Header
from sizewright.read.yarn_weights import YarnWeight, weight_named

_STOCKINETTE = re.compile(r"\b(?:stockinette|stocking[- ]?(?:stitch|st\b)|st\.? st\b)", re.I)
# What makes another fabric of it.
_OTHERWISE = re.compile(
    r"rib|lace|eyelet|cable|colou?r|strand|fair isle|intarsia|mosaic|slip|garter|moss|seed|twist|brioche|tuck|woven"
    r"|felt|full(?:ed|ing)|pattern|double|held|together",
    re.I,
)
_STRANDS = re.compile(r"\b(?:held|strands?|doubled?|together|along with)\b", re.I)


def judged(header: Header) -> Iterator[tuple[Gauge, YarnWeight]]:
    """The gauges of stockinette stitch in one strand, each with the one weight of the pattern's yarns."""
    weight = _only_weight(header)
    if weight is not None and not weight.guideline:
        yield from ((gauge, weight) for gauge in header.gauges if _of_stockinette(gauge))


def _only_weight(header: Header) -> YarnWeight | None:
    """The weight of all yarns, None where they differ, where one has none, or where strands are held together."""
    named = {yarn.weight.text if yarn.weight else "" for yarn in header.yarns}
    noted = (words.text for yarn in header.yarns for words in (yarn.note, yarn.fibre, yarn.colour) if words)
    if len(named) != 1 or any(map(_STRANDS.search, noted)):
        return None
    return weight_named(named.pop())


def _of_stockinette(gauge: Gauge) -> bool:
    if gauge.over is None:
        return not gauge.name
    return bool(_STOCKINETTE.search(gauge.over.text)) and not _OTHERWISE.search(gauge.over.text)
