"""Lines of instructions on a page in German: the numbers of the typed lines, told from trees or by a translator."""

import json
import re
from collections import Counter
from dataclasses import replace

import pytest

from sizewright.base.language import language, speaking
from sizewright.proof.run import proof
from sizewright.publish.links import Links
from sizewright.publish.told_lines import ToldLines
from sizewright.publish.view import Body
from sizewright.publish.view_body import body_view
from sizewright.publish.view_rows import rows_data
from sizewright.publish.view_sizes import size_choices
from sizewright.publish.view_words import WordsView
from sizewright.read.folder import read_text
from sizewright.read.inserts import Insert, Told, TypedList
from sizewright.read.notation.printed import source_text
from sizewright.read.notation.retelling import Retelling, whole_lines
from sizewright.read.pattern import InstructionLine, Pattern, StitchBlock, WorkBlock
from sizewright.read.plans import PLAN_WORDS
from sizewright.read.project import Project
from sizewright.read.trade_words import Country
from sizewright.work.worked import Worked

GERMAN = language("de")
US = WordsView(Country.US, Country.US)
ENGLISH_WORDS = re.compile(r"\b(?:[kp]\d*|sts?|rnds?|rows?|rep|to|end|next|knit|purl|work|until|marker|sm|ssk)\b")


def lines_of(pattern: Pattern) -> list[InstructionLine]:
    blocks = (piece for piece in pattern.body if isinstance(piece, WorkBlock | StitchBlock))
    return [line for block in blocks for line in whole_lines(block.lines)]


def numbers(told: Told) -> Counter[Insert | TypedList]:
    return Counter(piece for piece in told if isinstance(piece, Insert | TypedList))


def source(lines: str) -> Pattern:
    header = (
        "title: A\nsizes:\n  S: {chest: 80 cm}\n  M: {chest: 90 cm}\n  L: {chest: 100 cm}\nyarn: {A: {called: Fog}}"
    )
    return read_text(f"---\n{header}\n---\n{lines}", "a.md").patterns[0]


@pytest.fixture(scope="module")
def project(demo_project: Project) -> Project:
    return demo_project


@pytest.fixture(scope="module")
def pullover(project: Project) -> Worked:
    """The pattern of the demo with plans, clauses that only some sizes read, colours and charts."""
    return proof(next(one for one in project.patterns if one.name == "tarnside-pullover"), project).worked


def body(worked: Worked) -> Body:
    graded = worked.graded
    pattern = replace(graded.pattern, translations=())  # printed from the trees alone
    schematics = graded.schematics
    return body_view(pattern, graded.inserts, Links(""), metric_first=True, drawn={}, schematics=schematics)


def test_every_line_of_the_demo_has_the_numbers_of_the_typed_one(project: Project) -> None:
    told = 0
    for pattern in (*project.patterns, *project.techniques):
        retelling = Retelling.of(pattern)
        for line in lines_of(pattern):
            with speaking(GERMAN):
                printed = retelling.line(line)
            assert printed is not None, source_text(line.pieces)
            assert numbers(printed.whole) == numbers(line.pieces), source_text(printed.whole)
            told += 1
    assert told > 150


@pytest.mark.parametrize("plan", PLAN_WORDS)
def test_every_sentence_of_a_plan_can_be_told(plan: str) -> None:
    pattern = source(f"```grade\nplan = {plan}(1)\n```\n```work\n{{plan}}\n```\n")
    retelling = Retelling.of(pattern)
    lines = lines_of(pattern)
    assert lines
    for line in lines:
        with speaking(GERMAN):
            printed = retelling.line(line)
        assert printed is not None, source_text(line.pieces)
        assert numbers(printed.whole) == numbers(line.pieces)


