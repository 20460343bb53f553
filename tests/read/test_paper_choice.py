"""In: `papers` of `site.yaml`, right and wrong. Out: which PDFs a site has, or what is wrong with the words."""

import pytest

from sizewright.base.place import Lines
from sizewright.read.project import PaperChoice, Sheet, Studio
from sizewright.read.studio import read_studio
from sizewright.read.values import Values

A4, LETTER = Sheet.A4, Sheet.LETTER


def read(text: str) -> tuple[Studio, list[str]]:
    values = Values(Lines("content/site.yaml", text))
    studio = read_studio(values)
    return studio, [f"{finding.message} {finding.mend}" for finding in values.findings]


@pytest.mark.parametrize(
    ("text", "choice"),
    [
        ("name: Rook", PaperChoice((A4, LETTER), each_size=True, large_print=True)),
        ("units: metric", PaperChoice((A4, LETTER))),
        ("units: imperial", PaperChoice((LETTER, A4))),
        ("papers: {each_size: no}", PaperChoice((A4, LETTER), each_size=False)),
        ("units: imperial\npapers: {large_print: no}", PaperChoice((LETTER, A4), large_print=False)),
        ("units: imperial\npapers: {sheets: a4}", PaperChoice((A4,))),
        ("papers: {sheets: [letter, a4], each_size: yes}", PaperChoice((LETTER, A4))),
    ],
)
def test_what_is_chosen(text: str, choice: PaperChoice) -> None:
    studio, findings = read(text)
    assert (studio.papers, findings) == (choice, [])


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("papers: yes", "“papers” takes keys and values."),
        ("papers: {sheets: [a5]}", "“a5” is no value of “sheets”."),
        ("papers: {sheets: []}", "“sheets” names no sheet."),
        ("papers: {sheets: [a4, a4]}", "“a4” stands twice in “sheets”."),
        ("papers: {each_size: perhaps}", "“perhaps” is no value of “each_size”."),
        ("papers: {large_print: [yes]}", "“large_print” takes one text."),
        ("papers: {large: yes}", "“large” is not a key of this place."),
    ],
)
def test_what_is_wrong_is_said(text: str, words: str) -> None:
    _, findings = read(text)
    assert len(findings) == 1
    assert findings[0].startswith(words)
