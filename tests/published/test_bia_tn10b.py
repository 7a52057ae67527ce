"""Vertical coursing: BIA Technical Note 10B, Table 3, as reprinted in Masonry Magazine, April 1994, p. 25,
https://masonrymagazine.com/?pageID=25929. Heights are from joint centre to joint centre, printed to 1/16 in."""

from __future__ import annotations

import pytest

from tests.jobs import inches, make_masonry, make_wall
from wallplan.catalogue.load import find_unit
from wallplan.layout.coursing import set_coursing
from wallplan.lengths import print_length

UNITS = ("brick-roman", "brick-modular", "brick-engineer-modular", "brick-closure-modular")
"""Two courses to 4 in., three to 8, five to 16, one to 4."""

# Courses and the four columns. Row 1's fractions and the 2C and 1C columns beyond the note's print are n times the module.
TABLE = [
    (1, '2"', '2 11/16"', '3 3/16"', '4"'),
    (3, '6"', '8"', '9 5/8"', "1'-0\""),
    (5, '10"', "1'-1 5/16\"", "1'-4\"", "1'-8\""),
    (6, "1'-0\"", "1'-4\"", "1'-7 3/16\"", "2'-0\""),
    (9, "1'-6\"", "2'-0\"", "2'-4 13/16\"", "3'-0\""),
    (10, "1'-8\"", "2'-2 11/16\"", "2'-8\"", "3'-4\""),
    (12, "2'-0\"", "2'-8\"", "3'-2 3/8\"", "4'-0\""),
    (15, "2'-6\"", "3'-4\"", "4'-0\"", "5'-0\""),
    (24, "4'-0\"", "5'-4\"", "6'-4 13/16\"", "8'-0\""),
    (25, "4'-2\"", "5'-6 11/16\"", "6'-8\"", "8'-4\""),
    (30, "5'-0\"", "6'-8\"", "8'-0\"", "10'-0\""),
    (36, "6'-0\"", "8'-0\"", "9'-7 3/16\"", "12'-0\""),
    (45, "7'-6\"", "10'-0\"", "12'-0\"", "15'-0\""),
    (48, "8'-0\"", "10'-8\"", "12'-9 5/8\"", "16'-0\""),
    (50, "8'-4\"", "11'-1 5/16\"", "13'-4\"", "16'-8\""),
    (100, "16'-8\"", "22'-2 11/16\"", "26'-8\"", "33'-4\""),
]


@pytest.mark.parametrize("row", TABLE, ids=lambda row: f"{row[0]} courses")
def test_a_wall_of_so_many_courses_is_as_high_as_printed(row: tuple[int, str, str, str, str]) -> None:
    count, *printed = row
    for key, height in zip(UNITS, printed, strict=True):
        ticks = find_unit(key).height_of_courses(count)
        assert print_length(ticks, "feet") == height
        rows = set_coursing(make_wall(inches(64), ticks), make_masonry(key))
        assert (len(rows), rows[-1].top) == (count, ticks)


def test_every_course_of_a_wall_stands_at_its_own_height_of_the_table() -> None:
    # One wall of a hundred courses passes through every row.
    for column, key in enumerate(UNITS, start=1):
        rows = set_coursing(make_wall(inches(64), find_unit(key).height_of_courses(100)), make_masonry(key))
        assert [print_length(rows[line[0] - 1].top, "feet") for line in TABLE] == [line[column] for line in TABLE]


def test_bed_of_the_modular_brick_is_what_makes_the_coursing_work() -> None:
    # BIA Technical Note 10B (1993): 2 2/3 - 2 1/4 = 0.417 in., just over 3/8.
    assert find_unit("brick-modular").bed_joint * 1000 // inches(1) == 416
