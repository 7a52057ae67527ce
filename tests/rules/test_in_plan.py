"""In plan: volumes by pencil, units of two walls in one place, units outside the walls, holes."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from tests.jobs import broken, inches, make_job, make_masonry, make_opening, make_wall
from wallplan.findings import Finding
from wallplan.layout.build import lay
from wallplan.layout.model import Layout, Piece
from wallplan.plan.job import EndKind
from wallplan.rules.in_plan import check_in_plan

OUT: EndKind = "outside corner"


@pytest.fixture(scope="module")
def shed() -> Layout:
    """Four walls of 8 in. block, 96 by 64 in. on the module, four courses, a door two courses high from the footing."""
    masonry = make_masonry(joints_move=False)
    door = make_opening(inches("31 5/8"), inches(64), 0, inches(16), "steel", inches(4))
    walls = [replace(make_wall(inches(units) - masonry.joint, inches(32), openings, name=f"wall {number}"),
                     left_end=OUT, right_end=OUT)
             for number, (units, openings) in enumerate(((96, [door]), (64, []), (96, []), (64, [])))]
    return lay(make_job(masonry, *walls))


def change(layout: Layout, wall: int, course: int, index: int, **changes: int) -> Layout:
    """The layout with one piece moved or resized."""
    laid = layout.walls[wall]
    pieces = list(laid.courses[course - 1].pieces)
    pieces[index] = pieces[index]._replace(**changes)
    return put(layout, wall, course, tuple(pieces))


def put(layout: Layout, wall: int, course: int, pieces: tuple[Piece, ...]) -> Layout:
    laid = layout.walls[wall]
    courses = list(laid.courses)
    courses[course - 1] = replace(courses[course - 1], pieces=pieces)
    walls = list(layout.walls)
    walls[wall] = replace(laid, courses=tuple(courses))
    return replace(layout, walls=tuple(walls))


def told(layout: Layout) -> list[Finding]:
    return broken(check_in_plan(layout))


def test_the_walls_volume_is_what_a_pencil_makes_of_it(shed: Layout) -> None:
    # Ring of 95 5/8 by 63 5/8 in., 7 5/8 in. thick: 2 x (95 5/8 + 63 5/8) x 7 5/8 less four corners counted twice; less
    # the door of 32 3/8 in.; 32 and 16 in. high; 1,728 cubic inches to the cubic foot.
    thick, across, deep = (Fraction(eighths, 8) for eighths in (61, 765, 509))
    ring = 2 * (across + deep) * thick - 4 * thick**2
    net = (ring * 32 - Fraction(259, 8) * thick * 16) / 1728
    (finding,) = check_in_plan(shed)
    assert finding.held
    assert finding.figure.endswith(f"4 walls less openings {float(net):.3f}")


def test_walls_that_meet_none_are_not_asked(shed: Layout) -> None:
    lone = lay(make_job(shed.job.masonry, make_wall(inches(100), inches(32)), make_wall(inches(60), inches(32), name="b")))
    assert check_in_plan(lone) == ()


def test_units_of_two_walls_in_one_place_are_told(shed: Layout) -> None:
    # The wall that stops at its right corner has its last unit drawn on into the other by an inch more than the joint.
    for wall in (0, 1):
        course = shed.walls[wall].courses[0].pieces
        if course[-1].shape == "return":
            longer = change(shed, wall, 1, len(course) - 2, length=course[-2].length + inches("1 3/8"))
            (finding,) = told(longer)
            assert "take the same place, 1\" deep" in finding.figure
            assert (finding.course, finding.wall) in {(1, "wall 0"), (1, "wall 1")}
            return
    pytest.fail("no wall stops at its right corner in course 1")


def test_a_unit_outside_the_walls_and_a_hole_are_told(shed: Layout) -> None:
    course = shed.walls[2].courses[0].pieces
    own = next(index for index, piece in enumerate(course) if piece.shape != "return")
    outside = told(change(shed, 2, 1, own, left=course[own].left - inches(300)))
    assert any("outside the walls" in finding.figure for finding in outside)
    assert any(finding.figure == "nothing is laid here" for finding in outside)
    (hole,) = told(put(shed, 2, 1, course[:3] + course[4:]))
    assert (hole.figure, hole.wall, hole.course) == ("nothing is laid here", "wall 2", 1)
    assert abs((hole.at or 0) - course[3].left) <= inches(1)


def test_a_unit_in_an_opening_is_told(shed: Layout) -> None:
    course = shed.walls[0].courses[0].pieces
    inside = replace_middle(course, inches(40))
    assert any("outside the walls" in finding.figure for finding in told(put(shed, 0, 1, inside)))


def replace_middle(course: tuple[Piece, ...], at: int) -> tuple[Piece, ...]:
    """The course with one more unit, inside the door."""
    return (*course, course[1]._replace(left=at, shape="stretcher"))
