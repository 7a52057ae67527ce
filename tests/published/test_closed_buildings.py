"""Whole closed buildings in US block, piece by piece, and the pieces at a corner by thickness.

Counts: NAVEDTRA 14043 (basement of 22 by 32 ft) and 14045 (building of 20 by 8 ft). By the manuals corners are shared: the
average a course is (P - 4 t) / 16, P the outside perimeter and t the thickness in inches, nominal. The pieces of each wall
are pencil work: a wall that runs through at a corner begins there with its own unit, one that stops begins a thickness in.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import broken, inches, make_masonry
from tests.layout.buildings import count_course, rectangle
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.rules.check import check

Row = list[Fraction | int]


def row_of(layout: Layout, wall: int, course: int) -> Row:
    """Nominal lengths of a course's pieces in inches, left to right; the other wall's end as what it takes, negative."""
    joint = layout.job.masonry.joint
    pieces = layout.walls[wall].courses[course - 1].pieces
    lengths = [Fraction(piece.length + joint, inches(1)) * (-1 if piece.shape == "return" else 1) for piece in pieces]
    return [int(length) if length.denominator == 1 else length for length in lengths]


def lay_rectangle(unit: str, across: int, deep: int, courses: int, **changes: int) -> Layout:
    """A closed rectangle of so many nominal inches out to out, joints fixed."""
    masonry = make_masonry(unit, joints_move=False, **changes)
    layout = lay(rectangle(masonry, inches(across) - masonry.joint, inches(deep) - masonry.joint, inches(8 * courses)))
    assert broken(check(layout)) == []
    return layout


def test_a_basement_of_22_by_32_ft_piece_by_piece() -> None:
    # NAVEDTRA 14043: 79 a course, ten courses 790. In 384 in. an even number of corners can be run through (24 or 23
    # blocks), in 264 in. one of the two (256 in., 16 blocks): so one long wall runs through at both ends where the
    # other stops at both, and 24 + 16 + 23 + 16 = 79, with no cut and no half.
    layout = lay_rectangle("block-8", 264, 384, 10)
    through, stopped = [16] * 24, [-8, *[16] * 23, -8]
    for course in range(1, 11):
        assert count_course(layout, course) == 79
        long = [row_of(layout, wall, course) for wall in (1, 3)]
        assert sorted(long) == sorted([through, stopped])
        ends = sorted(row_of(layout, wall, course)[0] for wall in (0, 2))
        assert ends == [-8, 16]
        for wall in (0, 2):
            assert row_of(layout, wall, course) in ([-8, *[16] * 16], [*[16] * 16, -8])
    # What runs through in odd courses stops in even ones.
    assert [row_of(layout, 1, course) == through for course in (1, 2)] in ([True, False], [False, True])
    assert sum(wall.cutting for wall in layout.walls) == 0


def test_a_building_of_20_by_8_ft_piece_by_piece() -> None:
    # NAVEDTRA 14045 counts 504 without minding corners (56 lin. ft x .75 = 42 a course, 12 courses). Shared corners: 672 in.
    # round, less 32, is 40 a course: 15 + 5 + 15 + 5 where the long walls run through, 14 + 6 + 14 + 6 where the short do.
    layout = lay_rectangle("block-8", 240, 96, 12)
    long_through = [[16] * 15, [-8, *[16] * 5, -8]]
    short_through = [[-8, *[16] * 14, -8], [16] * 6]
    courses = [[row_of(layout, wall, course) for wall in range(4)] for course in range(1, 13)]
    assert courses in ([long_through * 2, short_through * 2] * 6, [short_through * 2, long_through * 2] * 6)
    assert sum(count_course(layout, course) for course in range(1, 13)) == 480


def test_a_basement_of_22_by_31_ft_where_book_and_geometry_disagree() -> None:
    # The book takes 76.5 (the row for 22 by 30 ft and a half for the foot more); round the building less the corners are
    # 1,272 - 32 = 1,240 in., 77.5 blocks. 372 in. is no whole number of blocks from any ends: one cut in each of the two
    # long walls and in every course, 2 x 10 in all and no fewer.
    layout = lay_rectangle("block-8", 264, 372, 10)
    for course in range(1, 11):
        laid = sum(length for wall in range(4) for length in row_of(layout, wall, course) if length > 0)
        assert laid == 1240
        assert Fraction(laid, 16) == Fraction("77.5")
        cuts = [[length for length in row_of(layout, wall, course) if length not in (16, 8, -8)] for wall in range(4)]
        assert [len(cut) for cut in cuts] == [0, 1, 0, 1]
    assert sum(wall.cutting for wall in layout.walls) == 20


CORNERS = [
    # practice.md's table of corners, half bond kept exact: where a course begins with the wall's own unit (A), and where the
    # other leg's end shows (B). 6 in.: first block cut to 14 in.; 6 showing, then 16s. 8 in.: 16; 8 showing, then 16s.
    # 10 in.: 16; 10 showing, then 14. 12 in.: 16; 12 showing, then 12.
    ("block-6", 6, (14, 16), (-6, 16), 8),
    ("block-8", 8, (16, 16), (-8, 16), 8),
    ("block-10", 10, (16, 16), (-10, 14), 6),
    ("block-12", 12, (16, 16), (-12, 12), 4),
]
"""Unit, thickness, pieces at a corner in course A and in course B, and the lap of the joint against the other leg's end."""


