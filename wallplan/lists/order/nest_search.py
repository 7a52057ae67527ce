"""Which patterns to saw, and how often: an integer program over all of them. The one module that knows the solver.

Cutting stock by patterns is Gilmore and Gomory's (Operations Research 9, 1961; from memory). Patterns that may not be
added to are enough: a piece too many is left out afterwards.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import Bounds, LinearConstraint, linprog, milp
from scipy.sparse import csc_array

from wallplan.lists.order.patterns import Pattern, Sort

SECONDS = 4.0
"""Longest search; past it the best found is kept with the bound that was proven."""

Filled = list[tuple[Pattern, int]]


def choose_patterns(
    sorts: Sequence[Sort], ways: Sequence[Pattern], filled: Filled, at_least: int,
    fill: Callable[[Sequence[Sort]], Filled],
) -> tuple[Filled, int]:
    """The fewest units over ``ways``, and the proven bound. ``filled`` is kept where the search finds nothing better.

    First the linear program: its prices give a bound; its whole parts, with ``fill`` for what they leave, often reach it.
    Else the integer program. Every cut is sawn at least once; the last row holds the bound that is known already, which
    spares the search its proof.
    """
    rows = csc_array(np.array(ways, dtype=np.int16).T.astype(float))
    wanted = np.array([sort.count for sort in sorts], dtype=float)
    loose = linprog(np.ones(len(ways)), A_ub=-rows, b_ub=-wanted, method="highs", options={"time_limit": SECONDS})
    if loose.status == 0:
        at_least = max(at_least, bound_by_prices(sorts, ways, -loose.ineqlin.marginals))
        filled = _fewer(filled, _round_down(sorts, ways, loose.x, fill))
    if _units(filled) == at_least:
        return filled, at_least
    known = csc_array(np.ones((1, len(ways))))
    found = milp(
        np.ones(len(ways)), integrality=np.ones(len(ways)), bounds=Bounds(0, np.inf),
        constraints=[LinearConstraint(rows, wanted, np.inf), LinearConstraint(known, at_least, np.inf)],
        options={"time_limit": SECONDS, "mip_rel_gap": 0.0},
    )
    reached = found.get("mip_dual_bound")
    proven = max(at_least, math.ceil(reached - 1e-6)) if reached is not None and math.isfinite(reached) else at_least
    if found.x is None:
        return filled, proven
    counts = [(way, round(value)) for way, value in zip(ways, found.x, strict=True) if value > 0.5]
    return _fewer(filled, _leave_out_surplus(sorts, counts)), proven


def _units(filled: Filled) -> int:
    return sum(times for _, times in filled)


def _fewer(one: Filled, other: Filled) -> Filled:
    return other if _units(other) < _units(one) else one


def bound_by_prices(sorts: Sequence[Sort], ways: Sequence[Pattern], prices: NDArray[np.float64]) -> int:
    """A bound from a price of each cut: no unit holds cuts worth more than its dearest pattern. Reckoned in whole numbers.

    0 where all cuts are worth nothing (weak duality of linear programs; prices of any kind give a bound, if not a good one).
    """
    whole = [max(0, round(price * 1e9)) for price in prices]
    dearest = max(sum(n * whole[index] for index, n in enumerate(way) if n) for way in ways)
    worth = sum(sort.count * price for sort, price in zip(sorts, whole, strict=True))
    return -(-worth // dearest) if dearest else 0


def _round_down(sorts: Sequence[Sort], ways: Sequence[Pattern], shares: NDArray[np.float64],
                fill: Callable[[Sequence[Sort]], Filled]) -> Filled:
    """The whole parts of shares of patterns, and what they leave, filled."""
    parts = [(way, int(share + 1e-6)) for way, share in zip(ways, shares, strict=True) if share > 0.5]
    whole = _leave_out_surplus(sorts, parts)
    left = [sort.count for sort in sorts]
    for way, times in whole:
        left = [count - n * times for count, n in zip(left, way, strict=True)]
    joined = dict(whole)
    for way, times in fill([replace(sort, count=count) for sort, count in zip(sorts, left, strict=True)]):
        joined[way] = joined.get(way, 0) + times
    return list(joined.items())


def _leave_out_surplus(sorts: Sequence[Sort], chosen: Sequence[tuple[Pattern, int]]) -> Filled:
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
