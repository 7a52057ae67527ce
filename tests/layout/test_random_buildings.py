"""Random closed buildings of four to eight corners: every layout passes the check, in plan too.

In a usual run 25 small ones, in a long run (WALLPLAN_LONG=1) 200 large ones.
"""

from __future__ import annotations

import random

import pytest

from tests.jobs import broken, inches, make_masonry, make_opening
from tests.layout.buildings import IN, OUT, Side, build
from tests.long_run import LONG
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.job import Job, Masonry
from wallplan.rules.check import check

UNITS = ("block-4", "block-6", "block-8", "block-10", "block-12")
OTHERS = ("brick-uk", "brick-nf", "block-uk-140", "brick-modular")
COUNT = 200 if LONG else 25
TOGETHER = 40 if LONG else 5


def make_building(number: int) -> Job:
    """The building of this number; the same one every time. Sizes in 1/8 in., doors and windows on the coursing."""
    chance = random.Random(f"building {number}")
    unit = OTHERS[number // 5 % len(OTHERS)] if number % 5 == 4 and chance.random() < 0.5 else UNITS[number % 5]
    masonry = make_masonry(unit, joints_move=chance.random() < 0.2)
    sides = make_outline(chance, masonry)
    gauge, module = masonry.unit.height_of_courses, masonry.module
    openings = {}
    for side, (length, _) in enumerate(sides):
        clear = length - 2 * module - 2 * masonry.unit.thickness
        if clear > module // 2 and chance.random() < (0.5 if LONG else 0.25):
            left = module + masonry.unit.thickness + eighths(chance, 0, clear // 3)
            wide, first = eighths(chance, clear // 4, clear * 2 // 3), chance.choice((0, 1))
            openings[side] = (make_opening(left, left + wide, gauge(first), gauge(first + 2), "steel", inches(4)),)
    return build(masonry, gauge(4), *sides, openings=openings)


def make_outline(chance: random.Random, masonry: Masonry) -> tuple[Side, ...]:
    """The outline of a rectangle with up to two of its corners cut back."""
    least = 2 * masonry.unit.thickness + masonry.module // 2
    most = (8 if LONG else 4) * least
    sides = [eighths(chance, 7 * least // 2, most), eighths(chance, 7 * least // 2, most)] * 2
    cuts = {corner: (eighths(chance, least, 5 * least // 4), eighths(chance, least, 5 * least // 4))
            for corner in chance.sample(range(4), chance.choice([0, 0, 1, 2] if not LONG else [0, 1, 1, 2]))}
    outline: list[Side] = []
    for corner in range(4):
        length = sides[corner] - cuts.get((corner - 1) % 4, (0, 0))[1]
        if corner in cuts:
            before, after = cuts[corner]
            outline += [(length - before, OUT), (after, IN), (before, OUT)]
        else:
            outline.append((length, OUT))
    return tuple(outline)


def eighths(chance: random.Random, low: int, high: int) -> int:
    """Ticks between two numbers, a whole number of eighths of an inch."""
    step = inches("1/8")
    return chance.randint(-(-low // step), high // step) * step


def complaints(layout: Layout) -> list[str]:
    """What is wrong with a layout: broken rules, cutting under its bound, corners that do not alternate."""
    wrong = [f"{finding.rule}: {finding.where}: {finding.figure}" for finding in broken(check(layout))]
    for wall, after in zip(layout.walls, (*layout.walls[1:], layout.walls[0]), strict=True):
        if wall.cutting < wall.cutting_at_least:
            wrong.append(f"{wall.wall.name} cuts less than its bound")
        stops = [max(course.pieces, key=lambda piece: piece.right).shape == "return" for course in wall.courses]
        other = [min(course.pieces, key=lambda piece: piece.left).shape == "return" for course in after.courses]
        if stops == other or stops not in ([True, False] * 2, [False, True] * 2):
            wrong.append(f"{wall.wall.name} and {after.wall.name} do not run through in turn")
    return wrong


@pytest.mark.parametrize("first", range(0, COUNT, TOGETHER))
def test_random_buildings_keep_every_rule_and_fill_their_walls(first: int) -> None:
    found = {number: wrong for number in range(first, first + TOGETHER) if (wrong := complaints(lay(make_building(number))))}
    assert found == {}


def test_the_buildings_are_as_various_as_they_should_be() -> None:
    jobs = [make_building(number) for number in range(25)]
    assert {job.masonry.unit.key for job in jobs} >= set(UNITS)
    assert {len(job.walls) for job in jobs} == {4, 6, 8}
    assert sum(bool(wall.openings) for job in jobs for wall in job.walls) > 6
