"""What is judged of an adaptation: leave and licence, the faces of what is turned, and what its departures change."""

from fractions import Fraction
from pathlib import Path

import pytest
from tests.read.test_adapting import BASE, DEPARTURES, EMPTY

from sizewright.proof.departed import Comparison, compared
from sizewright.proof.licences import Adapting, allows
from sizewright.proof.proofed import Proofed
from sizewright.proof.run import proof
from sizewright.read.adapting import mirror
from sizewright.read.folder import read_single

DEEPER = DEPARTURES[1]


def proofed(folder: Path, *departures: str, base: str = BASE) -> Proofed:
    (folder / "cap.md").write_text(base, encoding="utf-8")
    (folder / "other.md").write_text(EMPTY + "\n".join(departures), encoding="utf-8")
    project = read_single(folder / "other.md")
    return proof(project.patterns[0], project)


def comparison(folder: Path, *departures: str) -> Comparison:
    found = compared(proofed(folder, *departures).worked)
    assert found is not None
    return found


# From memory of the licences themselves, creativecommons.org: ND forbids changed versions, SA asks for the same
# licence, NC for no gain; CC0 gives up all rights; what is not named permits nothing.
@pytest.mark.parametrize(
    ("base", "adaptation", "judged"),
    [
        ("CC BY 4.0", "All rights reserved", Adapting.ALLOWED),
        ("CC0 1.0", "", Adapting.ALLOWED),
        ("Creative Commons BY-SA 4.0", "CC BY-SA 4.0", Adapting.ALLOWED),
        ("CC BY-SA 4.0", "CC BY 4.0", Adapting.SAME),
        ("CC BY-NC-SA 4.0", "CC BY-SA 4.0", Adapting.SAME),
        ("CC BY-NC 4.0", "CC BY-NC-SA 4.0", Adapting.ALLOWED),
        ("CC BY-NC 4.0", "CC BY 4.0", Adapting.NO_GAIN),
        ("CC BY-ND 4.0", "CC BY-ND 4.0", Adapting.FORBIDDEN),
        ("https://creativecommons.org/licenses/by-nc-nd/4.0/", "", Adapting.FORBIDDEN),
        ("All rights reserved", "CC BY 4.0", Adapting.UNKNOWN),
        ("Made by hand", "", Adapting.UNKNOWN),
        ("", "", Adapting.UNKNOWN),
    ],
)
def test_what_a_licence_allows(base: str, adaptation: str, judged: Adapting) -> None:
    assert allows(base, adaptation) is judged


def test_faces_are_seen_on_the_stitches_and_not_in_the_words(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A fault planted in the table of pairs is found, though the words are made of the same table."""
    rules = [one.rule for one in proofed(tmp_path, DEPARTURES[3]).findings]
    assert "wrong-face" not in rules
    pairs = dict(mirror.STITCH_PAIRS) | {"ssk": "p2tog"}
    monkeypatch.setattr(mirror, "STITCH_PAIRS", pairs)
    wrong = [one for one in proofed(tmp_path, DEPARTURES[3]).findings if one.rule == "wrong-face"]
    assert [(one.span.shown.line if one.span else 0, one.sizes) for one in wrong] == [(29, ("S", "L"))]


def test_what_a_departure_changes_is_counted(tmp_path: Path) -> None:
    """Deeper by 3 (1) rounds of 100 (120) stitches, of which 100 take 1 g: told by size, and from its first round."""
    found = comparison(tmp_path, DEEPER, DEPARTURES[3])
    deeper, turned = found.departed
    assert deeper.alone is not None
    assert deeper.alone.rows.moved == tuple(map(Fraction, (3, 1)))
    assert deeper.alone.stitches.moved == tuple(map(Fraction, (300, 120)))
    assert [one.moved for one in deeper.alone.masses] == [(Fraction(3), Fraction(12, 10))]
    assert deeper.first is not None
    assert (deeper.first.label, deeper.rows) == ("Rep Rnd 1", (2, 2))
    assert turned.alone is not None
    assert turned.alone.idle
    assert turned.rows == (1, 1)
    assert found.whole.rows.moved == tuple(map(Fraction, (3, 1)))


def test_one_that_needs_another_is_told_with_it(tmp_path: Path) -> None:
    more = "::: after quantity rounds\nbecause: a band\nband = 5\n:::\n"
    uses = "::: instead of row Rep Rnd 1 under Brim\nbecause: a band\nRep Rnd 1 {band} times.\n:::\n"
    found = comparison(tmp_path, more, uses)
    assert [one.alone is None for one in found.departed] == [False, True]
    assert found.whole.rows.moved == tuple(map(Fraction, (-1, -3)))


def test_what_the_base_says_of_itself_is_not_said_again(tmp_path: Path) -> None:
    """Its own faults are told once, with it: an adaptation is refused for them."""
    broken = BASE.replace("Bind off all sts.", "Rnd 3: K7. (9 sts)")
    rules = [one.rule for one in proofed(tmp_path, base=broken).findings if one.level == "error"]
    assert rules == ["refused-base"]


def test_what_only_the_adaptation_breaks_names_it(tmp_path: Path) -> None:
    found = [
        one for one in proofed(tmp_path, "::: without row Rnd 1 under Brim\nbecause: x\n:::\n").findings if one.span
    ]
    told = [one for one in found if one.span and one.span.shown.source.endswith("cap.md") and one.level == "error"]
    assert told
    assert all(one.message.startswith("In “Cap”, based on this: ") for one in told)


def test_a_corrected_base_makes_departures_stale(tmp_path: Path) -> None:
    row = "::: instead of row Rnd 1 under Brim\nbecause: x\nwas: {}\nRnd 1: *K1, p1; rep from * to end.\n:::\n"
    unmarked = proofed(tmp_path, row.replace("was: {}\n", ""))
    (mend,) = [one.mend for one in unmarked.findings if one.rule == "unmarked-departure"]
    marked = row.format(mend.split("“was: ")[1].split("”")[0])
    assert not [one for one in proofed(tmp_path, marked).findings if one.rule.endswith("-departure")]
    corrected = BASE.replace("*K2, p2;", "*P2, k2;")
    stale = [one for one in proofed(tmp_path, marked, base=corrected).findings if one.rule == "stale-departure"]
    assert ["*P2, k2;" in one.message for one in stale] == [True]
