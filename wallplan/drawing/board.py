"""The board: a sheet while it is being drawn. It keeps what is drawn and where lettering already stands."""

from __future__ import annotations

from collections.abc import Sequence

from wallplan.drawing.lettering import Placer, measure_text
from wallplan.drawing.paper import BORDER, Paper
from wallplan.drawing.primitives import SOLID, Box, Dash, Dot, Outlines, Primitive, Segment, Strokes, Text


class Board:
    """Primitives in the order in which they are drawn, and the room that is taken."""

    def __init__(self, paper: Paper) -> None:
        self.paper = paper
        self.ink: list[Primitive] = []
        self.placer = Placer(Box(BORDER, BORDER, paper.width - BORDER, paper.height - BORDER))

    def stroke(self, segments: Sequence[Segment], width: float, dash: Dash = SOLID) -> None:
        """Draw straight lines; nothing for no lines."""
        if segments:
            self.ink.append(Strokes(tuple(segments), width, dash))

    def outline(self, boxes: Sequence[Box], width: float) -> None:
        """Draw rectangles; nothing for none."""
        if boxes:
            self.ink.append(Outlines(tuple(boxes), width))

    def dot(self, x: float, y: float) -> None:
        """Draw the dot at a leader's end."""
        self.ink.append(Dot(x, y, 0.55))

    def letter(self, *texts: Text) -> None:
        """Letter texts where they stand, and keep other lettering off them."""
        self.ink.extend(texts)
        self.placer.take(*(measure_text(text) for text in texts))

    def letter_if_free(self, text: Text, gap: float = 0.6) -> bool:
        """Letter a text if nothing is in its way; whether it was lettered."""
        if not self.placer.is_free(measure_text(text), gap):
            return False
        self.letter(text)
        return True

    def lead(self, line: Segment) -> None:
        """Draw a leader with a dot at its start, and keep lettering off it."""
        self.stroke([line], 0.25)
        self.dot(line.x1, line.y1)
        self.placer.take_lines([line])
