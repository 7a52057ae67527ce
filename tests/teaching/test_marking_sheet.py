"""The marking sheet: tolerances of the plan, what is measured, and no distance where the pupil has to predict it."""

from __future__ import annotations

from tests.teaching.lessons import laid, sample
from wallplan.layout.build import lay
from wallplan.plan.load import read_plan
from wallplan.teaching.marking_sheet import HEADS, PREDICTED, list_rows

PLAN = """\
title = "Ferry landing"
measure = "metric"
[masonry]
unit = "brick-uk"
[teaching]
plumb = 5
[[wall]]
name = "Landing"
length = 2240
courses = 12
"""


def test_the_kiosk_is_marked_by_its_own_sizes_within_the_usual() -> None:
    layout = laid(sample("ticket-kiosk"))
    rows = [row.cells for row in list_rows(layout, layout.walls[0])]
    assert rows[:4] == [("Wall Landing side",), HEADS, ("length", "19'-11 5/8\"", '+/- 1/8"', "", "", ""),
                        ("height", "8'-8\"", '+/- 1/8"', "", "", "")]
    assert ("right jamb of Door", "7'-4\"", '+/- 1/8"', "", "", "") in rows
    assert ("head joints", '3/8"', '+/- 1/16"', "", "", "") in rows
    assert ("head joints over each other", "plumb", '+/- 1/8"', "", "", "") in rows


def test_a_plans_own_tolerance_is_printed_and_the_others_stay() -> None:
    layout = lay(read_plan(PLAN, "landing.toml"))
    within = {row.cells[0]: row.cells[2] for row in list_rows(layout, layout.walls[0]) if len(row.cells) == 6}
    assert within["plumb, face"] == "+/- 5 mm" and within["length"] == "+/- 3 mm" and within["bed joints"] == "+/- 2 mm"


def test_what_is_predicted_is_not_given_away() -> None:
    layout = lay(read_plan(PLAN, "landing.toml"))
    rows = [row.cells for row in list_rows(layout, layout.walls[0])]
    asked = rows[rows.index(PREDICTED) + 1 :]
    # 10 bricks of 225 less a joint: 9 joints in odd courses, 10 in even ones.
    assert [cells[0] for cells in asked] == [f"course {course}, joint {place} of {count}" for course, count, places in (
        (1, 9, (1, 5, 9)), (2, 10, (1, 6, 10))) for place in places]
    assert all(cell == "" for cells in asked for cell in cells[1:])


def test_joints_that_differ_have_a_row_for_each_limit() -> None:
    # 2260 is 20 mm over 10 bricks: 9 joints of odd courses open to 12.2 mm, 10 of even ones to 12 mm.
    layout = lay(read_plan(PLAN.replace("2240", "2260"), "landing.toml"))
    drawn = {row.cells[0]: row.cells[1] for row in list_rows(layout, layout.walls[0]) if len(row.cells) == 6}
    assert (drawn["head joints, thinnest"], drawn["head joints, widest"]) == ("12 mm", "12.2 mm")
    assert "head joints" not in drawn
