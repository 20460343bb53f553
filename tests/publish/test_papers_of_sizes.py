"""In: the demo's patterns, printed for each of their sizes. Out: what that size reads on the page, and nothing else.

The print page for all sizes, with every element of another size taken out as a browser would hide it, is what a page
for one size is held against: the two are made in different ways.
"""

import re
from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest
from lxml import html as markup  # type: ignore[import-untyped]

from sizewright.proof.proofed import Proofed
from sizewright.proof.run import proof
from sizewright.publish.editions import ALL_SIZES, editions
from sizewright.publish.for_size import tells_of_others
from sizewright.publish.paper_page import PaperPages
from sizewright.publish.theme import Theme
from sizewright.read.project import PaperChoice, Project

Element = Any  # of lxml, which has no types
DEMO = Path(__file__).parents[2] / "content/patterns"
NAMES = sorted(path.stem for path in DEMO.glob("*.md") if "." not in path.stem)  # not the translations


@pytest.fixture(scope="module")
def demo(demo_project: Project) -> Project:
    return demo_project


@pytest.fixture(scope="module")
def theme(repository: Path) -> Theme:
    return Theme.find("studio", repository)


@pytest.fixture(params=NAMES)
def proofed(request: pytest.FixtureRequest, demo: Project) -> Proofed:
    return proof(next(pattern for pattern in demo.patterns if pattern.name == request.param), demo)


def left_for(every: Element, place: int) -> Element:
    """The page for all sizes as the reader of one sees it: what is another's, or all sizes', is taken out."""
    tree = deepcopy(every)
    for element in tree.xpath("//*[contains(@class, 'z')]"):
        classes = (element.get("class") or "").split()
        if "zp" in classes or ("z" in classes and f"z{place}" not in classes):
            element.drop_tree()
    return tree


def words(tree: Element) -> str:
    """What is read in the instructions; a drawing is measured by the table beside it."""
    (part,) = tree.xpath("//section[contains(@class, 'instructions')]")
    for drawing in part.xpath(".//*[local-name()='svg']"):
        drawing.drop_tree()
    return " ".join(part.text_content().split())


def everything(page: str) -> str:
    """Every word of a page, those of its head, of its drawings and those that stand for pictures among them."""
    tree = markup.fromstring(page)
    told = [tree.text_content()]
    for element in tree.iter(markup.etree.Element):
        told += [element.get(name) or "" for name in ("alt", "title", "aria-label", "content", "data-label")]
    return " ".join(told)


def numbers(text: str) -> set[str]:
    return set(re.findall(r"\d+(?:\.\d+)?|[¼½¾⅛]", text))


def foreign(every: Element, z: str, left: Element) -> set[str]:
    """The numbers that only other sizes are given."""
    has = "contains(concat(' ', @class, ' '), ' {} ')"
    others = every.xpath(f"//*[{has.format('z')}][not({has.format(z)})]")
    return {number for one in others for number in numbers(one.text_content())} - numbers(left.text_content())


def loose_ends(page: str) -> list[str]:
    """The links within a page that lead nowhere; each would refuse its PDF."""
    tree = markup.fromstring(page)
    return [
        href for href in tree.xpath("//a/@href[starts-with(., '#')]") if not tree.xpath("//*[@id=$at]", at=href[1:])
    ]


def test_a_size_is_told_what_is_its_own_and_no_more(proofed: Proofed, demo: Project, theme: Theme) -> None:
    """Its instructions are those of the page. No number that only others have, and no name of another, is anywhere."""
    pages = PaperPages(proofed, demo, theme)
    every = markup.fromstring(pages.page(ALL_SIZES))
    names = set(proofed.graded.pattern.size_names)
    for edition in editions(proofed.graded.pattern, PaperChoice()):
        assert loose_ends(pages.page(edition)) == [], edition
        if edition.size is None or edition.place is None:
            continue
        page, left = pages.page(edition), left_for(every, edition.place)
        if not edition.large:
            assert words(markup.fromstring(page)) == words(left), edition.size
        told = everything(page)
        assert not foreign(every, edition.size.z, left) & numbers(told), edition
        rest = told.replace(edition.size.name, " ")
        found = [name for name in names - {edition.size.name} if re.search(rf"(?<!\w){re.escape(name)}(?!\w)", rest)]
        assert found == [], edition


@pytest.mark.parametrize(
    ("text", "others"),
    [
        ("Round 4: k2tog, not ssk.", False),
        ("Adult: the crown is 7 cm (2 3/4 in) high.", False),
        ("Large adult: round 4.", True),
        ("An adult may be large.", False),
        ("Cast on 72 (80, 88) sts.", True),
        ("It is 4 (4½) cm.", True),
    ],
)
def test_words_that_tell_of_other_sizes(text: str, *, others: bool) -> None:
    assert tells_of_others(text, "Adult", ("Child", "Adult", "Large adult")) is others
