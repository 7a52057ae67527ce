"""Walls that meet on the ground, and what their units take there; ticks, x to the right and y up."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, NamedTuple

from wallplan.layout.model import Layout, Piece, WallLayout
from wallplan.plan.ground import Line, place_walls
from wallplan.plan.job import Wall


class Bounds(NamedTuple):
    """An upright rectangle on the ground; whole ticks but where a slope was cut level."""

    left: float
    bottom: float
    right: float
    top: float


def reach_behind(wall: Wall, end: Literal["left", "right"], thick: int) -> int:
    """How far a wall's body goes on past an end: a thickness at an inside corner and where it is tied through another."""
    kind = wall.left_end if end == "left" else wall.right_end
    tied = any(one.end == end and one.tie == "interlocked" for one in wall.abuts)
    return thick if kind == "inside corner" or tied else 0


@dataclass(frozen=True, eq=False)
class Placed:
    """A wall where it stands: its left end at (``x``, ``y``), running along (``dx``, ``dy``), ``thick`` deep to its left, a
    brick's thickness ``leaf``; the least piece with two joints is ``clear``."""

    layout: WallLayout
    x: int
    y: int
    dx: int
    dy: int
    thick: int
    leaf: int
    clear: int

    def bounds(self, left: float, right: float, near: int = 0, far: int | None = None) -> Bounds:
        """What lies from ``left`` to ``right`` along the wall and ``near`` to ``far`` behind its outside face."""
        deep = self.thick if far is None else far
        xs = [self.x + self.dx * along - self.dy * back for along, back in ((left, near), (right, deep))]
        ys = [self.y + self.dy * along + self.dx * back for along, back in ((left, near), (right, deep))]
        return Bounds(min(xs), min(ys), max(xs), max(ys))

    def parts_of(self, piece: Piece, ell_return: int | None, joint: int) -> tuple[Bounds, ...]:
        """What a unit takes on the ground: as deep as the wall, but a stretcher of a one-brick wall, which is in one leaf of
        it, and an L corner unit, which lets the other wall's unit in.

        Beside the corner it is as deep as its shorter face is long, so that the other wall may begin a joint after that; its
        tail, from behind the other wall on, is as deep as the wall.
        """
        left, right, thick = piece.left, piece.right, self.thick
        if piece.leaf == "front":
            return (self.bounds(left, right, 0, self.leaf),)
        if piece.leaf == "back":
            return (self.bounds(left, right, thick - self.leaf, thick),)
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
        return self.bounds(-reach_behind(wall, "left", self.thick), wall.length + reach_behind(wall, "right", self.thick))

    def along(self, bounds: Bounds) -> float:
        """How far from the wall's left end a rectangle begins."""
        return min((x - self.x) * self.dx + (y - self.y) * self.dy
                   for x in (bounds.left, bounds.right) for y in (bounds.bottom, bounds.top))


def place_buildings(layout: Layout) -> tuple[tuple[Placed, ...], ...]:
    """Walls that meet, building by building, in the job's order; walls that meet none, nor have piers, are left out."""
    masonry = layout.job.masonry
    thick, leaf, clear = masonry.thickness, masonry.unit.thickness, masonry.joint + masonry.least_piece
    lines = [Line(wall.name, wall.length, wall.left_end, wall.right_end, wall.abuts)
             for wall in (one.wall for one in layout.walls)]
    groups: dict[int, list[Placed]] = {}
    for wall, at in zip(layout.walls, place_walls(lines, thick).standings, strict=True):
        groups.setdefault(at.group, []).append(Placed(wall, at.x, at.y, at.dx, at.dy, thick, leaf, clear))
    return tuple(tuple(group) for group in groups.values() if len(group) > 1 or group[0].layout.piers)
