"""Coursing: beds within their limits, courses level and closing the wall's height, no piece taller than its unit."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import numpy as np

from wallplan.findings import Finding
from wallplan.lengths import TICKS_PER_INCH
from wallplan.rules.as_laid import ROUNDING, AsLaid, Ints
from wallplan.rules.reporting import Break, exact, report_breaks, report_held, size
from wallplan.rules.sources import BEDS, COURSING

FIRST_BED = (TICKS_PER_INCH // 4, TICKS_PER_INCH * 3 // 4)
"""Tightest and widest bed under course 1; TMS 602, as BEDS cites it."""


def check_coursing(wall: AsLaid) -> tuple[Finding, ...]:
    """Beds and heights of the courses, and how many pieces are ripped. A wall without pieces: held."""
    if not len(wall.left):
        return (report_held(wall, "coursing", BEDS, "no pieces", "no limit"),)
    beds = _measure_beds(wall)
    broken = (
        *report_breaks(wall, "coursing", BEDS, _poor_beds(wall, *beds)),
        *report_breaks(wall, "coursing", COURSING, [
            *(() if wall.outline else _open_top(wall)), *_off_line(wall), *_too_tall(wall)]),
    )
    low, high = wall.beds
    limit = f"{size(wall, low + ROUNDING)} to {size(wall, high - ROUNDING)}"
    thickness = beds[1][beds[1] <= wall.hole]
    reached = f"{size(wall, thickness.min())} to {size(wall, thickness.max())}" if len(thickness) else "no beds"
    return broken or (report_held(wall, "coursing", BEDS, f"beds {reached}{_tell_rips(wall)}", limit),)


def _measure_beds(wall: AsLaid) -> tuple[Ints, Ints]:
    """Pieces and the beds under them: for an even course its first piece tells all, where the one below is even too."""
    rows = wall.rows
    uneven = set(np.unique(rows.course[rows.layered]).tolist())
    pieces, beds = list[Ints](), list[Ints]()
    below: int | None = None
    for course in np.flatnonzero(np.diff(wall.first)).tolist():
        first = int(wall.first[course])
        if below is None and course not in uneven:
            found = np.array([first]), wall.bottom[[first]]
        elif below is not None and course not in uneven and below not in uneven:
            found = np.array([first]), wall.bottom[[first]] - wall.top[wall.first[below]]
        else:
            found = _measure_uneven(wall, course, below)
        pieces.append(found[0])
        beds.append(found[1])
        below = course
    return np.concatenate(pieces), np.concatenate(beds)


def _measure_uneven(wall: AsLaid, course: int, below: int | None) -> tuple[Ints, Ints]:
    """For every piece of a course, the distance down to each piece (or the footing) that it lies on or nearly so."""
    upper = np.arange(wall.first[course], wall.first[course + 1])
    lower = upper if below is None else np.arange(wall.first[below], wall.first[course + 1])
    bed = wall.bottom[upper][:, None] - wall.top[lower][None, :]
    over = (wall.left[upper][:, None] < wall.right[lower][None, :]) & (
        wall.right[upper][:, None] > wall.left[lower][None, :]
    )
    # A piece in a layer above stands a bed over what is under it; what lies further down is hidden or an opening.
    other = upper[:, None] != lower[None, :]
    which, _ = near = np.nonzero(over & other & (bed >= -wall.beds[1]) & (bed <= wall.hole))
    pieces, beds = upper[which], bed[near]
    if below is None:
        ground = upper[wall.bottom[upper] <= wall.hole]
        return np.concatenate((pieces, ground)), np.concatenate((beds, wall.bottom[ground]))
    return pieces, beds


def _poor_beds(wall: AsLaid, pieces: Ints, beds: Ints) -> Iterator[Break]:
    low, high = np.full(len(beds), wall.beds[0]), np.full(len(beds), wall.beds[1])
    ground = beds == wall.bottom[pieces]
    low[ground], high[ground] = min(FIRST_BED[0], wall.beds[0]), max(FIRST_BED[1], wall.beds[1])
    poor = ((beds < low) | (beds > high)) & (beds <= wall.hole)
    for index in np.flatnonzero(poor).tolist():
        bed, least, most = int(beds[index]), int(low[index]) + ROUNDING, int(high[index]) - ROUNDING
        off, turn = (least - bed, "thicken") if bed < least else (bed - most, "thin")
        yield Break(
            int(wall.course[pieces[index]]), int(wall.left[pieces[index]]), exact(wall, bed, least if bed < least else most),
            f"{size(wall, least)} to {size(wall, most)}",
            f"{turn} this bed by {size(wall, off)}, or share {size(wall, off)} among the beds of the courses below",
        )


def _open_top(wall: AsLaid) -> Iterator[Break]:
    height, reached = wall.layout.wall.height, int(wall.top.max())
    if abs(height - reached) > ROUNDING:
        off = size(wall, abs(height - reached))
        yield Break(
            int(wall.course.max()), None, exact(wall, reached, height), f"{size(wall, height)}, the wall's height",
            f"the top is {off} too {'low' if reached < height else 'high'}: share it among the beds or change the height",
        )


def _off_line(wall: AsLaid) -> Iterator[Break]:
    """Pieces off the line of their course, where no sill, head, step or slope is that a course is laid to in layers."""
    for index, course in enumerate(wall.layout.courses):
        span = slice(wall.first[index], wall.first[index + 1])
        own = wall.shape[span] != "return"  # how another wall's unit lies is the corners' to judge
        bottom, top = wall.bottom[span][own], wall.top[span][own]
        if not len(top) or _is_met(wall, course.bottom, course.top) or (np.all(top == course.top) and np.ptp(bottom) == 0):
            continue
        yield from _tell_off_line(wall, index, wall.left[span][own], bottom - int(np.median(bottom)), top - course.top)


def _tell_off_line(wall: AsLaid, course: int, left: Ints, under: Ints, over: Ints) -> Iterator[Break]:
    """What of a course is off its line, from the left sides of its pieces and how far undersides and tops are off."""
    if np.ptp(over) == 0 and np.ptp(under) == 0:
        yield Break(course, None, f"all of it ends {_way(wall, int(over[0]))} its line", "level with the course on it",
                    "set the course on its line")
        return
    for piece in np.flatnonzero(under | over).tolist():
        off, edge = (int(under[piece]), "lies") if under[piece] else (int(over[piece]), "ends")
        yield Break(course, int(left[piece]), f"a piece {edge} {_way(wall, off)} its course's line",
                    "level with its course", "lay it level with the pieces beside it")


def _way(wall: AsLaid, off: int) -> str:
    return f"{exact(wall, abs(off), 0)} {'over' if off > 0 else 'under'}"


def _is_met(wall: AsLaid, bottom: int, top: int) -> bool:
    """Whether a level lies between two heights that the masonry is ripped or raked to."""
    levels = [level for opening in wall.layout.wall.openings for level in (opening.bottom, opening.top)]
    outline = wall.outline
    slopes = list[tuple[int, int]]()
    if outline is not None:
        levels += [level for _, level in (*outline.footing, *outline.top)]
        slopes = [(min(one[1], two[1]), max(one[1], two[1])) for one, two in pairwise(outline.top) if one[0] < two[0]]
    return (any(bottom + ROUNDING < level < top - ROUNDING for level in levels)
            or any(low < top and high > bottom and low < high for low, high in slopes))


def _too_tall(wall: AsLaid) -> Iterator[Break]:
    unit = wall.masonry.unit
    for piece in np.flatnonzero((wall.top - wall.bottom > unit.height) & (wall.shape != "precast")).tolist():
        tall = int(wall.top[piece] - wall.bottom[piece])
        yield Break(
            int(wall.course[piece]), int(wall.left[piece]), exact(wall, tall, unit.height),
            f"{size(wall, unit.height)}, the unit", f"no unit is so tall: lower it by {size(wall, tall - unit.height)}",
        )


def _tell_rips(wall: AsLaid) -> str:
    unit = wall.masonry.unit
    height = wall.top - wall.bottom
    made = (height == unit.height) | (height == (unit.half_high or unit.height)) | (wall.shape == "precast") | wall.raked
    ripped = np.flatnonzero(~made)
    if not len(ripped):
        return ""
    courses = len(np.unique(wall.course[ripped]))
    return f"; {len(ripped)} pieces ripped in {courses} {'course' if courses == 1 else 'courses'}"
