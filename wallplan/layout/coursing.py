"""Courses from a height: on the gauge, with beds opened or closed a little, or with one half-high or ripped course.

A course's ``bottom`` is the underside of its bed joint; the unit stands on the bed and reaches ``top``.
"""

from __future__ import annotations

from typing import Literal, NamedTuple

from wallplan.catalogue.unit import Unit
from wallplan.lengths import TICKS_PER_MM
from wallplan.plan.job import Masonry, Wall

Kind = Literal["regular", "half-high", "ripped"]

THINNEST_RIP = 25 * TICKS_PER_MM
"""A rip lower than this breaks in the saw or under the next course; common practice, no source."""


class Row(NamedTuple):
    """One course before its pieces: number, heights, and the height of its units."""

    number: int
    bottom: int
    top: int
    unit_height: int
    kind: Kind

    @property
    def bed(self) -> int:
        """Bed joint under the course."""
        return self.top - self.bottom - self.unit_height


def bed_range(masonry: Masonry) -> tuple[int, int]:
    """Tightest and widest bed joint: the plan's joint range, and always the bed that the gauge itself leaves."""
    bed = masonry.unit.bed_joint
    return min(masonry.tightest_joint, bed), max(masonry.widest_joint, bed)


def set_coursing(wall: Wall, masonry: Masonry) -> tuple[Row, ...]:
    """The courses of a wall, from course 1 up, closing its height, or that of the walls it is laid with, to the tick."""
    unit, height = masonry.unit, wall.height if wall.laid_with is None else wall.laid_with.height
    count = max(1, round(height / unit.gauge))
    if unit.height_of_courses(count) == height:
        return _stack(unit, count, 0, None)
    low, high = bed_range(masonry)
    if low * count <= height - unit.height * count <= high * count:
        return _share_out(unit, height, count)
    odd = _odd_course(unit, height)
    if odd is None:
        return _share_out(unit, height, count)
    full, odd_height, kind = odd
    choices = [_stack(unit, full, odd_height, (place, kind)) for place in ("first", "last")]
    return max(choices, key=lambda rows: _on_coursing(rows, wall))


def _odd_course(unit: Unit, height: int) -> tuple[int, int, Kind] | None:
    full = height // unit.gauge
    while full and unit.height_of_courses(full) > height:
        full -= 1
    rest = height - unit.height_of_courses(full) - unit.bed_joint
    if unit.half_high is not None and abs(rest - unit.half_high) <= 2:
        return full, unit.half_high, "half-high"
    return (full, rest, "ripped") if rest >= THINNEST_RIP else None


def _stack(unit: Unit, full: int, odd_height: int, odd: tuple[str, Kind] | None) -> tuple[Row, ...]:
    heights: list[tuple[int, Kind]] = [(unit.height, "regular")] * full
    if odd is not None:
        heights.insert(0 if odd[0] == "first" else full, (odd_height, odd[1]))
    rows, bottom, regular, lifted = [], 0, 0, 0
    for number, (unit_height, kind) in enumerate(heights, start=1):
        if kind == "regular":
            regular += 1
        else:
            lifted = unit_height + unit.bed_joint
        top = unit.height_of_courses(regular) + lifted
        rows.append(Row(number, bottom, top, unit_height, kind))
        bottom = top
    return tuple(rows)


def _share_out(unit: Unit, height: int, count: int) -> tuple[Row, ...]:
    """Every bed opened or closed alike, so that ``count`` courses close the height."""
    tops = [height * number // count for number in range(count + 1)]
    return tuple(Row(n, tops[n - 1], tops[n], unit.height, "regular") for n in range(1, count + 1))


def _on_coursing(rows: tuple[Row, ...], wall: Wall) -> int:
    lines = {row.top for row in rows} | {0}
    bed = rows[0].bed
    own = [level for opening in wall.openings for level in (opening.bottom, opening.top)]
    levels = own if wall.laid_with is None else wall.laid_with.levels
    return sum(any(line <= level <= line + bed for line in lines) for level in levels)
