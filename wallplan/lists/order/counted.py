"""Which pieces a wall counts: at a corner a piece is seen in two walls and counted in one."""

from __future__ import annotations

from collections.abc import Iterator

from wallplan.layout.model import Course, Layout, Piece, WallLayout


def pieces_in(course: Course, wall: WallLayout) -> tuple[Piece, ...]:
    """The pieces of a course that its wall counts, front and back, those of its piers with them; () for none."""
    own = tuple(piece for piece in course.bricks if piece.of == wall.wall.name)
    return (*own, *wall.pier_pieces(course.number)) if wall.piers else own


def counted_pieces(layout: Layout) -> Iterator[Piece]:
    """Every piece of the job once."""
    return (piece for wall in layout.walls for course in wall.courses for piece in pieces_in(course, wall))
