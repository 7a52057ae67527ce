"""Courses against the wall's outline: where each begins and ends on footing steps, top steps and slopes.

A bay is a stretch of a course that is laid at one height. Beside a step that is no whole course two bays of one course
meet. Where the step is low, a piece that bridges the riser is notched for it; else a joint stands between them: the lower
bay runs to the riser's face on a footing, the higher one to its own end at a top.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from typing import NamedTuple

from wallplan.layout.model import Notch, Rake
from wallplan.layout.spots import Namer, Spot
from wallplan.plan.coursing import FIRST_BED, THINNEST_RIP, Row, set_coursing
from wallplan.plan.job import Masonry, Outline, Place, Wall


class Bay(NamedTuple):
    """A stretch of a course: its ends, underside and top of its units over the datum, and how far slopes shorten its top
    at its left and its right end. Ticks."""

    left: int
    right: int
    low: int
    high: int
    rakes: tuple[int, int] = (0, 0)


def set_rows(wall: Wall, masonry: Masonry) -> tuple[Row, ...]:
    """The courses of a wall up to its highest place: those that close its level top, then on the gauge up the gables."""
    if wall.outline is None:
        return set_coursing(wall, masonry)
    coursed, unit = wall.outline.coursed, masonry.unit
    rows = list(set_coursing(replace(wall, height=coursed), masonry))
    if wall.height < coursed:
        standing = max((row.number for row in rows if row.bottom < wall.height and find_bays(wall, masonry, row)), default=0)
        return tuple(rows[:standing])
    base, more = rows[-1].top, 1
    while True:
        bottom, top = (base + unit.height_of_courses(count) for count in (more - 1, more))
        row = Row(rows[-1].number + 1, bottom, top, unit.height, "regular")
        if bottom >= wall.height or not find_bays(wall, masonry, row):
            return tuple(rows)
        rows.append(row)
        more += 1


def find_bays(wall: Wall, masonry: Masonry, row: Row, *, square: bool = False) -> tuple[Bay, ...]:
    """The bays of a course from left to right; one from end to end in a wall that is a rectangle, () where none is laid.

    ``square`` takes courses under a slope to go on to its foot.
    """
    low, high = row.bottom + row.bed, row.top
    if wall.outline is None:
        return (Bay(0, wall.length, low, high),)
    outline = wall.outline
    if square and outline.bonded_under is not None:
        outline = replace(outline, top=outline.bonded_under)
    parts = [bay for bay in _cut_parts(outline, masonry, row, square) if bay.right > bay.left]
    bays: list[Bay] = []
    for part in parts:
        if bays and bays[-1].right == part.left and bays[-1][2:4] == part[2:4]:
            bays[-1] = _join(bays[-1], part)
        else:
            bays.append(part)
    least = masonry.least_piece - masonry.joint
    return tuple(bay for bay in _part_bays(bays, wall.outline, masonry) if bay.right - bay.left >= least)


def _join(one: Bay, other: Bay) -> Bay:
    """Two parts of one bay; a slope over the whole of one goes on in the other."""
    left = one.rakes[0] + (other.rakes[0] if one.rakes[0] == one.right - one.left else 0)
    right = other.rakes[1] + (one.rakes[1] if other.rakes[1] == other.right - other.left else 0)
    return one._replace(right=other.right, rakes=(left, right))


def _cut_parts(outline: Outline, masonry: Masonry, row: Row, square: bool) -> Iterator[Bay]:
    """What is laid of a course between neighbouring places of the outline."""
    for left, right in pairwise(sorted({at for at, _ in (*outline.footing, *outline.top)})):
        (foot, _, _), (begin, end, peak) = _edge(outline.footing, left, right), _edge(outline.top, left, right)
        low = _settle_low(foot, masonry, row)
        if low is None:
            continue
        if begin == end:
            high = _settle_high(begin, low, masonry, row)
            if high is not None:
                yield Bay(left, right, low, high)
        elif square and peak > low:
            yield Bay(left, right, low, row.top)
        elif not square and max(begin, end) > low:
            yield _slope(Bay(left, right, low, row.top), begin, end)


def _edge(line: tuple[Place, ...], left: int, right: int) -> tuple[int, int, int]:
    """Heights of a line just right of ``left`` and just left of ``right``, between which it is straight, and its highest."""
    for (begin, low), (end, high) in pairwise(line):
        if begin <= left and right <= end and begin < end:
            first, last = (low + round((high - low) * (at - begin) / (end - begin)) for at in (left, right))
            return first, last, max(low, high)
    raise ValueError("an outline runs from the wall's left end to its right one")


def _slope(part: Bay, begin: int, end: int) -> Bay:
    """A part under a slope, cut back to where the slope leaves its bottom, with how much shorter its top is."""
    rise, run = end - begin, part.right - part.left

    def across(level: int) -> int:
        return min(max(part.left + round((level - begin) * run / rise), part.left), part.right)

    foot, top = across(part.low), across(part.high)
    if rise > 0:
        return part._replace(left=foot, rakes=(top - foot, 0))
    return part._replace(right=foot, rakes=(0, foot - top))


def _settle_low(foot: int, masonry: Masonry, row: Row) -> int | None:
    """The underside of a course's units over a footing: on its line, half-high, or ripped; None where none can be laid."""
    low = row.bottom + row.bed
    if low - foot >= min(FIRST_BED[0], row.bed):
        return low
    half, bed = masonry.unit.half_high, row.bed
    if half is not None and FIRST_BED[0] <= row.top - half - foot <= FIRST_BED[1]:
        return row.top - half
    return foot + bed if row.top - foot - bed >= THINNEST_RIP else None


