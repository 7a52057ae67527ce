"""What a piece costs, and runs whose joints share what their end pieces leave."""

from __future__ import annotations

from dataclasses import replace

import pytest

from wallplan.bond.cost import BROKEN, CUTTING, IMPOSSIBLE, SHORT, count_broken, count_cutting
from wallplan.bond.figures import Terms
from wallplan.bond.pieces import fit_run, grade_piece, near_stock, pull_alike

BLOCK = Terms(module=16, stock=(16, 8), least=4, lap=4, ideal=8, close=0, open=0)
LOOSE = Terms(module=160, stock=(160, 80), least=40, lap=40, ideal=80, close=1, open=1)
"""Tenths of an inch; joints give or take a tenth."""


@pytest.mark.parametrize(("length", "cost"), [
    (16, 0), (8, SHORT),  # stock; a half is a short piece all the same
    (15, CUTTING), (9, CUTTING),  # cut, at least half a unit
    (7, 2 * CUTTING + SHORT), (4, 2 * CUTTING + SHORT),  # a short cut counts twice
    (3, 2 * CUTTING + SHORT + BROKEN),  # under the least piece
    (17, IMPOSSIBLE), (0, IMPOSSIBLE), (-1, IMPOSSIBLE),
])
def test_cost_of_a_piece(length: int, cost: int) -> None:
    assert grade_piece(BLOCK, length) == cost


def test_stock_lengths_within_reach() -> None:
    assert near_stock(BLOCK, 14, 2) == (16,)
    assert near_stock(BLOCK, 12, 4) == (16, 8)
    assert near_stock(BLOCK, 16, 8) == ()  # it is stock already
    assert near_stock(BLOCK, 13, 2) == ()


def test_fixed_joints_leave_pieces_as_they_are() -> None:
    fit = fit_run(BLOCK, (8, 16, 14))
    assert (fit.pieces, fit.difference, count_cutting(fit.cost)) == ((8, 16, 14), 0, 1)


def test_joints_take_up_what_the_last_piece_is_over() -> None:
    # 160 + 160 + 82: two joints open by a tenth each and the half goes in whole.
    fit = fit_run(LOOSE, (160, 160, 82))
    assert (fit.pieces, fit.difference, count_cutting(fit.cost)) == ((160, 160, 80), 2, 0)


def test_joints_take_no_more_than_they_can() -> None:
    assert fit_run(LOOSE, (160, 160, 83)).pieces == (160, 160, 83)


def test_ends_that_pull_apart_are_not_evened_out() -> None:
    # 81 would give one to 79 with no joint the wider for it, but every joint between would stand off the pattern.
    assert not pull_alike(1, -1) and pull_alike(1, 1) and pull_alike(0, -1)
    assert fit_run(LOOSE, (81, 160, 160, 79)).pieces in {(80, 160, 160, 79), (81, 160, 160, 80)}


def test_run_that_cannot_be_filled_is_impossible() -> None:
    assert fit_run(BLOCK, (17,)).cost >= IMPOSSIBLE


def test_what_is_no_longer_than_its_joint_is_worse_than_any_sliver() -> None:
    jointed = replace(LOOSE, joint=4)
    assert grade_piece(jointed, 4) > 2 * grade_piece(jointed, 5)
    assert count_broken(grade_piece(jointed, 5)) == 1
    assert grade_piece(jointed, 4) < IMPOSSIBLE  # where nothing else fills a run it is told as broken
