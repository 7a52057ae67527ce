"""The strip of marks: a wall's head joints along its length, odd courses over even ones, each with its distance."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, SMALLEST, clean, measure, shorten
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE, UNIT_LINE
from wallplan.drawing.paper import SCALES, Scale
from wallplan.drawing.primitives import Box, Segment, Text
from wallplan.drawing.spread import spread
from wallplan.lengths import Measure, print_length
from wallplan.lists.marks import Mark, WallMarks

BAND = 6.0
"""Height of either row of units, mm."""

_MIDDLE = 7.0
_LEAD = 5.0
_SIDE = 14.5
_FAR_SIDE = 8.0
_CLEAR = 1.3


@dataclass(frozen=True)
class Strip:
    """A stretch of a wall from ``left`` to ``right``, ticks, at a scale, its figures ``figures`` mm high.

    The figures may spread over ``room`` mm from the stretch's left end on.
    """

    marks: WallMarks
    measured: Measure
    scale: Scale
    figures: float
    left: int
    right: int
    room: float

    def across(self, x: float, ticks: int) -> float:
        """x on the paper of a distance, where the strip's sheet room begins at ``x``."""
        return x + _SIDE + self.scale.on_paper(ticks - self.left)

    @property
    def height(self) -> float:
        """What the strip takes with its figures, mm."""
        longest = max((measure(words, self.figures) for kind in (self.marks.odd, self.marks.even)
                       for words in (self.words(mark) for mark in self.shown(kind))), default=0.0)
        return 2 * (longest + _LEAD + BAND) + _MIDDLE + 4.0

    def shown(self, marks: tuple[Mark, ...]) -> list[Mark]:
        """The marks of the stretch."""
        return [mark for mark in marks if self.left < mark.far <= self.right]

    def words(self, mark: Mark) -> str:
        """The distance at which the next unit begins; in brackets where course 1 or 2 has no joint there."""
        figure = print_length(mark.far, self.measured)
        return figure if mark.courses[0] <= 2 else f"({figure})"


def make_strips(marks: WallMarks, measured: Measure, width: float, joint: int,
                largest: float = LARGE_FIGURES) -> tuple[Strip, ...]:
    """The wall at the largest scale that holds it in ``width`` mm with its figures apart, or in several strips.

    Figures stand up to ``largest`` mm high where the head joints leave them room.
    """
    room = width - _SIDE - _FAR_SIDE
    scales = SCALES[measured]
    pitch = marks.length // max(1, len(marks.odd), len(marks.even))
    legible = [scale for scale in scales if scale.on_paper(pitch) >= FIGURES + _CLEAR] or [scales[0]]
    scale = next((scale for scale in legible if scale.on_paper(marks.length) <= room), legible[-1])
    figures = largest if scale.on_paper(pitch) >= 1.5 * largest else FIGURES
    ends = _split(marks, scale.on_wall(room), joint, int(room / (figures + _CLEAR)))
    return tuple(Strip(marks, measured, scale, figures, left, right, room) for left, right in ends)


def _split(marks: WallMarks, most: int, module: int, figures: int) -> list[tuple[int, int]]:
    """Stretches of at most ``most`` ticks and so many ``figures`` that end where a unit of the odd courses does."""
    places = [mark.far for mark in marks.odd]
    stretches: list[tuple[int, int]] = []
    left = 0
    while (rest := marks.length - left) > (here := min(most, _reach(marks, left, figures))):
        even = rest // -(-rest // max(1, here - module))
        fitting = [place for place in places if left < place <= left + min(here, even + 4 * module)]
        right = fitting[-1] if fitting else left + here
        stretches.append((left, right))
        left = right
    return [*stretches, (left, marks.length)]


def _reach(marks: WallMarks, left: int, figures: int) -> int:
    """How far a stretch reaches that holds at most so many figures of either kind of course, ticks."""
    beyond = [[mark.far for mark in kind if mark.far > left] for kind in (marks.odd, marks.even)]
    return min((places[figures] - 1 - left for places in beyond if len(places) > figures), default=marks.length)


