"""Leads: which pieces stand in the racked-back ends that are built first.

A lead at a wall's end is racked back half a unit a course on one side (NAVEDTRA 14043); a lead that is racked
on both sides, or round a corner, loses one whole unit a course: n courses, n(n + 1)/2 units.
"""

from __future__ import annotations

from typing import NamedTuple

from wallplan.layout.model import Lead
from wallplan.plan.job import Job


class LeadPlan(NamedTuple):
    """Leads of a wall: courses in a lift, and how far the lead reaches in the lift's first course."""

    courses: int
    length: int
    module: int

    def limit(self, number: int) -> int:
        """How far from the wall's end the lead reaches in a course (counted from 1 at the foot of the wall)."""
        return self.length - (number - 1) % self.courses * self.module // 2


def plan_leads(length: int, module: int, courses: int) -> LeadPlan | None:
    """Leads for a wall of ``length`` ticks: the courses asked for, or as many as leave a unit between two leads.

    None where the wall is too short for leads of two courses: it is laid by the level alone.
    """
    fitting = (length - module) // module - 1
    built = min(courses, fitting)
    return LeadPlan(built, (built + 1) * module // 2, module) if built >= 2 else None


def count_lead_courses(job: Job) -> int:
    """Courses in the leads of walls that meet: both legs of a corner are built equally high, as the shortest wall lets."""
    plans = [plan_leads(wall.length, job.masonry.module, job.masonry.leads) for wall in job.walls
             if {wall.left_end, wall.right_end} != {"end"}]
    return min((plan.courses for plan in plans if plan is not None), default=job.masonry.leads)


def find_lead(plan: LeadPlan | None, number: int, span: tuple[int, int], wall_length: int,
              piece: tuple[int, int], first: tuple[int, int] = (1, 1)) -> Lead | None:
    """The lead that a piece (left, right) of a run (left, right) belongs to, None in the fill.

    ``first`` is the lowest course at the wall's left and right end: leads begin there.
    """
    if plan is None:
        return None
    left, right = (plan.limit(number - lowest + 1) + plan.module // 8 for lowest in first)
    if span[0] == 0 and piece[1] <= left:
        return "left"
    if span[1] == wall_length and wall_length - piece[0] <= right:
        return "right"
    return None


def count_racked_lead(units: int) -> tuple[int, int]:
    """Courses and units of a lead racked half a unit at both ends, whose first course has so many units.

    ValueError where ``units`` is under one.
    """
    if units < 1:
        raise ValueError(f"a lead begins with at least one unit, not {units}")
    return units, units * (units + 1) // 2
