"""How high each wall's footing stands over the lowest of all walls that meet: one datum for each group of walls.

Walls meet at corners, and where one is interlocked with another; walls that are strapped or stand apart have a datum each.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from wallplan.plan.found import print_name
from wallplan.plan.ground import join_corners
from wallplan.plan.notebook import KeyPath, Notebook
from wallplan.plan.outline_table import in_order
from wallplan.plan.wall_table import ReadWall


class _Link(NamedTuple):
    """Two walls that meet, and how much the footing at the second one's left end is higher than at the first one's."""

    one: int
    other: int
    rise: int
    path: KeyPath | None


def level_footings(walls: Sequence[ReadWall], notebook: Notebook) -> tuple[list[int], list[list[int]]]:
    """The footing at each wall's left end over the lowest of its group, and the groups, each in the plan's order."""
    links = _link(walls)
    levels: dict[int, int] = {}
    groups = []
    for start in range(len(walls)):
        if start in levels:
            continue
        found = {start: 0}
        waiting = [start]
        while waiting:
            place = waiting.pop()
            for link in links:
                for here, there, rise in ((link.one, link.other, link.rise), (link.other, link.one, -link.rise)):
                    if here == place and there not in found:
                        found[there] = found[here] + rise
                        waiting.append(there)
        lowest = min(found[place] + min(_levels(walls[place])) for place in found)
        levels.update((place, level - lowest) for place, level in found.items())
        groups.append(sorted(found))
    for link in links:
        _check_level(walls, link, levels, notebook)
    return [levels[place] for place in range(len(walls))], groups


def _link(walls: Sequence[ReadWall]) -> list[_Link]:
    joined = join_corners([(wall.left, wall.right) for wall in walls])
    links = [_Link(place, after, _levels(walls[place])[-1], None) for place, after in enumerate(joined) if after is not None]
    places = {wall.name: place for place, wall in enumerate(walls)}
    for place, wall in enumerate(walls):
        for path, abutment in wall.abuts:
            main = places.get(abutment.meets)
            if abutment.tie == "interlocked" and main is not None and main != place:
                own = _levels(wall)[-1] if abutment.end == "right" else 0
                links.append(_Link(main, place, foot_at(walls[main], abutment.at) - own, path))
    return links


def _levels(wall: ReadWall) -> list[int]:
    """The levels of a wall's footing from left to right, over that at its left end."""
    levels = [0]
    for step in in_order(wall.read_outline.steps):
        levels.append(levels[-1] + step.rise)
    return levels


def foot_at(wall: ReadWall, at: int) -> int:
    """A wall's footing at a distance from its left end, over that at its left end."""
    return sum(step.rise for step in wall.read_outline.steps if step.at <= at)


def _check_level(walls: Sequence[ReadWall], link: _Link, levels: dict[int, int], notebook: Notebook) -> None:
    """A footing that goes round a building, or from wall to wall, comes back to where it began."""
    off = levels[link.one] + link.rise - levels[link.other]
    if not off:
        return
    if link.path is not None:
        key = (*link.path, "from_left" if link.path[-2] == "pier" else "at")
        notebook.note(key, f'the footing of wall "{print_name(walls[link.one].name or "")}" is {notebook.show(abs(off))} '
                      f"{'higher' if off > 0 else 'lower'} there than this wall's; its steps must bring both to one level")
        return
    stepped = [wall for wall in walls if wall.read_outline.steps]
    ring = [wall for place, wall in enumerate(walls) if wall in stepped and place <= link.one]
    notebook.note((*(ring or stepped)[-1].path, "step"), f"the footing comes round the building {notebook.show(abs(off))} "
                  f"{'higher' if off > 0 else 'lower'} than it began; its steps up and down must be equal")
