"""Corners: courses in turn, returns as wide as the wall, the joint up the corner told."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.jobs import inches, make_job, make_masonry, make_wall
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.job import EndKind
from wallplan.rules.check import check

OUT: EndKind = "outside corner"
IN: EndKind = "inside corner"


def building(*sides: tuple[int, EndKind, EndKind]) -> Layout:
    """Walls of so many units, one after another, closed; 8 in. block, four courses."""
    masonry = make_masonry(joints_move=False)
    walls = []
    for number, (units, left, right) in enumerate(sides):
        joints = sum(end == OUT for end in (left, right)) - 1
        wall = make_wall(masonry.module * units - masonry.joint * joints, inches(32))
        walls.append(replace(wall, name=f"wall {number}", left_end=left, right_end=right))
    return lay(make_job(masonry, *walls))


@pytest.fixture(scope="module")
def shed() -> Layout:
    return building((6, OUT, OUT), (4, OUT, OUT), (6, OUT, OUT), (4, OUT, OUT))


def corners_of(layout: Layout) -> list[str]:
    return [finding.figure for finding in check(layout) if finding.rule == "corners" and not finding.held]


def test_a_closed_building_holds_every_rule(shed: Layout) -> None:
    findings = check(shed)
    assert [finding for finding in findings if not finding.held] == []
    assert sum(finding.rule == "corners" for finding in findings) == 4


def test_a_building_with_an_inside_corner_holds_every_rule() -> None:
    # Six walls, five outside corners and one inside: 6 and 4 units out to out, a notch of 3 by 2 units.
    layout = building((6, OUT, OUT), (2, OUT, OUT), (3, OUT, IN), (2, IN, OUT), (3, OUT, OUT), (4, OUT, OUT))
    assert [finding for finding in check(layout) if not finding.held] == []


def test_a_joint_that_runs_up_the_corner_is_told(shed: Layout) -> None:
    first = shed.walls[0]
    courses = list(first.courses)
    courses[1] = replace(courses[1], pieces=tuple(
        piece._replace(bottom=piece.bottom + courses[1].bottom) for piece in courses[0].pieces))
    broken = replace(shed, walls=(replace(first, courses=tuple(courses)), *shed.walls[1:]))
    assert corners_of(broken) == ["both walls stop, or both run through"] * 2


def test_a_return_that_is_not_the_other_walls_unit_is_told(shed: Layout) -> None:
    first = shed.walls[0]
    course = first.courses[1]
    wrong = tuple(
        piece._replace(length=piece.length - inches(1), left=piece.left + inches(1))
        if piece.shape == "return" and piece.left > 0 else piece for piece in course.pieces)
    courses = (first.courses[0], replace(course, pieces=wrong), *first.courses[2:])
    (told,) = corners_of(replace(shed, walls=(replace(first, courses=courses), *shed.walls[1:])))
    assert told == 'the return of wall 1 is 6 5/8" wide and not as its unit'


def test_each_unit_at_a_corner_is_counted_once(shed: Layout) -> None:
    # Plan area of all units and their joints in a course: perimeter ring of the building.
    masonry = shed.job.masonry
    across, deep, thick = 6 * masonry.module - masonry.joint, 4 * masonry.module - masonry.joint, masonry.unit.thickness
    ring = across * deep - (across - 2 * thick) * (deep - 2 * thick)
    for course in range(4):
        pieces = [piece for wall in shed.walls for piece in wall.courses[course].pieces if piece.shape != "return"]
        units = sum(piece.length for piece in pieces) * thick
        # As many joints as pieces in a closed ring, each as deep as the wall.
        assert units + len(pieces) * masonry.joint * thick == ring


def test_a_corner_that_no_wall_comes_up_to_is_told(shed: Layout) -> None:
    # Wall 1 said to end free at its left: the right corner of wall 0 is left alone.
    free = replace(shed.walls[1], wall=replace(shed.walls[1].wall, left_end="end"))
    told = corners_of(replace(shed, walls=(shed.walls[0], free, *shed.walls[2:])))
    assert "its right end, an outside corner, meets no wall" in told


def test_an_outside_corner_does_not_meet_an_inside_one(shed: Layout) -> None:
    turned = replace(shed.walls[1], wall=replace(shed.walls[1].wall, left_end=IN))
    told = corners_of(replace(shed, walls=(shed.walls[0], turned, *shed.walls[2:])))
    assert {"its right end, an outside corner, meets no wall", "its left end, an inside corner, meets no wall"} <= set(told)
