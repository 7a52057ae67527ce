"""Lap: head joints that stand one above the other across a bed, centre to centre."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from wallplan.findings import Finding
from wallplan.rules.as_laid import HEAD, ROUNDING, AsLaid, Flags, Ints
from wallplan.rules.reporting import Break, exact, report_breaks, report_held, size
from wallplan.rules.sources import LAP


@dataclass(frozen=True, eq=False)
class Tier:
    """The head joints that share one bottom and one top, from left to right, as entries of the table of gaps."""

    course: int
    bottom: int
    top: int
    joints: Ints
    twice_middle: Ints


def check_lap(wall: AsLaid) -> tuple[Finding, ...]:
    """The smallest lap against the plan's. Wall ends, jambs and control joints are no head joints. Stack bond: held."""
    masonry = wall.masonry
    limit = size(wall, masonry.least_lap)
    if masonry.bond == "stack":
        return (report_held(wall, "lap", LAP, "stack bond: joints stand in line", "none in stack bond"),)
    breaks, smallest = list[Break](), -1
    for below, above in _pair_tiers(wall, _find_tiers(wall)):
        laps, nearest = _measure(below, above)
        if below.course == above.course:
            # In a course laid in layers a joint that goes straight up through both is one joint of that course.
            apart = (laps > 2 * ROUNDING) & ~_share_piece(wall, below.joints[nearest], above.joints)
            laps, nearest, above = laps[apart], nearest[apart], _narrow(above, apart)
        if len(laps):
            smallest = int(laps.min()) if smallest < 0 else min(smallest, int(laps.min()))
            breaks.extend(_find_breaks(wall, below, above, laps, nearest))
    broken = report_breaks(wall, "lap", LAP, breaks)
    figure = "no joint stands above another" if smallest < 0 else size(wall, smallest // 2)
    return broken or (report_held(wall, "lap", LAP, figure, limit),)


def _find_tiers(wall: AsLaid) -> list[Tier]:
    gaps, rows = wall.gaps, wall.rows
    heads = np.flatnonzero(gaps.kind == HEAD)
    if rows.layered.any():
        # A tall piece stands in several rows of its course: its joint with one neighbour is one joint.
        pairs = gaps.before[heads] * len(wall.left) + gaps.after[heads]
        heads = heads[np.sort(np.unique(pairs, return_index=True)[1])]
    bottom = np.maximum(wall.bottom[gaps.before[heads]], wall.bottom[gaps.after[heads]])
    top = np.minimum(wall.top[gaps.before[heads]], wall.top[gaps.after[heads]])
    # Heights stay below 2**32 ticks (3,000 m), so that both fit one number.
    _, start, tier = np.unique((bottom << 31) + (top >> 1), return_index=True, return_inverse=True)
    middle = gaps.left[heads] + gaps.right[heads]
    order = np.lexsort((middle, tier))
    ends = np.append(np.searchsorted(tier[order], np.arange(len(start))), len(order))
    tiers = []
    for index, first in enumerate(start.tolist()):
        joints = order[ends[index]:ends[index + 1]]
        course = int(wall.course[gaps.before[heads[first]]])
        tiers.append(Tier(course, int(bottom[first]), int(top[first]), heads[joints], middle[joints]))
    return tiers


def _pair_tiers(wall: AsLaid, tiers: list[Tier]) -> Iterator[tuple[Tier, Tier]]:
    bottoms = np.array([tier.bottom for tier in tiers])
    for below in tiers:
        first = int(np.searchsorted(bottoms, below.top))
        for index in range(first, int(np.searchsorted(bottoms, below.top + wall.hole, side="right"))):
            yield below, tiers[index]


def _measure(below: Tier, above: Tier) -> tuple[Ints, Ints]:
    """Twice the distance from each joint above to the nearest one below, and which that is."""
    places, spots = below.twice_middle, above.twice_middle
    after = np.searchsorted(places, spots)
    left, right = np.maximum(after - 1, 0), np.minimum(after, len(places) - 1)
    nearest = np.where(np.abs(spots - places[left]) <= np.abs(spots - places[right]), left, right)
    return np.abs(spots - places[nearest]), nearest


def _share_piece(wall: AsLaid, one: Ints, other: Ints) -> Flags:
    """Whether two joints of one course run along the same tall piece, and so are one straight joint of that piece."""
    before, after = wall.gaps.before, wall.gaps.after
    shared: Flags = (before[one] == before[other]) | (after[one] == after[other])
    return shared


def _narrow(tier: Tier, kept: Flags) -> Tier:
    return Tier(tier.course, tier.bottom, tier.top, tier.joints[kept], tier.twice_middle[kept])


def _find_breaks(wall: AsLaid, below: Tier, above: Tier, laps: Ints, nearest: Ints) -> Iterator[Break]:
    least = wall.masonry.least_lap
    for index in np.flatnonzero(laps < 2 * (least - ROUNDING)).tolist():
        place, spot = int(below.twice_middle[nearest[index]]), int(above.twice_middle[index])
        lap = int(laps[index]) // 2
        side = "right" if spot >= place else "left"
        yield Break(
            above.course, int(wall.gaps.left[above.joints[index]]), exact(wall, lap, least),
            size(wall, least),
            f"move this joint {size(wall, least - lap)} to the {side}, or the joint below it as far the other way",
        )
