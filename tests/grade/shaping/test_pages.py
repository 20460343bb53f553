"""The page of every plan begins with an example, which can be worked out as it stands there."""

import re

from sizewright.grade.run import grade
from sizewright.grade.shaping.table import PLANS
from sizewright.read.folder import read_text

GAUGE = "---\ntitle: A\ngauge: {stitches: 22 st / 10 cm, rows: 30 row / 10 cm}\n---\n"
# The armholes that the example of a cap speaks of.
ARMHOLES = "".join(
    f"{name} = armhole(100 st, 80 st, 56 row, stitch_gauge, row_gauge)\n" for name in ("underarm", "front", "back")
)


def test_the_example_of_every_plan_is_worked_out() -> None:
    examples = {name: re.findall(rf"`({name}\([^`]+)`", plan.page) for name, plan in PLANS.items()}
    assert [name for name, found in examples.items() if not found] == []
    lines = "".join(f"of_{name} = {found[0]}\n" for name, found in examples.items())
    project = read_text(f"{GAUGE}```grade\n{ARMHOLES}{lines}```\n", "a.md")
    graded = grade(project.patterns[0])
    assert [finding.message for finding in (*project.findings, *graded.findings)] == []


def test_the_example_of_shaping_over_rows_is_the_one_it_is_told_of() -> None:
    """Source: designyourownsweater.blogspot.com 2007: 84 sts at both ends over 176 rows are 4 × 34 + 5 × 8."""
    pages = {name: plan.page for name, plan in PLANS.items() if "176 = 42 × 4 + 8, so" in plan.page and "_at_" in name}
    assert len(pages) == 12
    for name, page in pages.items():
        assert f"`{name}({84 if 'both_ends' in name else 42} st, 176 row, 1 row)`" in page
        orders = ("so every 4th row 34 times and every 5th", "so every 5th row 8 times and every 4th")
        assert orders["slow_first" in name] in page