@pytest.mark.parametrize(("unit", "thick", "course_a", "course_b", "beside_the_leg"), CORNERS)
def test_pieces_at_a_corner_with_exact_half_bond(unit: str, thick: int, course_a: Row, course_b: Row,
                                                 beside_the_leg: int) -> None:
    # Common practice, hand work: the first joint stands half a unit from the corner line of one course, on the module in the
    # other. Lengths that suit: 16 n in., in 6 in. block 16 n + 12. Nothing shorter than a half stands at the corner (common
    # practice, no source), else a 4 in. piece there would give 12 in. walls half bond as well.
    more = 12 if thick == 6 else 0
    layout = lay_rectangle(unit, 128 + more, 96 + more, 4, keep_bond=True, least_piece=inches(8))
    for wall in range(4):
        ways = []
        for course in (1, 2):
            row = row_of(layout, wall, course)
            for end in (row[:2], row[::-1][:2]):
                assert tuple(end) == (course_a if end[0] > 0 else course_b)
                ways.append(end[0] > 0)
        assert ways in ([True, True, False, False], [False, False, True, True])
        one, other = (joints_of(row_of(layout, wall, course)) for course in ((1, 2) if ways[0] else (2, 1)))
        assert {min(abs(a - b) for a in one) for b in other[1:-1]} == {8}
        assert {min(abs(a - b) for a in one) for b in (other[0], other[-1])} == {beside_the_leg}


def joints_of(row: Row) -> list[Fraction | int]:
    """Where a course's head joints stand, nominal inches from the corner; the joint against the other leg's end too."""
    return [sum(abs(length) for length in row[:index]) for index in range(1, len(row))]


@pytest.mark.parametrize(("unit", "lap"), [("block-4", 4), ("block-6", 6), ("block-8", 8), ("block-10", 6), ("block-12", 4)])
def test_offset_at_a_plain_corner_of_full_units(unit: str, lap: int) -> None:
    # By geometry: with nothing cut, head joints of successive courses stand apart by the thickness's distance from a
    # multiple of 16 in.: 4, 6, 8, 6 and 4 in. Sides of 16 n + t take full units alone where every wall runs through at one
    # end and stops at the other.
    thick = int(unit.removeprefix("block-"))
    layout = lay_rectangle(unit, 96 + thick, 64 + thick, 4)
    for wall in range(4):
        rows = [row_of(layout, wall, course) for course in (1, 2)]
        assert {length for row in rows for length in row} == {16, -thick}
        one, other = (joints_of(row) for row in rows)
        assert min(abs(a - b) for a in one for b in other) == lap
