"""Job -> advice: for each wall the best set of moves and the best move of each thing alone, ranked over the job.

Walls that meet at corners, and those with steps or gables, are counted and left as they are: only plain walls that stand
alone are advised on.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from wallplan.advice.figures import Figures, add_figures, take_figures
from wallplan.advice.moves import Move, distance, move_wall
from wallplan.advice.offers import offer_moves
from wallplan.advice.search import Best, find_alone, find_best
from wallplan.advice.trial import MOST_TRIALS, Trials
from wallplan.layout.build import lay
from wallplan.plan.advice_table import usual_movable
from wallplan.plan.job import Job, Movable, Wall

MOST_PROPOSALS = 5
"""Proposals told of a job."""

MOST_ALONE = 3
"""Things of one wall of which the best move alone is looked for."""


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


def advise(job: Job, told: Callable[[int], None] = lambda laid: None, *, most: int | None = MOST_TRIALS,
           processes: int = 1) -> Advice:
    """Advice for every wall of a job. ``told`` is called with the number of walls laid on trial, for a progress bar.

    ``most`` walls are laid in each search, None for as many as a proof takes. Walls are shared among ``processes``.
    """
    trials = Trials(job, told, most)
    alone = [number for number, wall in enumerate(job.walls) if stands_alone(wall)]
    misfits = [number for number in alone if trials.lay(job.walls[number]).grade != (0, 0)]
    found = _advise_walls([(job, number, most) for number in misfits], trials, told, processes)
    before = {number: trials.lay(job.walls[number]) for number in misfits}
    together = tuple(Proposal(number, best.moves, before[number], best.figures, best.proven)
                     for number, (best, _) in zip(misfits, found, strict=True) if best.moves)
    singles = [Proposal(number, single.moves, before[number], single.figures, single.proven)
               for number, (_, several) in zip(misfits, found, strict=True) for single in several]
    as_planned, after = _total(job, trials, together)
    return Advice(job, as_planned, after, _rank(together, singles), together, all(best.proven for best, _ in found))


_Found = tuple[Best, list[Best]]
"""The best set of moves of a wall, and of the few things that alone save most the best move of each."""


def _advise_walls(tasks: list[tuple[Job, int, int | None]], trials: Trials, told: Callable[[int], None],
                  processes: int) -> list[_Found]:
    if processes < 2 or len(tasks) < 2:
        return [_advise_wall(trials.job.walls[number], trials) for _, number, _ in tasks]
    from concurrent.futures import ProcessPoolExecutor  # only many walls want it

    from wallplan.processes import end_with_the_first

    found, laid = list[_Found](), trials.laid
    with ProcessPoolExecutor(min(processes, len(tasks)), initializer=end_with_the_first) as pool:
        for one, tried in pool.map(_advise_apart, tasks):
            laid += tried
            found.append(one)
            told(laid)
    return found


def _advise_apart(task: tuple[Job, int, int | None]) -> tuple[_Found, int]:
    """One wall in a process of its own, and how many walls it laid."""
    job, number, most = task
    trials = Trials(job, most=most)
    return _advise_wall(job.walls[number], trials), trials.laid


def stands_alone(wall: Wall) -> bool:
    """Whether a wall meets no other: what is moved in one that does moves in its neighbours too, which is not weighed.

    Nor is what moves against steps and gables: a wall that has them is left as it is.
    """
    return wall.left_end == wall.right_end == "end" and not wall.parts and wall.outline is None


def _advise_wall(wall: Wall, trials: Trials) -> _Found:
    movable = movable_of(trials.job)
    offers = offer_moves(wall, trials.job.masonry, movable)
    singles = find_alone(wall, offers, movable, trials, MOST_ALONE)
    return find_best(wall, offers, movable, trials, singles[0] if singles else None), singles


def _total(job: Job, trials: Trials, together: Sequence[Proposal]) -> tuple[Figures, Figures]:
    better = {proposal.wall: proposal.after for proposal in together}
    if all(stands_alone(wall) for wall in job.walls):
        before = tuple(trials.lay(wall) for wall in job.walls)
    else:
        before = tuple(take_figures(wall, job) for wall in lay(job).walls)
    return add_figures(before), add_figures(better.get(number, figures) for number, figures in enumerate(before))


def _rank(together: Sequence[Proposal], alone: Sequence[Proposal]) -> tuple[Proposal, ...]:
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
