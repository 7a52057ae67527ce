"""Piers as laid: their courses with every piece lettered and on its height."""

from __future__ import annotations

from wallplan.layout.marks import Marks
from wallplan.layout.model import Piece, PierCourse, PierLayout, PierPiece
from wallplan.layout.piers import PierCourses, PierSpot, count_pier_cuts
from wallplan.plan.coursing import Row
from wallplan.plan.job import Masonry


def finish_piers(piers: tuple[PierCourses, ...], rows: tuple[Row, ...], masonry: Masonry,
                 marks: Marks) -> tuple[PierLayout, ...]:
    """The piers of a wall, finished; () for none."""
    return tuple(_finish(pier, rows, masonry, marks) for pier in piers)


def _finish(laid: PierCourses, rows: tuple[Row, ...], masonry: Masonry, marks: Marks) -> PierLayout:
    courses = tuple(
        PierCourse(row.number, tied, tuple(_piece(unit, row, laid.pier.name, marks) for unit in units))
        for row, (tied, units) in zip(rows, laid.courses, strict=True))
    straight = laid.bond.on_faces * laid.step, laid.bond.inside * laid.step
    return PierLayout(laid.pier, courses, count_pier_cuts(laid, masonry), straight, laid.bond.proven)


def _piece(unit: PierSpot, row: Row, name: str, marks: Marks) -> PierPiece:
    spot = unit.spot
    piece = Piece(spot.left, spot.length, row.bottom + spot.rise, spot.height, spot.piece, spot.shape, marks.of(spot), None,
                  name)
    return PierPiece(piece, unit.near, unit.along, unit.deep)
