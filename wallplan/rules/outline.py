"""The wall's true outline, from the plan alone: its polygon, where it begins and ends at a height, its steps and ridges."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from wallplan.plan.job import Outline

if TYPE_CHECKING:
    from shapely.geometry import Polygon

Interval = tuple[float, float]


class Riser(NamedTuple):
    """An upright part of the footing or the top: where it is, from which height to which, and on which side the wall goes
    on below it: at a footing the lower side, at a top the higher one ends there. ``left_higher`` is the side that is."""

    at: int
    low: int
    high: int
    foot: bool
    left_higher: bool


def _draw_out(line: Sequence[tuple[int, int]], start: int, end: int) -> list[tuple[int, int]]:
    """A line of an outline with its ends drawn out level; a slope goes no further than to the wall's own end."""
    left, right = line[0][0], line[-1][0]
    first, last = [level for at, level in line if at == left][-1], next(level for at, level in line if at == right)
    inside = [(at, level) for at, level in line if left < at < right]
    feet = [(left, first)] if start < left else [], [(right, last)] if end > right else []
    return [(start, first), *feet[0], *inside, *feet[1], (end, last)]


@lru_cache(maxsize=64)
def trace(outline: Outline, start: int, end: int, over: int = 0) -> Polygon:
    """The wall's polygon in ticks. Its ends are drawn out to ``start`` and ``end``, behind an inside corner.

    Level tops are taken ``over`` ticks higher.
    """
    from shapely.geometry import Polygon

    raised = []
    for (at, level), (to, other) in pairwise(outline.top):
        up = over if level == other else 0
        raised += [(at, level + up), (to, other + up)]
    foot, top = (_draw_out(line, start, end) for line in (outline.footing, raised))
    return Polygon([*foot, *reversed(top)]).buffer(0)


def cut_level(outline: Outline, start: int, end: int, height: float, over: int = 0) -> tuple[Interval, ...]:
    """Where the wall is at a height: stretches from left to right, () over its top; ``over`` as for ``trace``."""
    from shapely.geometry import LineString

    shape = trace(outline, start, end, over)
    across = shape.intersection(LineString([(start - 1, height), (end + 1, height)]))
    parts = getattr(across, "geoms", [across])
    found = sorted((part.bounds[0], part.bounds[2]) for part in parts if not part.is_empty and part.length > 0)
    joined: list[Interval] = []
    for left, right in found:
        if joined and left - joined[-1][1] < 1:
            joined[-1] = joined[-1][0], right
        else:
            joined.append((left, right))
    return tuple(joined)


def find_risers(outline: Outline) -> tuple[Riser, ...]:
    """The steps of footing and top, from left to right; not the upright side of a roof of one slope at the wall's end."""
    found = []
    for line, foot in ((outline.footing, True), (outline.top, False)):
        for (at, before), (also, after) in pairwise(line):
            if at == also and line[0][0] < at < line[-1][0]:
                found.append(Riser(at, min(before, after), max(before, after), foot, before > after))
    return tuple(sorted(found))


def find_ridges(outline: Outline) -> tuple[tuple[int, int], ...]:
    """The peaks of the top: places with a slope down from them."""
    top, found = outline.top, []
    for place, (at, level) in enumerate(top):
        beside = [top[other] for other in (place - 1, place + 1) if 0 <= other < len(top)]
        if any(x != at and y < level for x, y in beside) and all(y <= level for _, y in beside):
            found.append((at, level))
    return tuple(found)
