"""The build-up: a wall course by course, the new course strong, what is laid already in outline, the lap dotted, and why."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from functools import partial
from itertools import pairwise
from typing import NamedTuple

from wallplan.drawing.board import Board
from wallplan.drawing.cautions import FRESH
from wallplan.drawing.dimensions import draw_levels, draw_running, running_height, stagger
from wallplan.drawing.drafts import Draft
from wallplan.drawing.elevation import (
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
from wallplan.drawing.lettering import FIGURES, SMALLEST, clean
from wallplan.drawing.letters import Ground, letter_cuts
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE, UNIT_LINE, find_cells
from wallplan.drawing.panel import Line, Panel, set_lines, stand
from wallplan.drawing.paper import BORDER, Paper
from wallplan.drawing.primitives import Box, Dash, Page, Segment
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.drawing.view import View, Window, whole
from wallplan.findings import Finding
from wallplan.layout.explain import print_courses
from wallplan.layout.model import Layout, WallLayout
from wallplan.lengths import print_length
from wallplan.plan.job import Outline
from wallplan.teaching.fitting import Fit, Room, fit_wall, place_wall
from wallplan.teaching.folding import Fold, fold_courses
from wallplan.teaching.lap_lines import ROOM, draw_laps
from wallplan.teaching.reason import Reason
from wallplan.teaching.runs import WallRuns, read_runs
from wallplan.teaching.sequence import Step, order_wall
from wallplan.teaching.why_courses import explain_course

HIGHEST_WHY = 44.0
"""Room for the why lines under a wall, mm: longer ones are lettered smaller, and the last are left out."""

COMING: Dash = (1.5, 1.5)
"""What is not yet built."""

ALSO_TOLD = ("sill", "head", "lintel", "precast", "bond beam course", "jambs")
"""Reasons of a folded course that are told on the page of the one that it is laid like."""

MOST_PAGES = 40
"""So many different courses of one wall have pages at the most."""


class _Lesson(NamedTuple):
    """A wall with all that its pages tell. ``face`` is what its outside shows; ``orders`` the steps of each course,
    ``broken`` how many places in it break a rule."""

    layout: Layout
    face: WallLayout
    runs: WallRuns
    orders: dict[int, list[Step]]
    broken: int


def plan_build_up(layout: Layout, findings: tuple[Finding, ...], paper: Paper, names: Sequence[str]) -> tuple[Draft, ...]:
    """The build-up pages of every wall; ``names`` are the ends of the walls' file names. () for no walls.

    Of ``findings``, the broken ones of a wall are counted on its pages.
    """
    broken = Counter(finding.wall for finding in findings if not finding.held)
    return tuple(draft for index, name in enumerate(names)
                 for draft in _plan_wall(layout, index, paper, name, broken[layout.walls[index].wall.name]))


def _plan_wall(layout: Layout, index: int, paper: Paper, name: str, broken: int) -> list[Draft]:
    orders: dict[int, list[Step]] = {}
    for step in order_wall(layout, index):
        orders.setdefault(step.course, []).append(step)
    face, _ = show_face(layout.walls[index], layout.job.masonry.thickness)
    lesson = _Lesson(layout, face, read_runs(layout, index), orders, broken)
    folds = fold_courses(lesson.runs.wall)[:MOST_PAGES]
    if not folds:
        return []
    headings = [_make_heading(lesson, fold) for fold in folds]

    def under(way: Paper) -> float:
        return max(_set_why(lesson, fold, way.usable_width).height for fold in folds)

    room = Room(headings, under, ROOM)
    fit = fit_wall(layout, lesson.face, paper, room)
    pages = [(fold, heading, window) for fold, heading in zip(folds, headings, strict=True) for window in fit.windows]
    title = f"Build-up of {clean(lesson.face.wall.name)}"
    return [Draft(title, (number, len(pages)), partial(_draw_page, lesson, (fit, room), page, name))
            for number, page in enumerate(pages, start=1)]


def _make_heading(lesson: _Lesson, fold: Fold) -> Heading:
    number = fold.course.number
    laid = f"COURSE {number}" if number == 1 else f"COURSE {number} ON {_print_below(number)}"
    told = [_tell_pieces(fold), _tell_order(lesson, fold)]
    if fold.alike:
        told.append(f"Laid alike: {print_courses(list(fold.alike)).replace('…', 'to')}.")
    if lesson.broken:
        told.append(f"RULES ARE BROKEN in {lesson.broken} {'place' if lesson.broken == 1 else 'places'} of this wall: the "
                    "check names them.")
    told.append("Strong: this course. Thin: laid before. Dashed: to come. Dotted: lap over the course below. "
                f"{_tell_hatch(lesson.layout)}")
    face = f"{clean(lesson.face.wall.name)}, outside face. Distances from the left end."
    return Heading(laid, face, tuple(told), FRESH, (lesson.face,))


def _tell_hatch(layout: Layout) -> str:
    return "Close hatch: closer or cut." if layout.job.masonry.one_brick else "Open hatch: half. Close hatch: cut."


def _print_below(number: int) -> str:
    return "1" if number == 2 else "1 AND 2" if number == 3 else f"1 TO {number - 1}"


def _tell_pieces(fold: Fold) -> str:
    if fold.course.backing or any(piece.leaf for piece in fold.course.pieces):
        return _tell_bricks(fold)
    kinds = Counter(piece.piece if piece.shape != "precast" else "precast lintel"
                    for piece in fold.course.pieces if piece.shape != "return")
    pieces = sum(kinds.values())
    counted = ", ".join(f"{count} {kind}" for kind, count in kinds.items())
    return f"{pieces} {'piece' if pieces == 1 else 'pieces'}: {counted}."


def _tell_bricks(fold: Fold) -> str:
    """The bricks of a course one brick thick, as they show and behind."""
    kinds = Counter("precast lintel" if piece.shape == "precast" else piece.shape if piece.piece in ("full", "closer")
                    else f"sawn {piece.shape}" for piece in fold.course.pieces if piece.shape != "return")
    counted = ", ".join(f"{count} {kind}{'' if count == 1 else 's'}" for kind, count in kinds.items())
    behind = f"; {len(fold.course.backing)} behind" if fold.course.backing else ""
    return f"{sum(kinds.values()) + len(fold.course.backing)} bricks: {counted}{behind}."


def _tell_order(lesson: _Lesson, fold: Fold) -> str:
    """How many are laid in each lead, and where the course closes."""
    steps = lesson.orders[fold.course.number]
    lead = Counter(step.side for step in steps if step.side and step.piece.shape != "return")
    closures = [print_length(step.piece.left, lesson.layout.job.measure) for step in steps if step.closure]
    sides = " and ".join(f"{lead[side]} at the {side} end" for side in ("left", "right") if lead[side])
    first = f"Leads first: {sides}; then fill to the line" if sides else "Fill to the line"
    return f"{first}; closure at {', '.join(closures[:4])}." if closures else f"{first}."


def tell_why(runs: WallRuns, fold: Fold) -> tuple[str, ...]:
    """The why lines of a page: the course's own, then what only a course laid alike has."""
    own = explain_course(runs, fold.course.number)
    lines = [reason.words for reason in own]
    for number in fold.alike:
        lines += [f"Course {number}: {reason.words}" for reason in explain_course(runs, number) if _is_new(reason, own)]
    return tuple(lines)


