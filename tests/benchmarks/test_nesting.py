"""Nesting thousands of cuts against nesting a few of as many lengths: what it takes grows with lengths, not with cuts.

Run alone, and looked at as a table: ``python3 -m pytest tests/benchmarks -s``.
"""

import random
import statistics
import time

import pytest

from wallplan.lists.order.nesting import nest
from wallplan.lists.order.patterns import PLAIN, Sort, Stock

INCH = 24_384
BLOCK = Stock(15 * INCH + 5 * INCH // 8, INCH // 8)
ROUNDS = 5


def cuts_of(lengths: int, least: int, most: int, seed: int) -> list[Sort]:
    """Cuts of so many lengths, from ``least`` to ``most`` of each."""
    dice = random.Random(seed)
    return [Sort(f"{n}", dice.randint(4 * INCH, 12 * INCH), int(n % 7 == 0), "corner" if n % 14 == 0 else PLAIN,
                 dice.randint(least, most)) for n in range(lengths)]


@pytest.mark.parametrize("lengths", [30, 100])
def test_a_hundred_times_as_many_cuts_take_not_much_longer(lengths: int) -> None:
    few, many = cuts_of(lengths, 1, 2, 5), cuts_of(lengths, 100, 200, 5)
    nest(BLOCK, few)  # loads the solver
    taken: dict[str, list[float]] = {"few": [], "many": []}
    for _ in range(ROUNDS):
        for name, sorts in (("few", few), ("many", many)):
            begun = time.perf_counter()
            found = nest(BLOCK, sorts)
            taken[name].append(time.perf_counter() - begun)
            assert found.proven
    medians = {name: statistics.median(seconds) for name, seconds in taken.items()}
    ratio = medians["many"] / medians["few"]
    print(f"\n{sum(sort.count for sort in many)} cuts of {lengths} lengths: {medians['many'] * 1000:.0f} ms, "
          f"{sum(sort.count for sort in few)} cuts {medians['few'] * 1000:.0f} ms, ratio {ratio:.1f}")
    assert ratio <= 10
