"""The sheet that the pupil draws the bond on, and its answer: the same sheet, with the units drawn."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from wallplan.drawing.board import Board
from wallplan.drawing.cautions import SETTING_OUT
from wallplan.drawing.dimensions import draw_levels, draw_running
from wallplan.drawing.drafts import Draft
from wallplan.drawing.elevation import (
    LINTEL_LINE,
    draw_match_lines,
    edge_lines,
    hatch_cells,
    letter_match_lines,
    letter_precast,
    mark_beams,
    mark_control_joints,
    outline_cells,
)
from wallplan.drawing.face import show_face
from wallplan.drawing.lettering import SMALLEST, clean
from wallplan.drawing.letters import Ground, letter_cuts
from wallplan.drawing.opening_labels import letter_openings
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE, UNIT_LINE, find_cells
from wallplan.drawing.paper import Paper
from wallplan.drawing.primitives import Box, Page, Segment, Text
from wallplan.drawing.sheet_frame import Heading, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.drawing.view import View, Window
from wallplan.drawing.wall_shape import free_paper
from wallplan.layout.model import Layout, WallLayout
from wallplan.lists.marks import mark_wall
from wallplan.teaching.fitting import Fit, Room, fit_wall, place_wall

TICK = 2.2
"""Length of a mark, mm."""

OVER = 22.0
"""Over the wall, for the marks and the letters of small cuts, mm."""

_ROWS = ((1, "odd", 9.5), (2, "even", 13.0))


def plan_drawing_sheets(layout: Layout, paper: Paper, names: Sequence[str], *, answer: bool) -> tuple[Draft, ...]:
    """A sheet for each wall (more for a long one), blank or with its units; ``names`` end the walls' file names."""
    drafts: list[Draft] = []
    for wall, name in zip(layout.walls, names, strict=True):
        if not wall.courses:
            continue
        face = show_face(wall, layout.job.masonry.thickness)[0]
        room = Room([_make_heading(face)], lambda way: 0.0, OVER)
        fit = fit_wall(layout, face, paper, room)
        title = f"{'Answer: the bond' if answer else 'Draw the bond'} of {clean(wall.wall.name)}"
        drafts += [Draft(title, (number, len(fit.windows)), partial(_draw_page, layout, wall, (fit, room), window,
                                                                    (name, answer)))
                   for number, window in enumerate(fit.windows, start=1)]
    return tuple(drafts)


def _make_heading(face: WallLayout) -> Heading:
    told = ("Draw every unit of every course. Hatch halves open; hatch closers and cuts close and letter them.",
            "Marks over the wall: the middle of each head joint, odd courses in the lower row, even ones in the upper. "
            "Short lines at ends and jambs: the tops of the courses.",
            "Begin with course 1, then the leads; keep head joints plumb with those two courses below.",
            "Name: ____________________  Date: __________")
    seen = f"{clean(face.wall.name)}, outside face. Distances from the left end."
    return Heading("DRAW THE BOND", seen, told, SETTING_OUT, (face,))


def _draw_page(layout: Layout, wall: WallLayout, fitted: tuple[Fit, Room], window: Window, kind: tuple[str, bool],
               sheet: Sheet) -> Page:
    (fit, room), (name, answer) = fitted, kind
    board = frame_sheet(layout, fit.paper, room.headings[0], fit.scale, sheet)
    view = place_wall(layout, show_face(wall, layout.job.masonry.thickness)[0], fit, room, window)
    draw_blank(board, view, wall, fit.figures)
    if answer:
        draw_units(board, view)
    shown = "with its units" if answer else "its outline, openings and marks to draw the units on"
    told = f"Wall {clean(wall.wall.name)}: {shown}."
    return make_page(layout, board, f"{'answer' if answer else 'blank'}-{name}", room.headings[0], sheet, told)


def draw_blank(board: Board, view: View, wall: WallLayout, figures: float) -> None:
    """Outline, openings, datum, heights, distances and marks; no unit."""
    mark_control_joints(board, view)
    letter_match_lines(board, view)
    letter_openings(board, view)
    draw_levels(board, view, figures)
    draw_running(board, view, figures)
    ticks = _course_marks(view)
    board.stroke(ticks, THIN_LINE)
    board.placer.take_lines(ticks)
    board.placer.take(view.outline._replace(left=view.outline.right + 0.3, right=view.outline.right + 4.0))
    _draw_joint_marks(board, view, wall)
    board.stroke(edge_lines(view), HEAVY_LINE)
    draw_match_lines(board, view)


def _course_marks(view: View) -> list[Segment]:
    """A short line at the top of each course, at the wall's ends and at jambs beside which masonry stands."""
    lines = []
    shape, top = view.wall.wall.outline, view.window.top
    left, right = ((0, top), (0, top)) if shape is None else (
        (shape.footing[0][1], shape.top[0][1]), (shape.footing[-1][1], shape.top[-1][1]))
    for course in view.courses:
        sides = [(x, way) for x, way, (low, high) in ((view.outline.left, 1, left), (view.outline.right, -1, right))
                 if low < course.top <= high]
        for opening in view.openings:
            if opening.bottom < course.top <= opening.top:
                hole = view.hole(opening)
                sides += [(hole.left, -1), (hole.right, 1)]
        lines += [Segment(x, view.up(course.top), x + way * TICK, view.up(course.top)) for x, way in sides]
    return lines


def _draw_joint_marks(board: Board, view: View, wall: WallLayout) -> None:
    """Two rows of marks over the wall: where head joints stand in odd and in even courses."""
    marks = mark_wall(wall, view.job.masonry.joint)
    for (_, words, rise), found in zip(_ROWS, (marks.odd, marks.even), strict=True):
        y = view.outline.top - rise
        ticks = [Segment(x, y, x, y - TICK) for mark in found
                 if view.window.left < (mark.near + mark.far) // 2 < view.window.right
                 for x in (view.across((mark.near + mark.far) // 2),)]
        board.stroke([*ticks, Segment(view.outline.left, y, view.outline.right, y)] if ticks else [], THIN_LINE)
        if ticks:
            board.placer.take_lines([Segment(view.outline.left, y, view.outline.right, y), *ticks])
            board.letter_if_free(Text(view.outline.left - 1.5, y, words, SMALLEST, "end"), 0.2)


def draw_units(board: Board, view: View) -> None:
    """What the pupil should have drawn: every unit, hatched and lettered as on the wall sheet."""
    cells = find_cells(view)
    holes = tuple(view.hole(opening) for opening in view.openings)
    outline = view.outline
    shape = view.wall.wall.outline
    free = () if shape is None else free_paper(view, shape)
    band = Box(outline.left, outline.top - 9.0, outline.right, outline.top - HEAVY_LINE)
    letter_cuts(board, cells, Ground((*holes, *free), band))
    letter_precast(board, cells)
    outline_cells(board, cells, UNIT_LINE)
    hatch_cells(board, cells)
    mark_beams(board, view, cells)
    board.outline([cell.box for cell in cells if cell.piece.shape in ("lintel", "precast")], LINTEL_LINE)
