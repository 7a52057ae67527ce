"""Coursing: beds, the wall's height, and pieces taller than the unit."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.jobs import broken, inches, make_job, make_masonry, make_wall
from tests.rules.breaking import breaks_of, change_courses, change_piece, places, told_of
from wallplan.layout.build import lay
from wallplan.layout.model import Course, Layout
from wallplan.rules.check import check


@pytest.fixture(scope="module")
def good() -> Layout:
    """Four courses of 8 in.; beds may be 1/4 to 1/2 in."""
    return lay(make_job(make_masonry(), make_wall(inches("63 5/8"), inches(32))))


def raise_courses(layout: Layout, first: int, by: int) -> Layout:
    """Every course from ``first`` up lifted, the first one's bed growing by as much."""
    def lift(course: Course) -> Course:
        if course.number < first:
            return course
        bottom = course.bottom + (by if course.number > first else 0)
        pieces = tuple(piece._replace(bottom=piece.bottom + by) for piece in course.pieces)
        return replace(course, bottom=bottom, top=course.top + by, pieces=pieces)

    return change_courses(layout, lift)


def coursing_told(layout: Layout) -> list[tuple[int | None, str, str]]:
    return [(one.course, one.figure, one.limit) for one in broken(check(layout)) if one.rule == "coursing"]


def test_thick_bed_is_told_under_the_course_that_lies_on_it(good: Layout) -> None:
    # 3/8 + 1/4 = 5/8 in. under course 3, and the top comes out 1/4 in. high.
    told = coursing_told(raise_courses(good, 3, inches("1/4")))
    assert (3, '5/8"', '1/4" to 1/2"') in told
    assert (4, '32 1/4"', '32", the wall\'s height') in told
    assert len(told) == 2


def test_thin_bed_is_told(good: Layout) -> None:
    # 3/8 - 1/4 = 1/8 in.
    told = coursing_told(raise_courses(good, 2, -inches("1/4")))
    assert (2, '1/8"', '1/4" to 1/2"') in told


def test_first_bed_may_be_three_quarters_but_no_more(good: Layout) -> None:
    # TMS 602 as summarised by the Mason Contractors Association,
    # https://masoncontractors.org/technical-talks/construction-tolerances: first bed 1/4 to 3/4 in.
    assert all(figure != '3/4"' for _, figure, _ in coursing_told(raise_courses(good, 1, inches("3/8"))))
    assert (1, '7/8"', '1/4" to 3/4"') in coursing_told(raise_courses(good, 1, inches("1/2")))


def test_one_raised_block_has_a_thick_bed_below_and_thin_ones_above(good: Layout) -> None:
    piece = good.walls[0].courses[1].pieces[1]
    told = told_of(change_piece(good, 2, 1, bottom=piece.bottom + inches("1/4")), "coursing")
    assert (2, piece.left) in places(told)
    assert {one.figure for one in told} == {'5/8"', '1/8"', 'a piece lies 1/4" over its course\'s line'}
    assert {one.course for one in told} == {2, 3}


def test_a_block_ripped_an_inch_lower_than_its_course_is_told(good: Layout) -> None:
    # 1 in. and the bed over it are less than a missing piece and more than a bed: its top is off the line.
    piece = good.walls[0].courses[1].pieces[1]
    told = breaks_of(change_piece(good, 2, 1, height=piece.height - inches(1), piece="cut", mark="A"), "coursing")
    assert [(one.course, one.at, one.figure) for one in told] == [(2, piece.left, 'a piece ends 1" under its course\'s line')]


def test_a_block_laid_an_eighth_low_is_told_though_its_beds_are_within_limits(good: Layout) -> None:
    piece = good.walls[0].courses[1].pieces[1]
    told = breaks_of(change_piece(good, 2, 1, bottom=piece.bottom - inches("1/8")), "coursing")
    assert [(one.course, one.at, one.figure) for one in told] == [(2, piece.left, 'a piece lies 1/8" under its course\'s line')]


def test_piece_taller_than_the_unit_is_told(good: Layout) -> None:
    told = coursing_told(change_piece(good, 4, 1, height=inches("7 3/4")))
    assert (4, '7 3/4"', '7 5/8", the unit') in told


def test_height_off_the_coursing_that_beds_can_take_is_held_with_the_bed_reached() -> None:
    # 32 1/4 in. in four courses: beds of 3/8 + 1/16 = 7/16 in.
    layout = lay(make_job(make_masonry(), make_wall(inches("63 5/8"), inches("32 1/4"))))
    finding = next(one for one in check(layout) if one.rule == "coursing")
    assert (finding.held, finding.figure) == (True, 'beds 7/16" to 7/16"')
