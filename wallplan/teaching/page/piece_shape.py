"""The true shape of what is no rectangle: raked and notched pieces, stepped and gabled walls, as corners in turn."""

from __future__ import annotations

from wallplan.layout.model import Piece
from wallplan.plan.job import Wall


def trace_piece(piece: Piece) -> list[int]:
    """Corners of a raked or notched piece, x and y in turn, ticks from its lower left corner; [] for a square one."""
    if piece.rake is not None:
        rake = piece.rake
        return _flat([(0, 0), (0, rake.left), (rake.top_left, piece.height), (rake.top_right, piece.height),
                      (piece.length, rake.right), (piece.length, 0)])
    if piece.notch is not None:
        notch = piece.notch
        return _flat([(0, 0), (0, piece.height), (piece.length, piece.height), (piece.length, 0), (notch.right, 0),
                      (notch.right, notch.height), (notch.left, notch.height), (notch.left, 0)])
    return []


def trace_wall(wall: Wall) -> tuple[list[int], list[int]]:
    """Corners of a wall all round, and of its footing from left to right, ticks; a level footing has two."""
    if wall.outline is None:
        return _flat([(0, 0), (0, wall.height), (wall.length, wall.height), (wall.length, 0)]), [0, 0, wall.length, 0]
    return _flat([*wall.outline.footing, *reversed(wall.outline.top)]), _flat(list(wall.outline.footing))


def _flat(places: list[tuple[int, int]]) -> list[int]:
    """Places as one list, none twice in a row."""
    kept = [place for index, place in enumerate(places) if index == 0 or place != places[index - 1]]
    return [value for place in kept for value in place]
