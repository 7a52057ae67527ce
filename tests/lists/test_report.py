"""What the terminal tells: the drawing of the bond, figures, and rules."""

import pytest

from tests.lists.walls import PIER, lay_text
from wallplan.lists.bond_drawing import draw_bond
from wallplan.lists.columns import set_columns
from wallplan.lists.report import report_layout

WINDOW = """
title = "Shed"
measure = "feet"
sizes = "nominal"
[masonry]
unit = "block-8"
[[wall]]
name = "Front"
length = "8'"
height = "4'"
bond_beams = ["top"]
  [[wall.opening]]
  name = "Window"
  from_left = "2' 8"
  width = "2' 8"
  sill = "1' 4"
  height = "1' 4"
"""


def test_the_bond_is_drawn_as_it_is_laid() -> None:
    layout = lay_text(WINDOW)
    # Six units of eight characters; halves start even courses; the window cuts courses 3 and 4 at whole units.
    assert draw_bond(layout.walls[0], layout.job.masonry, 80) == [
        "   6 |~~~|~~~~~~~|~~~~~~~|~~~~~~~|~~~~~~~|~~~~~~~|~~~| 6",
        "   5 |_______|=======|=======|=======|=======|_______| 5",
        "   4 |___|_______|___|               |___|_______|___| 4",
        "   3 |_______|_______|               |_______|_______| 3",
        "   2 |___|_______|_______|_______|_______|_______|___| 2",
        "   1 |_______|_______|_______|_______|_______|_______| 1",
    ]


def test_cuts_carry_their_letter() -> None:
    layout = lay_text(PIER)
    lines = draw_bond(layout.walls[0], layout.job.masonry, 80)
    assert all(line.count("A") == 1 for line in lines)


def test_a_long_wall_is_drawn_in_lengths_and_a_high_one_folded() -> None:
    layout = lay_text(WINDOW.replace('"8\'"', '"80\'"'))
    lines = draw_bond(layout.walls[0], layout.job.masonry, 80)
    assert max(map(len, lines)) <= 80 and lines.count("") == 3
    high = lay_text(PIER.replace('"4\'"', '"80\'"'))
    assert len(draw_bond(high.walls[0], high.job.masonry, 80)) <= 80


def test_the_report_tells_pieces_cuts_joints_and_proof() -> None:
    told = " ".join(report_layout(lay_text(PIER), (), 100).split())
    for words in ('cut A 6 of 14"', 'all 3/8" (aimed for 3/8")', "which is the bound", "Every rule is held", "local codes"):
        assert words in told


def test_columns_wrap_the_last_and_align_figures() -> None:
    text = set_columns([["a", "10", "some words that are long enough to wrap"], ["bb", "9", "few"]], 30, right=frozenset({1}))
    assert text.splitlines() == ["a   10  some words that are", "        long enough to wrap", "bb   9  few"]
    assert set_columns([], 30) == ""


def test_a_first_course_off_the_gauge_is_told_apart_from_the_rest() -> None:
    # 3 ft 10 in. is five courses and a rip of 5 5/8 in. on its bed; 3 ft 8 in. five and a half-high block of 3 5/8 in.
    low = lay_text(WINDOW.replace('"4\'"', '"3\' 10"').split("  [[wall.opening]]")[0])
    assert 'course 1 rises 6", then 1 course rises 8"' in " ".join(report_layout(low, (), 100).split())
    half = lay_text(WINDOW.replace('"4\'"', '"3\' 8"').split("  [[wall.opening]]")[0])
    told = " ".join(report_layout(half, (), 100).split())
    assert 'course 1 rises 4", then 1 course rises 8"' in told
    # Course 1 is six half-high block.
    assert "half-high full 6 (" in told


@pytest.mark.parametrize("unit, told", [
    ("brick-queen", '5 courses rise 16"'), ("brick-uk", "4 courses rise 300 mm"), ("brick-modular", '3 courses rise 8"'),
    ("block-8", '1 course rises 8"'), ("brick-au", "3 courses rise 258 mm"),
])
def test_the_rise_is_told_in_so_many_courses_as_the_trade_states_it_in(unit: str, told: str) -> None:
    measure, size = ("feet", '"12\'"') if unit in ("brick-queen", "brick-modular", "block-8") else ("metric", "3600")
    plan = f'''
        title = "Ferry landing"
        measure = "{measure}"
        masonry = {{unit = "{unit}"}}
        wall = [{{name = "Kerb", length = {size}, courses = 1}}, {{name = "Bench", length = {size}, courses = 6}}]
    '''
    report = " ".join(report_layout(lay_text(plan), (), 100).split())
    assert told in report and ", 1 course of " in report


def test_a_control_joint_is_seen_in_the_bond_as_no_head_joint() -> None:
    # Three blocks, the joint, three blocks; even courses begin and end with halves on either side of it.
    plan = """
        title = "Ferry landing"
        measure = "feet"
        sizes = "nominal"
        masonry = {unit = "block-8"}
        wall = [{name = "Quay", length = "8'", courses = 2, control_joints = ["4'"]}]
    """
    report = report_layout(lay_text(plan), (), 100)
    assert "   2 |___|_______|_______|___!___|_______|_______|___| 2" in report
    assert "   1 |_______|_______|_______!_______|_______|_______| 1" in report
    assert "! control joint" in report
