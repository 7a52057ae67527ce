"""Where joints are tried: enough places, in order, between the fixed ends."""

from __future__ import annotations

from wallplan.bond.figures import Problem, Stretch, Terms
from wallplan.bond.positions import shifts, try_positions

BLOCK = Terms(module=16, stock=(16, 8), least=4, lap=4, ideal=8, close=0, open=0)


def problem(end: int, *inner: tuple[int, int]) -> Problem:
    track = (Stretch(0, end, 2, 3, 3), *(Stretch(start, stop, 8, 2, 2) for start, stop in inner))
    return Problem(BLOCK, (track, track), (0, end), ())


def test_shifts_are_all_multiples_of_the_common_measure() -> None:
    # 16, 8 and 4 have the measure 4.
    assert shifts(BLOCK) == (0, 4, 8, 12)


def test_odd_measures_are_tried_one_by_one_both_ways() -> None:
    # Least piece 5: 5 and 16 - 5 from an end, besides halves and laps.
    found = shifts(Terms(module=16, stock=(16, 8), least=5, lap=4, ideal=8, close=0, open=0))
    assert {0, 4, 5, 8, 11, 12} <= set(found)
    assert all(0 <= shift < 16 for shift in found)


def test_positions_stand_off_both_ends_by_whole_shifts() -> None:
    # From 0: 4, 8, ... 36; from 38: 34, 30, ... 2.
    assert try_positions(problem(38)) == tuple(sorted({*range(0, 38, 4), *range(2, 38, 4), 38}))


def test_jambs_add_their_own() -> None:
    assert {17, 21, 25} <= set(try_positions(problem(64, (0, 25), (40, 64))))
