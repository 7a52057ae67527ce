"""Sizes that a pier may have: what whole, half and quarter units fill with their joints, in cells of a quarter unit."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.plan.job import Masonry

PARTS = (4, 3, 2, 1)
"""Into how many cells a unit's length is taken apart: quarters where they are no shorter than the lap."""

MOST_CELLS = 12
"""A pier is at most so many cells wide and deep: three units."""

MOST_SAWN = 9
"""A pier that whole and half units do not fill is at most so many cells wide."""

HAIR = 960
"""A size this near to one that units fill is that one: 1 mm, less than a tape is read to."""


@dataclass(frozen=True)
class Lattice:
    """A masonry's cells: ``step`` long with a joint; a unit is ``full`` long and ``wide`` wide, the wall ``thick`` thick."""

    step: int
    joint: int
    full: int
    wide: int
    thick: int

    def size(self, cells: int) -> int:
        """The actual size of so many cells, ticks: without the joint after the last."""
        return cells * self.step - self.joint

    def count(self, size: int) -> int | None:
        """How many cells a size is; None where it is not within a HAIR of any."""
        cells = (size + self.joint + self.step // 2) // self.step
        return cells if cells > 0 and abs(self.size(cells) - size) <= HAIR else None

    def is_filled(self, columns: int, rows: int) -> bool:
        """Whether units fill a rectangle of so many cells: one of its sides is a whole number of units' widths.

        That it must be is the theorem of S. Wagon, Fourteen Proofs of a Result about Tiling a Rectangle (American
        Mathematical Monthly 94, 1987); that it is enough, rows of units show.
        """
        return columns % self.wide == 0 or rows % self.wide == 0


def find_lattice(masonry: Masonry) -> Lattice | None:
    """The cells of a masonry; None where unit and wall are no whole number of them thick, so that no bond comes out."""
    for parts in PARTS:
        step, rest = divmod(masonry.module, parts)
        if rest or step < masonry.least_lap:
            continue
        counts = [_count(thick, step, masonry) for thick in (masonry.unit.thickness, masonry.thickness)]
        if None not in counts:
            wide, thick = (count or 0 for count in counts)
            return Lattice(step, masonry.joint, parts, wide, thick)
    return None


def _count(thick: int, step: int, masonry: Masonry) -> int | None:
    """How many cells a thickness takes. Between two units side by side the joint takes what both are off, within limits."""
    cells = (thick + masonry.joint + step // 2) // step
    joint = masonry.joint + 2 * (cells * step - thick - masonry.joint)
    return cells if cells and masonry.tightest_joint <= joint <= masonry.widest_joint else None
