"""Rules of piers: volumes by pencil, and units turned, moved or missing are found."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from tests.jobs import MM, broken, make_job, make_masonry, make_wall
from wallplan.layout.build import lay
from wallplan.layout.model import Layout, PierPiece
from wallplan.plan.job import Pier
from wallplan.rules.in_plan import check_in_plan
from wallplan.rules.piers import check_piers


def mm(value: str) -> int:
    return int(Fraction(value) * MM)


@pytest.fixture(scope="module")
def wall() -> Layout:
    """Four courses of UK brick, 4,715 long, a pier of 215 x 215 behind it."""
    masonry = make_masonry("brick-uk")
    laid = make_wall(mm("4715"), masonry.unit.height_of_courses(4), name="Wall")
    return lay(make_job(masonry, replace(laid, piers=(Pier("pier", mm("2250"), mm("215"), 0, mm("112.5")),)), measure="metric"))


def change(layout: Layout, course: int, *pieces: PierPiece) -> Layout:
    """The layout with other units in one course of its pier."""
    (laid,) = layout.walls
    (pier,) = laid.piers
    courses = list(pier.courses)
    courses[course - 1] = courses[course - 1]._replace(pieces=pieces)
    return replace(layout, walls=(replace(laid, piers=(replace(pier, courses=tuple(courses)),)),))


def told(layout: Layout) -> set[str]:
    return {finding.figure for finding in (*broken(check_piers(layout)), *broken(check_in_plan(layout)))}


def test_the_volume_is_that_of_wall_and_pier(wall: Layout) -> None:
    # 4,715 x 102.5 and 215 x 112.5 mm, 300 high: 152.2 litres.
    net = (Fraction(4715) * Fraction("102.5") + 215 * Fraction("112.5")) * 300 / 10**9
    (finding,) = check_in_plan(wall)
    assert finding.held
    assert finding.figure.endswith(f"1 wall with piers less openings {float(net):.3f}")
    assert all(one.held for one in check_piers(wall))


def test_a_unit_left_out_is_a_hole(wall: Layout) -> None:
    first = wall.walls[0].piers[0].courses[0].pieces
    assert "nothing is laid here" in told(change(wall, 1, first[0]))


def test_a_unit_in_the_place_of_another_is_found(wall: Layout) -> None:
    first = wall.walls[0].piers[0].courses[0].pieces
    moved = first[1]._replace(piece=first[1].piece._replace(left=first[0].piece.left + mm("92.5")))
    assert any("take the same place" in figure for figure in told(change(wall, 1, first[0], moved)))


def test_a_unit_that_leaves_the_pier_is_found(wall: Layout) -> None:
    second = wall.walls[0].piers[0].courses[1].pieces[0]
    assert any("outside the walls" in figure for figure in told(change(wall, 2, second._replace(near=second.near + mm("20")))))


def test_a_pier_that_no_unit_ties_in_is_found(wall: Layout) -> None:
    # Stretchers one behind the other in the courses that should go through.
    layout = wall
    for course in (1, 3):
        one = layout.walls[0].piers[0].courses[course - 1].pieces[0]
        flat = one._replace(along=mm("215"), deep=mm("102.5"))
        layout = change(layout, course, flat, flat._replace(near=mm("112.5")))
    found = broken(check_piers(layout))
    assert {finding.rule for finding in found} >= {"ties"}
    assert all(finding.limit == "a third of 215 mm" for finding in found if finding.rule == "ties")


def test_a_joint_over_a_joint_on_a_face_is_found(wall: Layout) -> None:
    second = wall.walls[0].piers[0].courses[1].pieces[0]
    half = second._replace(along=mm("102.5"))
    other = half._replace(piece=half.piece._replace(left=half.piece.left + mm("112.5")))
    # Over the joint of course 1, and under that of course 3.
    assert "pier: a joint 0 mm from the one below it, on its inside face (so in 2 courses)" in told(change(wall, 2, half, other))
