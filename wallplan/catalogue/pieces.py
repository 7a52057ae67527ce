"""The lengths that a family stocks."""

from __future__ import annotations

from wallplan.catalogue.unit import StockPiece


def half_bat(length: int, joint: int) -> int:
    """Length of half a unit so that two of them and a joint make one: half of length less joint.

    Ticks; an odd tick is rounded down, so that two halves and a joint never overrun the unit.
    """
    return (length - joint) // 2


def stock_of(
    length: int, *, half: int | None, half_sawn: bool, three_quarter: int | None = None, quarter: int | None = None,
) -> tuple[StockPiece, ...]:
    """The full unit and its stock lengths in ticks, longest first; a length that is None is not stocked.

    ``half_sawn`` is True for a bat, which the trade makes from a full unit as routine (common practice, no source).
    """
    family = (
        StockPiece("full", length, sawn=False),
        StockPiece("three-quarter", three_quarter or 0, sawn=False),
        StockPiece("half", half or 0, sawn=half_sawn),
        StockPiece("quarter", quarter or 0, sawn=False),
    )
    return tuple(piece for piece in family if piece.length)
