"""A textbook, Modern Masonry, https://www.g-wonlinetextbooks.com/modern-masonry-2022/: spacing rule, leads, squaring.

The brick spacing rule (p. 31, /47): each scale is a height per course, a sixteenth apart; scale 2 is 2 1/2 in., scale 4 2 5/8,
scale 6 2 3/4, scale 8 2 7/8. The worked lines of it are a rule maker's note. Leads: /246. 3-4-5: p. 231. Lap and square
corners: p. 367.
"""

from __future__ import annotations

import pytest

from tests.jobs import inches
from tests.layout.buildings import lay_rectangle, row_of
from tests.lists.walls import lay_text
from wallplan.layout.build import lay
from wallplan.lists.leads import list_leads
from wallplan.plan.load import read_plan
from wallplan.planner import draw_set

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


SQUARE = """
title = "Squared"
measure = "feet"
[masonry]
unit = "block-8"
"""


@pytest.mark.parametrize(("scale", "courses", "height"), [(6, 18, "49 1/2"), (6, 21, "57 3/4"), (4, 22, "57 3/4"), (2, 20, "50"), (8, 8, "23")])
def test_so_many_courses_of_a_scale_are_so_high(scale: int, courses: int, height: str) -> None:
    sixteenths = 38 + scale  # scale 2 is 40 sixteenths
    layout = lay(read_plan(PLAN.format(gauge=f"{sixteenths // 16} {sixteenths % 16}/16", courses=courses), "cheek"))
    assert layout.walls[0].courses[-1].top == inches(height)
    assert len(layout.walls[0].courses) == courses


@pytest.mark.parametrize("bricks", [3, 4, 5])
def test_leads_of_3_to_5_bricks_are_as_many_courses(bricks: int) -> None:
    # /246: the first course of a lead is 3 to 5 bricks; racked half a brick a course at both ends, as many courses.
    leads = list_leads(lay_rectangle("brick-modular", 240, 240, 4, leads=bricks))
    assert leads and all(lead.courses == sum(lead.units_of(1)) == bricks for lead in leads)


# p. 231: 3-4-5, 6-8-10, 9-12-15: sides and diagonal in feet.
SQUARES = [(3, 4, 5), (6, 8, 10), (9, 12, 15)]


@pytest.mark.parametrize(("one", "other", "across"), SQUARES)
def test_the_diagonals_that_the_course_sheet_prints_are_those_of_3_4_5(one: int, other: int, across: int) -> None:
    # Sides of a building of four times the figures, less nothing: actual sizes.
    text = "".join(f"""
[[wall]]
name = "{name}"
length = "{4 * length}'"
height = "2' 8"
left = "outside corner"
right = "outside corner"
""" for name, length in (("A", other), ("B", one), ("C", other), ("D", one)))
    layout = lay_text(SQUARE + text)
    files = draw_set(layout, (), None, ("course",))
    drawn = " ".join(content.decode() for name, content in files.items() if name.endswith(".svg"))
    assert f"{4 * across}'-0&quot;" in drawn or f"{4 * across}'-0\"" in drawn
    assert f"{4 * across + 1}'-0" not in drawn


def test_square_corners_need_a_width_of_half_a_unit() -> None:
    # p. 367: half bond round a corner without a cut needs a width of half a length; one course turns one way, the next the other.
    cutting = {key: sum(wall.cutting for wall in lay_rectangle(key, 128, 96, 4, keep_bond=True).walls)
               for key in ("block-4", "block-6", "block-8", "block-10", "block-12")}
    assert [key for key, cut in cutting.items() if not cut] == ["block-8"]
    layout = lay_rectangle("block-8", 128, 96, 4)
    for wall in range(4):
        assert {row_of(layout, wall, course)[0] for course in (1, 2)} == {16, -8}
