"""Panels: blocks of lettering that are set once, measured, and then stood somewhere on a sheet."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import SMALLEST, wrap
from wallplan.drawing.primitives import Primitive, Text, move

LEADING = 1.6
"""Between lines, in heights of the capitals."""

PADDING = 1.8
"""Between a panel's edge and its lettering, mm."""


@dataclass(frozen=True)
class Panel:
    """What a panel draws, with its own upper left corner as the origin, mm."""

    width: float
    height: float
    ink: tuple[Primitive, ...]


@dataclass(frozen=True)
class Line:
    """A line of a panel: its text, of any length, and the height of its capitals."""

    text: str
    height: float = SMALLEST


def set_lines(lines: tuple[Line, ...], width: float) -> Panel:
    """Lines under each other, wrapped to ``width`` mm."""
    texts: list[Text] = []
    y = PADDING
    for line in lines:
        for part in wrap(line.text, line.height, width - 2 * PADDING):
            texts.append(Text(PADDING, y + line.height, part, line.height))
            y += line.height * LEADING
    return Panel(width, y + 0.6, tuple(texts))


def stand(board: Board, panel: Panel, left: float, top: float) -> None:
    """Draw a panel with its upper left corner at (left, top) on the sheet."""
    for item in panel.ink:
        moved = move(item, left, top)
        if isinstance(moved, Text):
            board.letter(moved)
        else:
            board.ink.append(moved)
