"""Markers: by name, placed in a cast-on, slipped, removed, at the beginning of the round; none is ever lost."""

import pytest

from sizewright.grade.run import grade
from sizewright.read.folder import read_text
from sizewright.work.blocks import stitch_blocks
from sizewright.work.maker import Maker
from sizewright.work.needle import Lies
from sizewright.work.run import work
from sizewright.work.worked import Worked


def knitted(lines: str) -> Worked:
    project = read_text(f"---\ntitle: A\n---\n```work\n{lines}\n```\n", "a.md")
    assert [finding.message for finding in project.findings] == []
    return work(grade(project.patterns[0]))


def markers(lines: str) -> list[tuple[int, str]]:
    """The markers behind some instructions, with the stitches before each."""
    project = read_text(f"---\ntitle: A\n---\n```work\n{lines}\n```\n", "a.md")
    assert [finding.message for finding in project.findings] == []
    graded = grade(project.patterns[0])
    maker = Maker(graded, 0, stitch_blocks(graded))
    assert maker.make().faults == []
    assert maker.needle is not None
    return [(pin.place, pin.name) for pin in maker.needle.pins if pin.kind is Lies.MARKER]


@pytest.mark.parametrize(
    ("lines", "found"),
    [
        ("Cast on 8 sts, place marker, cast on 4 sts.", [(4, "")]),
        ("Cast on 8 sts, pm, cast on 4 sts. Join in the round.", [(8, "")]),
        ("Cast on 8 sts, pm, 4 sts, pm A, 2 sts. (14 sts)", [(2, "a"), (6, "")]),
        ("Cast on 24 sts, placing markers every 8 sts.", [(8, ""), (16, "")]),
        ("Cast on 24 sts, placing a marker after 4 sts. Join in the round.", [(4, "")]),
        ("Cast on 8 sts. Join, pm.", [(8, "bor")]),
        ("Cast on 8 sts. Join in the round, place BOR marker.", [(8, "bor")]),
        ("Cast on 8 sts. Place marker for beginning of round and join to work in the round.", [(8, "bor")]),
        ("Cast on 8 sts. Join in the round, pm.\nRnd 1: K4, place raglan marker, k4.", [(4, "raglan"), (8, "bor")]),
        (
            "Cast on 8 sts. Join in the round, pm.\nRnd 1: K4, pm for side, k to BOR marker, sm.",
            [(4, "side"), (8, "bor")],
        ),
        # Behind a row on the right side the round begins where that row began, with the markers where it placed them.
        ("Cast on 8 sts.\nRow 1 (RS): K2, pm A, k6. Join to work in the round.", [(2, "a")]),
        ("Cast on 8 sts.\nRow 1 (RS): K2, pm A, k6.\nJoin.\nRnd 1: K to m, sm, p6.", [(2, "a")]),
        ("Cast on 8 sts.\nRow 1: K2, pm A, k6.\nPlace marker and join in the round.", [(2, "a"), (8, "bor")]),
        ("Cast on 8 sts.\nRow 1 (RS): K2, pm A, k6.\nJoining Rnd: K to m, sm, p6.", [(2, "a")]),
        ("Cast on 8 sts.\nRow 1 (RS): K8.\nRow 2 (WS): P2, pm A, p6. Join.\nRnd 1: K to m, sm, k2.", [(6, "a")]),
        ("Cast on 8 sts.\nRow 1 (WS): P2, pm A, p6. Join.\nRnd 1: K to m, sm, k2.", [(6, "a")]),
        (
            "Cast on 8 sts. Join, pm.\nRnd 1: K4, pm A, k4.\nNext Rnd: Remove BOR marker, k1, replace marker.",
            [(3, "a"), (8, "bor")],
        ),
        ("Cast on 8 sts. Join in the round, pm.\nNext Rnd: Remove marker, k3, replace marker, k to end.", [(8, "bor")]),
        (
            "Cast on 8 sts.\nRow 1: K2, pm 1, k4, pm 2, k2.\nRow 2: P to marker 2, remove marker 2, p to end.",
            [(2, "1")],
        ),
        (
            "Cast on 8 sts.\nRow 1: K2, pm A, k6.\nRow 2: P2, bind off 2 sts, p to 1 st before marker A, p to end.",
            [(2, "a")],
        ),
        ("Cast on 9 sts.\nRow 1: K3, pm, k6.\nRow 2: Bind off 6 sts, sm, p to end.", [(3, "")]),
        ("Cast on 9 sts.\nRow 1: K3, pm, k6.\nRow 2: Bind off 7 sts, p to end.", [(2, "")]),
    ],
)
def test_where_the_markers_lie(lines: str, found: list[tuple[int, str]]) -> None:
    assert markers(lines) == found


def test_a_raglan_between_named_markers() -> None:
    lines = """Cast on 10 sts, pm A, 6 sts, pm B, 20 sts, pm C, 6 sts, pm D, 10 sts. (52 sts)
Row 1 (WS): Purl.
Inc Row (RS): *K to 1 st before marker, m1r, k1, sm, k1, m1l; rep from * 3 more times, k to end. (60 sts)
Next Row: P to marker A, slip marker A, p to end."""
    assert knitted(lines).faults == ()


@pytest.mark.parametrize(
    ("row", "name", "known"),
    [
        ("Rnd 2: K to marker C, k to end.", "c", ("a", "b", "bor")),
        ("Rnd 2: K4, sm B, k to end.", "b", ("a", "b", "bor")),
        ("Rnd 2: K to marker B, sm, k to marker A, k to end.", "a", ("bor",)),
        ("Rnd 2: Remove marker A, k to end.", "a", ("a", "b", "bor")),
    ],
)
def test_a_marker_of_another_name(row: str, name: str, known: tuple[str, ...]) -> None:
    lines = f"Cast on 12 sts. Join in the round, pm.\nRnd 1: K4, pm A, k4, pm B, k4.\n{row}"
    (fault,) = knitted(lines).faults
    assert (getattr(fault, "name", ""), getattr(fault, "known", ())) == (name, known)


def test_a_round_that_begins_elsewhere_is_a_whole_round() -> None:
    lines = """Cast on 12 sts. Join in the round, place BOR marker.
Rnd 1: Knit.
Rnd 2: Remove BOR marker, k1, replace BOR marker, k to end. (12 sts)
Rnd 3: K12. (12 sts)"""
    worked = knitted(lines)
    assert worked.faults == ()
    assert [entry.rows[0] for entry in worked.entries] == [0, 1, 1, 1]
