"""Which lengths stock alone fills, against counting by hand and against trying every row."""

from __future__ import annotations

from itertools import combinations_with_replacement

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wallplan.bond.bounds import fills_with_stock
from wallplan.bond.figures import Terms


def terms(stock: tuple[int, ...] = (16, 8), close: int = 0, slack: int = 0) -> Terms:
    return Terms(module=stock[0], stock=stock, least=4, lap=4, ideal=8, close=close, open=slack)


@pytest.mark.parametrize(("length", "fills"), [(8, True), (16, True), (24, True), (80, True), (38, False), (12, False), (0, False)])
def test_blocks_and_halves_fill_multiples_of_eight(length: int, fills: bool) -> None:
    assert fills_with_stock(terms(), length) is fills


def test_joints_that_open_fill_a_little_more() -> None:
    # 161 = 10 x 16 + 1: nine joints may open by 1 each. 17 is two halves and their joint; 18 is more than it can open.
    assert fills_with_stock(terms(slack=1), 161)
    assert fills_with_stock(terms(slack=1), 17)
    assert not fills_with_stock(terms(slack=1), 18)


def test_joints_that_close_fill_a_little_less() -> None:
    assert fills_with_stock(terms(close=1), 31)  # two blocks and one joint
    assert fills_with_stock(terms(close=1), 29)  # three joints between four halves give 3: 32 - 3
    assert not fills_with_stock(terms(close=1), 28)


@given(
    length=st.integers(1, 60), close=st.integers(0, 1), slack=st.integers(0, 2),
    stock=st.sampled_from([(16, 8), (12, 6), (15, 7), (16, 12, 8, 4), (9,)]),
)
def test_answer_is_that_of_trying_every_row(length: int, close: int, slack: int, stock: tuple[int, ...]) -> None:
    rows = (row for count in range(1, length // (min(stock) - close) + 2) for row in combinations_with_replacement(stock, count))
    possible = any(
        -(len(row) - 1) * close <= length - sum(row) <= (len(row) - 1) * slack for row in rows
    )
    assert fills_with_stock(terms(stock, close, slack), length) is possible
