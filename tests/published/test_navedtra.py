"""US block by the Navy's manuals: NAVEDTRA 14043 and 14045, nominal lengths, heights, counts and leads.

The manuals' rows of lengths and heights are restated from memory and by geometry (n x 16 in., n x 8 in.); that an actual
wall is 3/8 in. shorter is NAVEDTRA 14045, Table 4-1, note.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import INCH, broken, inches, make_job, make_masonry, make_opening, make_wall, pieces_of
from wallplan.layout.build import lay
from wallplan.layout.coursing import set_coursing
from wallplan.layout.leads import count_racked_lead, plan_leads
from wallplan.layout.model import Layout
from wallplan.lengths import TICKS_PER_FOOT, print_length, read_length
from wallplan.rules.check import check

JOINT = inches("3/8")


def feet(text: str) -> int:
    return read_length(text, "feet")


def count_units(layout: Layout, course: int | None = None) -> Fraction:
    """Whole units with two halves to one, in a course or the whole wall."""
    courses = layout.walls[0].courses
    pieces = [piece for one in courses if course in (None, one.number) for piece in one.pieces]
    assert {piece.piece for piece in pieces} <= {"full", "half"}
    return sum((Fraction(1 if piece.piece == "full" else "1/2") for piece in pieces), Fraction(0))


@pytest.mark.parametrize(("stretchers", "nominal"), [
    ("1", "1'-4"), ("1.5", "2'-0"), ("2", "2'-8"), ("2.5", "3'-4"), ("3", "4'-0"), ("4.5", "6'-0"), ("6", "8'-0"),
    ("7.5", "10'-0"), ("9", "12'-0"), ("12", "16'-0"), ("15", "20'-0"), ("20", "26'-8"),
])
def test_nominal_length_by_stretchers(stretchers: str, nominal: str) -> None:
    masonry = make_masonry(joints_move=False)
    layout = lay(make_job(masonry, make_wall(feet(nominal) - JOINT, inches(16))))
    assert layout.walls[0].cutting == 0
    assert count_units(layout, 1) == count_units(layout, 2) == Fraction(stretchers)


@pytest.mark.parametrize(("courses", "block", "half_high"), [
    (1, '8"', '4"'), (2, "1'-4\"", '8"'), (3, "2'-0\"", "1'-0\""), (4, "2'-8\"", "1'-4\""), (5, "3'-4\"", "1'-8\""),
    (6, "4'-0\"", "2'-0\""), (9, "6'-0\"", "3'-0\""), (10, "6'-8\"", "3'-4\""), (11, "7'-4\"", "3'-8\""),
    (12, "8'-0\"", "4'-0\""), (15, "10'-0\"", "5'-0\""), (20, "13'-4\"", "6'-8\""), (30, "20'-0\"", "10'-0\""),
])
def test_nominal_height_by_courses(courses: int, block: str, half_high: str) -> None:
    unit = make_masonry().unit
    assert print_length(unit.height_of_courses(courses), "feet") == block
    assert unit.half_high is not None
    assert print_length(courses * (unit.half_high + unit.bed_joint), "feet") == half_high


def test_story_pole_stands_at_eights() -> None:
    # Marks 8 in. apart: the top of block n is 8n in. above the footing, on a first bed of 3/8 in.
    rows = set_coursing(make_wall(inches(64), inches(96)), make_masonry())
    assert [row.top // INCH for row in rows] == [8 * n for n in range(1, 13)]
    assert rows[0].bed == JOINT


def test_wall_of_100_by_10_feet_takes_1125_block() -> None:
    # NAVEDTRA 14045, p. 145: 75 a course, 15 courses.
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(100 * TICKS_PER_FOOT - JOINT, 10 * TICKS_PER_FOOT)))
    assert count_units(layout, 1) == 75
    assert len(layout.walls[0].courses) == 15
    assert count_units(layout) == 1125


def test_wall_of_20_by_8_feet_takes_180_block() -> None:
    # NAVEDTRA 14043, p. 215, inputs; by arithmetic odd courses 15 full, even ones 14 full and two halves: 174 and 12.
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(feet("20'") - JOINT, feet("8'"))))
    named = [piece.piece for course in layout.walls[0].courses for piece in course.pieces]
    assert (named.count("full"), named.count("half")) == (174, 12)
    assert print_length(layout.walls[0].wall.length, "feet") == "19'-11 5/8\""


@pytest.mark.parametrize(("length", "height", "block"), [("120'", "24'", 3240), ("100'", "6'", 675)])
def test_counts_of_a_suppliers_rule_sheet(length: str, height: str, block: int) -> None:
    # 112.5 block to 100 sq ft (NCMA TEK 14, 1969, https://masonrymagazine.com/?pageID=17919), two walls of a supplier's sheet.
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(feet(length) - JOINT, feet(height))))
    assert count_units(layout) == block
    square_feet = Fraction(feet(length), TICKS_PER_FOOT) * Fraction(feet(height), TICKS_PER_FOOT)
    assert block / square_feet * 100 == Fraction("112.5")


def test_timed_course_of_28_feet_is_21_units() -> None:
    # NCMA's laboratory course, Masonry Magazine, June 1989, p. 10, https://masonrymagazine.com/?pageID=24988.
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(feet("28'") - JOINT, inches(16))))
    assert count_units(layout, 1) == 21


def test_door_of_three_feet_by_seven_deducts_27_and_a_half_block() -> None:
    # Opening 3'-4" by 7'-4" nominal (http://www.masonryconstruction.com/how-to/sizing-metal-door-openings_o): 2.5 x 11
    # of the 180; clear width 3'-4 3/8"; panels of 8'-0" and 8'-8" either side close on 19'-11 5/8". Steel lintel: no unit.
    left = feet("8'") - JOINT
    door = make_opening(left, left + feet("3' 4 3/8"), 0, feet("7' 4"), lintel="steel")
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(feet("20'") - JOINT, feet("8'"), [door])))
    assert layout.walls[0].wall.length - door.right == feet("8' 7 5/8")
    assert layout.walls[0].cutting == 0
    assert count_units(layout) == Fraction("152.5")
    assert not broken(check(layout))


@pytest.mark.parametrize("width", ["2' 8", "3' 4", "4'"])
def test_good_block_openings_need_no_cut(width: str) -> None:
    # Steps of 8 in., http://www.masonryconstruction.com/how-to/sizing-metal-door-openings_o.
    left = feet("8'") - JOINT
    door = make_opening(left, left + feet(width) + JOINT, 0, feet("7' 4"), lintel="steel")
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(door.right + feet("8'") - JOINT, feet("8'"), [door])))
    assert layout.walls[0].cutting == 0


def test_control_joints_at_25_feet_leave_panels_without_a_cut() -> None:
    # NCMA TEK 10-2B (2005): never more than 25 ft apart. 25 ft is 18 3/4 blocks, so a joint there cuts; 24 ft is 18.
    masonry = make_masonry(joints_move=False)
    cuts = []
    for panel in ("24'", "25'"):
        wall = make_wall(2 * feet(panel) - JOINT, feet("8'"), control_joints=[feet(panel) - JOINT // 2])
        layout = lay(make_job(masonry, wall))
        assert not broken(check(layout))
        cuts.append(layout.walls[0].cutting)
    assert cuts[0] == 0
    assert cuts[1] == 2 * 12  # one in each panel and course: 4 in. over, with the next block as one cut of at least half


def test_block_leads_rise_four_or_five_courses_half_a_block_back_each() -> None:
    # NAVEDTRA 14043, https://constructionmanuals.tpub.com/14043/css/Figure-8-12-Checking-horizontal-block-spacing-221.htm
    unit = make_masonry().unit
    assert unit.leads in (4, 5)
    plan = plan_leads(feet("40'"), unit.module, unit.leads)
    assert plan is not None
    assert {plan.limit(n) - plan.limit(n + 1) for n in range(1, plan.courses)} == {inches(8)}


@pytest.mark.parametrize(("bricks", "units"), [(5, 15), (7, 28)])
def test_lead_rises_as_many_courses_as_its_first_has_units(bricks: int, units: int) -> None:
    # http://zhclg.com/brickwork-bricklaying/building-the-third-and-remaining-courses.htm: 7 bricks, 7 courses; the sums
    # 7 + 6 + ... + 1 = 28 and 5 + 4 + ... + 1 = 15.
    assert count_racked_lead(bricks) == (bricks, units)


def test_units_of_a_lead_are_the_ones_that_the_layout_marks() -> None:
    # A lead racked on one side only reaches 48, 40, 32, 24, 16 in. (five courses): 160 in. of block, ten units' worth.
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(feet("20'") - JOINT, inches(40))))
    lengths = [
        piece.length + JOINT for course in range(1, 6) for piece in pieces_of(layout, course) if piece.lead == "left"
    ]
    assert sum(lengths) == inches(160)
