"""The layout's cutting against the constraint model's, wall by wall: the same where rules can be kept, never more."""

from __future__ import annotations

from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from multiprocessing import get_context

import pytest

from tests.jobs import broken
from tests.oracle.bond_model import Courses, Numbers, least_cutting
from tests.oracle.random_walls import compare, count_cutting, judge, let_joints_move, make_small_wall
from wallplan.layout.build import lay
from wallplan.rules.check import check

WALLS, TOGETHER = 320, 40
BLOCK = Numbers(16, 4, 4, (16, 8))
"""Block of 16 in. in whole inches."""


@pytest.fixture(scope="module")
def pool() -> Iterator[ProcessPoolExecutor]:
    with ProcessPoolExecutor(2, mp_context=get_context("spawn")) as workers:
        yield workers


@pytest.mark.parametrize("first", range(0, WALLS, TOGETHER))
def test_cutting_is_the_models_optimum(first: int, pool: ProcessPoolExecutor) -> None:
    verdicts = list(pool.map(judge, range(first, first + TOGETHER)))
    assert [verdict.complaint for verdict in verdicts if verdict.complaint] == []
    assert any(verdict.optimum for verdict in verdicts), "no wall of these needs a cut: nothing was compared"


@pytest.mark.parametrize("first", range(0, 100, 20))
def test_joints_that_may_move_never_cut_more(first: int) -> None:
    for number in range(first, first + 20):
        job = make_small_wall(number).job
        fixed, moving = lay(job), lay(let_joints_move(job))
        if not broken(check(fixed)):
            assert broken(check(moving)) == [], number
            assert moving.walls[0].cutting <= fixed.walls[0].cutting, number


def test_joints_that_may_move_do_save_cuts_somewhere() -> None:
    jobs = [make_small_wall(number).job for number in range(40)]
    assert any(lay(let_joints_move(job)).walls[0].cutting < lay(job).walls[0].cutting for job in jobs)


def courses_of(length: int, count: int) -> Courses:
    return tuple(((0, length),) for _ in range(count))


@pytest.mark.parametrize(("length", "least"), [
    (80, 0),  # five blocks; four and two halves
    (72, 0),  # four blocks and a half, the half at either end
    (38, 1),  # 8 + 14 + 16 and 16 + 14 + 8
    (12, 1),  # one piece of 12 in., no joint
    (6, 2),  # one piece, shorter than half a block
    (20, 1),  # 12 + 8 and 8 + 12, joints 4 in. apart; 16 + 4 would count two
])
def test_model_knows_what_a_mason_works_out(length: int, least: int) -> None:
    assert least_cutting(BLOCK, courses_of(length, 4)) == 4 * least


def test_model_knows_when_no_layout_keeps_the_rules() -> None:
    # A run of 2 in. cannot be filled with a piece of 4 in. or more.
    assert least_cutting(BLOCK, courses_of(2, 2)) is None
    # A run of 20 in. has one joint, from 8 to 12 in. where no piece may be under 8 in.: two courses' joints are at most
    # 4 in. apart, so a lap of 5 in. cannot be had; one of 4 in. can.
    assert least_cutting(Numbers(16, 8, 5, (16, 8)), courses_of(20, 2)) is None
    assert least_cutting(Numbers(16, 8, 4, (16, 8)), courses_of(20, 2)) == 2


def test_model_refuses_what_it_does_not_hold_for() -> None:
    with pytest.raises(ValueError, match="laps up to the least piece"):
        least_cutting(Numbers(16, 4, 8, (16, 8)), courses_of(80, 2))


def _walls_with_an_optimum() -> Iterator[int]:
    return (number for number in range(0, WALLS, 8) if judge(number).optimum)


def test_comparison_catches_a_layout_that_cuts_too_much() -> None:
    # With a least piece of half a block, or a longer lap, some walls cut more than they must, and are legal still.
    for number in range(0, WALLS, 4):
        wall = make_small_wall(number)
        masonry, least = wall.job.masonry, count_cutting(wall, lay(wall.job))
        for stricter in ({"least_piece": masonry.module // 2}, {"least_lap": masonry.module * 3 // 8}):
            careful = lay(replace(wall.job, masonry=replace(masonry, **stricter)))
            layout = replace(careful, job=wall.job)
            if count_cutting(wall, layout) > least and not broken(check(layout)):
                assert "the least is" in compare(number, wall, layout).complaint
                return
    pytest.fail("no wall cuts more under a stricter rule")


def test_comparison_catches_a_layout_that_breaks_a_rule() -> None:
    number = next(_walls_with_an_optimum())
    wall = make_small_wall(number)
    layout = lay(wall.job)
    bottom = layout.walls[0].courses[0]
    bare = replace(layout.walls[0], courses=(replace(bottom, pieces=bottom.pieces[1:]), *layout.walls[0].courses[1:]))
    assert "yet the layout breaks" in compare(number, wall, replace(layout, walls=(bare,))).complaint
