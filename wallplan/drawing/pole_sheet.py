"""The story pole's sheets: each pole to scale with its heights, and what a sill or head off the coursing asks for."""

from __future__ import annotations

from functools import partial
from typing import NamedTuple

from wallplan.drawing.cautions import POLE as CAUTIONS
from wallplan.drawing.drafts import Draft
from wallplan.drawing.lettering import FIGURES, clean, shorten, tie
from wallplan.drawing.paper import SCALES, Paper, Scale, find_paper
from wallplan.drawing.pole_strip import (
    HEAD,
    LEFT,
    POLE,
    RIGHT,
    Stretch,
    count_pages,
    draw_stretch,
    measure_sides,
    split_pole,
)
from wallplan.drawing.primitives import Page, Text
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.layout.model import Layout
from wallplan.lengths import Measure, print_joint, print_length, print_size
from wallplan.lists.pole import Gauge, GaugeAnswers, Pole, list_poles, set_gauge_pole

POLE_SCALES: dict[Measure, tuple[Scale, ...]] = {
    "feet": (Scale("1 in = 1 ft", 12), Scale("3/4 in = 1 ft", 16), *SCALES["feet"]),
    "metric": (Scale("1:5", 5), *SCALES["metric"]),
}
"""A pole is slender: it has room for larger scales than a wall."""

LEAST_COURSE = 4.2
"""A pole is drawn in one piece where its courses are at least this high on the paper, mm."""

MOST_SHEETS = 20

_MOST_ANSWERS = 4
_BESIDE = 44.0
"""For the words right of a pole that has another beside it, mm; longer ones take two lines."""


class _Plan(NamedTuple):
    """How a pole, and the poles of the gauges that it is answered by, stand on paper: their stretches, and how many of these
    stand side by side on a sheet; ``sides`` is what the figures left and the words right of each take, mm."""

    pole: Pole
    paper: Paper
    stretches: tuple[Stretch, ...]
    each: int
    sides: tuple[float, float]


def plan_pole_sheets(layout: Layout, paper: str | None) -> tuple[Draft, ...]:
    """A sheet or more for each pole of the job; () for no walls. Raises UnknownPaper."""
    sheet = find_paper(paper, layout.job.measure)
    plans = [_plan(layout, pole, _make_heading(layout, pole), sheet) for pole in list_poles(layout)]
    sheets = [partial(_draw_page, layout, plan, plan.stretches[start : start + plan.each])
              for plan in plans for start in range(0, len(plan.stretches), plan.each)]
    return tuple(Draft("Story pole", (number, len(sheets)), draw) for number, draw in enumerate(sheets, start=1))


def _plan(layout: Layout, pole: Pole, heading: Heading, paper: Paper) -> _Plan:
    """How the paper is held, the stretches, and how many stand side by side on a sheet."""
    ways: list[tuple[tuple[int, int, int], _Plan]] = []
    measured, poles = layout.job.measure, (pole, *_find_gauge_poles(pole, layout.job.measure))
    both = [measure_sides(one, measured) for one in poles]
    left, right = max(left for left, _ in both), max(right for _, right in both)
    for scale in POLE_SCALES[measured]:
        for way in (paper, paper.turned()):
            room = find_room(layout, way, heading, scale)
            stretches = tuple(stretch for one in poles for stretch in split_pole(one, measured, scale, room.height))
            sides = left, min(RIGHT if len(stretches) == 1 else _BESIDE, right)
            each = max(1, int(room.width / (sides[0] + POLE + sides[1])))
            legible = scale.on_paper(pole.tops[-1]) >= LEAST_COURSE * len(pole.tops)
            pages = count_pages(stretches, each)
            whole = legible and len(stretches) == len(poles)
            kind = 0 if whole else 1 if legible and pages <= MOST_SHEETS else 2
            ways.append(((kind, pages, scale.ratio), _Plan(pole, way, stretches, each, sides)))
    _, best = min(ways, key=lambda found: found[0])
    return best._replace(stretches=best.stretches[: best.each * MOST_SHEETS])


def _find_gauge_poles(pole: Pole, measured: Measure) -> list[Pole]:
    """The poles that gauges within limits make of the openings off the coursing; [] where there are none."""
    def tell(gauge: Gauge) -> str:
        return f"{_tell_count(gauge.courses)}, bed {print_joint(gauge.bed, measured)}"

    found = [set_gauge_pole(pole, answer, tell) for answer in pole.answers[:_MOST_ANSWERS]]
    return [one for one in found if one is not None]


def _tell_count(courses: int) -> str:
    return "1 course" if courses == 1 else f"{courses} courses"