def draw_strip(board: Board, strip: Strip, x: float, y: float) -> None:
    """Draw a strip with its upper left corner at (x, y)."""
    longest = (strip.height - _MIDDLE - 4.0) / 2 - _LEAD - BAND
    top = y + longest + _LEAD + 1.0
    rows = (Box(strip.across(x, strip.left), top, strip.across(x, strip.right), top + BAND),
            Box(strip.across(x, strip.left), top + BAND + _MIDDLE, strip.across(x, strip.right), top + 2 * BAND + _MIDDLE))
    board.outline(rows, UNIT_LINE)
    for row, marks, side, name in ((rows[0], strip.marks.odd, -1, "odd"), (rows[1], strip.marks.even, 1, "even")):
        board.letter(Text(row.left - 1.5, row.centre.y + FIGURES / 2, name, FIGURES, "end"))
        _draw_marks(board, strip, x, row, strip.shown(marks), side)
    _draw_openings(board, strip, x, Box(rows[0].left, rows[0].top, rows[0].right, rows[1].bottom))
    if strip.left == 0:
        board.letter(Text(rows[0].left - 1.5, rows[0].bottom + _MIDDLE / 2 + FIGURES / 2, "0", FIGURES, "end"))


def _draw_marks(board: Board, strip: Strip, x: float, row: Box, marks: list[Mark], side: int) -> None:
    """Both sides of each joint across the row, and its distance over (-1) or under (1) it."""
    edge = row.top if side < 0 else row.bottom
    places = [strip.across(x, mark.far) for mark in marks]
    low, high = row.left + strip.figures / 2 - 3.0, row.left + strip.room + _FAR_SIDE - 3.0 - strip.figures / 2
    moved = spread(places, strip.figures + _CLEAR, low, high)
    lines = [Segment(strip.across(x, side_of), row.top, strip.across(x, side_of), row.bottom)
             for mark in marks for side_of in (mark.near, mark.far)
             if side_of == mark.far or strip.scale.on_paper(mark.far - mark.near) >= 3 * THIN_LINE]
    leads = []
    for mark, place, middle in zip(marks, places, moved, strict=True):
        near, far = edge + side * 1.2, edge + side * (_LEAD - 1.0)
        leads += [Segment(place, edge, place, near), Segment(place, near, middle, far)]
        base = edge + side * _LEAD
        board.letter(Text(middle + strip.figures / 2, base, strip.words(mark), strip.figures,
                          "start" if side < 0 else "end", upright=True))
    board.stroke(lines, UNIT_LINE)
    board.stroke(leads, THIN_LINE)


def _draw_openings(board: Board, strip: Strip, x: float, band: Box) -> None:
    """Jambs as heavy lines with the opening's name between them, control joints as two lines."""
    heavy, thin = list[Segment](), list[Segment]()
    middle = band.centre.y + FIGURES / 2
    for name, left, right in strip.marks.jambs:
        seen = [side for side in (left, right) if strip.left <= side <= strip.right]
        heavy += [Segment(strip.across(x, side), band.top, strip.across(x, side), band.bottom) for side in seen]
        start, end = (strip.across(x, min(max(side, strip.left), strip.right)) for side in (left, right))
        for height in (FIGURES, SMALLEST):
            words = _fit_name(clean(name), height, end - start - 2.4)
            if words == clean(name) or (height == SMALLEST and words):
                board.letter_if_free(Text((start + end) / 2, middle - (FIGURES - height) / 2, words, height, "middle"), 0.2)
                break
    for left, right in strip.marks.control_joints:
        if strip.left <= left and right <= strip.right:
            thin += [Segment(strip.across(x, side), band.top, strip.across(x, side), band.bottom) for side in (left, right)]
            board.letter_if_free(Text(strip.across(x, right) + 1.2, middle, "CJ", FIGURES), 0.2)
    board.stroke(heavy, HEAVY_LINE)
    board.stroke(thin, UNIT_LINE)


def _fit_name(name: str, height: float, room: float) -> str:
    """A name, or so much of it as fits ``room`` mm: its last word after the first letters of at most three others, which
    tells Window 1 from Window 2; else its beginning; "" where not four letters fit."""
    *others, last = name.split() or [name]
    short = " ".join([*(word[0] for word in others), last])
    if measure(name, height) <= room or not 1 <= len(others) <= 3 or measure(short, height) > room:
        found = shorten(name, height, room)
        return found if found == name or len(found) > 3 else ""
    return short
