"""Spreading: order and distance kept, moved as little as can be."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wallplan.drawing.spread import spread


def test_places_far_apart_stay() -> None:
    assert spread([1.0, 5.0, 9.0], 3.0, 0.0, 10.0) == [1.0, 5.0, 9.0]


def test_two_that_are_too_near_move_alike() -> None:
    assert spread([4.0, 5.0], 3.0, 0.0, 10.0) == [3.0, 6.0]


def test_ends_hold() -> None:
    assert spread([0.0, 0.0, 9.9], 2.0, 0.0, 10.0) == [0.0, 2.0, 9.9]
    assert spread([9.0, 10.0], 2.0, 0.0, 10.0) == [8.0, 10.0]


def test_nothing_and_too_many() -> None:
    assert spread([], 2.0, 0.0, 10.0) == []
    assert spread([1.0, 1.0, 1.0], 9.0, 0.0, 10.0) == [0.0, 5.0, 10.0]


@given(st.lists(st.floats(0, 100), max_size=20), st.floats(0.1, 4))
def test_always_apart_and_in_order(places: list[float], gap: float) -> None:
    found = spread(sorted(places), gap, 0.0, 100.0)
    assert len(found) == len(places)
    assert all(other - one >= gap - 1e-6 for one, other in pairwise(found))
    assert all(-1e-6 <= place <= 100 + 1e-6 for place in found)


@given(st.lists(st.floats(0, 100), min_size=2, max_size=8))
def test_the_mean_of_those_that_move_stays_away_from_the_ends(places: list[float]) -> None:
    found = spread(sorted(places), 3.0, -1000.0, 1000.0)
    assert sum(found) == pytest.approx(sum(places), abs=1e-6)
