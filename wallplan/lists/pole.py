"""Layout -> story pole: the top of every course, sills, heads and bond beams above the datum; and, for a sill or head off
the coursing, what one gauge and two gauges would make of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

from wallplan.catalogue.unit import Unit
from wallplan.layout.model import Layout, WallLayout
from wallplan.plan.coursing import bed_range
from wallplan.plan.job import Masonry, Opening, Wall


@dataclass(frozen=True)
class Level:
    """A height that is marked on the pole beside the courses, in ticks, and what is there; words alone where ``mark`` is
    False."""

    height: int
    words: str
    mark: bool = True


@dataclass(frozen=True)
class Gauge:
    """A stretch of equal courses: how many, the height of each with its bed, the bed, in ticks, and whether the bed is
    within the limits."""

    courses: int
    height: int
    bed: int
    held: bool


@dataclass(frozen=True)
class GaugeAnswers:
    """For an opening off the coursing: one gauge from the datum to its head, by how much its sill then misses the nearest
    course (ticks, above is more than nought), and two gauges that meet at the sill; None where there is no sill.

    ``sill`` and ``head`` are the opening's heights, ticks. ``fill`` is the lowest course of one gauge that leaves at least a
    unit's height under the sill, and what it leaves, ticks: room for a sill laid on it. None where the sill is met, or is
    too low.
    """

    opening: str
    wall: str
    sill: int
    head: int
    one: Gauge
    sill_off: int
    below: Gauge | None
    above: Gauge | None
    fill: tuple[int, int] | None = None

    @property
    def meeting(self) -> tuple[Gauge, ...]:
        """The gauges that meet sill and head with every bed within limits, from the datum up: one if one does, else two;
        () where neither does."""
        if self.one.held and not self.sill_off:
            return (self.one,)
        two = tuple(gauge for gauge in (self.below, self.above) if gauge is not None)
        return two if two and all(gauge.held for gauge in two) else ()


@dataclass(frozen=True)
class Pole:
    """One pole for walls with the same courses. ``tops`` are the courses' heights from course 1 up, ``bed`` the bed joint as
    laid, ``limits`` the tightest and widest bed that is held; ``parts`` are the heights at which gauges end, where there are
    any of its own."""

    walls: tuple[WallLayout, ...]
    tops: tuple[int, ...]
    bed: int
    limits: tuple[int, int]
    levels: tuple[Level, ...]
    answers: tuple[GaugeAnswers, ...]
    parts: tuple[int, ...] = ()


def list_poles(layout: Layout) -> tuple[Pole, ...]:
    """The poles that a job needs, in the plan's order of walls; () for no walls."""
    groups: dict[tuple[int, ...], list[WallLayout]] = {}
    for wall in layout.walls:
        groups.setdefault(tuple(course.top for course in wall.courses), []).append(wall)
    return tuple(_make_pole(tops, tuple(walls), layout.job.masonry) for tops, walls in groups.items())


def _make_pole(tops: tuple[int, ...], walls: tuple[WallLayout, ...], masonry: Masonry) -> Pole:
    levels: dict[tuple[int, str], list[str]] = {}
    for wall in walls:
        for opening in wall.wall.openings:
            if opening.bottom:
                levels.setdefault((opening.bottom, "sill"), []).append(opening.name)
            levels.setdefault((opening.top, "head"), []).append(opening.name)
        for height, words in _list_turns(wall.wall):
            levels.setdefault((height, words), [])
        for number in wall.wall.bond_beams:
            levels.setdefault((tops[number - 1], "top of bond beam"), [])
    told = tuple(Level(height, " ".join((kind, ", ".join(dict.fromkeys(names)))).strip())
                 for (height, kind), names in sorted(levels.items()))
    bed = walls[0].bed
    answers = [answer for wall in walls for opening in wall.wall.openings
               if (answer := answer_gauges(opening, wall.wall.name, tops, bed, masonry)) is not None]
    alike = {(answer.one, answer.below, answer.above): answer for answer in reversed(answers)}
    return Pole(walls, tops, bed, bed_range(masonry), told, tuple(reversed(alike.values())))


