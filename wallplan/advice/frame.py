"""The frame of a wall: its lengths between things that may be moved, and the least cutting that each choice of moves leaves.

A search on it is best first, over one thing after another: what the lengths decided so far must cut, whatever follows,
and after that fewest moves and the shortest way. What it gives first no other choice can beat by that bound.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from heapq import heappop, heappush
from itertools import product

from wallplan.advice.moves import Move, distance, move_wall
from wallplan.advice.offers import Offers, moves_edge
from wallplan.advice.spans import Length, count_rips, find_lengths
from wallplan.bond.bounds import fills_with_stock
from wallplan.layout.corners import WallEnds
from wallplan.layout.tracks import bond_terms
from wallplan.plan.job import Masonry, Wall

UPRIGHT = ("sill", "head", "top")

Bound = tuple[int, int, int]
"""The least cutting, the moves, and their way in ticks."""

MOST_MOVES = 3
"""Things of one wall that are moved together."""

MOST_NODES = 300_000
"""Choices looked at, whole or in part; beyond it the search stops and says so."""


@dataclass(frozen=True)
class Choice:
    """Moves, and the least that the wall then cuts."""

    bound: Bound
    moves: tuple[Move, ...]


@dataclass(frozen=True)
class _Held:
    """A length in a frame: what of it each thing moves, its size before, and the least it may come to."""

    length: Length
    starts: tuple[int, ...]
    ends: tuple[int, ...]
    least: int


class Frame:
    """A wall's lengths and its offers. ``least_pier`` keeps every length from becoming narrower than that, ``most`` is how
    many things are moved together at most."""

    def __init__(self, wall: Wall, masonry: Masonry, offers: Offers, least_pier: int, most: int = MOST_MOVES,
                 ends: WallEnds | None = None) -> None:
        self.ends, self.masonry, self.terms = ends, masonry, bond_terms(masonry)
        self.sideways = [(thing, by) for thing, by in offers.items() if thing.kind not in UPRIGHT]
        self.most, self.gave_up = most, False
        upright = [(thing, (0, *by)) for thing, by in offers.items() if thing.kind in UPRIGHT]
        self.levels = [
            tuple(Move(thing, by) for (thing, _), by in zip(upright, chosen, strict=True) if by)
            for chosen in product(*(by for _, by in upright)) if sum(by != 0 for by in chosen) <= most]
        levelled = [move_wall(wall, moves) for moves in self.levels]
        self.held = [self._hold(moved, least_pier) for moved in levelled]
        widths_stay = all(thing.kind != "width" for thing in offers)
        self.rips = [count_rips(moved, masonry) if widths_stay else 0 for moved in levelled]

    def choose(self) -> Iterator[Choice]:
        """Every choice of moves, the one of the lowest bound first; the choice to move nothing is among them.

        Of equal ones that goes first which moves what was offered first: of two ends the right one.
        """
        heap: list[tuple[Bound, int, int, tuple[int, ...]]] = []
        for number, moves in enumerate(self.levels):
            cutting = self._cut(number, ())
            if cutting is not None:
                bound = (cutting + self.rips[number], len(moves), distance(moves))
                heappush(heap, (bound, 0, number, ()))
        looked = len(heap)
        while heap:
            bound, later, number, chosen = heappop(heap)
            if len(chosen) == len(self.sideways):
                yield Choice(bound, (*self.levels[number], *self._moves(chosen)))
                continue
            for by in (0, *self.sideways[len(chosen)][1]) if bound[1] < self.most else (0,):
                cutting = self._cut(number, (*chosen, by))
                if cutting is not None:
                    moved = (bound[0] + cutting, bound[1] + bool(by), bound[2] + abs(by))
                    heappush(heap, (moved, later + len(chosen) * bool(by), number, (*chosen, by)))
                    looked += 1
            if looked > MOST_NODES:
                self.gave_up = True
                return

    def _moves(self, chosen: tuple[int, ...]) -> Iterator[Move]:
        return (Move(thing, by) for (thing, _), by in zip(self.sideways, chosen, strict=True) if by)

    def _hold(self, wall: Wall, least_pier: int) -> list[list[_Held]]:
        """Lengths by the last thing that settles them; those that nothing moves come first."""
        settled: list[list[_Held]] = [[] for _ in range(len(self.sideways) + 1)]
        lengths = find_lengths(wall, self.masonry, self.ends)
        whole = {(one.left_edge, one.right_edge): one.size for one in sorted(lengths, key=lambda one: one.size)}
        for length in lengths:
            starts = self._movers(length.left_edge)
            ends = self._movers(length.right_edge)
            # At a corner every other course is shorter by the wall that it meets: the pier is as wide as the longer one.
            pier = whole[length.left_edge, length.right_edge]
            last = max((*starts, *ends), default=-1)
            settled[last + 1].append(_Held(length, starts, ends, min(least_pier, pier) - pier + length.size))
        return settled

    def _movers(self, edge: tuple[str, int]) -> tuple[int, ...]:
        return tuple(place for place, (thing, _) in enumerate(self.sideways) if moves_edge(thing, edge))

    def _cut(self, number: int, chosen: tuple[int, ...]) -> int | None:
        """What the lengths that the last choice settles must cut; None where one becomes too narrow."""
        cutting = 0
        for held in self.held[number][len(chosen)]:
            size = (held.length.size + sum(chosen[place] for place in held.ends)
                    - sum(chosen[place] for place in held.starts))
            if size < held.least:
                return None
            cutting += self._least_cutting(held.length, size)
        return cutting

    def _least_cutting(self, length: Length, size: int) -> int:
        nominal, plain = size + self.masonry.joint, length.cuts_counted - length.ripped
        ripped = length.ripped * (self.terms.least_joints(nominal) + 1) if length.ripped else 0
        return ripped + (0 if not plain or fills_with_stock(self.terms, nominal) else plain)


def least_cutting(wall: Wall, masonry: Masonry) -> int:
    """The least that a wall cuts, run by run, found without laying it."""
    (choice,) = Frame(wall, masonry, {}, 0).choose()
    return choice.bound[0]

