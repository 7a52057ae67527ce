"""The wrong wall on paper: five faults to find, and the key with what the rules say of each."""

from __future__ import annotations

from functools import partial

from wallplan.drawing.board import Board
from wallplan.drawing.cautions import SETTING_OUT
from wallplan.drawing.dimensions import draw_levels, draw_running
from wallplan.drawing.drafts import Draft
from wallplan.drawing.elevation import (
    LINTEL_LINE,
    draw_match_lines,
    edge_lines,
    letter_match_lines,
    mark_control_joints,
    outline_cells,
)
from wallplan.drawing.face import show_face
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, SMALLEST, clean, measure_text, tie
from wallplan.drawing.opening_labels import letter_openings
from wallplan.drawing.outlines import HEAVY_LINE, UNIT_LINE, find_cells
from wallplan.drawing.panel import Line, Panel, set_lines, stand
from wallplan.drawing.paper import Paper
from wallplan.drawing.primitives import Page, Segment, Text
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.spread import spread
from wallplan.drawing.title_block import Sheet
from wallplan.drawing.view import View, Window
from wallplan.layout.model import WallLayout
from wallplan.lengths import print_length
from wallplan.teaching.fault_kinds import FaultKind, list_kinds
from wallplan.teaching.fitting import Fit, Room, fit_wall, place_wall
from wallplan.teaching.grid import ROW, Row, draw_rows
from wallplan.teaching.wrong_wall import Fault, WrongWall

TOLD: dict[FaultKind, str] = {
    "straight joint": "a joint in line with one below",
    "sliver": "a piece that is too short",
    "short lap": "a joint too near one below",
    "wandering head joint": "a joint out of plumb",
    "course missing the head": "a height off the pole",
    "course out of turn": "a course of another bond",
    "closer out of place": "a closer not beside its header",
    "brick out of turn": "header and stretcher exchanged",
}
"""Each kind of fault as the pupil is told to look for it."""

MOST_TOLD = 2
"""Findings of one rule that are told one by one."""

_OVER = 14.0
_PARTS = (0.27, 0.31, 0.1, 0.12, 0.2)


def plan_wrong_sheets(wrong: WrongWall | None, paper: Paper, *, key: bool) -> tuple[Draft, ...]:
    """The wrong wall, or its key, on a sheet (more for a long wall); () where no wall takes five faults."""
    if wrong is None:
        return ()
    face, heading = _show(wrong), _make_heading(wrong, key)

    def under(way: Paper) -> float:
        return max(_set_key(wrong, way.usable_width).height, (len(list_kinds(wrong.layout.job.masonry)) + 1) * ROW) + 1.0

    room = Room([heading], under, _OVER, together=True)
    fit = fit_wall(wrong.layout, face, paper, room)
    title = "Wrong wall, key" if key else "Wrong wall"
    return tuple(Draft(title, (number, len(fit.windows)), partial(_draw_page, wrong, (fit, room), window, key))
                 for number, window in enumerate(fit.windows, start=1))


def _show(wrong: WrongWall) -> WallLayout:
    return show_face(wrong.layout.walls[0], wrong.layout.job.masonry.thickness)[0]


def _make_heading(wrong: WrongWall, key: bool) -> Heading:
    wall = wrong.layout.walls[0]
    stands = "" if wrong.own else " A practice wall: the plan's own walls have no room for all five."
    told = [f"Five faults stand in this wall.{stands}"]
    if key:
        told.append("Each fault is numbered over the wall and told with what the rules find. They find nothing else.")
    else:
        told += ["Find them, ring each, and write where it is and what would mend it. Heights are as built: compare them "
                 "with the pole. Halves and cuts are not hatched.", _tell_tops(wrong),
                 "Name: ____________________  Date: __________"]
    seen = f"{clean(wall.wall.name)}, outside face."
    return Heading("WRONG WALL: KEY" if key else "WRONG WALL", seen, tuple(told), SETTING_OUT, (wall,))



def _tell_tops(wrong: WrongWall) -> str:
    """The tops of some courses as built, which a small sheet may not letter one by one: those about the missed head."""
    courses, measured = wrong.layout.walls[0].courses, wrong.layout.job.measure
    missed = next(fault.course for fault in wrong.faults if fault.kind == "course missing the head")
    shown = courses[max(0, missed - 4) : missed + 1]
    tops = (tie(f"{course.number}: {print_length(course.top, measured)}") for course in shown)
    return f"Tops of courses as built: {', '.join(tops)}."


