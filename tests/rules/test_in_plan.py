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
from wallplan.plan.load import read_plan
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


def change(layout: Layout, wall: int, course: int, index: int, **changes: object) -> Layout:
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


@pytest.fixture(scope="module")
def gabled() -> Layout:
    """Four walls of 8 in. block, 128 by 96 in. on the module, six courses to the eaves; gables of 8/12 on the ends of 96,
    and the back wall's top steps down by two courses in its middle."""
    return lay(read_plan("\n".join([
        'title = "Ferry landing"', 'measure = "feet"', 'sizes = "nominal"', 'masonry.unit = "block-8"',
        *(f'[[wall]]\nname = "{name}"\nlength = {length}\ncourses = 6\nleft = "outside corner"\nright = "outside corner"\n{more}'
          for name, length, more in (
              ("front", 128, ""), ("right", 96, '[[wall.gable]]\npitch = "8/12"'),
              ("back", 128, "[[wall.top_step]]\nat = 48\ndown = 16\n[[wall.top_step]]\nat = 80\nup = 16"),
              ("left", 96, '[[wall.gable]]\npitch = "8/12"')))]), "plan.toml"))


def test_the_volume_of_a_building_with_gables_and_steps_is_what_a_pencil_makes_of_it(gabled: Layout) -> None:
    # Ring of 127 5/8 by 95 5/8 in., 7 5/8 in. thick, 48 in. high; two triangles of 95 5/8 in. by a third of that high; less
    # what the top steps leave out. On the module a step down stands where the courses that end there end, 47 5/8 in. from
    # the left, a step up where the next begin, at 80: 32 3/8 by 16 in.
    thick, across, deep = (Fraction(eighths, 8) for eighths in (61, 1021, 765))
    ring = 2 * (across + deep) * thick - 4 * thick**2
    net = (ring * 48 + 2 * thick * deep * (deep / 3) / 2 - Fraction(259, 8) * thick * 16) / 1728
    (finding,) = check_in_plan(gabled)
    assert finding.held
    assert finding.figure.endswith(f"4 walls less openings {float(net):.3f}")


def find_raked(layout: Layout, wall: int, course: int) -> int:
    return next(index for index, piece in enumerate(layout.walls[wall].courses[course - 1].pieces) if piece.rake)


def test_a_raked_unit_left_square_stands_outside_the_gable(gabled: Layout) -> None:
    square = change(gabled, 1, 8, find_raked(gabled, 1, 8), rake=None)
    assert {finding.figure.split("stands")[0] for finding in told(square)} == {"a unit "}


def test_a_unit_missing_over_the_eaves_is_told(gabled: Layout) -> None:
    pieces = gabled.walls[1].courses[7].pieces
    (hole,) = told(put(gabled, 1, 8, (*pieces[:2], *pieces[3:])))
    assert (hole.figure, hole.wall, hole.course) == ("nothing is laid here", "right", 8)


def test_a_unit_over_a_step_of_the_top_is_told(gabled: Layout) -> None:
    # The unit that ends at the step goes on over it by a unit's length.
    pieces = gabled.walls[2].courses[4].pieces
    last = max(index for index, piece in enumerate(pieces) if piece.right <= inches(48))
    over = told(change(gabled, 2, 5, last, length=pieces[last].length + inches(16)))
    assert [finding.figure for finding in over] == ["a unit stands 16\" outside the walls"]


def test_a_unit_twice_in_a_gable_is_told(gabled: Layout) -> None:
    pieces = gabled.walls[1].courses[8].pieces
    (twice,) = told(put(gabled, 1, 9, (*pieces, pieces[2])))
    assert "take the same place" in twice.figure


def test_a_unit_of_a_wall_with_steps_in_its_neighbours_place_is_told(gabled: Layout) -> None:
    for course in (1, 2):
        pieces = gabled.walls[2].courses[course - 1].pieces
        if pieces[-1].shape == "return":
            longer = change(gabled, 2, course, len(pieces) - 2, length=pieces[-2].length + inches("1 3/8"))
            (finding,) = told(longer)
            assert "units of back and left take the same place, 1\" deep" in finding.figure
