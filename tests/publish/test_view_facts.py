"""In: small patterns. Out: what a page says of their abbreviations, gauges, yarns, sizes and cautions."""

from collections.abc import Callable
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from markupsafe import Markup

from sizewright.publish.view import PatternView

ViewOf = Callable[[str, str], PatternView]
SIZES = "sizes: {S: {head: 50 cm}, M: {head: 55 cm}, L: {head: 60 cm}}\ngauge: {stitches: 20 st / 10 cm}\n"


def said(html: str) -> str:
    return BeautifulSoup(html, "html.parser").get_text().replace("\u00a0", " ")


# --------------------------------------------------------------------------------------------------------------- terms


def used(view_of: ViewOf, body: str) -> list[str]:
    return [term.term for term in view_of(SIZES, body).terms]


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
    view_of: ViewOf, line: str, terms: list[str]
) -> None:
    assert used(view_of, f"```work\n{line}\n```") == terms


def test_a_letter_in_running_text_is_no_abbreviation_and_a_word_is(view_of: ViewOf) -> None:
    assert used(view_of, "Plan K, p and m. Slip the yo.") == ["yo"]


def test_an_attribute_of_markup_is_no_word_of_the_text(view_of: ViewOf) -> None:
    assert used(view_of, "[elsewhere](https://yo.example/ssk)") == []


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
def test_a_gauge_says_what_it_is_counted_over(view_of: ViewOf, gauge: str, said: str) -> None:
    (seen,) = view_of(f"gauge: {gauge}\n", "").gauges
    assert seen.counts == said


def test_several_gauges_have_names(view_of: ViewOf) -> None:
    header = "gauge: {body: {stitches: 20 st / 10 cm}, lower_rib: {stitches: 24 st / 10 cm, needle: 3 mm}}\n"
    assert [(gauge.name, said(gauge.needle)) for gauge in view_of(header, "").gauges] == [
        ("Body", ""),
        ("Lower rib", "3 mm (US 2.5, UK 11)"),
    ]


@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        # The published table: 4 mm is US 6 and UK 8, 3.5 mm US 4, 5 mm US 8 and UK 6 (sources in base/needle_sizes.py).
        ("4 mm circular needle, 40 cm long", "4 mm (US 6, UK 8) circular needle, 40 cm long"),
        ("3.5 mm or 4.0mm needles", "3.5 mm (US 4) or 4 mm (US 6, UK 8) needles"),
        ("US 6", "4 mm (US 6, UK 8)"),
        ("UK 8 needles", "4 mm (US 6, UK 8) needles"),
        ("US size 6 / 4 mm", "4 mm (US 6, UK 8)"),
        ("4 mm (US 6) needles", "4 mm (US 6, UK 8) needles"),
        ("US 10½ (6.5 mm)", "6.5 mm (US 10.5, UK 3)"),
        ("size 8 (5 mm) needles", "5 mm (US 8, UK 6) needles"),
        ("Circular needle (4 mm)", "Circular needle (4 mm, US 6, UK 8)"),
        ("Set of 5 dpns, UK 000", "Set of 5 dpns, 10 mm (US 15, UK 000)"),
        # What is no one sure size stays as typed: no table, sources that differ, several, a hook, contradictions.
        ("2.6 mm", "2.6 mm"),
        ("12.75 mm (US 17)", "12.75 mm (US 17)"),
        ("2.5 mm (US 1)", "2.5 mm (US 1)"),
        ("3.5 to 4 mm", "3.5 to 4 mm"),
        ("3,5 mm", "3,5 mm"),
        ("US 6 or 7", "US 6 or 7"),
        ("US 1", "US 1"),
        ("4 mm (US 7)", "4 mm (US 7)"),
        ("4 mm (US 6 in my hand)", "4 mm (US 6 in my hand)"),
        ("4 mm crochet hook", "4 mm crochet hook"),
        ("the size that gives the gauge", "the size that gives the gauge"),
    ],
)
def test_needles_are_in_millimetres_with_their_published_labels(view_of: ViewOf, typed: str, printed: str) -> None:
    view = view_of(f"needles: ['{typed}']\ngauge: {{stitches: 22 st / 10 cm, needle: '{typed}'}}\n", "")
    assert tuple(map(said, view.needles)) == (printed,)
    assert said(view.gauges[0].needle) == printed


def test_yarn_is_in_metres_yards_grams_and_ounces(view_of: ViewOf) -> None:
    # 0.9144 m to the yard, 28.3495 g to the ounce (16 CFR 500.19(a)): 105 m = 114.8 yd, 50 g = 1.76 oz.
    header = "yarn: {weight: light, fibre: wool, length: 105 m, mass: 50 g}\n"
    (yarn,) = view_of(header, "").yarns
    assert (yarn.weight, tuple(map(said, yarn.facts))) == ("light", ("wool", "105 m / 115 yd per 50 g / 1.76 oz"))


