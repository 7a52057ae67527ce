"""Ways to saw a unit: sorts of cuts, what fits in a unit together, and every pattern. Numbers only, lengths in ticks.

A unit is sawn across, each saw cut losing a kerf. A hollow unit has two finished ends and whatever is sawn off has one
open end, so the cuts of one unit may show two ends between them. Corner and sash cuts need a corner and a sash unit;
stretchers come from either. With pieces of a quarter unit and more, patterns are few.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

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
    """Every way to fill a unit to which no further cut can be added; None where too many would have to be looked at."""
    found = []
    for seen, pattern in enumerate(_extend(stock, sorts, (), stock.length + stock.kerf, FINISHED_ENDS, PLAIN)):
        if seen > MOST_PATTERNS:
            return None
        if not _can_add(stock, sorts, pattern):
            found.append(pattern)
    return tuple(found)


def _extend(stock: Stock, sorts: Sequence[Sort], begun: Pattern, room: int, ends: int, shape: str) -> Iterator[Pattern]:
    """``room`` is what is left of the unit and one kerf, ``ends`` the finished ends left, ``shape`` what it must be."""
    index = len(begun)
    while index < len(sorts) and not _most(stock, sorts[index], room, ends, shape):
        index += 1
    if index == len(sorts):
        yield (*begun, *(0,) * (index - len(begun)))
        return
    sort, skipped = sorts[index], (0,) * (index - len(begun))
    for n in range(_most(stock, sort, room, ends, shape), -1, -1):
        taken = n * (sort.length + stock.kerf)
        needed = sort.shape if n and sort.shape != PLAIN else shape
        yield from _extend(stock, sorts, (*begun, *skipped, n), room - taken, ends - n * sort.ends, needed)


def _most(stock: Stock, sort: Sort, room: int, ends: int, shape: str) -> int:
    if PLAIN not in (sort.shape, shape) and sort.shape != shape:
        return 0
    by_ends = ends // sort.ends if sort.ends else sort.count
    return min(sort.count, room // (sort.length + stock.kerf), by_ends)


def _can_add(stock: Stock, sorts: Sequence[Sort], pattern: Pattern) -> bool:
    taken = [(sort, n) for sort, n in zip(sorts, pattern, strict=True) if n]
    room = stock.length + stock.kerf - sum((sort.length + stock.kerf) * n for sort, n in taken)
    ends = FINISHED_ENDS - sum(sort.ends * n for sort, n in taken)
    shape = next((sort.shape for sort, _ in taken if sort.shape != PLAIN), PLAIN)
    return any(n < sort.count and _most(stock, sort, room, ends, shape)
               for sort, n in zip(sorts, pattern, strict=True))
