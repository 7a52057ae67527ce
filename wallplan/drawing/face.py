"""What a wall's outside face shows: at an inside corner the wall's body goes on behind the other wall, out of sight."""

from __future__ import annotations

from dataclasses import replace

from wallplan.layout.model import Course, Piece, WallLayout


def show_face(wall: WallLayout) -> WallLayout:
    """The layout as its outside face shows it: pieces behind an inside corner left out, or cut off at the corner's line.

    A wall without inside corners is given back as it is.
    """
    if "inside corner" not in (wall.wall.left_end, wall.wall.right_end):
        return wall
    return replace(wall, courses=tuple(_show_course(course, wall.wall.length) for course in wall.courses))


def _show_course(course: Course, length: int) -> Course:
    return replace(course, pieces=tuple(
        _show_piece(piece, length) for piece in course.pieces if piece.right > 0 and piece.left < length))


def _show_piece(piece: Piece, length: int) -> Piece:
    left, right = max(piece.left, 0), min(piece.right, length)
    return piece if (left, right) == (piece.left, piece.right) else piece._replace(left=left, length=right - left)
