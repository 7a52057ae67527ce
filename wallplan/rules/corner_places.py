"""What a slope leaves of a wall beside others: tips that mortar fills, and corners' places where another wall stands."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import TYPE_CHECKING

from wallplan.plan.ground import join_corners
from wallplan.plan.job import Wall
from wallplan.plan.outline import reach_between
from wallplan.rules.as_laid import ROUNDING, AsLaid
from wallplan.rules.outline import find_ridges, find_risers

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry


def is_off(wall: AsLaid, edge: int, end: int) -> bool:
    """Whether a piece does not end at the outline; where a slope comes down within the joint against another wall, it ends
    at that joint, and where a step of the footing lies within a joint, there."""
    if abs(edge - end) <= 2 * ROUNDING:
        return False
    risers = () if wall.outline is None else find_risers(wall.outline)
    if abs(edge - end) <= wall.masonry.joint and any(one.foot and abs(one.at - end) <= ROUNDING for one in risers):
        return False
    length, joint = wall.layout.wall.length, wall.masonry.joint
    faces = {"inside corner": 0, "abuts": 0, "outside corner": wall.masonry.unit.thickness}
    begin, stop = (faces.get(kind) for kind in (wall.layout.wall.left_end, wall.layout.wall.right_end))
    at_left = begin is not None and -ROUNDING <= end < edge <= begin + joint + ROUNDING
    at_right = stop is not None and length + ROUNDING >= end > edge >= length - stop - joint - ROUNDING
    # Into a higher wall's end the units go on square.
    into_left = begin is not None and edge == 0 < end <= begin + joint
    into_right = stop is not None and edge == length > end >= length - stop - joint
    return not (at_left or at_right or into_left or into_right)


def is_tip(wall: AsLaid, left: float, right: float, top: float) -> bool:
    """Whether a void, from ``left`` to ``right`` and up to ``top``, is the tip of a gable, or what a slope leaves beside
    another wall's end, too narrow at its foot for the least piece: it is made up in mortar. False for a rectangle."""
    joints = 2 * wall.masonry.joint
    if wall.outline is None or right - left > wall.masonry.least_piece + 2 * wall.hole:
        return False
    # At the end of a roof of one slope the wall that it meets stands between.
    beside = wall.masonry.thickness + joints
    if any(left - beside <= at <= right + beside and top > level - wall.masonry.unit.gauge
           for at, level in find_ridges(wall.outline)):
        return True
    low, high = reach_between(wall.outline.top, round(left), round(right))
    own, faces = wall.layout.wall, {"inside corner": 0, "abuts": 0, "outside corner": wall.masonry.thickness}
    away = [(own.left_end, left), (own.right_end, own.length - right)]
    near = joints + wall.hole
    tied = [one.at for other in wall.job.walls for one in other.abuts if one.meets == own.name]
    return low < high and (any(kind in faces and abs(clear - faces[kind]) <= near for kind, clear in away)
                           or any(abs(right - at) <= near or abs(left - at - wall.masonry.thickness) <= near for at in tied))


def _beside_corners(wall: AsLaid) -> Iterator[tuple[bool, Wall, bool]]:
    """The walls at this one's corners: whether at its right end, the wall, and whether its own right end is there."""
    walls = wall.job.walls
    joined = join_corners([(one.left_end, one.right_end) for one in walls])
    place = next(index for index, one in enumerate(walls) if one.name == wall.name)
    if joined[place] is not None:
        yield True, walls[joined[place] or 0], False
    if place in joined:
        yield False, walls[joined.index(place)], True


def corner_places(wall: AsLaid) -> Iterator[BaseGeometry]:
    """What other walls take of this one's elevation at outside corners: as wide as they are thick, as high as they stand."""
    import shapely

    length, thick = wall.layout.wall.length, wall.masonry.thickness
    for at_right, other, others_right in _beside_corners(wall):
        if (wall.layout.wall.right_end if at_right else wall.layout.wall.left_end) == "outside corner":
            left, right = (other.length - thick, other.length) if others_right else (0, thick)
            level = other.height if other.outline is None else reach_between(other.outline.top, left, right)[0]
            begin = length - thick if at_right else 0
            yield shapely.box(begin, 0, begin + thick, level + wall.masonry.unit.bed_joint // 2 + ROUNDING)


def is_others(wall: AsLaid, span: tuple[float, float], bottom: float) -> bool:
    """Whether a void lies in a corner's place where two slopes come down to it: the other wall's unit, sawn to the other
    slope, takes a part of it, and what is filled is measured in plan."""
    reach = wall.masonry.thickness + 2 * wall.hole
    for at_right, other, others_right in _beside_corners(wall):
        if other.outline is None or not (span[0] >= wall.layout.wall.length - reach if at_right else span[1] <= reach):
            continue
        left, right = (other.length - reach, other.length) if others_right else (0, reach)
        if any(one[1] != two[1] and one[0] < two[0] and one[0] < right and two[0] > left
               and max(one[1], two[1]) > bottom for one, two in pairwise(other.outline.top)):
            return True
    return False
