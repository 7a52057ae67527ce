"""Courses that are laid alike, folded into one page of the build-up."""

from __future__ import annotations

from typing import NamedTuple

from wallplan.layout.model import Course, WallLayout


class Fold(NamedTuple):
    """A course that is shown, and the numbers of the later ones that are laid as it is."""

    course: Course
    alike: tuple[int, ...]


def fold_courses(wall: WallLayout) -> tuple[Fold, ...]:
    """The courses that differ from all before them, lowest first, each with those laid alike; () for no courses.

    Odd courses are alike only odd ones, even only even ones. What leads a piece belongs to does not count. Courses below a
    wall's footing, where a building steps, have no pieces and are left out.
    """
    found: dict[object, list[Course]] = {}
    for course in filter(lambda course: course.pieces, wall.courses):
        found.setdefault(_likeness(course), []).append(course)
    return tuple(Fold(first, tuple(course.number for course in rest)) for first, *rest in found.values())


def _likeness(course: Course) -> object:
    pieces = tuple(piece._replace(bottom=piece.bottom - course.bottom, lead=None) for piece in course.pieces)
    return course.number % 2, course.top - course.bottom, pieces
