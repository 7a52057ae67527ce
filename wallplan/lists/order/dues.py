"""What falls due with a day's courses: leads, lintels, bond beams, scaffold, bracing."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wallplan.layout.explain import print_courses
from wallplan.layout.model import Course, WallLayout
from wallplan.lengths import TICKS_PER_FOOT, print_length
from wallplan.lists.order.cells import CHANNELS
from wallplan.lists.order.line import Due
from wallplan.plan.job import Job, Opening

BRACED = 8 * TICKS_PER_FOOT
"""Walls over 8 ft are braced until permanent supports stand: OSHA 29 CFR 1926.706(b), as restated."""

ZONE_BEYOND_HEIGHT = 4 * TICKS_PER_FOOT
"""Limited access zone: as wide as the wall is high and 4 ft more, on the unscaffolded side: OSHA 29 CFR 1926.706(a)."""


LINTELS = frozenset({"lintel", "precast"})
"""Shapes that are set over an opening: units, or one piece."""


def find_dues(wall: WallLayout, courses: Sequence[tuple[Course, frozenset[str]]], job: Job) -> tuple[Due, ...]:
    """What is due with these courses, each with the shapes that its pieces have; () for nothing, or for no courses."""
    return tuple(_find(wall, courses, job)) if courses else ()


def _find(wall: WallLayout, courses: Sequence[tuple[Course, frozenset[str]]], job: Job) -> Iterator[Due]:
    leads = [course.number for course, _ in courses if (course.number - 1) % job.masonry.leads == 0]
    if leads:
        yield Due("leads", _numbers(leads), f"leads first from {print_courses(leads)}")
    carried = [course.number for course, shapes in courses if shapes & LINTELS or _carries_steel(wall, course)]
    if carried:
        yield Due("lintels", _numbers(carried), f"lintels: {print_courses(carried)}")
    beams = [course.number for course, shapes in courses if "bond beam" in shapes]
    if beams:
        yield Due("bond beam", _numbers(beams), f"bond beam: {print_courses(beams)}")
    channels = [course.number for course, shapes in courses if shapes.intersection(CHANNELS)]
    if channels:
        yield Due("steel", _numbers(channels), "steel as the designer says")
    height = courses[-1][0].top
    if height > job.order.scaffold:
        platform = (height - 1) // job.order.scaffold * job.order.scaffold
        yield Due("scaffold", print_length(platform, job.measure), f"scaffold: platform at {_print(platform, job)}")
    if wall.wall.height > BRACED and height > BRACED:
        yield Due("brace", "yes", "brace")


def _carries_steel(wall: WallLayout, course: Course) -> bool:
    """Whether a steel lintel is set with a course, on the course under it."""
    return any(_rests(opening, course) for opening in wall.wall.openings if opening.lintel == "steel")


def _rests(opening: Opening, course: Course) -> bool:
    """Whether the opening's head lies in this course or on the bed under it."""
    return course.bottom <= opening.top < course.top


def _numbers(courses: Sequence[int]) -> str:
    return ", ".join(map(str, courses[:4])) + (" ..." if len(courses) > 4 else "")


def _print(ticks: int, job: Job) -> str:
    return print_length(ticks, job.measure) + (" mm" if job.measure == "metric" else "")
