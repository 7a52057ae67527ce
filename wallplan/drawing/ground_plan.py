"""Walls in plan: joined walls as one building, each wall a leg from corner to corner, in ticks; x runs right, y up.

The first wall of a building runs to the right along y = 0 and its body lies above: seen from outside, walls go round from
left to right, so that a building turns left at an outside corner and right at an inside one.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from wallplan.layout.corners import joined_to
from wallplan.layout.model import Layout, WallLayout
from wallplan.plan.ground import Line, Standing, place_walls


class Place(NamedTuple):
    """A place in plan, ticks."""

    x: int
    y: int


class Extent(NamedTuple):
    """An upright rectangle in plan, ticks."""

    left: int
    bottom: int
    right: int
    top: int


class Ell(NamedTuple):
    """An L corner unit: how far its shorter face reaches, and the joint between its tail and the other wall, ticks."""

    returns: int
    joint: int


@dataclass(frozen=True)
class Leg:
    """One wall in plan: where its outside face starts, and the way it runs, one of the four along the axes."""

    wall: WallLayout
    start: Place
    way: Place

    def at(self, along: int, deep: int) -> Place:
        """The place so far along the wall from its left end, and so deep behind its outside face."""
        return Place(self.start.x + self.way.x * along - self.way.y * deep,
                     self.start.y + self.way.y * along + self.way.x * deep)

    def extent(self, left: int, right: int, near: int, far: int) -> Extent:
        """The rectangle from ``left`` to ``right`` along the wall, ``near`` to ``far`` behind its outside face."""
        one, other = self.at(left, near), self.at(right, far)
        return Extent(min(one.x, other.x), min(one.y, other.y), max(one.x, other.x), max(one.y, other.y))

    def ell_outline(self, left: int, right: int, thickness: int, ell: Ell) -> tuple[Place, ...]:
        """The six corners of an L corner unit that stands from ``left`` to ``right`` along the wall, in order."""
        at_left = 2 * left < self.wall.wall.length
        end = self.wall.wall.left_end if at_left else self.wall.wall.right_end
        tip, tail, inward = (left, right, 1) if at_left else (right, left, -1)
        bend = tip + inward * (thickness + (ell.joint if ell.returns < thickness else 0))
        near, deep, far = (0, ell.returns, thickness) if end == "outside corner" else (thickness, thickness - ell.returns, 0)
        return tuple(self.at(along, back) for along, back in (
            (tip, near), (tail, near), (tail, far), (bend, far), (bend, deep), (tip, deep)))


@dataclass(frozen=True)
class Check:
    """A corner that is square when the straight line between its neighbours measures ``length`` ticks; numbers from 1."""

    corner: int
    ends: tuple[int, int]
    length: int


@dataclass(frozen=True)
class Building:
    """Walls that join, or one free wall. ``points`` are the ends of the legs' outside faces, numbered from 1 as they
    come; a closed building's first point is also its last leg's end, and stands once. ``stems`` abut the legs.
    ``leaf`` is how thick one brick of a one-brick wall is."""

    legs: tuple[Leg, ...]
    points: tuple[Place, ...]
    closed: bool
    thickness: int
    ell: Ell | None = None
    stems: tuple[Leg, ...] = ()
    leaf: int = 0

    @property
    def drawn(self) -> tuple[Leg, ...]:
        """All of its walls: the legs, and those that abut them."""
        return (*self.legs, *self.stems)

    @property
    def piers(self) -> tuple[Leg, ...]:
        """Stems that stand out no further than walls are thick twice over, and end free."""
        return tuple(leg for leg in self.stems if leg.wall.wall.length <= 2 * self.thickness
                     and "end" in (leg.wall.wall.left_end, leg.wall.wall.right_end))

    @property
    def extent(self) -> Extent:
        """What the walls take in plan."""
        found = [leg.extent(0, leg.wall.wall.length, 0, self.thickness) for leg in self.drawn]
        found += [leg.extent(one.left, one.right, -one.front, self.thickness + one.back)
                  for leg in self.drawn for one in leg.wall.wall.piers]
        return Extent(min(e.left for e in found), min(e.bottom for e in found),
                      max(e.right for e in found), max(e.top for e in found))

    @property
    def is_rectangle(self) -> bool:
        """Whether four walls close with both pairs of opposite walls alike."""
        lengths = [leg.wall.wall.length for leg in self.legs]
        return self.closed and len(lengths) == 4 and lengths[:2] == lengths[2:]

    @property
    def shows_diagonals(self) -> bool:
        """Whether its diagonals are drawn: a rectangle's, unless a wall inside stands in their way."""
        return self.is_rectangle and not self.stems

    @property
    def corners(self) -> tuple[int, ...]:
        """The numbers of the points where two walls meet."""
        return tuple(range(1, len(self.points) + 1)) if self.closed else tuple(range(2, len(self.points)))

    def meeting(self, corner: int) -> tuple[Leg, Leg]:
        """The walls left and right of a corner. Raises IndexError for a number that is no corner's."""
        return self.legs[corner - 2], self.legs[corner - 1]

    def checks(self) -> tuple[Check, ...]:
        """For each corner the hypotenuse over its two walls, which proves its angle (Pythagoras)."""
        count = len(self.points)
        found = []
        for corner in self.corners:
            before, after = (corner - 2) % count, corner % count
            one, other = self.points[before], self.points[after]
            found.append(Check(corner, (before + 1, after + 1), round(math.hypot(one.x - other.x, one.y - other.y))))
        return tuple(found)


