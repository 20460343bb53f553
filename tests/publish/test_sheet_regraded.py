"""In: a proof sheet. Out: what every number would be if the pattern were graded for another gauge."""

from tests.publish.test_sheet import group, subject, texts

from sizewright.publish.sheet.sheets import sheet_view


def test_what_every_number_would_be_if_it_were_graded_for_another_gauge() -> None:
    view = sheet_view("trial", subject())
    # at 1.9 sts to the cm 98.8, 106.4, 114, 121.6: the multiples of 18 next to them; at 2.1 109.2, 117.6, 126, 134.4
    told = texts(group(view.regraded.groups, "sts").rows)
    assert told == {
        "as graded, st": ["108", "108", "126", "126"],
        "one stitch fewer in 10 cm, st": ["90", "108", "108", "126"],
        "one stitch more in 10 cm, st": ["108", "126", "126", "126"],
    }
    (half, *_) = [one.rows for one in view.regraded.groups if one.label == "{sts / 2}"]
    assert texts(half)["one stitch fewer in 10 cm, st"] == ["45", "54", "54", "63"]
    assert [(cell.mark, cell.more) for cell in half[1].cells] == [
        ("changed", "−9"),
        ("", ""),
        ("changed", "−9"),
        ("", ""),
    ]
    assert [one.label for one in view.regraded.groups] == ["sts", "around", "{sts / 2}"]
    assert view.regraded.told == (
        "With one stitch fewer in 10 cm, line 23: “require sts > 100 st” does not hold: S: 90 sts against 100 sts.",
    )


def test_a_plan_that_cannot_be_made_at_another_gauge_is_told() -> None:
    # 12 sts at 20 in 10 cm; 11.4 at 19, so 11, which have no room for 6 decreases of 2 sts; 12.6 at 21, so 13
    text = """---
title: Trial
gauge: {stitches: 20 st / 10 cm}
---
```grade
sts = 6 cm * stitch_gauge, nearest whole
left = decrease_evenly_in_round(sts, 6)
rest = sts - 6 st
each = 24 st / (sts - 11 st) * 1
```
Cast on {sts} sts, then {rest} and {each}. {left}
"""
    view = sheet_view("trial", subject(text))
    plan, divisor = view.regraded.told
    assert plan.startswith("With one stitch fewer in 10 cm, line 7: “decrease_evenly_in_round” cannot be worked: ")
    assert divisor == "With one stitch fewer in 10 cm, line 9: This divides by nothing."
    assert any("no value" in label for label in texts(group(view.regraded.groups, "left.gap").rows))
    assert texts(group(view.regraded.groups, "each").rows) == {
        "as graded": ["24"],
        "one stitch fewer in 10 cm: no value": ["–"],
        "one stitch more in 10 cm": ["12"],
    }