def _is_new(reason: Reason, own: tuple[Reason, ...]) -> bool:
    return reason.kind in ALSO_TOLD and reason not in own


def _set_why(lesson: _Lesson, fold: Fold, width: float) -> Panel:
    """The why lines as large as their room allows; the last are left out where even the smallest letters have none."""
    lines = [clean(words) for words in tell_why(lesson.runs, fold)]
    for height in (FIGURES, 3.0, SMALLEST):
        panel = set_lines(tuple(Line(words, height) for words in lines), width)
        if panel.height <= HIGHEST_WHY:
            return panel
    while panel.height > HIGHEST_WHY and len(lines) > 1:
        lines.pop()
        panel = set_lines((*(Line(words) for words in lines), Line("More is told of each piece on the page for the phone.")),
                          width)
    return panel


def _draw_page(lesson: _Lesson, fitted: tuple[Fit, Room], page: tuple[Fold, Heading, Window], name: str,
               sheet: Sheet) -> Page:
    (fit, room), (fold, heading, window) = fitted, page
    board = frame_sheet(lesson.layout, fit.paper, heading, fit.scale, sheet)
    box = find_room(lesson.layout, fit.paper, heading, fit.scale)
    course = fold.course
    built = Window(window.left, window.right, 0, course.top, (1, course.number), window.matches)
    view = place_wall(lesson.layout, lesson.face, fit, room, built)
    panel = _set_why(lesson, fold, box.width)
    low = view.outline.bottom + running_height(stagger(view, fit.figures), fit.figures)
    stand(board, panel, box.left, min(low + 3.0, box.bottom - panel.height))
    _draw_built(board, view, fit, course.number)
    draw_laps(board, view, lesson.runs, course.number)
    _draw_coming(board, view)
    told = f"Wall {clean(lesson.face.wall.name)} up to course {course.number}. {' '.join(tell_why(lesson.runs, fold))}"
    return make_page(lesson.layout, board, f"build-up-{name}", heading, sheet, clean(told))


