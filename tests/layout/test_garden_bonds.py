"""Garden wall, common and header bonds of walls one brick thick, course by course, against hand answers."""

from __future__ import annotations

import random
from dataclasses import replace
from itertools import pairwise

import pytest

from tests.jobs import MM, broken, make_job, make_opening, make_wall
from tests.layout.buildings import IN, OUT, build, rectangle
from tests.layout.test_one_brick import drawn, one_brick
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.job import HEADER_COURSES, Bond, Masonry, Opening
from wallplan.rules.check import check


def masonry_of(bond: Bond, stretchers: int | None = None, unit: str = "brick-uk") -> Masonry:
    """Masonry in one of these bonds, as a plan gives it."""
    return replace(one_brick(bond, unit), stretcher_courses=HEADER_COURSES.get(bond, 0) if stretchers is None else stretchers)


def lay_free(length: float, courses: int, bond: Bond, openings: tuple[Opening, ...] = (), stretchers: int | None = None) -> Layout:
    """A free wall of UK brick in mm, courses of 75 mm."""
    wall = make_wall(round(length * MM), 75 * courses * MM, openings)
    return lay(make_job(masonry_of(bond, stretchers), wall, measure="metric"))


def test_english_garden_wall_bond_by_hand() -> None:
    """2,690 mm: 12 stretchers; in courses of stretchers half bond, so a header at either end of every second one; course 4 of
    headers, with closers: two headers, two closers and 21 headers, 4 + 2 + 42 = 48 quarters."""
    layout = lay_free(2690, 8, "english garden wall")
    whole, broken_back, headers = "S" * 12, "H" + "S" * 11 + "H", "HC" + "H" * 21 + "CH"
    assert [drawn(layout, number) for number in range(1, 9)] == [whole, broken_back, whole, headers] * 2
    assert not broken(check(layout)) and layout.walls[0].cutting == 4


@pytest.mark.parametrize(("stretchers", "courses", "of_headers"), [
    (3, 12, [4, 8, 12]), (5, 13, [6, 12]), (4, 11, [5, 10]), (6, 14, [7, 14]), (1, 6, [2, 4, 6])])
def test_a_course_of_headers_after_so_many_of_stretchers(stretchers: int, courses: int, of_headers: list[int]) -> None:
    """US practice: a course of headers every fifth, sixth or seventh course. Free ends take odd and even numbers; of these every
    second course of headers lies between courses with a header at the end, and begins with a three-quarter."""
    layout = lay_free(2690, courses, "common", stretchers=stretchers)
    assert [number for number in range(1, courses + 1) if drawn(layout, number).count("H") > 20] == of_headers
    between = [number for number in of_headers if number % 2]
    assert all(layout.walls[0].courses[number - 1].pieces[0].length == 158.75 * MM for number in between)
    assert not broken(check(layout))


def test_half_a_brick_more_ends_in_turn() -> None:
    """2,802.5 mm: 50 quarters. Courses of stretchers have a header at one end, in turn; those of headers a closer at the one end
    and a three-quarter at the other, 2 + 1 + 44 + 3."""
    layout = lay_free(2802.5, 4, "english garden wall")
    assert {drawn(layout, 1), drawn(layout, 2)} == {"S" * 12 + "H", "H" + "S" * 12}
    pieces = layout.walls[0].courses[3].pieces
    assert [one.shape for one in pieces[:-1]] == ["header", "closer", *["header"] * 22]
    assert pieces[-1].length == 158.75 * MM and not broken(check(layout))


def test_flemish_garden_wall_bond_by_hand() -> None:
    """3,702.5 mm: 66 quarters, S H and four times S S S H and S; between, headers over the middle of three stretchers: H C S S H,
    then S S S H and S S C H."""
    layout = lay_free(3702.5, 4, "flemish garden wall")
    assert {drawn(layout, 1), drawn(layout, 2)} == {"S" + "HSSS" * 4 + "HS", "HCSS" + "HSSS" * 3 + "HSSCH"}
    assert not broken(check(layout)) and layout.walls[0].cutting == 4


def test_each_header_of_a_flemish_garden_wall_stands_over_the_middle_of_three_stretchers() -> None:
    for courses in zip(lay_free(5277.5, 4, "flemish garden wall").walls[0].courses, range(2), strict=False):
        course, _ = courses
        above = lay_free(5277.5, 4, "flemish garden wall").walls[0].courses[course.number]
        for header in [piece for piece in above.pieces[1:-1] if piece.shape == "header"]:
            place = next(place for place, one in enumerate(course.pieces) if one.left < header.left and one.right > header.right)
            around = course.pieces[max(0, place - 1):place + 2]
            near_end = place < 3 or place > len(course.pieces) - 4
            assert [one.shape for one in around] == ["stretcher"] * 3 or near_end
            middle = course.pieces[place]
            assert abs((header.left - middle.left) - (middle.right - header.right)) <= 2 * MM


