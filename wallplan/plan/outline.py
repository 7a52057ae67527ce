"""From steps and gables to the outlines of walls, all over one datum: the top of the lowest footing of walls that meet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from wallplan.plan.job import Outline, Place
from wallplan.plan.notebook import Notebook
from wallplan.plan.outline_table import ReadStep, in_order
from wallplan.plan.wall_table import ReadWall

CORNERS = ("outside corner", "inside corner")


def settle_outlines(walls: Sequence[ReadWall], notebook: Notebook) -> tuple[ReadWall, ...]:
    """The walls with their outlines. A wall that is a rectangle on the datum, or whose size is not known, has none."""
    levels = _level_footings(walls, notebook)
    return tuple(replace(wall, outline=_draw(wall, level)) for wall, level in zip(walls, levels, strict=True))


def _level_footings(walls: Sequence[ReadWall], notebook: Notebook) -> list[int]:
    """The footing at each wall's left end over the lowest of its group of walls that meet."""
    groups: list[list[int]] = []
    for place, wall in enumerate(walls):
        joined = place and wall.left in CORNERS and walls[place - 1].right in CORNERS
        groups[-1].append(place) if joined else groups.append([place])
    levels = [0] * len(walls)
    for group in groups:
        reached = lowest = 0
        for place in group:
            levels[place] = reached
            for step in in_order(walls[place].read_outline.steps):
                reached += step.rise
                lowest = min(lowest, reached)
        for place in group:
            levels[place] -= lowest
        _check_level(walls, group, reached, notebook)
    return levels


def _check_level(walls: Sequence[ReadWall], group: list[int], reached: int, notebook: Notebook) -> None:
    """A footing that goes round a building comes back to where it began."""
    first, last = walls[group[0]], walls[group[-1]]
    closed = len(group) > 1 and first.left in CORNERS and last.right in CORNERS
    if closed and reached:
        way = "higher" if reached > 0 else "lower"
        stepped = [walls[place] for place in group if walls[place].read_outline.steps][-1]
        notebook.note((*stepped.path, "step"), f"the footing comes round the building {notebook.show(abs(reached))} {way} "
                      "than it began; its steps up and down must be equal")


def _draw(wall: ReadWall, level: int) -> Outline | None:
    read = wall.read_outline
    if wall.length is None or wall.height is None or not (level or read.steps or read.top_steps or read.gables):
        return None
    footing = _walk(wall.length, level, in_order(read.steps))
    tops = _walk(wall.length, wall.height, in_order(read.top_steps))
    raised = list(tops)
    for gable in sorted(read.gables, key=lambda gable: gable.left):
        eaves = level_at(tops, gable.left)
        raised += [(gable.left, eaves), (gable.ridge, eaves + gable.rise), (gable.right, eaves)]
    top = tuple(dict.fromkeys(sorted(raised, key=lambda place: place[0])))
    return Outline(footing, _order_sides(top, wall), max(height for _, height in tops))


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