def _settle_high(top: int, low: int, masonry: Masonry, row: Row) -> int | None:
    """The top of a course's units under a level top: its own, half-high, or ripped; None where none can be laid."""
    slack, half = row.bed // 2, masonry.unit.half_high
    if top >= row.top - slack:
        return row.top
    if half is not None and low == row.bottom + row.bed and abs(low + half - top) <= slack:
        return low + half
    return top if top - low >= THINNEST_RIP else None


def _part_bays(bays: list[Bay], outline: Outline, masonry: Masonry) -> Iterator[Bay]:
    """Bays with the joint between two that meet taken from the one that ends there."""
    parted = list(bays)
    for place, (one, other) in enumerate(pairwise(bays)):
        if one.right != other.left or _bridges(one, other, masonry):
            continue
        if (one.low < other.low) if one.low != other.low else (one.high > other.high):
            parted[place + 1] = parted[place + 1]._replace(left=other.left + masonry.joint)
        else:
            parted[place] = parted[place]._replace(right=one.right - masonry.joint)
    yield from parted


def _bridges(one: Bay, other: Bay, masonry: Masonry) -> bool:
    """Whether a notched piece bridges two bays: both tops are level, and no half-high unit stands on the higher step."""
    heights = [bay.high - bay.low for bay in (one, other)]
    halves = masonry.unit.half_high in heights
    return one.high == other.high and not halves and 2 * abs(one.low - other.low) <= masonry.unit.height


def join_bays(bays: tuple[Bay, ...]) -> tuple[Bay, ...]:
    """Bays that pieces bridge as one; its underside is the lowest."""
    joined: list[Bay] = []
    for bay in bays:
        if joined and joined[-1].right == bay.left:
            last = joined[-1]
            joined[-1] = last._replace(right=bay.right, low=min(last.low, bay.low), rakes=(last.rakes[0], bay.rakes[1]))
        else:
            joined.append(bay)
    return tuple(joined)


class Riser(NamedTuple):
    """Where courses end against a step of the footing, as the place of a head joint, and the course that lies over it.

    ``jointed`` is True where a head joint stands on the riser: half-high units beside full ones.
    """

    at: int
    over: int
    jointed: bool


