"""Cuts nested into as few units as can be, with the bound: numbers only. Lengths in ticks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from wallplan.lists.order.patterns import FINISHED_ENDS, PLAIN, Filling, Pattern, Sort, Stock, list_patterns


@dataclass(frozen=True)
class Nesting:
    """Patterns and how often each is sawn. ``at_least`` is the proven bound: no fewer units can do."""

    stock: Stock
    sorts: tuple[Sort, ...]
    patterns: tuple[tuple[Pattern, int], ...]
    at_least: int

    @property
    def units(self) -> int:
        """How many units are sawn; 0 for no cuts."""
        return sum(times for _, times in self.patterns)

    @property
    def proven(self) -> bool:
        """True where no fewer units can do."""
        return self.units == self.at_least

    def shape_of(self, pattern: Pattern) -> str:
        """The unit that a pattern is sawn from: a corner or sash unit where any of its cuts needs one."""
        return next((sort.shape for sort, n in zip(self.sorts, pattern, strict=True) if n and sort.shape != PLAIN), PLAIN)


def nest(stock: Stock, sorts: Sequence[Sort]) -> Nesting:
    """The fewest units that all cuts come from, with the bound; nothing for no cuts.

    A cut longer than the unit raises ValueError. Beyond MOST_PATTERNS the result may be above its bound.
    """
    ordered = tuple(sorted((sort for sort in sorts if sort.count), key=lambda sort: (-sort.length, sort)))
    if any(sort.length > stock.length for sort in ordered):
        raise ValueError(f"a cut of {ordered[0].length} ticks is longer than its unit of {stock.length}")
    filled = fill_longest_first(stock, ordered)
    at_least = bound(stock, ordered)
    if sum(times for _, times in filled) > at_least:
        ways = list_patterns(stock, ordered)
        if ways is not None:
            from wallplan.lists.order.nest_search import choose_patterns  # loads a solver: only where it is needed

            filled, at_least = choose_patterns(
                ordered, ways, filled, at_least, lambda left: fill_longest_first(stock, left))
    return Nesting(stock, ordered, tuple(sorted(filled, reverse=True)), at_least)


def fill_longest_first(stock: Stock, sorts: Sequence[Sort]) -> list[tuple[Pattern, int]]:
    """Each unit takes the longest cut that still fits, until none does: a good nesting, not always the best."""
    left = [sort.count for sort in sorts]
    filled: list[tuple[Pattern, int]] = []
    while any(left):
        unit = Filling((), stock.length + stock.kerf, FINISHED_ENDS, PLAIN)
        for index, sort in enumerate(sorts):
            if left[index] and (most := min(left[index], unit.most(sort, sort.length + stock.kerf))):
                unit = unit.add(index, most, sort, sort.length + stock.kerf)
        taken = [0] * len(sorts)
        for index, n in unit.taken:
            taken[index] = n
        times = min(left[index] // n for index, n in unit.taken)
        for index, n in unit.taken:
            left[index] -= n * times
        filled.append((tuple(taken), times))
    return filled


def bound(stock: Stock, sorts: Sequence[Sort]) -> int:
    """A number of units that no nesting can be under: by length, by pieces over half a unit, by ends that are seen."""
    room = stock.length + stock.kerf
    by_length = -(-sum((sort.length + stock.kerf) * sort.count for sort in sorts) // room)
    by_half = sum(sort.count for sort in sorts if 2 * (sort.length + stock.kerf) > room)
    shapes = {sort.shape for sort in sorts}
    by_ends = sum(
        -(-sum(sort.ends * sort.count for sort in sorts if sort.shape == shape) // FINISHED_ENDS)
        for shape in shapes - {PLAIN}
    )
    return max(by_length, by_half, by_ends)
