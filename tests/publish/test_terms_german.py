"""The abbreviations of instructions in German: listed, marked and explained where they occur in the German lines.

What they mean is common practice among knitters, from memory, without a source.
"""

import re
from dataclasses import replace

import pytest

from sizewright.base.language import language, speaking
from sizewright.proof.run import proof
from sizewright.publish.in_language import telling
from sizewright.publish.links import Links
from sizewright.publish.view import PatternView
from sizewright.publish.view_pattern import pattern_view
from sizewright.publish.view_terms import Terms
from sizewright.read.notation.printed_stitches import stitch_name
from sizewright.read.notation.stitches import STITCHES
from sizewright.read.project import Project
from sizewright.read.terms import TERMS, terms_in
from sizewright.read.translating.told import in_language, shared_in

GERMAN = language("de")
# Abbreviations among German words: they are no words by themselves.
SHORT = re.compile(r"(?<![\w-])(?:M|MM|R|Rd|U|HF|KF|Hinr|Rückr|re|li|str|zus-str|wdh|verschr|abh|zun|abn)(?![\w-])")


@pytest.fixture(scope="module")
def socks(demo_project: Project) -> PatternView:
    """The socks of the demo as their German page shows them."""
    pattern = next(one for one in demo_project.patterns if one.name == "greenhow-socks")
    worked = proof(pattern, demo_project).worked
    told = replace(worked, graded=replace(worked.graded, pattern=in_language(pattern, "de")))
    links = Links("../")
    with speaking(GERMAN), telling(told.graded.pattern):
        shared = shared_in(demo_project, "de")
        return pattern_view(told, shared, links, Terms.of(shared, links))


def test_every_abbreviation_of_the_lines_is_listed(socks: PatternView) -> None:
    lines = " ".join(f"{line.label} {line.text} {line.count}" for part in socks.body.parts for line in part.lines)
    used = set(SHORT.findall(re.sub(r"<[^>]*>", "", lines)))
    assert {"M", "MM", "R", "Rd", "re", "li", "zus-str", "wdh", "abh", "Hinr", "Rückr"} <= used
    listed = {spelling for term in socks.terms for spelling in (term.term, *term.spellings)}
    assert used - listed <= {"zus-str"}  # which stands in the names of stitches alone, and they are listed


def test_they_are_marked_in_the_lines_and_open_their_meaning(socks: PatternView) -> None:
    lines = "".join(line.text for part in socks.body.parts for line in part.lines)
    lines = re.sub(r"</?span[^>]*>", "", lines)
    marked = re.findall(r'popovertarget="told--term-([^"]*)">([^<]*)<', lines)
    assert ("2-m-uberz-zus-str", "2 M überz zus-str") in marked
    assert ("wdh", "wdh") in marked
    meanings = {term.anchor: term.meaning for term in socks.terms}
    assert meanings["term-wdh"] == "wiederholen"
    assert "nach links geneigt" in meanings["term-2-m-uberz-zus-str"]


def test_capitals_tell_a_marker_from_a_millimetre(socks: PatternView) -> None:
    text = "".join(str(part.html) for part in socks.body.parts)
    assert not re.search(r'<button[^>]*told--term-mm"[^>]*>mm<', text)
    assert "MM" in {term.term for term in socks.terms}


def test_a_stitch_is_found_by_its_english_name_too() -> None:
    """So that a technique that says what it explains by the word of the source is found."""
    found = {spelling for term in terms_in("de") for spelling in term.spellings}
    assert {"k2tog", "ssk", "m1l", "m1r", "kfb", "sk2p", "yo"} <= found


def test_a_language_without_terms_has_those_of_english() -> None:
    assert terms_in("fr") is TERMS


def test_every_stitch_is_told_in_words_that_are_explained() -> None:
    """The names the printer has for stitches are made of listed abbreviations and plain German words."""
    plain = {"nach", "bilden", "Noppe", "1", "2", "3"}
    listed = {word for term in terms_in("de") for spelled in (term.term, *term.spellings) for word in spelled.split()}
    with speaking(GERMAN):
        for stitch in STITCHES:
            words = "".join(map(str, stitch_name(stitch))).split()
            assert {word.casefold() for word in words} <= {word.casefold() for word in listed | plain}, words