def find_buildings(layout: Layout) -> tuple[Building, ...]:
    """The job's buildings in the plan's order; () for a job without walls."""
    walls = [one.wall for one in layout.walls]
    lines = [Line(wall.name, wall.length, wall.left_end, wall.right_end, wall.abuts) for wall in walls]
    standings = place_walls(lines, layout.job.masonry.thickness).standings
    groups: dict[int, list[list[int]]] = {}
    for chain in _find_chains(layout):
        groups.setdefault(standings[chain[0]].group, []).append(chain)
    return tuple(_put_together(layout, chains, standings) for chains in groups.values())


def _find_chains(layout: Layout) -> list[list[int]]:
    """Walls that corners join, row by row, each from its left."""
    meets = [joined_to(layout.job, index) for index in range(len(layout.walls))]
    chains, taken = list[list[int]](), set[int]()
    for start in sorted(range(len(meets)), key=lambda index: (meets[index][0] is not None, index)):
        if start not in taken:
            chain = [start]
            while (following := meets[chain[-1]][1]) is not None and following != start:
                chain.append(following)
            chains.append(chain)
            taken.update(chain)
    return sorted(chains)


def _put_together(layout: Layout, chains: list[list[int]], standings: Sequence[Standing]) -> Building:
    """One building: the first row of walls that abuts none is its legs, all others are stems."""
    abutting = [any(layout.walls[index].wall.abuts for index in chain) for chain in chains]
    base = chains[abutting.index(False) if False in abutting else 0]
    closed = joined_to(layout.job, base[0])[0] is not None
    building, first = _go_round(layout, base, closed=closed), standings[base[0]]
    stems = tuple(_stand(layout.walls[index], standings[index], first)
                  for chain in chains if chain is not base for index in chain)
    return replace(building, stems=stems)


def _stand(wall: WallLayout, at: Standing, first: Standing) -> Leg:
    """A wall where it stands when the building's first runs to the right from (0, 0)."""
    x, y = at.x - first.x, at.y - first.y
    return Leg(wall, Place(x * first.dx + y * first.dy, y * first.dx - x * first.dy),
               Place(at.dx * first.dx + at.dy * first.dy, at.dy * first.dx - at.dx * first.dy))


def _go_round(layout: Layout, chain: list[int], *, closed: bool) -> Building:
    place, way = Place(0, 0), Place(1, 0)
    legs: list[Leg] = []
    points = [place]
    for index in chain:
        wall = layout.walls[index]
        legs.append(Leg(wall, place, way))
        place = legs[-1].at(wall.wall.length, 0)
        points.append(place)
        way = Place(-way.y, way.x) if wall.wall.right_end == "outside corner" else Place(way.y, -way.x)
    masonry = layout.job.masonry
    ell = None if masonry.unit.ell_return is None else Ell(masonry.unit.ell_return, masonry.joint)
    return Building(tuple(legs), tuple(points[:-1] if closed else points), closed, masonry.thickness, ell,
                    leaf=masonry.unit.thickness)