def _draw_page(layout: Layout, plan: _Plan, stretches: tuple[Stretch, ...], place: Sheet) -> Page:
    pole, paper, measured = plan.pole, plan.paper, layout.job.measure
    heading, scale = _make_heading(layout, pole), stretches[0].scale
    board = frame_sheet(layout, paper, heading, scale, place)
    room = find_room(layout, paper, heading, scale)
    width = room.width / len(stretches)
    for number, stretch in enumerate(stretches):
        x = room.left + number * width + (LEFT if len(stretches) == 1 else plan.sides[0])
        low = room.bottom - HEAD
        draw_stretch(board, stretch, x, room.left + (number + 1) * width, low, room.top + HEAD / 2)
        name = _name_stretch(plan, stretch)
        if name:
            board.letter(Text(x, low + 1.6 + FIGURES, shorten(name, FIGURES, width - plan.sides[0]), FIGURES))
    tops = ", ".join(print_length(top, measured) for top in pole.tops[:200])
    levels = "; ".join(f"{clean(level.words)} {print_length(level.height, measured)}" for level in pole.levels)
    told = f"Story pole. Tops of courses from the top of the footing: {tops}. {levels}"
    return make_page(layout, board, "pole", heading, place, told)


def _name_stretch(plan: _Plan, stretch: Stretch) -> str:
    """Which pole a stretch is of, where there are several: as the wall is laid out, or of one gauge or two."""
    if all(one.pole is plan.pole for one in plan.stretches):
        return ""
    if stretch.pole is plan.pole:
        return "AS LAID OUT"
    return "OR TWO GAUGES" if len(stretch.pole.parts) == 2 else "OR ONE GAUGE"


def _make_heading(layout: Layout, pole: Pole) -> Heading:
    measured = layout.job.measure
    names = ", ".join(clean(wall.wall.name) for wall in pole.walls)
    low, high = (tie(print_size(limit, measured)) for limit in pole.limits)
    courses = "1 course" if len(pole.tops) == 1 else f"{len(pole.tops)} courses"
    told = [f"{courses}; {_tell_gauge(layout, pole)} Beds may be {low} to {high}. "
            "Each height is the nearest to the exact one above the datum, none a sum of others."]
    for answer in pole.answers[:_MOST_ANSWERS]:
        told += _tell_answers(answer, measured)
    return Heading("STORY POLE", f"For {shorten(names, 2.5, 200)}.", tuple(told), CAUTIONS, pole.walls)


def _tell_gauge(layout: Layout, pole: Pole) -> str:
    count, height = layout.job.masonry.unit.coursing or (1, layout.job.masonry.unit.gauge)
    measured = layout.job.measure
    size = tie(print_size(height, measured))
    usual = f"gauge {size} a course" if count == 1 else f"gauge {count} courses to {size}"
    return f"{usual}, bed as laid {tie(print_joint(pole.bed, measured))}."


def _tell_answers(answer: GaugeAnswers, measured: Measure) -> list[str]:
    """One gauge and two, for an opening whose sill or head is off the coursing."""
    name = f"{clean(answer.opening)} in {clean(answer.wall)}"
    one = f"{name} is off the coursing. One gauge to its head: {_tell(answer.one, measured)}"
    if answer.below is None or answer.above is None:
        return [f"{one}.{' Drawn beside the pole; the other sheets are as laid out.' if answer.meeting else ''}"]
    off = tie(print_size(abs(answer.sill_off), measured))
    side = "above" if answer.sill_off > 0 else "under"
    missed = f"; its sill is then {off} {side} a course." if answer.sill_off else "; its sill is then on a course."
    if answer.fill and answer.one.held:
        courses, left = answer.fill
        missed += (f" Or stop at course {courses}: {tie(print_size(left, measured))} are left for a sill laid on it, "
                   "on edge or of one piece.")
    two = f"Two gauges: to its sill {_tell(answer.below, measured)}; on to its head {_tell(answer.above, measured)}."
    keeping = [words for words, kept in (("one gauge", answer.one.held and not answer.sill_off),
                                         ("two gauges", answer.below.held and answer.above.held)) if kept]
    kept = " and ".join(keeping) or "neither; ripped or half-high pieces, as the wall sheet shows"
    drawn = " Drawn beside the pole; the other sheets are as laid out." if answer.meeting else ""
    return [one + missed, two, f"Meets both within limits: {kept}.{drawn}"]


def _tell(gauge: Gauge, measured: Measure) -> str:
    held = "within limits" if gauge.held else "OUT OF LIMITS"
    return f"{gauge.courses} on beds of {tie(print_joint(gauge.bed, measured))}, {held}"
