"""Walls as masons build them, for the search and a constraint solver: 15 to 30 ft long, one to three openings, half bond.

Block and brick of the United States on the inch, brick of the United Kingdom on a twelfth of its module; joints are fixed, so
that both have the same question. A door from the bottom, windows beside it under one head; lengths are off the module as often
as they come so.
"""

from __future__ import annotations

import random
from dataclasses import dataclass

from tests.oracle.bond_model import Numbers
from tests.oracle.random_walls import Hole, SmallWall, fixed_masonry, make_job, runs_of
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM


@dataclass(frozen=True)
class Sort:
    """A unit on its grid: ticks to the step; courses; widths of openings and the longest wall, in steps."""

    unit: str
    step: int
    courses: int
    widths: tuple[int, ...]
    longest: int


SORTS = (
    Sort("block-8", TICKS_PER_INCH, 13, (32, 36, 40, 48), 360),
    Sort("brick-modular", TICKS_PER_INCH, 24, (32, 36, 40, 48), 360),
    Sort("brick-uk", TICKS_PER_MM * 75 // 4, 24, (34, 48, 64), 488),
)
"""Each step divides module, half, least piece and least lap. 18.75 mm is a twelfth of 225 mm; 488 of them are 30 ft."""


def make_masons_wall(number: int) -> SmallWall:
    """The wall of this number; the same one every time. Each sort has one, two and three openings in turn."""
    dice = random.Random(f"mason's wall {number}")
    sort, openings = SORTS[number % len(SORTS)], 1 + number // len(SORTS) % 3
    masonry = fixed_masonry(sort.unit)
    module, least = masonry.module // sort.step, sort.longest // 2
    pier, top = module * 3 // 2, sort.courses * 10 // 13
    widths = [dice.choice(sort.widths) for _ in range(openings)]
    needed = sum(widths) + (openings + 1) * pier
    length = dice.randint(max(needed, least), max(needed, sort.longest))
    holes, reach, spare = list[Hole](), 0, length - needed
    for place, width in enumerate(widths):
        aside = dice.randint(0, spare)
        left, spare = reach + pier + aside, spare - aside
        holes.append((left, left + width, 1 if place == 0 else top // 2, top))
        reach = left + width
    runs = tuple(runs_of(length, course, holes) for course in range(1, sort.courses + 1))
    job = make_job(dice, masonry, sort.step, length, sort.courses, holes)
    return SmallWall(job, Numbers(module, module // 4, module // 4, (module, module // 2)), runs)
