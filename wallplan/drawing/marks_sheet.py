"""The marks of each wall: the strip of its head joints, and the same distances as a table, to mark on footing or strip."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from wallplan.drawing.cautions import SETTING_OUT
from wallplan.drawing.columns import CLOSE_BETWEEN, CLOSE_PITCH, Row, Table, draw_columns, fill_columns
from wallplan.drawing.drafts import Draft
from wallplan.drawing.lettering import DOTS, FIGURES, LARGE_FIGURES, SMALLEST, clean, shorten
from wallplan.drawing.marks_strip import Strip, draw_strip, make_strips
from wallplan.drawing.paper import Paper, find_paper
from wallplan.drawing.primitives import Box, Page
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet, print_face
from wallplan.drawing.wall_sheet import name_walls
from wallplan.layout.explain import print_courses
from wallplan.layout.model import Layout, WallLayout
from wallplan.lengths import Measure, print_length
from wallplan.lists.marks import Mark, WallMarks, mark_wall

MOST_SHEETS = 40
"""More marks than stand on so many sheets are left to the list in the CSV file."""

_LONGEST_NAME = 42.0

_TOLD = (
    "Hook the tape once, at the wall's left end, and mark every distance from there.",
    "Each figure is where the next unit begins: the far side of a joint from the left end. Each is the nearest to the exact "
    "distance, none a sum of others.",
    "(In brackets): no joint there in course 1 or 2, only higher up. Small numbers: only these courses have it. Heavy "
    "lines: jambs.",
)


@dataclass(frozen=True)
class _Part:
    """What one sheet holds: strips, and columns of the table."""

    strips: tuple[Strip, ...]
    columns: tuple[tuple[int, int], ...]


def plan_marks_sheets(layout: Layout, paper: str | None) -> tuple[Draft, ...]:
    """The marks of all walls, wall by wall; () for no walls. Raises UnknownPaper."""
    sheet = find_paper(paper, layout.job.measure)
    names = name_walls(tuple(wall.wall.name for wall in layout.walls))
    return tuple(draft for wall, name in zip(layout.walls, names, strict=True)
                 for draft in _plan_wall(layout, wall, name.replace("wall-", "marks-", 1), sheet))


def _plan_wall(layout: Layout, wall: WallLayout, name: str, sheet: Paper) -> list[Draft]:
    marks = mark_wall(wall, layout.job.masonry.joint)
    heading = Heading(f"MARKS {clean(wall.wall.name)}", print_face(wall), _TOLD, SETTING_OUT, (wall,))
    rows = tuple(_list_rows(marks, layout.job.measure))
    plans = ((table, *_plan(layout, marks, table, heading, (way, figures)))
             for figures, table in ((LARGE_FIGURES, Table(rows)), (FIGURES, Table(rows)),
                                    (FIGURES, Table(rows, pitch=CLOSE_PITCH)),
                                    (FIGURES, Table(rows, pitch=CLOSE_PITCH, between=CLOSE_BETWEEN)))
             for way in (sheet, sheet.turned()))
    table, paper, strips, parts = min(plans, key=lambda plan: len(plan[3]))

    def draw(part: _Part, sheet: Sheet) -> Page:
        board = frame_sheet(layout, paper, heading, strips[0].scale, sheet)
        room = find_room(layout, paper, heading, strips[0].scale)
        y = room.top
        for strip in part.strips:
            draw_strip(board, strip, room.left, y)
            y += strip.height
        draw_columns(board, table, part.columns, Box(room.left, y, room.right, room.bottom))
        return make_page(layout, board, name, heading, sheet, _describe(marks, layout.job.measure))

    return [Draft(f"Marks {clean(wall.wall.name)}", (number, len(parts)), partial(draw, part))
            for number, part in enumerate(parts, start=1)]


def _plan(layout: Layout, marks: WallMarks, table: Table, heading: Heading,
          tried: tuple[Paper, float]) -> tuple[Paper, tuple[Strip, ...], list[_Part]]:
    """Strips and columns sheet by sheet on paper held one way, figures on the strips at most so high, mm."""
    paper, largest = tried
    width = paper.usable_width
    strips = make_strips(marks, layout.job.measure, width, layout.job.masonry.module, largest)
    room = find_room(layout, paper, heading, strips[0].scale)
    if max(strip.height for strip in strips) > room.height:
        strips = make_strips(marks, layout.job.measure, width, layout.job.masonry.module, FIGURES)
    parts: list[_Part] = []
    left, row = list(strips if len(strips) <= MOST_SHEETS else strips[:1]), 0
    while (left or row < len(table.rows)) and len(parts) < MOST_SHEETS:
        here: list[Strip] = []
        spare = room.height
        while left and (left[0].height <= spare or not (here or parts)):
            spare -= left[0].height
            here.append(left.pop(0))
        columns = () if left else fill_columns(table, row, width, spare)
        row = columns[-1][1] if columns else row
        if not here and not columns:
            break
        parts.append(_Part(tuple(here), columns))
    return paper, strips, parts


def _list_rows(marks: WallMarks, measured: Measure) -> list[Row]:
    rows: list[Row] = []
    kinds = (("ODD", marks.odd, marks.odd_courses), ("EVEN", marks.even, marks.even_courses))
    for kind, found, count in kinds:
        if found:
            rows.append(Row(kind, heading=True))
            rows += [Row(print_length(mark.far, measured), _tell_courses(mark, count)) for mark in found]
    rows.append(Row("JAMBS, ENDS", heading=True))
    sides = [(side, f"{word} {shorten(clean(name), SMALLEST, _LONGEST_NAME)}") for name, left, right in marks.jambs
             for side, word in ((left, "left"), (right, "right"))]
    sides += [(side, word) for left, right in marks.control_joints
              for side, word in ((left, "CJ from"), (right, "CJ to"))]
    sides += [(side, f"{word} pier") for _, left, right in marks.piers for side, word in ((left, "left"), (right, "right"))]
    sides += [(at, "riser") for at in marks.risers]
    rows += [Row(print_length(side, measured), words) for side, words in sorted(sides)]
    rows.append(Row(print_length(marks.length, measured), "right end"))
    if marks.raked:
        rows.append(Row("RAKED ENDS", heading=True))
        rows += [Row(print_length(end.bottom, measured),
                     f"top {print_length(end.top, measured)}, course {end.course} {end.side}") for end in marks.raked]
    return rows


def _tell_courses(mark: Mark, count: int) -> str:
    """Which courses have a joint there; nothing where all of them do."""
    told = "" if len(mark.courses) == count else print_courses(list(mark.courses))
    return told.removeprefix("courses ").removeprefix("course ").replace("…", DOTS)


def _describe(marks: WallMarks, measured: Measure) -> str:
    def tell(found: tuple[Mark, ...]) -> str:
        return ", ".join(print_length(mark.far, measured) for mark in found[:200]) or "none"

    return (f"Marks of wall {clean(marks.wall)} from its left end. Odd courses: {tell(marks.odd)}. "
            f"Even courses: {tell(marks.even)}.")
