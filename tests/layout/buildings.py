"""Closed buildings for tests, in a line each."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

from tests.jobs import broken, inches, make_job, make_masonry, make_wall
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.job import EndKind, Job, Masonry, Opening
from wallplan.rules.check import check

OUT: EndKind = "outside corner"
IN: EndKind = "inside corner"
Side = tuple[int, EndKind]
"""A wall's length in ticks and the corner at its right end."""
Row = list[Fraction | int]
"""Nominal lengths of a course's pieces in inches, left to right; the other wall's end as what it takes, negative."""


def build(masonry: Masonry, height: int, *sides: Side, openings: dict[int, tuple[Opening, ...]] | None = None) -> Job:
    """A closed building from its walls, in order."""
    walls = [
        replace(make_wall(length, height, (openings or {}).get(number, ()), name=f"wall {number}"),
                left_end=sides[number - 1][1], right_end=right)
        for number, (length, right) in enumerate(sides)
    ]
    return make_job(masonry, *walls)


def rectangle(masonry: Masonry, across: int, deep: int, height: int) -> Job:
    """Four walls, out to out."""
    return build(masonry, height, (across, OUT), (deep, OUT), (across, OUT), (deep, OUT))


def count_course(layout: Layout, number: int) -> int:
    """Units in a course of the whole building, each counted once."""
    return sum(piece.shape != "return" for wall in layout.walls for piece in wall.courses[number - 1].pieces)


def row_of(layout: Layout, wall: int, course: int) -> Row:
    """A course's pieces as a Row."""
    joint = layout.job.masonry.joint
    pieces = layout.walls[wall].courses[course - 1].pieces
    lengths = [Fraction(piece.length + joint, inches(1)) * (-1 if piece.shape == "return" else 1) for piece in pieces]
    return [int(length) if length.denominator == 1 else length for length in lengths]


def joints_of(row: Row) -> list[Fraction | int]:
    """Where a course's head joints stand, nominal inches from the corner; the joint against the other leg's end too."""
    return [sum(abs(length) for length in row[:index]) for index in range(1, len(row))]


def lay_rectangle(unit: str, across: int, deep: int, courses: int, **changes: Any) -> Layout:
    """A closed rectangle of so many nominal inches out to out, joints fixed; every rule held."""
    masonry = make_masonry(unit, joints_move=False, **changes)
    layout = lay(rectangle(masonry, inches(across) - masonry.joint, inches(deep) - masonry.joint, inches(8 * courses)))
    assert broken(check(layout)) == []
    return layout
