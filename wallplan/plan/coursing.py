"""Courses from a height: on the gauge, with beds opened or closed a little, or with one half-high or ripped course.

A course's ``bottom`` is the underside of its bed joint; the unit stands on the bed and reaches ``top``.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Literal, NamedTuple

from wallplan.catalogue.unit import Unit
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM
from wallplan.plan.job import Masonry, Outline, Wall

Kind = Literal["regular", "half-high", "ripped"]

THINNEST_RIP = 25 * TICKS_PER_MM
"""A rip lower than this breaks in the saw or under the next course; common practice, no source."""


FIRST_BED = (TICKS_PER_INCH // 4, TICKS_PER_INCH * 3 // 4)
"""Thinnest and thickest bed on a footing: TMS 602, as summarised by the Mason Contractors Association."""


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
    if wall.laid_with is not None:
        return close_height(wall.laid_with.height, wall.laid_with.levels, masonry)
    levels = tuple(level for opening in wall.openings for level in (opening.bottom, opening.top))
    return close_height(wall.height, levels, masonry, wall.outline)


def close_height(height: int, levels: tuple[int, ...], masonry: Masonry, outline: Outline | None = None) -> tuple[Row, ...]:
    """The courses that close a height, in ticks, from course 1 up.

    Where one is half-high or ripped, it is the first or the last, as courses meet more levels of the outline so, and then as
    more sills and heads, ``levels``, lie on course lines.
    """
    unit = masonry.unit
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
    return max(choices, key=lambda rows: (_count_met(rows, outline, masonry), _on_coursing(rows, levels)))


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


def meets_footing(rows: tuple[Row, ...], level: int, masonry: Masonry) -> bool:
    """Whether a course stands on a footing at a level: its bed within the limits of a first bed, half-high units, or a rip.
    True over the highest course."""
    unit = masonry.unit
    for place, row in enumerate(rows):
        if row.bottom <= level < row.top:
            room, above = row.top - level, rows[place + 1].bed if place + 1 < len(rows) else unit.bed_joint
            on_line = row.bottom + row.bed - level >= min(FIRST_BED[0], row.bed) or room + above <= FIRST_BED[1]
            half = unit.half_high is not None and FIRST_BED[0] <= room - unit.half_high <= FIRST_BED[1]
            return on_line or half or room - row.bed >= THINNEST_RIP
    return True


def meets_top(rows: tuple[Row, ...], level: int, masonry: Masonry) -> bool:
    """Whether a course ends at a level top: on its line, half-high units, or a rip. True over the highest course."""
    for row in rows:
        if row.bottom < level <= row.top:
            slack, high, half = row.bed // 2, level - row.bottom - row.bed, masonry.unit.half_high
            on_line = level - row.bottom <= slack or row.top - level <= slack
            return on_line or (half is not None and abs(high - half) <= slack) or high >= THINNEST_RIP
    return True


def _count_met(rows: tuple[Row, ...], outline: Outline | None, masonry: Masonry) -> int:
    if outline is None:
        return 0
    feet = sum(meets_footing(rows, level, masonry) for _, level in outline.footing)
    return feet + sum(meets_top(rows, low, masonry) for (_, low), (_, high) in pairwise(outline.top) if low == high)


def _on_coursing(rows: tuple[Row, ...], levels: tuple[int, ...]) -> int:
    lines = {row.top for row in rows} | {0}
    bed = rows[0].bed
    return sum(any(line <= level <= line + bed for line in lines) for level in levels)
