"""The best moves of one wall: fewest broken rules, least cutting, fewest moves, shortest way, in that order.

Exact over the offers: choices come in the order of their bound, each is laid, and the search ends where no bound left
is better than what was reached. Where it had to stop before, it says so.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from heapq import heappop, heappush

from wallplan.advice.figures import Figures
from wallplan.advice.frame import Bound, Choice, Frame
from wallplan.advice.moves import Move, Thing, distance, move_wall
from wallplan.advice.offers import Offers
from wallplan.advice.trial import Trials, may_stand
from wallplan.plan.job import Movable, Wall

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
    """The best of all sets of moves among the offers. ``known`` is one of them, found before."""
    before, begun = trials.lay(wall), trials.spent
    best = known or Best((), before, proven=True)
    frame = Frame(wall, trials.job.masonry, offers, movable.least_pier, ends=trials.ends)
    def reached() -> Rank:
        return best.rank

    for choice, moved in _list_choices(wall, frame, trials, reached):
        if (0, *choice.bound) >= best.rank:
            break
        if trials.out_of(begun):
            return replace(best, proven=False)
        figures = trials.lay(moved)
        if not figures.breaks_more_than(before) and rank(figures, choice.moves) < best.rank:
            best = Best(choice.moves, figures, proven=True)
    return replace(best, proven=not frame.gave_up)


def find_alone(wall: Wall, offers: Offers, movable: Movable, trials: Trials, most: int) -> list[Best]:
    """The best move of each thing alone, of so many things at most, best first; what saves nothing is left out."""
    before, begun = trials.lay(wall), trials.spent
    frame = Frame(wall, trials.job.masonry, offers, movable.least_pier, most=1, ends=trials.ends)
    unmoved: Rank = (*before.grade, 0, 0)
    found: dict[Thing, Best] = {}

    def worst() -> Rank:
        ranked = _rank_first(found, most)
        return ranked[-1].rank if len(ranked) == most else unmoved

    for choice, moved in _list_choices(wall, frame, trials, worst):
        if (0, *choice.bound) >= worst():
            break
        if trials.out_of(begun):
            return _rank_first(found, most)
        figures = trials.lay(moved)
        reached, thing = rank(figures, choice.moves), choice.moves[0].thing
        known = found[thing].rank if thing in found else unmoved
        if not figures.breaks_more_than(before) and reached < known and figures.grade < before.grade:
            found[thing] = Best(choice.moves, figures, proven=False)
    return [replace(best, proven=not frame.gave_up) for best in _rank_first(found, most)]


def _rank_first(found: dict[Thing, Best], most: int) -> list[Best]:
    return sorted(found.values(), key=lambda best: best.rank)[:most]


def _list_choices(wall: Wall, frame: Frame, trials: Trials, reached: Callable[[], Rank]) -> Iterator[tuple[Choice, Wall]]:
    """Choices in the order of their bound, with the walls they make; what may not stand in a plan is passed over.

    The bound run by run says whose turn it is to be weighed; what the courses cut alone then says whose to be laid. Only
    what may be better than ``reached`` is weighed.
    """
    heap, count, begun = list[tuple[Bound, int, Choice, Wall]](), 0, trials.spent
    for choice in frame.choose():
        while heap and heap[0][0] <= choice.bound:
            yield heappop(heap)[2:]
        if (0, *choice.bound) >= reached():
            break
        if trials.out_of(begun, part=2):
            frame.gave_up = True
            break
        moved = move_wall(wall, choice.moves)
        if choice.moves and may_stand(moved, trials.job):
            bound = max(choice.bound[0], trials.weigh(moved)), *choice.bound[1:]
            count += 1
            heappush(heap, (bound, count, replace(choice, bound=bound), moved))
    while heap:
        yield heappop(heap)[2:]
