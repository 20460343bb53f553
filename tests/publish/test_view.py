"""In: small patterns. Out: what a page says of them: numbers by size, lines, abbreviations, gauges, sizes, filters."""

import json
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest
from bs4 import BeautifulSoup
from markupsafe import Markup

from sizewright.base.units import LENGTH, STITCHES
from sizewright.grade.graded import Values
from sizewright.proof.proofed import Proofed
from sizewright.publish.card import Card
from sizewright.publish.links import Links, film_address
from sizewright.publish.view import Body, PatternView
from sizewright.publish.view_body import body_view
from sizewright.publish.view_collection import card_views, filters
from sizewright.publish.view_numbers import graded_html, insert_html
from sizewright.publish.view_pattern import pattern_view
from sizewright.publish.view_terms import Terms
from sizewright.read.project import Project

Read = Callable[[str], tuple[Proofed, Project]]
SIZES = "sizes: {S: {head: 50 cm}, M: {head: 55 cm}, L: {head: 60 cm}}\ngauge: {stitches: 20 st / 10 cm}\n"


def view_of(read: Read, header: str = SIZES, body: str = "") -> PatternView:
    proofed, project = read(f"---\ntitle: Trial\n{header}---\n{body}\n")
    links = Links("../")
    return pattern_view(proofed.graded, project, links, Terms.of(project, links))


def body_of(read: Read, body: str, header: str = SIZES) -> Body:
    return view_of(read, header, body).body


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


def test_more_sizes_than_are_prepared_have_classes_too() -> None:
    html = graded_html([str(number) for number in range(70)], range(70))
    assert visible(html, 69) == "69"


# --------------------------------------------------------------------------------------------------------------- lines


def lines_of(read: Read, *lines: str) -> list[tuple[str, str, str]]:
    body = body_of(read, "```grade\nleft = 88 st\nlist = 1 (2, 3) st\n```\n```work\n" + "\n".join(lines) + "\n```")
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
def test_the_label_of_a_row_stands_apart(read_pattern: Read, line: str, label: str) -> None:
    ((seen, text, count),) = lines_of(read_pattern, line)
    assert (seen, f"{seen} {text}".strip(), count) == (label, line, "")


@pytest.mark.parametrize(
    ("line", "count"),
    [
        ("Rnd 1: K to end. (88 sts)", "(88 sts)"),
        ("Rnd 1: K to end. [88 sts]", "[88 sts]"),
        ("Rnd 1: K to end. (8 sts decreased)", "(8 sts decreased)"),
        ("Rnd 1: K to end. 88 sts.", "88 sts."),
        ("Rnd 1: K to end. ({left} sts)", "(88 sts)"),
        ("Rnd 1: K to end. ({list} sts)", "(1 (2, 3) sts)"),
        ("Rnd 1: K to end. (4 (5, 6) sts)", "(4 (5, 6) sts)"),
        ("Rnd 1: K to end—88 sts.", ""),
        ("Cast on 88 sts.", ""),
        ("Rnd 1: K to last 3 sts, k3.", ""),
        ("Rnd 1: Join (do not twist the sts).", ""),
    ],
)
def test_a_count_at_the_end_stands_apart(read_pattern: Read, line: str, count: str) -> None:
    # Style rule 9a: a count must look unlike instructions (fiatfiberarts.com 2019).
    ((_, text, seen),) = lines_of(read_pattern, line)
    assert seen == count
    assert not count or "sts" not in text


def test_signs_of_html_in_a_line_stay_signs(read_pattern: Read) -> None:
    ((_, text, _),) = lines_of(read_pattern, "Work <b>even</b> & *k2; rep from *.")
    assert text == "Work <b>even</b> & *k2; rep from *."


def test_signs_that_stand_for_numbers_inside_cannot_be_smuggled_in(read_pattern: Read) -> None:
    ((_, text, _),) = lines_of(read_pattern, "Work \U000f0000{left}\U000f0005 sts even.")
    assert text == "Work 88 sts even."


