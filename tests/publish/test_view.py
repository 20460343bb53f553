"""In: small patterns. Out: what a page says of their numbers, lines and passages, for all sizes and for one."""

from collections.abc import Callable
from fractions import Fraction

import pytest
from bs4 import BeautifulSoup

from sizewright.base.place import Span
from sizewright.base.units import LENGTH, STITCHES
from sizewright.grade.graded import Values
from sizewright.proof.proofed import Proofed
from sizewright.publish.links import Links
from sizewright.publish.view import Body, PatternView
from sizewright.publish.view_body import body_view
from sizewright.publish.view_numbers import as_text, graded_html, insert_html, typed_html
from sizewright.read.pattern import TypedList
from sizewright.read.project import Project

Read = Callable[[str], tuple[Proofed, Project]]
ViewOf = Callable[[str, str], PatternView]
SIZES = "sizes: {S: {head: 50 cm}, M: {head: 55 cm}, L: {head: 60 cm}}\ngauge: {stitches: 20 st / 10 cm}\n"


def body_of(view_of: ViewOf, body: str) -> Body:
    return view_of(SIZES, body).body


def visible(html: str, place: int | None = None) -> str:
    """The text a reader sees of all sizes, or of one when it is chosen."""
    soup = BeautifulSoup(html, "html.parser")
    if place is not None:
        for hidden in soup.select(f".z:not(.z{place}), .zp"):
            hidden.decompose()
    return " ".join(soup.get_text().replace("\u00a0", " ").split())


# ------------------------------------------------------------------------------------------------------------- numbers


def test_a_number_reads_as_the_trade_writes_it_and_for_one_size_alone() -> None:
    # Smallest first, the rest in brackets with commas: craftstarstudios.com; yayforyarn.com.
    html = graded_html(("72", "80", "88"), range(3))
    assert visible(html) == "72 (80, 88)"
    assert [visible(html, place) for place in range(3)] == ["72", "80", "88"]


def test_a_number_that_is_the_same_in_every_size_is_plain_text() -> None:
    assert graded_html(("72",), range(3)) == "72"
    assert graded_html(("72", "72", "72"), range(3)) == "72"


def test_a_length_is_in_both_unit_systems() -> None:
    # 1 in = 2.54 cm exactly: 16 CFR 500.19(a).
    lengths = Values(LENGTH, (Fraction(254, 10), Fraction(127, 5), Fraction(30)), ())
    assert visible(insert_html(lengths, None, range(3), metric_first=True)) == "25.4 (25.4, 30) cm / 10 (10, 11¾) in"
    html = insert_html(lengths, None, range(3), metric_first=False)
    assert visible(html) == "10 (10, 11¾) in / 25.4 (25.4, 30) cm"
    assert visible(html, 2) == "11¾ in / 30 cm"


def test_a_number_in_a_passage_is_for_its_sizes_alone() -> None:
    counts = Values(STITCHES, (Fraction(1), Fraction(2), Fraction(3)), ())
    html = insert_html(counts, None, (1, 2), metric_first=True)
    assert visible(html) == "2 (3)"
    assert [visible(html, place) for place in range(3)] == ["", "2", "3"]
    assert insert_html(counts, None, (1,), metric_first=True) == "2"


def test_a_list_typed_by_hand_keeps_its_kind_of_fractions_and_has_a_dash_for_no_value() -> None:
    span = Span("a.md", 1, 1, 1, 9)
    halves = TypedList(span, "7½ (8, –)", (Fraction(15, 2), Fraction(8), None))
    assert visible(typed_html(halves, range(3))) == "7½ (8, –)"
    assert visible(typed_html(halves, range(3)), 2) == "–"
    assert visible(typed_html(TypedList(span, "7.5 (8, –)", halves.values), (0, 1))) == "7.5 (8)"


