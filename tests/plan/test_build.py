"""A sound plan becomes the job it describes: sizes, defaults, nominal sizes, corners left as ends."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.long_run import examples
from tests.plan.kiosk import KIOSK, changed
from tests.strategies import nearly_valid_plans, plan_tables, plan_texts, write_plan
from wallplan.catalogue.load import find_unit
from wallplan.findings import PlanError
from wallplan.lengths import read_length
from wallplan.plan.height import count_courses
from wallplan.plan.job import Job, Masonry, Opening
from wallplan.plan.load import read_plan


def feet(text: str) -> int:
    return read_length(text, "feet")


def read(text: str) -> Job:
    return read_plan(text, "kiosk.toml")


def test_the_kiosk_is_read_to_the_tick() -> None:
    job = read(KIOSK)
    assert (job.title, job.measure, job.sizes, job.date) == ("Ferry landing", "feet", "actual", None)
    landing, water = job.walls
    assert (landing.name, landing.length, landing.height) == ("Landing side", feet("20'"), feet("8' 8"))
    assert landing.openings == (
        Opening("Door", feet("4'"), feet("7' 4"), 0, feet("7' 4"), "block", feet("8")),
        Opening("Window", feet("10' 8"), feet("14' 8"), feet("3' 4"), feet("7' 4"), "block", feet("8")),
    )
    assert (water.name, water.length, water.height) == ("Water side", feet("12'"), feet("8' 8"))
    assert (water.left_end, water.right_end, water.control_joints, water.bond_beams) == ("end", "end", (), ())


def test_masonry_left_out_is_the_units_own() -> None:
    assert read(KIOSK).masonry == Masonry(
        unit=find_unit("block-8"), bond="half", joint=feet("3/8"), tightest_joint=feet("1/4"), widest_joint=feet("1/2"),
        least_lap=feet("4"), least_piece=feet("4"), leads=5)


def test_masonry_given_is_taken() -> None:
    given_ = 'unit = "block-8"\nbond = "third"\njoint = "1/2"\ntightest_joint = 0\nwidest_joint = "3/4"\n'
    masonry = read(changed('unit = "block-8"\n', given_ + 'least_lap = 5\nleast_piece = "6"\nleads = 4\nkeep_bond = true\n')).masonry
    assert (masonry.bond, masonry.joint, masonry.tightest_joint, masonry.widest_joint) == (
        "third", feet("1/2"), 0, feet("3/4"))
    assert (masonry.least_lap, masonry.least_piece, masonry.leads, masonry.keep_bond) == (feet("5"), feet("6"), 4, True)


@pytest.mark.parametrize(("bond", "lap"), [("half", 4), ("third", 4), ("quarter", 4)])
def test_the_usual_lap_is_a_quarter_unit_and_never_over_the_bonds_own(bond: str, lap: int) -> None:
    masonry = read(changed('unit = "block-8"\n', f'unit = "block-8"\nbond = "{bond}"\n')).masonry
    assert masonry.least_lap == feet(str(lap)) <= masonry.ideal_lap


@given(plan_tables())
@settings(max_examples=examples(60))
def test_no_default_asks_for_more_than_the_bond_can_give(table: dict[str, object]) -> None:
    masonry = read(write_plan(table)).masonry
    assert masonry.tightest_joint <= masonry.joint <= masonry.widest_joint
    assert masonry.bond == "stack" or masonry.least_lap <= masonry.ideal_lap
    assert 2 * masonry.least_piece <= masonry.module


@pytest.mark.parametrize(("unit", "measure", "lintel", "bearing"), [
    ("block-8", "feet", "block", "8 in"), ("block-ca-190", "metric", "block", "200 mm"),
    ("block-uk-100", "metric", "precast", "200 mm"), ("brick-modular", "feet", "steel", "4 in"),
    ("brick-uk", "metric", "steel", "100 mm"),
])
def test_lintel_and_bearing_left_out_follow_the_unit(unit: str, measure: str, lintel: str, bearing: str) -> None:
    job = read(KIOSK.replace("block-8", unit).replace('"feet"', f'"{measure}"'))
    assert {(opening.lintel, opening.bearing) for opening in job.walls[0].openings} == {(lintel, feet(bearing))}


def test_no_lintel_has_no_bearing() -> None:
    text = changed('  height = "7\' 4"\n', '  height = "7\' 4"\n  lintel = "none"\n  bearing = "8"\n')
    assert read(text).walls[0].openings[0].bearing == 0


def test_nominal_sizes_take_a_joint_off_walls_and_put_it_onto_openings() -> None:
    """NAVEDTRA 14045: overall length is nominal less 3/8 in.; an opening is nominal and 3/8 in."""
    text = changed('measure = "feet"', 'measure = "feet"\nsizes = "nominal"').replace(
        "courses = 13", 'courses = 13\ncontrol_joints = ["8\'"]')
    landing, water = read(text).walls
    assert landing.length == feet("19' 11 5/8")
    assert landing.height == feet("8' 8")
    door, window = landing.openings
    assert (door.left, door.right) == (feet("3' 11 5/8"), feet("7' 4"))
    assert window.right - window.left == feet("4' 3/8")
    assert (window.bottom, window.top) == (feet("3' 4"), feet("7' 4"))
    assert water.control_joints == (feet("7' 11 5/8") + feet("3/8") // 2,)


def test_nominal_panels_and_opening_close_to_the_wall() -> None:
    """8'-0" and 8'-8" nominal beside a 3'-4" opening: 7'-11 5/8" + 3'-4 3/8" + 8'-7 5/8" = 19'-11 5/8"."""
    text = changed('measure = "feet"', 'measure = "feet"\nsizes = "nominal"').replace(
        'from_left = "4\'"', 'from_left = "8\'"').replace('"10\' 8"', '"14\'"')
    wall = read(text).walls[0]
    door = wall.openings[0]
    assert (door.left, door.right - door.left, wall.length - door.right) == (
        feet("7' 11 5/8"), feet("3' 4 3/8"), feet("8' 7 5/8"))


