"""Shapes: which pieces must be corner, sash, bond-beam or lintel units, and which a precast lintel replaces.

Corner units show a plain end at wall ends and jambs; sash units take the gasket at a control joint; bond-beam
units carry the course's bar; lintel units stand on an opening's head and its bearings. Common practice, no source.
"""

from __future__ import annotations

from typing import NamedTuple

from wallplan.layout.layers import Part
from wallplan.layout.model import Shape
from wallplan.layout.reach import Reach
from wallplan.layout.spots import Spot, find_covering
from wallplan.plan.coursing import Row
from wallplan.plan.job import Masonry, Wall

PLAIN: Shape = "stretcher"


class Heading(NamedTuple):
    """A lintel in a course: what it is, from where to where it must reach, and from which rise its layer begins."""

    kind: str
    left: int
    right: int
    rise: int


def find_headings(row: Row, reaches: tuple[Reach, ...], parts: tuple[Part, ...]) -> tuple[Heading, ...]:
    """The lintels that stand in a course, of masonry or precast; steel ones take no unit's place."""
    levels = {part.reach: part.level for part in parts if not part.above}
    return tuple(
        Heading(reach.opening.lintel, reach.opening.left - reach.opening.bearing,
                reach.opening.right + reach.opening.bearing, levels.get(reach, 0))
        for reach in reaches
        if reach.lintel_course == row.number and reach.opening.lintel in ("block", "precast")
    )


def set_lintels(spots: list[Spot], headings: tuple[Heading, ...]) -> list[Spot]:
    """One run with its lintels: units become lintel units, or one precast piece takes their place."""
    laid = spots
    for heading in headings:
        layer = sorted((s for s in laid if s.rise >= heading.rise), key=lambda spot: spot.left)
        taken = [layer[index] for index in find_covering(layer, heading.left, heading.right)]
        if taken:
            kept = [spot for spot in laid if spot not in taken]
            laid = sorted([*kept, *_set_lintel(taken, heading)], key=lambda spot: (spot.rise, spot.left))
    return laid


def _set_lintel(taken: list[Spot], heading: Heading) -> list[Spot]:
    if heading.kind == "block":
        return [spot._replace(shape="lintel") for spot in taken]
    first, last = taken[0], taken[-1]
    rise = min(spot.rise for spot in taken)
    top = max(spot.top for spot in taken)
    return [first._replace(length=last.right - first.left, rise=rise, height=top - rise, piece="full", shape="precast")]


def shape_spots(spots: list[Spot], wall: Wall, masonry: Masonry, row: Row,
                span: tuple[int, int] | None = None, ells: frozenset[int] = frozenset()) -> list[Spot]:
    """The pieces of a course with their shapes, as far as the unit's family stocks them.

    ``span`` is where the wall's own masonry begins and ends in the course; left out, at the wall's ends. ``ells`` are ends
    that an L corner unit makes. A jamb shows a plain end only beside its opening: over and under it a joint is a joint.
    """
    stocked, bond_beam = masonry.unit.shapes, row.number in wall.bond_beams
    joints, walls_ends = _sides_of(wall.control_joints, masonry.joint), {*(span or (0, wall.length))}
    shaped = []
    for spot in spots:
        wanted: Shape = PLAIN
        if spot.shape != PLAIN:
            wanted = spot.shape
        elif not ells.isdisjoint((spot.left, spot.right)):
            wanted = "corner L"
        elif bond_beam and "bond beam" in stocked:
            wanted = "bond beam"
        elif "sash" in stocked and not joints.isdisjoint((spot.left, spot.right)):
            wanted = "sash"
        elif "corner" in stocked and not (walls_ends | _jambs_beside(spot, wall, row)).isdisjoint((spot.left, spot.right)):
            wanted = "corner"
        shaped.append(spot._replace(shape=wanted))
    return shaped


def _jambs_beside(spot: Spot, wall: Wall, row: Row) -> set[int]:
    """The jambs of the openings that a piece stands beside, by its height."""
    low, high = row.bottom + spot.rise, row.bottom + spot.top
    return {jamb for opening in wall.openings if opening.bottom < high and opening.top > low
            for jamb in (opening.left, opening.right)}


def _sides_of(joints: tuple[int, ...], width: int) -> frozenset[int]:
    return frozenset(side for centre in joints for side in (centre - width // 2, centre - width // 2 + width))
