"""What a wall is made of, counted once for all its sheets."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from itertools import pairwise

from wallplan.layout.model import WallLayout


@dataclass(frozen=True)
class Tally:
    """Counts and places of a wall's pieces.

    ``kinds`` are (piece, count); ``shapes`` which shapes stand in the wall; ``led`` whether it has leads; ``marked``
    (length, height, letter) of each cut; ``spans`` (left, right) of all pieces, in order; ``joints`` the middles of the
    head joints of the course that has most of them. Ticks.
    """

    kinds: tuple[tuple[str, int], ...]
    shapes: frozenset[str]
    led: bool
    marked: tuple[tuple[int, int, str], ...]
    spans: tuple[tuple[int, int], ...]
    joints: tuple[int, ...]


def tally(wall: WallLayout) -> Tally:
    """Count a wall; nothing but empty counts for a wall without courses."""
    pieces = [piece for course in wall.courses for piece in course.pieces]
    kinds = Counter(piece.piece for piece in pieces if piece.shape != "return")
    return Tally(
        tuple(kinds.items()), frozenset(piece.shape for piece in pieces), any(piece.lead for piece in pieces),
        tuple(sorted({(piece.length, piece.height, piece.mark) for piece in pieces if piece.mark})),
        tuple(sorted({(piece.left, piece.right) for piece in pieces})), _head_joints(wall),
    )


def _head_joints(wall: WallLayout) -> tuple[int, ...]:
    course = max(wall.courses, key=lambda course: len(course.pieces), default=None)
    pieces = sorted(course.pieces) if course else []
    widest = 2 * max(wall.joints)
    return tuple((one.right + other.left) // 2
                 for one, other in pairwise(pieces) if 0 < other.left - one.right <= widest)