def test_courses_stand_for_their_height_exactly() -> None:
    """Three modular bricks to 8 in. (BIA Technical Note 10B): 36 courses are 96 in., not 36 rounded gauges."""
    text = changed("courses = 13", "courses = 36").replace("block-8", "brick-modular")
    assert read(text).walls[1].height == feet("8'")


def test_courses_and_height_may_both_be_given_where_the_beds_take_the_difference() -> None:
    text = changed("courses = 13", "courses = 13\nheight = \"8' 8 1/2\"")
    assert read(text).walls[1].height == feet("8' 8 1/2")


def test_bond_beams_and_control_joints_are_put_in_order() -> None:
    text = changed("courses = 13", 'courses = 13\nbond_beams = ["top", 7]\ncontrol_joints = ["8\'", "4\'"]')
    water = read(text).walls[1]
    assert water.bond_beams == (7, 13)
    assert water.control_joints == (feet("4'"), feet("8'"))


def test_openings_without_a_name_are_numbered() -> None:
    text = changed('  name = "Door"\n', "").replace('  name = "Window"\n', "")
    assert [opening.name for opening in read(text).walls[0].openings] == ["opening 1", "opening 2"]


def test_an_opening_over_another_and_one_to_the_top_are_sound() -> None:
    text = changed('from_left = "10\' 8"', 'from_left = "4\'"').replace('height = "7\' 4"', 'height = "3\'"')
    low, high = read(text).walls[0].openings
    assert low.top < high.bottom
    text = changed('height = "7\' 4"', 'height = "8\' 8"\n  lintel = "none"')
    assert read(text).walls[0].openings[0].top == read(text).walls[0].height


@pytest.mark.parametrize(("written", "printed"), [
    ("2031-04-02", "2031-04-02"), ('"spring, rev. B"', "spring, rev. B"), ("2031-04-02T07:30:00", "2031-04-02 07:30:00"),
])
def test_a_date_is_printed_as_written(written: str, printed: str) -> None:
    assert read(changed('measure = "feet"', f'measure = "feet"\ndate = {written}')).date == printed


@given(plan_texts())
@settings(max_examples=examples(100))
def test_every_valid_plan_is_read(text: str) -> None:
    job = read(text)
    for wall in job.walls:
        assert all(0 < opening.left < opening.right < wall.length for opening in wall.openings)
        assert all(0 <= opening.bottom < opening.top <= wall.height for opening in wall.openings)
        assert all(1 <= course <= count_courses(wall.height, job.masonry) for course in wall.bond_beams)


@given(nearly_valid_plans())
@settings(max_examples=examples(200))
def test_every_nearly_valid_plan_is_read_or_told_its_mistakes(text: str) -> None:
    try:
        read(text)
    except PlanError as error:
        assert error.mistakes
        for mistake in error.mistakes:
            assert str(mistake).isprintable()
            assert 1 <= (mistake.line or 0) <= text.count("\n") + 1


@given(plan_tables(), st.integers(0, 2))
@settings(max_examples=examples(40))
def test_key_order_and_line_ends_do_not_matter(table: dict[str, object], turn: int) -> None:
    keys = list(table)
    turned = {key: table[key] for key in keys[turn:] + keys[:turn]}
    assert read(write_plan(turned).replace("\n", "\r\n")) == read(write_plan(table))
