"""Courses laid in layers, by hand: levels are heights above the underside of the course's bed."""

from __future__ import annotations

from tests.jobs import inches, make_masonry, make_opening, make_wall
from wallplan.layout.layers import Part, find_parts, lay_in_layers
from wallplan.layout.reach import reach_openings
from wallplan.layout.spots import Spot, make_namer, make_spots
from wallplan.plan.coursing import set_coursing
from wallplan.plan.job import LintelKind

MASONRY = make_masonry(joints_move=False)
BLOCKS = tuple((inches(16) * n, inches("15 5/8")) for n in range(8))
"""Eight blocks from the left end."""


def parts_of(bottom: str, top: str, course: int, lintel: LintelKind = "steel") -> tuple[Part, ...]:
    window = make_opening(inches("31 5/8"), inches(80), inches(bottom), inches(top), lintel=lintel)
    wall = make_wall(inches("127 5/8"), inches(104), [window])
    rows = set_coursing(wall, MASONRY)
    return find_parts(rows[course - 1], reach_openings(wall, rows), MASONRY)


def layers(bottom: str, top: str, course: int) -> list[Spot]:
    rows = set_coursing(make_wall(inches("127 5/8"), inches(104)), MASONRY)
    row, namer = rows[course - 1], make_namer(MASONRY)
    return lay_in_layers(make_spots(BLOCKS, row, namer), parts_of(bottom, top, course), row, MASONRY, namer)


def test_courses_that_an_opening_cuts_whole_have_no_parts() -> None:
    assert all(parts_of("40", "88", course) == () for course in range(1, 14))


def test_sill_inside_a_course_is_a_part_of_it() -> None:
    part, = parts_of("44", "88", 6)
    assert (part.level, part.above, part.zone) == (inches(4), True, (inches("31 5/8"), inches(80)))


def test_head_inside_a_course_is_layered_as_far_as_the_lintel_bears() -> None:
    part, = parts_of("40", "84", 11)
    assert (part.level, part.above, part.zone) == (inches(4), False, (inches("23 5/8"), inches(88)))


def test_level_a_little_over_a_half_course_goes_down_to_it() -> None:
    # 44 1/4 in.: 4 1/4 above the line is within a bed of the 4 in. that a half-high unit reaches.
    part, = parts_of("44 1/4", "88", 6)
    assert part.level == inches(4)


def test_sill_is_met_by_half_high_units_under_the_opening_only() -> None:
    #        |16|16|  open   |16|16|16|    blocks at 0, 16, 80, 96, 112 stay whole;
    #        |  |  |==|==|==|  |  |  |     three at 32, 48, 64 are 3 5/8 in. high
    laid = layers("44", "88", 6)
    low = [spot for spot in laid if spot.height == inches("3 5/8")]
    assert [spot.left for spot in low] == [inches(32), inches(48), inches(64)]
    assert {spot.piece for spot in low} == {"full"}
    assert [spot.left for spot in laid if spot.height == inches("7 5/8")] == [inches(n) for n in (0, 16, 80, 96, 112)]
    assert len(laid) == 8


def test_rips_under_a_sill_are_cuts() -> None:
    # 45 in.: 5 in. less the bed of 3/8.
    low = [spot for spot in layers("45", "88", 6) if spot.height == inches("4 5/8")]
    assert [spot.piece for spot in low] == ["cut"] * 3


def test_jamb_inside_a_block_cuts_it_above_the_sill() -> None:
    # The opening from 40 to 80 in.: the block at 32 in. is split at 44 in.; above, 7 5/8 in. of it stay beside the jamb.
    window = make_opening(inches("39 5/8"), inches("79 5/8"), inches(44), inches(88), lintel="steel")
    wall = make_wall(inches("127 5/8"), inches(104), [window])
    rows = set_coursing(wall, MASONRY)
    row, namer = rows[5], make_namer(MASONRY)
    laid = lay_in_layers(
        make_spots(BLOCKS, row, namer), find_parts(row, reach_openings(wall, rows), MASONRY), row, MASONRY, namer)
    split = [spot for spot in laid if spot.left == inches(32)]
    assert [(spot.rise, spot.length) for spot in split] == [
        (inches("3/8"), inches("15 5/8")), (inches("4 3/8"), inches("7 5/8"))]
    assert all(spot.right <= window.left or spot.left >= window.right for spot in laid if spot.rise > inches(4))
