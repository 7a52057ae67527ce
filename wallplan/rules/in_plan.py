"""The building in plan: units of neighbouring walls never overlap, and units and joints fill the walls less openings.

Every course is measured on the ground by shapely, all walls of a building together, in the level bands that its units
leave; courses laid alike are measured once. Shares nothing with the code that lays.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from wallplan.findings import Finding
from wallplan.layout.model import Layout, Piece
from wallplan.lengths import print_size
from wallplan.rules.ground import Bounds, Placed, place_buildings
from wallplan.rules.outline import list_voids
from wallplan.rules.sources import IN_PLAN

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

CUBIC = {"feet": (24_384 * 12, "cu ft"), "metric": (960_000, "cu m")}
"""Ticks to the foot and to the metre, and how a volume is called."""


class Unit(NamedTuple):
    """A unit on the ground, its underside and top from the course's own bottom, and the wall that counts it."""

    shape: BaseGeometry
    bottom: int
    top: int
    placed: Placed


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
        likeness = tuple(_likeness(placed, number) for placed in here)
        if likeness not in known:
            known[likeness] = _measure(here, number, layout)
        found = known[likeness]
        units, joints, net = units + found.units, joints + found.joints, net + found.net
        count += sum(len(_own(placed, number)) for placed in here)
        for placed, at, figure, remedy in found.wrongs:
            broken = True
            yield Finding("in plan", False, placed.layout.wall.name, number, at, figure, "each place taken once", IN_PLAN,
                          remedy)
    if not broken and any(placed.layout.wall.outline for placed in walls):
        yield Finding("in plan", True, walls[0].layout.wall.name, None, None,
                      f"{count} units, none of one wall where another's stands; steps and gables are measured in elevation",
                      "each place taken once", IN_PLAN, "")
    elif not broken:
        yield _tell_held(walls, layout, count, (units, joints, net))


def _tell_held(walls: tuple[Placed, ...], layout: Layout, count: int, volumes: tuple[float, float, float]) -> Finding:
    units, joints, net = volumes
    name = walls[0].layout.wall.name
    ticks, called = CUBIC[layout.job.measure]
    shown = [f"{volume / ticks**3:.3f}" for volume in volumes]
    held = abs(units + joints - net) <= 1e-9 * net
    figure = f"{count} units {shown[0]} {called} and joints {shown[1]}: {len(walls)} walls less openings {shown[2]}"
    return Finding("in plan", held, name, None, None, figure, "units and joints as much as the walls", IN_PLAN,
                   "" if held else "find what is laid twice")


def _own(placed: Placed, number: int) -> tuple[Piece, ...]:
    return tuple(piece for piece in placed.layout.courses[number - 1].pieces if piece.shape != "return")


def _holes_in(placed: Placed, number: int) -> tuple[tuple[int, int, int, int], ...]:
    course, outline = placed.layout.courses[number - 1], placed.layout.wall.outline
    voids = () if outline is None else list_voids(outline, course.bottom, course.top, placed.layout.bed)
    return (*voids, *((one.left, one.right, max(one.bottom - course.bottom, 0), min(one.top, course.top) - course.bottom)
                      for one in placed.layout.wall.openings if one.bottom < course.top and one.top > course.bottom))


def _likeness(placed: Placed, number: int) -> object:
    """Two courses in which this is equal for all walls are measured once."""
    course = placed.layout.courses[number - 1]
    return (course.top - course.bottom, _holes_in(placed, number), tuple(
        (piece.left, piece.length, piece.bottom - course.bottom, piece.height, piece.shape == "corner L", piece.notch)
        for piece in _own(placed, number)))


