"""What a wall's face shows of piers built into it: their own units where they stand before it, else what goes through."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from wallplan.drawing.face import FaceName
from wallplan.layout.leads import SIDES
from wallplan.layout.model import Course, Piece, PierCourse, PierLayout, WallLayout
from wallplan.plan.job import Pier

ROUNDING = 2
"""Ticks that the placing of units may be off."""


def stand_before(wall: WallLayout, thickness: int, face: FaceName) -> WallLayout:
    """The wall's layout with what its piers show on a face in place of what they hide; the wall itself for no piers."""
    if not wall.piers:
        return wall
    return replace(wall, courses=tuple(_show_course(course, wall.piers, thickness, face) for course in wall.courses))


def projection(pier: Pier, face: FaceName) -> int:
    """How far a pier stands out of a face, ticks; 0 where it does not."""
    return pier.front if face == "outside" else pier.back


def _show_course(course: Course, piers: tuple[PierLayout, ...], thickness: int, face: FaceName) -> Course:
    pieces = list(course.pieces)
    for pier in piers:
        laid = pier.courses[course.number - 1]
        if not laid.pieces or (not laid.tied and not projection(pier.pier, face)):
            continue
        left, right = pier.pier.left, pier.pier.right
        leads = {side: [piece for piece in pieces if piece.lead == side] for side in SIDES}
        reach = (max((piece.right for piece in leads["left"]), default=-1),
                 min((piece.left for piece in leads["right"]), default=right + 1))
        pieces = [part for piece in pieces for part in _beside(piece, left, right)]
        pieces += [piece._replace(lead="left" if piece.right <= reach[0] else "right" if piece.left >= reach[1] else None)
                   for piece in _shown(laid, pier.pier, thickness, face)]
    return replace(course, pieces=tuple(sorted(pieces, key=lambda piece: (piece.bottom, piece.left))))


def _beside(piece: Piece, left: int, right: int) -> Iterator[Piece]:
    """What of a piece is seen beside a pier: all of it, what ends at the pier's side, or parts on both sides."""
    if piece.right <= left or piece.left >= right:
        yield piece
        return
    for start, end in ((piece.left, left), (right, piece.right)):
        if start < end:
            yield piece._replace(left=start, length=end - start, mark=None, piece="full" if piece.mark else piece.piece)


def _shown(course: PierCourse, pier: Pier, thickness: int, face: FaceName) -> Iterator[Piece]:
    """The units that reach the face of the pier, or the wall's own face where it does not stand out there."""
    plane = -pier.front + ROUNDING if face == "outside" else thickness + pier.back - ROUNDING
    for one in course.pieces:
        if one.near <= plane <= one.near + one.deep:
            lies_along = one.along == one.piece.length
            yield one.piece._replace(length=one.along, shape="return", mark=one.piece.mark if lies_along else None,
                                     piece=one.piece.piece if lies_along else "full")
