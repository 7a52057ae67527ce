"""Grout pours: after which day's courses grout is poured, and how much."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from wallplan.layout.explain import print_courses
from wallplan.layout.model import Course, WallLayout
from wallplan.lengths import TICKS_PER_FOOT, print_length
from wallplan.lists.order.cells import CHANNELS, count_cells
from wallplan.lists.order.counted import pieces_in
from wallplan.lists.order.figures import scale_of, settle, show
from wallplan.lists.order.grout import CELLS_PER_UNIT, measure_void
from wallplan.lists.order.line import DayRow, Due
from wallplan.plan.job import Job

CLEANOUTS = 5 * TICKS_PER_FOOT
"""A pour higher than this needs cleanouts: http://www.masonryconstruction.com/how-to/how-to-place-grout_o."""


class _Filled(NamedTuple):
    """What of a course is grouted, in the voids of full units, and whether a channel is among it."""

    voids: Fraction
    channel: bool


def plan_pours(wall: WallLayout, rows: Sequence[DayRow], job: Job) -> tuple[DayRow, ...]:
    """The wall's days with their pours.

    Grout is poured when a bond beam or lintel course is laid, when the next day's courses would rise higher over the lowest
    cell that is still empty than the plan pours at once, and at the top.
    """
    filled = _fill_courses(wall, job)
    if not filled:
        return tuple(rows)
    poured, waiting, begun = list[DayRow](), list[Course](), 0
    for place, row in enumerate(rows):
        laid = [course for course in wall.courses[begun:] if course.top <= row.height]
        begun += len(laid)
        waiting += [course for course in laid if course.number in filled]
        channel = max((number for number, course in enumerate(waiting, start=1) if filled[course.number].channel), default=0)
        following = rows[place + 1].height if place + 1 < len(rows) else None
        ready = [waiting[:channel]]
        if waiting[channel:] and (following is None or following - waiting[channel].bottom > job.order.pour_height):
            ready.append(waiting[channel:])
        waiting = waiting[sum(map(len, ready)):]
        for courses in filter(None, ready):
            row = _pour(row, sum((filled[course.number].voids for course in courses), Fraction(0)), courses, wall, job)
        poured.append(row)
    return tuple(poured)


def _fill_courses(wall: WallLayout, job: Job) -> Mapping[int, _Filled]:
    """The courses that are grouted, by number: cells with their beds, and channels along their length."""
    unit = job.masonry.unit
    if unit.solid:
        return {}
    found: dict[int, _Filled] = {}
    for number, cells in count_cells(wall, job).items():
        found[number] = _Filled(Fraction(cells, CELLS_PER_UNIT) * unit.gauge / unit.height, False)
    for course in wall.courses:
        face = sum(piece.length * piece.height for piece in pieces_in(course, wall) if piece.shape in CHANNELS)
        if face:
            cells_beside = found[course.number].voids if course.number in found else Fraction(0)
            found[course.number] = _Filled(cells_beside + Fraction(face, unit.length * unit.height), True)
    return found


def _pour(row: DayRow, voids: Fraction, courses: Sequence[Course], wall: WallLayout, job: Job) -> DayRow:
    scale = scale_of(job.measure)
    void = measure_void(job.masonry.unit, scale, job.order.cell_volume)
    volume = None if void is None else settle(voids * void, 1)
    height = courses[-1].top - courses[0].bottom
    words = [f"grout pour: {print_courses([course.number for course in courses])}"]
    if volume is not None:
        words.append(f"{show(volume)} {scale.volume}")
    if courses[-1].number < len(wall.courses):
        words.append(f"before course {courses[-1].number + 1}")
    if height > job.order.pour_height:
        words.append(f"{print_length(job.order.pour_height, job.measure)} high at once at most")
    if height > CLEANOUTS:
        words.append("cleanouts at its foot")
    due = Due("grout", "yes" if volume is None else show(volume), ", ".join(words))
    together = volume if volume is None or row.pour is None else volume + row.pour
    return replace(row, pour=together, dues=(*row.dues, due))
