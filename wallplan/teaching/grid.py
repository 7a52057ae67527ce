"""Rows with cells to write in, one under the other."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from typing import NamedTuple

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, SMALLEST, measure, shorten, wrap
from wallplan.drawing.outlines import THIN_LINE, UNIT_LINE
from wallplan.drawing.primitives import Box, Segment, Text

ROW = 7.4
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
    """Draw rows from the room's top down. ``parts`` are the columns' shares of its width, which come to 1.

    The words of a column are all of one height, the largest at which they fit; what fits at none stands in two lines.
    """
    lefts = [room.left, *(room.left + room.width * share for share in accumulate(parts[:-1]))]
    rights = (*lefts[1:], room.right)
    full = [row.cells for row in rows if len(row.cells) > 1]
    heights = [_fit_height([cells[place] for cells in full], right - left - 2 * _INSET)
               for place, (left, right) in enumerate(zip(lefts, rights, strict=True))]
    y = room.top
    for row in rows:
        if len(row.cells) == 1:
            words = shorten(row.cells[0], LARGE_FIGURES, room.width - 2 * _INSET)
            y += TITLE - ROW
            board.letter(Text(room.left + _INSET, y + ROW - 2.3, words, LARGE_FIGURES))
        else:
            set_at = [min(heights)] * len(heights) if row.head else heights
            _draw_row(board, row, list(zip(lefts, rights, set_at, strict=True)), Box(room.left, y, room.right, y + ROW))
        y += ROW


def _fit_height(words: Sequence[str], room: float) -> float:
    """The largest height at which all of a column's words fit, else the smallest, mm."""
    return next((height for height in (FIGURES, 3.0) if all(measure(cell, height) <= room for cell in words)), SMALLEST)


def _draw_row(board: Board, row: Row, columns: Sequence[tuple[float, float, float]], box: Box) -> None:
    """A row in its frame. Each column is its left, its right, and the height of its words."""
    for cell, (left, right, height) in zip(row.cells, columns, strict=True):
        room = right - left - 2 * _INSET
        first, *more = wrap(cell, height, room) or ("",)
        if more:
            second = shorten(" ".join(more), height, room)
            board.letter(Text(left + _INSET, box.top + 0.4 + 1.05 * height, first, height),
                         Text(left + _INSET, box.bottom - 1.05, second, height))
        elif cell:
            board.letter(Text(left + _INSET, box.bottom - 2.2, first, height))
    width = UNIT_LINE if row.head else THIN_LINE
    board.stroke([Segment(left, box.top, left, box.bottom) for left, _, _ in columns[1:]], width)
    board.outline([box.shrunk(width / 2)], width)
