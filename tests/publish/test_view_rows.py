"""In: patterns carried out. Out: what a page has to knit along: the rows of the ledger, in their words and order."""

import gzip
import json
import re
from collections.abc import Callable, Iterator
from typing import Any

from sizewright.base.language import language, speaking
from sizewright.proof.proofed import Proofed
from sizewright.publish.in_language import telling, told_in
from sizewright.publish.row_words import BEHIND, BETWEEN, METRIC_FIRST, US_FIRST
from sizewright.publish.view import PatternView
from sizewright.publish.view_rows import rows_data
from sizewright.publish.view_sizes import size_choices
from sizewright.publish.view_words import WordsView
from sizewright.read.project import Project
from sizewright.read.trade_words import Country

US = WordsView(Country.US, Country.US)
View = Callable[[str, str], PatternView]
MOST = 12_000  # bytes compressed: an eighth of what a page may weigh

GAUGE = "gauge: {stitches: 20 st / 10 cm, rows: 30 rnd / 10 cm, over: stockinette}\n"
SIZES = "sizes:\n  S: {head: 48 cm}\n  L: {head: 60 cm}\n"


class Course:
    """The data of one size, with the texts in their places."""

    def __init__(self, text: str, size: str = "") -> None:
        data = json.loads(text)
        self.words: list[str] = data["words"]
        self.legs: list[list[Any]] = data["sizes"][size]

    def rows(self, *, again: bool = False) -> int:
        """The rows that are worked, without parts made again unless they are asked for."""
        return sum(
            times * sum(segment[2] * segment[4] for segment in segments)
            for leg in self.legs
            if again or not leg[6]
            for times, segments in leg[7]
        )

    def told(self) -> list[str]:
        """Every leg: label, words, and the count behind them."""
        return [" ".join(filter(None, (self.words[place] for place in leg[2:5]))) for leg in self.legs]

    def ticks(self) -> Iterator[tuple[str, int | None]]:
        """Every tick: the row, and the stitches behind it."""
        for leg in self.legs:
            count = leg[5]
            for times, segments in leg[7]:
                for _ in range(times):
                    for label, words, alike, change, _, _ in segments:
                        for _ in range(alike):
                            count = None if count is None else count + change
                            yield f"{self.words[label]} {self.words[words]}".strip(), count


def course(view_of: View, body: str, header: str = GAUGE, size: str = "") -> Course:
    return Course(str(view_of(header, f"```work\n{body}\n```").rows), size)


def test_the_rows_of_every_size_of_the_demo_are_those_of_the_ledger(demo_proofed: tuple[Proofed, ...]) -> None:
    sizes = 0
    for proofed in demo_proofed:
        worked = proofed.worked
        choices = size_choices(worked.graded.pattern.header.sizes)
        text = str(rows_data(worked, choices, US, metric_first=True))
        assert len(gzip.compress(text.encode())) < MOST
        for place, choice in enumerate(choices):
            told = Course(text, choice.key)
            assert told.rows() == sum(entry.rows[place] for entry in worked.entries), choice
            counted = [leg for leg in worked.courses[place] if leg.spells and not leg.again]
            assert [sum(one.rows for one in leg.spells) for leg in counted] == [leg.rows for leg in counted]
            sizes += 1
    assert sizes > 30


def test_the_last_count_of_each_direction_is_that_of_the_ledger(demo_proofed: tuple[Proofed, ...]) -> None:
    for proofed in demo_proofed:
        for legs in proofed.worked.courses:
            for leg in legs:
                if leg.spells and leg.before is not None:
                    change = sum(one.times * sum(each.after - each.before for each in one.passes) for one in leg.spells)
                    assert leg.before + change == leg.after, leg


def test_in_another_language_the_rows_are_those_of_the_source(
    demo_proofed: tuple[Proofed, ...], demo_project: Project
) -> None:
    """In its words, with those of the source beside them: by these a project is known again."""
    told = told_in("de", demo_project, demo_proofed)[1]
    assert len(told) == len(demo_proofed)
    for own, other in zip(demo_proofed, told, strict=True):
        choices = size_choices(own.graded.pattern.header.sizes)
        english = json.loads(rows_data(own.worked, choices, US, metric_first=True))
        with speaking(language("de")), telling(other.graded.pattern):
            german = json.loads(rows_data(other.worked, choices, US, metric_first=True))
        assert "base" not in english
        assert len(german["words"]) == len(german["base"])
        assert in_words(english, "words") == in_words(german, "base")
        assert not re.search(r"\b(?:Rnd|Row|sts)\b", " ".join(german["words"]))