def _set_key(wrong: WrongWall, width: float) -> Panel:
    """The faults, with what the rules find of each."""
    return set_lines(tuple(line for number, fault in enumerate(wrong.faults, start=1)
                           for line in _tell_fault(wrong, number, fault)), width)


def _tell_fault(wrong: WrongWall, number: int, fault: Fault) -> tuple[Line, ...]:
    """The fault and where it is, and under it what the rules find and what would mend it."""
    at = print_length(fault.at, wrong.layout.job.measure)
    found = "; ".join(_tell_findings(fault))
    return (Line(f"{number}. {fault.kind}, course {fault.course}, at {at}", FIGURES),
            Line(clean(f"{found}. Mend: {fault.findings[0].remedy}."), SMALLEST))


def _tell_findings(fault: Fault) -> list[str]:
    """What the rules find, the first of each rule in words; of a rule that is broken in many places how many more."""
    told: dict[str, list[str]] = {}
    for finding in fault.findings:
        told.setdefault(finding.rule, []).append(f"{finding.rule}: {finding.figure}, should be {finding.limit}")
    lines: list[str] = []
    for found in told.values():
        lines += found if len(found) <= MOST_TOLD else [f"{found[0]}, and so in {len(found) - 1} more places"]
    return lines


def _list_blanks(wrong: WrongWall) -> list[Row]:
    """A row to fill in for each kind of fault, the plainest first."""
    return [Row(("fault", "look for", "course", "at", "mend"), head=True),
            *(Row((kind, TOLD[kind], "", "", "")) for kind in reversed(list_kinds(wrong.layout.job.masonry)))]


def _draw_page(wrong: WrongWall, fitted: tuple[Fit, Room], window: Window, key: bool, sheet: Sheet) -> Page:
    fit, room = fitted
    board = frame_sheet(wrong.layout, fit.paper, room.headings[0], fit.scale, sheet)
    box = find_room(wrong.layout, fit.paper, room.headings[0], fit.scale)
    view = place_wall(wrong.layout, _show(wrong), fit, room, window)
    low = box.bottom - room.under(fit.paper)
    if key:
        stand(board, _set_key(wrong, box.width), box.left, low)
        _number_faults(board, view, wrong.faults)
    else:
        draw_rows(board, _list_blanks(wrong), box._replace(top=low), _PARTS)
    _draw_wall(board, view, fit)
    told = ("Wall with five faults; key." if key else "Wall with five faults to find.")
    return make_page(wrong.layout, board, "key" if key else "wrong-wall", room.headings[0], sheet, told)


def _draw_wall(board: Board, view: View, fit: Fit) -> None:
    """The wall in outline only, so that no hatch gives a fault away."""
    cells = find_cells(view)
    mark_control_joints(board, view)
    letter_match_lines(board, view)
    letter_openings(board, view)
    draw_levels(board, view, fit.figures)
    draw_running(board, view, fit.figures)
    outline_cells(board, cells, UNIT_LINE)
    board.outline([cell.box for cell in cells if cell.piece.shape in ("lintel", "precast")], LINTEL_LINE)
    board.stroke(edge_lines(view), HEAVY_LINE)
    draw_match_lines(board, view)


def _number_faults(board: Board, view: View, faults: tuple[Fault, ...]) -> None:
    """A number over the wall for each fault in view, with a leader down to it."""
    seen = sorted((view.across(fault.at), number) for number, fault in enumerate(faults, start=1)
                  if view.window.left <= fault.at <= view.window.right)
    places = spread([x for x, _ in seen], LARGE_FIGURES + 3.0, view.outline.left, view.outline.right)
    for (x, number), place in zip(seen, places, strict=True):
        course = view.wall.courses[faults[number - 1].course - 1]
        text = Text(place, view.outline.top - 6.5, str(number), LARGE_FIGURES, "middle")
        board.letter(text)
        middle = (view.up(course.bottom) + view.up(course.top)) / 2
        board.lead(Segment(x, middle, place, measure_text(text).bottom + 0.8))