# ---------------------------------------------------------------------------------------------------------------- body


def test_a_passage_is_for_its_sizes_and_says_so(read_pattern: Read) -> None:
    body = body_of(read_pattern, "::: sizes M, L\nOnly the larger.\n:::\n\nEverybody.")
    html = "".join(part.html or "" for part in body.parts)
    assert visible(html) == "M and L only Only the larger. Everybody."
    assert visible(html, 0) == "Everybody."
    assert visible(html, 2) == "Only the larger. Everybody."


def test_what_could_not_be_worked_out_is_marked(read_pattern: Read) -> None:
    proofed, _ = read_pattern(f"---\ntitle: T\n{SIZES}---\nWork {{gone + 1}} sts.\n")
    body = body_view(proofed.graded.pattern, {}, Links(""), metric_first=True)
    assert '<mark class="missing">gone + 1</mark>' in (body.parts[0].html or "")


def test_headings_are_listed_and_can_be_led_to(read_pattern: Read) -> None:
    body = body_of(read_pattern, "## Brim & crown\n\n### Brim\n\n## Brim")
    assert [(heading.level, heading.text) for heading in body.headings] == [
        (2, "Brim & crown"),
        (3, "Brim"),
        (2, "Brim"),
    ]
    html = "".join(part.html or "" for part in body.parts)
    for heading in body.headings:
        assert f'<h{heading.level} id="{heading.anchor}">' in html


# --------------------------------------------------------------------------------------------------------------- terms


def used(read: Read, body: str) -> list[str]:
    return [term.term for term in view_of(read, SIZES, body).terms]


@pytest.mark.parametrize(
    ("line", "terms"),
    [
        ("K2tog.", ["k2tog"]),
        ("K2.", ["k"]),
        ("*K2, p2; rep from *.", ["k", "p", "rep"]),
        ("Ssk, yo.", ["ssk", "yo"]),
        ("Cast on.", ["CO"]),
        ("W&T.", ["w&t"]),
        ("Kind regards, unknit, k2togs.", []),
    ],
)
def test_only_abbreviations_that_occur_are_listed_the_longest_spelling_first(
    read_pattern: Read, line: str, terms: list[str]
) -> None:
    assert used(read_pattern, f"```work\n{line}\n```") == terms


def test_a_letter_in_running_text_is_no_abbreviation_and_a_word_is(read_pattern: Read) -> None:
    assert used(read_pattern, "Plan K, p and m. Slip the yo.") == ["yo"]


def test_an_attribute_of_markup_is_no_word_of_the_text(read_pattern: Read) -> None:
    assert used(read_pattern, "[elsewhere](https://yo.example/ssk)") == []


# --------------------------------------------------------------------------------------------------- gauges, yarn, size


@pytest.mark.parametrize(
    ("gauge", "said"),
    [
        # 4 in are 10.16 cm (2.54 cm to the inch, 16 CFR 500.19(a)): never taken for 10 cm.
        ("{stitches: 22 st / 10 cm, rows: 30 rnd / 10 cm}", "22 sts and 30 rnds over 10 cm"),
        ("{stitches: 18 st / 4 in, rows: 24 row / 4 in}", "18 sts and 24 rows over 4 in (10.16 cm)"),
        ("{stitches: 18 st / 4 in, rows: 24 row / 10 cm}", "18 sts over 4 in (10.16 cm), 24 rows over 10 cm"),
        ("{stitches: 5 1/2 st / 1 in}", "5½ sts over 1 in (2.54 cm)"),
        ("{stitches: 22.5 st / 10 cm}", "22.5 sts over 10 cm"),
        ("{rows: 30 row / 10 cm}", "30 rows over 10 cm"),
    ],
)
def test_a_gauge_says_what_it_is_counted_over(read_pattern: Read, gauge: str, said: str) -> None:
    (seen,) = view_of(read_pattern, f"gauge: {gauge}\n").gauges
    assert seen.counts == said


