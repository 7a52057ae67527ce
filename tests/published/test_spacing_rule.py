"""The mason's brick spacing rule: each scale is a height per course, a sixteenth apart; scale 2 is 2 1/2 in., scale 6 2 3/4 in.
https://www.g-wonlinetextbooks.com/modern-masonry-2022/47; the worked lines are a rule maker's note.

And the closing check of a wall on the module, from the modular sizes of NAVEDTRA 14043: panels 8a - 3/8, openings 8m + 3/8.
"""

from __future__ import annotations

import pytest

from tests.jobs import inches, make_job, make_masonry, make_opening, make_wall, pieces_of
from wallplan.layout.build import lay
from wallplan.plan.load import read_plan

PLAN = """
title = "Landing steps"
measure = "feet"
[own_unit]
key = "spaced-brick"
kind = "brick"
length = "7 5/8"
height = "2 1/4"
thickness = "3 5/8"
joint = "3/8"
gauge = "{gauge}"
[masonry]
unit = "spaced-brick"
[[wall]]
name = "Cheek"
length = "5' 3 5/8"
courses = {courses}
"""


@pytest.mark.parametrize(("scale", "courses", "height"), [(6, 18, "49 1/2"), (6, 21, "57 3/4"), (4, 22, "57 3/4"), (2, 20, "50"), (8, 8, "23")])
def test_so_many_courses_of_a_scale_are_so_high(scale: int, courses: int, height: str) -> None:
    sixteenths = 38 + scale  # scale 2 is 40 sixteenths
    layout = lay(read_plan(PLAN.format(gauge=f"{sixteenths // 16} {sixteenths % 16}/16", courses=courses), "cheek"))
    assert layout.walls[0].courses[-1].top == inches(height)
    assert len(layout.walls[0].courses) == courses


def test_panel_opening_and_panel_close_on_the_wall() -> None:
    # 8'-0" and 8'-8" nominal on either side of 3'-4": 7'-11 5/8" + 3'-4 3/8" + 8'-7 5/8" = 19'-11 5/8".
    panels, opening, whole = (inches("95 5/8"), inches("103 5/8")), inches("40 3/8"), inches("239 5/8")
    assert panels[0] + opening + panels[1] == whole
    door = make_opening(panels[0], panels[0] + opening, 0, inches(88))
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(whole, inches(104), [door])))
    for course in range(1, 11):
        pieces = pieces_of(layout, course)
        assert (pieces[0].left, pieces[-1].right) == (0, whole)
        assert {piece.right for piece in pieces} >= {panels[0]} and {piece.left for piece in pieces} >= {panels[0] + opening}
    assert layout.walls[0].cutting == 0
