"""Units of piers one by one: their size in plan, what they are called, their course, their joints and the pier's faces."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from tests.jobs import MM, broken, make_job, make_masonry, make_wall
from wallplan.findings import RuleName
from wallplan.layout.build import lay
from wallplan.layout.model import Layout, PierCourse
from wallplan.plan.job import Pier
from wallplan.rules.check import check
from wallplan.rules.pier_units import check_pier_units


def mm(value: str) -> int:
    return int(Fraction(value) * MM)


@pytest.fixture(scope="module")
def wall() -> Layout:
    """Four courses of UK brick with a pier of 440 x 440 mm in the run, flush outside: four by four half bricks with joints."""
    masonry = make_masonry("brick-uk")
    laid = make_wall(mm("4715"), masonry.unit.height_of_courses(4), name="Wall")
    pier = Pier("pier", mm("2250"), mm("440"), 0, mm("337.5"))
    return lay(make_job(masonry, replace(laid, piers=(pier,)), measure="metric"))


def change_pier(layout: Layout, number: int, **changes: Any) -> Layout:
    """The layout with fields of one course of its pier changed."""
    (laid,) = layout.walls
    (pier,) = laid.piers
    courses = tuple(course._replace(**changes) if course.number == number else course for course in pier.courses)
    return replace(layout, walls=(replace(laid, piers=(replace(pier, courses=courses),)),))


def course_of(layout: Layout, number: int) -> PierCourse:
    return layout.walls[0].piers[0].courses[number - 1]


def change_unit(layout: Layout, number: int, *, piece: dict[str, Any] | None = None, **changes: Any) -> Layout:
    """The layout with the first unit of a course of its pier changed: where it lies, and the piece that it is."""
    first, *rest = course_of(layout, number).pieces
    changed = first._replace(piece=first.piece._replace(**(piece or {})), **changes)
    return change_pier(layout, number, pieces=(changed, *rest))


def told(layout: Layout) -> set[tuple[RuleName, int | None, str]]:
    return {(one.rule, one.course, one.figure) for one in broken(check_pier_units(layout))}


def test_a_good_pier_is_held(wall: Layout) -> None:
    count = sum(len(course.pieces) for course in wall.walls[0].piers[0].courses)
    assert [(one.held, one.figure) for one in check_pier_units(wall)] == [
        (True, f"pier: {count} units, each as it is made and jointed")]
    assert not broken(check(wall))


@pytest.mark.parametrize("number", [1, 2])
def test_a_unit_thinner_than_it_is_made_is_told(wall: Layout, number: int) -> None:
    first = course_of(wall, number).pieces[0]
    thinner = change_unit(wall, number, **({"deep": first.deep - mm("10")} if first.deep < first.along else
                                           {"along": first.along - mm("10")}))
    assert ("units", number) in {(rule, course) for rule, course, _ in told(thinner)}
    assert any("in plan" in figure for *_, figure in told(thinner))


def test_a_brick_by_another_name_is_told(wall: Layout) -> None:
    assert told(change_unit(wall, 1, piece={"piece": "half"})) == {("least piece", 1, "pier: 215 mm, called half")}
    assert told(change_unit(wall, 1, piece={"piece": "cut"})) == {("least piece", 1, "pier: 215 mm, called cut")}


def test_a_unit_of_another_kind_or_wall_is_told(wall: Layout) -> None:
    assert told(change_unit(wall, 1, piece={"shape": "lintel"})) == {("units", 1, "pier: a lintel counted in pier")}
    assert told(change_unit(wall, 1, piece={"of": "Wall"})) == {("units", 1, "pier: a stretcher counted in Wall")}


@pytest.mark.parametrize("changes", [{"height": mm("55")}, {"bottom": mm("15")}])
def test_a_unit_off_the_walls_course_is_told(wall: Layout, changes: dict[str, int]) -> None:
    assert told(change_unit(wall, 1, piece=changes)) == {("coursing", 1, "pier: a unit off the wall's course")}


def test_a_unit_moved_by_a_joint_closes_that_joint_and_leaves_the_face(wall: Layout) -> None:
    first = course_of(wall, 1).pieces[0]
    assert (first.piece.left, first.near) == (mm("2250"), 0)
    moved = told(change_unit(wall, 1, piece={"left": mm("2260")}))
    assert {("joints", 1, "pier: a joint of 0 mm"), ("cover", 1, "pier: a unit 10 mm off the pier's face")} <= moved


def test_a_course_that_is_tied_by_name_only_is_told(wall: Layout) -> None:
    tied, plain = (next(number for number in (1, 2) if course_of(wall, number).tied is want) for want in (True, False))
    assert told(change_pier(wall, tied, tied=False)) == {("units", tied, "pier: not tied in by name only")}
    assert told(change_pier(wall, plain, tied=True)) == {("units", plain, "pier: tied in by name only")}
