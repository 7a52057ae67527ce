"""The order as a sheet: what to order, to tick off as it comes, how it was counted, the batch, and what must be said."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import NamedTuple

from wallplan.drawing.cautions import ORDER as CAUTIONS
from wallplan.drawing.drafts import Draft
from wallplan.drawing.flow import Block, count_sheets, draw_flow, flow
from wallplan.drawing.lettering import FIGURES, SMALLEST, clean, measure, wrap
from wallplan.drawing.order_rows import Columns, set_columns, set_head, set_rows, tell_cost
from wallplan.drawing.outlines import UNIT_LINE
from wallplan.drawing.panel import LEADING, Line, Panel, set_lines
from wallplan.drawing.paper import BORDER, Paper, find_paper
from wallplan.drawing.primitives import Box, Page, Primitive, Segment, Strokes, Text
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.layout.model import Layout
from wallplan.lists.order.compose import total_cost
from wallplan.lists.order.line import Order

MOST_RECKONED = 6
"""Where the sums would take more sheets than this, the list in the CSV file has them alone."""

MOST_SHEETS = 40

_INSET = 1.5


_BETWEEN = 7.0
_NARROWEST_ITEM = 40.0


class _Plan(NamedTuple):
    """How the order stands on paper held one way: the table's columns, its blocks, which of them stand under each other, and
    how many such stacks stand ``abreast`` on a sheet."""

    paper: Paper
    columns: Columns
    blocks: tuple[Block, ...]
    stacks: tuple[tuple[int, int], ...]
    abreast: int

    @property
    def sheets(self) -> int:
        """How many sheets it takes; 0 where it has no room."""
        return count_sheets(self.stacks, self.abreast)


def plan_order_sheets(layout: Layout, order: Order, paper: str | None) -> tuple[Draft, ...]:
    """The order's sheets; () where nothing is ordered. Raises UnknownPaper."""
    sheet = find_paper(paper, layout.job.measure)
    if not order.lines:
        return ()
    heading = _make_heading(layout, order)
    plan = _choose(layout, order, heading, sheet)
    count = min(plan.sheets, MOST_SHEETS)
    return tuple(Draft("Order", (number, count), partial(_draw_page, layout, order, heading, plan))
                 for number in range(1, count + 1))


def _make_heading(layout: Layout, order: Order) -> Heading:
    cost = tell_cost(total_cost(order), order.currency)
    told = (
        "Net: what the layout takes, counted piece by piece. Spare: what is ordered over it. Order: both together. "
        "Under each line: how it was counted, for a pencil. Tick what has come.",
        *([cost] if cost else []),
    )
    return Heading("ORDER", "What to order, and what to mix.", told, CAUTIONS, layout.walls)


def _choose(layout: Layout, order: Order, heading: Heading, paper: Paper) -> _Plan:
    """Paper held, and stacks abreast, the way that takes the fewest sheets; upright where others take as many."""
    plans = _try_ways(layout, order, heading, paper, reckoned=True)
    if min((plan.sheets for plan in plans if plan.sheets), default=MOST_RECKONED + 1) > MOST_RECKONED:
        plans = _try_ways(layout, order, heading, paper, reckoned=False)
    return min([plan for plan in plans if plan.sheets] or plans, key=lambda plan: plan.sheets)


def _try_ways(layout: Layout, order: Order, heading: Heading, paper: Paper, *, reckoned: bool) -> list[_Plan]:
    ways = ((paper.turned(), 1), (paper, 1), (paper, 2))
    plans = [_plan(layout, order, heading, way, reckoned=reckoned) for way in ways]
    return [plan for plan in plans if plan.abreast == 1 or plan.columns.item >= _NARROWEST_ITEM]


def _plan(layout: Layout, order: Order, heading: Heading, way: tuple[Paper, int], *, reckoned: bool) -> _Plan:
    paper, abreast = way
    width = (paper.usable_width - (abreast - 1) * _BETWEEN) / abreast
    columns = set_columns(order.lines, width)
    room = find_room(layout, paper, heading, None)
    head = set_head(order.lines, columns).height
    blocks = (*set_rows(order.lines, columns, reckoned=reckoned), *_set_words(order, width))
    return _Plan(paper, columns, blocks, flow(blocks, room.height, head, abreast), abreast)


def _set_words(order: Order, width: float) -> Iterator[Block]:
    """The batch, and what must be said with the order."""
    if order.batch:
        yield Block(_set_title("MORTAR BY THE BATCH", width), tied=True)
        yield from (Block(_set_pair(key, told, width)) for key, told in order.batch)
    if order.notes:
        yield Block(_set_title("NOTES", width), tied=True)
        yield from (Block(set_lines((Line(clean(note)),), width)) for note in order.notes)


def _set_title(words: str, width: float) -> Panel:
    rule = Strokes((Segment(0.0, 7.6, width, 7.6),), UNIT_LINE)
    return Panel(width, 8.4, (Text(_INSET, 6.2, words, FIGURES), rule))


def _set_pair(key: str, told: str, width: float) -> Panel:
    """A word, and what is told of it in lines beside it."""
    start = _INSET + max(measure("one batch ", FIGURES), measure(f"{key} ", FIGURES))
    lines = wrap(clean(told), SMALLEST, width - start - _INSET)
    ink: list[Primitive] = [Text(_INSET, 4.6, key, FIGURES)]
    ink += [Text(start, 4.6 + number * LEADING * SMALLEST, line, SMALLEST) for number, line in enumerate(lines)]
    return Panel(width, 6.2 + max(0, len(lines) - 1) * LEADING * SMALLEST, tuple(ink))


def _draw_page(layout: Layout, order: Order, heading: Heading, plan: _Plan, place: Sheet) -> Page:
    board = frame_sheet(layout, plan.paper, heading, None, place)
    rows = len(order.lines) + len({line.group for line in order.lines})
    start = (place.part[0] - 1) * plan.abreast
    for number, (first, last) in enumerate(plan.stacks[start : start + plan.abreast]):
        heads = [set_head(order.lines, plan.columns)] if first < rows else []
        left = BORDER + number * (plan.columns.width + _BETWEEN)
        room = Box(left, BORDER, left + plan.columns.width, plan.paper.height - BORDER)
        draw_flow(board, [*heads, *(block.panel for block in plan.blocks[first:last])], room)
    told = "; ".join(f"{clean(line.item)} {float(line.order):g} {line.measure}" for line in order.lines)
    return make_page(layout, board, "order", heading, place, f"Order: {told}.")
