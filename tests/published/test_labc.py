"""LABC, a British warranty: https://www.labcwarranty.co.uk/blog/build-walls-to-last-guide-to-laying-bricks-and-blocks/."""

from __future__ import annotations

from tests.jobs import MM
from tests.lists.walls import lay_text
from wallplan.catalogue.load import units
from wallplan.lists.order.compose import list_order

WALL = """
title = "Quay wall"
measure = "metric"
[masonry]
unit = "brick-uk"
[[wall]]
name = "Quay side"
length = "2.24 m"
height = "4.5 m"
"""


def test_no_perpend_under_7_mm() -> None:
    # Perpends of 7 mm at least, beds of 10.
    for unit in units().values():
        if unit.country == "United Kingdom":
            assert unit.tightest_joint == 7 * MM
            assert unit.bed_joint == 10 * MM


def test_a_wall_rises_a_metre_and_a_half_a_day() -> None:
    # 1.5 m a day at most; another text says 1 m, and the order names both. 4.5 m of ten-brick courses: 60 courses of 75 mm,
    # twenty a day by height, so three days and 200 brick a day.
    order = list_order(lay_text(WALL))
    assert [(row.day, row.courses) for row in order.days] == [(1, (1, 20)), (2, (21, 40)), (3, (41, 60))]
    told = next(note for note in order.notes if "Days:" in note)
    assert "A wall rises at most 1500 mm a day (LABC, a British warranty; another text says 1 m)" in told


def test_with_the_other_texts_metre_it_takes_five_days() -> None:
    # The plan's own figure: 13 courses are 975 mm.
    order = list_order(lay_text(WALL + '[order]\nday_height = "1 m"\n'))
    assert [row.courses for row in order.days] == [(1, 13), (14, 26), (27, 39), (40, 52), (53, 60)]
