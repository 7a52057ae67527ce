"""In which courses a pier built into a wall is laid: those that the wall has there level and in full, beside it too."""

from __future__ import annotations

from typing import NamedTuple

from wallplan.layout.outline import Bay, find_bays
from wallplan.plan.coursing import Row
from wallplan.plan.job import Masonry, Pier, Wall


class PierRow(NamedTuple):
    """A course of the wall at a pier: the underside of its units over that of its bed, and their height."""

    rise: int
    height: int


def find_pier_rows(wall: Wall, masonry: Masonry, rows: tuple[Row, ...], pier: Pier) -> tuple[PierRow | None, ...]:
    """For each course what of it the pier has, None where it has none; all of them in a wall that is a rectangle.

    Under a slope it is laid as far up as a piece fits beside it.
    """
    if wall.outline is None:
        return tuple(PierRow(row.bed, row.unit_height) for row in rows)
    clear, found = masonry.joint + masonry.least_piece, list[PierRow | None]()
    for row in rows:
        bay = next((bay for bay in find_bays(wall, masonry, row) if _holds(bay, pier, clear)), None)
        found.append(None if bay is None else PierRow(bay.low - row.bottom, bay.high - bay.low))
    return tuple(found)


def _holds(bay: Bay, pier: Pier, clear: int) -> bool:
    left, right = (rake + clear if rake else 0 for rake in bay.rakes)
    return bay.left + left <= pier.left and bay.right - right >= pier.right


def courses_without(found: tuple[PierRow | None, ...]) -> int:
    """The courses (bits) in which a pier has nothing."""
    return sum(1 << number for number, row in enumerate(found, start=1) if row is None)
