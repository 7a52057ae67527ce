"""The bound of both tracks together: never more than what is then paid, and the search with it comes to the same cost."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from tests.jobs import INCH, make_job, make_masonry, make_opening, make_wall
from tests.oracle.random_walls import let_joints_move, make_small_wall
from wallplan.bond import zipper
from wallplan.bond.cost import BOND, CUTTING, FIRST_FULL, IMPOSSIBLE, JOINT, LAP, MIDDLE, SHORT, SHOWS, count_broken
from wallplan.bond.figures import Problem, Stretch, Terms
from wallplan.bond.laying import Settings
from wallplan.bond.positions import try_places
from wallplan.bond.together import KEEPS_BOND, SAVES_CUTS, Together, read_grades
from wallplan.bond.track import Track, bound_alone
from wallplan.bond.zipper import close_zip
from wallplan.layout.reach import reach_openings
from wallplan.layout.tracks import pose_problem, runs_of_rows
from wallplan.plan.coursing import set_coursing
from wallplan.plan.job import Bond, Job


def problem_of(job: Job) -> Problem:
    """The search's problem of a job's one wall."""
    (wall,) = job.walls
    rows = set_coursing(wall, job.masonry)
    return pose_problem(wall, job.masonry, runs_of_rows(wall, job.masonry, rows, reach_openings(wall, rows)))


def small_problem(number: int, *, joints_move: bool = False, bond: Bond = "half") -> Problem:
    """The problem of a small random wall."""
    job = make_small_wall(number).job
    moving = let_joints_move(job) if joints_move else job
    return problem_of(replace(moving, masonry=replace(moving.masonry, bond=bond)))


def bound_of(problem: Problem, *, relaxed: bool = False) -> tuple[int, int] | None:
    """What the tracks cost alone, and together beyond that; None where one cannot be laid alone."""
    settings, places = Settings(), next(try_places(problem))
    tracks = (Track(problem, 0, places, settings, relaxed), Track(problem, 1, places, settings, relaxed))
    alone = bound_alone(tracks[0]), bound_alone(tracks[1])
    sure = alone[0][0] + alone[1][0]
    return None if sure >= IMPOSSIBLE else (sure, Together(tracks, alone).beyond(0, 0))


@pytest.mark.parametrize("number", range(0, 60, 2))
def test_search_comes_to_the_same_cost_with_and_without_the_bound(number: int, monkeypatch: pytest.MonkeyPatch) -> None:
    problem = small_problem(number, joints_move=number % 4 == 0, bond=("half", "third", "quarter")[number % 3])
    costs = []
    for tries in (0, 10**9):
        monkeypatch.setattr(zipper, "FEW_TRIES", tries)
        monkeypatch.setattr(zipper, "SETTINGS_TRIES", 0)
        costs.append(close_zip(problem).cost)
    assert costs[0] == costs[1]


@pytest.mark.parametrize(("bond", "length"), [("half", 47), ("half", 53), ("third", 61), ("third", 70)])
def test_where_a_rule_must_break_the_search_comes_to_the_same_cost_with_the_bound(
        bond: Bond, length: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """A wall with a window, and a lap that is asked for of more than half a unit."""
    window = make_opening(14 * INCH, (length - 14) * INCH, 8 * INCH, 16 * INCH, "steel", 4 * INCH)
    wall = make_wall(length * INCH, 32 * INCH, [window])
    problem, costs = problem_of(make_job(make_masonry(joints_move=length % 2 == 0, bond=bond), wall)), []
    problem = replace(problem, terms=replace(problem.terms, lap=9 * INCH))
    for tries in (0, 10**9):
        monkeypatch.setattr(zipper, "FEW_TRIES", tries)
        monkeypatch.setattr(zipper, "SETTINGS_TRIES", 0)
        costs.append(close_zip(problem).cost)
    assert costs[0] == costs[1] and count_broken(costs[0]) > 0


def test_broken_laps_are_in_the_bound() -> None:
    """A run of 32 in. of 16 in. blocks has a joint in its middle, or two at most 16 in. apart beside it: none of them can
    be 9 in. from those of the course over it. Of three courses two beds break the lap."""
    problem = Problem(Terms(16, (16, 8), 4, 9, 8, 0, 0), ((Stretch(0, 32, 0b1010, 3, 3),), (Stretch(0, 32, 0b100, 3, 3),)),
                      (0, 32), ())
    bound = bound_of(problem, relaxed=True)
    assert bound is not None and [count_broken(cost) for cost in bound] == [0, 2]
    assert count_broken(close_zip(problem).cost) == 2


def test_the_bound_is_never_over_the_cost_and_often_meets_its_cutting() -> None:
    met = 0
    for number in range(1, 60, 2):
        problem = small_problem(number)
        bound = bound_of(problem)
        if bound is not None and bound[1] < IMPOSSIBLE:
            found = close_zip(problem).cost
            assert bound[1] >= 0 and sum(bound) <= found, number
            met += sum(bound) // CUTTING == found // CUTTING
    assert met >= 10


def test_laps_that_neither_track_knows_alone_are_in_the_bound() -> None:
    """A pier of 38 in. in block of 16: one cut in a course, and by hand 8 + 14 + 16 over 16 + 14 + 8 has every lap.
    With a lap of 7 in. no two courses of one cut each stand over one another: 8, 22 under 16, 30 are 6 and 8 apart."""
    wall = make_wall(38 * INCH - 3 * INCH // 8, 16 * INCH)
    for lap, beyond in ((4 * INCH, 0), (7 * INCH, 1)):
        bound = bound_of(problem_of(make_job(make_masonry(joints_move=False, least_lap=lap), wall)))
        assert bound is not None
        assert bound[0] // CUTTING == 2
        assert (bound[1] // CUTTING > 0) == bool(beyond)


def test_grades_are_read_one_by_one_even_under_nought() -> None:
    cost = 3 * CUTTING - 2 * SHORT + 5 * JOINT - SHOWS + 7 * MIDDLE - FIRST_FULL
    digits = read_grades([cost, 0, BOND - LAP])
    assert digits[0].tolist() == [-1, 7, -1, 5, 0, 0, -2, 3, 0, 0]
    assert digits[1].tolist() == [0] * 10
    for groups in (KEEPS_BOND, SAVES_CUTS):
        assert sum(group.cost(int(group.read(digits)[0])) for group in groups) == cost
    assert sum(group.cost(int(group.read(digits)[2])) for group in KEEPS_BOND[:1]) == BOND


def test_values_of_a_group_are_in_the_order_of_what_they_cost() -> None:
    group = SAVES_CUTS[0]
    costs = [CUTTING - 5 * SHORT, CUTTING, CUTTING + SHORT, 2 * CUTTING - 9 * SHORT]
    assert np.all(np.diff(group.read(read_grades(costs))) > 0)


def test_a_long_wall_says_that_joints_were_not_tried_everywhere(monkeypatch: pytest.MonkeyPatch) -> None:
    openings = [make_opening((240 + 361 * number) * INCH // 4, (400 + 366 * number) * INCH // 4, 0, 16 * INCH, "steel",
                             4 * INCH) for number in range(4)]
    problem = problem_of(make_job(make_masonry(), make_wall(500 * INCH, 32 * INCH, openings)))
    everywhere = close_zip(problem)
    monkeypatch.setattr("wallplan.bond.zipper.MOST_STEPS", 10_000)
    nearest = close_zip(problem)
    assert (everywhere.everywhere, nearest.everywhere) == (True, False)
    assert everywhere.cost < nearest.cost < IMPOSSIBLE