def in_words(data: dict[str, Any], words: str) -> dict[str, list[list[object]]]:
    """Every leg with its texts in one language."""
    told = data[words]
    return {
        size: [
            [*(told[leg[at]] for at in (0, 2, 3, 4)), *leg[5:7], *(told[row[1]] for _, run in leg[7] for row in run)]
            for leg in legs
        ]
        for size, legs in data["sizes"].items()
    }


def test_no_page_of_the_demo_tells_a_size_what_it_need_not_do(demo_proofed: tuple[Proofed, ...]) -> None:
    for proofed in demo_proofed:
        choices = size_choices(proofed.graded.pattern.header.sizes)
        text = str(rows_data(proofed.worked, choices, US, metric_first=True))
        idle = [one for one in json.loads(text)["words"] if re.search(r"\b0 (?:more )?times\b", one)]
        assert idle == []


def test_rows_are_told_in_their_words_with_the_count_behind_each(view_of: View) -> None:
    told = course(
        view_of,
        "Cast on 12 sts.\nJoin to work in the round.\nRnd 1: Knit.\nRnd 2: *K1, k2tog; rep from * to end. (8 sts)",
    )
    assert told.told() == [
        "Cast on 12 sts.",
        "Join to work in the round.",
        "Rnd 1: Knit.",
        "Rnd 2: *K1, k2tog; rep from * to end. 8 sts",
    ]
    assert list(told.ticks()) == [("Rnd 1: Knit.", 12), ("Rnd 2: *K1, k2tog; rep from * to end.", 8)]


def test_rows_worked_even_are_told_as_the_page_tells_them(view_of: View) -> None:
    """By hand: shaping uses 176 rows up; one is left over of 177."""
    plan = "```grade\nsleeve = sleeve_taper(72 st, 156 st, 177 (176) row)\n```\n"
    body = plan + "```work\nCast on 72 sts.\n{sleeve}\nWork 4 rows even. Bind off all sts.\n```"
    text = str(view_of(GAUGE + SIZES, body).rows)
    assert [one for one in Course(text, "s").told() if "even" in one] == ["Work 1 row even.", "Work 4 rows even."]
    assert [one for one in Course(text, "l").told() if "even" in one] == ["Work 4 rows even."]


def test_shaping_is_told_with_the_numbers_of_the_size(view_of: View) -> None:
    """A number that differs by size is told anew in each: the first has nothing to do in the second interval."""
    rep = "Inc 1 st at each end of every {every} rows {times:times}, then of every {then} rows {more:times}. "
    grade = "```grade\nevery = 2 (4)\ntimes = 8 (3)\nthen = 3 (5)\nmore = 0 (5)\n```\n"
    body = grade + "```work\nCast on 72 sts.\n" + rep + "Work 4 rows even.\n```"
    text = str(view_of(GAUGE + SIZES, body).rows)
    assert Course(text, "s").told()[1] == "Inc 1 st at each end of every other row 8 times."
    assert Course(text, "l").told()[1] == "Inc 1 st at each end of every 4th row 3 times, then every 5th row 5 times."


def test_repeated_rows_are_folded_and_each_tick_says_its_row(view_of: View) -> None:
    told = course(
        view_of, "Cast on 20 sts.\nRow 1 (RS): K1, ssk, k to end.\nRow 2: Purl.\nRep Rows 1 and 2 5 more times."
    )
    repeat = told.legs[-1]
    assert [(times, len(segments)) for times, segments in repeat[7]] == [(5, 2)]
    assert list(told.ticks())[-2:] == [("Row 1 (RS): K1, ssk, k to end.", 14), ("Row 2: Purl.", 14)]