def find_risers(wall: Wall, masonry: Masonry, rows: tuple[Row, ...], bays: tuple[tuple[Bay, ...], ...]) -> tuple[Riser, ...]:
    """The risers of a wall's footing; () for a level one."""
    found = []
    for (at, before), (_, after) in pairwise(wall.outline.footing if wall.outline else ()):
        if before == after:
            continue
        jointed = False
        for row, here in zip(rows, bays, strict=True):
            if row.top <= max(before, after):
                continue
            if any(bay.left < at < bay.right for bay in join_bays(here)):
                found.append(Riser(at - masonry.joint if before > after else at, row.number, jointed))
                break
            jointed = True
    return tuple(found)


def rake_piece(outline: Outline, left: int, right: int, bay: Bay) -> tuple[int, Rake | None]:
    """The height of a piece of a bay and how a slope cuts it; (the bay's height, None) for a square one."""
    high, line = bay.high - bay.low, _draw_out(outline.top, left, right)
    places = [(left, 0), (right, 0)]
    for (begin, low), (end, top) in pairwise(line):
        if begin < end and begin < right and end > left:
            places += [(at, low + round((top - low) * (at - begin) / (end - begin)))
                       for at in (max(left, begin), min(right, end))]
            if low != top:
                across = begin + round((bay.high - low) * (end - begin) / (top - low))
                places += [(across, bay.high)] if max(left, begin) < across < min(right, end) else []
    heights: dict[int, int] = {}
    for at, level in places:
        heights[at] = max(heights.get(at, 0), min(level - bay.low, high))
    tallest = max(heights.values())
    if min(heights.values()) >= high:
        return high, None
    level_top = [at - left for at, level in heights.items() if level == tallest]
    return tallest, Rake(max(heights[left], 0), max(heights[right], 0), min(level_top), max(level_top))


def _draw_out(line: tuple[Place, ...], left: int, right: int) -> tuple[Place, ...]:
    """A line of an outline drawn out level at its ends, as far as a piece reaches behind an inside corner."""
    begin, end = line[0][0], line[-1][0]
    first, last = [level for at, level in line if at == begin][-1], next(level for at, level in line if at == end)
    before = ((left, first), (begin, first)) if left < begin else ()
    after = ((end, last), (right, last)) if right > end else ()
    return (*before, *line, *after)


def fit_to_bays(spots: list[Spot], outline: Outline, row: Row, bays: tuple[Bay, ...], namer: Namer) -> list[Spot]:
    """The pieces of one run at the height of their bay, ripped or half-high where it asks for that, raked under slopes."""
    fitted = []
    for spot in spots:
        under = [bay for bay in bays if bay.left < spot.right and bay.right > spot.left]
        bay = min(under or bays, key=lambda bay: bay.low)
        height, rake = rake_piece(outline, spot.left, spot.right, bay) if any(bay.rakes) else (bay.high - bay.low, None)
        notch = _notch(spot, under, bay)
        piece = "cut" if rake or notch else namer.name(spot.length, height)
        fitted.append(spot._replace(rise=bay.low - row.bottom, height=height, piece=piece, rake=rake, notch=notch))
    return fitted


def _notch(spot: Spot, under: list[Bay], lowest: Bay) -> Notch | None:
    """What a piece over two bays leaves out over the higher one; over more than two, over the first."""
    for bay in under:
        if bay.low > lowest.low:
            return Notch(max(bay.left, spot.left) - spot.left, min(bay.right, spot.right) - spot.left, bay.low - lowest.low)
    return None


def reaches_ends(bays: tuple[Bay, ...], length: int) -> tuple[tuple[int, int] | None, tuple[int, int] | None]:
    """Underside and top of what is laid at a wall's left and right end, None where nothing is."""
    left = next(((bay.low, bay.high) for bay in bays if bay.left == 0), None)
    return left, next(((bay.low, bay.high) for bay in bays if bay.right == length), None)


def levels_between(bays: tuple[Bay, ...], row: Row, left: int, right: int) -> tuple[int, int]:
    """Underside and top of a course's units between two distances, over the datum; the course's own where none are."""
    return next(((bay.low, bay.high) for bay in bays if bay.left < right and bay.right > left),
                (row.bottom + row.bed, row.bottom + row.bed + row.unit_height))
