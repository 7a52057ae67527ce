"""Spots: the pieces of one course before it is set on its height, so that courses laid alike share them."""

from __future__ import annotations

from typing import NamedTuple

from wallplan.catalogue.unit import PieceName
from wallplan.layout.model import Lead, Leaf, Notch, Rake, Shape
from wallplan.layout.stock import stock_lengths
from wallplan.plan.coursing import Row
from wallplan.plan.job import Masonry


class Spot(NamedTuple):
    """One piece: left end and length, how far its underside lies above the underside of the course's bed, its height."""

    left: int
    length: int
    rise: int
    height: int
    piece: PieceName
    shape: Shape
    lead: Lead | None
    rake: Rake | None = None
    notch: Notch | None = None
    leaf: Leaf | None = None

    @property
    def right(self) -> int:
        """Right end, ticks from the wall's left end."""
        return self.left + self.length

    @property
    def top(self) -> int:
        """Top, ticks above the underside of the course's bed."""
        return self.rise + self.height


class Namer(NamedTuple):
    """Names pieces by their size: a stock length at full (or half-high) height has its name, all else is cut."""

    stock: dict[int, PieceName]
    heights: frozenset[int]

    def name(self, length: int, height: int) -> PieceName:
        """Name of a piece of this length and height, in ticks."""
        return self.stock.get(length, "cut") if height in self.heights else "cut"


def make_namer(masonry: Masonry) -> Namer:
    """The namer of a masonry's unit."""
    unit = masonry.unit
    heights = {unit.height} if unit.half_high is None else {unit.height, unit.half_high}
    return Namer(stock_lengths(masonry), frozenset(heights))


def make_spots(placed: tuple[tuple[int, int], ...], row: Row, namer: Namer) -> list[Spot]:
    """Spots of one run in one course from the (left, length) of its pieces."""
    return [
        Spot(left, length, row.bed, row.unit_height, namer.name(length, row.unit_height), "stretcher", None)
        for left, length in placed
    ]


def find_covering(spots: list[Spot], left: int, right: int) -> list[int]:
    """Which neighbours of a run must be taken so that they cover from ``left`` to ``right``; [] where none reach it."""
    last = len(spots) - 1
    if not spots or spots[0].left >= right or spots[last].right <= left:
        return []
    return [
        index for index in range(len(spots))
        if (index == last or spots[index + 1].left > left) and (index == 0 or spots[index - 1].right < right)
    ]


def count_cuts(spots: list[Spot], masonry: Masonry) -> int:
    """Cutting: a cut piece counts one, one shorter than half a unit two. In a one-brick wall a sawn pair counts two, a
    closer one.
    """
    if masonry.one_brick:
        return sum({"cut": 1 if spot.leaf else 2, "closer": 1}.get(spot.piece, 0) for spot in spots)
    return sum(
        2 if 2 * (spot.length + masonry.joint) < masonry.module else 1 for spot in spots if spot.piece == "cut"
    )
