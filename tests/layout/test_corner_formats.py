"""Corners in the formats of the United Kingdom, Germany, Canada and Australia: by hand what stands beside the other leg's end."""

from __future__ import annotations

import pytest

from tests.jobs import MM, broken, make_masonry
from tests.layout.buildings import rectangle
from wallplan.layout.build import lay
from wallplan.rules.check import check

FORMATS = [
    # Unit, sides (mm) of so many units and a half: the unit's thickness with its joint is the shift at each corner.
    # UK and DIN brick: 102.5 + 10 = 112.5 and 115 + 10 = 125 mm, half a module: half bond comes of itself, nothing is cut.
    ("brick-uk", (2240, 1790), 112.5, 0),
    ("brick-nf", (2490, 1990), 125, 0),
    ("brick-2df", (2490, 1990), 125, 0),
    # Canadian block 190: 190 + 10 = 200 mm, half of 400. Australian brick: 110 + 10 = 120 mm, half of 240.
    ("block-ca-190", (3990, 3190), 200, 0),
    ("brick-au", (2390, 1910), 120, 0),
]


@pytest.mark.parametrize(("unit", "sides", "shift", "cutting"), FORMATS)
def test_half_bond_comes_of_itself_where_thickness_and_joint_are_half_a_module(
    unit: str, sides: tuple[int, int], shift: float, cutting: int,
) -> None:
    masonry = make_masonry(unit, joints_move=False)
    layout = lay(rectangle(masonry, sides[0] * MM, sides[1] * MM, masonry.unit.height_of_courses(4)))
    assert broken(check(layout)) == []
    assert sum(wall.cutting for wall in layout.walls) == cutting
    ends = {piece.length + masonry.joint for wall in layout.walls for course in wall.courses for piece in course.pieces
            if piece.shape == "return"}
    assert ends == {round(shift * MM)}


@pytest.mark.parametrize("unit", ["block-uk-100", "block-uk-140", "block-uk-215"])
def test_uk_block_of_every_thickness_turns_its_corners_within_the_rules(unit: str) -> None:
    # 440 mm block, 100, 140 and 215 mm thick: 110, 150 and 225 mm of the 450 mm module. 225 is half of it; at 110 the lap
    # would be 2.5 mm under a quarter, so cuts bring it up.
    masonry = make_masonry(unit, joints_move=False)
    layout = lay(rectangle(masonry, 4490 * MM, 3590 * MM, masonry.unit.height_of_courses(4)))
    assert broken(check(layout)) == []
    cut = sum(wall.cutting for wall in layout.walls)
    assert (cut == 0) is (unit == "block-uk-215")
