"""What pieces cost at least, whatever a run's joints have to give: for a bound that no layout is under."""

from __future__ import annotations

from wallplan.bond.figures import Stretch
from wallplan.bond.laying import Begun, Laying
from wallplan.bond.pieces import near_stock


class Generous(Laying):
    """As Laying, but each run's end pieces take a stock length where as many joints as there can be would let them.

    Nothing is owed: so it is never more than what a run as laid costs, which may have more joints than it has at least.
    """

    def _begin_run(self, at: int, length: int, weight: int) -> tuple[Begun, ...]:
        (cost, setting, _, _), *_ = sorted([
            (*self.charge(taken, at, at + length, 2, weight), at, 0)
            for taken in (length, *near_stock(self.terms, length, self._give(self.reach[at] - at)))])
        return ((cost, setting, at, 0),) if cost < self.most else ()

    def _settle(self, stretch: Stretch, length: int, left: int) -> tuple[int, int]:
        return min(self.charge(taken, stretch.end - length, stretch.end, stretch.end_shows, stretch.weight)
                   for taken in (length, *near_stock(self.terms, length, self._give(stretch.end - stretch.start))))

    def _give(self, length: int) -> int:
        """The most that a run's joints give: a cut more than stock lengths alone is a joint more, and saves an end piece."""
        return self.terms.share(length // min(self.terms.stock) + 1)
