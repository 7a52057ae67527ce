"""The cover: a missing, overlapping, straying or loose piece is told where it is."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.jobs import INCH, broken, inches, make_job, make_masonry, make_wall, pump_house
from tests.rules.breaking import breaks_of, change_course, change_courses, change_piece, places, told_of
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.rules.check import check


@pytest.fixture(scope="module")
def good() -> Layout:
    return lay(pump_house())


@pytest.fixture(scope="module")
def plain() -> Layout:
    """Four courses of four blocks: 16 blocks' modules less a joint."""
    return lay(make_job(make_masonry(joints_move=False), make_wall(inches("63 5/8"), inches(32))))


def test_missing_piece_leaves_a_hole_as_wide_as_the_block_and_two_joints(plain: Layout) -> None:
    # Course 3 is 16 + 16 + 16 + 16: without the second, 16 to 31 5/8 in. is open and a joint each side.
    harmed = change_course(plain, 3, lambda pieces: (pieces[0], *pieces[2:]))
    told = breaks_of(harmed, "cover")
    assert places(told) == {(3, inches("15 5/8"))}
    assert told[0].figure == 'nothing is laid for 16 3/8"'
    assert told[0].limit == "pieces and joints only"


def test_first_piece_missing_is_seen_at_the_wall_end(plain: Layout) -> None:
    told = told_of(change_course(plain, 1, lambda pieces: pieces[1:]), "cover")
    assert (1, 0) in places(told)


@pytest.mark.parametrize("ticks", [1, 2, INCH // 16, INCH // 2])
def test_overlap_is_seen_down_to_a_tick(plain: Layout, ticks: int) -> None:
    # The second piece begins at 16 in.; the first is pushed over it, its left end staying flush.
    harmed = change_course(plain, 1, lambda pieces: (
        pieces[0]._replace(length=inches(16) + ticks), *pieces[1:]))
    told = told_of(harmed, "cover")
    assert places(told) == {(1, inches(16))}
    assert "overlap" in told[0].figure and told[0].limit == "no overlap"


def test_piece_laid_twice_is_seen(plain: Layout) -> None:
    harmed = change_course(plain, 2, lambda pieces: (pieces[0], *pieces))
    assert any("overlap" in one.figure for one in broken(check(harmed)) if one.rule == "cover")


@pytest.mark.parametrize("end", [0, -1])
@pytest.mark.parametrize("ticks", [1, INCH // 8])
def test_end_that_is_not_flush_is_seen_to_the_tick(plain: Layout, end: int, ticks: int) -> None:
    piece = plain.walls[0].courses[0].pieces[end]
    changes = {"left": piece.left + ticks, "length": piece.length - ticks} if end == 0 else {"length": piece.length - ticks}
    told = told_of(change_piece(plain, 1, end, **changes), "cover")
    side, at = ("left", ticks) if end == 0 else ("right", inches("63 5/8") - ticks)
    assert places(told) == {(1, at)}
    assert told[0].figure.endswith(f"off the {side} end") and told[0].limit == "flush"


def test_jamb_that_is_not_flush_names_the_opening(good: Layout) -> None:
    # Course 3: 16 16 16 | door 47 5/8 to 88 | ...: its third piece ends at the door's left jamb.
    piece = good.walls[0].courses[2].pieces[2]
    harmed = change_piece(good, 3, 2, length=piece.length - inches("1/4"), piece="cut", mark="A")
    assert places(breaks_of(harmed, "cover")) == {(3, inches("47 3/8"))}
    assert breaks_of(harmed, "cover")[0].figure == '1/4" off the left jamb of Door'


def test_piece_that_reaches_into_an_opening_is_seen(good: Layout) -> None:
    # The piece before the door, 16 in. long, laid 4 in. on: 32 + 4 to 51 5/8, 4 in. beyond the jamb.
    harmed = change_piece(good, 3, 2, length=inches("19 5/8"))
    told = told_of(harmed, "cover")
    assert places(told) == {(3, inches("47 5/8"))}
    assert told[0].figure == 'a piece reaches 4" into an opening'


def test_piece_lifted_off_its_course_is_seen(plain: Layout) -> None:
    piece = plain.walls[0].courses[3].pieces[1]
    harmed = change_piece(plain, 4, 1, bottom=piece.bottom + inches("1/8"))
    told = told_of(harmed, "cover")
    assert (4, piece.left) in places(told)
    assert told[0].figure == 'a piece leaves its course by 1/8"'


def test_course_that_begins_off_the_one_below_is_seen(plain: Layout) -> None:
    wall = plain.walls[0]
    courses = (*wall.courses[:2], replace(wall.courses[2], bottom=wall.courses[2].bottom + 960), *wall.courses[3:])
    told = told_of(replace(plain, walls=(replace(wall, courses=courses),)), "cover")
    assert (3, None) in places(told)


def test_courses_numbered_otherwise_than_from_the_foot_are_told(plain: Layout) -> None:
    told = breaks_of(change_courses(plain, lambda course: replace(course, number=8 if course.number == 4 else course.number)), "cover")
    assert [one.figure for one in told] == ["courses are not numbered from the foot"]


def test_equal_breaks_of_many_courses_are_told_once(plain: Layout) -> None:
    harmed = change_courses(plain, lambda course: replace(course, pieces=(
        *course.pieces[:-1], course.pieces[-1]._replace(length=course.pieces[-1].length - INCH // 8))))
    told = told_of(harmed, "cover")
    assert len(told) == 1
    assert told[0].figure == '1/8" off the right end (so in 4 courses)'
