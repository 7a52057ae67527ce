"""Alternatives on one sheet: a small elevation of the walls in each, cuts hatched, and its figures over it."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from typing import NamedTuple

from wallplan.advice.compare import Alternative
from wallplan.advice.tell import list_figures
from wallplan.drawing.board import Board
from wallplan.drawing.cautions import SETTING_OUT
from wallplan.drawing.drafts import Draft, number_sheets
from wallplan.drawing.elevation import edge_lines, hatch_cells, outline_cells
from wallplan.drawing.lettering import FIGURES, clean
from wallplan.drawing.outlines import THIN_LINE, UNIT_LINE, find_cells
from wallplan.drawing.panel import PADDING, Line, Panel, set_lines, stand
from wallplan.drawing.paper import Paper, Scale, find_paper
from wallplan.drawing.primitives import Box, Drawing, Page
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.drawing.view import View, whole
from wallplan.layout.model import Layout

BETWEEN = 4.0
"""Between walls and under them, mm."""

LEAST_UNIT = 1.5
"""Units lower than this are not outlined but for cuts, mm: their lines would run together."""


class _Plan(NamedTuple):
    """How the alternatives stand on a sheet: in so many columns, at 1 to ``ratio``, with the text over each."""

    paper: Paper
    columns: int
    ratio: int
    texts: tuple[Panel, ...]


def draw_alternatives(layout: Layout, alternatives: Sequence[Alternative], paper: str | None) -> Drawing:
    """A drawing of one sheet; of none where nothing can be laid. ``layout`` is the plan's own. Raises UnknownPaper."""
    shown = tuple(one for one in alternatives if one.layout is not None)
    sheet, heading = find_paper(paper, layout.job.measure), _make_heading(layout, alternatives)
    plans = [plan for way in (sheet, sheet.turned()) for columns in (1, 2, 3)
             if (plan := _plan(shown, way, find_room(layout, way, heading, None), columns))]
    if not plans:
        return Drawing(clean(layout.job.title), ())
    plan = min(plans, key=lambda one: one.ratio)
    draft = Draft("Alternatives", (1, 1), partial(_draw_page, layout, shown, heading, plan))
    return Drawing(clean(layout.job.title), number_sheets((draft,)))


def _make_heading(layout: Layout, alternatives: Sequence[Alternative]) -> Heading:
    missing = [one.name for one in alternatives if one.layout is None]
    told = (
        "The walls as planned, and with one thing other. Close hatch: cuts; open hatch: halves. All at one size.",
        "Cutting: a cut counts one, one shorter than half a unit two. Broken: places in which a rule is broken.",
        *((f"Cannot be laid so: {', '.join(missing)}.",) if missing else ()),
    )
    return Heading("ALTERNATIVES", "Seen from outside, each wall from its left end.", told, SETTING_OUT, layout.walls)


def _plan(shown: tuple[Alternative, ...], paper: Paper, room: Box, columns: int) -> _Plan | None:
    """The alternatives in so many columns at the largest ratio that has room; None where it has none."""
    each, rows = room.width / columns, -(-len(shown) // columns)
    texts = tuple(set_lines((Line(clean(one.name), FIGURES), Line(_tell(one))), each) for one in shown)
    heads = sum(max(text.height for text in texts[row * columns:(row + 1) * columns]) for row in range(rows))
    height = (room.height - heads) / max(1, rows) - BETWEEN
    walls = [one.layout.walls for one in shown if one.layout is not None]
    if height <= 0 or not walls:
        return None
    across = [each - 2 * PADDING - BETWEEN * (len(row) - 1) for row in walls]
    if min(across) <= 0:
        return None
    long = max(sum(wall.wall.length for wall in row) / wide for row, wide in zip(walls, across, strict=True))
    high = max(wall.courses[-1].top for row in walls for wall in row) / height
    return _Plan(paper, columns, int(max(long, high) / 960) + 1, texts)


def _tell(one: Alternative) -> str:
    assert one.figures is not None
    return ", ".join(f"{name} {value}" for name, value in list_figures(one.figures).items())


def _draw_page(layout: Layout, shown: tuple[Alternative, ...], heading: Heading, plan: _Plan, place: Sheet) -> Page:
    board, room = frame_sheet(layout, plan.paper, heading, None, place), find_room(layout, plan.paper, heading, None)
    each, top = room.width / plan.columns, room.top
    for first in range(0, len(shown), plan.columns):
        row, texts = shown[first:first + plan.columns], plan.texts[first:first + plan.columns]
        head, foot = max(text.height for text in texts), 0.0
        for column, (one, text) in enumerate(zip(row, texts, strict=True)):
            assert one.layout is not None
            left = room.left + column * each
            stand(board, text, left, top)
            foot = max(foot, _draw_walls(board, one.layout, Scale("", plan.ratio), left + PADDING, top + head))
        top = foot + BETWEEN
    told = "; ".join(f"{clean(one.name)}: {_tell(one)}" for one in shown)
    return make_page(layout, board, "alternatives", heading, place, f"Alternatives: {told}.")


def _draw_walls(board: Board, layout: Layout, scale: Scale, left: float, top: float) -> float:
    """The walls beside each other on one base line; gives its y."""
    base = top + max(scale.on_paper(wall.courses[-1].top) for wall in layout.walls)
    for wall in layout.walls:
        _draw_wall(board, View(layout.job, wall, whole(wall), scale, left, base))
        left += scale.on_paper(wall.wall.length) + BETWEEN
    return base


def _draw_wall(board: Board, view: View) -> None:
    cells, unit = find_cells(view), view.job.masonry.unit
    large = view.scale.on_paper(unit.height) >= LEAST_UNIT
    drawn = tuple(cell for cell in cells if large or cell.piece.piece == "cut")
    outline_cells(board, drawn, THIN_LINE)
    hatch_cells(board, drawn)
    board.stroke(edge_lines(view), UNIT_LINE)
