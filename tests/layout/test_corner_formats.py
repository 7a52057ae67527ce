"""Corners in the formats of the United Kingdom, Germany, Canada and Australia: by hand what stands beside the other leg's end."""

from __future__ import annotations

import pytest

from tests.jobs import MM, broken, make_masonry
from tests.layout.buildings import rectangle
from wallplan.layout.build import lay
from wallplan.plan.load import read_plan
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
    # 440 mm block, 100, 140 and 215 mm thick: 110, 150 and 225 mm of the 450 mm module. 225 is half of it; with a least lap
    # of a quarter of the module 110 is 2.5 mm short, so cuts bring it up.
    masonry = make_masonry(unit, joints_move=False)
    layout = lay(rectangle(masonry, 4490 * MM, 3590 * MM, masonry.unit.height_of_courses(4)))
    assert broken(check(layout)) == []
    cut = sum(wall.cutting for wall in layout.walls)
    assert (cut == 0) is (unit == "block-uk-215")


def test_no_uk_block_is_cut_at_a_plain_corner_for_the_sake_of_2_5_mm() -> None:
    # The least lap where a plan gives none: 110 mm is a quarter of the 440 mm unit itself, which TMS 402 asks for (as the lap rule cites it).
    # Sides of 4,600 and 3,700 mm: the other wall and a joint, 110 mm, then 10 and 8 modules of 450 mm less a joint.
    plan = 'title = "Quay"\nmeasure = "metric"\nmasonry = {{unit = "block-uk-{}", tightest_joint = 10, widest_joint = 10}}\n'
    side = '[[wall]]\nname = "{}"\nlength = {}\nheight = 900\nleft = "outside corner"\nright = "outside corner"\n'
    sizes = {thick: read_plan(plan.format(thick) + "".join(side.format(name, length) for name, length in zip(
        "ABCD", (4600, 3700) * 2, strict=True)), "quay.toml") for thick in (100, 140, 215)}
    assert [job.masonry.least_lap for job in sizes.values()] == [110 * MM, 112.5 * MM, 112.5 * MM]
    layout = lay(sizes[100])
    assert broken(check(layout)) == []
    assert sum(wall.cutting for wall in layout.walls) == 0
