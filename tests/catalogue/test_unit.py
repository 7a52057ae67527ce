"""The unit's own arithmetic."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from wallplan.catalogue.load import find_unit, units
from wallplan.catalogue.pieces import half_bat, stock_of

INCH = 24_384


@given(key=st.sampled_from(list(units())), courses=st.integers(0, 10_000))
def test_height_of_courses_is_within_half_a_tick_of_exact(key: str, courses: int) -> None:
    unit = find_unit(key)
    assert unit.coursing is not None
    count, height = unit.coursing
    assert abs(unit.height_of_courses(courses) * count - courses * height) * 2 <= count


def test_whole_repeats_of_five_courses_to_16_in_do_not_drift() -> None:
    brick = find_unit("brick-engineer-modular")
    assert brick.height_of_courses(5_000) == 16_000 * INCH
    assert 5_000 * brick.gauge != 16_000 * INCH, "a gauge in whole ticks would do, and coursing is not needed"


def test_without_a_coursing_the_gauge_is_one_course() -> None:
    plain = replace(find_unit("block-8"), coursing=None)
    assert [plain.height_of_courses(courses) for courses in (0, 1, 13)] == [0, 8 * INCH, 104 * INCH]


def test_half_bat_rounds_an_odd_tick_down() -> None:
    assert half_bat(101, 10) == 45
    assert half_bat(100, 10) == 45


def test_lengths_that_are_not_stocked_are_left_out() -> None:
    assert [piece.name for piece in stock_of(16, half=None, half_sawn=False)] == ["full"]
    assert [(piece.name, piece.sawn) for piece in stock_of(16, half=8, half_sawn=True, quarter=4)] == [
        ("full", False), ("half", True), ("quarter", False)]
