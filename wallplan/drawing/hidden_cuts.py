"""Cuts that a wall's face does not show: in its piers, behind them, or behind the face of a one-brick wall."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from wallplan.layout.model import Piece, WallLayout


def tell_hidden(wall: WallLayout, seen: WallLayout) -> Mapping[str, str]:
    """For each letter how many of its cuts no one sees on a face, in words for the cut table; {} where all are seen.

    ``seen`` is the wall as that face shows it. What stands at a pier is drawn on the piers' sheet.
    """
    laid = _count(wall, (piece for course in wall.courses for piece in (*course.bricks, *wall.pier_pieces(course.number))))
    shown = _count(seen, (piece for course in seen.courses for piece in course.pieces))
    return {mark: words for mark in {mark for mark, _ in laid}
            if (words := _tell([laid[mark, place] - shown[mark, place] for place in (False, True)],
                               laid[mark, False] + laid[mark, True]))}


def _count(wall: WallLayout, pieces: Iterable[Piece]) -> Counter[tuple[str, bool]]:
    """How many cuts there are of each letter, at a pier and elsewhere."""
    spans = [(pier.left, pier.right) for pier in wall.wall.piers]
    return Counter((piece.mark, any(piece.left < right and left < piece.right for left, right in spans))
                   for piece in pieces if piece.mark)


def _tell(hidden: list[int], count: int) -> str:
    """How many of ``count`` cuts are hidden behind the face and at piers."""
    parts = [(number, words) for number, words in zip(hidden, ("behind", "in piers"), strict=True) if number > 0]
    return ", ".join(f"{'all' if number == count else number} {words}" for number, words in parts)