def test_shaping_every_so_often_is_one_run(view_of: View) -> None:
    body = "Cast on 20 sts and join to work in the round.\nInc Rnd: K1, m1l, k to last st, m1r, k1.\n"
    told = course(view_of, body + "Rep Inc Rnd every 4th rnd 10 times.")
    assert [(times, [(one[2], one[3]) for one in segments]) for times, segments in told.legs[-1][7]] == [
        (10, [(3, 0), (1, 2)])
    ]


def test_a_part_made_again_is_knitted_again(view_of: View) -> None:
    told = course(view_of, "Cast on 12 sts.\nRow 1: Knit.\nBind off all sts.\nMake the second piece the same way.")
    assert told.told()[3:] == ["Make the second piece the same way.", *told.told()[:3]]
    assert [leg[6] for leg in told.legs] == [0, 0, 0, 0, 1, 1, 1]
    assert (told.rows(), told.rows(again=True)) == (1, 2)


def test_a_part_whose_heading_says_make_two_is_knitted_twice(view_of: View) -> None:
    body = "## Sleeves (make 2)\n\n```work\nCast on 12 sts.\nRow 1: Knit.\nBind off all sts.\n```\n\n## Collar\n"
    told = Course(str(view_of(GAUGE, body).rows))
    assert [leg[6] for leg in told.legs] == [0, 0, 0, 1, 1, 1]


def test_a_line_that_changes_no_stitch_is_to_be_done_in_its_place(view_of: View) -> None:
    told = course(view_of, "Cast on 8 sts.\nRow 1: Knit.\nCut yarn, leaving a tail.\nBind off all sts.\nWeave in ends.")
    assert told.told()[2::2] == ["Cut yarn, leaving a tail.", "Weave in ends."]
    assert told.rows() == 1


def test_each_size_has_its_own_numbers_and_nothing_it_need_not_do(view_of: View) -> None:
    body = "Cast on 8 (12) sts.\nRow 1: Knit.\nRep Row 1 0 (3) more times."
    small, large = (course(view_of, body, GAUGE + SIZES, size) for size in ("s", "l"))
    assert small.told() == ["Cast on 8 sts.", "Row 1: Knit."]
    assert large.told()[0::2] == ["Cast on 12 sts.", "Rep Row 1 3 more times."]
    assert (small.rows(), large.rows()) == (1, 4)


def test_a_row_of_a_stitch_pattern_says_whose_it_is(view_of: View) -> None:
    body = "```work\nCast on 8 sts.\nWork Rows 1 to 2 of Small waves 3 times.\n```\n```stitch Small waves\n"
    told = Course(str(view_of(GAUGE, f"{body}Row 1: *Yo, k2tog; rep from * to end.\nRow 2: Purl.\n```").rows))
    ((times, segments),) = told.legs[-1][7]
    assert (times, [told.words[one[5]] for one in segments]) == (3, ["Small waves", "Small waves"])


def test_declared_rows_are_counted(view_of: View) -> None:
    told = course(view_of, "Cast on 8 sts.\nWork the pocket as you like.   # declared: 8 sts, 12 rows")
    assert told.rows() == 12


def test_a_length_is_told_in_both_systems_apart(view_of: View) -> None:
    rows = "Cast on 8 sts.\nRow 1: Knit.\nRep Row 1 until piece measures {long}."
    told = Course(str(view_of(GAUGE, f"```grade\nlong = 10 cm\n```\n```work\n{rows}\n```").rows))
    assert told.told()[-1] == f"Rep Row 1 until piece measures {METRIC_FIRST}10 cm{BETWEEN}4 in{BEHIND}."


def test_words_that_differ_between_countries_are_told_in_both(view_of: View) -> None:
    told = course(view_of, "Cast on 8 sts.\nRow 1: Knit.\nBind off all sts.")
    assert told.told()[-1] == f"{US_FIRST}Bind off{BETWEEN}Cast off{BEHIND} all sts."


def test_words_cannot_end_the_script_they_stand_in(view_of: View) -> None:
    text = str(
        view_of(GAUGE, "```work\nCast on 8 sts.\nCut yarn </script><script>alert(1)</script> & hide it.\n```").rows
    )
    assert "<" not in text
    assert Course(text).told()[-1] == "Cut yarn </script><script>alert(1)</script> & hide it."
