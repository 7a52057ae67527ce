"""The story pole in full size: strips to cut out, join on a batten and build by, over as many sheets as it takes."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from wallplan.drawing.board import Board
from wallplan.drawing.cautions import POLE as CAUTIONS
from wallplan.drawing.drafts import Draft
from wallplan.drawing.full_size_strip import OVERLAP, WIDTH, Strip, draw_strip
from wallplan.drawing.lettering import SMALLEST, clean, shorten
from wallplan.drawing.outlines import UNIT_LINE
from wallplan.drawing.paper import Paper, Scale, find_paper
from wallplan.drawing.primitives import Box, Page, Segment, Text
from wallplan.drawing.print_check import CHECK_LINE
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.layout.model import Layout
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure, print_length
from wallplan.lists.pole import Pole, list_poles

FULL_SIZE = Scale("full size", 1)

MOST_SHEETS = 60
"""What is higher than so many sheets reach is left to the pole's own sheet."""

STEP: dict[Measure, int] = {"feet": TICKS_PER_INCH, "metric": 10 * TICKS_PER_MM}
"""Strips are joined at whole steps above the datum, ticks."""

_CHECK_WIDTH = 9.0
_TOLD = (
    "Before cutting, measure both lines, level and upright: a printer may shrink one way only.",
    "Cut along the sides. Lay each strip's foot over the end of the strip before it, join on join of the same number, every "
    "line on its line. Glue it on a straight batten, then check the top with a tape.",
)


@dataclass(frozen=True)
class _Plan:
    """Strips of a pole, so many side by side on a sheet; ``cut_off`` where it goes on over the last."""

    paper: Paper
    strips: tuple[Strip, ...]
    each: int
    cut_off: bool

    @property
    def sheets(self) -> int:
        return -(-len(self.strips) // self.each)


def plan_full_size_sheets(layout: Layout, paper: str | None) -> tuple[Draft, ...]:
    """Sheets of full-size strips for each pole of the job; () for no walls. Raises UnknownPaper."""
    sheet = find_paper(paper, layout.job.measure)
    drafts = []
    for pole in list_poles(layout):
        ways = (sheet.turned(), sheet)
        plan = min((_plan(layout, pole, way) for way in ways), key=lambda found: (found.cut_off, found.sheets))
        drafts += [partial(_draw_page, layout, pole, plan, start) for start in range(0, len(plan.strips), plan.each)]
    return tuple(Draft("Story pole in full size", (number, len(drafts)), draw)
                 for number, draw in enumerate(drafts, start=1))


def _plan(layout: Layout, pole: Pole, paper: Paper) -> _Plan:
    room = find_room(layout, paper, _make_heading(layout, pole, None), FULL_SIZE)
    step = STEP[layout.job.measure]
    most = max(1, FULL_SIZE.on_wall(room.height - 2 * OVERLAP - 8.0) // step) * step
    each = max(1, int((room.width - _CHECK_WIDTH) / WIDTH))
    top = max([*pole.tops, *(level.height for level in pole.levels)])
    count = min(-(-top // most), each * MOST_SHEETS)
    strips = tuple(Strip(pole, layout.job.measure, place * most, min(top, (place + 1) * most), place, count)
                   for place in range(count))
    return _Plan(paper, strips, each, top > count * most)


def _make_heading(layout: Layout, pole: Pole, plan: _Plan | None) -> Heading:
    names = ", ".join(clean(wall.wall.name) for wall in pole.walls)
    cut_off = f" Drawn up to {print_length(plan.strips[-1].top, layout.job.measure)} only." if plan and plan.cut_off else ""
    return Heading("STORY POLE, FULL SIZE", f"For {shorten(names, SMALLEST, 200)}.{cut_off}", _TOLD, CAUTIONS, pole.walls)


def _draw_page(layout: Layout, pole: Pole, plan: _Plan, start: int, place: Sheet) -> Page:
    heading = _make_heading(layout, pole, plan)
    board = frame_sheet(layout, plan.paper, heading, FULL_SIZE, place)
    room = find_room(layout, plan.paper, heading, FULL_SIZE)
    shown = plan.strips[start : start + plan.each]
    for number, strip in enumerate(shown):
        draw_strip(board, strip, room.left + number * WIDTH, room.bottom - OVERLAP - 4.0)
    _draw_check(board, layout.job.measure, room)
    low, high = (print_length(height, layout.job.measure) for height in (shown[0].bottom, shown[-1].top))
    return make_page(layout, board, "pole-full-size", heading, place, f"Story pole in full size from {low} to {high}.")


def _draw_check(board: Board, measured: Measure, room: Box) -> None:
    """An upright line to measure beside the strips."""
    length, words = CHECK_LINE[measured]
    x, low = room.right - 2.5, room.bottom - OVERLAP
    ends = [Segment(x - 1.8, y, x + 1.8, y) for y in (low, low - length)]
    board.stroke([Segment(x, low, x, low - length), *ends], UNIT_LINE)
    board.letter(Text(x - 2.0, low - length / 2, words, SMALLEST, "middle", upright=True))
