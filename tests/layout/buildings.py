"""Closed buildings for tests, in a line each."""

from __future__ import annotations

from dataclasses import replace

from tests.jobs import make_job, make_wall
from wallplan.layout.model import Layout
from wallplan.plan.job import EndKind, Job, Masonry, Opening

OUT: EndKind = "outside corner"
IN: EndKind = "inside corner"
Side = tuple[int, EndKind]
"""A wall's length in ticks and the corner at its right end."""


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
