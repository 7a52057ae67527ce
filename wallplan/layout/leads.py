"""Leads: which pieces stand in the racked-back ends that are built first.

A lead at a wall's end is racked back half a unit a course on one side (NAVEDTRA 14043); a lead that is racked
on both sides, or round a corner, loses one whole unit a course: n courses, n(n + 1)/2 units.
"""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

from wallplan.layout.model import Course, Lead, Piece
from wallplan.plan.job import Job, Masonry, Wall

SIDES: tuple[Lead, Lead] = ("left", "right")

OVERHANG = 3 * 960
"""What a unit may stand out over the end of the course below, ticks: what joints drift (common practice, no source)."""


class LeadPlan(NamedTuple):
    """Leads of a wall: courses in a lift, how far the lead reaches in its first course, and how far the next are back.

    ``piers`` are how much farther it reaches at the wall's left and right end, where a pier stands that is built with it."""

    courses: int
    length: int
    module: int
    rack: int
    piers: tuple[int, int] = (0, 0)

    def limit(self, number: int) -> int:
        """How far from the wall's end the lead reaches in a course (counted from 1 at the foot of the wall)."""
        return self.length - (number - 1) % self.courses * self.rack


def plan_leads(length: int, module: int, courses: int, rack: int | None = None,
               piers: tuple[int, int] = (0, 0)) -> LeadPlan | None:
    """Leads for a wall of ``length`` ticks: the courses asked for, or as many as leave a unit between two leads.

    None where the wall is too short for leads of two courses: it is laid by the level alone. ``rack`` is how far each course
    stands back in a bond with headers; left out, half a unit. ``piers`` as in a LeadPlan.
    """
    between = length - module - sum(piers)
    if rack is not None:
        built = min(courses, between // (2 * rack))
        return LeadPlan(built, built * rack, module, rack, piers) if built >= 2 else None
    built = min(courses, between // module - 1)
    return LeadPlan(built, (built + 1) * module // 2, module, module // 2, piers) if built >= 2 else None


def measure_end_piers(wall: Wall) -> tuple[int, int]:
    """Widths of the piers that stand at a wall's left and right end, ticks; 0 where none does."""
    return (max((pier.width for pier in wall.piers if pier.left == 0), default=0),
            max((pier.width for pier in wall.piers if pier.right == wall.length), default=0))


def find_rack(masonry: Masonry) -> int | None:
    """How far the courses of a lead stand back in a bond with headers, so that none overhangs; None in other bonds.

    Half a brick in English and header bond, three quarters of a brick in the others, by drawing them.
    """
    if not masonry.one_brick:
        return None
    return masonry.module // 2 if masonry.bond in ("english", "header") else masonry.module * 3 // 4


def count_lead_courses(job: Job) -> int:
    """Courses in the leads of walls that meet: both legs of a corner are built equally high, as the shortest wall lets."""
    plans = [plan_leads(wall.length, job.masonry.module, job.masonry.leads, find_rack(job.masonry), measure_end_piers(wall))
             for wall in job.walls if {wall.left_end, wall.right_end} != {"end"}]
    return min((plan.courses for plan in plans if plan is not None), default=job.masonry.leads)


def find_lead(plan: LeadPlan | None, number: int, span: tuple[int, int], wall_length: int,
              piece: tuple[int, int], first: tuple[int, int] = (1, 1)) -> Lead | None:
    """The lead that a piece (left, right) of a run (left, right) belongs to, None in the fill.

    ``first`` is the lowest course at the wall's left and right end: leads begin there.
    """
    if plan is None:
        return None
    left, right = (plan.limit(number - lowest + 1) + pier + plan.module // 8
                   for lowest, pier in zip(first, plan.piers, strict=True))
    if span[0] == 0 and piece[1] <= left:
        return "left"
    if span[1] == wall_length and wall_length - piece[0] <= right:
        return "right"
    return None


def trim_leads(courses: tuple[Course, ...], plan: LeadPlan, length: int, first: tuple[int, int]) -> tuple[Course, ...]:
    """The courses with leads in which no unit stands out over the course below: beside piers and cuts, where joints fall
    otherwise, such a unit is laid with the fill. ``length`` is the wall's, ``first`` as for ``find_lead``.
    """
    trimmed: list[Course] = []
    reach: dict[Lead, int] = {}
    for course in courses:
        fallen: set[Piece] = set()
        for side, lowest in zip(SIDES, first, strict=True):
            led = [piece for piece in course.pieces if piece.lead == side]
            far = {piece: piece.right if side == "left" else length - piece.left for piece in led}
            most = length if (course.number - lowest) % plan.courses == 0 else reach.get(side, length)
            fallen |= {piece for piece, out in far.items() if out > most + OVERHANG}
            reach[side] = max((out for out in far.values() if out <= most + OVERHANG), default=0)
        trimmed.append(course if not fallen else replace(course, pieces=tuple(
            piece._replace(lead=None) if piece in fallen else piece for piece in course.pieces)))
    return tuple(trimmed)
