"""TMS 602, tolerances of construction, as summarised by the Mason Contractors Association of America,
https://masoncontractors.org/technical-talks/construction-tolerances: joints of 3/8 in., beds within 1/8, the first 1/4 to 3/4."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.jobs import broken, inches, make_job, make_masonry, make_wall
from wallplan.catalogue.load import units
from wallplan.drawing.cautions import POLE
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.rules.check import check

US = [unit for unit in units().values() if unit.country == "United States"]


def test_us_units_are_laid_on_joints_of_three_eighths() -> None:
    assert {unit.joint for unit in US} == {inches("3/8")}


def test_beds_that_us_units_may_have_lie_within_an_eighth() -> None:
    # Bed joints: 3/8, 1/8 more or less; head joints may be 1/4 tighter and 3/8 wider, and the planner's default is narrower.
    assert {(unit.tightest_joint, unit.widest_joint) for unit in US} == {(inches("1/4"), inches("1/2"))}


def lift(layout: Layout, by: int, first: int) -> Layout:
    """The layout with every course from one on raised (or let down): the bed under it is thicker (or thinner)."""
    wall = layout.walls[0]
    courses = tuple(course if course.number < first else replace(
        course, bottom=course.bottom + (by if course.number > first else 0), top=course.top + by,
        pieces=tuple(piece._replace(bottom=piece.bottom + by) for piece in course.pieces)) for course in wall.courses)
    return replace(layout, walls=(replace(wall, wall=replace(wall.wall, height=wall.wall.height + by), courses=courses),))


# By how much a bed is changed, under which course, and whether the tolerance has room for it.
BEDS = [
    ("1/8", 3, True), ("-1/8", 3, True), ("3/16", 3, False), ("-3/16", 3, False),
    ("3/8", 1, True), ("-1/8", 1, True), ("7/16", 1, False), ("-3/16", 1, False),
]


@pytest.mark.parametrize(("by", "course", "held"), BEDS)
def test_a_bed_off_by_more_than_the_tolerance_is_told(by: str, course: int, held: bool) -> None:
    layout = lay(make_job(make_masonry(), make_wall(inches("95 5/8"), inches(64))))
    off = inches(by.removeprefix("-")) * (-1 if by[0] == "-" else 1)
    told = [finding for finding in broken(check(lift(layout, off, course))) if finding.rule == "coursing"]
    assert (not told) == held
    assert held or (told[0].course == course and "TMS 602" in told[0].source)


def test_the_pole_says_the_tolerance_of_beds() -> None:
    assert "Beds within 1/8 in (3 mm)" in POLE and "the first from 1/4 to 3/4 in (6 to 19 mm)" in POLE and "TMS 602" in POLE
