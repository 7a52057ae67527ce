"""The piers' sheets: courses 1 and 2 of every pier in plan, to scale, with sizes, cuts and how they bond."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from wallplan.drawing.cautions import SETTING_OUT
from wallplan.drawing.drafts import Draft
from wallplan.drawing.lettering import clean, shorten
from wallplan.drawing.packing import Stand, pack
from wallplan.drawing.paper import SCALES, Paper, Scale, find_paper
from wallplan.drawing.pier_plan import PierPlan, draw_pier
from wallplan.drawing.primitives import Page
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.layout.model import Layout, PierLayout, WallLayout
from wallplan.lengths import print_length, print_size
from wallplan.lists.piers import pier_size, tell_units

MOST_KINDS = 8
"""Piers that are laid unlike; more are left to the JSON."""

Kind = tuple[WallLayout, PierLayout, tuple[str, ...]]
"""A pier with its wall, and where its like stand."""


def plan_pier_sheets(layout: Layout, paper: str | None) -> tuple[Draft, ...]:
    """The piers of a layout that are wider or thicker than their wall; () for none. Raises UnknownPaper."""
    sheet = find_paper(paper, layout.job.measure)
    kinds = _find_kinds(layout)
    if not kinds:
        return ()
    heading = _make_heading(layout, kinds)
    way, scale, sheets = _choose(layout, kinds, heading, sheet)
    plans = _make_plans(layout, kinds, scale)
    return tuple(Draft("Piers, courses 1 and 2", (number, len(sheets)),
                       partial(_draw_page, layout, plans, heading, (way, scale), stands))
                 for number, stands in enumerate(sheets, start=1))


def _find_kinds(layout: Layout) -> tuple[Kind, ...]:
    """Piers that are laid unlike, or beside which the wall is, each with the places of all that are alike."""
    found: dict[object, tuple[WallLayout, PierLayout, list[str]]] = {}
    for wall in layout.walls:
        for pier in wall.piers:
            key = tuple((one.piece.left - pier.pier.left, one.near, one.along, one.deep, course.tied)
                        for course in pier.laid[:2] for one in course.pieces), _ends_at(wall, pier)
            place = f"{clean(wall.wall.name)} at {print_length(pier.pier.left, layout.job.measure)}"
            found.setdefault(key, (wall, pier, []))[2].append(place)
    return tuple((wall, pier, tuple(places)) for wall, pier, places in found.values())[:MOST_KINDS]


def _ends_at(wall: WallLayout, pier: PierLayout) -> tuple[bool, bool]:
    return pier.pier.left == 0, pier.pier.right == wall.wall.length


def _make_plans(layout: Layout, kinds: tuple[Kind, ...], scale: Scale) -> tuple[PierPlan, ...]:
    masonry = layout.job.masonry
    return tuple(PierPlan(wall, pier, course, scale, layout.job.measure, masonry.thickness, masonry.module, 0.0, 0.0)
                 for wall, pier, _ in kinds for course in pier.laid[:2])


def _choose(layout: Layout, kinds: tuple[Kind, ...], heading: Heading,
            paper: Paper) -> tuple[Paper, Scale, tuple[tuple[Stand, ...], ...]]:
    """The fewest sheets, then the largest scale; both courses of a pier stay side by side."""
    scales = SCALES[layout.job.measure]
    choices = []
    for scale in scales:
        sizes = _pair_sizes(_make_plans(layout, kinds, scale))
        for way in (paper, paper.turned()):
            room = find_room(layout, way, heading, scale)
            sheets = pack(sizes, room.width, room.height)
            if sheets:
                choices.append(((len(sheets), scale.ratio), (way, scale, sheets)))
    if not choices:
        return paper, scales[-1], tuple((Stand(number, 0.0, 0.0),) for number in range(len(kinds)))
    return min(choices, key=lambda choice: choice[0])[1]


def _pair_sizes(plans: tuple[PierPlan, ...]) -> list[tuple[float, float]]:
    """Width and height of each pier's courses side by side, mm."""
    return [(sum(plan.size[0] for plan in pair), max(plan.size[1] for plan in pair)) for pair in _pairs(plans)]


def _pairs(plans: tuple[PierPlan, ...]) -> list[tuple[PierPlan, ...]]:
    """The plans of each pier: one of a wall of one course, else two."""
    piers = list(dict.fromkeys(id(plan.pier) for plan in plans))
    return [tuple(plan for plan in plans if id(plan.pier) == pier) for pier in piers]


def _make_heading(layout: Layout, kinds: tuple[Kind, ...]) -> Heading:
    job, told = layout.job, ["Open hatch: half. Upright hatch: other stock length. Close hatch: cut, see its letter."]
    for _, pier, places in kinds:
        names = [f"{course.number}: {tell_units(one.piece.mark or one.piece.piece for one in course.pieces)}"
                 for course in pier.laid[:2]]
        told.append(shorten(f"{pier_size(pier, job)}. Course {'; '.join(names)}. {'; '.join(places)}.", 2.5, 900.0))
        if pier.straight[1]:
            told.append(f"Inside it {print_size(pier.straight[1], job.measure)} of joint stand over a joint in two courses.")
    about = "Plan, seen from above. Odd courses are laid as the odd one here, even ones as the even one."
    return Heading("PIERS", about, tuple(told), SETTING_OUT, tuple(dict.fromkeys(wall for wall, _, _ in kinds)))


def _draw_page(layout: Layout, plans: tuple[PierPlan, ...], heading: Heading, drawn: tuple[Paper, Scale],
               stands: tuple[Stand, ...], place: Sheet) -> Page:
    paper, scale = drawn
    board = frame_sheet(layout, paper, heading, scale, place)
    room = find_room(layout, paper, heading, scale)
    for stand in stands:
        x = room.left + 1.0 + stand.x
        for plan in _pairs(plans)[stand.number]:
            draw_pier(board, replace(plan, x=x, y=room.top + stand.y))
            x += plan.size[0]
    return make_page(layout, board, "piers", heading, place, "Piers in plan, courses 1 and 2: " + " ".join(heading.told))
