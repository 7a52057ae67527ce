"""The US Navy's manuals for builders and engineering aids, NAVEDTRA 14043 and 14045: lengths, heights, counts, mortar, leads.

http://www.tpub.com/engbas/7-24.htm and http://constructionmanuals.tpub.com/14045/css/Table-4-3-...-145.htm. Rows of the
tables of lengths and heights are from memory and by geometry (n x 16 in., n x 8 in.); that an actual wall is 3/8 in. shorter
is 14045, Table 4-1, note.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.jobs import INCH, broken, count_units, inches, make_job, make_masonry, make_opening, make_wall, pieces_of
from tests.layout.buildings import count_course, lay_rectangle, row_of
from tests.lists.pencil import follow
from tests.lists.walls import count_whole, lay_text, line_of, plan_wall, take_off
from tests.long_run import examples
from wallplan.layout.build import lay
from wallplan.layout.leads import plan_leads
from wallplan.layout.model import Layout
from wallplan.lengths import TICKS_PER_FOOT, print_length, read_length
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.mix import share_volume
from wallplan.lists.order.mortar import YIELD_RULES
from wallplan.plan.coursing import set_coursing
from wallplan.plan.load import read_plan
from wallplan.rules.check import check

JOINT = inches("3/8")


def feet(text: str) -> int:
    return read_length(text, "feet")


NORMAN = """
title = "Long units"
measure = "feet"
[masonry]
unit = "brick-norman"
tightest_joint = "3/8"
widest_joint = "3/8"
[[wall]]
name = "Landing"
length = "{length}"
courses = 6
"""
# Table 4-1 (14043 Table 8-2): stretchers, length of 15 5/8 and of 11 5/8 in. units.
LENGTHS = [
    ("1", "1'-4", "1'-0"), ("1.5", "2'-0", "1'-6"), ("2", "2'-8", "2'-0"), ("2.5", "3'-4", "2'-6"), ("3", "4'-0", "3'-0"),
    ("4.5", "6'-0", "4'-6"), ("6", "8'-0", "6'-0"), ("7.5", "10'-0", "7'-6"), ("9", "12'-0", "9'-0"),
    ("12", "16'-0", "12'-0"), ("15", "20'-0", "15'-0"), ("20", "26'-8", "20'-0"),
]


@pytest.mark.parametrize(("stretchers", "block", "shorter"), LENGTHS)
def test_nominal_length_by_stretchers(stretchers: str, block: str, shorter: str) -> None:
    walls = (make_job(make_masonry(joints_move=False), make_wall(feet(block) - JOINT, inches(16))),
             read_plan(NORMAN.format(length=print_length(feet(shorter) - JOINT, "feet").strip('"')), "norman.toml"))
    for job in walls:
        layout = lay(job)
        assert layout.walls[0].cutting == 0
        assert count_units(layout, 1) == count_units(layout, 2) == Fraction(stretchers)


@settings(max_examples=examples(25))
@given(st.integers(2, 9), st.integers(1, 8), st.integers(2, 9), st.integers(3, 12), st.integers(0, 7))
def test_plans_in_eights_lay_without_a_cut_and_no_others(left: int, wide: int, right: int, sill: int, off: int) -> None:
    # 14043, http://tpub.com/builder2n3/103.htm: plan lengths and heights in eights. An opening anywhere on the eights, its sill
    # on a course; and the same opening 1 to 7 in. to the right, which cuts beside it in every course that it parts.
    def lay_hatch(by: int) -> Layout:
        at = inches(8 * left + by) - JOINT
        hatch = make_opening(at, at + inches(8 * wide) + JOINT, inches(8 * sill), inches(8 * sill + 32), lintel="steel")
        whole = inches(8 * (left + wide + right)) - JOINT
        return lay(make_job(make_masonry(joints_move=False), make_wall(whole, inches(8 * sill + 48), [hatch])))

    on = lay_hatch(0)
    assert on.walls[0].cutting == 0 and not broken(check(on))
    assert off == 0 or lay_hatch(off).walls[0].cutting >= 4


@pytest.mark.parametrize("stretchers", ["3", "9"])
def test_an_inch_off_the_table_cuts(stretchers: str) -> None:
    (block,) = (row[1] for row in LENGTHS if row[0] == stretchers)
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(feet(block) - JOINT + INCH, inches(16))))
    assert layout.walls[0].cutting >= 2  # one in each of the two courses


# Table 4-2 (14043 Table 8-3): courses, height of 7 5/8 and of 3 5/8 in. units.
HEIGHTS = [
    (1, '8"', '4"'), (2, "1'-4\"", '8"'), (3, "2'-0\"", "1'-0\""), (4, "2'-8\"", "1'-4\""), (5, "3'-4\"", "1'-8\""),
    (6, "4'-0\"", "2'-0\""), (9, "6'-0\"", "3'-0\""), (10, "6'-8\"", "3'-4\""),
    (12, "8'-0\"", "4'-0\""), (15, "10'-0\"", "5'-0\""), (20, "13'-4\"", "6'-8\""), (30, "20'-0\"", "10'-0\""),
]


@pytest.mark.parametrize(("courses", "block", "half_high"), HEIGHTS)
def test_nominal_height_by_courses(courses: int, block: str, half_high: str) -> None:
    for masonry, printed in ((make_masonry(), block), (make_masonry("brick-closure-modular"), half_high)):
        rows = set_coursing(make_wall(inches(64), feet(printed.strip('"'))), masonry)
        assert len(rows) == courses and {row.bed for row in rows} == {JOINT}
        assert print_length(rows[-1].top, "feet") == printed
    # 14045's note of heights has 3 5/8 in. units too: what the catalogue has as half-high.
    unit = make_masonry().unit
    assert unit.half_high is not None and unit.half_high + JOINT == inches(4)


def test_heights_are_from_joint_centre_to_joint_centre() -> None:
    # 14045, same note: a wall of n courses on a bed is as high as the table's row; without that first bed 3/8 in. less.
    rows = set_coursing(make_wall(inches(64), inches(96)), make_masonry())
    assert rows[-1].top == inches(96) and rows[0].bed == JOINT


def test_story_pole_stands_at_eights() -> None:
    # 14043: marks 8 in. apart, so the top of block n is 8n in. above the footing, on a first bed of 3/8 in.
    rows = set_coursing(make_wall(inches(64), inches(96)), make_masonry())
    assert [row.top // INCH for row in rows] == [8 * n for n in range(1, 13)]
    assert rows[0].bed == JOINT


def test_three_block_make_four_feet_and_three_courses_two() -> None:
    # 14043: 3 block to 4 ft of length (3/4 of the length in feet), 3 courses to 2 ft of height (3/2 of the height in feet).
    for length, height in ((8, 4), (20, 8), (36, 10), (100, 12)):
        layout = lay(make_job(make_masonry(joints_move=False),
                              make_wall(length * TICKS_PER_FOOT - JOINT, height * TICKS_PER_FOOT)))
        assert count_units(layout, 1) == Fraction(3, 4) * length
        assert len(layout.walls[0].courses) == Fraction(3, 2) * height


def test_wall_of_100_by_10_feet_takes_1125_block() -> None:
    # 14045 p. 145: 75 a course, 15 courses.
    layout = lay_text(plan_wall("100'", "10'"))
    assert count_units(layout, 1) == 75
    assert len(layout.walls[0].courses) == 15
    assert count_units(layout) == count_whole(take_off("100'", "10'")) == 1125


def test_wall_of_20_by_8_feet_takes_180_block() -> None:
    # 14043 p. 215, inputs; by arithmetic odd courses 15 full, even ones 14 full and two halves: 174 and 12.
    layout = lay_text(plan_wall("20'", "8'"))
    named = [piece.piece for course in layout.walls[0].courses for piece in course.pieces]
    assert (named.count("full"), named.count("half")) == (174, 12)
    assert print_length(layout.walls[0].wall.length, "feet") == "19'-11 5/8\""
    assert count_whole(take_off("20'", "8'")) == 180


def test_a_basement_of_22_by_32_ft_piece_by_piece() -> None:
    # 14043: 79 a course, ten courses 790; not the 81 of its outside lengths. By pencil: in 384 in. an even number of
    # corners can be run through (24 or 23 blocks), in 264 in. one of the two (256 in., 16 blocks): so one long wall runs
    # through at both ends where the other stops at both, and 24 + 16 + 23 + 16 = 79, with no cut and no half.
    layout = lay_rectangle("block-8", 264, 384, 10)
    through, stopped = [16] * 24, [-8, *[16] * 23, -8]
    for course in range(1, 11):
        assert count_course(layout, course) == 79
        assert sorted(row_of(layout, wall, course) for wall in (1, 3)) == sorted([through, stopped])
        assert sorted(row_of(layout, wall, course)[0] for wall in (0, 2)) == [-8, 16]
        for wall in (0, 2):
            assert row_of(layout, wall, course) in ([-8, *[16] * 16], [*[16] * 16, -8])
    # What runs through in odd courses stops in even ones.
    assert [row_of(layout, 1, course) == through for course in (1, 2)] in ([True, False], [False, True])
    assert sum(wall.cutting for wall in layout.walls) == 0
    assert count_whole(list_order(layout)) == 790


def test_a_building_of_20_by_8_ft_piece_by_piece() -> None:
    # 14045 counts 504 without minding corners (56 lin. ft x .75 = 42 a course, 12 courses; by area 448 x 1.125 = 504).
    # Shared corners, half a block off at each (the "duplicating factor"): 42 - 4 x 1/2 = 40 a course. By pencil
    # 15 + 5 + 15 + 5 where the long walls run through, 14 + 6 + 14 + 6 where the short do.
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


GARAGE = """
title = "Cart shed"
measure = "feet"
sizes = "nominal"
[masonry]
unit = "block-8"
tightest_joint = "3/8"
widest_joint = "3/8"
"""
GARAGE_WALLS = [
    ("Gate side", "24'", [("Gate", "7' 4", "9' 4", "0", "7' 4")]), ("Slip side", "40'", [("Window", "16'", "4'", "3' 4", "4'")]),
    ("Back", "24'", [("Door", "4'", "3' 4", "0", "7' 4")]), ("Quay side", "40'", []),
]


def test_a_building_with_openings_by_the_manual_s_way() -> None:
    # 14043 and 14045, their way with an invented building, by pencil: 24 x 40 ft outside, 9'-4" high: 128 ft round, 3/4 of it
    # 96, less half a block a corner 94 a course, 14 courses, 1,316. Deduct every opening in full: 9'-4" x 7'-4" is 7 x 11 =
    # 77, 4' x 4' is 3 x 6 = 18, 3'-4" x 7'-4" is 2 1/2 x 11 = 27 1/2: 1,193 1/2. Steel lintels take no unit's place.
    text = GARAGE
    for name, length, openings in GARAGE_WALLS:
        text += (f'[[wall]]\nname = "{name}"\nlength = "{length}"\nheight = "9\' 4"\nleft = "outside corner"\n'
                 'right = "outside corner"\n')
        for called, left, width, sill, height in openings:
            text += (f'[[wall.opening]]\nname = "{called}"\nfrom_left = "{left}"\nwidth = "{width}"\nsill = "{sill}"\n'
                     f'height = "{height}"\nlintel = "steel"\n')
    layout = lay_text(text)
    assert not broken(check(layout))
    assert sum(wall.cutting for wall in layout.walls) == 0
    assert count_whole(list_order(layout)) == Fraction("1193.5") == 1316 - 77 - 18 - Fraction("27.5")


@pytest.mark.parametrize(("across", "deep"), [(22, 32), (20, 8), (24, 40), (16, 16), (30, 50)])
def test_half_a_block_off_a_corner_and_course_is_exact_for_8_in_walls(across: int, deep: int) -> None:
    # 14045 pp. 145-146, chasing the bond: 3/4 of the outside lengths, less half a block for each corner.
    layout = lay_rectangle("block-8", 12 * across, 12 * deep, 2)
    assert sum(length for course in (1, 2) for wall in range(4) for length in row_of(layout, wall, course) if length > 0) == (
        2 * 16 * (Fraction(3, 4) * 2 * (across + deep) - 4 * Fraction(1, 2)))


STANDARD = """
title = "Brick wall"
measure = "feet"
[own_unit]
key = "us-standard"
kind = "brick"
length = "8"
height = "2 1/4"
thickness = "3 3/4"
joint = "1/2"
[masonry]
unit = "us-standard"
tightest_joint = "1/2"
widest_joint = "1/2"
[[wall]]
name = "Boat store"
length = "{length}"
courses = {courses}
[order]
spare = 10
"""


def test_the_wall_of_brick_worked_in_the_manual() -> None:
    # 14045 p. 159: 4 in. wall, 14 x 8 ft, brick of 8 x 2 1/4 x 3 3/4 in. on 1/2 in. joints: 23.38 sq in. a brick, 6.16 to the
    # sq ft, 690 brick, 10 % more 760; mortar 8.9 cu ft, 20 % more 10.7 (14045 Table 4-5: 11.7 cu ft to 1,000).
    # Whole bricks come near 14 by 8 ft with 20 brick (14'-1 1/2") and 35 courses (8'-0 1/4").
    order = list_order(lay_text(STANDARD.format(length="14' 1 1/2", courses=35)))
    area = Fraction("14.125") * Fraction(385, 48)
    brick = sum((line.net / (2 if "half" in line.item else 1) for line in order.lines if line.group == "units"), Fraction(0))
    assert abs(brick / area - Fraction("6.16")) <= Fraction("0.03")
    assert abs(brick - 690) <= 12  # 113 sq ft rather than 112
    mortar = line_of(order, "mortar")
    assert abs(mortar.net / brick * 1000 - Fraction("11.7")) <= Fraction("0.06")
    assert abs(mortar.net / brick * 760 - Fraction("8.9")) <= Fraction("0.05")
    assert abs(mortar.order / mortar.net - Fraction("1.2")) <= Fraction("0.002")


def test_hundred_sq_ft_of_this_brick_are_616() -> None:
    # The same example: 6.16 to the sq ft. 100 brick (70'-10" with a joint) by 100 courses (22'-11").
    layout = lay_text(STANDARD.format(length="70' 9 1/2", courses=100))
    area = Fraction(850, 12) * Fraction(275, 12)
    assert abs(count_units(layout) / area * 100 - 616) <= Fraction("0.5")


def test_hollow_block_takes_8_5_cu_ft_to_100_sq_ft_and_the_order_has_that_between_low_and_high() -> None:
    # 14043 Table 8-4, 14045 Table 4-3: 8.5 cu ft to 100 sq ft (112.5 block), 10 % waste in it (seen only as restated).
    mortar = line_of(take_off("20'", "10'"), "mortar")
    assert mortar.net <= 2 * Fraction("8.5") <= mortar.order
    assert any("NAVEDTRA 14043" in rule.source and abs(rule.per_100 * Fraction("1.125") - Fraction("8.5")) < Fraction("0.01")
               for rule in YIELD_RULES)


LOW_BLOCK = """
title = "Kerb wall"
measure = "feet"
sizes = "nominal"
[own_unit]
key = "low-block"
kind = "block"
length = "15 5/8"
height = "{height}"
thickness = "7 5/8"
joint = "3/8"
[masonry]
unit = "low-block"
[[wall]]
name = "Kerb"
length = "20'"
height = "10'"
[order]
mortar_per_100 = [7.556, 7.556]
"""


@pytest.mark.parametrize(("height", "cubic_feet"), [("7 5/8", "8.5"), ("3 5/8", "13.5")])
def test_block_of_8_and_of_4_in_by_the_table_s_two_figures(height: str, cubic_feet: str) -> None:
    # The same table: 8.5 cu ft to 100 sq ft of 7 5/8 in. block, 13.5 to 100 of 3 5/8 in.: at 8.5 / 1.125 to 100 full block.
    order = list_order(lay_text(LOW_BLOCK.format(height=height)))
    assert abs(line_of(order, "mortar").net / 2 / Fraction(cubic_feet) - 1) <= Fraction(1, 100)
    assert line_of(order, "mortar").net in follow(line_of(order, "mortar").why)


# 14043, https://constructionmanuals.tpub.com/14043/css/Estimating-Mortar-215.htm: a cubic yard by the rule of 38. 1:3 is
# printed; the others are arithmetic, and the book rounds 8.94 to 9. Cement, lime, sand; cubic feet of each.
RULE_OF_38 = [
    (("1", "0", "3"), ("9.5", "0", "28.5")), (("1", "1/4", "3"), ("8.94", "2.24", "26.82")),
    (("1", "1/2", "9/2"), ("6.33", "3.17", "28.5")), (("1", "1", "6"), ("4.75", "4.75", "28.5")),
]


@pytest.mark.parametrize(("parts", "printed"), RULE_OF_38)
def test_rule_of_38(parts: tuple[str, ...], printed: tuple[str, ...]) -> None:
    together = sum(map(Fraction, parts))
    for part, cubic_feet in zip(parts, printed, strict=True):
        assert abs(share_volume(Fraction(27), Fraction(part), Fraction(together)) - Fraction(cubic_feet)) <= Fraction("0.005")


def test_a_cubic_yard_of_mortar_one_to_three_is_ordered_as_9_and_a_half_sacks() -> None:
    # The same rule through an order: 360 block at 7.5 cu ft to 100 are 27 cu ft, a cubic yard: 9 1/2 sacks, 28 1/2 cu ft of sand.
    order = take_off("40'", "8'", "[order]\nmortar_per_100 = [7.5, 7.5]\n[order.mix]\ncement = 1\nsand = 3\n")
    mortar, cement, sand = (line_of(order, item) for item in ("mortar", "portland", "sand"))
    assert mortar.net == mortar.order == 27
    assert (cement.measure, cement.net, cement.order) == ("bag of 94 lb", Fraction("9.5"), 10)
    assert (sand.net, sand.order) == (Fraction("28.5"), 29)


def test_block_leads_rise_four_or_five_courses_half_a_block_back_each() -> None:
    # 14043, https://constructionmanuals.tpub.com/14043/css/Figure-8-12-Checking-horizontal-block-spacing-221.htm
    unit = make_masonry().unit
    assert unit.leads in (4, 5)
    plan = plan_leads(feet("40'"), unit.module, unit.leads)
    assert plan is not None
    assert {plan.limit(n) - plan.limit(n + 1) for n in range(1, plan.courses)} == {inches(8)}
    # A straightedge laid on the rack touches the corner of every stepped unit: so the steps rise and run alike.
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(feet("20'") - JOINT, inches(40))))
    ends = [max(piece.right for piece in pieces_of(layout, n) if piece.lead == "left") for n in range(1, 6)]
    tops = [layout.walls[0].courses[n - 1].top for n in range(1, 6)]
    assert {(tops[n + 1] - tops[n], ends[n] - ends[n + 1]) for n in range(4)} == {(inches(8), inches(8))}


def test_units_of_a_lead_are_the_ones_that_the_layout_marks() -> None:
    # A lead racked on one side only reaches 48, 40, 32, 24, 16 in. (five courses): 160 in. of block, ten units' worth.
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(feet("20'") - JOINT, inches(40))))
    lengths = [
        piece.length + JOINT for course in range(1, 6) for piece in pieces_of(layout, course) if piece.lead == "left"
    ]
    assert sum(lengths) == inches(160)


@pytest.mark.parametrize("key", ["block-4", "block-6", "block-10", "block-12"])
def test_a_corner_where_thickness_is_not_half_a_unit_takes_a_special_or_a_cut_in_every_course(key: str) -> None:
    # 14043 (tpub): if thickness is not half a unit, a unit of special length is needed at each corner in every course, for
    # half bond. Lengths on the module of 16 in. both ways, half bond kept exact.
    layout = lay_rectangle(key, 128, 96, 4, keep_bond=True)
    for course in range(1, 5):
        cuts = sum(piece.piece == "cut" for wall in layout.walls for piece in wall.courses[course - 1].pieces)
        assert cuts >= 4
    plain = lay_rectangle("block-8", 128, 96, 4, keep_bond=True)
    assert sum(wall.cutting for wall in plain.walls) == 0
    assert not broken(check(plain))
