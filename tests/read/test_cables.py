"""Cables by their short words and spelled out: the same crossing, and the looks that "as they appear" goes by.

What the short words mean is common practice of the trade, from memory, without a published source at hand; only the
cable of theweeklystitch.com 2023-08 ("2 to cn in front, K2, K2 from cn") is a published row, restated.
"""

import pytest

from sizewright.read.folder import read_text
from sizewright.read.notation.cables import Crossing, crossing_of, named_cable
from sizewright.read.notation.direction_tree import Row
from sizewright.read.notation.tree import Work
from sizewright.read.pattern import WorkBlock
from sizewright.read.project import Project


def source(row: str) -> Project:
    return read_text(f"---\ntitle: A\n---\n```work\nRow 1: {row}\n```\n", "a.md")


def work(row: str) -> Work:
    """The first stitch of a row."""
    project = source(row)
    assert project.findings == ()
    block = project.patterns[0].body[-1]
    assert isinstance(block, WorkBlock)
    direction = block.directions[0]
    assert isinstance(direction, Row)
    action = direction.actions[0]
    assert isinstance(action, Work)
    return action


@pytest.mark.parametrize(
    ("term", "crossing"),
    [
        ("C4F", Crossing(to_left=True, front="kk", back="kk")),
        ("C6B", Crossing(to_left=False, front="kkk", back="kkk")),
        ("2/2 LC", Crossing(to_left=True, front="kk", back="kk")),
        ("3/1 RC", Crossing(to_left=False, front="kkk", back="k")),
        ("2/1 LPC", Crossing(to_left=True, front="kk", back="p")),
        ("2/1/2 RPC", Crossing(to_left=False, front="kk", back="kk", middle="p")),
        ("T3B", Crossing(to_left=False, front="kk", back="p")),
        ("LT", Crossing(to_left=True, front="k", back="k")),
        ("C5F", None),  # which three lie in front is not said
        ("k2tog", None),
    ],
)
def test_what_the_short_words_say(term: str, crossing: Crossing | None) -> None:
    assert crossing_of(term) == crossing


@pytest.mark.parametrize(
    ("words", "term", "looks"),
    [
        ("2 to cn in front, K2, K2 from cn", "2/2 LC", "cccc"),
        ("sl 3 to cn, hold in front, k3, k3 from cn", "3/3 LC", "cccccc"),
        (
            "Slip next 3 sts onto cable needle and hold at back, knit 3, then knit 3 from cable needle",
            "3/3 RC",
            "cccccc",
        ),
        ("sl 2 to cn, hold in front, p1, k2 from cn", "2/1 LPC", "pcc"),
        ("sl1 to cn, hold behind, k2, p1 from cn", "2/1 RPC", "ccp"),
        ("sl 2 to cn, hold in front, p2, p2 from cn", "sl 2 to cn, hold in front, p2, p2 from cn", "pppp"),
        ("sl 2 to cn, hold in back, k2, (k1, p1) from cn", "sl 2 to cn, hold in back, k2, k1, p1 from cn", "cccp"),
        ("sl 2 to cn, k2, k2 from cn", "sl 2 to cn, k2, k2 from cn", "cccc"),
        ("C6b", "C6B", "cccccc"),
        ("2/1LPC", "2/1 LPC", "pcc"),
    ],
)
def test_a_cable_has_one_term(words: str, term: str, looks: str) -> None:
    stitch = work(words).stitch
    assert (stitch.term, stitch.looks, stitch.uses) == (term, looks, len(looks))


def test_a_spelled_cable_without_a_short_word_tells_its_crossing() -> None:
    assert crossing_of("sl 2 to cn, hold in front, p2, k2 from cn") == crossing_of("2/2 LPC")
    assert crossing_of("sl 2 to cn, hold in back, k2, k1, p1 from cn") == Crossing(to_left=False, front="kk", back="kp")
    assert crossing_of("sl 2 to cn, k2, k2 from cn") is None


@pytest.mark.parametrize("word", ["0/2 LC", "C0F", "2/2/2/2 LC", "X4F", "C4"])
def test_no_cable(word: str) -> None:
    assert named_cable(word) is None


@pytest.mark.parametrize(
    ("words", "quoted"),
    [
        ("sl 2 to cn, hold in front, k2tog, k2 from cn", "“k2tog”"),
        ("sl 2 to cn, hold in front, k2, k1 from cn", "2 must be worked from it"),
        ("sl 2 to cn, hold in front, k2, k2", "from cn"),
    ],
)
def test_a_cable_that_does_not_come_out_is_told(words: str, quoted: str) -> None:
    (finding,) = source(words).findings
    assert quoted in f"{finding.message} {finding.mend}"


@pytest.mark.parametrize(
    ("words", "manner"),
    [
        ("sl 1 wyif", "wyif"),
        ("slip 2 with yarn in back", "wyib"),
        ("sl1 pwise with yarn held in front", "purlwise wyif"),
        ("sl 1 wyib k-wise", "knitwise wyib"),
        ("slip 1 as if to purl", "purlwise"),
        ("sl 1", ""),
    ],
)
def test_the_manner_of_slipping_is_kept(words: str, manner: str) -> None:
    assert work(words).manner == manner
