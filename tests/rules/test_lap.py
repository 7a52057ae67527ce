"""The lap: joints too near those below are told with both figures; ends, jambs and control joints are no head joints."""

from __future__ import annotations

import pytest

from tests.jobs import broken, inches, make_job, make_masonry, make_wall
from tests.rules.breaking import breaks_of, places, shift_even_courses, shift_joint
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.rules.check import check


@pytest.fixture(scope="module")
def good() -> Layout:
    """Three courses: 16 16 16 16, then 8 16 16 16 8, then 16 16 16 16."""
    return lay(make_job(make_masonry(joints_move=False), make_wall(inches("63 5/8"), inches(24))))


def test_half_bond_laps_half_a_unit(good: Layout) -> None:
    finding = next(one for one in check(good) if one.rule == "lap")
    assert (finding.held, finding.figure, finding.limit) == (True, '8"', '4"')


def test_short_lap_is_told_at_every_joint_of_both_beds(good: Layout) -> None:
    # Course 2 moved by 5 in.: its joints stand 13 in. (less 3/8) from the end, 3 in. from those of courses 1 and 3
    # on the right; its pieces are 13, 16, 16, 16 and 3 in. long, the last one under the least piece of 4 in.
    told = broken(check(shift_even_courses(good, inches(5))))
    laps = [one for one in told if one.rule == "lap"]
    over_one = {(2, inches("12 5/8") + n * inches(16)) for n in range(3)}
    assert {place for place in places(laps) if place[0] == 2} == over_one | {(2, inches("60 5/8"))} - {(2, inches("60 5/8"))}
    assert {(one.figure, one.limit) for one in laps} == {('3"', '4"')}
    assert {one.rule for one in told} == {"lap", "least piece"}


def test_lap_of_exactly_the_least_is_held(good: Layout) -> None:
    # Moved by 4 in. the joints stand 4 in. from their neighbours: as far as the plan asks.
    assert not broken(check(shift_even_courses(good, inches(4))))


def test_a_sixteenth_under_the_least_lap_is_told(good: Layout) -> None:
    told = broken(check(shift_even_courses(good, inches("4 1/16"))))
    assert {(one.figure, one.limit) for one in told if one.rule == "lap"} == {('3 15/16"', '4"')}


def test_one_joint_moved_over_another_is_told_with_the_course_above(good: Layout) -> None:
    # The joint at 7 5/8 in. of course 2 moved on by 5 in.: 3 in. from the joint at 15 5/8 in. above and below it.
    harmed = shift_joint(good, 2, 0, inches(5))
    assert places(breaks_of(harmed, "lap")) == {(2, inches("12 5/8")), (3, inches("15 5/8"))}


def test_stack_bond_asks_for_no_lap() -> None:
    layout = lay(make_job(make_masonry("block-8", "stack"), make_wall(inches("63 5/8"), inches(24))))
    finding = next(one for one in check(layout) if one.rule == "lap")
    assert finding.held and finding.limit == "none in stack bond"


def test_control_joint_through_all_courses_is_no_short_lap() -> None:
    # Its halves stand in line by intent, 0 in. over each other.
    wall = make_wall(inches("127 5/8"), inches(32), control_joints=(inches(64) - inches("3/16"),))
    assert not broken(check(lay(make_job(make_masonry(joints_move=False), wall))))
