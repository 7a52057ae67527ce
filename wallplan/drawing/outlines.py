"""Outlines: where each piece's edges are drawn.

Where a joint is too thin on the paper for two lines and a gap, the two pieces share one line in the joint's middle,
as drawing offices do; where it is thick enough each piece is drawn to its own edge. Ends, jambs, sills, heads and
control joints are always drawn where they are.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from itertools import pairwise
from typing import NamedTuple

from wallplan.drawing.primitives import Box, Point, Segment
from wallplan.drawing.view import View
from wallplan.drawing.wall_shape import cut_box, trace
from wallplan.layout.model import Piece

UNIT_LINE = 0.35
"""Outline of a piece, mm (ISO 128-2's line groups, as are the next two)."""

HEAVY_LINE = 0.7
"""Wall edge, openings and leads, mm."""

THIN_LINE = 0.25
"""Hatching, leaders and dimensions, mm: nothing is thinner."""

CONTROL_WIDTH = 1.0
"""The two lines of a control joint are at least this far apart, mm."""


class Cell(NamedTuple):
    """A piece with the rectangle that its outline takes on the paper, and its course's number.

    ``shape`` are the corners of a raked or notched piece, cut off at the wall's outline; () for a square one.
    """

    piece: Piece
    box: Box
    course: int
    shape: tuple[Point, ...] = ()

    @property
    def middle(self) -> Point:
        """A place well inside of the piece."""
        if not self.shape:
            return self.box.centre
        xs, ys = zip(*self.shape, strict=True)
        return Point(sum(xs) / len(xs), sum(ys) / len(ys))

    @property
    def room(self) -> Box:
        """The rectangle that lettering may take: of a raked piece, what is under most of its height."""
        rake = self.piece.rake
        if rake is None or not self.shape:
            return self.box
        per_tick, high = self.box.width / self.piece.length, 0.85 * self.piece.height

        def off(side: int, run: int) -> float:
            rise = self.piece.height - side
            return max(0.0, run * (high - side) / rise) * per_tick if rise > 0 else 0.0

        left = self.box.left + off(rake.left, rake.top_left)
        right = self.box.right - off(rake.right, self.piece.length - rake.top_right)
        return Box(left, self.box.top + 0.15 * self.box.height, max(left, right), self.box.bottom)

    @property
    def edges(self) -> list[Segment]:
        """The sides of a raked or notched piece."""
        return [Segment(*one, *other) for one, other in pairwise((*self.shape, *self.shape[:1]))]


def find_cells(view: View) -> tuple[Cell, ...]:
    """The pieces in view with their outlines, course by course; () where none stands in the window."""
    left, right = view.window.left, view.window.right
    cells: list[Cell] = []
    for course in view.courses:
        near = [piece for piece in course.pieces if piece.left < right and piece.right > left]
        edges = _Edges(view, near)
        cells.extend(
            Cell(piece, view.box(edges.left(piece), edges.right(piece), edges.bottom(piece), edges.top(piece)),
                 course.number)
            for piece in near if view.shown(piece)
        )
    outline = view.wall.wall.outline
    if outline is None:
        return tuple(cells)
    wall = trace(view, outline)
    return tuple(cell._replace(shape=cut_box(cell.box, wall)) if cell.piece.rake or cell.piece.notch else cell
                 for cell in cells)


class _Edges:
    """The edges of one course's pieces in ticks, moved into the joints where those are drawn as one line."""

    def __init__(self, view: View, pieces: list[Piece]) -> None:
        masonry = view.job.masonry
        self.view = view
        self.shared = view.scale.on_paper(masonry.joint) < 2 * UNIT_LINE
        self.widest = max(masonry.widest_joint, *view.wall.joints)
        self.lefts = sorted(piece.left for piece in pieces)
        self.rights = sorted(piece.right for piece in pieces)
        self.apart = max(view.scale.on_wall(CONTROL_WIDTH), masonry.joint)

    def left(self, piece: Piece) -> int:
        place = bisect_right(self.rights, piece.left)
        gap = piece.left - self.rights[place - 1] if place else 0
        return self._edge(piece.left, -gap)

    def right(self, piece: Piece) -> int:
        place = bisect_left(self.lefts, piece.right)
        gap = self.lefts[place] - piece.right if place < len(self.lefts) else 0
        return self._edge(piece.right, gap)

    def _edge(self, edge: int, gap: int) -> int:
        """An edge with the joint beside it; ``gap`` is negative for a joint on the left."""
        if not 0 < abs(gap) <= self.widest:
            return edge
        middle = edge + gap // 2
        if any(abs(middle - joint) <= abs(gap) for joint in self.view.wall.wall.control_joints):
            return middle - (self.apart if gap > 0 else -self.apart) // 2
        return middle if self.shared else edge

    def bottom(self, piece: Piece) -> int:
        bed = self.view.wall.bed
        if not self.shared:
            return piece.bottom
        return 0 if piece.bottom <= bed else piece.bottom - bed // 2

    def top(self, piece: Piece) -> int:
        exposed = piece.top >= self.view.wall.courses[-1].top
        return piece.top if exposed or not self.shared else piece.top + self.view.wall.bed // 2
