"""Small walls by number: lengths off the module, up to four openings, on a grid that the constraint model can take."""

from __future__ import annotations

import random
from dataclasses import dataclass, replace
from fractions import Fraction

from tests.oracle.bond_model import Courses, Numbers, Run, least_cutting
from wallplan.catalogue.load import find_unit
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lengths import TICKS_PER_INCH
from wallplan.plan.job import Job, LintelKind, Masonry, Opening, Wall
from wallplan.rules.check import check


@dataclass(frozen=True)
class Grid:
    """A unit, steps to the inch (or inches to the step), and the longest wall in steps that stays a small problem."""

    unit: str
    step: int
    longest: int


GRIDS = (
    Grid("block-8", TICKS_PER_INCH * 2, 70), Grid("block-8", TICKS_PER_INCH, 80), Grid("block-8", TICKS_PER_INCH // 2, 72),
    Grid("block-12", TICKS_PER_INCH, 72), Grid("brick-modular", TICKS_PER_INCH, 120),
    Grid("brick-modular", TICKS_PER_INCH // 2, 72), Grid("brick-modular", TICKS_PER_INCH // 4, 84),
    Grid("brick-modular", TICKS_PER_INCH // 8, 96),
)
"""Each step divides module, half, least piece and least lap, so that the grid holds every sum of them."""


@dataclass(frozen=True)
class SmallWall:
    """A wall both ways: as a job, joints fixed, and as the model's numbers and runs."""

    job: Job
    numbers: Numbers
    courses: Courses


def make_small_wall(number: int) -> SmallWall:
    """The wall of this number; the same one every time."""
    dice = random.Random(f"small wall {number}")
    grid = GRIDS[number % len(GRIDS)]
    masonry = fixed_masonry(grid.unit)
    module = masonry.module // grid.step
    length = dice.randint(min(24 * TICKS_PER_INCH // grid.step, grid.longest * 2 // 3), grid.longest)
    count = dice.randint(3, 8)
    holes = _place_holes(dice, length, count, module)
    runs = tuple(runs_of(length, number, holes) for number in range(1, count + 1))
    numbers = Numbers(module, module // 4, module // 4, (module, module // 2))
    return SmallWall(make_job(dice, masonry, grid.step, length, count, holes), numbers, runs)


def fixed_masonry(unit_key: str) -> Masonry:
    """Half bond with one joint only, a quarter of a module as least lap and least piece."""
    unit = find_unit(unit_key)
    return Masonry(
        unit=unit, bond="half", joint=unit.joint, tightest_joint=unit.joint, widest_joint=unit.joint,
        least_lap=unit.module // 4, least_piece=unit.module // 4, leads=unit.leads,
    )


def let_joints_move(job: Job) -> Job:
    """The same job with its joints within the unit's own range."""
    unit = job.masonry.unit
    return replace(job, masonry=replace(job.masonry, tightest_joint=unit.tightest_joint, widest_joint=unit.widest_joint))


Hole = tuple[int, int, int, int]
"""An opening: nominal left and right in steps, and the first and last course that it cuts."""


def _place_holes(dice: random.Random, length: int, count: int, module: int) -> list[Hole]:
    holes, reach = list[Hole](), 0
    narrowest = dice.choice((1, *[module // 2] * 7))  # now and then a pier too narrow for any piece
    for _ in range(dice.choice((0, 1, 1, 2, 2, 3, 4))):
        left = reach + dice.randint(narrowest, 3 * module)
        right = left + dice.randint(module, 2 * module)
        if right > length - module // 2:
            break
        first = dice.choice((1, 1, dice.randint(1, count)))
        last = dice.choice((count, dice.randint(first, count)))
        holes.append((left, right, first, last))
        reach = right
    return holes


def runs_of(length: int, course: int, holes: list[Hole]) -> tuple[Run, ...]:
    runs, start = list[Run](), 0
    for left, right, first, last in holes:
        if first <= course <= last:
            runs.append((start, left))
            start = right
    return (*runs, (start, length))


def make_job(dice: random.Random, masonry: Masonry, step: int, length: int, count: int, holes: list[Hole]) -> Job:
    unit, joint = masonry.unit, masonry.joint
    openings = []
    for number, (left, right, first, last) in enumerate(holes):
        lintel: LintelKind = dice.choice(("steel", "none"))
        openings.append(Opening(
            f"Opening {number}", left * step - joint, right * step,
            unit.height_of_courses(first - 1), unit.height_of_courses(last), lintel, 4 * TICKS_PER_INCH,
        ))
    wall = Wall("Slip", length * step - joint, unit.height_of_courses(count), "end", "end", (), (), tuple(openings))
    return Job("Ferry landing", "feet", "actual", None, masonry, (wall,))


@dataclass(frozen=True)
class Verdict:
    """What the model and the layout say of one wall: least cutting (None where no layout keeps the rules) and reached."""

    number: int
    optimum: int | None
    cutting: int
    broken: tuple[str, ...]

    @property
    def complaint(self) -> str:
        """What is wrong, "" where both agree."""
        if self.optimum is None:
            return "" if self.broken else f"wall {self.number}: no layout keeps the rules, yet the check finds none broken"
        if self.broken:
            return f"wall {self.number}: cuts {self.optimum} and keeps the rules, yet the layout breaks {self.broken}"
        if self.cutting == self.optimum:
            return ""
        return f"wall {self.number}: the layout cuts {self.cutting}, the least is {self.optimum}"


def judge(number: int) -> Verdict:
    """Lay the wall of this number and ask the model about it."""
    wall = make_small_wall(number)
    return compare(number, wall, lay(wall.job))


def compare(number: int, wall: SmallWall, layout: Layout) -> Verdict:
    """A layout of a small wall beside the model's answer, its pieces counted anew."""
    broken = tuple(finding.rule for finding in check(layout) if not finding.held)
    return Verdict(number, least_cutting(wall.numbers, wall.courses), count_cutting(wall, layout), broken)


def count_cutting(wall: SmallWall, layout: Layout) -> int:
    """Cutting by the pieces' nominal lengths alone, whatever the layout calls them."""
    masonry = wall.job.masonry
    step = Fraction(masonry.module, wall.numbers.module)
    lengths = [
        (piece.length + masonry.joint) / step for course in layout.walls[0].courses for piece in course.pieces
    ]
    assert all(length.denominator == 1 for length in lengths), "a piece ends off the grid"
    return sum(wall.numbers.cost(int(length)) for length in lengths)