def test_the_table_of_sizes_has_body_finished_and_ease(view_of: ViewOf) -> None:
    header = SIZES + "finished: [{label: Brim, value: head - 5 cm, body: head}, {label: Depth, value: 20 cm}]\n"
    table = view_of(header, "").table
    assert table is not None
    assert [(group.label, [column.label for column in group.columns]) for group in table.groups] == [
        ("Brim", ["To fit head", "Finished", "Ease"]),
        ("Depth", ["Finished"]),
    ]
    # 55 cm = 21.65 in, 50 cm = 19.69 in, 5 cm = 1.97 in, 20 cm = 7.87 in, each to the nearest quarter.
    cells = [said(cell) for cell in table.rows[1].cells]
    assert cells == ["55 cm 21¾ in", "50 cm 19¾ in", "−5 cm −2 in", "20 cm 7¾ in"]
    assert table.has_ease


def test_a_body_measurement_that_is_compared_with_nothing_is_shown_all_the_same(view_of: ViewOf) -> None:
    table = view_of("sizes: {S: {hand: 18 cm}, M: {}, L: {hand: 20 cm}}\n", "").table
    assert table is not None
    assert [said(row.cells[0]) for row in table.rows] == ["18 cm 7 in", "–", "20 cm 7¾ in"]
    assert (table.groups[0].label, table.groups[0].columns[0].label) == ("Hand", "To fit")


def test_the_finished_measurements_stand_before_those_of_the_body_alone(view_of: ViewOf) -> None:
    header = "sizes: {S: {wrist: 15 cm, chest: 80 cm}}\nfinished: [{label: Chest, value: chest + 6 cm, body: chest}]\n"
    table = view_of(header, "{wrist}").table
    assert table is not None
    assert [group.label for group in table.groups] == ["Chest", "Wrist"]


def test_of_a_shared_table_only_what_the_pattern_goes_by_is_shown(view_of: ViewOf, tmp_path: Path) -> None:
    table = tmp_path / "content" / "sizes" / "bodies.yaml"
    table.parent.mkdir(parents=True)
    sizes = "{S: {chest: 80 cm, arm: 28 cm, hip: 88 cm}, M: {chest: 90 cm, arm: 30 cm}}"
    table.write_text(f"title: A\nsource: invented\nsizes: {sizes}\n", encoding="utf-8")
    view = view_of("table: bodies\nsizes: {S: {}, M: {neck: 38 cm}}\n", "{chest / 2}")
    assert view.table is not None
    assert [group.label for group in view.table.groups] == ["Chest", "Neck"]


def test_a_pattern_of_one_size_has_a_table_of_one_row_and_no_choice(view_of: ViewOf) -> None:
    view = view_of("finished: [{label: Width, value: 30 cm}]\n", "")
    assert view.sizes == ()
    assert view.table is not None
    assert [row.size.name for row in view.table.rows] == ["One size"]
    assert view_of("skill: easy\n", "").table is None


def test_sizes_have_words_for_an_address_that_no_two_share(view_of: ViewOf) -> None:
    view = view_of("sizes: {Adult M: {}, adult-m: {}, All: {}, '6 (8)': {}}\n", "")
    assert [size.key for size in view.sizes] == ["adult-m", "adult-m-2", "all-3", "6-8"]


def test_cautions_have_their_source_and_the_designers_own_have_none(view_of: ViewOf) -> None:
    view = view_of("cautions: [small-children, Mind the cat.]\n", "")
    assert [(bool(caution.title), bool(caution.source)) for caution in view.cautions] == [(True, True), (False, False)]
    assert "16 CFR 1501" in view.cautions[0].source
    assert view.cautions[1].text == "Mind the cat."


def test_markup_is_only_what_the_program_made(view_of: ViewOf) -> None:
    view = view_of(SIZES + "summary: <b>bold</b>\nnotions: ['<i>x</i>']\n", "")
    assert not isinstance(view.summary, Markup)
    assert not any(isinstance(text, Markup) for text in view.notions)


@pytest.mark.parametrize(
    ("kind", "said", "unsaid"),
    [
        ("Pullover", "hood", "sleep"),
        ("hat", "sleep", "hood"),
        ("mittens", "Weave ends", "hood"),
        ("washcloth", "small parts", "hood"),
        ("pouch", "hood", "nothing left out"),  # an unknown kind is told everything
    ],
)
def test_the_caution_for_children_fits_the_kind_of_piece(view_of: ViewOf, kind: str, said: str, unsaid: str) -> None:
    (caution,) = view_of(f"kind: {kind}\ncautions: [small-children]\n", "").cautions
    assert said in caution.text
    assert unsaid not in caution.text
    assert "16 CFR 1501" in caution.source
    assert "Rules differ from place to place" in caution.text
