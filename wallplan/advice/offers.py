"""Offers: the distances at which each thing of a wall is tried.

Sideways the nearest distances, either way, that make a length fit or bring a jamb onto the bond as it runs from an end of
the wall, and every step that the plan asks for. Sills, heads and tops are tried only where they miss the coursing, at the
course lines near them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wallplan.advice.moves import Thing
from wallplan.advice.spans import Edge, Length, bond_step, find_lengths
from wallplan.layout.corners import WallEnds
from wallplan.plan.coursing import set_coursing
from wallplan.plan.job import Masonry, Movable, Wall

NEAREST_LINES = 2
"""Course lines that a sill, a head or a top is tried at: above and below."""

Offers = dict[Thing, tuple[int, ...]]
"""For each thing its distances in ticks, the shortest first, never nought."""


def offer_moves(wall: Wall, masonry: Masonry, movable: Movable, ends: WallEnds | None = None) -> Offers:
    """Every thing that may be moved, and how far; {} where the plan lets nothing move.

    Ends that meet another wall stay, and so does the top of such a wall. ``ends`` are how it ends there.
    """
    offers: Offers = {}
    lengths = find_lengths(wall, masonry, ends)
    for thing in _sideways_things(wall, movable):
        fitting = _fitting(thing, wall, lengths, masonry)
        steps = range(movable.step, movable.farthest + 1, movable.step) if movable.step else ()
        _add(offers, thing, (*fitting, *steps, *(-step for step in steps)), movable.farthest)
    for thing, level in _levels(wall, masonry, movable):
        lines = _course_lines(level + movable.farthest, wall, masonry)
        near = sorted((line - level for line in lines), key=abs)[:NEAREST_LINES]
        _add(offers, thing, near, movable.farthest)
    return offers


def _add(offers: Offers, thing: Thing, distances: Iterable[int], farthest: int) -> None:
    kept = {by for by in distances if 0 < abs(by) <= farthest}
    if kept:
        offers[thing] = tuple(sorted(kept, key=lambda by: (abs(by), -by)))


def _sideways_things(wall: Wall, movable: Movable) -> Iterator[Thing]:
    if "ends" in movable.kinds:
        if wall.right_end == "end":
            yield Thing("right end")
        if wall.left_end == "end":
            yield Thing("left end")
    for number in range(len(wall.openings)):
        if "openings" in movable.kinds:
            yield Thing("opening", number)
        if "widths" in movable.kinds:
            yield Thing("width", number)
    if "control joints" in movable.kinds:
        yield from (Thing("control joint", number) for number in range(len(wall.control_joints)))


def _fitting(thing: Thing, wall: Wall, lengths: tuple[Length, ...], masonry: Masonry) -> Iterator[int]:
    """Distances that make a length beside the thing fit, or put the thing on the bond from an end."""
    step, joint = bond_step(masonry), masonry.joint
    for length in lengths:
        starts, ends = moves_edge(thing, length.left_edge), moves_edge(thing, length.right_edge)
        if starts != ends:
            yield from _nearest((length.size + joint) * (1 if starts else -1), step)
    for at, edge in _edges_of(thing, wall, joint):
        if moves_edge(thing, edge):
            right_of = edge[0] in ("left jamb", "before joint")
            yield from _nearest(-(at + joint) if right_of else -at, step)
            yield from _nearest(wall.length - at if right_of else wall.length + joint - at, step)


def _nearest(off: int, step: int) -> Iterator[int]:
    """The distances, back and forth, to the nearest multiples of the step; none where it stands on one."""
    rest = off % step
    if rest:
        yield from (rest - step, rest)


def _edges_of(thing: Thing, wall: Wall, joint: int) -> Iterator[tuple[int, Edge]]:
    if thing.kind in ("opening", "width"):
        opening = wall.openings[thing.index]
        yield opening.left, ("left jamb", thing.index)
        yield opening.right, ("right jamb", thing.index)
    elif thing.kind == "control joint":
        start = wall.control_joints[thing.index] - joint // 2
        yield start, ("before joint", thing.index)
        yield start + joint, ("after joint", thing.index)


def moves_edge(thing: Thing, edge: Edge) -> bool:
    """Whether an edge goes along when the thing is moved."""
    kind, index = edge
    if thing.kind in ("left end", "right end"):
        return kind == thing.kind
    carried = {"opening": ("left jamb", "right jamb"), "width": ("right jamb",),
               "control joint": ("before joint", "after joint")}
    return kind in carried.get(thing.kind, ()) and index == thing.index


def _levels(wall: Wall, masonry: Masonry, movable: Movable) -> Iterator[tuple[Thing, int]]:
    """Sills, heads and the top where they miss the coursing."""
    lines = {0, *(row.top for row in set_coursing(wall, masonry))}
    alone = wall.left_end == wall.right_end == "end"
    if "tops" in movable.kinds and alone and wall.height not in _gauge_lines(wall.height, masonry):
        yield Thing("top"), wall.height
    for number, opening in enumerate(wall.openings):
        if "sills" in movable.kinds and opening.bottom not in lines:
            yield Thing("sill", number), opening.bottom
        if "heads" in movable.kinds and opening.top not in lines | {wall.height}:
            yield Thing("head", number), opening.top


def _course_lines(highest: int, wall: Wall, masonry: Masonry) -> set[int]:
    """Levels on the gauge up to a height, and those of the wall as it is coursed."""
    return {line for line in _gauge_lines(highest, masonry) if line > 0} | {
        row.top for row in set_coursing(wall, masonry) if row.kind != "ripped"}


def _gauge_lines(highest: int, masonry: Masonry) -> set[int]:
    unit = masonry.unit
    lines = {unit.height_of_courses(count) for count in range(highest // unit.gauge + 2)}
    if unit.half_high is not None:
        lines |= {line + unit.half_high + unit.bed_joint for line in tuple(lines)}
    return lines
