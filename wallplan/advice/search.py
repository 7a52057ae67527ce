"""The best moves of one wall: fewest broken rules, least cutting, fewest moves, shortest way, in that order.

Exact over the offers: choices come in the order of their bound, each is laid, and the search ends where no bound left
is better than what was reached. Where it had to stop before, it says so.
"""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.advice.figures import Figures
from wallplan.advice.frame import Frame
from wallplan.advice.moves import Move, distance, move_wall
from wallplan.advice.offers import Offers
from wallplan.advice.trial import Trials, may_stand
from wallplan.plan.job import Movable, Wall

MOST_TRIALS = 150
"""Walls laid in one search."""

Rank = tuple[int, int, int, int]
"""Broken places, cutting, moves, way in ticks: the order in which moves are better."""


@dataclass(frozen=True)
class Best:
    """The best moves found, () where none is better than leaving the wall alone; ``proven`` that none is better still."""

    moves: tuple[Move, ...]
    figures: Figures
    proven: bool

    @property
    def rank(self) -> Rank:
        """Its place in the order."""
        return rank(self.figures, self.moves)


def rank(figures: Figures, moves: tuple[Move, ...]) -> Rank:
    """Where a wall with these figures, reached by these moves, stands in the order."""
    return (*figures.grade, len(moves), distance(moves))


def find_best(wall: Wall, offers: Offers, movable: Movable, trials: Trials, known: Best | None = None) -> Best:
    """The best of all choices among the offers. ``known`` is one of them, found before."""
    before = trials.lay(wall)
    best = known or Best((), before, proven=True)
    frame = Frame(wall, trials.job.masonry, offers, movable.least_pier)
    begun = trials.laid
    for choice in frame.choose():
        if (0, *choice.bound) >= best.rank:
            return Best(best.moves, best.figures, proven=True)
        moved = move_wall(wall, choice.moves)
        if not choice.moves or not may_stand(moved, trials.job):
            continue
        if trials.laid - begun >= MOST_TRIALS:
            return Best(best.moves, best.figures, proven=False)
        figures = trials.lay(moved)
        if not figures.breaks_more_than(before) and rank(figures, choice.moves) < best.rank:
            best = Best(choice.moves, figures, proven=True)
    return Best(best.moves, best.figures, proven=not frame.gave_up)
