"""The search and a constraint solver on the same walls: whether both cut as little, and how much sooner the search is done.

Both begin with the wall's runs and joints fixed and end with the least cutting proven. The solver's model is the one that the
oracle tests hold the search against, with the tightenings that made it quickest: runs as paths of pieces, a cut for each run
that stock does not fill, the linear relaxation at its full strength, probing left out. It has one core, as the search has, and a
limit on its work, which it measures itself: about a second of the processor each, and the same on any machine. The search also settles short pieces, saw settings, laps and where cuts show, and the layout is set out piece by
piece; the solver is asked for cutting alone. Times are seconds of the processor, a model's building in Python included.
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from tests.oracle.bond_model import least_cutting
from tests.oracle.random_walls import SmallWall, count_cutting
from wallplan.layout.build import lay


class Compared(NamedTuple):
    """One wall: seconds of the search and of the solver, what both cut. ``least`` is None where no layout keeps the rules.

    ``solved`` is False where the solver had not proven it within its limit; its seconds are then what it had taken.
    """

    ours: float
    theirs: float
    cutting: int
    least: int | None
    solved: bool

    @property
    def ratio(self) -> float:
        """How many times as long the solver took."""
        return self.theirs / self.ours


def compare(wall: SmallWall, limit: float) -> Compared:
    """A wall laid by the search, then by the solver within ``limit`` of its own measure of work."""
    begun = time.process_time()
    layout = lay(wall.job)
    laid = time.process_time()
    try:
        least, solved = least_cutting(wall.numbers, wall.courses, limit), True
    except RuntimeError:
        least, solved = None, False
    return Compared(laid - begun, time.process_time() - laid, count_cutting(wall, layout), least, solved)


class Held(NamedTuple):
    """What came of many walls: those with a legal layout that the solver proved, and how many it did not."""

    solved: Sequence[Compared]
    unsolved: int

    @property
    def equal(self) -> int:
        """How many of the solved walls both cut alike."""
        return sum(one.cutting == one.least for one in self.solved)

    @property
    def ratio(self) -> float:
        """The median ratio of the solved walls. Those that were not solved are left out, where it would be more."""
        return statistics.median(one.ratio for one in self.solved)

    def tell(self, name: str, limit: float) -> str:
        """One row of a table."""
        if not self.solved:
            return f"| {name} | 0 | 0 | {self.unsolved} within {limit:g} | | | | |"
        ours, theirs = (statistics.median(times) for times in zip(*((one.ours, one.theirs) for one in self.solved), strict=True))
        return (f"| {name} | {len(self.solved)} | {self.equal} | {self.unsolved} within {limit:g} | {ours * 1000:.1f} ms | "
                f"{theirs * 1000:.0f} ms | {self.ratio:.0f} | {min(one.ratio for one in self.solved):.0f} |")


def compare_all(walls: Iterable[SmallWall], limit: float) -> Held:
    """All walls, one after the other; those without a legal layout are left out."""
    found = [compare(wall, limit) for wall in walls]
    return Held([one for one in found if one.solved and one.least is not None], sum(not one.solved for one in found))
