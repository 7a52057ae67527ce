"""Bars, cells, joint reinforcement, gaskets and ties of walls worked by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.jobs import INCH, inches, make_job, make_masonry, make_opening, make_wall
from tests.lists.walls import lay_text
from wallplan.layout.build import lay
from wallplan.lists.order.cells import place_cells
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.line import Line
from wallplan.lists.order.steel import find_runs, splice

FOOT = 12 * INCH

FRONT = """
title = "Front"
measure = "feet"
sizes = "nominal"
[masonry]
unit = "block-8"
[[wall]]
name = "Front"
length = "24'"
height = "8'"
control_joints = ["12'"]
bond_beams = ["top"]
  [[wall.opening]]
  name = "Door"
  from_left = "4'"
  width = "3' 4"
  height = "6'"
  lintel = "steel"
[order.steel]
"""


def lines_of(wishes: str) -> dict[str, Line]:
    """Lines but for units and mortar, by their item."""
    order = list_order(lay_text(FRONT + wishes))
    return {line.item: line for line in order.lines if line.group not in ("units", "mortar")}


def test_nothing_is_counted_that_is_not_asked_for() -> None:
    # The door's lintel is asked for: 40 3/8 in. and 8 in. of bearing on either side.
    assert set(lines_of("")) == {"grout, bond beams and lintel units", "steel lintel 4'-8 3/8\" long"}


@pytest.mark.parametrize(("feet", "whole", "last", "together"), [
    (20, 0, 20, 20), (21, 1, 3, 23), (38, 1, 20, 40), (39, 2, 3, 43), (5, 0, 5, 5),
])
def test_splices_of_20_ft_bars_lapped_2_ft(feet: int, whole: int, last: int, together: int) -> None:
    assert splice(feet * FOOT, 20 * FOOT, 2 * FOOT) == (whole, last * FOOT, together * FOOT)


def test_bond_beam_bars() -> None:
    # 23'-11 5/8" of bond beam: a whole bar, and one of 5'-11 5/8" with the lap of 2 ft; two bars of each, two shorts in one.
    wishes = 'bar = "#4"\nbond_beam_bars = 2\n'
    line = lines_of(f"{wishes}through_joints = true\n")["bar #4, 20'-0\" long"]
    assert (line.net, line.spare) == (3, 0)
    assert "2 of 23'-11 5/8\" (with 1 lap of 2'-0\" 25'-11 5/8\": 1 whole and one of 5'-11 5/8\")" in line.why
    assert "1 cut to 5'-11 5/8\" + 5'-11 5/8\"" in line.why and "run through control joints" in line.why
    # Stopping at the control joint's middle, 12 ft, there are four of just under 12 ft: a bar each.
    line = lines_of(wishes)["bar #4, 20'-0\" long"]
    assert line.net == 4 and "stop at control joints" in line.why


def test_cells_at_ends_at_the_spacing_and_beside_jambs() -> None:
    layout = lay_text(FRONT + 'bar = "#5"\ncell_spacing = \'64"\'\njamb_cells = true\n')
    # The first cell's middle is 4 in. from the end; then 68 (over the door), 132, 196, 260; the last 4 in. from the right end;
    # and 4 in. beside the jambs at 47 5/8 and 88 in.
    inches = [at / INCH for at in place_cells(layout.walls[0], layout.job)]
    assert inches == [4, 43.625, 68, 92, 132, 196, 260, 283.625]
    # Twelve courses, the top one a bond beam: 11 cells each; over the door 9 courses are open, so 2 remain there.
    lines = {line.item: line for line in list_order(layout).lines}
    assert lines["grout, cells"].why.startswith(f"courses of cells outside channels, with their beds: {7 * 11 + 2} / 2 x ")
    assert "7 of 8'-0\"; 1 of 2'-0\"" in lines["bar #5, 20'-0\" long"].why
    # Seven of 8 ft, two to a bar, and the 2 ft piece beside any of them: 8 + 8 + 2 is within 20.
    assert lines["bar #5, 20'-0\" long"].net == 4


def test_joint_reinforcement_stops_at_the_control_joint_and_the_door() -> None:
    line = lines_of("reinforcement_courses = 2\n")["joint reinforcement, 10'-0\" long"]
    # In the beds under courses 3, 5, 7, 9 (beside the door) and 11: left of the control joint 47 5/8 + 55 7/16 in. beside the
    # door, whole 143 7/16 in. above it; right of it 143 13/16 in.; the longest take two pieces.
    assert "under 5 courses" in line.why
    assert line.order == 11


def test_gasket_and_ties() -> None:
    lines = lines_of("gasket = true\ntie_courses = 2\ntie_spacing = '24\"'\n")
    assert (lines["control-joint gasket"].net, lines["control-joint gasket"].measure) == (8, "ft")
    # Courses 2, 4, 6, 8 beside the door: 2 ties (47 5/8 in.) and 9 (199 5/8 in.); 10 and 12 in full: 12. 4 x 11 + 2 x 12.
    ties = lines["wall ties"]
    assert (ties.net, ties.order) == (68, 72)


def test_grout_of_a_unit_whose_cells_no_one_knows_is_told_with_what_to_write() -> None:
    text = FRONT.replace('unit = "block-8"', 'unit = "block-ca-190"').replace('measure = "feet"', 'measure = "metric"')
    for length, metric in (("24'", "9600"), ("8'", "2400"), ("12'", "4800"), ("4'", "1600"), ("3' 4", "1000"), ("6'", "1800")):
        text = text.replace(f'"{length}"', metric)
    order = list_order(lay_text(text))
    assert not any(line.group == "grout" for line in order.lines)
    (told,) = [note for note in order.notes if note.startswith("Grout is NOT counted")]
    assert told.endswith("write in the plan: [order] cell_volume = 7, the litres of one full unit.")
    assert any(due.figure == "yes" for row in order.days for due in row.dues if due.kind == "grout")
    known = list_order(lay_text(text.replace("[order.steel]", "[order]\ncell_volume = 7.1\n[order.steel]")))
    (line,) = [line for line in known.lines if line.group == "grout"]
    assert "7.1 litres: the plan's own figure" in line.why and not any("NOT counted" in note for note in known.notes)


def test_runs_of_no_pieces_are_none() -> None:
    assert list(find_runs((), INCH)) == []


def test_a_lintel_of_lintel_units_carries_bars_and_grout() -> None:
    opening = make_opening(47 * INCH + 5 * INCH // 8, 88 * INCH, 0, 72 * INCH)
    layout = lay(make_job(make_masonry(), make_wall(239 * INCH + 5 * INCH // 8, 96 * INCH, [opening])))
    assert [line.item for line in list_order(layout).lines if line.group == "grout"] == ["grout, bond beams and lintel units"]


def test_no_bar_stands_beside_the_one_at_the_walls_end() -> None:
    # Eight blocks: a bar 4 in. from both ends, and every 30 in. from the left one, but for 124 in., beside that at 123 5/8.
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(inches("127 5/8"), inches(32))))
    steel = replace(layout.job.order.steel, cell_spacing=inches(30))
    job = replace(layout.job, order=replace(layout.job.order, steel=steel))
    assert place_cells(layout.walls[0], job) == tuple(inches(at) for at in (4, 34, 64, 94, "123 5/8"))