def _measure(walls: tuple[Placed, ...], number: int, layout: Layout) -> Measured:
    import shapely

    units = [unit for placed in walls for unit in _stand(placed, number, layout)]
    bodies = shapely.union_all([shapely.box(*placed.body) for placed in walls])
    openings = [(shapely.box(*placed.bounds(left, right)), bottom, top)
                for placed in walls for left, right, bottom, top in _holes_in(placed, number)]
    high = max(placed.layout.courses[number - 1].top - placed.layout.courses[number - 1].bottom for placed in walls)
    levels = sorted({0, high, *(at for unit in units for at in (unit.bottom, unit.top)),
                     *(at for _, *ends in openings for at in ends)})
    wrongs, volumes = dict[tuple[Placed, int, str, str], None](), [0.0, 0.0, 0.0]
    for low, top in pairwise(levels):
        band = [unit for unit in units if unit.bottom <= low and unit.top >= top]
        open_here = [shape for shape, bottom, head in openings if bottom <= low and head >= top]
        net = shapely.difference(bodies, shapely.union_all(open_here))
        laid = shapely.union_all([unit.shape for unit in band])
        void = shapely.difference(net, laid)
        for index, volume in enumerate((sum(unit.shape.area for unit in band), void.area, net.area)):
            volumes[index] += volume * (top - low)
        wrongs.update(dict.fromkeys(_overlaps(band, layout)))
        if any(placed.layout.wall.outline for placed in walls):
            continue
        wrongs.update(dict.fromkeys(_leaving(band, net, layout)))
        if band and top - low > _widest(layout):
            wrongs.update(dict.fromkeys(_gaping(walls, void, layout)))
    return Measured(tuple(wrongs), *volumes)


def _stand(placed: Placed, number: int, layout: Layout) -> Iterator[Unit]:
    import shapely

    course = placed.layout.courses[number - 1]
    masonry = layout.job.masonry
    for piece in _own(placed, number):
        parts = placed.parts_of(piece, masonry.unit.ell_return, masonry.joint)
        shape = shapely.union_all([shapely.box(*part) for part in parts])
        low, high = piece.bottom - course.bottom, piece.top - course.bottom
        if piece.rake is not None:
            high = max(other.top for other in _own(placed, number)) - course.bottom  # in plan it is seen from below
        if piece.notch is not None:
            gone = placed.bounds(piece.left + piece.notch.left, piece.left + piece.notch.right)
            yield Unit(shapely.difference(shape, shapely.box(*gone)), low, low + piece.notch.height, placed)
            low += piece.notch.height
        yield Unit(shape, low, high, placed)


def _widest(layout: Layout) -> int:
    """No joint nor bed of the plan is wider than this."""
    masonry = layout.job.masonry
    return 2 * max(masonry.widest_joint, masonry.joint, masonry.unit.bed_joint)


def _overlaps(band: list[Unit], layout: Layout) -> Iterator[tuple[Placed, int, str, str]]:
    import numpy as np
    import shapely

    shapes = np.array([unit.shape for unit in band], dtype=object)
    one, other = shapely.STRtree(shapes).query(shapes, predicate="intersects")
    pairs = one < other
    shared = shapely.intersection(shapes[one[pairs]], shapes[other[pairs]])
    for first, second, part in zip(one[pairs].tolist(), other[pairs].tolist(), shared.tolist(), strict=True):
        walls = band[first].placed, band[second].placed
        if part.area > 0 and (walls[0] is not walls[1] or not walls[0].layout.wall.outline):
            yield _tell_overlap(*walls, part, layout)


def _tell_overlap(one: Placed, other: Placed, shared: BaseGeometry, layout: Layout) -> tuple[Placed, int, str, str]:
    left, bottom, right, top = (round(at) for at in shared.bounds)
    walls = sorted({one.layout.wall.name, other.layout.wall.name})
    size = print_size(min(right - left, top - bottom), layout.job.measure)
    return (one, _begin(one, shared), f"units of {' and '.join(walls)} take the same place, {size} deep",
            "let one run through and stop the other")


def _leaving(band: list[Unit], net: BaseGeometry, layout: Layout) -> Iterator[tuple[Placed, int, str, str]]:
    import shapely

    shapely.prepare(net)
    for unit in band:
        if not net.covers(unit.shape):
            rest = shapely.difference(unit.shape, net)
            left, bottom, right, top = (round(at) for at in rest.bounds)
            size = print_size(max(right - left, top - bottom), layout.job.measure)
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
    return placed.along(Bounds(*(round(at) for at in shape.bounds)))
