"""The course sheet: courses 1 and 2 of every building in plan, with what proves its corners square."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import partial

from wallplan.drawing.board import Board
from wallplan.drawing.cautions import SETTING_OUT
from wallplan.drawing.course_lettering import letter_course
from wallplan.drawing.course_plan import HEAD, MARGIN, CoursePlan, draw_course, plan_size
from wallplan.drawing.drafts import Draft
from wallplan.drawing.ground_plan import Building, find_buildings
from wallplan.drawing.lettering import SMALLEST, clean, tie
from wallplan.drawing.paper import BORDER, SCALES, Paper, Scale, find_paper
from wallplan.drawing.primitives import Box, Page, Text
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.layout.model import Layout
from wallplan.lengths import Measure, print_length, print_size
from wallplan.lists.order.tied import strap_courses
from wallplan.lists.piers import tell_piers

SMALL_SCALES: dict[Measure, tuple[Scale, ...]] = {
    "feet": (Scale("1/16 in = 1 ft", 192), Scale("1/32 in = 1 ft", 384), Scale("1 in = 100 ft", 1200),
             Scale("1 in = 1000 ft", 12_000)),
    "metric": (Scale("1:200", 200), Scale("1:500", 500), Scale("1:1000", 1000), Scale("1:10000", 10_000)),
}
"""For buildings that the usual scales have no room for: walls alone can be told there."""

LEAST_THICK = 2.0
"""Walls at least this thick on the paper are preferred to all courses on fewer sheets, mm."""

_MOST_CHECKS = 8
_MOST_CORNERS = 10


@dataclass(frozen=True)
class Figure:
    """One course of a building, and where its upper left corner stands in the room, mm."""

    building: Building
    number: int
    x: float
    y: float


Pages = tuple[tuple[Figure, ...], ...]


def plan_course_sheets(layout: Layout, paper: str | None) -> tuple[Draft, ...]:
    """The course sheets of a layout; () for no walls. Raises UnknownPaper."""
    buildings = find_buildings(layout)
    if not buildings:
        return ()
    sheet = find_paper(paper, layout.job.measure)
    way, scale, pages = _choose(layout, buildings, sheet)
    return tuple(Draft("Courses 1 and 2 in plan", (number, len(pages)), partial(_draw_page, layout, way, scale, figures))
                 for number, figures in enumerate(pages, start=1))


def _choose(layout: Layout, buildings: tuple[Building, ...], paper: Paper) -> tuple[Paper, Scale, Pages]:
    """The largest scale that has room for both courses of each building on a sheet, unless walls get too thin to read."""
    scales = SCALES[layout.job.measure] + SMALL_SCALES[layout.job.measure]
    fitting = [(way, scale, pages) for scale in scales for way in (paper, paper.turned())
               if (pages := _pack(layout, buildings, way, scale))]
    together = [choice for choice in fitting if len(choice[2]) <= len(buildings)]
    thick = [choice for choice in together if choice[1].on_paper(buildings[0].thickness) >= LEAST_THICK]
    return (thick or fitting or together or [(paper, scales[-1], _one_each(buildings))])[0]


def _one_each(buildings: tuple[Building, ...]) -> Pages:
    return tuple((Figure(building, number, 0.0, 0.0),) for building in buildings for number in _numbers(building))


def _numbers(building: Building) -> tuple[int, ...]:
    """Course 1, and course 2 where there is one."""
    return (1, 2)[: max(len(leg.wall.courses) for leg in building.drawn)]


def _pack(layout: Layout, buildings: tuple[Building, ...], paper: Paper, scale: Scale) -> Pages:
    """Figures in rows, filled from the left; () where one has no room on a sheet of its own."""
    pages: list[list[Figure]] = [[]]
    x = y = row = 0.0
    wanted = [(building, number) for building in buildings for number in _numbers(building)]
    for building, number in wanted:
        room = find_room(layout, paper, _make_heading(layout, (building,)), scale)
        width, height = plan_size(building, scale)
        if width > room.width or height > room.height:
            return ()
        if x + width > room.width:
            x, y, row = 0.0, y + row, 0.0
        least = max((find_room(layout, paper, _make_heading(layout, _held(pages[-1], building)), scale).height, 0.0))
        if y + height > least:
            pages.append([])
            x = y = row = 0.0
        pages[-1].append(Figure(building, number, x, y))
        x, row = x + width, max(row, height)
    return tuple(tuple(page) for page in pages)


def _spread_out(figures: tuple[Figure, ...], scale: Scale, width: float) -> tuple[Figure, ...]:
    """The figures of each row moved apart by what the sheet's room leaves over."""
    rows = {y: [figure for figure in figures if figure.y == y] for y in sorted({figure.y for figure in figures})}
    moved: list[Figure] = []
    for row in rows.values():
        spare = max(0.0, width - sum(plan_size(figure.building, scale)[0] for figure in row))
        moved += [replace(figure, x=figure.x + spare * (place + 0.5) / len(row)) for place, figure in enumerate(row)]
    return tuple(moved)


def _held(figures: list[Figure], building: Building) -> tuple[Building, ...]:
    return tuple(dict.fromkeys((*(figure.building for figure in figures), building)))


def _make_heading(layout: Layout, buildings: tuple[Building, ...]) -> Heading:
    walls = tuple(leg.wall for building in buildings for leg in building.drawn)
    told = [f"Walls {tie(print_size(buildings[0].thickness, layout.job.measure))} thick; lengths out to out. "
            f"{_tell_hatch(layout)}Close hatch: cut, see its letter."]
    if layout.job.masonry.stretcher_courses > 1:
        told += [line for building in buildings for line in _tell_header_courses(building)]
    if any(building.corners for building in buildings):
        told.append("Heavy outline: runs through at the corner, in odd / in even courses:")
    if any(_has_ells(building) for building in buildings):
        told.insert(1, "Heavy L at a corner: an L corner unit.")
    for building in buildings:
        told += _tell_corners(building) + _tell_ties(building, layout) + _tell_checks(building, layout.job.measure)
    return Heading("COURSES 1 AND 2", "Plan, seen from above; outside of the first wall below it.", tuple(told), SETTING_OUT,
                   walls)


