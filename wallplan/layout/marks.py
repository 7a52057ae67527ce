"""Marks: a letter for each size that is sawn, over the whole job, the longest first."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from wallplan.layout.spots import Spot
from wallplan.lengths import Measure, print_size
from wallplan.plan.job import Job

LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"

Size = tuple[str, str]
"""A sawn piece's length and height as printed; pieces that print alike are one saw setting."""


class Marks(NamedTuple):
    """Letters by size."""

    measure: Measure
    letters: dict[Size, str]

    def of(self, spot: Spot) -> str | None:
        """The letter of a piece, None where it is not sawn."""
        return self.letters[_size(spot, self.measure)] if spot.piece == "cut" else None


def give_marks(job: Job, spots: Iterable[Spot]) -> Marks:
    """Letters for all pieces that are sawn: A for the longest, then by length, then by height."""
    sizes = {_size(spot, job.measure): (-spot.length, -spot.height) for spot in spots if spot.piece == "cut"}
    ordered = sorted(sizes, key=lambda size: sizes[size])
    return Marks(job.measure, {size: letter(index) for index, size in enumerate(ordered)})


def _size(spot: Spot, measure: Measure) -> Size:
    return print_size(spot.length, measure), print_size(spot.height, measure)


def letter(index: int) -> str:
    """A to Z without I and O (read as 1 and 0 on a wet sheet), then AA, AB and on. ValueError for a negative index."""
    if index < 0:
        raise ValueError(f"a mark's place is 0 or more, not {index}")
    tens, ones = divmod(index, len(LETTERS))
    return (letter(tens - 1) if tens else "") + LETTERS[ones]
