"""Gables that come down to a corner beside a higher wall: there they are bonded square, as high as the slope beyond allows.

In the corner's place, as deep as the higher wall is thick, that wall stands over the slope in any case. A course of the
gable that the slope cuts only there is laid in full, so that the two walls run through in turn as far up as one can.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from wallplan.layout.corners import joined_to
from wallplan.layout.outline import set_rows
from wallplan.plan.job import Job, Outline, Place, Wall
from wallplan.plan.outline import reach_between


def raise_corners(job: Job) -> Job:
    """The job with the tops of such walls raised at their outside corners; as it is where there are none."""
    if not any(wall.outline for wall in job.walls):
        return job
    return replace(job, walls=tuple(_raise_wall(job, index) for index in range(len(job.walls))))


def _raise_wall(job: Job, index: int) -> Wall:
    wall = job.walls[index]
    if wall.outline is None:
        return wall
    top = wall.outline.top
    for side, level in _find_levels(job, index, wall.outline):
        top = tuple(_raise_end(top, level)) if side == 0 else tuple(reversed([*_raise_end(tuple(reversed(top)), level)]))
    return wall if top is wall.outline.top else replace(
        wall, outline=replace(wall.outline, top=top, bonded_under=wall.outline.top))


def _find_levels(job: Job, index: int, outline: Outline) -> Iterator[tuple[int, int]]:
    """At which ends (0 left, 1 right) the wall is raised, and to which course line."""
    wall, thick = job.walls[index], job.masonry.thickness
    lines = [row.top for row in set_rows(wall, job.masonry)]
    for side, (kind, place) in enumerate(zip((wall.left_end, wall.right_end), joined_to(job, index), strict=True)):
        if kind != "outside corner" or place is None or wall.length < 2 * thick:
            continue
        left, inner = (0, thick) if side == 0 else (wall.length - thick, wall.length - thick - 1)
        beyond = reach_between(outline.top, inner, inner + 1)[0]
        higher = _lowest_at_corner(job.walls[place], at_left=side == 1, thick=thick) + job.masonry.unit.bed_joint // 2
        level = max((line for line in lines if line <= min(beyond, higher)), default=0)
        if level > reach_between(outline.top, left, left + thick)[0]:
            yield side, level


def _lowest_at_corner(wall: Wall, *, at_left: bool, thick: int) -> int:
    """The lowest that a wall's top comes in the corner's place."""
    if wall.outline is None:
        return wall.height
    left, right = (0, thick) if at_left else (wall.length - thick, wall.length)
    return reach_between(wall.outline.top, left, right)[0]


def _raise_end(top: tuple[Place, ...], level: int) -> Iterator[Place]:
    """A top line that rises from its first place, level up to where it comes to a height."""
    yield top[0][0], level
    risen = False
    for (begin, low), (end, high) in pairwise(top):
        if not risen and high >= level:
            risen = True
            yield begin + round((end - begin) * (level - low) / (high - low)), level
        if risen:
            yield end, high
