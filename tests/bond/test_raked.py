"""Courses that end on a slope, in numbers: units of 16 inches, halves of 8, laps and least pieces of 4; rounding is ticks."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wallplan.bond.figures import Terms
from wallplan.bond.raked import RakedRun, least_cutting, settle_rakes

INCH = 24_384
"""Ticks to the inch."""

BLOCK = Terms(module=16 * INCH, stock=(16 * INCH, 8 * INCH), least=4 * INCH, lap=4 * INCH, ideal=8 * INCH, close=0, open=0)


def half_bond(start: int, end: int, course: int) -> tuple[int, ...]:
    """The joints of a half bond inside a run."""
    return tuple(range(start - start % (16 * INCH) + (8 * INCH if course % 2 else 0), end, 16 * INCH))


def gable(width: int, rake: int, courses: int) -> list[tuple[RakedRun, ...]]:
    """Courses from the eaves up, each ``rake`` shorter at both ends."""
    runs = []
    for course in range(courses):
        start, end = rake * course, width - rake * course
        joints = tuple(at for at in half_bond(start, end, course) if start < at < end)
        runs.append((RakedRun(start, end, (rake, rake), joints),))
    return runs


def count_raked(run: RakedRun, joints: tuple[int, ...]) -> int:
    return sum(start < run.start + run.rakes[0] or end > run.end - run.rakes[1]
               for start, end in pairwise((run.start, *joints, run.end)))


def test_one_unit_takes_the_whole_slope_at_both_ends() -> None:
    """A slope of 12 in a course of 16: two raked pieces a course, 24 in 12 courses."""
    courses = gable(288 * INCH, 12 * INCH, 12)
    settled = settle_rakes(BLOCK, courses, [()] * 14)
    assert [count_raked(runs[0], joints[0]) for runs, joints in zip(courses, settled, strict=True)] == [2] * 12


def test_joints_away_from_the_slope_stay_where_the_bond_has_them() -> None:
    courses = gable(288 * INCH, 12 * INCH, 8)
    for runs, joints in zip(courses, settle_rakes(BLOCK, courses, [()] * 10), strict=True):
        inner = {at for at in runs[0].joints if at - runs[0].start >= 12 * INCH and runs[0].end - at >= 12 * INCH}
        assert inner <= set(joints[0])


@settings(max_examples=40, deadline=None)
@given(st.integers(6, 20), st.integers(2, 30))
def test_pieces_keep_to_the_unit_and_laps_hold(modules: int, rake: int) -> None:
    width = modules * 16
    courses = gable(width * INCH, rake * INCH, max(1, min(6, (width - 24) // (2 * rake))))
    settled = [joints[0] for joints in settle_rakes(BLOCK, courses, [()] * (len(courses) + 2))]
    for runs, joints in zip(courses, settled, strict=True):
        lengths = runs[0].lengths(joints)
        assert max(lengths) <= 16 * INCH and sum(lengths) == runs[0].end - runs[0].start
        assert len(lengths) >= least_cutting(BLOCK, runs[0])
    for below, above in pairwise(settled):
        assert all(abs(one - other) >= 4 * INCH for one in below for other in above)


def test_no_courses_give_nothing() -> None:
    assert settle_rakes(BLOCK, [], [(), ()]) == ()


def test_the_least_that_two_slopes_cut() -> None:
    assert least_cutting(BLOCK, RakedRun(0, 160 * INCH, (12 * INCH, 12 * INCH), ())) == 2
    assert least_cutting(BLOCK, RakedRun(0, 160 * INCH, (24 * INCH, 0), ())) == 2
    assert least_cutting(BLOCK, RakedRun(0, 12 * INCH, (6 * INCH, 6 * INCH), ())) == 1


def test_a_lap_of_nearly_nothing_adds_no_end_of_ways(monkeypatch: pytest.MonkeyPatch) -> None:
    # A unit of 960 ticks and a lap of 1: its multiples would be 959 ways to lay either end.
    fine = Terms(module=960, stock=(960, 480), least=240, lap=1, ideal=480, close=0, open=0)
    counted: list[tuple[int, ...]] = []
    lengths = RakedRun.lengths
    monkeypatch.setattr(RakedRun, "lengths", lambda run, joints: counted.append(joints) or lengths(run, joints))
    run = RakedRun(0, 2400, (600, 600), (480, 1440))
    ((joints,),) = settle_rakes(fine, [(run,)], [(), (), ()])
    assert all(240 <= length <= 960 for length in run.lengths(joints))
    assert len(counted) < 2_000
