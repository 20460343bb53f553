"""The sentences of the plans of the grading language, one table: the words a reader knits from, by the plan's name.

A plan is shaping, picking up or the like, worked out for every size at once: `crown = decrease_evenly(…)`. Its numbers
are names of their own (`crown.gap`), and `{crown}` in a work block is its sentence, with `{gap}` and the like for its
numbers. The arithmetic is `grade`'s. The words are the same in every size; a clause, `<times:…>`, is left out in print
for the sizes in which its number is 0, and does nothing when it is worked. What is done
once, and one row, are told so by `publish/plan_words.py`. A plan of one sentence may stand inside a line ("Dec Row:
{crown}."), so its words begin small and end without a full stop; one of several has lines of its own.
"""

import re
from collections.abc import Mapping
from types import MappingProxyType

from sizewright.read.garment_words import garment_words

# A number, "{times}" or "{times:times}"; the beginning of a clause, "<times:", and its end, ">".
MEMBER = re.compile(r"\{(?P<number>[a-z_]+)(?::(?P<style>[a-z]+))?\}|<(?P<clause>[a-z_]+):|>")


def _rhythm(change: str, prefix: str = "") -> str:
    """Gaps of two lengths, interleaved, each with its change behind it; `prefix` stands before the numbers' names."""
    gap, other = (f"<{name}:k{{{name}}}, >{change}" for name in ("gap", "other"))
    one = f"[<run:[{gap}] {{run:times}}, >{other}] {{times:times}}"
    then = f"[<then_run:[{gap}] {{then_run:times}}, >{other}] {{then_times:times}}"
    return re.sub(r"([{<])(?=[a-z])", rf"\1{prefix}", f"{one}<then_times:, {then}>")


def _over_rows(change: str, unit: str) -> tuple[str, ...]:
    """A change in two intervals, and the rows left over."""
    then = f"<then_times:, then of every {{then_every}} {unit} {{then_times:times}}>"
    return (f"<times:{change} of every {{every}} {unit} {{times:times}}{then}.>", f"<even:Work {{even}} {unit} even.>")


def _at(ends: str) -> Mapping[str, tuple[str, ...]]:
    """The plans of shaping over rows at one end or both: increases and decreases, either interval first."""
    place = {"both_ends": "each end"}.get(ends, ends)
    return {
        f"{verb}_at_{ends}{order}": _over_rows(f"{verb[:3].title()} 1 st at {place}", "rows")
        for verb in ("increase", "decrease")
        for order in ("", "_slow_first")
    }


def _sleeve(unit: str) -> tuple[str, ...]:
    """The increases of a sleeve, with the count they lead to."""
    shaping, even = _over_rows("Inc 1 st at each end", unit)
    return (f"{shaping.removesuffix('>')} ({{top}} sts)>", even)


def _runs() -> str:
    """Stitches picked up in runs, with a row skipped behind each but the last."""
    run, other = (f"pick up and knit {{{name}}} sts, skip 1 row" for name in ("gap", "other"))
    one = f"<times:[<run:[{run}] {{run:times}}, >{other}] {{times:times}}, >"
    return f"{one}<then_times:[<then_run:[{run}] {{then_run:times}}, >{other}] {{then_times:times}}, >"


def _marked() -> str:
    """Parts of an edge, a marker behind each."""
    first, second, third = (
        f"[pick up and knit {{{part}}} sts over {{{part}_rows}} rows, pm] {{{part}_times:times}}"
        for part in ("first", "second", "third")
    )
    return f"<first_times:{first}, ><second_times:{second}, >{third}"


PLAN_WORDS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "decrease_evenly": (f"<start:k{{start}}, >k2tog<times:, {_rhythm('k2tog')}><end:, k{{end}}>",),
        "decrease_evenly_in_round": (_rhythm("k2tog"),),
        "increase_evenly": (f"k{{start}}, m1<times:, {_rhythm('m1')}><end:, k{{end}}>",),
        "increase_evenly_in_round": (_rhythm("m1"),),
        "increase_between": (f"{_rhythm('m1')}, k{{end}}",),
        **_at("both_ends"),
        **_at("beginning"),
        **_at("end"),
        "increase_in_round": _over_rows("Inc 1 st at each end", "rnds"),
        "increase_in_round_slow_first": _over_rows("Inc 1 st at each end", "rnds"),
        "decrease_in_round": _over_rows("Dec 1 st at each end", "rnds"),
        "decrease_in_round_slow_first": _over_rows("Dec 1 st at each end", "rnds"),
        "sleeve_taper": _sleeve("rows"),
        "sleeve_taper_in_round": _sleeve("rnds"),
        "thumb_gusset": (
            "<before:Work {before} rnds even.>",
            "Inc Rnd: K to marker, sm, m1l, k to marker, m1r, sm, k to end. (2 sts increased)",
            "<again:Rep Inc Rnd every {every} rnds {again:times}.>",
            "<then_times:Rep Inc Rnd every {then_every} rnds {then_times:times}.>",
            "<even:Work {even} rnds even.>",
        ),
        "pick_up_ratio": ("Note the rate: {pick} sts for every {of} rows",),
        "pick_up": (f"{_runs()}pick up and knit {{end}} sts",),
        "pick_up_along": (f"{_runs()}pick up and knit {{end}} sts",),
        "pick_up_by_markers": (_marked(),),
        **garment_words(_rhythm),
    }
)
