"""Marks: a letter for each size that is sawn, over the whole job, the longest first."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from wallplan.layout.spots import Spot
from wallplan.lengths import Measure, print_size
from wallplan.plan.job import Job

SAWN = ("cut", "closer")
"""Names of pieces that have a letter."""

LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"

Size = tuple[str, ...]
"""A sawn piece's length and height as printed, and of a raked one its top and its sides, the lower first; pieces that
print alike, or would turned end for end, are one saw setting."""


class Marks(NamedTuple):
    """Letters by size."""

    measure: Measure
    letters: dict[Size, str]

    def of(self, spot: Spot) -> str | None:
        """The letter of a piece, None where it is not sawn."""
        return self.letters[_size(spot, self.measure)] if spot.piece in SAWN else None


def give_marks(job: Job, spots: Iterable[Spot]) -> Marks:
    """Letters for all pieces that are sawn: A for the longest, then by length, then by height; raked ones come last."""
    sizes = {_size(spot, job.measure): (spot.rake is not None, spot.notch is not None, -spot.length, -spot.height)
             for spot in spots if spot.piece in SAWN}
    ordered = sorted(sizes, key=lambda size: sizes[size])
    return Marks(job.measure, {size: letter(index) for index, size in enumerate(ordered)})


def _size(spot: Spot, measure: Measure) -> Size:
    size = print_size(spot.length, measure), print_size(spot.height, measure)
    if spot.notch is not None:
        wide, high = (print_size(ticks, measure) for ticks in (spot.notch.right - spot.notch.left, spot.notch.height))
        return (*size, "notch", wide, high)
    if spot.piece == "closer":
        return (*size, "closer")
    if spot.rake is None:
        return size
    sides = sorted(((spot.rake.left, spot.rake.top_left), (spot.rake.right, spot.length - spot.rake.top_right)))
    return (*size, *(print_size(ticks, measure) for side in sides for ticks in side))


def letter(index: int) -> str:
    """A to Z without I and O (read as 1 and 0 on a wet sheet), then AA, AB and on. ValueError for a negative index."""
    if index < 0:
        raise ValueError(f"a mark's place is 0 or more, not {index}")
    tens, ones = divmod(index, len(LETTERS))
    return (letter(tens - 1) if tens else "") + LETTERS[ones]
