"""In: pages, techniques and translations that accept a finding. Out: what is left, and what is accepted, with why."""

from pathlib import Path

import pytest

from sizewright.proof.run import elsewhere, proof
from sizewright.read.folder import read_project

SITE = "name: Rook & Thorn\ndescription: Two hats.\nlanguages: [en, de]\n"
SITE_DE = "<!-- Rook & Thorn -->\nRook & Thorn\n\n<!-- Two hats. -->\nZwei Mützen.\n"
PAGE = "---\ntitle: Hours\n---\n\nThe shop opens at 7 pm.\n"
PAGE_DE = "<!-- Hours -->\nZeiten\n\n<!-- The shop opens at 7 pm. -->\nDer Laden öffnet um 18 Uhr.\n"
WRONG_HOUR = "<!-- The shop opens at 7 pm. -->"
LETS_PASS = f"<!--- accepted other-numbers: an hour earlier\nthere --->\n\n{WRONG_HOUR}"


def project(folder: Path, **files: str) -> Path:
    """A project of one page and its translation; `files` are others by their path below content/."""
    told = {"site.yaml": SITE, "site.de.md": SITE_DE, "pages/hours.md": PAGE, "pages/hours.de.md": PAGE_DE}
    for name, text in {**told, **{name.replace("__", "/"): text for name, text in files.items()}}.items():
        path = folder / "content" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder


def found(folder: Path, **files: str) -> tuple[list[str], list[tuple[str, str]]]:
    """The rules of what is left outside of patterns, and what is accepted there, with the reasons."""
    told = elsewhere(read_project(project(folder, **files)))
    return [one.rule for one in told.findings], [(one.finding.rule, one.reason) for one in told.accepted]


def test_a_translation_with_another_hour_is_an_error(tmp_path: Path) -> None:
    assert found(tmp_path) == (["other-numbers"], [])


def test_a_remark_accepts_what_is_found_in_the_pair_behind_it(tmp_path: Path) -> None:
    text = PAGE_DE.replace(WRONG_HOUR, LETS_PASS)
    left, accepted = found(tmp_path, **{"pages/hours.de.md": text})
    assert (left, accepted) == ([], [("other-numbers", "an hour earlier there")])


def test_a_remark_accepts_nothing_elsewhere_and_is_told_of(tmp_path: Path) -> None:
    text = PAGE_DE.replace("<!-- Hours -->", LETS_PASS.replace(WRONG_HOUR, "<!-- Hours -->"))
    assert found(tmp_path, **{"pages/hours.de.md": text}) == (["other-numbers", "idle-acceptance"], [])


@pytest.mark.parametrize("said", ["accepted other-numbers", "accepted other-numbers:"])
def test_a_remark_without_a_reason_accepts_nothing(tmp_path: Path, said: str) -> None:
    text = PAGE_DE.replace(WRONG_HOUR, f"<!--- {said} --->\n{WRONG_HOUR}")
    assert sorted(found(tmp_path, **{"pages/hours.de.md": text})[0]) == ["other-numbers", "unreadable-translation"]


def test_any_other_remark_is_the_translators_own(tmp_path: Path) -> None:
    text = PAGE_DE.replace("18", "19").replace(WRONG_HOUR, f"<!--- accepted by Maren, 3 May --->\n{WRONG_HOUR}")
    assert found(tmp_path, **{"pages/hours.de.md": text}) == ([], [])


def test_a_missing_translation_is_accepted_by_itself(tmp_path: Path) -> None:
    source = f"{PAGE}\nOn foot.\n\nBy bus.\n"
    text = f"{PAGE_DE.replace('18', '19')}\n<!--- accepted missing-translation: a quotation --->\n<!-- On foot. -->\n"
    left, accepted = found(tmp_path, **{"pages/hours.md": source, "pages/hours.de.md": text})
    assert (left, accepted) == (["missing-translation"], [("missing-translation", "a quotation")])


def test_the_words_of_the_studio_are_accepted_beside_them(tmp_path: Path) -> None:
    text = SITE_DE.replace("<!-- Two", "<!--- accepted other-numbers: one is new --->\n<!-- Two").replace(
        "Zwei", "Drei"
    )
    page = PAGE_DE.replace("18", "19")
    left, accepted = found(tmp_path, **{"site.de.md": text, "pages/hours.de.md": page})
    assert (left, accepted) == ([], [("other-numbers", "one is new")])


@pytest.mark.parametrize("folder", ["pages", "techniques"])
def test_a_page_accepts_at_its_place_as_a_pattern_does(tmp_path: Path, folder: str) -> None:
    said = "accepted: [{rule: missing-alt, text: hat.svg, reason: it stands in the text}]"
    text = f"---\ntitle: Wool\n{said}\n---\n\n![](../media/hat.svg)\n"
    svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"><path d="M0 0"/></svg>'
    page = PAGE_DE.replace("18", "19")
    files = {"media/hat.svg": svg, f"{folder}/wool.md": text, "pages/hours.de.md": page}
    left, accepted = found(tmp_path, **files)
    assert (left, accepted) == (["untranslated"], [("missing-alt", "it stands in the text")])
    files[f"{folder}/wool.md"] = text.replace("![]", "![A hat]")
    assert sorted(found(tmp_path, **files)[0]) == ["idle-acceptance", "untranslated"]


def test_a_remark_in_the_translation_of_a_pattern_is_shown_with_the_pattern(tmp_path: Path) -> None:
    idle = "accepted: [{rule: other-numbers, text: nowhere, reason: idle}]"
    hat = f"---\ntitle: Hat\nlicence: CC0\n{idle}\n---\n\nWear it 2 hours.\n"
    remark = "<!--- accepted other-numbers: so it is --->"
    told = f"<!-- Hat -->\nMütze\n\n{remark}\n<!-- Wear it 2 hours. -->\n3 Stunden tragen.\n"
    read = read_project(project(tmp_path, **{"patterns/hat.md": hat, "patterns/hat.de.md": told}))
    proofed = proof(read.patterns[0], read)
    assert [(one.finding.rule, one.reason) for one in proofed.accepted] == [("other-numbers", "so it is")]
    assert "other-numbers" not in [one.rule for one in proofed.findings]
    assert "idle-acceptance" in [one.rule for one in proofed.findings]
