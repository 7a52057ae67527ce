"""TMS 402, the building code for masonry structures, from memory but for the lap (read in a page on its 1999 edition).

Running bond: head joints of successive courses at least a quarter of the unit apart; less is "not laid in running bond".
Intersections (5.1.1.2): half of the units interlocked, or straps of 1/4 x 1 1/2 x 28 in. at no more than 4 ft.
"""

from __future__ import annotations

import pytest

from tests.jobs import broken, inches, make_job, make_masonry, make_wall
from tests.layout.buildings import lay_rectangle, row_of
from tests.lists.walls import lay_text
from wallplan.catalogue.load import units
from wallplan.layout.build import lay
from wallplan.rules.check import check


@pytest.mark.parametrize("key", sorted(units()))
def test_the_least_lap_that_a_plan_has_unasked_is_a_quarter_of_the_unit(key: str) -> None:
    masonry = make_masonry(key)
    wall = make_wall(3 * masonry.module - masonry.joint, masonry.unit.height_of_courses(2))
    layout = lay(make_job(masonry, wall))
    text = f"""
title = "Lap"
measure = "{'feet' if masonry.unit.country == 'United States' else 'metric'}"
[masonry]
unit = "{key}"
[[wall]]
name = "A"
length = "2 m"
courses = 2
"""
    # A quarter of the nominal length; in 440 mm block 100 mm thick the 110 mm of its corners, a quarter of the unit itself.
    lap = lay_text(text).job.masonry.least_lap
    assert lap == (masonry.unit.length if key == "block-uk-100" else masonry.module) // 4
    assert 4 * (lap + 1) > masonry.unit.length
    assert "lap" not in {finding.rule for finding in broken(check(layout))}


@pytest.mark.parametrize("key", ["block-4", "block-12"])
def test_4_and_12_in_corners_of_full_units_lie_right_on_the_limit(key: str) -> None:
    # By geometry the offset there is 4 in., just a quarter of 16: running bond, and no broken rule (trade facts W45). An inch
    # more of lap asked for breaks it or is cut for.
    thick = int(key.removeprefix("block-"))
    layout = lay_rectangle(key, 96 + thick, 64 + thick, 4)
    assert {length for wall in range(4) for length in row_of(layout, wall, 1)} == {16, -thick}
    stricter = lay_rectangle(key, 96 + thick, 64 + thick, 4, least_lap=inches(5))
    assert sum(wall.cutting for wall in stricter.walls) > 0


TEE = """
title = "Tee"
measure = "feet"
sizes = "nominal"
[masonry]
unit = "block-8"
[[wall]]
name = "Long"
length = "20'"
height = "8'"
[[wall]]
name = "Cross"
length = "8'"
height = "8'"
  [[wall.abuts]]
  end = "left"
  meets = "Long"
  at = "8'"
  tie = "{tie}"
  {more}
"""


def test_half_of_the_units_of_a_wall_that_interlocks_run_through() -> None:
    layout = lay_text(TEE.format(tie="interlocked", more=""))
    through = [any(piece.shape == "return" for piece in course.pieces) for course in layout.walls[0].courses]
    assert sum(through) == 6 == len(through) / 2
    assert any(finding.rule == "ties" and finding.held for finding in check(layout))


def test_straps_at_4_ft_stand_no_farther_apart_in_the_order() -> None:
    # 8 ft of wall: straps 4 ft apart at most, none on the last course.
    from wallplan.lists.order.compose import list_order
    layout = lay_text(TEE.format(tie="straps", more="strap_spacing = \"4'\""))
    (line,) = (one for one in list_order(layout).lines if "strap" in one.item)
    assert line.net == 1  # at 4 ft; 8 ft is the top
    closer = lay_text(TEE.format(tie="straps", more="strap_spacing = \"2' 8\""))
    (line,) = (one for one in list_order(closer).lines if "strap" in one.item)
    assert line.net == 2
