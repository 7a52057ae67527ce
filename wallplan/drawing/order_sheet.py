"""The order as a sheet: what to order, to tick off as it comes, how it was counted, the batch, and what must be said."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import NamedTuple

from wallplan.drawing.cautions import ORDER as CAUTIONS
from wallplan.drawing.drafts import Draft
from wallplan.drawing.flow import Block, draw_flow, flow
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


class _Plan(NamedTuple):
    """How the order stands on paper held one way: its columns, blocks, and which of them stand on each sheet."""

    paper: Paper
    columns: Columns
    blocks: tuple[Block, ...]
    sheets: tuple[tuple[int, int], ...]


def plan_order_sheets(layout: Layout, order: Order, paper: str | None) -> tuple[Draft, ...]:
    """The order's sheets; () where nothing is ordered. Raises UnknownPaper."""
    sheet = find_paper(paper, layout.job.measure)
    if not order.lines:
        return ()
    heading = _make_heading(layout, order)
    plan = _choose(layout, order, heading, sheet)
    return tuple(Draft("Order", (number, len(plan.sheets)), partial(_draw_page, layout, order, heading, plan))
                 for number in range(1, len(plan.sheets) + 1))


def _make_heading(layout: Layout, order: Order) -> Heading:
    cost = tell_cost(total_cost(order), order.currency)
    told = (
        "Net: what the layout takes, counted piece by piece. Spare: what is ordered over it. Order: both together. "
        "Under each line: how it was counted, for a pencil. Tick what has come.",
        *([cost] if cost else []),
    )
    return Heading("ORDER", "What to order, and what to mix.", told, CAUTIONS, layout.walls)


def _choose(layout: Layout, order: Order, heading: Heading, paper: Paper) -> _Plan:
    """Paper held the way that takes fewer sheets, upright where both take as many."""
    plans = [_plan(layout, order, heading, way, reckoned=True) for way in (paper.turned(), paper)]
    found = [plan for plan in plans if plan.sheets]
    if not found or min(len(plan.sheets) for plan in found) > MOST_RECKONED:
        plans = [_plan(layout, order, heading, way, reckoned=False) for way in (paper.turned(), paper)]
        found = [plan for plan in plans if plan.sheets]
    best = min(found or plans, key=lambda plan: len(plan.sheets))
    return best._replace(sheets=best.sheets[:MOST_SHEETS])


def _plan(layout: Layout, order: Order, heading: Heading, paper: Paper, *, reckoned: bool) -> _Plan:
    columns = set_columns(order.lines, paper.usable_width)
    room = find_room(layout, paper, heading, None)
    head = set_head(order.lines, columns).height
    blocks = (*set_rows(order.lines, columns, reckoned=reckoned), *_set_words(order, paper.usable_width))
    return _Plan(paper, columns, blocks, flow(blocks, room.height, head))


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
    first, last = plan.sheets[place.part[0] - 1]
    board = frame_sheet(layout, plan.paper, heading, None, place)
    shown = [block.panel for block in plan.blocks[first:last]]
    rows = len(order.lines) + len({line.group for line in order.lines})
    heads = [set_head(order.lines, plan.columns)] if first < rows else []
    draw_flow(board, [*heads, *shown], Box(BORDER, BORDER, plan.paper.width - BORDER, plan.paper.height - BORDER))
    told = "; ".join(f"{clean(line.item)} {float(line.order):g} {line.measure}" for line in order.lines)
    return make_page(layout, board, "order", heading, place, f"Order: {told}.")
