"""In: the sample patterns. Out: their print pages and data files: whole, exact, and leading nowhere on disk."""

import json
from dataclasses import replace

from bs4 import BeautifulSoup

from sizewright.proof.proofed import Proofed
from sizewright.publish.card import Card
from sizewright.publish.pages import data_page
from sizewright.publish.paper_page import paper_page
from sizewright.publish.theme import Theme
from sizewright.read.project import Project


def test_the_data_file_has_every_number_exact(sample_proofed: tuple[Proofed, ...], sample_project: Project) -> None:
    hat = next(one for one in sample_proofed if one.graded.pattern.name == "hat")
    told = json.loads(data_page(hat, sample_project))
    assert told["sizes"] == ["Small", "Adult M", "Adult L"]
    quantities = {quantity["name"]: quantity for quantity in told["quantities"]}
    # 22 1/4 in = 56.515 cm (2.54 cm to the inch, 16 CFR 500.19(a)), less 2.5 cm.
    assert quantities["around"] == {"name": "around", "unit": "cm", "values": ["91/2", "10803/200", "115/2"]}
    # 45.5, 54.015 and 57.5 cm at 2.2 sts/cm are 100.1, 118.833 and 126.5 sts: the nearest multiples of 4.
    assert quantities["cast_on"]["values"] == ["100", "120", "128"]
    assert told["finished"][0]["ease"] == ["-5/2"] * 3
    assert told["finished"][0]["body"] == "head"
    assert told["finished"][1] == {
        "label": "Depth",
        "unit": "cm",
        "values": ["20", "22", "23"],
        "body": None,
        "ease": None,
    }
    assert Card.from_json(told["card"]) == Card.of(hat)


def test_the_print_page_is_whole_and_leads_to_the_web(
    sample_proofed: tuple[Proofed, ...], sample_project: Project, sample_theme: Theme
) -> None:
    hat = next(one for one in sample_proofed if one.graded.pattern.name == "hat")
    page = BeautifulSoup(paper_page(hat, sample_project, sample_theme), "html.parser")
    assert page.title is not None
    assert page.title.get_text() == 'Hat <one> & "two"'
    assert not page.select("script, link, form")
    styled = [style.get_text() for style in page.select("style")]
    assert len(styled) == 1, "the words that the style sheets write, and no choice of a size"
    assert '--page-number: "Page " counter(page) " of " counter(pages)' in styled[0]
    for link in page.select("a[href]"):
        address = str(link["href"])
        assert address.startswith("https://") or page.select(f'[id="{address[1:]}"]'), address
    assert all(image["alt"] for image in page.select("img"))
    text = " ".join(page.get_text().replace("\u00a0", " ").split())
    assert "stand in this order: Small (Adult M, Adult L). One number alone is for every size." in text
    assert "100 (120, 128) sts" in text


def test_the_print_page_of_a_studio_without_address_has_no_links_out(
    sample_proofed: tuple[Proofed, ...], sample_project: Project, sample_theme: Theme
) -> None:
    nowhere = replace(sample_project, studio=replace(sample_project.studio, address=""))
    for proofed in sample_proofed:
        page = BeautifulSoup(paper_page(proofed, nowhere, sample_theme), "html.parser")
        links = [str(link["href"]) for link in page.select("a[href]")]
        assert [link for link in links if not link.startswith(("#", "https://elsewhere.example/"))] == []
