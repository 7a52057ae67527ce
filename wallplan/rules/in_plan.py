"""The building in plan: units of neighbouring walls never overlap, and units and joints fill the walls less openings.

Every course is measured on the ground by shapely, all walls of a building together, in the level bands that its units,
steps and slopes leave; courses laid alike are measured once. Shares nothing with the code that lays.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from wallplan.findings import Finding
from wallplan.layout.model import Layout
from wallplan.lengths import TICKS_PER_MM, print_size
from wallplan.rules.ground import Bounds, Placed, place_buildings
from wallplan.rules.levels import Stood, cut_body, cut_openings, cut_units, list_levels, own_pieces, pier_pieces, slopes_past
from wallplan.rules.sources import IN_PLAN

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

CUBIC = {"feet": (24_384 * 12, "cu ft"), "metric": (960_000, "cu m")}
"""Ticks to the foot and to the metre, and how a volume is called."""

SLACK = TICKS_PER_MM // 2
"""So far a unit may reach over a slope: what rounding to ticks leaves along a shallow one."""


@dataclass(frozen=True)
class Measured:
    """One course: (wall, place along it, figure, remedy) of what is wrong, and volumes in cubic ticks."""

    wrongs: tuple[tuple[Placed, int, str, str], ...]
    units: float
    joints: float
    net: float


def check_in_plan(layout: Layout) -> tuple[Finding, ...]:
    """Each building of a job: held with its volumes, or each overlap, hole and unit outside the walls. () for no corners."""
    return tuple(finding for walls in place_buildings(layout) for finding in _check_building(walls, layout))


def _check_building(walls: tuple[Placed, ...], layout: Layout) -> Iterator[Finding]:
    known: dict[object, Measured] = {}
    units = joints = net = 0.0
    broken, count = False, 0
    for number in range(1, max(len(placed.layout.courses) for placed in walls) + 1):
        here = tuple(placed for placed in walls if number <= len(placed.layout.courses))
        base = min(placed.layout.courses[number - 1].bottom for placed in here)
        likeness = tuple(_likeness(placed, number, base) for placed in here)
        if likeness not in known:
            known[likeness] = _measure(here, number, layout)
        found = known[likeness]
        units, joints, net = units + found.units, joints + found.joints, net + found.net
        count += sum(len(own_pieces(placed, number)) + len(pier_pieces(placed, number)) for placed in here)
        for placed, at, figure, remedy in found.wrongs:
            broken = True
            yield Finding("in plan", False, placed.layout.wall.name, number, at, figure, "each place taken once", IN_PLAN,
                          remedy)
    if not broken:
        yield _tell_held(walls, layout, count, (units, joints, net))


def _tell_held(walls: tuple[Placed, ...], layout: Layout, count: int, volumes: tuple[float, float, float]) -> Finding:
    units, joints, net = volumes
    name = walls[0].layout.wall.name
    ticks, called = CUBIC[layout.job.measure]
    shown = [f"{volume / ticks**3:.3f}" for volume in volumes]
    held = abs(units + joints - net) <= 1e-9 * net
    built = f"{len(walls)} wall{'s' if len(walls) > 1 else ''}" + (
        " with piers" if any(placed.layout.piers for placed in walls) else "")
    figure = f"{count} units {shown[0]} {called} and joints {shown[1]}: {built} less openings {shown[2]}"
    return Finding("in plan", held, name, None, None, figure, "units and joints as much as the walls", IN_PLAN,
                   "" if held else "find what is laid twice")


def _likeness(placed: Placed, number: int, base: int) -> object:
    """Two courses in which this is equal for all walls are measured once."""
    course, wall = placed.layout.courses[number - 1], placed.layout.wall
    openings = tuple((one.left, one.right, max(one.bottom, course.bottom) - base, min(one.top, course.top) - base)
                     for one in wall.openings if one.bottom < course.top and one.top > course.bottom)
    return (course.bottom - base, course.top - base, openings, _outline_in(placed, number, base), tuple(
        (piece.left, piece.length, piece.bottom - base, piece.height, piece.shape == "corner L", piece.notch, piece.leaf)
        for piece in own_pieces(placed, number)), tuple(
        (one.piece.left, one.near, one.along, one.deep, one.piece.bottom - base, one.piece.height)
        for one in pier_pieces(placed, number)))


def _outline_in(placed: Placed, number: int, base: int) -> object:
    """What of a wall's outline matters in a course; under a slope no two courses are alike."""
    course, outline = placed.layout.courses[number - 1], placed.layout.wall.outline
    if outline is None or slopes_past(placed, course.bottom, course.top):
        return None if outline is None else number
    return tuple((at, min(max(level, course.bottom), course.top) - base) for line in (outline.footing, outline.top)
                 for at, level in line)


def _measure(walls: tuple[Placed, ...], number: int, layout: Layout) -> Measured:
    """All walls of a building in one course, level band by level band."""
    bottom, top = (pick(edge) for pick, edge in (
        (min, [placed.layout.courses[number - 1].bottom for placed in walls]),
        (max, [placed.layout.courses[number - 1].top for placed in walls])))
    levels = {level for placed in walls for level in list_levels(placed, number) if bottom <= level <= top}
    wrongs, volumes = dict[tuple[Placed, int, str, str], None](), [0.0, 0.0, 0.0]
    for low, high in pairwise(sorted(levels)):
        areas, found = _measure_band(walls, number, (low, high), layout)
        for index, area in enumerate(areas):
            volumes[index] += area * (high - low)
        wrongs.update(dict.fromkeys(found))
    return Measured(tuple(wrongs), *volumes)


