"""Steps and gables: beds on the footing, levels met, no joint in line with a riser, and how many cuts are raked."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

import numpy as np

from wallplan.findings import Finding
from wallplan.lengths import TICKS_PER_INCH, print_length
from wallplan.plan.job import Outline
from wallplan.rules.as_laid import HEAD, ROUNDING, STEP, AsLaid, Ints
from wallplan.rules.outline import Riser, find_risers
from wallplan.rules.reporting import Break, exact, report_breaks, report_held, size
from wallplan.rules.sources import BEDS, STEPS

FIRST_BED = (TICKS_PER_INCH // 4, TICKS_PER_INCH * 3 // 4)
"""Tightest and widest bed on a footing; TMS 602, as BEDS cites it."""


def check_steps(wall: AsLaid) -> tuple[Finding, ...]:
    """Each level of footing and top, each riser, each raked piece. () for a wall that is a rectangle."""
    outline = wall.outline
    if outline is None:
        return ()
    broken = (
        *report_breaks(wall, "steps", BEDS, _poor_beds(wall, outline)),
        *report_breaks(wall, "steps", STEPS, [*_off_tops(wall, outline), *_in_line(wall, outline)]),
    )
    if broken:
        return broken
    figures, remedy = _tell(wall, outline)
    limit = f"beds on the footing {size(wall, FIRST_BED[0])} to {size(wall, FIRST_BED[1])}"
    return (replace(report_held(wall, "steps", STEPS, figures, limit), remedy=remedy),)


def _lowest_on(wall: AsLaid, left: int, right: int, level: int) -> Ints:
    """The pieces that lie over a stretch of footing with nothing under them but it."""
    least, near = wall.masonry.joint, level + 2 * wall.masonry.unit.gauge + wall.hole
    under = wall.bottom + np.where(wall.bottom < level, wall.notched, 0)
    over = np.flatnonzero((wall.top > level + ROUNDING) & (under <= near)
                          & (np.minimum(wall.right, right) - np.maximum(wall.left, left) > least))
    low, high, bottom = np.maximum(wall.left[over], left), np.minimum(wall.right[over], right), under[over]
    lowest = [piece for place, piece in enumerate(over.tolist())
              if not np.any((low < high[place]) & (high > low[place]) & (bottom < bottom[place]))]
    return np.array(lowest, dtype=np.int64)


def _poor_beds(wall: AsLaid, outline: Outline) -> Iterator[Break]:
    own = wall.masonry.unit.bed_joint
    low, high = min(FIRST_BED[0], own), max(FIRST_BED[1], own)
    for (left, level), (right, _) in pairwise(outline.footing):
        standing = [opening for opening in wall.layout.wall.openings if opening.bottom <= level + own]
        for piece in _lowest_on(wall, left, right, level).tolist() if left < right else ():
            bed = int(wall.bottom[piece]) + (int(wall.notched[piece]) if wall.bottom[piece] < level else 0) - level
            if any(opening.left < wall.right[piece] and opening.right > wall.left[piece] for opening in standing):
                continue
            if not low - ROUNDING <= bed <= high + ROUNDING:
                off, way = (bed - high, "raise the footing") if bed > high else (low - bed, "break the concrete away")
                yield Break(int(wall.course[piece]), max(left, int(wall.left[piece])),
                            exact(wall, bed, high if bed > high else low),
                            f"a bed of {size(wall, low)} to {size(wall, high)} on the footing",
                            f"{way} by {size(wall, off)} or more")


def _off_tops(wall: AsLaid, outline: Outline) -> Iterator[Break]:
    """Level tops that the masonry under them does not come up to, or stands over."""
    slack = max(wall.masonry.unit.bed_joint // 2, ROUNDING)
    for (left, level), (right, other) in pairwise(outline.top):
        if level != other or right - left < wall.masonry.least_piece:
            continue
        under = (wall.left < right - wall.masonry.joint) & (wall.right > left + wall.masonry.joint) & ~wall.raked
        under &= wall.shape != "return"
        # At its ends what is level goes on behind the other wall's face, or through it.
        begin, end = wall.start if left == 0 else left, wall.end if right == wall.layout.wall.length else right
        within = (wall.right <= end + ROUNDING) & (wall.left >= begin - ROUNDING)
        middle = np.flatnonzero(under & within & (wall.bottom < level))
        reached = int(wall.top[middle].max()) if len(middle) else level
        if abs(reached - level) > slack:
            off = abs(level - reached)
            yield Break(None, left, exact(wall, reached, level), f"{size(wall, level)}, the top from {size(wall, left)}",
                        f"make the top {size(wall, off)} {'lower' if reached < level else 'higher'} there")


def _in_line(wall: AsLaid, outline: Outline) -> Iterator[Break]:
    """Head joints over a joint that stands on a riser, nearer to it than the lap."""
    masonry = wall.masonry
    for riser, course, away in _measure_risers(wall, outline):
        if away < masonry.least_lap - ROUNDING - masonry.joint // 2 and _is_jointed(wall, riser):
            yield Break(course, riser.at, f"a head joint {exact(wall, away, masonry.least_lap)} from the joint over a riser",
                        size(wall, masonry.least_lap), f"move the step by {size(wall, masonry.least_lap - away)}, or cut a "
                        "piece so that a unit bridges the riser")


def _measure_risers(wall: AsLaid, outline: Outline) -> Iterator[tuple[Riser, int, int]]:
    """Each riser of the footing, the course over it, and how far its nearest head joint is off; none in stack bond."""
    masonry, gaps = wall.masonry, wall.gaps
    heads = np.flatnonzero(gaps.kind == HEAD)
    for riser in find_risers(outline) if masonry.bond != "stack" else ():
        course = _course_over(wall, riser)
        if not riser.foot or course is None:
            continue
        # What ends at the riser ends in a joint that lies within the concrete's face.
        middle = riser.at - masonry.joint // 2 if riser.left_higher else riser.at + masonry.joint // 2
        here = heads[wall.rows.course[gaps.row[heads]] == course]
        if len(here):
            yield riser, course, int(np.abs((gaps.left[here] + gaps.right[here]) // 2 - middle).min())


def _is_jointed(wall: AsLaid, riser: Riser) -> bool:
    """Whether a joint between pieces of one course stands on a riser."""
    joint = wall.masonry.joint
    near = (wall.gaps.left <= riser.at + joint) & (wall.gaps.right >= riser.at - joint)
    return bool(np.any((wall.gaps.kind == STEP) & near))


def _course_over(wall: AsLaid, riser: Riser) -> int | None:
    """The lowest course that passes over a riser in one."""
    joint = wall.masonry.joint
    across = (wall.left <= riser.at + joint) & (wall.right >= riser.at - joint) & (wall.top > riser.high)
    for course in np.unique(wall.course[across]).tolist():
        pieces = np.flatnonzero(wall.course == course)
        if np.any(across[pieces] & (wall.notched[pieces] > 0)):
            return int(course)
        before = pieces[wall.left[pieces] < riser.at - joint]
        after = pieces[wall.right[pieces] > riser.at + joint]
        if not len(before) or not len(after):
            continue
        one, other = before[np.argmax(wall.left[before])], after[np.argmin(wall.right[after])]
        beside = riser.at - wall.right[one] <= 2 * joint and wall.left[other] - riser.at <= 2 * joint
        if wall.bottom[one] == wall.bottom[other] and beside:
            return int(course)
    return None


def _tell(wall: AsLaid, outline: Outline) -> tuple[str, str]:
    """What is met how, and what would mend the levels that are off the coursing."""
    told, remedies = list[str](), list[str]()
    steps = [riser for riser in find_risers(outline) if riser.foot]
    if steps:
        told.append(f"{len(steps)} {'step' if len(steps) == 1 else 'steps'} of the footing")
    for (left, level), (right, _) in pairwise(outline.footing):
        if left < right:
            ripped = _tell_ripped(wall, left, right, level)
            if ripped is not None:
                told.append(ripped[0])
                remedies.append(ripped[1])
    for riser, course, away in _measure_risers(wall, outline):
        if away < wall.masonry.least_lap - ROUNDING - wall.masonry.joint // 2:
            told.append(f"a head joint of course {wall.number(course)} stands {size(wall, away)} from the riser at "
                        f"{_distance(wall, riser.at)}")
            remedies.append(f"move the step at {_distance(wall, riser.at)} by half a unit, so that a unit bridges it")
    tops = [riser for riser in find_risers(outline) if not riser.foot]
    if tops:
        told.append(f"{len(tops)} {'step' if len(tops) == 1 else 'steps'} of the top")
    raked = int(wall.raked.sum())
    if raked:
        told.append(f"{raked} raked cuts, {_count_pairs(wall)} in left and right pairs")
    return "; ".join(told) or "level", "; ".join(filter(None, remedies))


def _tell_ripped(wall: AsLaid, left: int, right: int, level: int) -> tuple[str, str] | None:
    """A footing that a ripped course stands on: what is ripped to what, and how far it is off."""
    unit = wall.masonry.unit
    pieces = _lowest_on(wall, left, right, level)
    lower = pieces[wall.top[pieces] - wall.bottom[pieces] < unit.height - ROUNDING]
    notched = int((wall.notched[pieces] > 0).sum())
    if not len(lower):
        return None
    high = int((wall.top - wall.bottom)[lower[0]])
    course = wall.layout.courses[int(wall.course[lower[0]])]
    if high == unit.half_high:
        return f"half-high units stand on the footing from {_distance(wall, left)}", ""
    off = level - course.bottom
    place = f"from {_distance(wall, left)} to {_distance(wall, right)}"
    return (f"the footing {place} is {size(wall, off)} off the coursing: {len(lower)} "
            f"pieces of course {course.number} are ripped to {size(wall, high)}{f', {notched} notched' if notched else ''}",
            f"break {size(wall, off)} of the concrete away from {_distance(wall, left)}, or rip")


def _distance(wall: AsLaid, ticks: int) -> str:
    """A distance from the wall's left end."""
    return print_length(ticks, wall.job.measure) + (" mm" if wall.job.measure == "metric" else "")


def _count_pairs(wall: AsLaid) -> int:
    """Raked pieces that have one sawn to the other hand in their own course."""
    pairs = 0
    for course in wall.layout.courses:
        hands = [piece.hand for piece in course.pieces]
        pairs += min(hands.count("left"), hands.count("right"))
    return pairs