def test_the_sizes_read_the_same_lines_in_both_languages(pullover: Worked) -> None:
    english = body(pullover)
    with speaking(GERMAN):
        german = body(pullover)
    here, there = ([line for part in one.parts for line in part.lines] for one in (english, german))
    assert [line.sizes for line in here] == [line.sizes for line in there]
    assert any(line.sizes for line in there)
    assert [bool(line.label) for line in here] == [bool(line.label) for line in there]
    assert [bool(line.count) for line in here] == [bool(line.count) for line in there]
    assert not [line for line in there if "lang=" in line.text]


def test_rows_to_knit_along_are_told_in_german(pullover: Worked) -> None:
    graded = replace(pullover.graded, pattern=replace(pullover.graded.pattern, translations=()))
    sizes = size_choices(graded.pattern.header.sizes)
    with speaking(GERMAN):
        words = json.loads(rows_data(replace(pullover, graded=graded), sizes, US, metric_first=True))["words"]
    assert "[61 M re, 2 M re zus-str] 4 Mal." in words
    assert [told for told in words if ENGLISH_WORDS.search(told)] == []


def test_a_line_of_a_translator_keeps_its_label_and_its_count_apart() -> None:
    line = lines_of(source("```work\nDec Rnd: *K{a}, ssk; rep from * to end. (8 sts)\n```\n"))[0]
    insert = next(piece for piece in line.pieces if isinstance(piece, Insert))
    told = ("Abnahme-Rd: die ", insert, " M fein stricken. (8 M)")
    lines = ToldLines(Retelling.of(source("")), {line.span: told})
    with speaking(GERMAN):
        printed = lines.printed(line)
    assert printed is not None
    assert ["".join(map(str, part)) for part in (printed.label, printed.count)] == ["Abnahme-Rd:", "8 M"]
    assert printed.words == ("die ", insert, " M fein stricken.")


def test_words_that_cannot_be_told_stay_english_and_say_so() -> None:
    pattern = source("```work\nWith Fog, cast on 4 sts.\nStir well.  # declared: 4 sts\n```\n")
    with speaking(GERMAN):
        view = body_view(pattern, {}, Links(""), metric_first=True, drawn={}, schematics=())
    first, second = view.parts[-1].lines
    assert str(first.text) == "Mit Fog: 4 M anschlagen."
    assert str(second.text) == '<span lang="en">Stir well.</span>'


def test_a_line_that_goes_on_is_one_line() -> None:
    pattern = source("```work\nCast on 4 sts.\nRow 1: K1, p1,\n  k2. (4 sts)\n```\n")
    with speaking(GERMAN):
        view = body_view(pattern, {}, Links(""), metric_first=True, drawn={}, schematics=())
    last = view.parts[-1].lines[-1]
    assert (str(last.label), str(last.text), str(last.count)) == ("1. R:", "1 M re, 1 M li, 2 M re.", "4 M")


@pytest.mark.parametrize(
    ("bind_off", "name", "block", "told"),
    [
        ("Bind off", "moss stitch", "", "im großen Perlmuster"),  # US moss stitch, two rows of each: knittingmagic.biz
        ("Cast off", "moss stitch", "", "im Perlmuster"),  # UK moss stitch is US seed stitch: stitchandstory.com
        ("Cast off", "double moss stitch", "", "im großen Perlmuster"),
        ("Bind off", "seed stitch", "", "im Perlmuster"),
        (
            "Bind off",
            "Moss stitch",
            "```stitch Moss stitch\nRow 1: *K1, p1; rep from * to end.\n```\n",
            "im Muster „Moosmuster“",
        ),
    ],
)
def test_moss_stitch_is_told_by_what_its_rows_are(bind_off: str, name: str, block: str, told: str) -> None:
    work = f"```work\nCast on 8 sts.\nWork in {name} for 4 rows.\n{bind_off} all sts.\n```\n"
    pattern = source(f"{block}{work}")
    with speaking(GERMAN.naming({"Moss stitch": "Moosmuster"} if block else {})):
        lines = ToldLines.of(pattern)
        words = [lines.words(line) for line in lines_of(pattern)]
    assert any(told in line for line in words), words