def test_several_gauges_have_names(read_pattern: Read) -> None:
    header = "gauge: {body: {stitches: 20 st / 10 cm}, lower_rib: {stitches: 24 st / 10 cm, needle: 3 mm}}\n"
    assert [(gauge.name, gauge.needle) for gauge in view_of(read_pattern, header).gauges] == [
        ("Body", ""),
        ("Lower rib", "3 mm"),
    ]


def test_yarn_is_in_metres_yards_grams_and_ounces(read_pattern: Read) -> None:
    # 0.9144 m to the yard, 28.3495 g to the ounce (16 CFR 500.19(a)): 105 m = 114.8 yd, 50 g = 1.76 oz.
    header = "yarn: {weight: light, fibre: wool, length: 105 m, mass: 50 g}\n"
    (yarn,) = view_of(read_pattern, header).yarns
    assert (yarn.weight, yarn.facts) == ("light", ("wool", "105 m / 115 yd per 50 g / 1.76 oz"))


def test_the_table_of_sizes_has_body_finished_and_ease(read_pattern: Read) -> None:
    header = SIZES + "finished: [{label: Brim, value: head - 5 cm, body: head}, {label: Depth, value: 20 cm}]\n"
    table = view_of(read_pattern, header).table
    assert table is not None
    assert [(group.label, [column.label for column in group.columns]) for group in table.groups] == [
        ("Brim", ["To fit head", "Finished", "Ease"]),
        ("Depth", ["Finished"]),
    ]
    # 55 cm = 21.65 in, 50 cm = 19.69 in, 5 cm = 1.97 in, 20 cm = 7.87 in, each to the nearest quarter.
    cells = [visible(cell) for cell in table.rows[1].cells]
    assert cells == ["55 cm 21¾ in", "50 cm 19¾ in", "−5 cm −2 in", "20 cm 7¾ in"]
    assert table.has_ease


def test_a_body_measurement_that_is_compared_with_nothing_is_shown_all_the_same(read_pattern: Read) -> None:
    table = view_of(read_pattern, "sizes: {S: {hand: 18 cm}, M: {}, L: {hand: 20 cm}}\n").table
    assert table is not None
    assert [visible(row.cells[0]) for row in table.rows] == ["18 cm 7 in", "–", "20 cm 7¾ in"]
    assert (table.groups[0].label, table.groups[0].columns[0].label) == ("Hand", "To fit")


def test_a_pattern_of_one_size_has_a_table_of_one_row_and_no_choice(read_pattern: Read) -> None:
    view = view_of(read_pattern, "finished: [{label: Width, value: 30 cm}]\n")
    assert view.sizes == ()
    assert view.table is not None
    assert [row.size.name for row in view.table.rows] == ["One size"]
    assert view_of(read_pattern, "skill: easy\n").table is None


def test_sizes_have_words_for_an_address_that_no_two_share(read_pattern: Read) -> None:
    view = view_of(read_pattern, "sizes: {Adult M: {}, adult-m: {}, All: {}, '6 (8)': {}}\n")
    assert [size.key for size in view.sizes] == ["adult-m", "adult-m-2", "all-3", "6-8"]


def test_cautions_have_their_source_and_the_designers_own_have_none(read_pattern: Read) -> None:
    view = view_of(read_pattern, "cautions: [small-children, Mind the cat.]\n")
    assert [(bool(caution.title), bool(caution.source)) for caution in view.cautions] == [(True, True), (False, False)]
    assert "16 CFR 1501" in view.cautions[0].source
    assert view.cautions[1].text == "Mind the cat."


# --------------------------------------------------------------------------------------------------------------- links


