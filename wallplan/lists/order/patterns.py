"""Ways to saw a unit: sorts of cuts, what fits in a unit together, and every pattern. Numbers only, lengths in ticks.

A unit is sawn across, each saw cut losing a kerf. A hollow unit has two finished ends and whatever is sawn off has one
open end, so the cuts of one unit may show two ends between them. Corner and sash cuts need a corner and a sash unit;
stretchers come from either. With pieces of a quarter unit and more, patterns are few.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from operator import neg
from typing import Literal, NamedTuple

PLAIN: Literal["stretcher"] = "stretcher"
FINISHED_ENDS = 2
MOST_PATTERNS = 50_000
"""More ways than this to saw a unit are not looked through; then the nesting may miss its bound, and says so."""

Pattern = tuple[int, ...]
"""How many of each sort are sawn from one unit."""


@dataclass(frozen=True, order=True)
class Sort:
    """Cuts that are alike: name, length, how many of its ends are seen (0 to 2), the unit it must come from, how many."""

    name: str
    length: int
    ends: int
    shape: str
    count: int


@dataclass(frozen=True)
class Stock:
    """A unit to saw from: its length, and the kerf."""

    length: int
    kerf: int


def loss(stock: Stock, sorts: Sequence[Sort], pattern: Pattern) -> tuple[int, int]:
    """(kerf, offcut) in ticks: a saw cut after each piece, the last one only as wide as what is left."""
    rest = stock.length - sum(sort.length * n for sort, n in zip(sorts, pattern, strict=True))
    sawn = min(rest, sum(pattern) * stock.kerf)
    return sawn, rest - sawn


def fits(stock: Stock, sorts: Sequence[Sort], pattern: Pattern) -> bool:
    """Can a unit be sawn into this? One kerf fewer than pieces must fit: the last piece may end at the unit's own end."""
    taken = [(sort, n) for sort, n in zip(sorts, pattern, strict=True) if n]
    length = sum((sort.length + stock.kerf) * n for sort, n in taken)
    ends = sum(sort.ends * n for sort, n in taken)
    shapes = {sort.shape for sort, _ in taken} - {PLAIN}
    return length <= stock.length + stock.kerf and ends <= FINISHED_ENDS and len(shapes) <= 1


def list_patterns(stock: Stock, sorts: Sequence[Sort]) -> tuple[Pattern, ...] | None:
    """Every way to fill a unit to which no further cut can be added; None where too many would have to be looked at.

    ``sorts`` run from the longest to the shortest.
    """
    widths = [sort.length + stock.kerf for sort in sorts]
    found, room = list[Pattern](), stock.length + stock.kerf
    for seen, filling in enumerate(_extend(sorts, widths, Filling((), room, FINISHED_ENDS, PLAIN), 0)):
        if seen > MOST_PATTERNS:
            return None
        if not _can_add(sorts, widths, filling):
            pattern = [0] * len(sorts)
            for index, n in filling.taken:
                pattern[index] = n
            found.append(tuple(pattern))
    return tuple(found)


class Filling(NamedTuple):
    """A unit being filled: (sort, how many) so far; what is left of it and one kerf, finished ends left, what it must be."""

    taken: tuple[tuple[int, int], ...]
    room: int
    ends: int
    shape: str

    def most(self, sort: Sort, width: int) -> int:
        """How many more of a sort fit."""
        if width > self.room or (PLAIN not in (sort.shape, self.shape) and sort.shape != self.shape):
            return 0
        by_ends = self.ends // sort.ends if sort.ends else sort.count
        return min(sort.count, self.room // width, by_ends)

    def add(self, index: int, n: int, sort: Sort, width: int) -> Filling:
        """The unit with so many of a sort more."""
        needed = sort.shape if sort.shape != PLAIN else self.shape
        return Filling((*self.taken, (index, n)), self.room - n * width, self.ends - n * sort.ends, needed)


def _extend(sorts: Sequence[Sort], widths: Sequence[int], begun: Filling, start: int) -> Iterator[Filling]:
    """The unit as it stands, and with every choice of sorts from ``start`` on that still fit."""
    first = max(start, bisect_left(widths, -begun.room, key=neg))
    for index in range(first, len(sorts)):
        for n in range(begun.most(sorts[index], widths[index]), 0, -1):
            yield from _extend(sorts, widths, begun.add(index, n, sorts[index], widths[index]), index + 1)
    if begun.taken:
        yield begun


def _can_add(sorts: Sequence[Sort], widths: Sequence[int], filling: Filling) -> bool:
    if not widths or widths[-1] > filling.room:
        return False
    taken = dict(filling.taken)
    first = bisect_left(widths, -filling.room, key=neg)
    return any(taken.get(index, 0) < sorts[index].count and filling.most(sorts[index], widths[index])
               for index in range(first, len(sorts)))
