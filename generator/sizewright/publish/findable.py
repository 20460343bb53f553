"""In: a proofed pattern. Out: what a search of the collection asks of it beside its words, as JSON kept in its card.

Exact values as text, lengths in cm and masses in g; every list has one value a size.
"""

import json
from collections.abc import Sequence
from fractions import Fraction

from sizewright.base.printing import exact_text
from sizewright.proof.proofed import Proofed
from sizewright.publish.script_data import Value
from sizewright.publish.usual_names import spoken_name
from sizewright.publish.view_facts import text_of
from sizewright.publish.view_fit import measures_of
from sizewright.publish.view_sizes import slug
from sizewright.work.yarn_need import YarnNeed


def findable(proofed: Proofed) -> str:
    """The bodies its sizes are made for, and what each size takes of each yarn, with the reserve."""
    yarns = [_yarn(need) for need in proofed.worked.yarns]
    return json.dumps({"measures": measures_of(proofed.graded), "yarns": yarns}, ensure_ascii=False)


def read_findable(text: str) -> tuple[list[Value], list[Value]]:
    """The measures and yarns again; none where there was nothing. Raises ValueError where it is not what was made."""
    told = json.loads(text or "{}")
    if not isinstance(told, dict):
        raise ValueError("what a search asks of a pattern is an object")
    found = tuple(told.get(name, []) for name in ("measures", "yarns"))
    if not all(isinstance(part, list) for part in found):
        raise ValueError("measures and yarns are lists")
    return found[0], found[1]


def _yarn(need: YarnNeed) -> Value:
    """One yarn; null for what its swatch or its label does not tell."""
    yarn, amounts = need.yarn, need.reserved
    ball = yarn.mass or yarn.length
    return {
        "name": spoken_name(yarn.name),
        "weight": slug(text_of(yarn.weight)),
        "ball": ball.typed if ball else "",
        "length": _told([_exact(one.length) for one in amounts]),
        "mass": _told([_exact(one.mass) for one in amounts]),
        "balls": _told([None if one.balls is None else str(one.balls) for one in amounts]),
        "least": [int(lacks) for lacks in need.incomplete],
    }


def _exact(value: Fraction | None) -> str | None:
    return None if value is None else exact_text(value)


def _told(values: Sequence[str | None]) -> Value:
    """One text a size, null where a size is not told."""
    told = [value for value in values if value is not None]
    return list[Value](told) if told and len(told) == len(values) else None
