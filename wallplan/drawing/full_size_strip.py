"""One strip of a full-size story pole: course tops across it, what they are beside it, and how it joins the next."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, clean, measure, shorten
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE, UNIT_LINE
from wallplan.drawing.primitives import Dash, Segment, Text
from wallplan.drawing.spread import spread
from wallplan.lengths import Measure, print_length, to_mm
from wallplan.lists.pole import Pole

BAND = 14.0
"""Width of the pole, mm."""

WIDTH = 58.0
"""Width of a strip with what stands beside it, mm."""

TICK = 2.5
"""Of a sill or a head across the pole, from its right side, mm."""

OVERLAP = 10.0
"""A strip goes on so far past either join, mm."""

JOIN_DASH: Dash = (2.0, 1.2)
"""Of a join, and of the sides past it."""

_SIDE = 7.0
_LEAD = 5.0
_PITCH = LARGE_FIGURES + 1.4
_CROP = (1.2, 4.2)


@dataclass(frozen=True)
class Strip:
    """A pole from ``bottom`` to ``top``, ticks; the strip with this ``number``, from 0, of ``count``."""

    pole: Pole
    measured: Measure
    bottom: int
    top: int
    number: int
    count: int

    @property
    def joins(self) -> tuple[int | None, int | None]:
        """The number of the join at its foot and at its head; None where the pole ends."""
        return self.number or None, self.number + 1 if self.number + 1 < self.count else None

    def reach(self) -> tuple[float, float]:
        """From where to where it is drawn, mm above the datum: with what laps over at a join."""
        foot, head = self.joins
        return (to_mm(self.bottom) - (OVERLAP if foot else 0.0), to_mm(self.top) + (OVERLAP if head else 0.0))


def draw_strip(board: Board, strip: Strip, x: float, low: float) -> None:
    """Draw a strip whose room begins at ``x`` with its foot at ``low``, mm."""
    left = x + _SIDE

    def up(ticks: int) -> float:
        return low - to_mm(ticks - strip.bottom)

    _draw_sides(board, strip, left, low)
    first, last = strip.reach()
    tops = [top for top in strip.pole.tops if first <= to_mm(top) <= last]
    board.stroke([Segment(left, up(top), left + BAND, up(top)) for top in tops], UNIT_LINE)
    levels = [level.height for level in strip.pole.levels if first <= to_mm(level.height) <= last]
    board.stroke([Segment(left + BAND - TICK, up(level), left + BAND, up(level)) for level in levels], HEAVY_LINE)
    _letter_heights(board, strip, left + BAND, (low, up(strip.top)))
    _number_courses(board, strip, left + (BAND - TICK) / 2, low)


def _draw_sides(board: Board, strip: Strip, left: float, low: float) -> None:
    """The sides, the joins with what laps over them, and crop marks at the four corners."""
    high = low - to_mm(strip.top - strip.bottom)
    right = left + BAND
    solid = [Segment(side, low, side, high) for side in (left, right)]
    dashed, crops = list[Segment](), list[Segment]()
    for y, join, away in ((low, strip.joins[0], 1), (high, strip.joins[1], -1)):
        end = y + away * OVERLAP if join else y
        if join:
            dashed += [Segment(left, y, right, y), *(Segment(side, y, side, end) for side in (left, right))]
            base = y + away * OVERLAP / 2 + FIGURES / 2
            board.letter(Text(right + _LEAD + 1.0, base, f"join {join}", FIGURES))
        else:
            solid.append(Segment(left, y, right, y))
        near, far = _CROP
        crops += [Segment(left - far, end, left - near, end), Segment(right + near, end, right + far, end)]
        crops += [Segment(side, end + away * near, side, end + away * (far - 0.8)) for side in (left, right)]
    board.stroke(solid, HEAVY_LINE)
    board.stroke(dashed, THIN_LINE, JOIN_DASH)
    board.stroke(crops, THIN_LINE)


def _letter_heights(board: Board, strip: Strip, x: float, ends: tuple[float, float]) -> None:
    """Height and meaning of every mark of the strip, beside it; a mark on a join stands with the strip over it."""
    low, high = ends
    told = [(top, f"{print_length(top, strip.measured)}", LARGE_FIGURES) for top in (0, *strip.pole.tops)]
    told += [(level.height, f"{print_length(level.height, strip.measured)} {clean(level.words)}", FIGURES)
             for level in strip.pole.levels]
    end = strip.top - 1 if strip.joins[1] else strip.top
    here = sorted(mark for mark in told if strip.bottom <= mark[0] <= end)
    places = [low - to_mm(height - strip.bottom) for height, _, _ in here]
    moved = [-y for y in spread([-y for y in places], _PITCH, -low + _PITCH / 2, -high - _PITCH / 2)]
    room, leads = WIDTH - _SIDE - BAND - _LEAD - 3.0, []
    for (height, words, letters), place, y in zip(here, places, moved, strict=True):
        words, letters = ("0, footing", FIGURES) if not height else (words, letters)
        letters = letters if measure(words, letters) <= room else FIGURES
        board.letter(Text(x + _LEAD + 1.0, y + letters / 2, shorten(words, letters, room), letters))
        leads.append(Segment(x, place, x + _LEAD, y))
    board.stroke(leads, THIN_LINE)


def _number_courses(board: Board, strip: Strip, x: float, low: float) -> None:
    """Each course's number in the pole, in the strip that its middle stands in."""
    before = 0
    for number, top in enumerate(strip.pole.tops, start=1):
        middle = (before + top) / 2
        if strip.bottom <= middle < strip.top and to_mm(top - before) >= LARGE_FIGURES + 2.0:
            highest = low - to_mm(strip.top - strip.bottom) + 0.8 * LARGE_FIGURES
            y = min(max(low - to_mm(round(middle) - strip.bottom), highest), low - 0.8 * LARGE_FIGURES)
            letters = LARGE_FIGURES if number < 100 else FIGURES
            board.letter(Text(x, y + letters / 2, str(number), letters, "middle"))
        before = top
