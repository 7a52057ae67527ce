"""Where upright bars stand, and how much masonry stands there: cells of a wall that the plan asks to be grouted."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator
from typing import NamedTuple

from wallplan.layout.model import Course, Piece, WallLayout
from wallplan.plan.job import Job

CHANNELS = ("bond beam", "lintel")
"""Shapes whose channel is grouted along its length, so that a cell in them is filled already."""


class Stretch(NamedTuple):
    """Masonry one above the other at one place: bottom and top in ticks, and how many courses have a cell to fill."""

    bottom: int
    top: int
    cells: int


def find_stretches(wall: WallLayout, job: Job) -> tuple[Stretch, ...]:
    """Stretches of all the cells that the plan asks for in a wall; () where it asks for none."""
    return tuple(stretch for at in place_cells(wall, job) for stretch in _rise(wall, at))


def count_cells(wall: WallLayout, job: Job) -> dict[int, int]:
    """Cells to fill in each course, by its number: those that the plan asks for, channels left out; {} for none."""
    found: dict[int, int] = {}
    for at in place_cells(wall, job):
        for course in wall.courses:
            piece = _piece_at(course, at)
            if piece is not None and piece.shape not in ("precast", *CHANNELS):
                found[course.number] = found.get(course.number, 0) + 1
    return found


def place_cells(wall: WallLayout, job: Job) -> tuple[int, ...]:
    """Middles of the cells with bars, ticks from the left end.

    A cell's middle is a quarter of the unit's module from a unit's end. Ends come first, then the spacing from the left
    one, then the cells beside jambs. Spacing is kept as given: a bar that misses its cell by an inch is shifted on site.
    """
    steel, edge, length = job.order.steel, job.masonry.module // 4, wall.wall.length
    places: set[int] = set()
    if steel.cell_spacing is not None and length >= 4 * edge:
        places |= {length - edge, *range(edge, length - 2 * edge, steel.cell_spacing)}
    if steel.jamb_cells:
        for opening in wall.wall.openings:
            places |= {opening.left - edge, opening.right + edge}
    return tuple(sorted(at for at in places if 0 <= at <= length))


def _rise(wall: WallLayout, at: int) -> Iterator[Stretch]:
    begun: Stretch | None = None
    for course in wall.courses:
        piece = _piece_at(course, at)
        if piece is None or piece.shape == "precast":
            if begun is not None:
                yield begun
            begun = None
        else:
            bottom = course.bottom if begun is None else begun.bottom
            filled = 0 if piece.shape in CHANNELS else 1
            begun = Stretch(bottom, course.top, filled + (0 if begun is None else begun.cells))
    if begun is not None:
        yield begun


def _piece_at(course: Course, at: int) -> Piece | None:
    """The piece over a place, or the one whose head joint it falls into; None in an opening."""
    pieces = sorted(course.pieces, key=lambda piece: piece.left)
    index = bisect_right([piece.left for piece in pieces], at) - 1
    if index < 0:
        return None
    piece = pieces[index]
    beside = index + 1 < len(pieces) and pieces[index + 1].left - piece.right < piece.length // 4
    return piece if at <= piece.right or beside else None