def test_on_paper_a_number_is_text_alone() -> None:
    """It is broken between the sizes, never within one; what stands around it and is no number stays."""
    number = graded_html(("1 1/2", "2", "–"), (0, 1, 70))
    page = f'<p><span class="metric">{number}</span><span class="zp">All</span> <b class="z z1">x &lt; y</b></p>'
    text = (
        '<p><span class="metric"><span class="graded">1\u00a01/2 (2, –)</span></span>'
        '<span class="zp">All</span> <b class="z z1">x &lt; y</b></p>'
    )
    assert as_text(page) == as_text(text) == text


def test_more_sizes_than_are_prepared_have_classes_too() -> None:
    html = graded_html([str(number) for number in range(70)], range(70))
    assert visible(html, 69) == "69"


# --------------------------------------------------------------------------------------------------------------- lines


def lines_of(view_of: ViewOf, *lines: str) -> list[tuple[str, str, str]]:
    body = body_of(view_of, "```grade\nleft = 88 st\nlist = 1 (2, 3) st\n```\n```work\n" + "\n".join(lines) + "\n```")
    (part,) = (part for part in body.parts if part.kind == "work")
    return [(visible(line.label), visible(line.text), visible(line.count)) for line in part.lines]


@pytest.mark.parametrize(
    ("line", "label"),
    [
        ("Rnd 1: Knit.", "Rnd 1:"),
        ("Row 1 (RS): Knit.", "Row 1 (RS):"),
        ("Next Rnd (dec): Knit.", "Next Rnd (dec):"),
        ("1st row: Knit.", "1st row:"),
        ("Rows 2 and 4 (WS): Knit.", "Rows 2 and 4 (WS):"),
        ("ROUND 3: Knit.", "ROUND 3:"),
        ("Cast on 4 sts.", ""),
        ("Work 3 rows, then: knit.", ""),
        ("Growing: knit.", ""),
        ("Rep Rnd 1 until it measures 5 cm.", ""),
    ],
)
def test_the_label_of_a_row_stands_apart(view_of: ViewOf, line: str, label: str) -> None:
    ((seen, text, count),) = lines_of(view_of, line)
    assert (seen, f"{seen} {text}".strip(), count) == (label, line, "")


@pytest.mark.parametrize(
    ("line", "count"),
    [
        ("Rnd 1: K to end. (88 sts)", "88 sts"),
        ("Rnd 1: K to end. [88 sts]", "88 sts"),
        ("Rnd 1: K to end. (8 sts decreased)", "8 sts decreased"),
        ("Rnd 1: K to end. 88 sts.", "88 sts"),
        ("Rnd 1: K to end. ({left} sts)", "88 sts"),
        ("Rnd 1: K to end. ({list} sts)", "1 (2, 3) sts"),
        ("Rnd 1: K to end. (4 (5, 6) sts)", "4 (5, 6) sts"),
        ("Rnd 1: K to end—88 sts.", ""),
        ("Cast on 88 sts.", ""),
        ("Rnd 1: K to last 3 sts, k3.", ""),
        ("Rnd 1: Join (do not twist the sts).", ""),
    ],
)
def test_a_count_at_the_end_stands_apart(view_of: ViewOf, line: str, count: str) -> None:
    # Style rule 9a: a count must look unlike instructions (fiatfiberarts.com 2019).
    ((_, text, seen),) = lines_of(view_of, line)
    assert seen == count
    assert not count or "sts" not in text


def test_signs_of_html_in_a_line_stay_signs(view_of: ViewOf) -> None:
    ((_, text, _),) = lines_of(view_of, "Work <b>even</b> & *k2; rep from *.")
    assert text == "Work <b>even</b> & *k2; rep from *."


def test_signs_that_stand_for_numbers_inside_cannot_be_smuggled_in(view_of: ViewOf) -> None:
    ((_, text, _),) = lines_of(view_of, "Work \U000f0000{left}\U000f0005 sts even.")
    assert text == "Work 88 sts even."


# ---------------------------------------------------------------------------------------------------------------- body


def test_a_passage_is_for_its_sizes_and_says_so(view_of: ViewOf) -> None:
    body = body_of(view_of, "::: sizes M, L\nOnly the larger.\n:::\n\nEverybody.")
    html = "".join(part.html or "" for part in body.parts)
    assert visible(html) == "M and L only Only the larger. Everybody."
    assert visible(html, 0) == "Everybody."
    assert visible(html, 2) == "Only the larger. Everybody."


