"""What the trade takes for granted, and what it works by hand. Common practice, no source; (hand work) marks pencil sums."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import (
    MM,
    broken,
    count_units,
    inches,
    make_job,
    make_masonry,
    make_opening,
    make_wall,
    nominal_lengths,
    pieces_of,
)
from tests.layout.buildings import Row, joints_of, lay_rectangle, row_of
from tests.lists.walls import lay_text, line_of, plan_wall, take_off
from wallplan.layout.build import lay
from wallplan.layout.leads import plan_leads
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.days import find_output
from wallplan.plan.job import Bond
from wallplan.rules.check import check

LEVEL = inches(48)
"""A mason's level is 4 ft long."""
JOINT = inches("3/8")


def test_five_full_blocks_are_set_out_at_80_inches() -> None:
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(inches(80) - JOINT, inches(16))))
    assert nominal_lengths(layout, 1) == [16, 16, 16, 16, 16]
    assert [piece.left for piece in pieces_of(layout, 1)] == [inches(16) * n for n in range(5)]


@pytest.mark.parametrize("key", ["block-8", "block-12", "brick-modular", "brick-standard"])
def test_lead_is_no_longer_than_a_four_foot_level_spans(key: str) -> None:
    masonry = make_masonry(key)
    plan = plan_leads(100 * masonry.module, masonry.module, masonry.leads)
    assert plan is not None
    assert plan.length <= LEVEL


def test_four_uk_bricks_make_900_millimetres() -> None:
    wall = make_wall((4 * 900 - 10) * MM, 300 * MM)
    layout = lay(make_job(make_masonry("brick-uk", joints_move=False), wall, measure="metric"))
    assert [piece.left for piece in pieces_of(layout, 1)[::4]] == [900 * MM * n for n in range(4)]


def test_the_nominal_trap() -> None:
    # Hand work: 8 in. block, free ends, 20 ft by 4 ft nominal: 19'-11 5/8" in fact; courses 1, 3, 5 have 15 full, 2, 4, 6 a
    # half, 14 and a half: 87 full and 6 halves. At 20 ft exactly, 3/8 over 14 joints is not seen: still no cut.
    for length in ("19' 11 5/8", "20'"):
        text = plan_wall(length, "4'").replace('sizes = "nominal"', 'sizes = "actual"')
        layout = lay_text(text)
        named = [piece.piece for course in layout.walls[0].courses for piece in course.pieces]
        assert (named.count("full"), named.count("half"), len(named)) == (87, 6, 93)
        assert not broken(check(layout))


def test_the_uk_window_with_true_piers() -> None:
    # Hand work: wall of 5,577.5 mm, window of 1,210 from 1,790: piers of 1,790 (8 bricks) and 2,577.5 (11 1/2) lay whole. The
    # wall has 24.83 bricks in its length, so every course over and under the window cuts: by hand two of 196 mm beside 23
    # full, or one of 177.5 beside 24, and no more.
    masonry = make_masonry("brick-uk", joints_move=False)
    window = make_opening(1790 * MM, 3000 * MM, 600 * MM, 1500 * MM, lintel="steel", name="Window")
    layout = lay(make_job(masonry, make_wall(int(Fraction("5577.5") * MM), 1800 * MM, [window]), measure="metric"))
    assert Fraction(int(Fraction("5587.5") * MM), masonry.module).limit_denominator(1000) == Fraction(149, 6)
    for course in layout.walls[0].courses:
        cuts = [piece for piece in course.pieces if piece.piece == "cut"]
        assert (len(cuts) == 0) if 600 * MM < course.top <= 1500 * MM else (1 <= len(cuts) <= 2)
        assert all(piece.length >= Fraction("102.5") * MM for piece in cuts)  # nothing under a half brick in the open wall
    assert layout.walls[0].cutting <= 2 * 12


def test_piers_of_one_brick_garden_wall_bays() -> None:
    # Hand work: 440 piers at 2,925 centres leave 2,485 between faces, 11 bricks and a joint; at 3,037.5, 11 1/2.
    for clear, bricks in (("2485", 11), ("2597.5", Fraction(23, 2))):
        length = int((Fraction(clear) - 20) * MM)
        layout = lay(make_job(make_masonry("brick-uk", joints_move=False), make_wall(length, 1500 * MM), measure="metric"))
        assert count_units(layout, 1) == bricks and layout.walls[0].cutting == 0


def test_twelve_courses_of_naive_beds_are_half_an_inch_short() -> None:
    # Hand work: three modular bricks with 3/8 in. beds are 7 7/8 in., not 8: over twelve courses 1/2 in. The wall is laid on
    # the gauge, so it is 32 in. and its beds 5/12.
    layout = lay_text(plan_wall("8'", "2' 8", unit="brick-modular"))
    naive = 12 * (inches("2 1/4") + JOINT)
    assert layout.walls[0].courses[-1].top - naive == inches("1/2")
    assert len(layout.walls[0].courses) == 12


CORNERS = [
    # The trade's table of corners, half bond kept exact: where a course begins with the wall's own unit (A), and where the
    # other leg's end shows (B). 6 in.: first block cut to 14 in.; 6 showing, then 16s. 8 in.: 16; 8 showing, then 16s.
    # 10 in.: 16; 10 showing, then 14. 12 in.: 16; 12 showing, then 12.
    ("block-6", 6, (14, 16), (-6, 16), 8),
    ("block-8", 8, (16, 16), (-8, 16), 8),
    ("block-10", 10, (16, 16), (-10, 14), 6),
    ("block-12", 12, (16, 16), (-12, 12), 4),
]
"""Unit, thickness, pieces at a corner in course A and in course B, and the lap of the joint against the other leg's end."""


