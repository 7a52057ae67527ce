"""The size of a sawn piece in words: length, height where it is ripped, both lengths where it is raked, its notch."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from wallplan.layout.model import Piece
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure, print_size

TOGETHER = " + "
"""Between the names of two raked cuts that one sawing on the slope gives."""


def tell_size(piece: Piece, measure: Measure, unit_height: int, joined: str = " x ") -> str:
    """``11 5/8"``; ripped ``15 5/8" x 6 5/8"``; raked ``15 5/8" bottom, 4 3/16" top``; or with a notch. Actual sizes.

    ``joined`` stands between length and height.
    """
    size = print_size(piece.length, measure)
    if piece.rake is not None:
        return f"{size} bottom, {_tell_top(piece, measure, unit_height)}"
    if piece.notch is not None:
        wide, high = piece.notch.right - piece.notch.left, piece.notch.height
        return f"{size}, notch {print_size(wide, measure)} x {print_size(high, measure)}"
    return size if piece.height == unit_height else f"{size}{joined}{print_size(piece.height, measure)}"


def _tell_top(piece: Piece, measure: Measure, unit_height: int) -> str:
    """The top of a raked piece, its low side where that is none, and its height where the slope does not leave all of it."""
    rake, least = piece.rake, TICKS_PER_INCH // 16 if measure == "feet" else TICKS_PER_MM
    assert rake is not None
    top = f"{print_size(rake.top_length, measure)} top" if rake.top_length >= least else "to a point"
    low = min(rake.left, rake.right)
    if low >= least:
        top += f", low side {print_size(low, measure)}"
    return top if unit_height - piece.height < least else f"{top} {print_size(piece.height, measure)} high"


def count_hands(pieces: Iterable[Piece]) -> tuple[int, int]:
    """How many raked pieces are sawn down to the left and to the right, as the wall is seen from outside."""
    hands = Counter(piece.hand for piece in pieces)
    return hands["left"], hands["right"]


def tell_count(count: int, hands: tuple[int, int]) -> str:
    """How many, with their hands where any is raked: ``24: 12 left, 12 right``."""
    left, right = hands
    if not left and not right:
        return str(count)
    rest = count - left - right
    return f"{count}: {left} left, {right} right" + (f", {rest} at the ridge" if rest else "")
