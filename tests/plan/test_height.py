"""Counting courses agrees with the coursing that is laid, and with the gauges of the trade."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wallplan.catalogue.load import find_unit, units
from wallplan.lengths import TICKS_PER_MM, read_length
from wallplan.plan.coursing import set_coursing
from wallplan.plan.height import beds_close, count_courses, least_height
from wallplan.plan.job import Masonry, Wall


def masonry_of(key: str) -> Masonry:
    unit = find_unit(key)
    return Masonry(unit, "half", unit.joint, unit.tightest_joint, unit.widest_joint, unit.module // 4, unit.module // 4, 5)


@pytest.mark.parametrize(("unit", "height", "courses"), [
    ("block-8", "8' 8", 13), ("block-8", "8'", 12), ("block-8", "8' 4", 13), ("block-8", "8' 2", 13), ("block-8", "8", 1),
    ("brick-modular", "8'", 36), ("brick-modular", "8", 3), ("brick-uk", "2.7 m", 36), ("brick-nf", "1 m", 12),
    ("brick-au", "602 mm", 7), ("block-8", "8' 1/2", 12),
])
def test_heights_hold_the_courses_of_their_gauge(unit: str, height: str, courses: int) -> None:
    assert count_courses(read_length(height, "feet"), masonry_of(unit)) == courses


@given(st.sampled_from(sorted(units())), st.integers(0, 6_000 * TICKS_PER_MM))
def test_the_count_is_that_of_the_courses_laid(key: str, over: int) -> None:
    masonry = masonry_of(key)
    height = least_height(masonry.unit) + over
    wall = Wall("x", 6_000 * TICKS_PER_MM, height, "end", "end", (), (), ())
    assert count_courses(height, masonry) == len(set_coursing(wall, masonry))


@given(st.sampled_from(sorted(units())), st.integers(1, 2_000))
def test_a_height_of_courses_counts_back(key: str, courses: int) -> None:
    masonry = masonry_of(key)
    height = masonry.unit.height_of_courses(courses)
    assert count_courses(height, masonry) == courses
    assert beds_close(height, courses, masonry)


def test_beds_close_within_the_joints_range_and_on_any_gauge() -> None:
    masonry = masonry_of("block-8")
    inch = read_length("1", "feet")
    assert beds_close(96 * inch + 12 * inch // 8, 12, masonry)
    assert not beds_close(96 * inch + 12 * inch // 8 + 1, 12, masonry)
    assert not beds_close(96 * inch - 12 * inch // 8 - 1, 12, masonry)
    assert beds_close(8 * inch, 3, masonry_of("brick-modular"))


def test_the_lowest_wall_is_a_bed_and_a_rip() -> None:
    assert least_height(find_unit("brick-uk")) == (10 + 25) * TICKS_PER_MM
