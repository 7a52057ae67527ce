"""One lead as it is drawn: its courses, how it racks back, units and line height of each course, and the level."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.drawing.board import Board
from wallplan.drawing.hatching import hatch_cut, hatch_half
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, SMALLEST, clean, measure, shorten, wrap
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE, UNIT_LINE
from wallplan.drawing.paper import Scale
from wallplan.drawing.primitives import Box, Dash, Segment, Text
from wallplan.drawing.spread import spread
from wallplan.lengths import TICKS_PER_FOOT, TICKS_PER_MM, Measure, print_length
from wallplan.lists.leads import BuiltLead, Leg

LEVEL: dict[Measure, tuple[int, str]] = {
    "feet": (4 * TICKS_PER_FOOT, "4 ft level"), "metric": (1200 * TICKS_PER_MM, "1.2 m level"),
}
"""The mason's level: its length in ticks, and its name."""

RACK_DASH: Dash = (4.0, 1.2, 1.0, 1.2)
"""The straightedge on the rack."""

_TITLE = 17.3
_FOOT = 9.0
_GAP = 10.0
_LONGEST = 165.0
_LEAST_TOLD = 110.0
_TOLD_PITCH = 4.2
_ROW = FIGURES + 1.2


@dataclass(frozen=True)
class LeadView:
    """A lead at a scale, its upper left corner at (``x``, ``y``) on the sheet, mm."""

    lead: BuiltLead
    measured: Measure
    scale: Scale
    x: float
    y: float

    @property
    def lefts(self) -> int:
        """How far the left-hand leg reaches from the corner or end, ticks; 0 where all of the lead stands right of it."""
        return max((leg.reach(1) for leg in self.lead.legs if leg.side == "right"), default=0)

    @property
    def wide(self) -> float:
        """Width of the masonry on the paper, or of the level where that is longer, mm."""
        rights = max((leg.reach(1) for leg in self.lead.legs if leg.side == "left"), default=0)
        return self.scale.on_paper(max(self.lefts + rights, LEVEL[self.measured][0]))

    @property
    def high(self) -> float:
        """Height of the masonry on the paper, or of its rows of figures where they take more, mm."""
        return max(self.scale.on_paper(self.top), _ROW * self.rows)

    @property
    def rows(self) -> int:
        """How many courses it has."""
        return self.lead.courses

    @property
    def top(self) -> int:
        """Top of its last course, ticks."""
        return max(leg.courses[-1].top for leg in self.lead.legs)

    @property
    def size(self) -> tuple[float, float]:
        """Width and height with all lettering, mm."""
        told = max(measure(line, SMALLEST) for line in self.told)
        return max(self.across_all, told) + _GAP, self.high + self.head + _FOOT + 3.0

    @property
    def across_all(self) -> float:
        """Width of the masonry with its figures, or of the title where that is wider, mm."""
        return max(self.wide + 6.0 + sum(_column_widths(self)), measure(self.title, self.title_height))

    @property
    def told(self) -> tuple[str, ...]:
        """How many courses and units, and which leads are built alike, in lines."""
        courses, units = (f"{count} {word}{'s' * (count != 1)}" for count, word in
                          ((self.rows, "course"), (self.lead.units, "unit")))
        also = f"; also {clean(', '.join(self.lead.also))}" if self.lead.also else ""
        return wrap(f"{courses}, {units}{also}", SMALLEST, max(self.across_all, _LEAST_TOLD))

    @property
    def head(self) -> float:
        """Height of the title with what is told under it, mm."""
        return _TITLE + _TOLD_PITCH * (len(self.told) - 1)

    @property
    def title(self) -> str:
        """The lead's name as its heading."""
        name = clean(self.lead.name)
        return shorten(name[:1].upper() + name[1:], SMALLEST, _LONGEST)

    @property
    def title_height(self) -> float:
        """5 mm, less for a long name."""
        return next((height for height in (LARGE_FIGURES, FIGURES) if measure(self.title, height) <= _LONGEST), SMALLEST)

    def across(self, leg: Leg, ticks: int) -> float:
        """x of a distance along a leg's wall."""
        away = self.scale.on_paper(leg.off(ticks))
        corner = self.x + self.scale.on_paper(self.lefts)
        return corner - away if leg.side == "right" else corner + away

    def up(self, ticks: int) -> float:
        """y of a height above the footing."""
        return self.y + self.head + self.high - self.scale.on_paper(ticks)


