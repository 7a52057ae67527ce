"""Lengths that the mason has without counting a cut."""

from __future__ import annotations

from wallplan.catalogue.unit import PieceName
from wallplan.plan.job import Masonry


def stock_lengths(masonry: Masonry) -> dict[int, PieceName]:
    """Lengths that cost no cut, with their names. What the mason breaks himself he breaks to suit the joint."""
    parts = {"half": (1, 2), "quarter": (1, 4), "three-quarter": (3, 4)}
    lengths: dict[int, PieceName] = {}
    for piece in masonry.unit.pieces:
        length = piece.length
        if piece.sawn and piece.name in parts:
            top, low = parts[piece.name]
            length = masonry.module * top // low - masonry.joint
        lengths.setdefault(length, piece.name)
    return lengths
