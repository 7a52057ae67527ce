"""The story pole's sheets: each pole to scale with its heights, and what a sill or head off the coursing asks for."""

from __future__ import annotations

from functools import partial

from wallplan.drawing.cautions import POLE as CAUTIONS
from wallplan.drawing.drafts import Draft
from wallplan.drawing.lettering import clean, shorten, tie
from wallplan.drawing.paper import SCALES, Paper, Scale, find_paper
from wallplan.drawing.pole_strip import HEAD, LEFT, POLE, RIGHT, Stretch, count_pages, draw_stretch, split_pole
from wallplan.drawing.primitives import Page
from wallplan.drawing.sheet_frame import Heading, find_room, frame_sheet, make_page
from wallplan.drawing.title_block import Sheet
from wallplan.layout.model import Layout
from wallplan.lengths import Measure, print_joint, print_length, print_size
from wallplan.lists.pole import Gauge, GaugeAnswers, Pole, list_poles

POLE_SCALES: dict[Measure, tuple[Scale, ...]] = {
    "feet": (Scale("1 in = 1 ft", 12), Scale("3/4 in = 1 ft", 16), *SCALES["feet"]),
    "metric": SCALES["metric"],
}
"""A pole is slender: it has room for larger scales than a wall."""

LEAST_COURSE = 4.2
"""A pole is drawn in one piece where its courses are at least this high on the paper, mm."""

MOST_SHEETS = 20

_MOST_ANSWERS = 4


def plan_pole_sheets(layout: Layout, paper: str | None) -> tuple[Draft, ...]:
    """A sheet or more for each pole of the job; () for no walls. Raises UnknownPaper."""
    sheet = find_paper(paper, layout.job.measure)
    poles = list_poles(layout)
    plans = [(pole, *_plan(layout, pole, _make_heading(layout, pole), sheet)) for pole in poles]
    sheets = [partial(_draw_page, layout, pole, way, stretches[start : start + each])
              for pole, way, stretches, each in plans for start in range(0, len(stretches), each)]
    return tuple(Draft("Story pole", (number, len(sheets)), draw) for number, draw in enumerate(sheets, start=1))


def _plan(layout: Layout, pole: Pole, heading: Heading, paper: Paper) -> tuple[Paper, tuple[Stretch, ...], int]:
    """How the paper is held, the pole's stretches, and how many stand side by side on a sheet."""
    ways: list[tuple[tuple[int, int, int], Paper, tuple[Stretch, ...], int]] = []
    for scale in POLE_SCALES[layout.job.measure]:
        for way in (paper, paper.turned()):
            room = find_room(layout, way, heading, scale)
            stretches = split_pole(pole, layout.job.measure, scale, room.height)
            each = max(1, int(room.width / (LEFT + POLE + RIGHT)))
            legible = scale.on_paper(pole.tops[-1]) >= LEAST_COURSE * len(pole.tops)
            pages = count_pages(stretches, each)
            kind = 0 if legible and len(stretches) == 1 else 1 if legible and pages <= MOST_SHEETS else 2
            ways.append(((kind, pages, scale.ratio), way, stretches, each))
    _, way, stretches, each = min(ways, key=lambda found: found[0])
    return way, stretches[: each * MOST_SHEETS], each


def _draw_page(layout: Layout, pole: Pole, paper: Paper, stretches: tuple[Stretch, ...], place: Sheet) -> Page:
    heading, scale = _make_heading(layout, pole), stretches[0].scale
    board = frame_sheet(layout, paper, heading, scale, place)
    room = find_room(layout, paper, heading, scale)
    for number, stretch in enumerate(stretches):
        width = room.width / len(stretches)
        x = room.left + LEFT + number * width
        draw_stretch(board, stretch, x, room.left + (number + 1) * width, room.bottom - HEAD, room.top + HEAD / 2)
    tops = ", ".join(print_length(top, layout.job.measure) for top in pole.tops[:200])
    levels = "; ".join(f"{clean(level.words)} {print_length(level.height, layout.job.measure)}" for level in pole.levels)
    told = f"Story pole. Tops of courses from the top of the footing: {tops}. {levels}"
    return make_page(layout, board, "pole", heading, place, told)


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
        return [f"{one}."]
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
    kept = " and ".join(keeping) or "neither; rips, as the wall sheet shows"
    return [one + missed, two, f"Meets both within limits: {kept}."]


def _tell(gauge: Gauge, measured: Measure) -> str:
    held = "within limits" if gauge.held else "OUT OF LIMITS"
    return f"{gauge.courses} on beds of {tie(print_joint(gauge.bed, measured))}, {held}"
