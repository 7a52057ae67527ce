"""How many courses a height holds."""

from __future__ import annotations

from wallplan.catalogue.unit import Unit
from wallplan.lengths import TICKS_PER_MM
from wallplan.plan.job import Masonry

THINNEST_RIP = 25 * TICKS_PER_MM
"""A lower rip breaks in the saw or under the next course; common practice, no source."""

MOST_COURSES = 5_000
"""Courses of one wall that a plan may ask for."""


def least_height(unit: Unit) -> int:
    """The lowest wall, in ticks: one bed joint and the thinnest rip."""
    return unit.bed_joint + THINNEST_RIP


def beds_close(height: int, courses: int, masonry: Masonry) -> bool:
    """Whether so many whole courses close the height: on the gauge, or with beds within the joints' range.

    The bed that the gauge itself leaves always counts as within it. Ticks.
    """
    unit = masonry.unit
    if unit.height_of_courses(courses) == height:
        return True
    low = min(masonry.tightest_joint, unit.bed_joint)
    high = max(masonry.widest_joint, unit.bed_joint)
    return low * courses <= height - unit.height * courses <= high * courses


def count_courses(height: int, masonry: Masonry) -> int:
    """Courses in a height in ticks, one half-high or ripped course included; at least one, also for no height."""
    unit = masonry.unit
    count = max(1, round(height / unit.gauge))
    if beds_close(height, count, masonry):
        return count
    full = height // unit.gauge
    while full and unit.height_of_courses(full) > height:
        full -= 1
    rest = height - unit.height_of_courses(full) - unit.bed_joint
    half_high = unit.half_high is not None and abs(rest - unit.half_high) <= 2
    return full + 1 if half_high or rest >= THINNEST_RIP else count
