"""The search against a constraint solver on walls as masons build them: the same cutting, and far sooner; in one run."""

from __future__ import annotations

from tests.benchmarks.against_solver import compare_all
from tests.benchmarks.masons_walls import SORTS, make_masons_wall
from tests.oracle.random_walls import make_small_wall
from wallplan.layout.build import lay
from wallplan.lengths import TICKS_PER_INCH
from wallplan.rules.check import check

LIMIT = 10.0


def test_walls_as_masons_build_them_are_laid_a_hundred_times_sooner() -> None:
    compare_all([make_small_wall(0), make_small_wall(5)], LIMIT)  # loads the solver and what the search imports late
    held = compare_all((make_masons_wall(number) for number in (0, 3, 6, 7, 9, 12)), LIMIT)
    print(f"\n{held.tell('walls', LIMIT)}")
    assert len(held.solved) >= 3
    assert held.equal == len(held.solved)
    assert held.ratio >= 100  # measured: about 180


def test_tiny_walls_are_laid_sooner_too() -> None:
    held = compare_all((make_small_wall(number) for number in range(16)), LIMIT)
    print(f"\n{held.tell('tiny walls', LIMIT)}")
    assert held.equal == len(held.solved) >= 12
    assert held.ratio >= 10


def test_the_walls_are_those_that_masons_build() -> None:
    walls = [make_masons_wall(number).job for number in range(12)]
    feet = [job.walls[0].length / TICKS_PER_INCH / 12 for job in walls]
    assert all(14.9 < long < 31 for long in feet), feet
    assert {len(job.walls[0].openings) for job in walls} == {1, 2, 3}
    assert {job.masonry.unit.key for job in walls} == {sort.unit for sort in SORTS}
    for job in walls[:3]:
        assert all(finding.held for finding in check(lay(job)))
