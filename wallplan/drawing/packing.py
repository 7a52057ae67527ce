"""Packing: drawings of known sizes in rows on sheets, in their order."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple


class Stand(NamedTuple):
    """Which drawing stands where in a sheet's room: its upper left corner, mm."""

    number: int
    x: float
    y: float


def pack(sizes: Sequence[tuple[float, float]], width: float, height: float) -> tuple[tuple[Stand, ...], ...]:
    """Sheets of drawings, rows filled from the left; () where one is too large for a sheet or there are none."""
    if any(wide > width or high > height for wide, high in sizes):
        return ()
    sheets: list[list[Stand]] = []
    x = y = row = 0.0
    for number, (wide, high) in enumerate(sizes):
        if x + wide > width:
            x, y, row = 0.0, y + row, 0.0
        if not sheets or y + high > height:
            sheets.append([])
            x = y = row = 0.0
        sheets[-1].append(Stand(number, x, y))
        x, row = x + wide, max(row, high)
    return tuple(tuple(sheet) for sheet in sheets)
