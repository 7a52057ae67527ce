"""Tables in columns: rows of cells that run down one column and on into the next, and over to another sheet."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, SMALLEST, measure
from wallplan.drawing.primitives import Box, Text

INSET = 1.8
"""From the room's left side, mm."""

PITCH = 5.2
"""From row to row, mm ..."""

LARGE_PITCH = 6.2
"""... where the words are as high as the figures ..."""

CLOSE_PITCH = 4.6
"""... and where that spares a sheet."""

BETWEEN = 5.0
"""Between a column's widest row and the next column, mm ..."""

CLOSE_BETWEEN = 3.0
"""... and where that spares a sheet."""


@dataclass(frozen=True)
class Row:
    """A row: a figure 3.5 mm high and words after it, or a heading alone, which never ends a column."""

    figure: str
    words: str = ""
    heading: bool = False


@dataclass(frozen=True)
class Table:
    """Rows, how high their words are, and how far it is from row to row and from column to column, mm."""

    rows: tuple[Row, ...]
    words: float = SMALLEST
    pitch: float = PITCH
    between: float = BETWEEN

    def measure_figures(self, first: int, last: int) -> float:
        """From the left of a column of the rows ``first`` to before ``last`` to its words, mm."""
        return max((measure(row.figure, FIGURES) for row in self.rows[first:last] if not row.heading), default=0.0) + 2.2

    def measure_rows(self, first: int, last: int) -> float:
        """Width of such a column and of what parts it from the next, mm."""
        figures = self.measure_figures(first, last)
        return max((figures + measure(row.words, self.words) if row.words else measure(row.figure, FIGURES)
                    for row in self.rows[first:last]), default=0.0) + self.between


def fill_columns(table: Table, start: int, width: float, height: float) -> tuple[tuple[int, int], ...]:
    """Which rows from ``start`` on stand in each column of a room: (first, after the last); () where not one fits.

    Each column is as wide as its own rows ask for; one that is wider than the room stands alone. Columns are as high as the
    room, or a little lower where all rows then fit: wide rows may so come to stand in one column.
    """
    most = int(height / table.pitch)
    tried = [_fill(table, start, width, rows) for rows in range(most, max(1, most - 4), -1)]
    return next((found for found in tried if found and found[-1][1] == len(table.rows)), tried[0] if tried else ())


def _fill(table: Table, start: int, width: float, most: int) -> tuple[tuple[int, int], ...]:
    """The columns where each holds at most so many rows."""
    spare = width - INSET + table.between
    found: list[tuple[int, int]] = []
    first = start
    while most >= 2 and first < len(table.rows):
        last = min(len(table.rows), first + most)
        if last < len(table.rows) and table.rows[last - 1].heading and last - first > 1:
            last -= 1
        spare -= table.measure_rows(first, last)
        if spare < 0 and found:
            break
        found.append((first, last))
        first = last
    return tuple(found)


def draw_columns(board: Board, table: Table, columns: tuple[tuple[int, int], ...], room: Box) -> None:
    """Letter the columns from the room's upper left corner."""
    x = room.left + INSET
    for first, last in columns:
        words = x + table.measure_figures(first, last)
        for number, row in enumerate(table.rows[first:last]):
            y = room.top + number * table.pitch + FIGURES + 0.8
            board.letter(Text(x, y, row.figure, FIGURES))
            if row.words:
                board.letter(Text(words, y, row.words, table.words))
        x += table.measure_rows(first, last)
