"""The sentences of the plans of the grading language, one table: the words a reader knits from, by the plan's name.

A plan is shaping, picking up or the like, worked out for every size at once: `crown = decrease_evenly(…)`. Its numbers
are names of their own (`crown.gap`), and `{crown}` in a work block is its sentence, with `{gap}` and the like for its
numbers. The arithmetic is `grade`'s. The words are the same in every size; a clause, `<times:…>`, is left out in print
for the sizes in which its number is 0, and does nothing when it is worked. A plan of one sentence may stand inside a
line ("Dec Row: {crown}."), so its words begin small and end without a full stop; one of several has lines of its own.
"""

import re
from collections.abc import Mapping
from types import MappingProxyType

# A number, "{times}" or "{times:times}"; the beginning of a clause, "<times:", and its end, ">".
MEMBER = re.compile(r"\{(?P<number>[a-z_]+)(?::(?P<style>[a-z]+))?\}|<(?P<clause>[a-z_]+):|>")


def _rhythm(change: str) -> str:
    """Gaps of two lengths, interleaved, each with its change behind it."""
    one = f"[<run:[k{{gap}}, {change}] {{run:times}}, >k{{other}}, {change}] {{times:times}}"
    then = f"[<then_run:[k{{gap}}, {change}] {{then_run:times}}, >k{{other}}, {change}] {{then_times:times}}"
    return f"{one}<then_times:, {then}>"


PLAN_WORDS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "decrease_evenly": (f"<start:k{{start}}, >k2tog<times:, {_rhythm('k2tog')}><end:, k{{end}}>",),
        "decrease_evenly_in_round": (_rhythm("k2tog"),),
        "increase_evenly": (f"k{{start}}, m1<times:, {_rhythm('m1')}><end:, k{{end}}>",),
        "increase_evenly_in_round": (_rhythm("m1"),),
        "increase_between": (f"{_rhythm('m1')}, k{{end}}",),
    }
)
