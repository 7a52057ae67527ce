"""Work is counted, and shared among the searches of a plan."""

from __future__ import annotations

import gc

import pytest

from tests.bond.test_limits import landing
from tests.bond.test_together import problem_of
from wallplan.bond.effort import LEAST, TRY, Effort, without_collecting
from wallplan.bond.figures import Problem
from wallplan.bond.positions import try_places
from wallplan.bond.track import TooMany
from wallplan.bond.zipper import MOST_STEPS, _search, close_zip
from wallplan.layout import building
from wallplan.layout.build import lay
from wallplan.layout.runs import Doubt, LaidTracks, lay_aimed, settle_doubt
from wallplan.plan.load import read_plan

SHED = """
title = "Rope shed"
measure = "feet"
[masonry]
unit = "block-8"
""" + "".join(f"""
[[wall]]
name = "Side {side}"
length = "{length}'"
courses = 4
left = "outside corner"
right = "outside corner"
""" for side, length in enumerate((12, 8, 12, 8)))


def test_a_quarter_of_what_is_left_is_allowed_and_a_little_always() -> None:
    effort = Effort(4 * MOST_STEPS)
    assert effort.allow(MOST_STEPS) == MOST_STEPS and effort.allow(MOST_STEPS, TRY) == MOST_STEPS // TRY
    effort.spend(2 * MOST_STEPS)
    assert effort.allow(MOST_STEPS) == MOST_STEPS // 2 and not effort.used_up
    effort.spend(9 * MOST_STEPS)
    assert effort.allow(MOST_STEPS) == LEAST and effort.used_up


@pytest.mark.parametrize(("among", "left"), [(1, 1000), (3, 1000), (6, 500), (30, 100)])
def test_a_share_is_three_times_a_searches_part(among: int, left: int) -> None:
    assert Effort(1000).share(among).left == left
    assert Effort(-5).share(among).left == 0


def test_where_nothing_is_left_a_wall_is_laid_at_few_places_and_that_is_told() -> None:
    found = close_zip(problem_of(landing("4", "half")), none := Effort(0))
    assert not found.everywhere and all(found.tracks) and none.left < 0


def test_a_search_takes_what_it_does_from_what_is_left() -> None:
    close_zip(problem_of(landing("4", "half")), effort := Effort())
    assert Effort().left - effort.left > MOST_STEPS // 2


def test_the_walls_of_a_building_share_what_may_be_done(monkeypatch: pytest.MonkeyPatch) -> None:
    given: list[int] = []

    def spy(problem: object, joint: int, effort: Effort) -> LaidTracks:
        given.append(effort.left)
        effort.spend(300_000)
        return lay_aimed(problem, joint, effort)  # type: ignore[arg-type]

    monkeypatch.setattr(building, "lay_aimed", spy)
    lay(read_plan(SHED, "shed.toml"))
    # Two lengths, each with two ways at either corner: eight searches, and those that take more leave the others less.
    assert len(given) == 8 and given == sorted(given, reverse=True) and given[-1] < given[0] / 2


def test_only_the_ways_that_are_chosen_are_searched_again(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each search of the shed left in doubt: what is chosen is settled, and what would not be is left."""
    settled: list[int] = []

    def doubt(problem: Problem, joint: int, effort: Effort) -> LaidTracks:
        return lay_aimed(problem, joint, effort)._replace(doubt=Doubt(problem, joint, 1))

    def settle(laid: LaidTracks, effort: Effort) -> LaidTracks:
        settled.append(laid.cost)
        return settle_doubt(laid, effort)

    with monkeypatch.context() as patched:
        patched.setattr(building, "lay_aimed", doubt)
        patched.setattr(building, "settle_doubt", settle)
        walls = building.bond_walls(read_plan(SHED, "shed.toml"))
    # Eight ways of two lengths; the blocks of the shed fit with joints as aimed for, so that fixed ones cost no more.
    assert not any(wall.tracks.doubt for wall in walls) and 2 <= len(settled) <= 4
    plain = building.bond_walls(read_plan(SHED, "shed.toml"))
    assert [wall.tracks.cost for wall in walls] == [wall.tracks.cost for wall in plain]


def test_giving_up_costs_what_was_done() -> None:
    """Long brickwork with many odd openings: what is given up before steps are found leaves nearly all of the work."""
    problem, effort = problem_of(landing("4", "half")), Effort(4 * MOST_STEPS)
    places = next(try_places(problem))
    with pytest.raises(TooMany):
        _search(problem, places, False, effort, {})
    assert 0 < 4 * MOST_STEPS - effort.left < MOST_STEPS


def test_the_collector_is_as_it_was_after_a_search() -> None:
    for collects in (False, True):
        (gc.enable if collects else gc.disable)()
        with pytest.raises(RuntimeError), without_collecting():
            assert not gc.isenabled()
            raise RuntimeError
        assert gc.isenabled() is collects
