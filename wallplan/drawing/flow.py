"""Panels that run down a sheet and over to the next ones, with a head that stands on each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from wallplan.drawing.board import Board
from wallplan.drawing.panel import Panel, stand
from wallplan.drawing.primitives import Box


@dataclass(frozen=True)
class Block:
    """A panel; ``tied`` keeps it on the sheet of the one after it, as a heading is."""

    panel: Panel
    tied: bool = False


def flow(blocks: Sequence[Block], height: float, head: float = 0.0) -> tuple[tuple[int, int], ...]:
    """Which blocks stand on each sheet, (first, after the last), under a head ``head`` mm high.

    () for none, or where one is higher than a sheet has room for. A heading never ends a sheet.
    """
    if any(block.panel.height + head > height for block in blocks):
        return ()
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
    return (*found, (first, len(blocks))) if blocks else ()


def draw_flow(board: Board, panels: Sequence[Panel], room: Box) -> float:
    """Stand panels under each other from the room's upper left corner; the y under the last, mm."""
    y = room.top
    for panel in panels:
        stand(board, panel, room.left, y)
        y += panel.height
    return y
