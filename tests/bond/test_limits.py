"""Walls with more places for a joint than can be gone through: fewer are tried, before memory is spent, and it is told."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from tests.bond.test_together import problem_of
from wallplan.bond import nodes, track, zipper
from wallplan.bond.cost import count_broken, count_cutting
from wallplan.bond.figures import Problem, Stretch, Terms
from wallplan.bond.laying import Laying, Settings
from wallplan.bond.positions import MOST_LAPS, Places, try_places
from wallplan.bond.track import TooMany, Track, bound_alone
from wallplan.bond.zipper import close_zip, least_cutting
from wallplan.plan.job import Job
from wallplan.plan.load import read_plan

PLAN = """
title = "Ferry landing"
measure = "metric"
[masonry]
unit = "quay-unit"
joint = 10
least_lap = "{lap} mm"
bond = "{bond}"
[own_unit]
key = "quay-unit"
kind = "brick"
length = 436
height = 91
thickness = 140
joint = 8
tightest_joint = 6
widest_joint = 11
half = 214
three_quarter = 325
quarter = 103
[[wall]]
name = "Landing"
length = 5885
height = 566
control_joints = [4765]
  [[wall.opening]]
  name = "Hatch"
  from_left = 838
  width = 520
  sill = 13
  height = 288
  lintel = "steel"
  [[wall.opening]]
  name = "Vent"
  from_left = 1726
  width = 777
  sill = 302
  height = 195
  lintel = "steel"
  [[wall.opening]]
  name = "Window"
  from_left = 2950
  width = 911
  sill = 4
  height = 391
  lintel = "precast"
"""
BLOCK = Terms(module=16, stock=(16, 8), least=4, lap=4, ideal=8, close=0, open=0)


def landing(lap: str = "4", bond: str = "half") -> Job:
    return read_plan(PLAN.format(lap=lap, bond=bond), "landing.toml")


class Counts:
    """How many nodes are made and how many steps are found, in all that is searched."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.nodes = self.steps = 0
        make_nodes, between = nodes.make_nodes, Laying.between

        def count_nodes(*given: Any) -> Iterator[Any]:
            for node in make_nodes(*given):
                self.nodes += 1
                yield node

        def count_steps(laying: Laying, here: int, there: int) -> Any:
            self.steps += 1
            assert self.steps < 3_000_000, "the search grows without bound"
            return between(laying, here, there)

        monkeypatch.setattr(track, "make_nodes", count_nodes)
        monkeypatch.setattr(Laying, "between", count_steps)


@pytest.mark.parametrize(("lap", "bond"), [("4", "half"), ("4", "third"), ("1", "half"), ("0.01", "half")])
def test_a_lap_of_nearly_nothing_is_laid_in_bounds(lap: str, bond: str, monkeypatch: pytest.MonkeyPatch) -> None:
    counts = Counts(monkeypatch)
    found = close_zip(problem_of(landing(lap, bond)))
    assert not found.everywhere and not count_broken(found.cost)
    # Each number of places is given up within the limit: seven of them, two tracks, with a rule broken or without.
    assert counts.nodes < 4 * zipper.MOST_STEPS and counts.steps < 4 * zipper.MOST_STEPS


def test_the_bound_without_a_search_is_a_cut_for_each_run_that_stock_does_not_fill() -> None:
    problem = problem_of(landing())
    assert 0 <= least_cutting(problem) <= count_cutting(close_zip(problem).cost)
    # 38 in. of blocks and halves in three courses; 64 in. needs no cut.
    runs = Stretch(0, 38, 0b1010, 3, 3), Stretch(0, 38, 0b100, 3, 3), Stretch(48, 112, 0b100, 3, 3)
    small = Problem(BLOCK, (runs[:1], runs[1:]), (0, 112), ())
    assert zipper._count_unfilled(small) == 3


def plain_wall(length: int) -> Problem:
    return Problem(BLOCK, ((Stretch(0, length, 0b1010, 3, 3),), (Stretch(0, length, 0b10100, 3, 3),)), (0, length), ())


def test_a_track_gives_up_at_its_limit_and_is_whole_within_it() -> None:
    # A wall of 64 in blocks of 16, joints at every 4: from 4, 8, ... 60 and both ends.
    places = next(try_places(plain_wall(64)))
    assert places.all and places.positions == tuple(range(0, 65, 4))
    whole = Track(plain_wall(64), 0, places, Settings(), relaxed=False)
    # From each joint pieces of 4, 8, 12 and 16, fewer near the right end: 13 times 4, then 3, 2, 1.
    assert sum(len(whole.steps(number)) for number in range(whole.count)) == 13 * 4 + 3 + 2 + 1
    for most in (5, 50):
        with pytest.raises(TooMany):
            Track(plain_wall(64), 0, places, Settings(), False, most)
    assert bound_alone(Track(plain_wall(64), 0, places, Settings(), False, 60)) == bound_alone(whole)


def all_places(problem: Problem) -> list[Places]:
    return list(try_places(problem))


@pytest.mark.parametrize("lap", ["4", "50", "1"])
def test_places_grow_ever_fewer(lap: str) -> None:
    problem = problem_of(landing(lap))
    found = all_places(problem)
    sizes = [(len(places.positions), len(places.end_pieces), places.owing) for places in found]
    assert sizes == sorted(sizes, reverse=True) and len(set(sizes)) == len(sizes)
    many = problem.terms.module // problem.terms.lap > MOST_LAPS
    assert [places.all for places in found] == [not many] + [False] * (len(found) - 1)
    assert [places.fewest for places in found] == [False] * (len(found) - 1) + [True]
    # The last has three places in a unit's length from each of three fixed ends: two ends and a control joint.
    assert len(found[-1].positions) <= 3 + 9 * 5885 // 446 + 9


def test_every_number_of_places_lays_the_wall(monkeypatch: pytest.MonkeyPatch) -> None:
    problem = problem_of(landing("50"))
    costs = []
    for places in all_places(problem)[-3:]:
        monkeypatch.setattr(zipper, "try_places", lambda _, only=places: iter([only._replace(fewest=True)]))
        found = close_zip(problem)
        assert not found.everywhere
        costs.append(found.cost)
    assert len(set(costs)) > 1, "fewer places make no difference: nothing was tried"
