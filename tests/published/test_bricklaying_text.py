"""A British text for apprentices, http://zhclg.com/brickwork-bricklaying/, each page named beside its check."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import MM, broken, make_job, make_masonry, make_wall
from tests.layout.buildings import lay_rectangle
from tests.lists.walls import lay_text
from wallplan.catalogue.load import find_unit, units
from wallplan.layout.build import lay
from wallplan.lists.leads import list_leads
from wallplan.rules.check import check


@pytest.mark.parametrize(("bricks", "together"), [(3, 6), (5, 15), (7, 28)])
def test_a_corner_lead_rises_as_many_courses_as_its_first_has_units(bricks: int, together: int) -> None:
    # building-the-third-and-remaining-courses.htm: seven bricks in the first course, seven courses. The sums 7 + 6 + ... + 1
    # = 28 and 5 + ... + 1 = 15 are arithmetic. All four corners of a house of 20 ft.
    for lead in list_leads(lay_rectangle("brick-modular", 240, 240, 6, leads=bricks)):
        assert [sum(lead.units_of(course)) for course in range(1, lead.courses + 1)] == list(range(bricks, 0, -1))
        assert (lead.courses, lead.units) == (bricks, together)


def test_brick_leads_are_seven_courses() -> None:
    # The same page, and free-ed.net's masonry course (lesson 3-07): six or seven courses above the first.
    assert {unit.leads for unit in units().values() if unit.kind == "brick"} == {7}


def test_joints_of_10_mm_move_by_3_either_way() -> None:
    # broken-bonding.htm: 10 mm, 3 mm either way.
    for unit in units().values():
        if unit.country == "United Kingdom":
            assert (unit.tightest_joint, unit.joint, unit.widest_joint) == (7 * MM, 10 * MM, 13 * MM)


@pytest.mark.parametrize(("off", "moved"), [(27, True), (-27, True), (28, False), (-28, False)])
def test_nine_joints_take_27_mm_and_no_more(off: int, moved: bool) -> None:
    # The same page: ten bricks in 2,240 mm have nine joints; 3 mm each is 27 mm. The courses of a half bond with two halves
    # have ten, so the nine decide.
    layout = lay(make_job(make_masonry("brick-uk"), make_wall((2240 + off) * MM, 150 * MM), measure="metric"))
    first = layout.walls[0].courses[0]
    assert ({piece.piece for piece in first.pieces} == {"full"}) == moved
    assert (layout.walls[0].cutting == 0) == moved
    assert not broken(check(layout))


def test_a_quarter_bat_and_the_gap_of_a_queen_closer() -> None:
    # queen-closer.htm: (102.5 - 10) / 2 = 46.25, cut to 46 mm on its face; the gap with its two joints is 66 mm, for which a
    # brick on edge, 65 mm, is held in. Lap in quarter bond 56 mm (112.5 / 2). As a plan's own quarter: two of them and a joint
    # are a half bat, and a course of stretchers that begins 56.25 mm off the one below needs no cut.
    quarter = (Fraction("102.5") - 10) / 2
    assert quarter == Fraction("46.25") and abs(quarter + 20 - 66) < Fraction("0.5")
    brick = find_unit("brick-uk")
    assert brick.pieces[1].length == (2 * quarter + 10) * MM
    masonry = make_masonry("brick-uk", "quarter", joints_move=False)
    assert masonry.ideal_lap == Fraction("56.25") * MM


OLD_WALL = """
title = "Tie to old"
measure = "metric"
[own_unit]
key = "old-brick"
kind = "brick"
length = 230
height = 68
thickness = 110
joint = 10
gauge = 330
gauge_courses = 4
[masonry]
unit = "old-brick"
[[wall]]
name = "Extension"
length = 3830
courses = {courses}
"""


@pytest.mark.parametrize(("courses", "height"), [(25, "2062.5"), (26, "2145"), (4, "330")])
def test_new_work_keeps_the_gauge_of_the_old(courses: int, height: str) -> None:
    # extending-the-length-of-existing-walls.htm: work tied to an old wall keeps its gauge; four courses to 330 mm here.
    layout = lay_text(OLD_WALL.format(courses=courses))
    assert layout.walls[0].courses[-1].top == Fraction(height) * MM
    assert layout.walls[0].cutting == 0 and not broken(check(layout))
