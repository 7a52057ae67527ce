"""The order of preference as one number: a better grade outweighs any number of worse ones."""

from __future__ import annotations

from itertools import pairwise

from wallplan.bond.cost import (
    BOND,
    BROKEN,
    CUTTING,
    FIRST_FULL,
    IMPOSSIBLE,
    JOINT,
    LAP,
    MIDDLE,
    SETTING,
    SHORT,
    SHOWS,
    count_broken,
    count_cutting,
    count_settings,
)


def test_grades_stand_in_the_order_of_preference() -> None:
    order = [IMPOSSIBLE, BROKEN, BOND, CUTTING, SHORT, SETTING, LAP, JOINT, SHOWS, MIDDLE, FIRST_FULL]
    assert order == sorted(order, reverse=True)


def test_a_million_courses_of_a_thousand_cuts_do_not_reach_the_next_grade() -> None:
    grades = [FIRST_FULL, MIDDLE, SHOWS, JOINT, LAP, SETTING, SHORT, CUTTING, BOND, BROKEN]
    assert all(low * 1_000_000 * 1_000 < high for low, high in pairwise(grades))


def test_counts_come_back_out_of_a_cost() -> None:
    cost = 2 * BROKEN + 17 * CUTTING + 5 * SHORT + 3 * SETTING + 999 * LAP + 12 * MIDDLE
    assert (count_broken(cost), count_cutting(cost), count_settings(cost)) == (2, 17, 3)
