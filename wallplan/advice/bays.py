"""Bays of garden walls: the masonry between two piers against the bond, and the centres at which it comes out.

Between two faces a bay is a whole number of half units and one joint more than they have between them (BDA's coordinating
size CO+); between a free end and a pier a whole number of halves. Piers are moved until it is (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from wallplan.lengths import TICKS_PER_MM, Measure, print_length
from wallplan.plan.job import Masonry, Pier, Wall

NEAR = 20 * TICKS_PER_MM
"""A control joint whose middle is no farther than this from a pier stands at its face."""


@dataclass(frozen=True)
class Bay:
    """A bay, ticks: from ``left`` to ``right`` between faces, how many alike follow each other, and how many joints it has
    beside its ends: 2 between piers, 1 where one end is free. ``centres`` is from middle to middle of its piers, None at a
    free end; ``width`` is what the piers at its ends take of a row of such bays besides the centres."""

    name: str
    left: int
    right: int
    count: int
    sides: int
    centres: int | None = None
    width: int = 0

    @property
    def size(self) -> int:
        """From face to face, ticks."""
        return self.right - self.left


def find_bays(wall: Wall) -> tuple[Bay, ...]:
    """The bays of a wall from left to right, those alike that follow each other as one; () for a wall without piers.

    What an opening or a control joint parts is no bay; one at a pier's face parts nothing.
    """
    found: list[Bay] = []
    for bay in _list_bays(wall):
        last = found[-1] if found else None
        if last and last.centres is not None and (last.size, last.centres) == (bay.size, bay.centres):
            found[-1] = replace(last, count=last.count + 1)
        else:
            found.append(bay)
    return tuple(found)


def bond_halves(masonry: Masonry) -> int:
    """What a bay is a whole number of: half a unit and its joint, in thirds and quarters the bond's own step."""
    return masonry.ideal_lap if masonry.bond in ("third", "quarter") else masonry.module // 2


def tell_bricks(size: int, sides: int, masonry: Masonry) -> str:
    """A bay in units, as a mason says it: ``11.33 bricks``, ``11 1/2 bricks``."""
    units = Fraction(size - (sides - 1) * masonry.joint, masonry.module)
    whole, part = divmod(units, 1)
    shown = f"{int(whole)}" if not part else f"{int(whole)} 1/2" if part == Fraction(1, 2) else f"{float(units):.2f}"
    return f"{shown} {masonry.unit.kind}{'' if units == 1 else 's'}"


def offer_bays(bay: Bay, masonry: Masonry, measure: Measure) -> tuple[str, ...]:
    """The two sizes nearest to a bay that the bond fills, the shorter first: its centres, and its row of bays over all."""
    step, joint = bond_halves(masonry), (bay.sides - 1) * masonry.joint
    low = (bay.size - joint) // step * step + joint
    return tuple(_tell(bay, size, masonry, measure) for size in (low, low + step) if size > joint)


def _tell(bay: Bay, size: int, masonry: Masonry, measure: Measure) -> str:
    bricks = tell_bricks(size, bay.sides, masonry)
    if bay.centres is None:
        return f"make it {_show(size, measure)} ({bricks})"
    centres = bay.centres - bay.size + size
    over_all = bay.count * centres + bay.width
    row = f"{bay.count} bays {_show(over_all, measure)} over all" if bay.count > 1 else (
        f"{_show(over_all, measure)} over both piers")
    return f"piers at {_show(centres, measure)} centres ({bricks}, {_show(size, measure)} between faces): {row}"


def _show(ticks: int, measure: Measure) -> str:
    return print_length(ticks, measure) + ("" if measure == "feet" else " mm")


def _list_bays(wall: Wall) -> Iterator[Bay]:
    piers = wall.piers
    if not piers:
        return
    if piers[0].left and wall.left_end == "end" and not _parted(wall, 0, piers[0].left):
        yield Bay(f"left end to {piers[0].name}", 0, piers[0].left, 1, 1)
    for one, other in pairwise(piers):
        if not _parted(wall, one.right, other.left):
            yield Bay(f"{one.name} to {other.name}", one.right, other.left, 1, 2, _middle(other) - _middle(one),
                      (one.width + other.width) // 2)
    last = piers[-1]
    if last.right < wall.length and wall.right_end == "end" and not _parted(wall, last.right, wall.length):
        yield Bay(f"{last.name} to right end", last.right, wall.length, 1, 1)


def _middle(pier: Pier) -> int:
    return (pier.left + pier.right) // 2


def _parted(wall: Wall, left: int, right: int) -> bool:
    """Whether an opening, or a control joint that does not stand at one of its faces, lies in a stretch."""
    inner = [centre for centre in wall.control_joints if left < centre < right]
    at_faces = [centre for pier in wall.piers for centre in inner if 0 < max(pier.left - centre, centre - pier.right) < NEAR]
    return (any(opening.left < right and opening.right > left for opening in wall.openings)
            or any(centre not in at_faces for centre in inner))
