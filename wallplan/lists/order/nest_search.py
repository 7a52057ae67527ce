"""Which patterns to saw, and how often: an integer program over all of them. The one module that knows the solver.

Cutting stock by patterns is Gilmore and Gomory's (Operations Research 9, 1961; from memory). Patterns that may not be
added to are enough: a piece too many is left out afterwards.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import highspy
import numpy as np

from wallplan.lists.order.nesting import Pattern, Sort

SECONDS = 5.0
"""Longest search; past it the best found is kept with the bound that was proven."""


def choose_patterns(
    sorts: Sequence[Sort], ways: Sequence[Pattern], filled: list[tuple[Pattern, int]], at_least: int,
) -> tuple[list[tuple[Pattern, int]], int]:
    """The fewest units over ``ways``, and the proven bound. ``filled`` is kept where the search finds nothing better."""
    solver = highspy.Highs()  # type: ignore[no-untyped-call]  # typed in all but its constructor
    solver.silent()
    solver.setOptionValue("time_limit", SECONDS)
    solver.setOptionValue("mip_abs_gap", 0.99)  # units are whole: a gap under one is none
    solver.passModel(_pose(sorts, ways, at_least))
    solver.run()
    info = solver.getInfo()
    proven = max(at_least, math.ceil(info.mip_dual_bound - 1e-6)) if math.isfinite(info.mip_dual_bound) else at_least
    values = solver.getSolution().col_value
    if not solver.getSolution().value_valid:
        return filled, proven
    chosen = _leave_out_surplus(sorts, [(way, round(value)) for way, value in zip(ways, values, strict=True) if value > 0.5])
    better = sum(times for _, times in chosen) < sum(times for _, times in filled)
    return (chosen if better else filled), proven


def _pose(sorts: Sequence[Sort], ways: Sequence[Pattern], at_least: int) -> highspy.HighsLp:
    """Minimise units so that every cut is sawn at least once; the last row is the bound that is known already."""
    columns = np.array([(*way, 1) for way in ways], dtype=float)
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = columns.shape
    model.col_cost_ = np.ones(len(ways))
    model.col_lower_ = np.zeros(len(ways))
    model.col_upper_ = np.full(len(ways), float(sum(sort.count for sort in sorts)))
    model.row_lower_ = np.array([*(sort.count for sort in sorts), at_least], dtype=float)
    model.row_upper_ = np.full(model.num_row_, highspy.kHighsInf)
    filled = columns != 0
    model.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    model.a_matrix_.start_ = np.concatenate([[0], np.cumsum(filled.sum(axis=1))]).astype(np.int32)
    model.a_matrix_.index_ = np.nonzero(filled)[1].astype(np.int32)
    model.a_matrix_.value_ = columns[filled]
    model.integrality_ = [highspy.HighsVarType.kInteger] * len(ways)
    return model


def _leave_out_surplus(sorts: Sequence[Sort], chosen: Sequence[tuple[Pattern, int]]) -> list[tuple[Pattern, int]]:
    """The same units with no cut sawn more often than it is wanted; a unit from which nothing is sawn any more is none."""
    left = [sort.count for sort in sorts]
    kept: dict[Pattern, int] = {}
    for way, times in chosen:
        rest = times
        while rest:
            taken = tuple(min(n, count) for n, count in zip(way, left, strict=True))
            if not any(taken):
                break
            alike = min([rest, *(count // n for count, n in zip(left, taken, strict=True) if n)])
            left = [count - n * alike for count, n in zip(left, taken, strict=True)]
            kept[taken] = kept.get(taken, 0) + alike
            rest -= alike
    return list(kept.items())
