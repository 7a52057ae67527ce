"""The marking sheet: what is measured on the pupil's wall, within what tolerance; and predict, dry-lay, compare."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from typing import NamedTuple

from wallplan.drawing.board import Board
from wallplan.drawing.cautions import FRESH
from wallplan.drawing.drafts import Draft
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, clean, measure, shorten
from wallplan.drawing.outlines import THIN_LINE, UNIT_LINE
from wallplan.drawing.paper import Paper
from wallplan.drawing.primitives import Box, Page, Segment, Text
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.layout.model import Layout, WallLayout
from wallplan.lengths import print_joint, print_length, print_size
from wallplan.lists.marks import mark_wall

ROW = 7.4
"""Height of a row to write in, mm."""

HEADS = ("what is measured", "as drawn", "within", "as built", "off by", "mark")
PREDICTED = ("predict, dry-lay, compare", "", "predicted", "dry-laid", "as drawn", "off by")

_WIDTHS = (0.32, 0.16, 0.14, 0.15, 0.13, 0.10)


class Row(NamedTuple):
    """A row of the table: its cells; a blank one is written in. ``head`` rows are lettered larger and stand alone."""

    cells: tuple[str, ...]
    head: bool = False


def plan_marking_sheets(layout: Layout, paper: Paper) -> tuple[Draft, ...]:
    """The marking sheets of a job, wall by wall; () for no walls."""
    way = paper.turned()
    heading = _make_heading(layout)
    room = find_room(layout, way, heading, None)
    each = max(4, int(room.height / ROW))
    pages = [rows for wall in layout.walls if wall.courses for rows in _split(list_rows(layout, wall), each)]
    return tuple(Draft("Marking sheet", (number, len(pages)), partial(_draw_page, layout, way, heading, rows))
                 for number, rows in enumerate(pages, start=1))


def _split(rows: list[Row], each: int) -> Iterator[list[Row]]:
    """As many rows on a sheet as it holds; a head never ends one."""
    start = 0
    while start < len(rows):
        end = min(len(rows), start + each)
        while end < len(rows) and end > start + 1 and rows[end - 1].head:
            end -= 1
        yield rows[start:end]
        start = end


def _make_heading(layout: Layout) -> Heading:
    told = ("Tolerances stand in the plan's [teaching] table and may be changed there; the usual ones are common practice, no "
            "source. A contract's or a code's tolerances go first.",
            "Predict where each joint will stand, dry-lay the course, measure, and compare with the drawing.",
            "Name: ____________________  Date: __________  Marked by: ____________________")
    return Heading("MARKING SHEET", "Distances from each wall's left end, heights from the datum.", told, FRESH, layout.walls)


def list_rows(layout: Layout, wall: WallLayout) -> list[Row]:
    """What is marked of a wall, and what is predicted of its first course."""
    measured, teaching = layout.job.measure, layout.job.teaching

    def within(ticks: int) -> str:
        return f"+/- {print_size(ticks, measured)}"

    dimension = within(teaching.dimension)
    top = wall.courses[-1].top
    rows = [Row((f"Wall {clean(wall.wall.name)}",), head=True), Row(HEADS, head=True),
            Row(("length", print_length(wall.wall.length, measured), dimension)),
            Row(("height", print_length(top, measured), dimension))]
    for opening in wall.wall.openings:
        name = clean(opening.name)
        rows += [Row((f"left jamb of {name}", print_length(opening.left, measured), dimension)),
                 Row((f"right jamb of {name}", print_length(opening.right, measured), dimension)),
                 Row((f"head of {name}", print_length(opening.top, measured), dimension))]
    rows += [Row((words, "0", within(teaching.plumb))) for words in ("plumb, left end", "plumb, right end", "plumb, face")]
    rows += [Row(("level, first course", "0", within(teaching.level))), Row(("level, last course", "0", within(teaching.level))),
             Row(("head joints", _print_joints(wall, layout), within(teaching.joint))),
             Row(("bed joints", print_joint(wall.bed, measured), within(teaching.joint)))]
    rows += [Row((words, "plumb", within(teaching.bond))) for words in ("head joints over each other",)]
    return rows + _list_predictions(layout, wall)


def _print_joints(wall: WallLayout, layout: Layout) -> str:
    low, high = (print_joint(width, layout.job.measure) for width in wall.joints)
    return low if low == high else f"{low} to {high}"


def _list_predictions(layout: Layout, wall: WallLayout) -> list[Row]:
    """First, middle and last joint of the first course, and the same of the second."""
    marks = mark_wall(wall, layout.job.masonry.joint)
    rows = [Row(PREDICTED, head=True)]
    for course, found in ((1, marks.odd), (2, marks.even)):
        shown = sorted({0, len(found) // 2, len(found) - 1}) if found else []
        rows += [Row((f"course {course}, joint {place + 1} of {len(found)}", "", "", "",
                      print_length(found[place].near, layout.job.measure))) for place in shown]
    return rows


def _draw_page(layout: Layout, paper: Paper, heading: Heading, rows: Sequence[Row], sheet: Sheet) -> Page:
    board = frame_sheet(layout, paper, heading, None, sheet)
    room = find_room(layout, paper, heading, None)
    y = room.top
    lefts = [room.left + room.width * sum(_WIDTHS[:place]) for place in range(len(_WIDTHS))]
    for row in rows:
        if len(row.cells) == 1:
            words = shorten(row.cells[0], LARGE_FIGURES, room.width - 3.0)
            board.letter(Text(room.left + 1.5, y + ROW - 1.6, words, LARGE_FIGURES))
        else:
            _draw_row(board, row, lefts, Box(room.left, y, room.right, y + ROW))
        y += ROW
    told = "Marking sheet. " + " ".join(" ".join(cell for cell in row.cells if cell) for row in rows) + "."
    return make_page(layout, board, "marking", heading, sheet, clean(told))


def _draw_row(board: Board, row: Row, lefts: Sequence[float], box: Box) -> None:
    """A row in its frame, its cells shortened to their columns."""
    rights = (*lefts[1:], box.right)
    for cell, left, right in zip(row.cells, lefts, rights, strict=False):
        room = right - left - 3.0
        height = FIGURES if measure(cell, FIGURES) <= room else 2.5
        board.letter(*([Text(left + 1.5, box.bottom - 2.2, shorten(cell, height, room), height)] if cell else []))
    width = UNIT_LINE if row.head else THIN_LINE
    board.stroke([*(Segment(left, box.top, left, box.bottom) for left in (*lefts[1:],)),
                  Segment(box.left, box.bottom, box.right, box.bottom)], width)
    board.outline([box.shrunk(width / 2)], width)
