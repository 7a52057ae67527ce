"""Job -> advice: for each wall the best set of moves and the best move of each thing alone, ranked over the job.

Walls that meet at corners, and those with steps or gables, are counted and left as they are: only plain walls that stand
alone are advised on.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from wallplan.advice.figures import Figures, add_figures, take_figures
from wallplan.advice.moves import Move, distance, move_wall
from wallplan.advice.offers import offer_moves
from wallplan.advice.search import Best, find_alone, find_best
from wallplan.advice.trial import MOST_TRIALS, Trials
from wallplan.layout.build import lay
from wallplan.layout.building import Known, bond_walls
from wallplan.layout.corners import WallEnds, free_ends
from wallplan.plan.advice_table import usual_movable
from wallplan.plan.job import Job, Movable, Wall

MOST_PROPOSALS = 5
"""Proposals told of a job."""

FEWEST_TRIALS = 8
"""Walls that are laid in each search at least, of however many walls the job is."""

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
    had to stop before all that was offered was ruled out. ``left_out`` are walls, by name, that no advice is given on.
    """

    job: Job
    figures: Figures
    after: Figures
    proposals: tuple[Proposal, ...]
    together: tuple[Proposal, ...]
    proven: bool
    left_out: tuple[str, ...] = ()

    @property
    def fits(self) -> bool:
        """Whether nothing is cut and no rule is broken as it is."""
        return self.figures.grade == (0, 0)

    @property
    def advised(self) -> Job:
        """The job with every best set of moves made."""
        return make_moves(self.job, self.together)


def make_moves(job: Job, proposals: Sequence[Proposal]) -> Job:
    """The job with all of these moves made; as it is for none."""
    moves = {proposal.wall: proposal.moves for proposal in proposals}
    return replace(job, walls=tuple(move_wall(wall, moves.get(number, ())) for number, wall in enumerate(job.walls)))


def movable_of(job: Job) -> Movable:
    """What may be moved in a job: as its plan says, or the usual."""
    return job.movable or usual_movable(job.masonry, job.measure)


def advise(job: Job, told: Callable[[int], None] = lambda laid: None, *, most: int | None = MOST_TRIALS,
           processes: int = 1) -> Advice:
    """Advice for every wall of a job. ``told`` is called with the number of walls laid on trial, for a progress bar.

    ``most`` walls are laid in each search where one wall does not fit, and the fewer the more walls do not; None for as many
    as a proof takes. Walls are shared among ``processes``.
    """
    known: Known = {}
    before, ends = _take_all(job, known), ends_advised_on(job, known)
    misfits = [number for number in ends if before[number].grade != (0, 0)]
    if most is not None and job.masonry.one_brick:
        most = FEWEST_TRIALS  # each wall takes longer to lay
    if most is not None:
        most = max(min(most, FEWEST_TRIALS), most // max(1, len(misfits)))
    found = _advise_walls([_Task(job, number, ends[number], most) for number in misfits], told, processes)
    together = tuple(Proposal(number, best.moves, before[number], best.figures, best.proven)
                     for number, (best, _) in zip(misfits, found, strict=True) if best.moves)
    singles = [Proposal(number, single.moves, before[number], single.figures, single.proven)
               for number, (_, several) in zip(misfits, found, strict=True) for single in several]
    kept, after = _keep_what_holds(job, together, before, known)
    return Advice(job, add_figures(before), add_figures(after), _rank(kept, singles), kept,
                  all(best.proven for best, _ in found),
                  tuple(wall.name for number, wall in enumerate(job.walls) if number not in ends))


def _take_all(job: Job, known: Known) -> tuple[Figures, ...]:
    return tuple(take_figures(wall, job) for wall in lay(job, known).walls)


def _keep_what_holds(job: Job, together: tuple[Proposal, ...], before: tuple[Figures, ...],
                     known: Known) -> tuple[tuple[Proposal, ...], tuple[Figures, ...]]:
    """The best sets of moves, and every wall's figures with all of them made and the corners bonded anew.

    The least saving one is given up for as long as some wall then breaks a rule in more places than it did.
    """
    kept = sorted(together, key=lambda one: one.saving)
    while kept:
        after = _take_all(make_moves(job, kept), known)
        if not any(new.breaks_more_than(old) for new, old in zip(after, before, strict=True)):
            break
        kept.pop()
    return tuple(one for one in together if one in kept), after if kept else before


_Found = tuple[Best, list[Best]]
"""The best set of moves of a wall, and of the few things that alone save most the best move of each."""


class _Task(NamedTuple):
    """One wall to advise on: its number, how it ends, and how many walls may be laid in each search."""

    job: Job
    number: int
    ends: WallEnds
    most: int | None


def _advise_walls(tasks: list[_Task], told: Callable[[int], None], processes: int) -> list[_Found]:
    found, laid = list[_Found](), 0
    if processes < 2 or len(tasks) < 2:
        for task in tasks:
            begun = laid
            one, tried = _advise_wall(task, lambda count, begun=begun: told(begun + count))  # type: ignore[misc]
            found.append(one)
            laid += tried
        return found
    from concurrent.futures import ProcessPoolExecutor  # only many walls want it

    from wallplan.processes import end_with_the_first

    with ProcessPoolExecutor(min(processes, len(tasks)), initializer=end_with_the_first) as pool:
        for one, tried in pool.map(_advise_wall, tasks):
            laid += tried
            found.append(one)
            told(laid)
    return found


def _advise_wall(task: _Task, told: Callable[[int], None] = lambda laid: None) -> tuple[_Found, int]:
    """Advice on one wall, and how many walls it laid."""
    job, wall, movable = task.job, task.job.walls[task.number], movable_of(task.job)
    trials = Trials(job, told, task.most, task.ends)
    offers = offer_moves(wall, job.masonry, movable, task.ends)
    singles = find_alone(wall, offers, movable, trials, MOST_ALONE)
    return (find_best(wall, offers, movable, trials, singles[0] if singles else None), singles), trials.laid


def ends_advised_on(job: Job, known: Known | None = None) -> dict[int, WallEnds]:
    """How the walls end that advice is given on, by their numbers: as the plan is laid, so that no other wall is touched.

    Left out are walls that abut another or that another abuts, since what is moved in one moves the other, those that go
    straight on from one another, and those with steps, gables or piers built in.
    """
    abutted = {abutment.meets for wall in job.walls for abutment in wall.abuts}
    plain = [number for number, wall in enumerate(job.walls)
             if not (wall.abuts or wall.parts or wall.outline or wall.piers or wall.name in abutted)]
    if all(stands_alone(job.walls[number]) for number in plain):
        return {number: free_ends(job.walls[number]) for number in plain}
    bonded = bond_walls(job, known)
    return {number: bonded[number].ends for number in plain}


def stands_alone(wall: Wall) -> bool:
    """Whether a wall meets no other."""
    return wall.left_end == wall.right_end == "end"


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
