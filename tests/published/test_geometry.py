"""Plain mensuration: sums that need no authority but a pencil, for figures that no print was found for, and for laws of corners.

Nominal inches unless said.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import MM, broken, count_units, inches, make_job, make_masonry, make_opening, make_wall, pieces_of
from tests.layout.buildings import count_course, joints_of, lay_rectangle, row_of
from tests.lists.walls import lay_text, line_of, take_off
from wallplan.catalogue.load import find_unit
from wallplan.layout.build import lay
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.figures import FEET
from wallplan.lists.order.grout import measure_void
from wallplan.lists.order.mortar import YIELD_RULES
from wallplan.rules.check import check


@pytest.mark.parametrize(("unit", "lap"), [("block-4", 4), ("block-6", 6), ("block-8", 8), ("block-10", 6), ("block-12", 4)])
def test_offset_at_a_plain_corner_of_full_units(unit: str, lap: int) -> None:
    # With nothing cut, head joints of successive courses stand apart by the thickness's distance from a multiple of 16 in.:
    # 4, 6, 8, 6 and 4 in. Sides of 16 n + t take full units alone where every wall runs through at one end and stops at the
    # other; the average a course is then (P - 4 t) / 16, P the outside perimeter.
    thick = int(unit.removeprefix("block-"))
    across, deep = 96 + thick, 64 + thick
    layout = lay_rectangle(unit, across, deep, 4)
    for wall in range(4):
        rows = [row_of(layout, wall, course) for course in (1, 2)]
        assert {length for row in rows for length in row} == {16, -thick}
        one, other = (joints_of(row) for row in rows)
        assert min(abs(a - b) for a in one for b in other) == lap
    assert [count_course(layout, course) for course in (1, 2)] == [Fraction(2 * (across + deep) - 4 * thick, 16)] * 2


@pytest.mark.parametrize(("thick", "length"), [(4, 12), (6, 14), (8, 16), (10, 18), (12, 20)])
def test_length_of_the_corner_unit_that_restores_half_bond(thick: int, length: int) -> None:
    # W + 8 on the face: the first joint past the other leg's end (W) is half a unit on from it. With exact half bond and
    # nothing under a half unit laid, the joints next to the corner stand so or, cut shorter, by half a unit less or more.
    layout = lay_rectangle(f"block-{thick}", 128, 96, 4, keep_bond=True)
    firsts = {joints_of(row_of(layout, wall, course))[0] for wall in range(4) for course in (1, 2)}
    assert any((first - (length - 8) - 8) % 16 == 0 or (first - length) % 8 == 0 for first in firsts)


def test_panel_opening_and_panel_close_on_the_wall() -> None:
    # Two free ends n x 8 - 3/8, an opening n x 8 + 3/8: 7'-11 5/8" + 3'-4 3/8" + 8'-7 5/8" = 19'-11 5/8".
    panels, opening, whole = (inches("95 5/8"), inches("103 5/8")), inches("40 3/8"), inches("239 5/8")
    assert panels[0] + opening + panels[1] == whole
    door = make_opening(panels[0], panels[0] + opening, 0, inches(88))
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(whole, inches(104), [door])))
    for course in range(1, 11):
        pieces = pieces_of(layout, course)
        assert (pieces[0].left, pieces[-1].right) == (0, whole)
        assert {piece.right for piece in pieces} >= {panels[0]} and {piece.left for piece in pieces} >= {panels[0] + opening}
    assert layout.walls[0].cutting == 0
    assert not broken(check(layout))


def test_grout_of_solid_walls() -> None:
    # Real net volumes, beds filled: 8 in. 0.25 cu ft a block, 0.93 cu yd to 100; 12 in. 0.41 and 1.52.
    for key, each, hundred in (("block-8", "0.25", "0.93"), ("block-12", "0.41", "1.52")):
        void = measure_void(find_unit(key), FEET)
        assert void is not None
        assert abs(void - Fraction(each)) <= Fraction("0.005")
        assert abs(void * 100 / 27 - Fraction(hundred)) <= Fraction("0.02")


SOLID = '[order]\ngrout_waste = 0\n[order.steel]\nbar = "#4"\ncell_spacing = \'8"\'\n'


@pytest.mark.parametrize(("key", "yards"), [("block-8", "1.11"), ("block-12", "1.87")])
def test_grout_of_100_sq_ft_of_solid_wall(key: str, yards: str) -> None:
    # Gross less net and less the mortar of face-shell joints, 2.5 cu ft: 1.11 and 1.87 cu yd; the order counts cells with
    # their beds, so 2 % either way and, in 12 in. walls, 5 % less: it leaves head joints between flanges to the mortar.
    net = line_of(take_off("20'", "10'", SOLID, unit=key), "grout, cells").net / 27 / 2
    assert abs(net - Fraction(yards)) / Fraction(yards) <= Fraction(14, 100)


def test_mortar_of_uk_brick() -> None:
    # 0.297 m3 to 1,000 of 215 x 102.5 x 65 mm on 10 mm joints, solid, without frogs or waste; through an order of forty brick
    # by forty courses, its end joints missing: within 1 1/2 %.
    order = list_order(lay_text(UK_WALL))
    units = sum((line.net / (2 if "half" in line.item else 1) for line in order.lines if line.group == "units"), Fraction(0))
    assert units == 1600
    assert abs(line_of(order, "mortar").net / Fraction("1.6") - 297) <= Fraction("4.5")


@pytest.mark.parametrize(("bond", "length"), [("flemish", 4265), ("english", 4490)])
def test_mortar_of_a_one_brick_wall_is_what_its_bricks_leave(bond: str, length: int) -> None:
    # The wall's own volume, length x 0.9 x 0.215 m, less the bricks in it, closers by their size: to 2 %, for each piece is
    # reckoned with one head joint and a bed as wide as itself.
    text = UK_WALL.replace('unit = "brick-uk"', f'unit = "brick-uk"\nbond = "{bond}"').replace("8990", str(length))
    layout = lay_text(text.replace("height = 3000", "height = 900"))
    wide = {"stretcher": Fraction("102.5"), "header": Fraction(215), "closer": Fraction(215)}
    bricks = sum((Fraction(piece.length, MM) * Fraction(piece.height, MM) * wide[piece.shape]
                  for course in layout.walls[0].courses for piece in (*course.pieces, *course.backing)), Fraction(0))
    left = (length * 900 * 215 - bricks) / 1_000_000
    assert abs(line_of(list_order(layout), "mortar").net / left - 1) <= Fraction(2, 100)


UK_WALL = """
title = "Quay wall"
measure = "metric"
[masonry]
unit = "brick-uk"
tightest_joint = 10
widest_joint = 10
[[wall]]
name = "Quay side"
length = 8990
height = 3000
"""


def test_block_mortar_is_not_geometry() -> None:
    # Face-shell geometry of 8 in. block, 1 1/4 in. shells: 1.44 cu ft to 100 sq ft, a fifth of what jobs use. The order of
    # 100 sq ft (112.5 block) is five times it at the least.
    joint, shell = Fraction(3, 8), Fraction(5, 4)
    bed = 150 * 12 * joint * 2 * shell
    head = Fraction("112.5") * Fraction(61, 8) * joint * 2 * shell
    geometry = (bed + head) / 1728
    assert abs(geometry - Fraction("1.44")) <= Fraction("0.01")
    assert 5 <= YIELD_RULES[0].per_100 / (geometry / Fraction("1.125")) <= 6
    assert line_of(take_off("10'", "10'"), "mortar").net >= 5 * geometry


STANDARD = """
title = "Quay wall"
measure = "feet"
[own_unit]
key = "us-standard"
kind = "brick"
length = "8"
height = "2 1/4"
thickness = "3 3/4"
joint = "{joint}"
[masonry]
unit = "us-standard"
tightest_joint = "{joint}"
widest_joint = "{joint}"
[[wall]]
name = "Quay side"
length = "{length}"
courses = 40
[order]
mortar_waste = 0
"""
# Brick of 3 3/4 x 2 1/4 x 8 in. to 100 sq ft by joint. A field guide prints 698, 680, 635, 590 and 549: its first and last rows
# are right, those between are not.
STANDARD_ROWS = [("1/4", 698), ("3/8", 655), ("1/2", 616), ("5/8", 581), ("3/4", 549)]


@pytest.mark.parametrize(("joint", "count"), STANDARD_ROWS)
def test_standard_brick_to_100_sq_ft(joint: str, count: int) -> None:
    each = 8 + Fraction(joint)
    layout = lay_text(STANDARD.format(joint=joint, length=f"{float(40 * each - Fraction(joint))} in"))
    area = 40 * each * 40 * (Fraction(9, 4) + Fraction(joint)) / 144
    assert abs(count_units(layout) / area * 100 - count) <= Fraction("0.51")
    assert layout.walls[0].cutting == 0


def test_mortar_of_standard_brick_on_three_eighths_joints() -> None:
    # 8.65 cu ft to 1,000, 5.7 to 100 sq ft; the wall's end joints are missing, so up to 1 % less.
    order = list_order(lay_text(STANDARD.format(joint="3/8", length="27' 10 5/8")))
    assert abs(line_of(order, "mortar").net / Fraction("1.6") - Fraction("8.65")) <= Fraction("0.09")
