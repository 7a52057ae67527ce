"""The size of a sawn piece in words: length, height where it is ripped, both lengths where it is raked, its notch."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from wallplan.layout.model import Piece, Rake
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure, print_size

TOGETHER = " + "
"""Between the names of two raked cuts that one sawing on the slope gives."""


def tell_size(piece: Piece, measure: Measure, unit_height: int, joined: str = " x ") -> str:
    """``11 5/8"``; ripped ``15 5/8" x 6 5/8"``; raked ``15 5/8" bottom, 4 3/16" top``; with a notch;
    or ``46 mm closer``. Actual sizes.

    ``joined`` stands between length and height.
    """
    size = print_size(piece.length, measure)
    if piece.piece == "closer":
        return f"{size} closer"
    if piece.rake is not None:
        return f"{size}{_tell_rake(piece, piece.rake, measure, unit_height)}"
    if piece.notch is not None:
        wide, high = piece.notch.right - piece.notch.left, piece.notch.height
        return f"{size}, notch {print_size(wide, measure)} x {print_size(high, measure)}"
    return size if piece.height == unit_height else f"{size}{joined}{print_size(piece.height, measure)}"


def _tell_rake(piece: Piece, rake: Rake, measure: Measure, unit_height: int) -> str:
    """The top of a raked piece, or its point; its low side where that is none, and both sides where it is all slope."""
    least = TICKS_PER_INCH // 16 if measure == "feet" else TICKS_PER_MM
    low, high = sorted((rake.left, rake.right))
    if rake.top_length < least and low >= least and piece.height - high < least:
        return f", low side {print_size(low, measure)}, high side {print_size(high, measure)}"
    top = f"{print_size(rake.top_length, measure)} top" if rake.top_length >= least else "to a point"
    if unit_height - piece.height >= least:
        top += f" {print_size(piece.height, measure)} high"
    return f" bottom, {top}" + (f", low side {print_size(low, measure)}" if low >= least else "")


def count_hands(pieces: Iterable[Piece]) -> tuple[int, int]:
    """How many raked pieces are sawn down to the left and to the right, as the wall is seen from outside."""
    hands = Counter(piece.hand for piece in pieces)
    return hands["left"], hands["right"]


def tell_count(count: int, hands: tuple[int, int]) -> str:
    """How many, with their hands where any is raked: ``24: 12 left, 12 right``; a hand that none has is left out."""
    left, right = hands
    if not left and not right:
        return str(count)
    told = [(left, "left"), (right, "right"), (count - left - right, "at the ridge")]
    return f"{count}: {', '.join(f'{number} {hand}' for number, hand in told if number)}"
