"""Gables beside other walls: at a higher or a lower one's corner, and two down to one corner. Expected by pencil."""

from __future__ import annotations

import random
from itertools import pairwise

import pytest

from tests.jobs import broken, inches
from tests.layout.test_unequal_heights import IN, OUT, ends, lay_walls, wall
from tests.long_run import LONG
from wallplan.layout.model import Layout
from wallplan.rules.check import check

UNITS = ["block-4", "block-6", "block-8", "block-10", "block-12", "brick-modular"]


def gable(rise: int, ridge: str = "") -> str:
    return f"[[wall.gable]]\nrise = {rise}\n{ridge}"


def test_a_steep_gable_is_bonded_with_the_higher_wall_as_far_up_as_its_slope_leaves_whole_courses() -> None:
    # 12 in. block, 5 ft to the eaves, 4 ft in 3 ft: 16 in 12. At the higher wall's inner face, 11 5/8 in. in, the slope
    # stands 15 1/2 in. over the eaves: course 6 (40 to 48 in.) is whole there, course 7 is not.
    layout = lay_walls("block-12", wall("Shed", "9'", "10'", right=OUT), wall("Porch", "6'", "40", left=OUT, more=gable(48)))
    assert broken(check(layout)) == []
    shed, porch = layout.walls
    through = [ends(course)[0] == 0 for course in porch.courses]
    assert all(one is not other for one, other in pairwise(through[:6]))
    assert porch.courses[5].pieces[0].rake is None or not through[5]
    assert ends(porch.courses[6])[0] == inches(12)
    stops = shed.wall.length - inches(12)
    assert [ends(course)[1] == stops for course in shed.courses[:7]] == [*through[:6], False]
    assert {ends(course)[1] for course in shed.courses[7:]} == {shed.wall.length}


def test_a_roof_of_one_slope_that_rises_to_an_inside_corner_goes_on_level_behind_it() -> None:
    # 4 in. block, 4 ft 8 in. to the eaves, 32 in. up to the corner: the gable's courses reach 3 5/8 in. behind the lower
    # wall's face in every other course, over that wall's top in each.
    layout = lay_walls("block-4", wall("Shed", "6' 8", "5' 4", right=IN), wall("Bay", "64", "56", left=IN, more=gable(32, "ridge = 0")))
    assert broken(check(layout)) == []
    bay = layout.walls[1]
    behind = [ends(course)[0] == -inches("3 5/8") for course in bay.courses]
    assert all(one is not other for one, other in pairwise(behind[:8]))
    assert behind[8:] == [True] * 3


def test_a_gable_down_to_an_inside_corner_leaves_the_higher_wall_to_run_through() -> None:
    layout = lay_walls("block-8", wall("Shed", "64", "8'", right=IN), wall("Bay", "80", "56", left=IN, more=gable(56, "ridge = 24")))
    assert broken(check(layout)) == []
    assert {ends(course)[1] for course in layout.walls[0].courses[7:]} == {inches("71 5/8")}


def test_two_gables_down_to_one_corner_run_through_in_turn_up_to_the_eaves() -> None:
    layout = lay_walls("block-8", wall("East", "12'", "8'", right=OUT, more=gable(48)), wall("North", "12'", "8'", left=OUT, more=gable(48)))
    assert broken(check(layout)) == []
    east, north = layout.walls
    through = [ends(course)[1] == east.wall.length for course in east.courses[:12]]
    assert all(one is not other for one, other in pairwise(through))
    # 8 in 12: over each gable 6 courses and two raked cuts in each of them; the tip is cut once where one unit takes it.
    raked = [sum(piece.rake is not None for course in one.courses for piece in course.pieces) for one in (east, north)]
    assert all(11 <= count <= 13 for count in raked)


def random_gable(number: int, *, two: bool) -> Layout:
    """A gable at a corner with a wall of any height, or two gables at one corner."""
    chance = random.Random(f"gable {two} {number}")

    def side(name: str, left: str, right: str) -> str:
        deep, low, rise = (chance.randint(*sizes) * 8 for sizes in ((8, 16), (4, 9), (2, 8)))
        ridge = chance.choice(["", "ridge = 0", f"ridge = {deep}", f"ridge = {deep // 24 * 8}"])
        return wall(name, str(deep), str(low), left, right, gable(rise, ridge))

    unit, corner = chance.choice(UNITS), chance.choice([OUT, IN])
    plain = wall("Plain", str(chance.randint(8, 16) * 8), str(chance.randint(3, 16) * 8), corner, "end")
    other = side("North", corner, "end") if two else plain
    return lay_walls(unit, side("East", "end", corner), other)


@pytest.mark.parametrize("two", [False, True])
@pytest.mark.parametrize("first", range(0, 400 if LONG else 16, 8))
def test_random_gables_at_corners_keep_every_rule(two: bool, first: int) -> None:
    found = {number: [f"{one.rule}: {one.where}: {one.figure}" for one in broken(check(random_gable(number, two=two)))]
             for number in range(first, first + 8)}
    assert {number: wrong for number, wrong in found.items() if wrong} == {}