def _column_widths(view: LeadView) -> tuple[float, float, float]:
    units = max(measure(_tell_units(view, number), FIGURES) for number in range(1, view.rows + 1))
    heights = max(measure(print_length(course.top, view.measured), FIGURES)
                  for leg in view.lead.legs for course in leg.courses)
    return (max(measure("course", SMALLEST), 6.0) + 3.0, max(units, measure("units", SMALLEST)) + 3.0,
            max(heights, measure("line at", SMALLEST)) + 1.0)


def _tell_units(view: LeadView, number: int) -> str:
    """Units of a course: "3", or "3 + 2" for the two legs of a corner."""
    return " + ".join(map(str, view.lead.units_of(number)))


def draw_lead(board: Board, view: LeadView) -> None:
    """Draw a lead with its name, its courses' figures, and the level at its foot."""
    board.letter(Text(view.x, view.y + LARGE_FIGURES + 1.6, view.title, view.title_height))
    board.letter(*(Text(view.x, view.y + LARGE_FIGURES + 6.8 + _TOLD_PITCH * row, line, SMALLEST)
                   for row, line in enumerate(view.told)))
    for leg in view.lead.legs:
        _draw_leg(board, view, leg)
    if len(view.lead.legs) == 2:
        x = view.across(view.lead.legs[0], view.lead.legs[0].wall.wall.length)
        board.stroke([Segment(x, view.up(view.top), x, view.up(0))], HEAVY_LINE)
    _letter_courses(board, view)
    _draw_level(board, view)


def _draw_leg(board: Board, view: LeadView, leg: Leg) -> None:
    """Pieces, the rack as a heavy line, and the straightedge that touches every stepped unit."""
    boxes, hatch, rack = list[Box](), list[Segment](), list[Segment]()
    sign = -1 if leg.side == "right" else 1
    corner = view.x + view.scale.on_paper(view.lefts)
    steps = [corner + sign * view.scale.on_paper(leg.reach(number)) for number in range(1, len(leg.courses) + 1)]
    for course, step in zip(leg.courses, steps, strict=True):
        for piece in course.pieces:
            if max(leg.off(piece.left), leg.off(piece.right)) <= 0:
                continue  # behind an inside corner
            seen = (min(max(end, 0), leg.wall.wall.length) for end in (piece.left, piece.right))
            ends = sorted(view.across(leg, end) for end in seen)
            box = Box(ends[0], view.up(piece.top), ends[1], view.up(piece.bottom))
            boxes.append(box)
            inner = box.shrunk(UNIT_LINE / 2)
            sawn = piece.piece in ("cut", "closer")
            hatch += hatch_half(inner) if piece.piece == "half" else hatch_cut(inner, None) if sawn else []
        rack.append(Segment(step, view.up(course.bottom), step, view.up(course.top)))
    rack += [Segment(one, view.up(course.top), other, view.up(course.top))
             for course, one, other in zip(leg.courses, steps, [*steps[1:], corner], strict=True) if one != other]
    board.outline(boxes, UNIT_LINE)
    board.stroke(hatch, THIN_LINE)
    board.stroke(rack, HEAVY_LINE)
    if len(steps) > 1:
        board.stroke([Segment(steps[0] + sign * 0.6, view.up(leg.courses[0].top), steps[-1] + sign * 0.6,
                              view.up(leg.courses[-1].top))], THIN_LINE, RACK_DASH)


def _letter_courses(board: Board, view: LeadView) -> None:
    """Number, units and line height of each course beside the lead."""
    longest = max(view.lead.legs, key=lambda leg: len(leg.courses))
    middles = [(view.up(course.bottom) + view.up(course.top)) / 2 for course in longest.courses]
    low = view.up(0) - _ROW / 2
    rows = [-y for y in spread([-y for y in middles], _ROW, -low, -(low - _ROW * (view.rows - 1) - view.high))]
    first, second, _ = _column_widths(view)
    x = view.x + view.wide + 6.0
    head = min(rows) - _ROW / 2 - 1.0
    for left, words in ((x, "course"), (x + first, "units"), (x + first + second, "line at")):
        board.letter(Text(left, head, words, SMALLEST))
    for number, (course, y) in enumerate(zip(longest.courses, rows, strict=True), start=1):
        base = y + FIGURES / 2
        board.letter(Text(x, base, str(course.number), FIGURES), Text(x + first, base, _tell_units(view, number), FIGURES),
                     Text(x + first + second, base, print_length(course.top, view.measured), FIGURES))


def _draw_level(board: Board, view: LeadView) -> None:
    """The level to scale under the lead."""
    length, words = LEVEL[view.measured]
    y = view.up(0) + 2.5
    board.outline([Box(view.x, y, view.x + view.scale.on_paper(length), y + 1.4)], UNIT_LINE)
    board.letter(Text(view.x, y + 1.4 + 1.2 + SMALLEST, words, SMALLEST))
