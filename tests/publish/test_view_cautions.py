"""In: headers of small patterns. Out: the cautions that follow from them, and care as a label has it."""

from collections.abc import Callable
from pathlib import Path

import pytest

from sizewright.draw.yarn_colours import contrast
from sizewright.publish.view import PatternView
from sizewright.read.folder import read_project
from sizewright.read.yarn_fibres import of_animals

ViewOf = Callable[[str, str], PatternView]
TWO = "yarn: {main: {weight: light, colour: COLOUR}, contrast: {weight: light, colour: OTHER}}\n"


def titles(view: PatternView) -> list[str]:
    return [caution.title or caution.text for caution in view.cautions]


def test_a_childs_size_is_cautioned_though_nobody_wrote_it(view_of: ViewOf) -> None:
    """US 16 CFR 1120, 1501 and EU EN 14682 for the garment of a child; the reader is referred to the rules at home."""
    (caution,) = view_of("kind: pullover\nsizes: {2T: {}, Adult: {}}\n", "").cautions
    assert "16 CFR 1120" in caution.source
    assert "No cords" in caution.text
    assert view_of("kind: slipover\nsizes: {2T: {}, Adult: {}}\n", "").cautions == (caution,)  # and not as of slippers
    assert "Rules differ from place to place" in caution.text
    assert titles(view_of("sizes: {S: {}, M: {}}\n", "")) == []
    assert titles(view_of("sizes: {2T: {}}\ncautions: [small-children, Mind the cat.]\n", ""))[1:] == ["Mind the cat."]


@pytest.mark.parametrize(
    ("kind", "said", "unsaid"),
    [
        ("socks", ("Weave ends in",), ("ord", "hood", "neck", "16 CFR 1120", "hats")),
        ("mittens", ("No cord from one mitten", "16 CFR 1120"), ("hood",)),
        ("hat and mittens", ("chin ties", "No cord from one mitten"), ()),
        ("hooded blanket", ("No cords", "16 CFR 1120", "asleep"), ()),
        ("blanket", ("asleep",), ("cords",)),
        ("contraption", ("No cords", "hats", "Weave ends in"), ()),  # nobody knows what it is: all is told
        ("", ("No cords", "hats", "Weave ends in"), ()),
    ],
)
def test_a_child_is_cautioned_by_the_kind_of_piece(
    view_of: ViewOf, kind: str, said: tuple[str, ...], unsaid: tuple[str, ...]
) -> None:
    (caution,) = view_of(
        f"kind: {kind}\nsizes: {{2T: {{}}, Adult: {{}}}}\n" if kind else "sizes: {2T: {}}\n", ""
    ).cautions
    text = f"{caution.text} {caution.source}"
    assert [one for one in said if one not in text] == []
    assert [one for one in unsaid if one in text] == []


@pytest.mark.parametrize(
    ("one", "other", "bleeds"),
    [("navy", "cream", True), ("burgundy", "white", True), ("cream", "natural", False), ("navy", "something", False)],
)
def test_strongly_different_colours_may_bleed(view_of: ViewOf, one: str, other: str, *, bleeds: bool) -> None:
    """Common practice, no source: dark beside light is tried on a white cloth first."""
    shown = titles(view_of(TWO.replace("COLOUR", one).replace("OTHER", other), ""))
    assert ("Colours that bleed" in shown) == bleeds


def test_contrast_is_that_of_the_standard() -> None:
    """WCAG 2.1: black on white is 21 : 1, #777777 on white 4.48 : 1 (the well-known near miss of 4.5)."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#ffffff", "#777777") == pytest.approx(4.48, abs=0.005)
    assert contrast("#123456", "#123456") == 1


@pytest.mark.parametrize(
    ("fibre", "hair"),
    [
        ("100% wool", True),
        ("75 % Merino, 25 % nylon", True),
        ("silk and mohair", True),
        ("100% cotton", False),
        ("wool-free blend of cotton and bamboo", False),
        ("acrylic, no wool", False),
    ],
)
def test_the_hair_of_animals_is_known(view_of: ViewOf, fibre: str, *, hair: bool) -> None:
    assert of_animals(fibre) == hair
    shown = titles(view_of(f'yarn: {{main: {{weight: light, fibre: "{fibre}"}}}}\n', ""))
    assert ("Wool and skin" in shown) == hair


def test_care_is_told_as_a_label_has_it(view_of: ViewOf) -> None:
    """ISO 3758:2012: wash, bleach, dry, iron, professional care; a hand in the tub is at most 40 °C; one dot is 110."""
    care = view_of(
        "care: [Press a little., Do not dry clean, iron low, dry flat, WASH BY HAND, do not bleach]\n", ""
    ).care
    assert care == (
        "Wash by hand, at most 40 °C (on a label: a tub with a hand in it).",
        "Do not bleach (on a label: a triangle, crossed out).",
        "Dry flat (on a label: a square with one level line).",
        "Iron at most at 110 °C (on a label: an iron with one dot).",
        "Do not dry clean (on a label: a circle, crossed out).",
        "Press a little.",
    )


def studio(folder: Path, cautions: str) -> Path:
    (folder / "content").mkdir(exist_ok=True)
    (folder / "content" / "site.yaml").write_text(f"name: S\ncautions:\n{cautions}", encoding="utf-8")
    return folder


def test_a_studio_adds_cautions_of_its_own(view_of: ViewOf, tmp_path: Path) -> None:
    studio(
        tmp_path,
        "  pins: {title: Pins, text: Count them., where: everywhere}\n"
        "  bells: {text: No bells., where: children}\n"
        "  glue: {text: Open a window.}\n"
        "  dye: {title: Our dye, text: It bleeds.}\n",
    )
    assert titles(view_of("", "")) == ["Pins"]
    assert titles(view_of("sizes: {2T: {}}\n", "")) == ["For babies and small children", "Pins", "No bells."]
    assert titles(view_of("cautions: [glue, dye]\n", "")) == ["Open a window.", "Our dye", "Pins"]


@pytest.mark.parametrize(
    ("cautions", "said"),
    [
        ("  pins: {title: Pins}\n", "text"),
        ("  pins: Count them.\n", "pins"),
        ("  pins: {text: Count., where: nowhere}\n", "nowhere"),
        ("  pins: {text: Count., wehre: children}\n", "wehre"),
    ],
)
def test_a_caution_that_is_not_one_is_told(tmp_path: Path, cautions: str, said: str) -> None:
    findings = read_project(studio(tmp_path, cautions)).findings
    assert [said in f"{one.message} {one.mend}" for one in findings if "site.yaml" in str(one.span)] == [True]
