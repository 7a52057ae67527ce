"""A trade magazine's pages on how block is built, http://www.masonryconstruction.com, each named beside its check."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import broken, count_units, inches, make_job, make_masonry, make_opening, make_wall
from tests.layout.buildings import lay_rectangle, row_of
from tests.lists.walls import lay_text, line_of, plan_wall, take_off
from tests.rules.breaking import shift_even_courses, tell_bearing
from wallplan.catalogue.load import units
from wallplan.layout.build import lay
from wallplan.lengths import print_length, read_length
from wallplan.plan.coursing import set_coursing
from wallplan.rules.check import check

JOINT = inches("3/8")


def feet(text: str) -> int:
    return read_length(text, "feet")


@pytest.mark.parametrize("width", ["2' 8", "3' 4", "4'"])
def test_good_opening_widths_need_no_cut_and_a_door_s_own_width_does(width: str) -> None:
    # how-to/sizing-metal-door-openings_o: 2'-8", 3'-4", 4'-0", by 8 in.; a 2'-4" and a 3'-0" door with 2 in. jambs.
    for off, cuts in ((0, False), (inches(4), True)):
        left = feet("8'") - JOINT
        door = make_opening(left, left + feet(width) + JOINT - off, 0, feet("7' 4"), lintel="steel")
        layout = lay(make_job(make_masonry(joints_move=False), make_wall(left + feet(width) + feet("8'"), feet("8'"), [door])))
        assert (layout.walls[0].cutting > 0) == cuts


def test_door_of_three_feet_by_seven_deducts_27_and_a_half_block() -> None:
    # The same page: a 3'-0" by 7'-0" door with 2 in. jambs and a 4 in. head is an opening of 3'-4" by 7'-4", 11 courses. By
    # arithmetic 2.5 x 11 of the 180 block of 20 by 8 ft; clear width 3'-4 3/8"; panels of 8'-0" and 8'-8" close on 19'-11 5/8".
    left = feet("8'") - JOINT
    door = make_opening(left, left + feet("3' 4 3/8"), 0, feet("7' 4"), lintel="steel")
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(feet("20'") - JOINT, feet("8'"), [door])))
    assert layout.walls[0].wall.length - door.right == feet("8' 7 5/8")
    assert sum(course.top <= door.top for course in layout.walls[0].courses) == 11
    assert layout.walls[0].cutting == 0
    assert count_units(layout) == Fraction("152.5")
    assert not broken(check(layout))


def test_door_of_6_ft_8_in_with_a_wraparound_frame_is_ten_courses() -> None:
    # The same page.
    rows = set_coursing(make_wall(inches(64), feet("6' 8")), make_masonry())
    assert len(rows) == 10 and {row.kind for row in rows} == {"regular"}


def test_seven_foot_door_with_a_wraparound_frame_starts_on_a_4_in_course() -> None:
    # The same page: it needs a 4 in. starter course. 7 ft are 10 courses of 8 in. and 4; so is a wall of 8 ft 4 in. over it,
    # which begins with the half-high one, and nothing is cut or ripped.
    left = feet("8'") - JOINT
    door = make_opening(left, left + feet("3' 4") + JOINT, 0, feet("7'"), lintel="steel")
    wall = make_wall(left + feet("3' 4") + feet("8'"), feet("8' 4"), [door])
    rows = set_coursing(wall, make_masonry())
    assert [row.kind for row in rows] == ["half-high"] + ["regular"] * 12
    layout = lay(make_job(make_masonry(joints_move=False), wall))
    assert layout.walls[0].cutting == 0 and not broken(check(layout))


# how-to/concrete-masonry-lintels_o, after the PCA handbook: 1 in. a foot of clear span, not under 6 in. Clear feet, bearing in
# inches, and the bearing that the check says it is under.
BEARINGS = [(4, "5", '6"'), (4, "6", None), (8, "8", None), (10, "8", '10"'), (10, "10", None), (12, "8", '12"')]


@pytest.mark.parametrize(("clear", "bearing", "under"), BEARINGS)
def test_a_bearing_under_an_inch_a_foot_of_span_is_told(clear: int, bearing: str, under: str | None) -> None:
    gate = make_opening(inches("63 5/8"), inches("63 5/8") + inches(12 * clear), 0, inches(64), lintel="precast", name="Gate")
    layout = lay(make_job(make_masonry(), make_wall(gate.right + inches("63 5/8"), inches(96), [gate])))
    told = tell_bearing(layout, inches(bearing)).partition(", under the ")[2]
    assert told == (f"{under} of the PCA handbook: ask whoever sized it" if under else "")


# reinforced-concrete/rebar-laps.aspx: 48 bar diameters, Grade 60.
LAPS = [("#3", 18), ("#4", 24), ("#5", 30), ("#6", 36), ("#7", 42), ("#8", 48)]


@pytest.mark.parametrize(("bar", "lap"), LAPS)
def test_laps_of_bars(bar: str, lap: int) -> None:
    steel = f'bond_beams = ["top"]\n[order.steel]\nbar = "{bar}"\nbond_beam_bars = 1\n'
    assert lay_text(plan_wall("36'", "8'", steel)).job.order.steel.lap == inches(lap)
    # 36 ft less a joint of bond beam in bars of 20 ft: one lap, so bars of 20 ft and of the rest with the lap.
    together, rest = (print_length(inches("431 5/8") + more, "feet") for more in (inches(lap), inches(lap - 240)))
    why = line_of(take_off("36'", "8'", steel), f"bar {bar}").why
    assert f"(with 1 lap of {print_length(inches(lap), 'feet')} {together}: 1 whole and one of {rest})" in why


def test_pours_over_5_ft_need_cleanouts_and_are_not_what_is_usual() -> None:
    # how-to/how-to-place-grout_o: pours over 5 ft need cleanouts.
    steel = 'bond_beams = ["top"]\n[order.steel]\nbar = "#4"\ncell_spacing = \'32"\'\n'
    order = take_off("20'", "12'", steel)
    told = next(note for note in order.notes if "cleanouts" in note)
    assert "a pour over 5 ft needs cleanouts" in told and "Grout is poured 5'-0\" high at once at most" in told
    pours = [due for row in order.days for due in row.dues if due.kind == "grout"]
    assert len(pours) >= 3  # 12 ft is three pours of 5 ft at most


def test_head_joints_of_us_units_stay_within_a_quarter_tighter_and_three_eighths_wider() -> None:
    # how-to/mortar-joints-in-residential-construction_o: -1/4, +3/8 in. What the planner uses unasked is narrower.
    for unit in units().values():
        if unit.country == "United States":
            assert unit.joint - inches("1/4") <= unit.tightest_joint and unit.widest_joint <= unit.joint + inches("3/8")


def test_a_quarter_of_a_unit_is_a_lap_and_a_sixteenth_less_is_none() -> None:
    # how-to/reinforcing-walls_o (1999 code): head joints at least a quarter of the unit's length apart: 4 in. of 16; 3 of 12.
    for key, quarter in (("block-8", 4), ("brick-norman", 3), ("brick-modular", 2)):
        masonry = make_masonry(key, joints_move=False)
        assert masonry.least_lap == inches(quarter)
    masonry = make_masonry(joints_move=False)
    good = lay(make_job(masonry, make_wall(feet("8'") - JOINT, feet("2' 8"))))
    assert not broken(check(good))
    assert not broken(check(shift_even_courses(good, inches(4))))
    assert "lap" in {finding.rule for finding in broken(check(shift_even_courses(good, inches("4 1/16"))))}


def test_corners_of_12_in_block_take_a_filler_or_an_l_unit() -> None:
    # how-to/corners-with-12-inch-block_o: an L corner unit, or an 8 in. unit and a filler; with L units nothing is cut.
    plain = lay_rectangle("block-12", 128, 96, 4, keep_bond=True)
    assert sum(wall.cutting for wall in plain.walls) == 16  # one at each of four corners in every course
    ell = lay_rectangle("block-12", 128, 96, 4, keep_bond=True, corner_unit="L")
    assert sum(wall.cutting for wall in ell.walls) == 0
    assert {row_of(ell, 0, course)[0] for course in (1, 2)} == {16, -8}