def test_header_bond_by_hand() -> None:
    """2,690 mm: 48 quarters. Headers between two stretchers, 4 + 40 + 4; between, quoin headers with closers."""
    layout = lay_free(2690, 4, "header")
    assert {drawn(layout, 1), drawn(layout, 2)} == {"S" + "H" * 20 + "S", "HC" + "H" * 21 + "CH"}
    assert not broken(check(layout))


@pytest.mark.parametrize(("bond", "left", "wide", "long"), [
    ("english garden wall", 1790, 910, 4490), ("common", 1790, 910, 4490), ("header", 1790, 910, 4490),
    ("flemish garden wall", 1340, 1022.5, 3702.5)])
def test_openings_on_the_bond_keep_it(bond: Bond, left: float, wide: float, long: float) -> None:
    """Piers and widths by hand: 32, 16 + and 32 quarters; in Flemish garden wall bond 24, 18 + and 24."""
    opening = make_opening(round(left * MM), round((left + wide) * MM), 300 * MM, 750 * MM, "steel", 100 * MM, "Hatch")
    layout = lay_free(long, 12, bond, (opening,))
    told = [one.figure for one in check(layout) if one.rule == "headers"]
    assert not broken(check(layout))
    # In header bond a jamb's header stands over a joint of the course that goes on over it, so that it is broken there.
    assert ("the bond is kept throughout" in told[0]) is (bond != "header")


def test_at_a_corner_the_courses_of_headers_stand_one_course_apart() -> None:
    """A header shows at the quoin in even courses of one wall and in odd ones of the other."""
    masonry = masonry_of("english garden wall")
    layout = lay(rectangle(masonry, round(2690 * MM), round(3590 * MM), 12 * 75 * MM))
    assert not broken(check(layout))
    of_headers = [tuple(course.number for course in wall.courses if sum(one.shape == "header" for one in course.pieces) > 5)
                  for wall in layout.walls]
    assert sorted(set(of_headers)) == [(3, 7, 11), (4, 8, 12)]
    assert all(one != two for one, two in pairwise(of_headers))


def test_the_check_says_how_much_of_the_face_is_headers_and_where_the_joint_behind_is_straight() -> None:
    """A course of 23 headers and 2 of 46.25 and three of stretchers: 8 headers and 60 to the four, each 102.5 x 65 of
    the face: (23 + 2) x 102.5 over 4 x (2,690 less joints)."""
    told = [one for one in check(lay_free(2690, 8, "english garden wall")) if one.rule == "headers"][1]
    faces = [12 * 215, 2 * 102.5 + 11 * 215, 12 * 215, 23 * 102.5 + 2 * 46.25]
    share = (2 * 102.5 + 23 * 102.5) / sum(faces)
    assert told.figure.startswith(f"headers are {100 * share:.0f} % of the face, 300 mm apart; behind the 3 courses")
    assert told.held and not told.remedy and "TMS 402" in told.source


def test_too_many_courses_of_stretchers_are_told_with_the_codes_figure() -> None:
    """Nine courses of 75 mm from one course of headers to the next are 675 mm, over 24 in."""
    told = [one for one in check(lay_free(2690, 18, "common", stretchers=8)) if one.rule == "headers"][1]
    assert "675 mm apart" in told.figure and told.held and "nearer together" in told.remedy


def test_a_wall_too_low_for_a_course_of_headers_is_told() -> None:
    layout = lay_free(2690, 3, "english garden wall")
    told = broken(check(layout))
    assert layout.walls[0].doubtful  # so that lay asks the rules too
    assert [one.figure for one in told] == ["no course of headers in 3 courses"]


@pytest.mark.parametrize("number", range(8))
def test_random_buildings_hold_every_rule_in_plan_too(number: int) -> None:
    chance = random.Random(f"garden walls {number}")
    unit = chance.choice(("brick-uk", "brick-au", "brick-modular"))
    bond: Bond = ("english garden wall", "flemish garden wall", "common", "header")[number % 4]  # type: ignore[assignment]
    masonry = masonry_of(bond, None, unit)
    half = masonry.module // 2
    a, b, c, d = (chance.randrange(12, 28) * half - masonry.joint for _ in range(4))
    high = masonry.unit.height_of_courses(masonry.stretcher_courses * 2 + 4)
    job = rectangle(masonry, a, b, high) if number < 4 else build(
        masonry, high, (a + b, OUT), (c, OUT), (b, IN), (d, OUT), (a, OUT), (c + d, OUT))
    assert not broken(check(lay(job)))
