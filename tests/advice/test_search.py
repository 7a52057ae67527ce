"""The best moves against trying every choice there is, on small random walls."""

from dataclasses import replace

import pytest

from tests.advice.small_walls import ANY, make_small_wall, things_of, try_everything
from wallplan.advice.frame import least_cutting
from wallplan.advice.moves import Move, move_wall
from wallplan.advice.search import find_alone, find_best, rank
from wallplan.advice.trial import Trials, may_stand
from wallplan.layout.build import lay


@pytest.mark.parametrize("number", range(100))
def test_no_choice_at_all_is_better_than_the_best(number: int) -> None:
    small = make_small_wall(number)
    tried = list(try_everything(small))
    unmoved = tried[0][0]
    trials = Trials(small.job, most=None)
    best = find_best(small.wall, small.offers, ANY, trials)
    assert best.proven
    assert best.rank == min(reached for reached, _ in tried)
    singles = find_alone(small.wall, small.offers, ANY, trials, most=2)
    by_thing = {thing: min(reached for reached, moves in tried if things_of(moves) == {thing})
                for thing in small.offers if any(things_of(moves) == {thing} for _, moves in tried)}
    helping = sorted(reached for reached in by_thing.values() if reached[:2] < unmoved[:2])
    assert [single.rank for single in singles] == helping[:2]
    assert all(single.proven for single in singles)


def test_the_small_walls_are_no_easy_ones() -> None:
    """Some want one move, some two or more; else the comparison above would say little."""
    needed = [len(find_best(small.wall, small.offers, ANY, Trials(small.job)).moves) for small in map(make_small_wall, range(16))]
    assert needed.count(1) >= 3 and sum(count > 1 for count in needed) >= 3, needed


@pytest.mark.parametrize("number", range(100, 120))
def test_the_bound_is_never_more_than_the_wall_cuts(number: int) -> None:
    small = make_small_wall(number)
    choices = [(), *((Move(thing, by),) for thing, distances in small.offers.items() for by in distances)]
    for wall in (move_wall(small.wall, moves) for moves in choices):
        if may_stand(wall, small.job):
            (laid,) = lay(replace(small.job, walls=(wall,))).walls
            assert least_cutting(wall, small.job.masonry) <= laid.cutting


def test_a_search_that_has_to_stop_says_so() -> None:
    small = make_small_wall(3)
    stopped = find_best(small.wall, small.offers, ANY, Trials(small.job, most=0))
    assert (stopped.moves, stopped.proven) == ((), False)
    assert find_best(small.wall, small.offers, ANY, Trials(small.job, most=None)).rank < stopped.rank


def test_the_order_of_rank_is_rules_then_cutting_then_moves_then_way() -> None:
    small = make_small_wall(3)
    figures = Trials(small.job).lay(small.wall)
    assert rank(figures, ()) == (*figures.grade, 0, 0)
