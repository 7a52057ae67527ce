"""Which patterns to saw, and how often: an integer program over all of them. The one module that knows the solver.

Cutting stock by patterns is Gilmore and Gomory's (Operations Research 9, 1961; from memory). Patterns that may not be
added to are enough: a piece too many is left out afterwards.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csc_array

from wallplan.lists.order.patterns import Pattern, Sort

SECONDS = 5.0
"""Longest search; past it the best found is kept with the bound that was proven."""


def choose_patterns(
    sorts: Sequence[Sort], ways: Sequence[Pattern], filled: list[tuple[Pattern, int]], at_least: int,
) -> tuple[list[tuple[Pattern, int]], int]:
    """The fewest units over ``ways``, and the proven bound. ``filled`` is kept where the search finds nothing better.

    Every cut is sawn at least once; the last row holds the bound that is known already, which spares the search its proof.
    """
    rows = csc_array(np.array([(*way, 1) for way in ways], dtype=float).T)
    found = milp(
        np.ones(len(ways)), integrality=np.ones(len(ways)), bounds=Bounds(0, np.inf),
        constraints=LinearConstraint(rows, [*(sort.count for sort in sorts), at_least], np.inf),
        options={"time_limit": SECONDS, "mip_rel_gap": 0.0},
    )
    reached = found.get("mip_dual_bound")
    proven = max(at_least, math.ceil(reached - 1e-6)) if reached is not None and math.isfinite(reached) else at_least
    if found.x is None:
        return filled, proven
    counts = [(way, round(value)) for way, value in zip(ways, found.x, strict=True) if value > 0.5]
    chosen = _leave_out_surplus(sorts, counts)
    better = sum(times for _, times in chosen) < sum(times for _, times in filled)
    return (chosen if better else filled), proven


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
