"""The joints of piers that a one-brick wall keeps clear of while it is bonded."""

from __future__ import annotations

from collections.abc import Iterator

from wallplan.bond.one_brick_figures import Beside
from wallplan.layout.corners import WallEnds
from wallplan.plan.job import Masonry


def find_sides(left: int, right: int, courses: tuple[int, int], ends: WallEnds, masonry: Masonry) -> Iterator[Beside]:
    """The joints at the sides of piers and within them, above and below the courses in which a run goes on there.

    The run stands from ``left`` to ``right`` in the odd and the even courses (bits); nothing for no piers.
    """
    for crossing in ends.crossings:
        here = courses[1 - crossing.parity]
        within = (at + masonry.joint for at in crossing.inner)
        for place in (crossing.left, *within, crossing.right + masonry.joint):
            at = place - left
            if here and 0 < at < right - left + masonry.joint:
                yield Beside(at, 1 - crossing.parity, 2 * here.bit_count(), False)
