"""How the days fall: which courses are laid on which day, the batches, and what is due with them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from wallplan.layout.explain import print_courses
from wallplan.layout.model import Course, Layout, WallLayout
from wallplan.lengths import TICKS_PER_FOOT
from wallplan.lists.order.cells import CHANNELS
from wallplan.lists.order.counted import pieces_in
from wallplan.lists.order.figures import settle
from wallplan.lists.order.line import DayRow
from wallplan.plan.job import Job

OUTPUT = {"block": (Fraction(100), Fraction(180)), "brick": (Fraction(300), Fraction(400))}
"""Units that a mason lays in a day, low and high. Block: from memory. Brick: face brick in an old handbook,
https://chestofbooks.com/architecture/Building-Construction-V4/Brickwork.html. The NCMA laboratory's 75.3 block an hour
(https://masonrymagazine.com/?pageID=25602) is laying to a ready line, without leads or openings."""

SCAFFOLD = 5 * TICKS_PER_FOOT
"""Above this a mason lays from a scaffold: common practice, no source."""

BRACED = 8 * TICKS_PER_FOOT
"""Walls over 8 ft are braced until permanent supports stand: OSHA 29 CFR 1926.706(b), as restated."""

ZONE_BEYOND_HEIGHT = 4 * TICKS_PER_FOOT
"""Limited access zone: as wide as the wall is high and 4 ft more, on the unscaffolded side: OSHA 29 CFR 1926.706(a)."""

MOST_DAYS = 10_000


def find_output(job: Job) -> tuple[Fraction, Fraction]:
    """Units a day that the whole crew lays, low and high."""
    low, high = OUTPUT[job.masonry.unit.kind] if job.order.output is None else job.order.output
    return low * job.order.masons, high * job.order.masons


@dataclass(frozen=True)
class _Stand:
    """Where a wall stands: the course that comes next (from 0), pieces of it already laid, its height at the day's start."""

    next: int = 0
    begun: int = 0
    risen: int = 0


def plan_days(layout: Layout, a_day: Fraction, batches_a_unit: Fraction) -> tuple[DayRow, ...]:
    """A row for each day and wall; () for no courses. A course is finished on the day it is begun, unless it takes days.

    ``a_day`` is units that the crew lays in a day, at least one; ``batches_a_unit`` batches of mortar to a unit.
    """
    stands = {index: _Stand() for index, wall in enumerate(layout.walls) if wall.courses}
    rows: list[DayRow] = []
    day = 0
    while stands and day < MOST_DAYS:
        day += 1
        room = whole = max(1, int(a_day))
        for index in list(stands):
            wall, stand = layout.walls[index], stands[index]
            reached, units = _lay(wall, stand, room, whole, layout.job.order.day_height)
            if units:
                room -= units
                rows.append(_row(day, wall, stand, reached, units, batches_a_unit, layout.job))
            if reached.next == len(wall.courses):
                del stands[index]
            else:
                stands[index] = replace(reached, risen=wall.courses[reached.next].bottom)
    return tuple(rows)


def _lay(wall: WallLayout, stand: _Stand, room: int, whole: int, day_height: int) -> tuple[_Stand, int]:
    """Courses while there is room in the day and the wall may rise: where it stands then, and the units laid."""
    reached, laid = stand, 0
    while reached.next < len(wall.courses):
        course = wall.courses[reached.next]
        count = len(pieces_in(course, wall))
        owed = count - reached.begun
        if course.top - stand.risen > day_height and reached.next > stand.next:
            break
        if owed > room - laid:
            if count > whole and laid == 0 and room == whole:
                return replace(reached, begun=reached.begun + room), room
            break
        laid += owed
        reached = replace(reached, next=reached.next + 1, begun=0)
    return reached, laid


def _row(day: int, wall: WallLayout, before: _Stand, after: _Stand, units: int, batches: Fraction, job: Job) -> DayRow:
    last = after.next if after.begun else after.next - 1
    courses = wall.courses[before.next:last + 1]
    finished = courses[:-1] if after.begun else courses
    height = finished[-1].top if finished else wall.courses[before.next].bottom
    return DayRow(day, wall.wall.name, (courses[0].number, courses[-1].number), units, settle(units * batches, 1), height,
                  tuple(_find_due(wall, courses, height, job)))


def _find_due(wall: WallLayout, courses: Sequence[Course], height: int, job: Job) -> Iterator[str]:
    leads = [course.number for course in courses if (course.number - 1) % job.masonry.leads == 0]
    if leads:
        yield f"leads first from {print_courses(leads)}"
    for words, shapes in (("lintels", ("lintel", "precast")), ("bond beam", ("bond beam",))):
        numbers = [course.number for course in courses if any(piece.shape in shapes for piece in course.pieces)]
        if numbers:
            yield f"{words}: {print_courses(numbers)}"
    if any(piece.shape in CHANNELS for course in courses for piece in course.pieces):
        yield "steel as the designer says, then grout"
    if height > SCAFFOLD:
        yield "scaffold"
    if wall.wall.height > BRACED and height > BRACED:
        yield "brace"
