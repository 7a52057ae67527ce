"""Cutting stock, Gilmore and Gomory, Operations Research 9 (1961): a worked example of the literature, from memory.

Paper rolls of 5,600 mm and thirteen widths: 72.7 rolls by length alone, so 73, and 73 can be done. Widths,
demands and the optimum are those of the example as encyclopedias give it, from memory.
"""

from __future__ import annotations

from fractions import Fraction

from wallplan.lists.order.nesting import nest
from wallplan.lists.order.patterns import PLAIN, Sort, Stock

ROLL = 5600
DEMAND = {1380: 22, 1520: 25, 1560: 12, 1710: 14, 1820: 18, 1880: 18, 1930: 20, 2000: 10, 2050: 12, 2100: 14, 2140: 16,
          2150: 18, 2200: 20}


def test_thirteen_widths_come_from_73_rolls_and_no_fewer() -> None:
    nesting = nest(Stock(ROLL, 0), [Sort(str(width), width, 0, PLAIN, count) for width, count in DEMAND.items()])
    assert nesting.units == nesting.at_least == 73
    sawn = {sort.length: 0 for sort in nesting.sorts}
    for pattern, times in nesting.patterns:
        assert sum(sort.length * n for sort, n in zip(nesting.sorts, pattern, strict=True)) <= ROLL
        for sort, n in zip(nesting.sorts, pattern, strict=True):
            sawn[sort.length] += n * times
    assert sawn == DEMAND
    # By length alone 72.7 rolls: 73 is the bound too.
    assert Fraction(sum(width * count for width, count in DEMAND.items()), ROLL) > 72
