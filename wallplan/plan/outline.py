"""From steps and gables to the outlines of walls, all over one datum: the top of the lowest footing of walls that meet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from wallplan.plan.footings import level_footings
from wallplan.plan.job import LaidWith, Masonry, Outline, Place
from wallplan.plan.notebook import Notebook
from wallplan.plan.outline_table import ReadStep, in_order
from wallplan.plan.wall_table import ReadWall


def settle_outlines(walls: Sequence[ReadWall], masonry: Masonry | None, notebook: Notebook) -> tuple[ReadWall, ...]:
    """The walls with their outlines, and with what they are coursed with. A wall that is a rectangle on the datum, closed by
    its own courses, or whose size is not known, has no outline."""
    settled = list(walls)
    levels, groups = level_footings(walls, notebook)
    for group in groups:
        tops = [top for place in group if not walls[place].is_pier and (top := _highest_level(walls[place])) is not None]
        together = [walls[place] for place in group]
        shared = None if masonry is None or len(group) < 2 else _share_courses(together, tops, masonry)
        for place in group:
            wall, own = walls[place], _highest_level(walls[place])
            lower = shared is not None and own is not None and own < shared.height
            outline = _draw(wall, levels[place], shared.height if shared is not None else None, lower)
            settled[place] = replace(wall, outline=outline, laid_with=shared)
    return tuple(settled)


def _highest_level(wall: ReadWall) -> int | None:
    """A wall's highest level top, gables left aside; None where its height is not known."""
    if wall.height is None:
        return None
    return max(height for _, height in _walk(0, wall.height, in_order(wall.read_outline.top_steps)))


def _share_courses(walls: Sequence[ReadWall], tops: Sequence[int], masonry: Masonry) -> LaidWith | None:
    """What sets the courses of walls that meet; None where whole courses on the gauge close every one of them."""
    unit = masonry.unit
    if all(unit.height_of_courses(max(1, round(top / unit.gauge))) == top for top in tops):
        return None
    levels = {level for wall in walls for _, opening in wall.openings for level in (opening.bottom, opening.top)}
    return LaidWith(max(tops), tuple(sorted(levels)))


def _draw(wall: ReadWall, level: int, coursed: int | None, lower: bool) -> Outline | None:
    """A wall's outline with its footing's ``level`` at the left end; ``lower`` than what closes its courses, it has one."""
    read = wall.read_outline
    if wall.length is None or wall.height is None or not (level or lower or read.steps or read.top_steps or read.gables):
        return None
    footing = _walk(wall.length, level, in_order(read.steps))
    tops = _walk(wall.length, wall.height, in_order(read.top_steps))
    raised = list(tops)
    for gable in sorted(read.gables, key=lambda gable: gable.left):
        eaves = level_at(tops, gable.left)
        raised += [(gable.left, eaves), (gable.ridge, eaves + gable.rise), (gable.right, eaves)]
    top = tuple(dict.fromkeys(sorted(raised, key=lambda place: place[0])))
    return Outline(footing, _order_sides(top, wall), coursed or max(height for _, height in tops))


def _walk(length: int, level: int, steps: Sequence[ReadStep]) -> tuple[Place, ...]:
    """A level line with its steps, from the wall's left end to its right one."""
    places, at_level = [(0, level)], level
    for step in steps:
        places += [(step.at, at_level), (step.at, at_level + step.rise)]
        at_level += step.rise
    return (*places, (length, at_level))


def _order_sides(top: tuple[Place, ...], wall: ReadWall) -> tuple[Place, ...]:
    """A roof of one slope stands upright over its foot on the ridge's side: there the line goes up, or comes down."""
    rising = {gable.left for gable in wall.read_outline.gables if gable.ridge == gable.left}
    falling = {gable.right for gable in wall.read_outline.gables if gable.ridge == gable.right}
    ordered = list(top)
    for index, (one, other) in enumerate(pairwise(top)):
        if one[0] == other[0] and ((one[0] in rising and one[1] > other[1]) or (one[0] in falling and one[1] < other[1])):
            ordered[index], ordered[index + 1] = other, one
    return tuple(ordered)


def level_at(line: Sequence[Place], at: int) -> int:
    """Height of a line of an outline right of a distance, rounded to the tick; at its right end, there."""
    for (left, low), (right, high) in pairwise(line):
        if left <= at < right:
            return low + round((high - low) * (at - left) / (right - left))
    return line[-1][1]


def reach_between(line: Sequence[Place], left: int, right: int) -> tuple[int, int]:
    """The lowest and the highest that a line of an outline comes between two distances."""
    heights = [level_at(line, left)]
    for (begin, low), (end, high) in pairwise(line):
        if begin < end and begin < right and end > left:
            heights += [low + round((high - low) * (max(min(at, end), begin) - begin) / (end - begin))
                        for at in (left, right)]
    return min(heights), max(heights)
