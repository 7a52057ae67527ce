"""Rows with cells to write in, one under the other."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from typing import NamedTuple

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, SMALLEST, measure, shorten
from wallplan.drawing.outlines import THIN_LINE, UNIT_LINE
from wallplan.drawing.primitives import Box, Segment, Text

ROW = 7.0
"""Height of a row, mm."""

TITLE = 9.0
"""Height of a title's row, mm."""

_INSET = 1.5


class Row(NamedTuple):
    """Cells from the left; an empty one is written in. One cell alone is a title without a frame. ``head`` rows have heavier
    lines, and never end a sheet."""

    cells: tuple[str, ...]
    head: bool = False


def draw_rows(board: Board, rows: Sequence[Row], room: Box, parts: Sequence[float]) -> None:
    """Draw rows from the room's top down. ``parts`` are the columns' shares of its width, which come to 1."""
    lefts = [room.left, *(room.left + room.width * share for share in accumulate(parts[:-1]))]
    y = room.top
    for row in rows:
        if len(row.cells) == 1:
            words = shorten(row.cells[0], LARGE_FIGURES, room.width - 2 * _INSET)
            y += TITLE - ROW
            board.letter(Text(room.left + _INSET, y + ROW - 2.3, words, LARGE_FIGURES))
        else:
            _draw_row(board, row, lefts, Box(room.left, y, room.right, y + ROW))
        y += ROW


def _draw_row(board: Board, row: Row, lefts: Sequence[float], box: Box) -> None:
    """A row in its frame, its words as large as fit their column, and shortened where none do."""
    for cell, left, right in zip(row.cells, lefts, (*lefts[1:], box.right), strict=True):
        room = right - left - 2 * _INSET
        height = next((height for height in (FIGURES, 3.0) if measure(cell, height) <= room), SMALLEST)
        if cell:
            board.letter(Text(left + _INSET, box.bottom - 2.2, shorten(cell, height, room), height))
    width = UNIT_LINE if row.head else THIN_LINE
    board.stroke([Segment(left, box.top, left, box.bottom) for left in lefts[1:]], width)
    board.outline([box.shrunk(width / 2)], width)