def _measure_band(walls: tuple[Placed, ...], number: int, band: tuple[int, int],
                  layout: Layout) -> tuple[tuple[float, float, float], list[tuple[Placed, int, str, str]]]:
    """Areas of units, joints and walls half way up a band of one course, and what is wrong there."""
    import shapely

    middle, masonry, outlined = sum(band) / 2, layout.job.masonry, any(placed.layout.wall.outline for placed in walls)
    units = [unit for placed in walls for unit in cut_units(placed, number, middle, masonry)]
    openings = shapely.union_all([shape for placed in walls for shape in cut_openings(placed, middle)])
    laid = shapely.union_all([unit.shape for unit in units])
    net = limits = shapely.difference(shapely.union_all([body for placed in walls for body in cut_body(placed, middle)]),
                                      openings)
    if outlined:
        # How far a level top may be off its courses is the steps' to judge, and that a slope is met, the cover's.
        over = masonry.unit.bed_joint // 2
        raised = shapely.union_all([body for placed in walls for body in cut_body(placed, middle, over)])
        limits = shapely.buffer(shapely.difference(raised, openings), SLACK, join_style="mitre")
        net = shapely.union(net, shapely.intersection(limits, laid))
    void = shapely.difference(net, laid)
    wrongs = [*_overlaps(units, layout), *_leaving(units, limits, band[1] - band[0], layout)]
    if units and band[1] - band[0] > _widest(layout):
        soft = [part for placed in walls if slopes_past(placed, *band) for part in _beside_slope(placed, band, layout)]
        wrongs += _gaping(walls, shapely.difference(void, shapely.union_all(soft)) if soft else void, layout)
    return (sum(unit.shape.area for unit in units), void.area, net.area), wrongs


def _beside_slope(placed: Placed, band: tuple[int, int], layout: Layout) -> list[BaseGeometry]:
    """Where a band lies beside a slope: what is too narrow there for the least piece is made up in mortar."""
    import shapely

    foot, head = (shapely.union_all(cut_body(placed, level)) for level in (band[0] + 1, band[1] - 1))
    reach = layout.job.masonry.least_piece + _widest(layout)
    return [shapely.buffer(shapely.symmetric_difference(foot, head), reach, join_style="mitre")]


def _widest(layout: Layout) -> int:
    """No joint nor bed of the plan is wider than this."""
    masonry = layout.job.masonry
    return 2 * max(masonry.widest_joint, masonry.joint, masonry.unit.bed_joint)


def _overlaps(band: list[Stood], layout: Layout) -> Iterator[tuple[Placed, int, str, str]]:
    import numpy as np
    import shapely

    shapes = np.array([unit.shape for unit in band], dtype=object)
    one, other = shapely.STRtree(shapes).query(shapes, predicate="intersects")
    pairs = one < other
    shared = shapely.intersection(shapes[one[pairs]], shapes[other[pairs]])
    for first, second, part in zip(one[pairs].tolist(), other[pairs].tolist(), shared.tolist(), strict=True):
        walls = band[first].placed, band[second].placed
        if part.area > 0:
            yield _tell_overlap(*walls, part, layout)


def _tell_overlap(one: Placed, other: Placed, shared: BaseGeometry, layout: Layout) -> tuple[Placed, int, str, str]:
    left, bottom, right, top = (round(at) for at in shared.bounds)
    walls = sorted({one.layout.wall.name, other.layout.wall.name})
    size = print_size(min(right - left, top - bottom), layout.job.measure)
    return (one, _begin(one, shared), f"units of {' and '.join(walls)} take the same place, {size} deep",
            "let one run through and stop the other")


def _leaving(band: list[Stood], net: BaseGeometry, deep: int, layout: Layout) -> Iterator[tuple[Placed, int, str, str]]:
    import shapely

    shapely.prepare(net)
    for unit in band:
        if not net.covers(unit.shape):
            rest = shapely.difference(unit.shape, net)
            if rest.is_empty:  # they touch, and the corners of the net are rounded
                continue
            left, bottom, right, top = (round(at) for at in rest.bounds)
            across = max(right - left, top - bottom)
            if deep < min(across, _widest(layout)):
                size = print_size(deep, layout.job.measure)
                yield unit.placed, _begin(unit.placed, rest), f"a unit reaches {size} into an opening", f"cut {size} away"
            else:
                size = print_size(across, layout.job.measure)
                yield unit.placed, _begin(unit.placed, rest), f"a unit stands {size} outside the walls", "shorten it"


def _gaping(walls: tuple[Placed, ...], void: BaseGeometry, layout: Layout) -> Iterator[tuple[Placed, int, str, str]]:
    """Places where more than a joint is left open."""
    import shapely

    for hole in shapely.get_parts(shapely.buffer(void, -_widest(layout) / 2, join_style="mitre")).tolist():
        if hole.is_empty or not hole.area:
            continue
        placed = min(walls, key=lambda one: shapely.box(*one.body).distance(hole))
        yield placed, _begin(placed, hole) - _widest(layout) // 2, "nothing is laid here", "lay the missing piece"


def _begin(placed: Placed, shape: BaseGeometry) -> int:
    return round(placed.along(Bounds(*(round(at) for at in shape.bounds))))
