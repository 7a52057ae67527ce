"""How the days fall: which courses are laid on which day, the batches, and what is due with them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from wallplan.layout.model import Layout, WallLayout
from wallplan.lists.order.counted import pieces_in
from wallplan.lists.order.dues import find_dues
from wallplan.lists.order.figures import settle
from wallplan.lists.order.line import DayRow
from wallplan.lists.order.pours import plan_pours
from wallplan.plan.job import Job

STACK_BOND = Fraction(92, 100)
"""Stack bond is laid 8 % slower: NCMA TEK 4-1A, https://masonryandhardscapes.org/resource/tek-04-01a."""

OUTPUT = {"block": (Fraction(100), Fraction(180)), "brick": (Fraction(300), Fraction(400))}
"""Units that a mason lays in a day, low and high. Block: from memory. Brick: face brick in an old handbook,
https://chestofbooks.com/architecture/Building-Construction-V4/Brickwork.html. The NCMA laboratory's 75.3 block an hour
(https://masonrymagazine.com/?pageID=25602) is laying to a ready line, without leads or openings."""

MOST_DAYS = 10_000


def find_output(job: Job) -> tuple[Fraction, Fraction]:
    """Units a day that the whole crew lays, low and high: the plan's figures, or usual ones for its units and bond."""
    if job.order.output is not None:
        low, high = job.order.output
    else:
        low, high = OUTPUT[job.masonry.unit.kind]
        if job.masonry.bond == "stack":
            low, high = low * STACK_BOND, high * STACK_BOND
    return low * job.order.masons, high * job.order.masons


@dataclass
class _Stand:
    """Where a wall stands: the course that comes next (from 0), how many of its pieces are laid; and how it stood in the
    morning, with the height from which the day's rise counts. ``counts`` are the pieces of each course, ``shapes``
    what shapes they have."""

    wall: WallLayout
    counts: tuple[int, ...]
    shapes: tuple[frozenset[str], ...]
    next: int = 0
    begun: int = 0
    morning: tuple[int, int] = (0, 0)
    risen: int = 0
    units: int = 0

    @property
    def owed(self) -> int:
        """Pieces of the next course that are still to be laid."""
        return self.counts[self.next] - self.begun

    @property
    def done(self) -> bool:
        """Whether no course is left."""
        return self.next == len(self.wall.courses)

    def wake(self) -> None:
        """Begin a day."""
        self.morning, self.units = (self.next, self.begun), 0
        self.risen = 0 if self.done else self.wall.courses[self.next].bottom

    def may_rise(self, day_height: int) -> bool:
        """Whether the next course still belongs to this day; the first one always does."""
        return not self.done and (self.next == self.morning[0]
                                  or self.wall.courses[self.next].top - self.risen <= day_height)

    def lay(self, units: int) -> None:
        """Lay pieces of the next course."""
        self.units += units
        if units == self.owed:
            self.next, self.begun = self.next + 1, 0
        else:
            self.begun += units


def plan_days(layout: Layout, a_day: Fraction, batches_a_unit: Fraction) -> tuple[DayRow, ...]:
    """A row for each day and wall; () for no courses. A course is finished on the day it is begun, unless it takes days.

    Walls that meet rise together, the lowest one next; walls that stand apart follow one another. ``a_day`` is units
    that the crew lays in a day, at least one; ``batches_a_unit`` batches of mortar to a unit.
    """
    groups = [[_stand(layout.walls[index]) for index in group] for group in group_walls(layout)]
    rows: list[DayRow] = []
    day, whole = 0, max(1, int(a_day))
    while any(not stand.done for group in groups for stand in group) and day < MOST_DAYS:
        day += 1
        room = whole
        for group in groups:
            for stand in group:
                stand.wake()
            room = _lay(group, room, whole, layout.job.order.day_height)
            rows += [_row(day, stand, batches_a_unit, layout.job) for stand in group if stand.units]
    return _finish(layout, rows)


def _stand(wall: WallLayout) -> _Stand:
    return _Stand(wall, tuple(len(pieces_in(course, wall)) for course in wall.courses),
                  tuple(frozenset(piece.shape for piece in course.pieces) for course in wall.courses))


def _lay(group: Sequence[_Stand], room: int, whole: int, day_height: int) -> int:
    """Courses while there is room in the day and the walls may rise; the room that is left."""
    while rising := [stand for stand in group if stand.may_rise(day_height)]:
        stand = min(rising, key=lambda stand: stand.next)
        if stand.owed > room:
            if room == whole:
                stand.lay(room)
                return 0
            break
        room -= stand.owed
        stand.lay(stand.owed)
    return room


def group_walls(layout: Layout) -> tuple[tuple[int, ...], ...]:
    """Walls that share pieces, by their place in the plan; a wall that stands alone is a group of its own."""
    place = {wall.wall.name: index for index, wall in enumerate(layout.walls)}
    head = list(range(len(layout.walls)))
    for index, wall in enumerate(layout.walls):
        for name in {piece.of for course in wall.courses for piece in course.pieces} & place.keys():
            one, other = head[index], head[place[name]]
            head = [min(one, other) if at in (one, other) else at for at in head]
    return tuple(tuple(index for index, at in enumerate(head) if at == first) for first in sorted(set(head)))


def _row(day: int, stand: _Stand, batches: Fraction, job: Job) -> DayRow:
    wall, first = stand.wall, stand.morning[0]
    laid = slice(first, stand.next + (1 if stand.begun else 0))
    courses = wall.courses[laid]
    bottom = wall.courses[first - 1].top if first else 0
    height = wall.courses[stand.next - 1].top if stand.next > first else bottom
    return DayRow(day, wall.wall.name, 0, (courses[0].number, courses[-1].number), stand.units,
                  settle(stand.units * batches, 1), bottom, height, None,
                  find_dues(wall, tuple(zip(courses, stand.shapes[laid], strict=True)), job))


def _finish(layout: Layout, rows: Sequence[DayRow]) -> tuple[DayRow, ...]:
    """The rows with each wall's lifts counted and its pours in them, day by day again."""
    finished: list[DayRow] = []
    for wall in layout.walls:
        own = [row for row in rows if row.wall == wall.wall.name]
        counted = [replace(row, lift=lift) for lift, row in enumerate(own, start=1)]
        finished += plan_pours(wall, counted, layout.job)
    place = {wall.wall.name: number for number, wall in enumerate(layout.walls)}
    return tuple(sorted(finished, key=lambda row: (row.day, place[row.wall])))
