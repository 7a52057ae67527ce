"""The story pole as it is drawn: course tops with their heights on its left, sills, heads and bond beams on its right."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from itertools import pairwise

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, SMALLEST, TIED, clean, measure, shorten, wrap
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE, UNIT_LINE
from wallplan.drawing.paper import Scale
from wallplan.drawing.primitives import Box, Segment, Text
from wallplan.drawing.spread import spread
from wallplan.lengths import Measure, print_length
from wallplan.lists.pole import Level, Pole

LEFT = 50.0
"""At most for the heights on a stretch's left, and numbers of courses too low to hold them, mm."""

POLE = 12.0
"""Width of the pole, mm."""

RIGHT = 54.0
"""At most for words and heights on its right, mm."""

HEAD = 6.0
"""Over and under a stretch, mm, so that figures at its ends have room."""

CLEAR = 0.9

_LEAD = 5.0
_TICK = 2.0


_GAP = 2.2
_LEADING = 1.6 * SMALLEST


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
    """Stretches of whole courses that fit ``room`` mm; a course higher than that stands alone.

    They are about equally high. A pole of two gauges that takes two stretches is parted where the second begins.
    """
    most = scale.on_wall(max(0.0, room - 2 * HEAD))
    fewest = _split(pole, measured, scale, most)
    part = pole.parts[0] if len(pole.parts) == 2 else 0
    if len(fewest) == 2 and part and max(part, pole.tops[-1] - part) <= most:
        return (Stretch(pole, measured, scale, 0, part, 1),
                Stretch(pole, measured, scale, part, pole.tops[-1], pole.tops.index(part) + 2))
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


def measure_sides(pole: Pole, measured: Measure) -> tuple[float, float]:
    """What the figures left of a pole and the words right of it take at the most, with their leaders, mm."""
    widest = max(measure(print_length(top, measured), LARGE_FIGURES) for top in pole.tops)
    numbers = measure(str(len(pole.tops)), FIGURES) + 3.0
    words = max((_measure_words(level, measured) for level in pole.levels), default=0.0)
    return min(LEFT, _LEAD + 2.0 + widest + numbers), min(RIGHT, _LEAD + 2.0 + words)


def _measure_words(level: Level, measured: Measure) -> float:
    figure, words = _tell_level(level, measured)
    return measure(f"{figure} ", FIGURES) + measure(words, SMALLEST)


def _tell_level(level: Level, measured: Measure) -> tuple[str, str]:
    return print_length(level.height, measured) if level.mark else "", clean(level.words).replace(" mm", f"{TIED}mm")


def draw_stretch(board: Board, stretch: Stretch, x: float, right: float, low: float, highest: float) -> None:
    """Draw a stretch with the pole's left side at ``x`` and its bottom at ``low``; words reach to ``right``, figures up to
    ``highest``, mm."""
    scale = stretch.scale

    def up(ticks: int) -> float:
        return low - scale.on_paper(ticks - stretch.bottom)

    board.outline([Box(x, up(stretch.top), x + POLE, low)], HEAVY_LINE)
    board.stroke([Segment(x, up(top), x + POLE, up(top)) for top in stretch.tops], UNIT_LINE)
    outside = _number_courses(board, stretch, x + POLE / 2, up)
    leads = _letter_heights(board, stretch, x, (low, highest), outside)
    board.stroke(leads + _draw_levels(board, stretch, (x + POLE, right), low, highest), THIN_LINE)


def _letter_heights(board: Board, stretch: Stretch, x: float, ends: tuple[float, float],
                    outside: dict[int, int]) -> list[Segment]:
    """Each course top's height left of the pole, with the numbers that found no room in it; their leaders are given back."""
    scale, (low, highest) = stretch.scale, ends
    pitch = scale.on_paper(stretch.top - stretch.bottom) / max(1, len(stretch.tops))
    heights = (stretch.bottom, *stretch.tops)
    widest = max(measure(print_length(top, stretch.measured), LARGE_FIGURES) for top in heights)
    numbers = measure(str(max(outside.values())), FIGURES) + 3.0 if outside else 0.0
    large = pitch >= 1.35 * LARGE_FIGURES and widest + numbers <= LEFT - _LEAD - 2.0
    figures = LARGE_FIGURES if large else FIGURES
    places = [low - scale.on_paper(top - stretch.bottom) for top in heights]
    moved = _spread_up(places, figures + CLEAR, low, highest)
    aside = x - _LEAD - 3.0 - max(measure(print_length(top, stretch.measured), figures) for top in heights)
    for top, y in zip(heights, moved, strict=True):
        words = print_length(top, stretch.measured) if top else "0"
        board.letter(Text(x - _LEAD - 1.0, y + figures / 2, words, figures, "end"))
        if top in outside:
            board.letter(Text(aside, y + FIGURES / 2, str(outside[top]), FIGURES, "end"))
    return [Segment(x, place, x - _LEAD, y) for place, y in zip(places, moved, strict=True)]


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
    start = x + _LEAD + 1.0
    most = 3 if len(levels) * (FIGURES + _GAP + 2 * _LEADING) <= low - highest else 2
    height, set_words = _set_words([_tell_level(level, stretch.measured) for level in levels], right - start - 1.0, most)
    tallest = max((len(lines) for _, lines in set_words), default=1)
    moved = _spread_up(places, FIGURES + _GAP + (tallest - 1) * _LEADING, low, highest)
    for (figure, lines), y in zip(set_words, moved, strict=True):
        base = y + FIGURES / 2 - (len(lines) - 1) * _LEADING / 2
        board.letter(*([Text(start, y + FIGURES / 2, figure, FIGURES)] if figure else []))
        beside = start + (measure(f"{figure} ", FIGURES) if figure else 0.0)
        board.letter(*(Text(beside, base + number * _LEADING, line, height) for number, line in enumerate(lines)))
    marked = [(place, y) for level, place, y in zip(levels, places, moved, strict=True) if level.mark]
    board.stroke([Segment(x, place, x + _TICK, place) for place, _ in marked], HEAVY_LINE)
    return [Segment(x + _TICK, place, x + _LEAD, y) for place, y in marked]


def _set_words(told: list[tuple[str, str]], room: float, most: int) -> tuple[float, list[tuple[str, tuple[str, ...]]]]:
    """How high the words beside heights are, and their lines: smaller, and then in ``most`` lines, where one is too long."""
    spare = [room - (measure(f"{figure} ", FIGURES) if figure else 0.0) for figure, _ in told]
    if all(measure(words, FIGURES) <= here for (_, words), here in zip(told, spare, strict=True)):
        return FIGURES, [(figure, wrap(words, FIGURES, here)) for (figure, words), here in zip(told, spare, strict=True)]
    found = list[tuple[str, tuple[str, ...]]]()
    for (figure, words), here in zip(told, spare, strict=True):
        lines = wrap(words, SMALLEST, here) or ("",)
        rest = (shorten(" ".join(lines[most - 1:]), SMALLEST, here),) if len(lines) >= most else ()
        found.append((figure, (*lines[:most - 1], *rest)))
    return SMALLEST, found


def count_pages(stretches: Iterable[Stretch], each: int) -> int:
    """Sheets for these stretches with so many side by side; 0 for none."""
    return -(-len(tuple(stretches)) // each)
