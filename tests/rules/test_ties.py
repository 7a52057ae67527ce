"""Ties: every other course, a place left free for each, and steps that corners and plan pass over."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.jobs import broken, inches
from tests.layout.test_walls_that_abut import tee
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.load import read_plan
from wallplan.rules.check import check
from wallplan.rules.ties import check_ties


def told(layout: Layout) -> list[str]:
    return [finding.figure for finding in broken(check_ties(layout))]


def copy_course(layout: Layout, wall: int, source: int, target: int) -> Layout:
    """The layout with one course of a wall laid as another is."""
    laid = layout.walls[wall]
    courses = list(laid.courses)
    rise = courses[target - 1].bottom - courses[source - 1].bottom
    courses[target - 1] = replace(courses[target - 1], pieces=tuple(
        piece._replace(bottom=piece.bottom + rise) for piece in courses[source - 1].pieces))
    walls = list(layout.walls)
    walls[wall] = replace(laid, courses=tuple(courses))
    return replace(layout, walls=tuple(walls))


def test_a_tied_wall_is_told_with_its_courses() -> None:
    (finding,) = check_ties(tee())
    assert finding.held
    assert finding.figure == "2 of 4 courses run through Landing, 6'-0\" from its left end"


def test_a_course_that_is_not_tied_in_turn_is_told() -> None:
    assert told(copy_course(tee(), 1, 1, 2)) == [
        "not tied in two courses running, wall Landing", "stops, but the other wall parts for it, wall Landing",
        "not tied in two courses running, wall Landing"]


def test_a_main_wall_that_does_not_part_is_told() -> None:
    layout = copy_course(tee(), 0, 1, 2)
    assert told(layout) == ["runs through, but the other wall does not part for it, wall Landing"]
    assert any("take the same place" in finding.figure for finding in broken(check(layout)))


def test_a_tie_beside_its_place_is_told() -> None:
    layout = tee()
    stem = layout.walls[1]
    moved = replace(stem.wall, abuts=(replace(stem.wall.abuts[0], at=inches(73)),))
    assert told(replace(layout, walls=(layout.walls[0], replace(stem, wall=moved)))) == [
        "runs through, but the other wall does not part for it, wall Landing"] * 2


WALL = '[[wall]]\nname = "{}"\nlength = "16\'"\nheight = "8\'"\nleft = "outside corner"\nright = "outside corner"\n'
STEP = '[[wall.step]]\nat = "8\'"\n{} = \'8"\'\n'


@pytest.fixture(scope="module")
def stepped() -> Layout:
    """A closed building whose footing rises by a course in the first wall and falls again in the third."""
    from wallplan.layout.build import lay

    text = 'title = "Slip store"\nmeasure = "feet"\nsizes = "nominal"\n[masonry]\nunit = "block-8"\n'
    text += WALL.format("Landing") + STEP.format("up") + WALL.format("East") + WALL.format("Water") + STEP.format("down")
    return lay(read_plan(text + WALL.format("West"), "slip.toml"))


def test_corners_on_a_higher_footing_begin_with_their_own_first_course(stepped: Layout) -> None:
    assert broken(check(stepped)) == []
    (finding,) = (finding for finding in check(stepped) if finding.rule == "in plan")
    # Ring of 191 5/8 in. square, 7 5/8 in. thick, 96 in. high, less a course of 8 in. on the higher footing: the last 96 in. of
    # the first wall, all of the second and the first 96 in. of the third, corners once.
    thick, side = 7.625, 191.625
    net = (4 * side * thick - 4 * thick**2) * 96 - ((96 + side + 96) * thick - 2 * thick**2) * 8
    assert finding.figure.endswith(f"4 walls less openings {net / 1728:.3f}")


def gabled_tee() -> Layout:
    """A wall of 16 ft, 4 ft to the eaves under a gable of 4 ft, and a wall 8 ft high tied into it at 5 ft."""
    return lay(read_plan(
        'title = "Store"\nmeasure = "feet"\nsizes = "nominal"\nmasonry.unit = "block-8"\n'
        '[[wall]]\nname = "End"\nlength = "16\'"\nheight = "4\'"\n[[wall.gable]]\nrise = "4\'"\n'
        '[[wall]]\nname = "Stall"\nlength = "8\'"\nheight = "8\'"\n[[wall.abuts]]\nmeets = "End"\nat = "5\'"\n', "store.toml"))


def test_a_tie_is_judged_up_to_where_the_gable_leaves_its_place_and_no_further() -> None:
    # The slope rises 1 in 2: over the tie's near side, at 5 ft, it stands 2 ft 6 in. over the eaves: courses 1 to 9 are whole.
    layout = gabled_tee()
    assert told(layout) == []
    (held,) = check_ties(layout)
    assert held.figure.split(" run ")[0] in ("4 of 9 courses", "5 of 9 courses")


def test_a_tie_that_is_not_made_under_a_gable_is_found() -> None:
    layout = gabled_tee()
    through = [course.number for course in layout.walls[1].courses
               if any(piece.left < 0 and piece.shape != "return" for piece in course.pieces)]
    stops = next(number for number in range(6, 10) if number not in through)
    assert any("tied in two courses running" in figure for figure in told(copy_course(layout, 1, stops - 1, stops)))


def test_in_the_course_that_the_slope_cuts_over_a_tie_the_gable_parts_for_the_higher_wall() -> None:
    # The slope passes over the tie, 5 ft to 5 ft 7 5/8 in., from 6 ft 6 in. to 6 ft 9 13/16 in.: in course 10, 72 to 80 in.
    layout = gabled_tee()
    end, stall = layout.walls
    parts = [course.number for course in end.courses if any(piece.of == "Stall" for piece in course.pieces)]
    through = [course.number for course in stall.courses if any(piece.left < 0 and piece.shape != "return" for piece in course.pieces)]
    assert 10 in parts and set(parts) == set(through) & set(range(1, 11))
    assert broken(check(layout)) == []