@pytest.mark.parametrize(
    ("source", "href"),
    [
        ("https://elsewhere.example/a?b=1", "https://elsewhere.example/a?b=1"),
        ("mailto:a@b.example", "mailto:a@b.example"),
        ("#brim", "#brim"),
        ("pages/about.md", "../about.html"),
        ("patterns/a hat.md#brim", "../patterns/a%20hat.html#brim"),
        ("techniques/a#b.md", "../techniques/a.html#b.md"),
        ("javascript:alert(1)", ""),
        ("JAVASCRIPT:alert(1)", ""),
        ("data:text/html,x", ""),
        ("file:///etc/passwd", ""),
        ("//elsewhere.example/", ""),
    ],
)
def test_a_link_leads_where_it_may(source: str, href: str) -> None:
    assert Links("../").followed(source) == href


def test_on_paper_a_link_is_a_full_address_or_only_words() -> None:
    at = Links("../", "https://rook.example/knits/", paper=True)
    assert at.followed("pages/about.md#us") == "https://rook.example/knits/about.html#us"
    assert Links("../", paper=True).followed("pages/about.md#us") == ""
    assert at.media("a b.svg") == "../media/a%20b.svg"


def test_a_film_begins_at_its_second() -> None:
    # W3C Media Fragments URI 1.0, section 4.2.1: "#t=10" begins at the tenth second.
    assert film_address("https://films.example/a", 85) == "https://films.example/a#t=85"
    assert film_address("https://films.example/a", 0) == "https://films.example/a"
    assert film_address("https://films.example/a#x", 85) == "https://films.example/a#x"


# ---------------------------------------------------------------------------------------- cards and the collection

HAT = Card("hat", "Hat", kind="Hat", published="2026-01-02", sizes=("S", "M", "L"), weights=("light", "fine"))
SOCK = Card("sock", "Sock", kind="sock", published="2026-01-03", sizes=("Baby", "M", "XL"), weights=("super fine",))
RUG = Card("rug", "A rug", published="2026-01-02")


def test_a_card_comes_back_from_json() -> None:
    for card in (HAT, replace(SOCK, alt="a “b” <c>", techniques=("x",)), RUG):
        assert Card.from_json(json.loads(json.dumps(card.as_json()))) == card


@pytest.mark.parametrize(
    "wrong",
    [
        None,
        [],
        {},
        {**HAT.as_json(), "title": 3},
        {**HAT.as_json(), "sizes": "S"},
        {**HAT.as_json(), "sizes": [1]},
        {**HAT.as_json(), "published": "yesterday"},
        {**HAT.as_json(), "name": ""},
    ],
)
def test_what_is_no_card_is_refused(wrong: object) -> None:
    with pytest.raises(ValueError, match=r"."):
        Card.from_json(wrong)


def test_the_collection_is_newest_first_then_by_title() -> None:
    assert [view.card.name for view in card_views([HAT, RUG, SOCK], Links(""))] == ["sock", "rug", "hat"]


def test_filters_ask_by_kind_size_and_yarn_weight() -> None:
    asked = filters(card_views([HAT, SOCK, RUG], Links("")))
    found = {one.name: [choice.text for choice in one.choices] for one in asked}
    assert found["kind"] == ["Hat", "sock"]
    assert found["weight"] == ["super fine", "fine", "light"]  # from thin to thick: Craft Yarn Council 1, 2, 3
    order = found["size"]
    assert set(order) == {"S", "M", "L", "Baby", "XL", "One size"}
    for sizes in (HAT.sizes, SOCK.sizes):
        assert sorted(sizes, key=order.index) == list(sizes)


def test_a_question_with_one_answer_is_not_asked() -> None:
    assert filters(card_views([HAT], Links("")))[0].name == "size"
    assert filters(card_views([RUG], Links(""))) == ()


def test_markup_is_only_what_the_program_made(read_pattern: Read) -> None:
    view = view_of(read_pattern, SIZES + "summary: <b>bold</b>\nnotions: ['<i>x</i>']\n")
    assert not isinstance(view.summary, Markup)
    assert not any(isinstance(text, Markup) for text in view.notions)
