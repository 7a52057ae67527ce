"""The leads' sheets: each racked-back end that is built first, with units, line heights and how it is checked."""

from __future__ import annotations

from functools import partial

from wallplan.drawing.cautions import FRESH
from wallplan.drawing.drafts import Draft
from wallplan.drawing.lead_drawing import LEVEL, LeadView, draw_lead
from wallplan.drawing.lettering import clean
from wallplan.drawing.packing import Stand, pack
from wallplan.drawing.paper import Paper, Scale, find_paper
from wallplan.drawing.pole_sheet import POLE_SCALES
from wallplan.drawing.primitives import Page
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.layout.model import Layout
from wallplan.lists.leads import BuiltLead, list_leads

LEAST_COURSE = 3.0
"""Courses are at least this high on the paper where a sheet has room for it, mm."""

INSET = 1.5
"""Between the border and a lead's lines, mm."""

MOST_LEADS = 60
"""More leads than these that are built unlike are left to the wall sheets, where they are outlined."""


def plan_leads_sheets(layout: Layout, paper: str | None) -> tuple[Draft, ...]:
    """The leads of a layout; () where walls are too short for any. Raises UnknownPaper."""
    sheet = find_paper(paper, layout.job.measure)
    leads = list_leads(layout)[:MOST_LEADS]
    if not leads:
        return ()
    heading = _make_heading(layout)
    way, scale, sheets = _choose(layout, leads, heading, sheet)
    return tuple(Draft("Leads", (number, len(sheets)), partial(_draw_page, layout, leads, heading, (way, scale), stands))
                 for number, stands in enumerate(sheets, start=1))


Choice = tuple[Paper, Scale, tuple[tuple[Stand, ...], ...]]


def _choose(layout: Layout, leads: tuple[BuiltLead, ...], heading: Heading, paper: Paper) -> Choice:
    """The fewest sheets at a scale that can be read, then the largest scale."""
    choices: list[tuple[tuple[bool, int, int], Choice]] = []
    for scale in POLE_SCALES[layout.job.measure]:
        sizes = [LeadView(lead, layout.job.measure, scale, 0, 0).size for lead in leads]
        for way in (paper, paper.turned()):
            room = find_room(layout, way, heading, scale)
            sheets = pack(sizes, room.width - INSET, room.height)
            if sheets:
                small = scale.on_paper(layout.job.masonry.unit.gauge) < LEAST_COURSE
                choices.append(((small, len(sheets), scale.ratio), (way, scale, sheets)))
    if not choices:
        alone = tuple((Stand(number, 0.0, 0.0),) for number in range(len(leads)))
        return paper, POLE_SCALES[layout.job.measure][-1], alone
    return min(choices, key=lambda choice: choice[0])[1]


def _make_heading(layout: Layout) -> Heading:
    level = LEVEL[layout.job.measure][1]
    courses = layout.job.masonry.leads
    face = "Outside face. First lift of each lead, built before the wall between; heavy line: how it racks back."
    return Heading("LEADS", face, (
        f"Course by course: lay from the end, level along with the {level}, plumb the end on both faces, range the face.",
        "Chain line: a straightedge on the rack touches every stepped unit, or the spacing is off.",
        "Line at: height of the course's top above the datum, where the line is pulled from lead to lead.",
        f"A new lift begins every {courses} courses, or fewer on short walls; the wall sheets outline them all.",
    ), FRESH, layout.walls)


def _draw_page(layout: Layout, leads: tuple[BuiltLead, ...], heading: Heading, drawn: tuple[Paper, Scale],
               stands: tuple[Stand, ...], place: Sheet) -> Page:
    paper, scale = drawn
    board = frame_sheet(layout, paper, heading, scale, place)
    room = find_room(layout, paper, heading, scale)
    for stand in stands:
        x, y = room.left + INSET + stand.x, room.top + stand.y
        draw_lead(board, LeadView(leads[stand.number], layout.job.measure, scale, x, y))
    told = "; ".join(f"{clean(leads[stand.number].name)}: {leads[stand.number].units} units" for stand in stands)
    return make_page(layout, board, "leads", heading, place, f"Leads, first lift. {told}.")
