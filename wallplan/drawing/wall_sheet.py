"""The wall sheets: each wall's elevation with its dimensions, cuts, title block and print check."""

from __future__ import annotations

import unicodedata
from collections import Counter
from dataclasses import replace
from functools import partial

from wallplan.drawing.board import Board
from wallplan.drawing.cut_table import set_cuts
from wallplan.drawing.dimensions import draw_levels, draw_running, running_height, stagger
from wallplan.drawing.drafts import Draft
from wallplan.drawing.elevation import draw_elevation
from wallplan.drawing.face import FaceName
from wallplan.drawing.lettering import FIGURES, SMALLEST, clean
from wallplan.drawing.outlines import UNIT_LINE
from wallplan.drawing.panel import Panel, stand
from wallplan.drawing.paper import BORDER, Paper, find_paper
from wallplan.drawing.primitives import Box, Page, Text
from wallplan.drawing.sheet_plan import (
    GAP,
    Panels,
    SheetPlan,
    Subject,
    find_room,
    head_room,
    make_subject,
    note_window,
    panel_widths,
    place_across,
    plan_sheets,
    set_panels,
)
from wallplan.drawing.title_block import Sheet, describe, set_title_block, tell_part
from wallplan.drawing.view import View, Window
from wallplan.findings import Finding
from wallplan.layout.model import Layout
from wallplan.lengths import print_length
from wallplan.lists.cuts import list_cuts
from wallplan.lists.order.line import Sawing


def plan_wall_sheets(layout: Layout, findings: tuple[Finding, ...], paper: str | None,
                     face: FaceName = "outside", sawings: tuple[Sawing, ...] | None = None) -> tuple[Draft, ...]:
    """The wall sheets of a layout, wall by wall; () for a layout without walls. A face that no one sees has no sheet.

    ``sawings`` as ``list_cuts`` takes them. ``paper`` is letter, tabloid, A4 or A3; None takes letter for feet and A4 for
    metric. Raises UnknownPaper.
    """
    sheet = find_paper(paper, layout.job.measure)
    names = name_walls(tuple(wall.wall.name for wall in layout.walls))
    cuts = list_cuts(layout, sawings)
    subjects = [make_subject(wall, layout.job, findings, cuts, face) for wall in layout.walls]
    end = "-inside" if face == "inside" else ""
    return tuple(draft for subject, name in zip(subjects, names, strict=True) if subject.wall.wall.length > 0
                 for draft in _plan_wall(subject, f"{name}{end}", sheet))


def name_walls(walls: tuple[str, ...]) -> tuple[str, ...]:
    """A file name's end for each wall: ``wall-`` and its name in small letters and hyphens, never the same twice."""
    plain = []
    for place, wall in enumerate(walls, start=1):
        ascii_only = unicodedata.normalize("NFKD", wall).encode("ascii", "ignore").decode().lower()
        words = "".join(letter if letter.isalnum() else " " for letter in ascii_only).split()
        plain.append("-".join(words)[:40] or str(place))
    counts = Counter(plain)
    return tuple(f"wall-{name}" if counts[name] == 1 else f"wall-{name}-no-{place}"
                 for place, name in enumerate(plain, start=1))


def _plan_wall(subject: Subject, name: str, paper: Paper) -> list[Draft]:
    plan = plan_sheets(subject, paper)
    tables = _table_pages(subject, plan) if plan.apart else []

    def draw_window(window: Window, sheet: Sheet) -> Page:
        placed = replace(sheet, shows=_tell_part(subject, plan, window))
        return _make_page(subject, name, placed, _draw_sheet(subject, plan, window, placed))

    def draw_table(rows: tuple[int, int], sheet: Sheet) -> Page:
        placed = replace(sheet, shows="Cut sizes.")
        return _make_page(subject, name, placed, _draw_table(subject, plan, rows, placed))

    sheets = [*(partial(draw_window, window) for window in plan.windows), *(partial(draw_table, rows) for rows in tables)]
    title = f"Wall {clean(subject.wall.wall.name)}{', inside' * (subject.face.name == 'inside')}"
    return [Draft(title, (number, len(sheets)), draw) for number, draw in enumerate(sheets, start=1)]


def _make_page(subject: Subject, name: str, sheet: Sheet, board: Board) -> Page:
    end = name if sheet.part[0] == 1 else f"{name}-{sheet.part[0]}"
    title = (f"{clean(subject.job.title)}: wall {clean(subject.wall.wall.name)}, "
             f"sheet {sheet.number} of {sheet.count}")
    told = describe(subject.wall, subject.job, subject.tally.kinds, sheet, subject.face)
    return Page(board.paper, end, title, told, tuple(board.ink))


