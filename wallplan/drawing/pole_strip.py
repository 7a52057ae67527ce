"""The story pole as it is drawn: course tops with their heights on its left, sills, heads and bond beams on its right."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from itertools import pairwise

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, clean, measure, shorten
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE, UNIT_LINE
from wallplan.drawing.paper import Scale
from wallplan.drawing.primitives import Box, Segment, Text
from wallplan.drawing.spread import spread
from wallplan.lengths import Measure, print_length
from wallplan.lists.pole import Level, Pole

LEFT = 50.0
"""For the heights on a stretch's left, and numbers of courses too low to hold them, mm."""

POLE = 12.0
"""Width of the pole, mm."""

RIGHT = 54.0
"""For words and heights on its right, mm."""

HEAD = 6.0
"""Over and under a stretch, mm, so that figures at its ends have room."""

CLEAR = 0.9

_LEAD = 5.0
_TICK = 2.0


@dataclass(frozen=True)
class Stretch:
    """The pole from ``bottom`` to ``top`` ticks. ``first`` is the number of its lowest course."""

    pole: Pole
    measured: Measure
    scale: Scale
    bottom: int
    top: int
    first: int

    @property
    def tops(self) -> tuple[int, ...]:
        """Tops of its courses."""
        return tuple(top for top in self.pole.tops if self.bottom < top <= self.top)

    @property
    def levels(self) -> tuple[Level, ...]:
        """What else is marked on it."""
        return tuple(level for level in self.pole.levels
                     if self.bottom < level.height <= self.top or (level.height > self.pole.tops[-1] and self.is_last))

    @property
    def is_last(self) -> bool:
        """Whether the pole ends with it."""
        return self.top >= self.pole.tops[-1]


def split_pole(pole: Pole, measured: Measure, scale: Scale, room: float) -> tuple[Stretch, ...]:
    """Stretches of whole courses that fit ``room`` mm, about equally high; a course higher than that stands alone."""
    most = scale.on_wall(max(0.0, room - 2 * HEAD))
    fewest = _split(pole, measured, scale, most)
    even = pole.tops[-1] // len(fewest) + max(top - before for before, top in pairwise((0, *pole.tops)))
    balanced = _split(pole, measured, scale, min(most, even))
    return balanced if len(balanced) == len(fewest) else fewest


def _split(pole: Pole, measured: Measure, scale: Scale, most: int) -> tuple[Stretch, ...]:
    stretches: list[Stretch] = []
    bottom, first, before = 0, 1, 0
    for number, top in enumerate(pole.tops, start=1):
        if top - bottom > most and before > bottom:
            stretches.append(Stretch(pole, measured, scale, bottom, before, first))
            bottom, first = before, number
        before = top
    return (*stretches, Stretch(pole, measured, scale, bottom, before, first))


def draw_stretch(board: Board, stretch: Stretch, x: float, right: float, low: float, highest: float) -> None:
    """Draw a stretch with the pole's left side at ``x`` and its bottom at ``low``; words reach to ``right``, figures up to
    ``highest``, mm."""
    scale = stretch.scale

    def up(ticks: int) -> float:
        return low - scale.on_paper(ticks - stretch.bottom)

    board.outline([Box(x, up(stretch.top), x + POLE, low)], HEAVY_LINE)
    board.stroke([Segment(x, up(top), x + POLE, up(top)) for top in stretch.tops], UNIT_LINE)
    outside = _number_courses(board, stretch, x + POLE / 2, up)
    pitch = scale.on_paper(stretch.top - stretch.bottom) / max(1, len(stretch.tops))
    heights = (stretch.bottom, *stretch.tops)
    widest = max(measure(print_length(top, stretch.measured), LARGE_FIGURES) for top in heights)
    numbers = measure(str(max(outside.values())), FIGURES) + 3.0 if outside else 0.0
    large = pitch >= 1.35 * LARGE_FIGURES and widest + numbers <= LEFT - _LEAD - 2.0
    figures = LARGE_FIGURES if large else FIGURES
    leads = []
    moved = _spread_up([up(top) for top in heights], figures + CLEAR, low, highest)
    aside = x - _LEAD - 3.0 - max(measure(print_length(top, stretch.measured), figures) for top in heights)
    for top, y in zip(heights, moved, strict=True):
        words = print_length(top, stretch.measured) if top else "0"
        board.letter(Text(x - _LEAD - 1.0, y + figures / 2, words, figures, "end"))
        leads.append(Segment(x, up(top), x - _LEAD, y))
        if top in outside:
            board.letter(Text(aside, y + FIGURES / 2, str(outside[top]), FIGURES, "end"))
    board.stroke(leads + _draw_levels(board, stretch, (x + POLE, right), low, highest), THIN_LINE)


def _spread_up(places: list[float], gap: float, low: float, highest: float) -> list[float]:
    """Places that rise up the sheet, apart, between its two ends."""
    return [-place for place in spread([-place for place in places], gap, -low, -highest)]


def _number_courses(board: Board, stretch: Stretch, x: float, up: Callable[[int], float]) -> dict[int, int]:
    """Each course's number in the pole; those of courses too low on the paper are given back by their tops."""
    before, outside = stretch.bottom, dict[int, int]()
    for number, top in enumerate(stretch.tops, start=stretch.first):
        high = up(before) - up(top)
        height = next((height for height in (LARGE_FIGURES, FIGURES)
                       if high >= height + 2 * CLEAR and measure(str(number), height) <= POLE - 3.0), None)
        if height:
            board.letter(Text(x, (up(before) + up(top)) / 2 + height / 2, str(number), height, "middle"))
        else:
            outside[top] = number
        before = top
    return outside


def _draw_levels(board: Board, stretch: Stretch, room: tuple[float, float], low: float, highest: float) -> list[Segment]:
    """Heavy ticks and words for sills, heads and bond beams; their leaders are given back."""
    levels, (x, right) = stretch.levels, room
    places = [low - stretch.scale.on_paper(level.height - stretch.bottom) for level in levels]
    moved = _spread_up(places, FIGURES + 2.2, low, highest)
    for level, y in zip(levels, moved, strict=True):
        words = f"{print_length(level.height, stretch.measured)} {clean(level.words)}"
        board.letter(Text(x + _LEAD + 1.0, y + FIGURES / 2, shorten(words, FIGURES, right - x - _LEAD - 4.0), FIGURES))
    board.stroke([Segment(x, place, x + _TICK, place) for place in places], HEAVY_LINE)
    return [Segment(x + _TICK, place, x + _LEAD, y) for place, y in zip(places, moved, strict=True)]


def count_pages(stretches: Iterable[Stretch], each: int) -> int:
    """Sheets for these stretches with so many side by side; 0 for none."""
    return -(-len(tuple(stretches)) // each)