def test_a_plan_tells_each_size_its_own_words(view_of: ViewOf) -> None:
    """Sums by hand: 40 − 8 = 32 = 4 × 8 and 44 − 8 = 36 = 4 × 9 need one gap, 42 − 8 = 34 = 2 × 8 + 2 × 9 two."""
    grade = "```grade\nplan = decrease_evenly_in_round(40 (42, 44) st, 4)\n```\n"
    body = body_of(view_of, f"{grade}```work\nCast on 44 sts.\nRnd 1: {{plan}}, k4.\n```\n")
    _, even, uneven = body.parts[0].lines
    assert (even.sizes, even.classes, visible(even.text)) == (("S", "L"), "z0 z2", "[k8 (9), k2tog] 4 times, k4.")
    assert (uneven.sizes, uneven.classes) == (("M",), "z1")
    assert visible(uneven.text) == "[k8, k2tog, k9, k2tog] twice, k4."


def test_words_of_a_plan_that_do_as_much_in_every_size_are_told_once(view_of: ViewOf) -> None:
    grade = "```grade\nplan = decrease_evenly_in_round(40 (44, 48) st, 4)\n```\n"
    body = body_of(view_of, f"{grade}```work\nCast on 44 sts.\n{{plan}}.\n```\n")
    line = body.parts[0].lines[1]
    assert (line.sizes, visible(line.text)) == ((), "[k8 (9, 10), k2tog] 4 times.")


def test_what_could_not_be_worked_out_is_marked(read_pattern: Read) -> None:
    proofed, _ = read_pattern(f"---\ntitle: T\n{SIZES}---\nWork {{gone + 1}} sts.\n")
    body = body_view(proofed.graded.pattern, {}, Links(""), metric_first=True, drawn={}, schematics=())
    assert '<mark class="missing">gone + 1</mark>' in (body.parts[0].html or "")


def test_headings_are_listed_and_can_be_led_to(view_of: ViewOf) -> None:
    body = body_of(view_of, "## Brim & crown\n\n### Brim\n\n## Brim")
    assert [(heading.level, heading.text) for heading in body.headings] == [
        (2, "Brim & crown"),
        (3, "Brim"),
        (2, "Brim"),
    ]
    html = "".join(part.html or "" for part in body.parts)
    for heading in body.headings:
        assert f'<h{heading.level} id="{heading.anchor}">' in html


def test_a_sentence_of_a_plan_that_no_size_needs_is_left_out(view_of: ViewOf) -> None:
    """By hand: right-side rows use 176 rows up; of 177 one is left over, in S alone."""
    grade = "```grade\nsleeve = sleeve_taper(72 st, 156 st, {})\n```\n"
    work = "```work\nCast on 72 sts.\n{sleeve}\n```\n"
    for over, even in (("176 row", []), ("177 (176, 176) row", ["Work 1 row even."])):
        lines = body_of(view_of, grade.format(over) + work).parts[0].lines
        said = [visible(line.text) for line in lines]
        assert [line for line in said if "even" in line] == even


def test_the_way_to_the_instructions_ends_at_the_first_cast_on(view_of: ViewOf) -> None:
    work = "```work\n{}\n```\n"
    body = body_of(
        view_of, "## Notes\n\n" + work.format("Rnd 1: Knit.") + "\n## Hat\n\n" + work.format("Cast on 8 sts.")
    )
    assert [part.anchor for part in body.parts if part.kind == "work"] == ["", body.start]
    assert body_of(view_of, "Only words.").start == ""


def test_a_heading_instructions_at_the_beginning_is_that_of_the_page(view_of: ViewOf) -> None:
    view = view_of("", "## *Instructions*\n\nKnit.\n\n## Instructions\n")
    assert view.own_title == "instructions"
    assert [heading.anchor for heading in view.body.headings] == ["instructions-2"]
    assert (view.body.parts[0].html or "").count("nstructions</h2>") == 1
    assert view_of("", "Knit.\n\n## Instructions\n").own_title == ""