def _list_turns(wall: Wall) -> list[tuple[int, str]]:
    """The levels of a wall's steps, its eaves and its ridges; [] for a rectangle."""
    if wall.outline is None:
        return []
    stretches = [(line, level, other) for line in (wall.outline.footing, wall.outline.top)
                 for (at, level), (to, other) in pairwise(line) if at < to]
    turns = [(level, "footing" if line is wall.outline.footing else "top")
             for line, level, other in stretches if level == other and level]
    slopes = [(level, other) for _, level, other in stretches if level != other]
    return [*turns, *((min(slope), "eaves") for slope in slopes), *((max(slope), "ridge") for slope in slopes)]


def answer_gauges(opening: Opening, wall: str, tops: tuple[int, ...], bed: int, masonry: Masonry) -> GaugeAnswers | None:
    """One gauge and two for an opening whose sill or head is off the coursing; None where both meet it.

    A sill may stand on a course or on the bed over it, as may a head (common practice, no source).
    """
    if all(_meets(level, tops, bed) for level in (opening.bottom, opening.top)):
        return None
    unit, limits = masonry.unit, bed_range(masonry)
    one = _choose_gauge(opening.top, unit, limits)
    if not opening.bottom:
        return GaugeAnswers(opening.name, wall, opening.bottom, opening.top, one, 0, None, None)
    landed = round(opening.bottom * one.courses / opening.top) * opening.top // one.courses
    off = opening.bottom - landed
    stopped = max(0, opening.bottom - unit.height) * one.courses // opening.top
    fill = (stopped, opening.bottom - stopped * opening.top // one.courses) if off and stopped else None
    return GaugeAnswers(opening.name, wall, opening.bottom, opening.top, one, off,
                        _choose_gauge(opening.bottom, unit, limits),
                        _choose_gauge(opening.top - opening.bottom, unit, limits), fill)


def _choose_gauge(height: int, unit: Unit, limits: tuple[int, int]) -> Gauge:
    """The number of courses whose beds come nearest to the unit's own; of those that leave a bed at all."""
    fewest = max(1, height // unit.gauge)
    found = [set_gauge(height, count, unit, limits) for count in (fewest, fewest + 1)]
    return min([gauge for gauge in found if gauge.bed > 0] or found[:1], key=lambda gauge: abs(gauge.bed - unit.bed_joint))


def set_gauge_pole(pole: Pole, answer: GaugeAnswers, tell: Callable[[Gauge], str]) -> Pole | None:
    """The pole that an opening off the coursing asks for, from the datum to its head; None where no gauges meet it.

    Each height is the nearest to the exact one, none a sum of rounded ones. ``tell`` puts a gauge in words.
    """
    gauges = answer.meeting
    ends = (answer.sill, answer.head) if len(gauges) == 2 else (answer.head,)
    tops, levels, bottom = list[int](), list[Level](), 0
    for gauge, end in zip(gauges, ends, strict=False):
        tops += [bottom + round((end - bottom) * number / gauge.courses) for number in range(1, gauge.courses + 1)]
        levels.append(Level((bottom + end) // 2, tell(gauge), mark=False))
        bottom = end
    if not tops:
        return None
    levels += [Level(height, f"{words} {answer.opening}") for height, words in ((answer.sill, "sill"), (answer.head, "head"))
               if height]
    told = tuple(sorted(levels, key=lambda level: level.height))
    return Pole(pole.walls, tuple(tops), gauges[0].bed, pole.limits, told, (), ends)


def _meets(level: int, tops: tuple[int, ...], bed: int) -> bool:
    return any(top <= level <= top + bed for top in (0, *tops))


def set_gauge(height: int, courses: int, unit: Unit, limits: tuple[int, int]) -> Gauge:
    """So many equal courses to a height. ValueError for no courses."""
    if courses < 1:
        raise ValueError(f"a gauge has at least one course, not {courses}")
    pitch = round(height / courses)
    bed = pitch - unit.height
    return Gauge(courses, pitch, bed, limits[0] <= bed <= limits[1])