def _tell_part(subject: Subject, plan: SheetPlan, window: Window) -> str:
    """Which part of a split wall a sheet shows; nothing for a whole wall."""
    if len(plan.windows) == 1:
        return ""
    start = subject.face.told_left(window.left, window.right)
    left, right = (print_length(end, subject.job.measure) for end in (start, start + window.right - window.left))
    return tell_part(left, right, window.courses if window.levels else None)


def _draw_sheet(subject: Subject, plan: SheetPlan, window: Window, sheet: Sheet) -> Board:
    arrangement = plan.arrangement
    panels = set_panels(subject, arrangement, sheet, note_window(subject, arrangement, window), plan.apart)
    board = Board(arrangement.paper)
    _stand_panels(board, plan, panels)
    view = _place_view(subject, plan, window, panels)
    draw_levels(board, view, arrangement.figures)
    draw_running(board, view, arrangement.figures)
    for line in draw_elevation(board, view):
        _letter_anywhere(board, line)
    return board


def _letter_anywhere(board: Board, line: str) -> None:
    """Letter a line in the first free place of the sheet, from the top; a full sheet goes without."""
    free = board.placer.bounds
    for y in range(int(free.top) + 5, int(free.bottom), 2):
        for x in range(int(free.left) + 1, int(free.right), 10):
            if board.letter_if_free(Text(x, y, line, SMALLEST), 1.5):
                return


def _place_view(subject: Subject, plan: SheetPlan, window: Window, panels: Panels) -> View:
    """The window in the middle of the room that the panels leave, its dimensions taken with it."""
    arrangement = plan.arrangement
    width, height = find_room(subject, arrangement, panels)
    drawn = place_across(subject, arrangement, window, width)
    below = running_height(stagger(drawn, arrangement.figures), arrangement.figures)
    above = head_room(subject, arrangement, split=len(plan.windows) > 1)
    spare_up = height - above - below - drawn.outline.height
    y = BORDER + above + max(0.0, spare_up / 2) + drawn.outline.height
    return replace(drawn, y=y)


def _stand_panels(board: Board, plan: SheetPlan, panels: Panels) -> None:
    """Notes and print check at the foot over the whole width; title block and cuts over them, or beside the wall."""
    paper = board.paper
    foot = paper.height - BORDER - panels.check.height
    stand(board, panels.check, BORDER + 2.0, foot)
    stand(board, panels.notes, BORDER, foot - panels.notes.height)
    board.placer.take(Box(BORDER, foot - panels.notes.height, paper.width - BORDER, paper.height - BORDER))
    table = panels.cuts.height + panels.key.height
    low = foot - panels.notes.height
    if plan.arrangement.beside:
        left = paper.width - BORDER - panels.title.width
        _frame(board, panels.title, left, BORDER, panels.title.height)
        _frame(board, panels.cuts, left, BORDER + panels.title.height, table)
        stand(board, panels.key, left, BORDER + panels.title.height + panels.cuts.height)
        return
    height = max(panels.title.height, table)
    right = paper.width - BORDER - panels.cuts.width
    _frame(board, panels.title, BORDER, low - height, height)
    _frame(board, panels.cuts, right, low - height, height)
    stand(board, panels.key, right, low - panels.key.height)


def _frame(board: Board, panel: Panel, left: float, top: float, height: float) -> None:
    stand(board, panel, left, top)
    box = Box(left, top, left + panel.width, top + height)
    board.outline([box.shrunk(UNIT_LINE / 2)], UNIT_LINE)
    board.placer.take(box)


def _table_pages(subject: Subject, plan: SheetPlan) -> list[tuple[int, int]]:
    """Which cuts stand on each sheet of a long cut table: from, to."""
    room = 0.6 * plan.arrangement.paper.usable_height
    each = len(subject.cuts)
    while each > 1 and set_cuts(subject.cuts[:each], plan.arrangement.paper.usable_width, 0.0).height > room:
        each = each * 3 // 4
    return [(start, start + each) for start in range(0, len(subject.cuts), each)]


def _draw_table(subject: Subject, plan: SheetPlan, rows: tuple[int, int], sheet: Sheet) -> Board:
    arrangement = plan.arrangement
    board = Board(arrangement.paper)
    title = set_title_block(subject.wall, subject.job, arrangement.scale, sheet, panel_widths(arrangement)[0], subject.face)
    panel = set_cuts(subject.cuts[slice(*rows)], arrangement.paper.usable_width, 0.0)
    assert panel.height > FIGURES
    _frame(board, title, BORDER, BORDER, title.height)
    stand(board, panel, BORDER, BORDER + title.height + GAP)
    return board