def _draw_built(board: Board, view: View, fit: Fit, number: int) -> None:
    """What stands, the new course strong."""
    cells = find_cells(view)
    new = tuple(cell for cell in cells if cell.course == number)
    old = tuple(cell for cell in cells if cell.course != number)
    mark_control_joints(board, view)
    letter_match_lines(board, view)
    draw_levels(board, view, fit.figures)
    draw_running(board, view, fit.figures)
    outline = view.outline
    holes = tuple(view.hole(opening) for opening in view.openings)
    letter_cuts(board, new, Ground(holes, Box(outline.left, BORDER, outline.right, outline.top - HEAVY_LINE)))
    letter_precast(board, new)
    outline_cells(board, old, THIN_LINE)
    hatch_cells(board, new)
    mark_beams(board, view, new)
    board.stroke(edge_lines(view), UNIT_LINE)
    outline_cells(board, new, HEAVY_LINE)
    draw_match_lines(board, view)


def _draw_coming(board: Board, view: View) -> None:
    """The wall's outline over what stands, and openings that begin there, dashed."""
    box, wall = view.outline, view.wall.wall
    top = view.up(whole(view.wall).top)
    if top > box.top - 0.5:
        return
    lines = [Segment(box.left, top, box.left, box.top), Segment(box.right, top, box.right, box.top),
             Segment(box.left, top, box.right, top)]
    slopes: list[Segment] = []
    if wall.outline is not None:
        lines, slopes = _outline_coming(view, wall.outline)
    for opening in wall.openings:
        left, right = max(opening.left, view.window.left), min(opening.right, view.window.right)
        if left < right and opening.top > view.window.top:
            hole = Box(view.across(left), view.up(opening.top), view.across(right), min(view.up(opening.bottom), box.top))
            sides = _sides(hole)
            lines += sides if hole.bottom < box.top else sides[:3]
    parts = [part for line in lines for part in board.placer.spare(line, 0.6)]
    board.stroke([*parts, *(part for part in slopes if board.placer.is_clear(part, 0.6))], THIN_LINE, COMING)


def _outline_coming(view: View, outline: Outline) -> tuple[list[Segment], list[Segment]]:
    """What of the wall's own outline lies over what stands: level and upright lines, and slopes in short parts."""
    straight, slopes = list[Segment](), list[Segment]()
    path = ((0, 0), *outline.top, (view.wall.wall.length, 0))
    for (left, low), (right, high) in pairwise(path):
        count = 1 if left == right or low == high else 60
        steps = [(left + (right - left) * part // count, low + (high - low) * part // count) for part in range(count + 1)]
        for one, other in pairwise(steps):
            if view.window.left <= one[0] and other[0] <= view.window.right and max(one[1], other[1]) > view.window.top:
                ends = [(view.across(x), view.up(max(y, view.window.top))) for x, y in (one, other)]
                (slopes if count > 1 else straight).append(Segment(*min(ends), *max(ends)))
    return [Segment(line.x1, min(line.y1, line.y2), line.x2, max(line.y1, line.y2)) for line in straight], slopes[::2]


def _sides(box: Box) -> list[Segment]:
    """Top, left, right and foot of a box."""
    return [Segment(box.left, box.top, box.right, box.top), Segment(box.left, box.top, box.left, box.bottom),
            Segment(box.right, box.top, box.right, box.bottom), Segment(box.left, box.bottom, box.right, box.bottom)]
