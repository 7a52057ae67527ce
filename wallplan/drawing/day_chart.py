"""How a wall rises, as bars: a column a day, each day's courses as high as they stand, and under it what is due."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from wallplan.drawing.hatching import hatch_cut, hatch_half
from wallplan.drawing.lettering import FIGURES, SMALLEST, clean, measure, shorten
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE, UNIT_LINE
from wallplan.drawing.panel import Panel
from wallplan.drawing.primitives import Box, Outlines, Primitive, Segment, Strokes, Text
from wallplan.lengths import print_length
from wallplan.lists.order.figures import show
from wallplan.lists.order.line import DUES, DayRow
from wallplan.plan.job import Job

GUTTER = 29.0
"""Left of the columns, for the words of each row, mm."""

LEAST_COLUMN = 12.0
"""A day's column is never narrower, mm ..."""

WIDEST_COLUMN = 36.0
"""... nor wider."""

RISE = 22.0
"""Height of the tallest wall's bars, mm ..."""

LOW_RISE = 14.0
"""... and where that spares a sheet."""

_NAME = 6.0
_FOOT = 1.6


@dataclass(frozen=True)
class Chart:
    """Which days have columns, how wide they are, mm, and the tallest wall, in ticks, which sets the scale of all bars.

    ``letter`` is how high the table is lettered, ``high`` how high the tallest wall's bars are, mm.
    """

    days: tuple[int, ...]
    column: float
    tallest: int
    job: Job
    letter: float
    high: float = RISE

    @property
    def row(self) -> float:
        """From one row of the table to the next, mm."""
        return self.letter + 1.9

    @property
    def width(self) -> float:
        """Gutter and columns, mm."""
        return GUTTER + self.column * len(self.days)

    def left(self, day: int) -> float:
        """Where a day's column begins, mm."""
        return GUTTER + self.column * self.days.index(day)

    def rise(self, ticks: int) -> float:
        """A height of wall on the paper, mm."""
        return self.high * ticks / self.tallest


def widest_cell(rows: Sequence[DayRow], job: Job, letter: float) -> float:
    """Width that a column needs for what is lettered in it ``letter`` mm high, mm."""
    words = (cell for row in rows for cell in _tell(row, job).values())
    return max([LEAST_COLUMN, *(measure(word, letter) + 2.4 for word in words)])


def set_days_head(chart: Chart) -> Panel:
    """The days' numbers over their columns, ruled off."""
    ink: list[Primitive] = [Text(0.0, 4.2, "DAY", FIGURES)]
    ink += [Text(chart.left(day) + chart.column / 2, 4.2, str(day), FIGURES, "middle") for day in chart.days]
    ink.append(Strokes((Segment(0.0, 5.8, chart.width, 5.8),), HEAVY_LINE))
    return Panel(chart.width, 6.4, tuple(ink))


def set_wall(rows: Sequence[DayRow], top: int, chart: Chart) -> Panel:
    """One wall's days: the bars over the ground, and a row of the table for all that is told. ``top`` is its height, ticks.

    Open hatch: laid from the ground. Close hatch: from a scaffold. Thin outlines: what stands already.
    """
    base = _NAME + chart.high + 1.0
    name = clean(rows[0].wall)
    ink: list[Primitive] = [Text(0.0, 4.4, shorten(name, FIGURES, chart.width), FIGURES),
                            Strokes((Segment(GUTTER, base, chart.width, base),), HEAVY_LINE)]
    ink += _letter_heights(top, base, chart)
    for row in rows:
        ink += _draw_bar(row, base, chart)
    told = [(row, _tell(row, chart.job)) for row in rows]
    kinds = [kind for kind in ("courses", "height", "units", "batches", *DUES) if any(kind in cells for _, cells in told)]
    y = base + _FOOT
    for kind in kinds:
        y += chart.row
        ink.append(Text(0.0, y - 1.25, _WORDS.get(kind, kind), chart.letter))
        ink += [Text(chart.left(row.day) + chart.column / 2, y - 1.25, cells[kind], chart.letter, "middle")
                for row, cells in told if cells.get(kind)]
        ink.append(Strokes((Segment(0.0, y + 0.2, chart.width, y + 0.2),), THIN_LINE))
    sides = (GUTTER, *(chart.left(day) + chart.column for day in chart.days))
    ink.append(Strokes(tuple(Segment(x, base, x, y + 0.2) for x in sides), THIN_LINE))
    return Panel(chart.width, y + 2.6, tuple(ink))


_WORDS = {"leads": "leads from", "grout": "grout pour", "scaffold": "platform"}


def _tell(row: DayRow, job: Job) -> dict[str, str]:
    """What is lettered in a day's column, by its row of the table."""
    first, last = row.courses
    told = {"courses": str(first) if first == last else f"{first} to {last}", "units": str(row.units),
            "height": print_length(row.height, job.measure), "batches": show(row.batches)}
    for due in row.dues:
        told[due.kind] = f"{told[due.kind]} + {due.figure}" if due.kind in told else due.figure
    return told


def _letter_heights(top: int, base: float, chart: Chart) -> list[Primitive]:
    """The wall's height in the gutter, and from where on the mason stands on a scaffold, as a dashed line."""
    reach, measured = chart.job.order.scaffold, chart.job.measure
    y = base - chart.rise(top)
    ink: list[Primitive] = [Text(GUTTER - 1.5, y + SMALLEST / 2, print_length(top, measured), SMALLEST, "end"),
                            Strokes((Segment(GUTTER, y, chart.width, y),), THIN_LINE, (0.8, 1.2))]
    if top > reach:
        line = base - chart.rise(reach)
        ink.append(Strokes((Segment(GUTTER, line, chart.width, line),), THIN_LINE, (2.4, 1.2)))
        if line - y > 4.0 and base - line > 1.5:
            ink.append(Text(GUTTER - 1.5, line + SMALLEST / 2, print_length(reach, measured), SMALLEST, "end"))
    return ink


def _draw_bar(row: DayRow, base: float, chart: Chart) -> list[Primitive]:
    """What stands already, and the day's courses on it."""
    left = chart.left(row.day) + 1.0
    right = left + chart.column - 2.0
    floor, head = base - chart.rise(row.bottom), base - chart.rise(row.height)
    reach = base - chart.rise(chart.job.order.scaffold)
    ink: list[Primitive] = []
    if base - floor > UNIT_LINE:
        ink.append(Outlines((Box(left, floor, right, base).shrunk(THIN_LINE / 2),), THIN_LINE))
    if floor - head > 2 * UNIT_LINE:
        ink.append(Outlines((Box(left, head, right, floor).shrunk(UNIT_LINE / 2),), UNIT_LINE))
        low, high = Box(left, max(head, reach), right, floor), Box(left, head, right, min(floor, reach))
        lines = [segment for box, hatch in ((low, hatch_half), (high, _hatch_close)) if box.height > 1.2
                 for segment in hatch(box.shrunk(UNIT_LINE / 2))]
        if lines:
            ink.append(Strokes(tuple(lines), THIN_LINE))
    return ink


def _hatch_close(box: Box) -> list[Segment]:
    return hatch_cut(box, None)
