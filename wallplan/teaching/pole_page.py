"""The pole beside the wall: each course of the wall carried across to its mark on the story pole, at one scale."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from wallplan.drawing.board import Board
from wallplan.drawing.cautions import POLE as CAUTIONS
from wallplan.drawing.dimensions import side_widths
from wallplan.drawing.drafts import Draft
from wallplan.drawing.elevation import edge_lines, outline_cells
from wallplan.drawing.face import show_face
from wallplan.drawing.lettering import FIGURES, clean, shorten
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE, find_cells
from wallplan.drawing.paper import SCALES, Paper
from wallplan.drawing.pole_sheet import POLE_SCALES, plan_pole_sheets
from wallplan.drawing.pole_strip import CLEAR, HEAD, POLE, Stretch, draw_stretch, measure_sides
from wallplan.drawing.primitives import Box, Dash, Page, Segment
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.drawing.view import View
from wallplan.layout.model import Layout, WallLayout
from wallplan.lists.pole import Pole, list_poles
from wallplan.teaching.fitting import Fit, Room, fit_wall

ACROSS: Dash = (2.0, 1.0)
"""From the wall's courses to the pole."""

_GAP = 4.0


def plan_pole_pages(layout: Layout, paper: Paper) -> tuple[Draft, ...]:
    """A page for each pole that a job needs, beside the first wall that it is for; () for no walls.

    Where a wall has more courses than figures find room beside it, the usual pole sheets stand in.
    """
    planned = [_plan_pole(layout, pole, paper) for pole in list_poles(layout)]
    if any(draw is None for draw in planned):
        return plan_pole_sheets(layout, paper.name)
    draws = [draw for draw in planned if draw is not None]
    return tuple(Draft("The pole beside the wall", (number, len(draws)), draw) for number, draw in enumerate(draws, start=1))


def _plan_pole(layout: Layout, pole: Pole, paper: Paper) -> partial[Page] | None:
    face, heading = show_face(pole.walls[0], layout.job.masonry.thickness)[0], _make_heading(pole)
    numbers, heights = side_widths(layout.job, face, FIGURES)  # these stand at the pole here
    left, right = measure_sides(pole, layout.job.measure)
    larger = tuple(scale for scale in POLE_SCALES[layout.job.measure] if scale not in SCALES[layout.job.measure])
    room = Room([heading], lambda way: 0.0, 2 * HEAD, left + POLE + right + _GAP - heights - numbers, larger=larger)
    fit = fit_wall(layout, face, paper, room)
    box = find_room(layout, fit.paper, heading, fit.scale)
    if (FIGURES + CLEAR) * (len(pole.tops) + 1) > box.height - 2 * HEAD:
        return None
    return partial(_draw_page, layout, pole, face, fit)


def _make_heading(pole: Pole) -> Heading:
    names = ", ".join(clean(wall.wall.name) for wall in pole.walls)
    told = ("Every height is measured from the datum, the top of the footing; none is a sum of others.",
            "Stand the pole at each lead: a course is right when its top is at its mark, where the line is pulled.",
            "Sills, heads and bond beams stand right of the pole. Of a long wall its right end is drawn.")
    seen = f"For {shorten(names, 2.5, 200)}, outside face."
    return Heading("THE POLE BESIDE THE WALL", seen, told, CAUTIONS, pole.walls)


def _place(layout: Layout, pole: Pole, face: WallLayout, fit: Fit, box: Box) -> View:
    """The wall's right end, and the pole beside it, in the middle of the room."""
    view = View(layout.job, face, fit.windows[-1], fit.scale, 0.0, 0.0)
    left, right = measure_sides(pole, layout.job.measure)
    across = box.width - view.outline.width - _GAP - left - POLE - right
    high = max(fit.scale.on_paper(pole.tops[-1]), (FIGURES + CLEAR) * (len(pole.tops) + 1))
    up = box.height - 2 * HEAD - high
    return replace(view, x=box.left + max(0.0, across / 2), y=box.bottom - HEAD - max(0.0, up / 2))


def _draw_page(layout: Layout, pole: Pole, face: WallLayout, fit: Fit, sheet: Sheet) -> Page:
    heading = _make_heading(pole)
    board = frame_sheet(layout, fit.paper, heading, fit.scale, sheet)
    box = find_room(layout, fit.paper, heading, fit.scale)
    view = _place(layout, pole, face, fit, box)
    outline_cells(board, find_cells(view), THIN_LINE)
    board.stroke(edge_lines(view), HEAVY_LINE)
    x = view.outline.right + _GAP + measure_sides(pole, layout.job.measure)[0]
    stretch = Stretch(pole, layout.job.measure, fit.scale, 0, pole.tops[-1], 1)
    draw_stretch(board, stretch, x, box.right, view.up(0), box.top + HEAD / 2)
    _carry_across(board, view, x, pole)
    told = f"Wall {clean(face.wall.name)} with its story pole: {len(pole.tops)} courses."
    return make_page(layout, board, "pole", heading, sheet, told)


def _carry_across(board: Board, view: View, x: float, pole: Pole) -> None:
    """A dashed line from each course's top to the pole, broken for the figures; none where courses are lower on the paper
    than figures, which then stand aside of their courses."""
    if view.scale.on_paper(pole.tops[-1]) < 0.9 * (FIGURES + CLEAR) * len(pole.tops):
        return
    lines = [Segment(view.outline.right + 0.6, view.up(top), x - 0.6, view.up(top)) for top in (0, *pole.tops)]
    board.stroke([part for line in lines for part in board.placer.spare(line, 0.5)], THIN_LINE, ACROSS)