def _tell_header_courses(building: Building) -> Iterator[str]:
    """Of bonds with a course of headers after several of stretchers: which courses those are, wall by wall."""
    for leg in building.drawn:
        found = [course.number for course in leg.wall.courses
                 if 2 * sum(piece.shape == "header" for piece in course.pieces) > len(course.pieces)]
        if found:
            shown = "courses " + ", ".join(map(str, found[:8])) + (" and on" if len(found) > 8 else "")
            yield f"{clean(leg.wall.wall.name)}: {shown} are headers, a closer beside that at each end; not drawn here."


def _tell_hatch(layout: Layout) -> str:
    return "Closers and cuts: see their letters. " if layout.job.masonry.one_brick else "Open hatch: half. "


def _has_ells(building: Building) -> bool:
    courses = [course for leg in building.legs for course in leg.wall.courses[:2]]
    return any(piece.shape == "corner L" for course in courses for piece in course.pieces)


def _tell_corners(building: Building) -> list[str]:
    """Which wall runs through in odd courses, and which in even ones."""
    told = []
    plan = CoursePlan(building, 1, Scale("", 1), "feet", 0, 0)
    for corner in building.corners[:_MOST_CORNERS]:
        before, after = building.meeting(corner)
        odd, even = (before, after) if plan.is_through(before, right=True) else (after, before)
        told.append(f"{corner}: {clean(odd.wall.wall.name)} / {clean(even.wall.wall.name)}.")
    return told


def _tell_ties(building: Building, layout: Layout) -> list[str]:
    """Each wall that abuts another: where, and what ties it."""
    measured = layout.job.measure
    told = [*_tell_piers(building, measured), *_tell_built_piers(building, layout)]
    for stem in building.stems:
        if stem in building.piers:
            continue
        for one in stem.wall.wall.abuts:
            courses = strap_courses(stem.wall, one, layout.job)
            ties = {"interlocked": "runs through it in every other course", "control joint": "a control joint between them",
                    "straps": f"straps on courses {', '.join(map(str, courses))}"}[one.tie]
            told.append(f"{clean(stem.wall.wall.name)} abuts {clean(one.meets)} {tie(print_length(one.at, measured))} from "
                        f"the left end of its outside face: {ties}.")
    return told


def _tell_piers(building: Building, measured: Measure) -> list[str]:
    """Piers of one wall that stand out alike, in one line."""
    alike: dict[tuple[str, str, int], list[int]] = {}
    for pier in building.piers:
        one = pier.wall.wall.abuts[0]
        alike.setdefault((one.meets, "inside" if one.inside else "outside", pier.wall.wall.length), []).append(one.at)
    return [f"Piers on the {face} of {clean(meets)}, {tie(print_size(length, measured))} out of its face, at "
            f"{', '.join(tie(print_length(at, measured)) for at in sorted(places))} from its left end."
            for (meets, face, length), places in alike.items()]


def _tell_built_piers(building: Building, layout: Layout) -> list[str]:
    """The piers built into walls, in a line each kind."""
    return [f"{clean(leg.wall.wall.name)}: {told}."
            for leg in building.drawn for _, told in tell_piers(leg.wall, layout.job)]


def _tell_checks(building: Building, measured: Measure) -> list[str]:
    checks = building.checks()
    if building.is_rectangle:
        return [f"Square when 1 to 3 and 2 to 4 both measure {tie(print_length(checks[0].length, measured))} "
                "over the outside corners."]
    return [f"Corner {check.corner} is square when {check.ends[0]} to {check.ends[1]} measures "
            f"{tie(print_length(check.length, measured))} over the outside faces." for check in checks[:_MOST_CHECKS]]


def _draw_page(layout: Layout, paper: Paper, scale: Scale, figures: tuple[Figure, ...], sheet: Sheet) -> Page:
    buildings = tuple(dict.fromkeys(figure.building for figure in figures))
    heading = _make_heading(layout, buildings)
    board = frame_sheet(layout, paper, heading, scale, sheet)
    room = find_room(layout, paper, heading, scale)
    board.placer.take(Box(room.left, room.bottom, room.right, paper.height))
    missing: list[str] = []
    for figure in _spread_out(figures, scale, room.width):
        extent = figure.building.extent
        high = scale.on_paper(extent.top - extent.bottom)
        plan = CoursePlan(figure.building, figure.number, scale, layout.job.measure,
                          room.left + figure.x + MARGIN, room.top + figure.y + MARGIN + HEAD + high)
        missing += [f"Course {figure.number}: {words}" for words in letter_course(board, plan, draw_course(board, plan))]
    for words in missing:  # when all courses are drawn
        _letter_anywhere(board, words)
    names = ", ".join(clean(wall.wall.name) for wall in heading.walls)
    told = f"Plan of courses 1 and 2 of {names}. {' '.join(heading.told)}"
    return make_page(layout, board, "courses", heading, sheet, told)


def _letter_anywhere(board: Board, words: str) -> None:
    """Letter words in the first free place of the room, from the foot up; a full sheet goes without."""
    bounds = board.placer.bounds
    for y in range(int(bounds.bottom), int(BORDER) + 4, -2):
        for x in range(int(bounds.left) + 1, int(bounds.right), 12):
            if board.letter_if_free(Text(x, y, words, SMALLEST), 2.0):
                return
