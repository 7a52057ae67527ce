"""The marking sheet: what is measured on the pupil's wall, within what tolerance; and predict, dry-lay, compare."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from wallplan.drawing.cautions import FRESH
from wallplan.drawing.drafts import Draft
from wallplan.drawing.lettering import clean
from wallplan.drawing.paper import Paper
from wallplan.drawing.primitives import Page
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.layout.model import Layout, WallLayout
from wallplan.lengths import print_joint, print_length, print_size
from wallplan.lists.marks import mark_wall
from wallplan.plan.teaching_table import usual_tolerances
from wallplan.teaching.grid import ROW, TITLE, Row, draw_rows

HEADS = ("what is measured", "as drawn", "within", "as built", "off by", "mark")
PREDICTED = ("predict, dry-lay, compare", "predicted", "dry-laid", "off by", "drawing", "off by")

_PARTS = (0.33, 0.165, 0.135, 0.14, 0.13, 0.10)


def plan_marking_sheets(layout: Layout, paper: Paper) -> tuple[Draft, ...]:
    """The marking sheets of a job, wall by wall; () for no walls."""
    way = paper.turned()
    heading = _make_heading(layout)
    room = find_room(layout, way, heading, None)
    each = max(4, int((room.height - TITLE + ROW) / ROW))
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
    told = ("Tolerances stand in the plan's [teaching] table and may be changed there; the usual ones are common practice, "
            "no source. A contract's or a code's go first.",
            "Predict where each joint begins, dry-lay the course, measure, and compare with the marks sheet of the drawing.",
            "Name: ____________________  Date: __________  Marked by: ____________________")
    seen = "Distances from each wall's left end, heights from the datum."
    return Heading("MARKING SHEET", seen, told, FRESH, layout.walls)


def list_rows(layout: Layout, wall: WallLayout) -> list[Row]:
    """What is marked of a wall, and what is predicted of its first course."""
    measured = layout.job.measure
    teaching = layout.job.teaching or usual_tolerances(measured)

    def within(words: str, drawn: str, ticks: int) -> Row:
        return Row((words, drawn, f"+/- {print_size(ticks, measured)}", "", "", ""))

    def place(words: str, ticks: int) -> Row:
        return within(words, print_length(ticks, measured), teaching.dimension)

    rows = [Row((f"Wall {clean(wall.wall.name)}",), head=True), Row(HEADS, head=True),
            place("length", wall.wall.length), place("height", wall.courses[-1].top)]
    for opening in wall.wall.openings:
        rows += [place(f"{words} of {clean(opening.name)}", ticks) for words, ticks in (
            ("left jamb", opening.left), ("right jamb", opening.right), ("head", opening.top))]
    rows += [within(words, "0", teaching.plumb) for words in ("plumb, left end", "plumb, right end", "plumb, face")]
    rows += [within(words, "0", teaching.level) for words in ("level, first course", "level, last course")]
    rows += [within(words, print_joint(joint, measured), teaching.joint) for words, joint in _name_joints(wall)]
    rows += [within("bed joints", print_joint(wall.bed, measured), teaching.joint),
             within("head joints over each other", "plumb", teaching.bond)]
    return rows + _list_predictions(layout, wall)


def _name_joints(wall: WallLayout) -> list[tuple[str, int]]:
    """Both limits of joints that differ stand in rows of their own: a range is too long for its cell."""
    low, high = wall.joints
    return [("head joints", low)] if low == high else [("head joints, thinnest", low), ("head joints, widest", high)]


def _list_predictions(layout: Layout, wall: WallLayout) -> list[Row]:
    """First, middle and last joint of the first two courses. No distance is given: the pupil has still to say it."""
    marks = mark_wall(wall, layout.job.masonry.joint)
    rows = [Row(PREDICTED, head=True)]
    for course, found in ((1, marks.odd), (2, marks.even)):
        shown = sorted({0, len(found) // 2, len(found) - 1}) if found else []
        rows += [Row((f"course {course}, joint {place + 1} of {len(found)}", *[""] * 5)) for place in shown]
    return rows


def _draw_page(layout: Layout, paper: Paper, heading: Heading, rows: Sequence[Row], sheet: Sheet) -> Page:
    board = frame_sheet(layout, paper, heading, None, sheet)
    draw_rows(board, rows, find_room(layout, paper, heading, None), _PARTS)
    told = "Marking sheet. " + " ".join(" ".join(cell for cell in row.cells if cell) for row in rows) + "."
    return make_page(layout, board, "marking", heading, sheet, clean(told))
