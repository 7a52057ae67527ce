"""Courses from a height, each figure worked by hand from the gauge."""

from __future__ import annotations

import itertools

from hypothesis import given
from hypothesis import strategies as st

from tests.jobs import INCH, MM, inches, make_masonry, make_opening, make_wall
from wallplan.plan.coursing import THINNEST_RIP, Row, bed_range, set_coursing


def tops(rows: tuple[Row, ...]) -> list[int]:
    return [row.top for row in rows]


def test_height_on_the_gauge_has_the_gauges_own_bed() -> None:
    # 8 ft 8 in. is thirteen courses of 8 in.
    rows = set_coursing(make_wall(inches(64), inches(104)), make_masonry())
    assert tops(rows) == [inches(8) * n for n in range(1, 14)]
    assert {(row.bed, row.unit_height, row.kind) for row in rows} == {(inches("3/8"), inches("7 5/8"), "regular")}


def test_three_modular_bricks_to_eight_inches() -> None:
    # 2 2/3 in. a course: tops at 2 2/3, 5 1/3, 8 in. exactly, beds of 2 2/3 - 2 1/4 = 5/12 in.
    rows = set_coursing(make_wall(inches(64), inches(8)), make_masonry("brick-modular"))
    assert tops(rows) == [inches(8) // 3, inches(16) // 3, inches(8)]
    assert {row.bed for row in rows} == {5 * INCH // 12}


def test_five_courses_to_sixteen_inches_do_not_drift() -> None:
    # A gauge of 3 1/5 in. is no whole number of ticks; forty courses still reach 128 in. to the tick.
    rows = set_coursing(make_wall(inches(64), inches(128)), make_masonry("brick-engineer-modular"))
    assert (len(rows), rows[-1].top) == (40, inches(128))
    assert [rows[n].top for n in (4, 9, 14)] == [inches(16), inches(32), inches(48)]


def test_beds_share_out_what_the_height_has_over() -> None:
    # 32 1/4 in. in four courses: 1/4 in. over four beds is 1/16 in. each.
    rows = set_coursing(make_wall(inches(64), inches("32 1/4")), make_masonry())
    assert tops(rows) == [inches("8 1/16") * n for n in range(1, 5)]
    assert {row.bed for row in rows} == {inches("7/16")}


def test_beds_close_where_the_height_is_short() -> None:
    # 95 1/4 in. in twelve courses: 3/4 in. short, 1/16 in. off each bed.
    rows = set_coursing(make_wall(inches(64), inches("95 1/4")), make_masonry())
    assert {row.bed for row in rows} == {inches("5/16")}


def test_four_inches_over_are_a_half_high_course() -> None:
    # 36 in. is four courses of 8 in. and one of 4 in.: a unit of 3 5/8 in. on a 3/8 in. bed.
    rows = set_coursing(make_wall(inches(64), inches(36)), make_masonry())
    assert [row.kind for row in rows].count("half-high") == 1
    odd = next(row for row in rows if row.kind == "half-high")
    assert (odd.unit_height, odd.bed) == (inches("3 5/8"), inches("3/8"))


def test_half_high_course_starts_the_wall_where_a_door_of_seven_feet_needs_it() -> None:
    # A 7 ft head, 84 in., is 4 + 10 x 8: a 4 in. starter course
    # (http://www.masonryconstruction.com/how-to/sizing-metal-door-openings_o).
    door = make_opening(inches(24), inches(64), 0, inches(84))
    rows = set_coursing(make_wall(inches(96), inches(108), [door]), make_masonry())
    assert (rows[0].kind, rows[0].top) == ("half-high", inches(4))
    assert inches(84) in tops(rows)


def test_half_high_course_ends_the_wall_where_openings_stand_on_eights() -> None:
    window = make_opening(inches(24), inches(64), inches(40), inches(80), name="Window")
    rows = set_coursing(make_wall(inches(96), inches(108), [window]), make_masonry())
    assert (rows[-1].kind, rows[-1].bottom) == ("half-high", inches(104))


def test_height_that_beds_cannot_take_has_one_ripped_course() -> None:
    # 101 in.: twelve courses are 96; 5 in. less a bed of 3/8 is a rip of 4 5/8. Thirteen would need beds of 0.14 in.
    rows = set_coursing(make_wall(inches(64), inches(101)), make_masonry())
    assert [(row.kind, row.unit_height) for row in rows if row.kind != "regular"] == [("ripped", inches("4 5/8"))]
    assert rows[-1].top == inches(101)


def test_no_rip_is_thinner_than_a_saw_can_leave() -> None:
    # 97 in. with beds fixed: a rip would be 5/8 in. high, under 25 mm. Twelve beds take it, whatever they come to.
    rows = set_coursing(make_wall(inches(64), inches(97)), make_masonry(joints_move=False))
    assert len(rows) == 12
    assert {row.kind for row in rows} == {"regular"}
    assert rows[-1].top == inches(97)


def test_bed_range_always_holds_the_gauges_own_bed() -> None:
    # The modular brick's bed is 5/12 in., wider than a plan's 3/8.
    low, high = bed_range(make_masonry("brick-modular", joints_move=False))
    assert (low, high) == (inches("3/8"), 5 * INCH // 12)


@given(height=st.integers(60 * MM, 4_000 * MM), key=st.sampled_from(["block-8", "brick-modular", "brick-nf", "brick-uk"]))
def test_courses_close_any_height_without_a_gap(height: int, key: str) -> None:
    masonry = make_masonry(key)
    rows = set_coursing(make_wall(inches(64), height), masonry)
    assert rows[0].bottom == 0 and rows[-1].top == height
    assert all(one.top == two.bottom for one, two in itertools.pairwise(rows))
    assert [row.number for row in rows] == list(range(1, len(rows) + 1))
    assert all(row.unit_height >= min(THINNEST_RIP, masonry.unit.height) for row in rows)
