"""Australian brick, AS/NZS 4455: 230 x 110 x 76 mm on 240 x 86 with 10 mm joints, as suppliers state it.

48.5 to the square metre stands only in a copied supplier's table; arithmetic, 48.45, confirms it. Dimension tables and what is
marked so are from memory.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import MM, broken, count_units, make_job, make_masonry, make_opening, make_wall
from tests.lists.walls import lay_text
from wallplan.catalogue.load import find_unit
from wallplan.layout.build import lay
from wallplan.plan.coursing import set_coursing
from wallplan.rules.check import check

BRICK = make_masonry("brick-au", joints_move=False)


def test_size_and_module() -> None:
    brick = find_unit("brick-au")
    assert [size // MM for size in (brick.length, brick.thickness, brick.height)] == [230, 110, 76]
    assert (brick.module, brick.gauge) == (240 * MM, 86 * MM)


def test_48_45_to_the_square_metre() -> None:
    layout = lay(make_job(BRICK, make_wall((100 * 240 - 10) * MM, 40 * 86 * MM), measure="metric"))
    assert round(float(count_units(layout) / (24 * Fraction("3.44"))), 2) == 48.45


# Brick dimension table (from memory, by n x 240): bricks, wall or pier, opening in mm.
LENGTHS = [("1", 230, 250), ("1.5", 350, 370), ("2", 470, 490), ("2.5", 590, 610), ("3", 710, 730), ("4", 950, 970),
           ("5", 1190, 1210), ("10", 2390, 2410), ("20", 4790, 4810), ("25", 5990, 6010)]


@pytest.mark.parametrize(("bricks", "wall", "opening"), LENGTHS)
def test_walls_and_openings_of_the_dimension_table_lay_without_a_cut(bricks: str, wall: int, opening: int) -> None:
    layout = lay(make_job(BRICK, make_wall(wall * MM, 4 * 86 * MM), measure="metric"))
    assert [count_units(layout, course) for course in range(1, 5)] == [Fraction(bricks)] * 4
    assert lay(make_job(BRICK, make_wall((wall + 20) * MM, 4 * 86 * MM), measure="metric")).walls[0].cutting >= 4
    hatch = make_opening(950 * MM, (950 + opening) * MM, 0, 4 * 86 * MM, lintel="steel")
    pierced = lay(make_job(BRICK, make_wall((1900 + opening) * MM, 8 * 86 * MM, [hatch]), measure="metric"))
    assert pierced.walls[0].cutting == 0 and not broken(check(pierced))


# Courses and height in mm by the gauge of 86 (from memory, the vertical table of the same brick).
HEIGHTS = [(1, 86), (2, 172), (3, 258), (4, 344), (7, 602), (10, 860), (14, 1204), (21, 1806), (25, 2150), (28, 2408), (31, 2666)]


@pytest.mark.parametrize(("courses", "height"), HEIGHTS)
def test_heights_by_courses(courses: int, height: int) -> None:
    rows = set_coursing(make_wall(950 * MM, height * MM), BRICK)
    assert len(rows) == courses and {row.bed for row in rows} == {10 * MM}


def test_seven_courses_are_worked_to_600_by_closing_joints() -> None:
    # From memory: 602 mm is worked to 600, each bed closing by 2/7 mm.
    masonry = make_masonry("brick-au")
    layout = lay(make_job(masonry, make_wall(950 * MM, 600 * MM), measure="metric"))
    assert len(layout.walls[0].courses) == 7 and layout.walls[0].cutting == 0
    assert abs(layout.walls[0].bed - (10 * MM - 2 * MM // 7)) <= 1
    assert not broken(check(layout))


TALL = """
title = "Slip"
measure = "metric"
[own_unit]
key = "tall"
kind = "brick"
length = 230
height = {high}
thickness = 110
joint = 10
[masonry]
unit = "tall"
[[wall]]
name = "Slip"
length = 950
courses = {courses}
"""


@pytest.mark.parametrize(("high", "courses", "of_brick"), [(119, 2, 3), (162, 1, 2), (162, 5, 10)])
def test_taller_brick_courses_with_the_gauge(high: int, courses: int, of_brick: int) -> None:
    # Also made 119 mm high, 1 1/2 courses (1.5 x 86 - 10), and 162 mm, two.
    layout = lay_text(TALL.format(high=high, courses=courses))
    assert layout.walls[0].courses[-1].top == find_unit("brick-au").height_of_courses(of_brick)


def test_twenty_brick_measured_stand_for_their_mean() -> None:
    # DW1 judges 20 brick together, 20 x 230 +/- 90 mm: twenty as measured come to a unit of their mean, 231 mm of 4,620.
    measured = [226, 236, 231, 229, 233] * 4
    text = TALL.format(high=76, courses=4).replace("length = 230", f"length = {measured}", 1)
    assert sum(measured) == 4620 and abs(sum(measured) - 20 * 230) <= 90
    assert lay_text(text).job.masonry.unit.length == 231 * MM
