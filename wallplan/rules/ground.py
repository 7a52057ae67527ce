"""Joined walls on the ground, placed anew from their lengths and corners alone; ticks, x to the right and y up.

A building's first wall runs along y = 0 with its body above it. Walls go round from left to right as seen from outside,
so that the way turns left at an outside corner and right at an inside one.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from wallplan.layout.model import Layout, Piece, WallLayout

JOINED = ("outside corner", "inside corner")


class Bounds(NamedTuple):
    """An upright rectangle on the ground."""

    left: int
    bottom: int
    right: int
    top: int


@dataclass(frozen=True, eq=False)
class Placed:
    """A wall where it stands: its left end at (``x``, ``y``), running along (``dx``, ``dy``), ``thick`` deep to its left."""

    layout: WallLayout
    x: int
    y: int
    dx: int
    dy: int
    thick: int

    def bounds(self, left: int, right: int, near: int = 0, far: int | None = None) -> Bounds:
        """What lies from ``left`` to ``right`` along the wall and ``near`` to ``far`` behind its outside face."""
        deep = self.thick if far is None else far
        xs = [self.x + self.dx * along - self.dy * back for along, back in ((left, near), (right, deep))]
        ys = [self.y + self.dy * along + self.dx * back for along, back in ((left, near), (right, deep))]
        return Bounds(min(xs), min(ys), max(xs), max(ys))

    def parts_of(self, piece: Piece, ell_return: int | None, joint: int) -> tuple[Bounds, ...]:
        """What a unit takes on the ground: as deep as the wall, but an L corner unit, which lets the other wall's unit in.

        Beside the corner it is as deep as its shorter face is long, so that the other wall may begin a joint after that; its
        tail, from behind the other wall on, is as deep as the wall.
        """
        left, right, thick = piece.left, piece.right, self.thick
        if piece.shape != "corner L" or ell_return is None:
            return (self.bounds(left, right),)
        at_left = 2 * left < self.layout.wall.length
        behind = thick + (joint if ell_return < thick else 0)
        arm = (left, left + behind) if at_left else (right - behind, right)
        tail = (left + behind, right) if at_left else (left, right - behind)
        end = self.layout.wall.left_end if at_left else self.layout.wall.right_end
        deep = (0, ell_return) if end == "outside corner" else (thick - ell_return, thick)
        return self.bounds(*arm, *deep), self.bounds(*tail)

    @property
    def body(self) -> Bounds:
        """What the wall takes; behind an inside corner it goes on as deep as it is thick."""
        wall = self.layout.wall
        behind = [self.thick if end == "inside corner" else 0 for end in (wall.left_end, wall.right_end)]
        return self.bounds(-behind[0], wall.length + behind[1])

    def along(self, bounds: Bounds) -> int:
        """How far from the wall's left end a rectangle begins."""
        return min((x - self.x) * self.dx + (y - self.y) * self.dy
                   for x in (bounds.left, bounds.right) for y in (bounds.bottom, bounds.top))


def place_buildings(layout: Layout) -> tuple[tuple[Placed, ...], ...]:
    """Walls that meet, building by building; walls that meet none are left out. () where none meet."""
    walls, thick = layout.walls, layout.job.masonry.unit.thickness
    count = len(walls)
    begins = [index for index in range(count) if walls[index].wall.left_end not in JOINED]
    chains = [_follow(walls, begin) for begin in begins] if begins else [list(range(count))]
    return tuple(_place(tuple(walls[index] for index in chain), thick) for chain in chains if len(chain) > 1)


def _follow(walls: tuple[WallLayout, ...], begin: int) -> list[int]:
    chain = [begin]
    while walls[chain[-1]].wall.right_end in JOINED and len(chain) < len(walls):
        chain.append((chain[-1] + 1) % len(walls))
    return chain


def _place(walls: tuple[WallLayout, ...], thick: int) -> tuple[Placed, ...]:
    x, y, dx, dy = 0, 0, 1, 0
    placed = []
    for wall in walls:
        placed.append(Placed(wall, x, y, dx, dy, thick))
        x, y = x + dx * wall.wall.length, y + dy * wall.wall.length
        dx, dy = (-dy, dx) if wall.wall.right_end == "outside corner" else (dy, -dx)
    return tuple(placed)
