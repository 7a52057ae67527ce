"""A bound on cutting that always holds: one for each run that no stock lengths and legal joints fill."""

from __future__ import annotations

from functools import lru_cache
from math import gcd

from wallplan.bond.figures import Terms


def fills_with_stock(terms: Terms, length: int) -> bool:
    """Whether some row of stock lengths, at any joint within the range, is as long as a run of nominal ``length``.

    Asks nothing of laps or neighbours, so a False is final. False for a run of no length.
    """
    return length > 0 and _fills(terms, length)


@lru_cache(maxsize=4_096)
def _fills(terms: Terms, length: int) -> bool:
    shortest, longest = min(terms.stock), max(terms.stock)
    most = (length + terms.close) // (shortest - terms.close) + 1 if shortest > terms.close else length
    fewest = terms.least_joints(length) + 1
    if terms.fixed:
        return length in _sums(terms.stock, length)
    for pieces in range(max(1, fewest), most + 1):
        low, high = length - (pieces - 1) * terms.open, length + (pieces - 1) * terms.close
        if low <= pieces * longest and pieces * shortest <= high and _reaches(terms.stock, pieces, low, high):
            return True
    return False


def _reaches(stock: tuple[int, ...], pieces: int, low: int, high: int) -> bool:
    """Whether exactly so many stock lengths come to a sum from ``low`` to ``high``."""
    shortest = min(stock)
    steps = tuple(length - shortest for length in stock if length > shortest)
    base = pieces * shortest
    if not steps:
        return low <= base <= high
    measure = gcd(*steps)
    first = max(0, -(-(low - base) // measure))
    wanted = range(first, (high - base) // measure + 1)
    if len(steps) == 1:
        return any(times <= pieces for times in wanted[:1])
    sums = _sums(tuple(step // measure for step in steps), max(wanted, default=0))
    return any(total in sums and sums[total] <= pieces for total in wanted)


def _sums(steps: tuple[int, ...], most: int) -> dict[int, int]:
    """Every sum of steps up to ``most``, with the fewest steps that make it."""
    measure = gcd(*steps)
    fewest = {0: 0}
    for total in range(measure, most + 1, measure):
        counts = [fewest[total - step] + 1 for step in steps if total - step in fewest]
        if counts:
            fewest[total] = min(counts)
    return fewest
