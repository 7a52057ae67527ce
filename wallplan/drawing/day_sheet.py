"""How the days fall, as a sheet: each wall's rise as bars, a column a day, and under them the table of what is due."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import partial
from typing import NamedTuple

from wallplan.drawing.cautions import FRESH as CAUTIONS
from wallplan.drawing.day_chart import GUTTER, LOW_RISE, RISE, WIDEST_COLUMN, Chart, set_days_head, set_wall, widest_cell
from wallplan.drawing.drafts import Draft
from wallplan.drawing.flow import Block, draw_flow, flow
from wallplan.drawing.lettering import FIGURES, SMALLEST, clean
from wallplan.drawing.outlines import THIN_LINE
from wallplan.drawing.panel import Panel
from wallplan.drawing.paper import BORDER, Paper, find_paper
from wallplan.drawing.primitives import Box, Page
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.layout.model import Layout
from wallplan.lengths import print_length
from wallplan.lists.order.days import find_output
from wallplan.lists.order.figures import scale_of, show
from wallplan.lists.order.line import DayRow, Order

MOST_SHEETS = 40
"""Days past these are left to the list in the CSV file."""


class _Part(NamedTuple):
    """What one sheet holds: its head, and the walls' panels."""

    head: Panel
    panels: tuple[Panel, ...]
    days: tuple[int, ...]


def plan_day_sheets(layout: Layout, order: Order, paper: str | None) -> tuple[Draft, ...]:
    """The sheets of the days; () for none. Raises UnknownPaper."""
    sheet = find_paper(paper, layout.job.measure)
    if not order.days:
        return ()
    heading = _make_heading(layout, order)
    way, parts = _choose(layout, order, heading, sheet)
    if len(parts) > MOST_SHEETS:
        heading = replace(heading, told=(*heading.told, "Days that have no room on these sheets are in the CSV file."))
        way, parts = _choose(layout, order, heading, sheet)
    count = min(len(parts), MOST_SHEETS)
    return tuple(Draft("Days", (number, count), partial(_draw_page, layout, order, heading, way, part))
                 for number, part in enumerate(parts[:count], start=1))


def _choose(layout: Layout, order: Order, heading: Heading, paper: Paper) -> tuple[Paper, list[_Part]]:
    """Paper held the way, and bars so high, that take fewer sheets; no sheets where no wall has room either way."""
    plans = [(way, _plan(layout, order, heading, way, rise)) for rise in (RISE, LOW_RISE) for way in (paper, paper.turned())]
    return min((plan for plan in plans if plan[1]), key=lambda plan: len(plan[1]), default=(paper, []))


def _make_heading(layout: Layout, order: Order) -> Heading:
    low, high = find_output(layout.job)
    last, job = order.days[-1].day, layout.job
    unit = " mm" if job.measure == "metric" else ""
    days = f"{last} days" if last > 1 else "1 day"
    told = (
        f"{days} at {show(low)} units a day, {order.fewest_days} at {show(high)}. A wall rises at most "
        f"{print_length(job.order.day_height, job.measure)}{unit} a day, less in cold or rain.",
        "Bars: what is laid that day, to the scale of heights. Open hatch: from the ground; close hatch: from the scaffold; "
        "empty: what stands already. Dashed: as far as a mason reaches from the ground.",
        f"Grout pour: {scale_of(job.measure).volume} on that day's courses, before the next. Leads from: courses in which "
        "leads are begun. Brace: yes where the wall passes 8 ft (2.4 m).",
    )
    return Heading("DAYS", "How the days fall.", told, CAUTIONS, layout.walls)


def _plan(layout: Layout, order: Order, heading: Heading, paper: Paper, rise: float) -> list[_Part]:
    """Sheets for days that follow one another, as many as have room beside each other; [] where a wall has none."""
    room = find_room(layout, paper, heading, None)
    tops = {wall.wall.name: wall.wall.height for wall in layout.walls}
    last = order.days[-1].day
    width = room.width - GUTTER - THIN_LINE
    letter, column = _choose_letters(layout, order, width)
    each = int(width / column + 1e-9)
    parts: list[_Part] = []
    for first in range(1, last + 1, max(1, each)):
        days = tuple(range(first, min(first + each, last + 1)))
        chart = Chart(days, column, max(tops.values()), layout.job, letter, rise)
        head = set_days_head(chart)
        panels = [set_wall(rows, tops[rows[0].wall], chart) for rows in _rows_of_walls(order.days, days)]
        sheets = flow([Block(panel) for panel in panels], room.height, head.height)
        if not sheets or not days:
            return []
        if len(parts) > MOST_SHEETS:
            break
        parts += [_Part(head, tuple(panels[start:end]), days) for start, end in sheets]
    return parts


def _choose_letters(layout: Layout, order: Order, width: float) -> tuple[float, float]:
    """Height of the table's letters and width of a day's column: large where all days then stand beside each other."""
    last = order.days[-1].day
    for letter in (FIGURES, SMALLEST):
        column = widest_cell(order.days, layout.job, letter)
        if column * last <= width:
            return letter, max(column, min(WIDEST_COLUMN, width / last))
    return SMALLEST, column


def _rows_of_walls(rows: Sequence[DayRow], days: tuple[int, ...]) -> list[list[DayRow]]:
    """The rows of these days, wall by wall, in the order in which the walls are begun."""
    found: dict[str, list[DayRow]] = {}
    for row in rows:
        if days[0] <= row.day <= days[-1]:
            found.setdefault(row.wall, []).append(row)
    return list(found.values())


def _draw_page(layout: Layout, order: Order, heading: Heading, paper: Paper, part: _Part, place: Sheet) -> Page:
    board = frame_sheet(layout, paper, heading, None, place)
    draw_flow(board, (part.head, *part.panels), Box(BORDER, BORDER, paper.width - BORDER, paper.height - BORDER))
    told = "; ".join(f"day {row.day}, {clean(row.wall)}: courses {row.courses[0]} to {row.courses[1]}"
                     + "".join(f", {clean(words)}" for words in row.due)
                     for row in order.days if row.day in part.days)
    return make_page(layout, board, "days", heading, place, f"Day plan: {told}."[:20_000])
