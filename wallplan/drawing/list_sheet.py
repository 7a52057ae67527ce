"""The first sheet of a set: which sheets follow, what walls they are for, and in which order they are used."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from wallplan.drawing.cautions import USUAL
from wallplan.drawing.columns import INSET, LARGE_PITCH, Row, Table, draw_columns, fill_columns
from wallplan.drawing.drafts import Draft
from wallplan.drawing.lettering import FIGURES, clean, measure, shorten
from wallplan.drawing.paper import Paper, find_paper
from wallplan.drawing.primitives import Box, Page
from wallplan.drawing.print_check import CHECK_LINE
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.findings import Finding
from wallplan.layout.model import Layout, WallLayout
from wallplan.lengths import Measure, print_length

MOST_SHEETS = 20
"""More sheets than so many pages list are told by their number alone."""

MOST_NAMES = 4
"""More openings than so many are counted and not named."""

_USED = ("Order by the order and tick what comes; set out by the courses in plan and the marks; cut the story pole; build "
         "the leads; lay between them by the wall sheets; saw by the saw list.")

Columns = tuple[tuple[int, int], ...]


def plan_list_sheets(layout: Layout, findings: tuple[Finding, ...], paper: str | None,
                     drafts: tuple[Draft, ...]) -> tuple[Draft, ...]:
    """The list of these sheets, on a sheet or more before them; () for no walls or no sheets. Raises UnknownPaper."""
    if not layout.walls or not drafts:
        return ()
    sheet = find_paper(paper, layout.job.measure)
    heading = _make_heading(layout, findings, len(drafts))
    way, table, parts = min((_plan(layout, heading, drafts, way) for way in (sheet, sheet.turned())),
                            key=lambda plan: len(plan[2]))
    return tuple(Draft("Sheets", (number, len(parts)), partial(_draw_page, layout, heading, way, table, columns))
                 for number, columns in enumerate(parts, start=1))


def _plan(layout: Layout, heading: Heading, drafts: tuple[Draft, ...], paper: Paper) -> tuple[Paper, Table, list[Columns]]:
    """The list on paper held one way: its table, and which columns stand on each sheet."""
    room = find_room(layout, paper, heading, None)
    count, before = 1, 0
    while count != before:  # the list's own sheets count
        table = _set_table(layout, drafts, count, room.width)
        parts = _fill(table, room)
        count, before = max(count, len(parts)), count
    return paper, table, parts


def _fill(table: Table, room: Box) -> list[Columns]:
    """Which columns of the table stand on each sheet; at least one sheet, however low its room."""
    parts: list[Columns] = []
    row = 0
    while row < len(table.rows) and len(parts) < MOST_SHEETS:
        columns = fill_columns(table, row, room.width, room.height)
        if not columns:
            break
        parts.append(columns)
        row = columns[-1][1]
    return parts or [()]


def _set_table(layout: Layout, drafts: tuple[Draft, ...], first: int, width: float) -> Table:
    """The sheets that follow ``first`` sheets of list, and the walls; words too long for ``width`` mm are shortened."""
    rows = [Row("SHEETS", heading=True), *_list_sheets(drafts, first), Row("WALLS", heading=True),
            *(_tell_wall(wall, layout.job.measure) for wall in layout.walls)]
    widest = width - 2 * INSET - 6.0 - max(measure(row.figure, FIGURES) for row in rows)
    return Table(tuple(replace(row, words=shorten(row.words, FIGURES, widest)) for row in rows), FIGURES, LARGE_PITCH)


def _list_sheets(drafts: tuple[Draft, ...], first: int) -> list[Row]:
    """A row for each title: its sheet's number, or its first and last."""
    rows = []
    for number, draft in enumerate(drafts, start=first + 1):
        part, count = draft.part
        if part == 1:
            rows.append(Row(str(number) if count == 1 else f"{number} to {number + count - 1}", draft.title))
    return rows


def _tell_wall(wall: WallLayout, measured: Measure) -> Row:
    """A wall's size, its name, and what it holds."""
    length, height = (print_length(size, measured) for size in (wall.wall.length, wall.wall.height))
    cuts = sum(piece.mark is not None for course in wall.courses
               for piece in (*course.bricks, *wall.pier_pieces(course.number)))
    names = [clean(opening.name) for opening in wall.wall.openings]
    openings = ", ".join(names) if len(names) <= MOST_NAMES else f"{len(names)} openings"
    told = f"{clean(wall.wall.name)}: {len(wall.courses)} courses, {cuts or 'no'} {'cut' if cuts == 1 else 'cuts'}"
    return Row(f"{length} x {height}", f"{told}{f'; {openings}' if openings else ''}")


def _make_heading(layout: Layout, findings: tuple[Finding, ...], count: int) -> Heading:
    measured = layout.job.measure
    broken = sorted({clean(finding.wall) for finding in findings if not finding.held})
    proof = ("Rules: not checked." if not findings else "Rules: all held in every wall." if not broken
             else f"BROKEN rules in {', '.join(broken)}: named on the wall sheets.")
    line = CHECK_LINE[measured][1].removeprefix("this line is ").removesuffix(": measure it")
    printed = f"Print in full size, not fitted to the page: the line at the foot of each sheet must measure {line}."
    face = f"{count} {'sheet follows' if count == 1 else 'sheets follow'} the list. Walls: length x height."
    return Heading("SHEETS", face, (_USED, printed, proof), USUAL, layout.walls)


def _draw_page(layout: Layout, heading: Heading, paper: Paper, table: Table, columns: Columns, sheet: Sheet) -> Page:
    board = frame_sheet(layout, paper, heading, None, sheet)
    draw_columns(board, table, columns, find_room(layout, paper, heading, None))
    told = "; ".join(f"{row.figure} {row.words}".strip() for row in table.rows[:200])
    return make_page(layout, board, "sheets", heading, sheet, f"List of sheets. {told}.")
