"""Job -> advice: for each wall the best set of moves and the best move of each thing alone, ranked over the job.

Walls that meet at corners are counted, and left as they are: only walls that stand alone are advised on.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from wallplan.advice.figures import Figures, add_figures, take_figures
from wallplan.advice.moves import Move, distance, move_wall
from wallplan.advice.offers import offer_moves
from wallplan.advice.search import Best, find_best
from wallplan.advice.trial import Trials
from wallplan.layout.build import lay
from wallplan.plan.advice_table import usual_movable
from wallplan.plan.job import Job, Movable, Wall

MOST_PROPOSALS = 5


@dataclass(frozen=True)
class Proposal:
    """Moves in one wall (its number in the plan, from nought), and the wall's figures before and after.

    ``proven`` is True where nothing else that was offered is better: for moves together any other set, for a move alone
    any other distance of the same thing.
    """

    wall: int
    moves: tuple[Move, ...]
    before: Figures
    after: Figures
    proven: bool

    @property
    def saving(self) -> tuple[int, int, int, int]:
        """Its rank in the job: most broken places mended, most cutting saved, fewest moves, shortest way."""
        return (self.after.broken_places - self.before.broken_places, self.after.cutting - self.before.cutting,
                len(self.moves), distance(self.moves))


@dataclass(frozen=True)
class Advice:
    """What is proposed for a job, best first; ``together`` is the best set of each wall that has one.

    ``figures`` are those of the plan as it is, ``after`` those with all of ``together``. ``proven`` is False where a search
    had to stop before all that was offered was ruled out.
    """

    job: Job
    figures: Figures
    after: Figures
    proposals: tuple[Proposal, ...]
    together: tuple[Proposal, ...]
    proven: bool

    @property
    def fits(self) -> bool:
        """Whether nothing is cut and no rule is broken as it is."""
        return self.figures.grade == (0, 0)

    @property
    def advised(self) -> Job:
        """The job with every best set of moves made."""
        moves = {proposal.wall: proposal.moves for proposal in self.together}
        return replace(self.job, walls=tuple(
            move_wall(wall, moves.get(number, ())) for number, wall in enumerate(self.job.walls)))


def movable_of(job: Job) -> Movable:
    """What may be moved in a job: as its plan says, or the usual."""
    return job.movable or usual_movable(job.masonry, job.measure)


def advise(job: Job, told: Callable[[int], None] = lambda laid: None) -> Advice:
    """Advice for every wall of a job. ``told`` is called with the number of walls laid on trial, for a progress bar."""
    trials = Trials(job, told)
    together, alone, proven = list[Proposal](), list[Proposal](), True
    for number, wall in enumerate(job.walls):
        if not stands_alone(wall):
            continue
        best, singles = _advise_wall(wall, trials)
        before = trials.lay(wall)
        proven = proven and best.proven
        if best.moves:
            together.append(Proposal(number, best.moves, before, best.figures, best.proven))
        alone += [Proposal(number, single.moves, before, single.figures, single.proven) for single in singles]
    before, after = _total(job, trials, together)
    return Advice(job, before, after, _rank(together, alone), tuple(together), proven)


def stands_alone(wall: Wall) -> bool:
    """Whether a wall meets no other: what is moved in one that does moves in its neighbours too, which is not weighed."""
    return wall.left_end == wall.right_end == "end"


def _advise_wall(wall: Wall, trials: Trials) -> tuple[Best, list[Best]]:
    """The best set, and for each thing that alone saves something its best move."""
    before = Best((), trials.lay(wall), proven=True)
    if before.figures.grade == (0, 0):
        return before, []
    movable = movable_of(trials.job)
    offers = offer_moves(wall, trials.job.masonry, movable)
    singles = [find_best(wall, {thing: by}, movable, trials) for thing, by in offers.items()]
    helping = [single for single in singles if single.moves]
    known = min(helping, key=lambda single: single.rank, default=before)
    return find_best(wall, offers, movable, trials, known), helping


def _total(job: Job, trials: Trials, together: list[Proposal]) -> tuple[Figures, Figures]:
    better = {proposal.wall: proposal.after for proposal in together}
    if all(stands_alone(wall) for wall in job.walls):
        before = tuple(trials.lay(wall) for wall in job.walls)
    else:
        before = tuple(take_figures(wall, job) for wall in lay(job).walls)
    return add_figures(before), add_figures(better.get(number, figures) for number, figures in enumerate(before))


def _rank(together: list[Proposal], alone: list[Proposal]) -> tuple[Proposal, ...]:
    """The best few; a wall's end moved either way to the same figures is told once, and so is a set of one."""
    ranked, seen = list[Proposal](), set[object]()
    for proposal in sorted([*together, *alone], key=lambda one: (one.saving, one.wall)):
        ends = tuple(sorted(("end" if move.thing.kind.endswith("end") else move.thing.kind, move.thing.index, abs(move.by))
                            for move in proposal.moves))
        alike = (proposal.wall, ends, proposal.after.grade)
        if alike not in seen:
            seen.add(alike)
            ranked.append(proposal)
    return tuple(ranked[:MOST_PROPOSALS])
