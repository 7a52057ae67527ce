"""The rule of one-brick walls, broken in every way that it knows."""

from __future__ import annotations

from dataclasses import replace

from tests.jobs import MM, broken, make_job, make_masonry, make_opening, make_wall
from tests.layout.test_one_brick import lay_free, one_brick
from tests.rules.breaking import change_course, change_piece, told_of
from wallplan.layout.build import lay
from wallplan.rules.check import check
from wallplan.teaching.header_faults import relay


def test_walls_of_another_thickness_are_not_asked() -> None:
    layout = lay(make_job(make_masonry("brick-uk"), make_wall(2015 * MM, 300 * MM)))
    assert not [one for one in check(layout) if one.rule == "headers"]


def test_a_held_wall_tells_its_headers_and_closers() -> None:
    held = next(one for one in check(lay_free(890, 150)) if one.rule == "headers")
    # Course 1: S H S H S, course 2: H C S H S C H.
    assert held.held and held.figure == "5 headers and 2 closers go through; the bond is kept throughout"


def test_a_strip_narrower_than_a_header_is_told_to_be_a_brick_wide() -> None:
    window = make_opening(70 * MM, 890 * MM, 150 * MM, 300 * MM, "steel", 100 * MM, "Window")
    layout = lay(make_job(one_brick(), make_wall(round(2577.5 * MM), 450 * MM, (window,)), measure="metric"))
    told = [one for one in broken(check(layout)) if one.rule == "least piece"]
    assert {one.remedy for one in told} == {"make the masonry here as wide as one brick, 215 mm, or leave it out"}


def test_a_closer_in_the_run_is_told_with_its_place() -> None:
    good = lay_free(890, 150)
    turned = change_course(good, 2, lambda pieces: (
        pieces[0], pieces[2]._replace(left=round(112.5 * MM)), pieces[1]._replace(left=round(337.5 * MM)), *pieces[3:]))
    told = told_of(turned, "headers")
    assert [(one.course, one.at) for one in told if one.limit == "next to the quoin header"] == [(2, round(337.5 * MM))]


def test_a_closer_sawn_too_wide_is_told() -> None:
    told = told_of(change_piece(lay_free(890, 150), 2, 1, length=50 * MM), "headers")
    assert [one.figure for one in told] == ["a closer of 50 mm"]


def test_a_stretcher_with_nothing_behind_is_told() -> None:
    good = lay_free(890, 150)
    wall = good.walls[0]
    bare = replace(wall.courses[0], backing=wall.courses[0].backing[1:])
    told = told_of(replace(good, walls=(replace(wall, courses=(bare, *wall.courses[1:])),)), "headers")
    assert [(one.course, one.at, one.remedy) for one in told] == [(1, 0, "lay a like brick behind it")]


def test_a_course_of_another_bond_is_told() -> None:
    """English bond, 12 stretchers long: course 3 laid of 24 headers."""
    good = lay_free(2690, 450, "english")
    assert not broken(check(good))
    wall = relay(good.walls[0], 3, good.walls[0].courses[2].pieces, "H" * 24, good.job.masonry)
    told = [one for one in told_of(replace(good, walls=(wall,)), "headers") if one.limit == "a course of stretchers"]
    assert [(one.course, one.figure) for one in told] == [(3, "24 of 24 bricks out of turn")]


def test_a_flemish_course_of_stretchers_alone_is_told_though_it_laps() -> None:
    """2,240 mm are 40 quarters: ten stretchers, joints at 4, 8, 12 ..; the courses beside have theirs at 2, 3, 7, 9, 13, 15 .."""
    good = lay_free(2240, 450)
    wall = relay(good.walls[0], 3, good.walls[0].courses[2].pieces, "S" * 10, good.job.masonry)
    findings = broken(check(replace(good, walls=(wall,))))
    assert "lap" not in {one.rule for one in findings}
    assert [one.limit for one in findings if one.rule == "headers"] == ["headers and stretchers in turn"]


def test_a_straight_joint_at_the_back_alone_is_told() -> None:
    good = lay_free(890, 150)
    wall = good.walls[0]
    first, *rest = wall.courses[0].backing  # in two, with a joint at 154 mm, beside that of the closer above at 164 mm
    parted = (first._replace(length=149 * MM), first._replace(left=159 * MM, length=56 * MM), *rest)
    harmed = replace(good, walls=(replace(wall, courses=(replace(wall.courses[0], backing=parted), wall.courses[1])),))
    assert any(one.figure.startswith("at the back") for one in told_of(harmed, "headers"))
    assert {one.rule for one in broken(check(harmed))} == {"headers"}
