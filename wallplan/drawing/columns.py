"""Tables in columns: rows of cells that run down one column and on into the next, and over to another sheet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, SMALLEST, measure
from wallplan.drawing.primitives import Box, Text

INSET = 1.8
"""From the room's left side, mm."""

PITCH = 5.2
"""From row to row, mm ..."""

LARGE_PITCH = 6.2
"""... and where the words are as high as the figures."""


@dataclass(frozen=True)
class Row:
    """A row: a figure 3.5 mm high and words after it, or a heading alone, which never ends a column."""

    figure: str
    words: str = ""
    heading: bool = False


@dataclass(frozen=True)
class Table:
    """Rows, how wide their figures and whole rows are, and how high their words, mm."""

    rows: tuple[Row, ...]
    figures: float
    width: float
    words: float = SMALLEST

    @property
    def pitch(self) -> float:
        """From row to row, mm."""
        return LARGE_PITCH if self.words > SMALLEST else PITCH


def set_table(rows: Sequence[Row], words: float = SMALLEST) -> Table:
    """A table as wide as its widest row asks for, its words ``words`` mm high."""
    figures = max((measure(row.figure, FIGURES) for row in rows if not row.heading), default=0.0) + 2.2
    told = max((figures + measure(row.words, words) for row in rows if not row.heading), default=0.0)
    headings = max((measure(row.figure, FIGURES) for row in rows if row.heading), default=0.0)
    return Table(tuple(rows), figures, max(told, headings) + 5.0, words)


def fill_columns(table: Table, start: int, width: float, height: float) -> tuple[tuple[int, int], ...]:
    """Which rows from ``start`` on stand in each column of a room: (first, after the last); () where not one fits."""
    columns, most = max(1, int((width + 5.0 - INSET) / table.width)), int(height / table.pitch)
    found: list[tuple[int, int]] = []
    first = start
    while most >= 2 and first < len(table.rows) and len(found) < columns:
        last = min(len(table.rows), first + most)
        if last < len(table.rows) and table.rows[last - 1].heading and last - first > 1:
            last -= 1
        found.append((first, last))
        first = last
    return tuple(found)


def draw_columns(board: Board, table: Table, columns: tuple[tuple[int, int], ...], room: Box) -> None:
    """Letter the columns from the room's upper left corner."""
    for place, (first, last) in enumerate(columns):
        x = room.left + INSET + place * table.width
        for number, row in enumerate(table.rows[first:last]):
            y = room.top + number * table.pitch + FIGURES + 0.8
            board.letter(Text(x, y, row.figure, FIGURES))
            if row.words:
                board.letter(Text(x + table.figures, y, row.words, table.words))
