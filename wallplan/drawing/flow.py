"""Panels that run down columns and over to the next sheets, with a head that stands on each column."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from wallplan.drawing.board import Board
from wallplan.drawing.panel import Panel, stand
from wallplan.drawing.primitives import Box

_NEAR = 1.0
"""Sheets are balanced to so much, mm."""


@dataclass(frozen=True)
class Block:
    """A panel; ``tied`` keeps it on the sheet of the one after it, as a heading is."""

    panel: Panel
    tied: bool = False


def flow(blocks: Sequence[Block], height: float, head: float = 0.0, abreast: int = 1) -> tuple[tuple[int, int], ...]:
    """Which blocks stand in each column, (first, after the last), under a head ``head`` mm high.

    A sheet holds ``abreast`` columns. Where more sheets than one are needed all are about equally full. () for none, or
    where a block is higher than a sheet has room for. A heading never ends a column.
    """
    if not blocks or any(block.panel.height + head > height for block in blocks):
        return ()
    found = _fill(blocks, height, head)
    sheets = count_sheets(found, abreast)
    if sheets == 1:
        return found
    low, high = min(height, head + _find_tallest(blocks)), height
    while high - low > _NEAR:
        middle = (low + high) / 2
        tried = _fill(blocks, middle, head)
        low, high, found = (low, middle, tried) if count_sheets(tried, abreast) == sheets else (middle, high, found)
    return found


def count_sheets(columns: Sequence[tuple[int, int]], abreast: int) -> int:
    """Sheets that so many columns take; 0 for none."""
    return -(-len(columns) // abreast)


def _find_tallest(blocks: Sequence[Block]) -> float:
    """Height of the tallest block with the headings tied to it, mm."""
    tallest, tied = 0.0, 0.0
    for block in blocks:
        tallest = max(tallest, tied + block.panel.height)
        tied = tied + block.panel.height if block.tied else 0.0
    return tallest


def _fill(blocks: Sequence[Block], height: float, head: float) -> tuple[tuple[int, int], ...]:
    """Each column as full as it goes."""
    found: list[tuple[int, int]] = []
    first, y = 0, head
    for number, block in enumerate(blocks):
        if number > first and y + block.panel.height > height:
            last = number
            while last > first + 1 and blocks[last - 1].tied:
                last -= 1
            found.append((first, last))
            first, y = last, head + sum(one.panel.height for one in blocks[last:number])
        y += block.panel.height
    return (*found, (first, len(blocks)))


def draw_flow(board: Board, panels: Sequence[Panel], room: Box) -> float:
    """Stand panels under each other from the room's upper left corner; the y under the last, mm."""
    y = room.top
    for panel in panels:
        stand(board, panel, room.left, y)
        y += panel.height
    return y
