"""What a wall's face shows, outside or inside, and how distances along the inside face are told.

Outside, an inside corner hides the wall's body that goes on behind the other wall. Inside, an outside corner hides the
thickness of the other wall, an inside corner shows as much more, and left is right.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from wallplan.layout.model import Course, Piece, Rake, WallLayout
from wallplan.plan.job import EndKind, Opening, Outline

FaceName = Literal["outside", "inside"]


@dataclass(frozen=True)
class Face:
    """The face that is seen. ``zero`` is, on the inside face, what its left end measures on the outside one, ticks."""

    name: FaceName = "outside"
    zero: int = 0

    def told(self, place: int) -> int:
        """A place on this face as its distance on the outside face, from the wall's left end as seen from outside."""
        return place if self.name == "outside" else self.zero - place

    def told_left(self, left: int, right: int) -> int:
        """Where what is seen from ``left`` to ``right`` begins, told likewise."""
        return min(self.told(left), self.told(right))


OUTSIDE = Face()


def show_face(wall: WallLayout, thickness: int, name: FaceName = "outside") -> tuple[WallLayout, Face]:
    """The layout as a face shows it, and that face: pieces out of sight left out, or cut off at the corner's line.

    The inside of a wall no longer than the walls it meets are thick has a length of 0 or less, and no pieces.
    """
    length = wall.wall.length
    if name == "outside":
        return _clip(wall, 0, length), OUTSIDE
    left = _hidden(wall.wall.left_end, thickness)
    right = length - _hidden(wall.wall.right_end, thickness)
    return _turn(_clip(wall, left, right), left, right), Face("inside", right)


def _hidden(end: EndKind, thickness: int) -> int:
    """How much of a wall's end the inside face lacks; less than 0 where it shows more."""
    return {"outside corner": thickness, "inside corner": -thickness}.get(end, 0)


def _clip(wall: WallLayout, left: int, right: int) -> WallLayout:
    if all(left <= piece.left and piece.right <= right for course in wall.courses for piece in course.pieces):
        return wall
    return replace(wall, courses=tuple(_clip_course(course, left, right) for course in wall.courses))


def _clip_course(course: Course, left: int, right: int) -> Course:
    return replace(course, pieces=tuple(
        _clip_piece(piece, left, right) for piece in course.pieces if piece.right > left and piece.left < right))


def _clip_piece(piece: Piece, left: int, right: int) -> Piece:
    start, end = max(piece.left, left), min(piece.right, right)
    return piece if (start, end) == (piece.left, piece.right) else piece._replace(left=start, length=end - start)


def _turn(laid: WallLayout, left: int, right: int) -> WallLayout:
    """The stretch from ``left`` to ``right`` as who stands behind it sees it."""
    wall = laid.wall
    seen = replace(
        wall, length=right - left, left_end=wall.right_end, right_end=wall.left_end,
        control_joints=tuple(right - joint for joint in reversed(wall.control_joints) if left < joint < right),
        openings=tuple(_turn_opening(opening, left, right) for opening in reversed(wall.openings)
                       if opening.left < right and opening.right > left),
        outline=_turn_outline(wall.outline, left, right),
        abuts=tuple(replace(one, end="right" if one.end == "left" else "left") for one in wall.abuts),
        piers=tuple(replace(one, left=right - one.right) for one in reversed(wall.piers)),
    )
    return replace(laid, wall=seen, courses=tuple(_turn_course(course, right) for course in laid.courses))


def _turn_opening(opening: Opening, left: int, right: int) -> Opening:
    return replace(opening, left=right - min(opening.right, right), right=right - max(opening.left, left))


def _turn_outline(outline: Outline | None, left: int, right: int) -> Outline | None:
    """The outline turned end for end, its ends drawn to those of the stretch that is seen."""
    if outline is None:
        return None
    footing, top = (
        tuple((0 if place == len(line) - 1 else right - left if place == 0 else right - at, level)
              for place, (at, level) in reversed(tuple(enumerate(line))))
        for line in (outline.footing, outline.top))
    return replace(outline, footing=footing, top=top)


def _turn_course(course: Course, right: int) -> Course:
    return replace(course, pieces=tuple(_turn_piece(piece, right) for piece in
                                        sorted(course.pieces, key=lambda piece: (piece.bottom, -piece.right))))


def _turn_piece(piece: Piece, right: int) -> Piece:
    lead: dict[str | None, Literal["left", "right"]] = {"left": "right", "right": "left"}
    rake, notch, long = piece.rake, piece.notch, piece.length
    return piece._replace(
        left=right - piece.right, lead=lead.get(piece.lead),
        rake=rake and Rake(rake.right, rake.left, long - rake.top_right, long - rake.top_left),
        notch=notch and notch._replace(left=long - notch.right, right=long - notch.left))