@pytest.mark.parametrize("least", [4, 8])
@pytest.mark.parametrize(("unit", "thick", "course_a", "course_b", "beside_the_leg"), CORNERS)
def test_pieces_at_a_corner_with_exact_half_bond(unit: str, thick: int, course_a: Row, course_b: Row,
                                                 beside_the_leg: int, least: int) -> None:
    # Hand work: the first joint stands half a unit from the corner line of one course, on the module in the other. Lengths that
    # suit: 16 n in., in 6 in. block 16 n + 12. The joint against the other leg's end is no part of the bond that is kept,
    # else 4 in. pieces there would give 12 in. walls half bond as well, where the plan allows such slivers.
    more = 12 if thick == 6 else 0
    layout = lay_rectangle(unit, 128 + more, 96 + more, 4, keep_bond=True, least_piece=inches(least))
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


def test_sixteen_and_six_is_a_bad_end_and_fourteen_and_eight_the_same_length() -> None:
    # A sliver is traded for two larger pieces: a run of 22 in. past whole block ends 14 and 8, not 16 and 6.
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(inches(70) - JOINT, inches(16))))
    for course in (1, 2):
        lengths = nominal_lengths(layout, course)
        assert sum(lengths) == 70 and min(lengths) >= 8


def test_a_mason_lays_100_to_180_block_a_day_from_memory() -> None:
    assert find_output(make_job(make_masonry(), make_wall(inches(160), inches(96)))) == (100, 180)
    assert len({row.day for row in take_off("40'", "4'").days}) == 2  # 180 block at the least output


def test_usual_bearing_of_a_block_lintel_is_a_half_unit_each_side() -> None:
    text = plan_wall("16'", "8'", '[[wall.opening]]\nfrom_left = "6\'"\nwidth = "4\'"\nheight = "6\' 8"\n')
    layout = lay_text(text)
    assert layout.job.walls[0].openings[0].bearing == inches(8)
    course = pieces_of(layout, 11)
    lintel = [piece for piece in course if piece.shape == "lintel"]
    opening = layout.job.walls[0].openings[0]
    assert opening.left - lintel[0].left >= inches(8) and lintel[-1].right - opening.right >= inches(8)


def test_a_uk_one_brick_or_block_course_is_three_of_brick() -> None:
    block, brick = (make_masonry(key).unit for key in ("block-uk-100", "brick-uk"))
    assert block.height_of_courses(4) == brick.height_of_courses(12) == 900 * MM


@pytest.mark.parametrize(("bond", "halves"), [("half", 2), ("stack", 0)])
def test_half_units_stand_at_both_ends_of_every_other_course(bond: Bond, halves: int) -> None:
    layout = lay(make_job(make_masonry("block-8", bond, joints_move=False), make_wall(inches(160) - JOINT, inches(32))))
    counts = [sum(piece.piece == "half" for piece in course.pieces) for course in layout.walls[0].courses]
    assert sorted(counts) == [0, 0, halves, halves]


def test_five_percent_spare_of_block() -> None:
    (line,) = (line for line in take_off("100'", "8'").lines if line.item == "block-8 full")
    assert (line.net, line.order) == (882, 927)  # 44.1, up to 45


def test_british_trade_allows_half_a_cubic_metre_of_mortar_to_1000_brick_from_memory() -> None:
    # 0.5 to 0.6 m3 with frogs and waste, where full joints are 0.297 and 20 % of waste makes 0.36: the order says so, and with
    # mortar_waste = 100 it has about as much and says nothing.
    text = """
title = "Quay wall"
measure = "metric"
[masonry]
unit = "brick-uk"
[[wall]]
name = "Quay side"
length = 8990
height = 3000
"""
    usual, doubled = (list_order(lay_text(text + more)) for more in ("", "[order]\nmortar_waste = 100\n"))
    assert any("500 to 600 litres to 1,000 brick" in note and "mortar_waste = 100" in note for note in usual.notes)
    assert not any("to 1,000 brick" in note for note in doubled.notes)
    assert line_of(usual, "mortar").order / Fraction("1.6") < 400
    assert 500 <= line_of(doubled, "mortar").order / Fraction("1.6") <= 600


SMALL_FLEMISH = """
title = "Quay wall"
measure = "metric"
[masonry]
unit = "brick-uk"
bond = "flemish"
[[wall]]
name = "Quay wall"
length = 890
courses = 4
"""


def test_the_order_of_a_small_flemish_wall_by_pencil() -> None:
    # Hand work. Odd courses S H S H S: 3 pairs and 2 headers, 8 bricks. Even ones H C S H S C H: 2 pairs, 3 headers, 2 closers
    # from one brick, 8. In four courses 32 bricks, 2 of them ripped.
    (bricks,) = (line for line in list_order(lay_text(SMALL_FLEMISH)).lines if line.item == "brick-uk full")
    assert bricks.net == 32
    assert bricks.why.startswith("laid whole 30; sawn: 2 ripped along its length as A + A; 30 + 2 = 32")
