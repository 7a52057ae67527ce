"""The cutting of small closed buildings against the constraint model of the whole building."""

from __future__ import annotations

import random
from dataclasses import dataclass
from fractions import Fraction

import pytest

from tests.jobs import broken, inches, make_masonry, make_opening
from tests.layout.buildings import IN, OUT, build
from tests.long_run import LONG
from tests.oracle.bond_model import Numbers
from tests.oracle.building_model import Side, least_cutting_of_building
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.job import Job
from wallplan.rules.check import check

UNITS = ("block-6", "block-8", "block-10", "block-12", "block-4")
BUILDINGS = 60 if LONG else 8
STEP = 2
NUMBERS = Numbers(8, 2, 2, (8, 4))
"""US block in steps of two nominal inches, which hold every sum of its lengths, thicknesses, laps and pieces."""


@dataclass(frozen=True)
class SmallBuilding:
    """A building both ways: as a job, and in the model's numbers."""

    job: Job
    sides: tuple[Side, ...]
    thick: int
    count: int


def make_small_building(number: int) -> SmallBuilding:
    """The building of this number; the same one every time: a rectangle, every third an L, sides in even inches."""
    chance = random.Random(f"small building {number}")
    unit = UNITS[number % len(UNITS)]
    thick, count = int(unit.removeprefix("block-")) // STEP, chance.choice((2, 3, 4))
    across, deep = (2 * thick + chance.randint(10, 22) for _ in range(2))
    if number % 3 == 2:
        notch = 2 * thick + chance.randint(4, 9), 2 * thick + chance.randint(4, 9)
        lengths = (across + notch[0], deep, notch[0], notch[1], across, deep + notch[1])
        outside = (True, True, False, True, True, True)
    else:
        lengths, outside = (across, deep, across, deep), (True,) * 4
    sides = tuple(Side(length, (outside[index - 1], outside[index]), make_hole(chance, length, thick, count))
                  for index, length in enumerate(lengths))
    return SmallBuilding(make_job(unit, sides, count), sides, thick, count)


def make_hole(chance: random.Random, length: int, thick: int, count: int) -> tuple[tuple[int, int, int, int], ...]:
    """Now and then a door in a wall that has room for one."""
    clear = length - 2 * thick - 8
    if clear < 6 or chance.random() < 0.7:
        return ()
    left = thick + 4 + chance.randint(0, clear - 6)
    return ((left, left + chance.randint(6, length - thick - 4 - left), 1, chance.randint(1, count)),)


def make_job(unit: str, sides: tuple[Side, ...], count: int) -> Job:
    masonry = make_masonry(unit, joints_move=False)
    joint = masonry.joint
    # On the module a wall counts a joint with every piece: one too many between outside corners, none towards an inside one.
    walls = [(inches(STEP * side.length) - joint * (1 - sum(not out for out in side.outside)), OUT if side.outside[1] else IN)
             for side in sides]
    openings = {}
    for number, side in enumerate(sides):
        shift = 0 if side.outside[0] else joint
        openings[number] = tuple(
            make_opening(inches(STEP * left) - joint + shift, inches(STEP * right) + shift, inches(8 * (first - 1)), inches(8 * last), "steel",
                         inches(4))
            for left, right, first, last in side.holes)
    return build(masonry, inches(8 * count), *walls, openings=openings)


def count_cutting(layout: Layout) -> int:
    """Cutting by the pieces' nominal lengths alone, whatever the layout calls them."""
    joint = layout.job.masonry.joint
    lengths = [Fraction(piece.length + joint, inches(1)) for wall in layout.walls for course in wall.courses
               for piece in course.pieces if piece.shape != "return"]
    return sum(0 if length in (16, 8) else 2 if length < 8 else 1 for length in lengths)


@pytest.mark.parametrize("number", range(BUILDINGS))
def test_cutting_of_a_building_is_the_models_optimum(number: int) -> None:
    small = make_small_building(number)
    layout = lay(small.job)
    least = least_cutting_of_building(NUMBERS, small.sides, small.thick, small.count)
    rules = {finding.rule for finding in broken(check(layout))}
    if least is None:
        assert rules, "no layout keeps the rules, yet the check finds none broken"
    else:
        assert (rules, count_cutting(layout)) == (set(), least)


@pytest.mark.parametrize(("lengths", "thick", "least"), [
    # 8 in. block: 48 by 32 in., two blocks or three a side where corners are shared: nothing is cut.
    ((24, 16), 4, 0),
    # 8 in. block, 52 by 32 in.: a long wall is 52, 44 or 36 in. less the corners where it stops, never a whole number of
    # halves, so each course cuts at least once in both; 8 | 16 + 12 + 8 | 8 under 16 + 16 + 8 + 12 does.
    ((26, 16), 4, 4),
])
def test_model_knows_what_a_mason_works_out(lengths: tuple[int, int], thick: int, least: int) -> None:
    sides = tuple(Side(length, (True, True)) for length in lengths * 2)
    assert least_cutting_of_building(NUMBERS, sides, thick, 2) == least


def test_model_counts_the_joint_against_the_other_wall() -> None:
    # With a lap of 6 in. 12 in. walls cannot be laid in full units: the joint at 12 in. is 4 in. from the one at 16.
    sides = tuple(Side(length, (True, True)) for length in (32, 32, 32, 32))
    easy = least_cutting_of_building(NUMBERS, sides, 6, 2)
    hard = least_cutting_of_building(Numbers(8, 3, 3, (8, 4)), sides, 6, 2)
    assert easy is not None and hard is not None and hard > easy


def test_the_buildings_compared_do_cut() -> None:
    cuts = [count_cutting(lay(make_small_building(number).job)) for number in range(10)]
    assert sum(cut > 0 for cut in cuts) >= 5
    assert {bool(side.holes) for number in range(10) for side in make_small_building(number).sides} == {True, False}
