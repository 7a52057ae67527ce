"""One wall as a constraint model, written from the rules alone: it takes plain numbers and knows nothing of the search.

Lengths are whole steps of a grid and nominal: a run of clear length l with joint j is l + j long, a head joint stands
at one point, a piece is the distance between neighbouring points. The rules:

* odd courses share one set of pattern joints along the wall, even courses another;
* a run has the pattern's joints inside it, but one that is nearer to the run's end than the least piece is dropped, or
  moved further in: to the same place in all courses of its kind whose run has that end, and it stays the outermost
  joint of the run. Near both ends, the right end counts;
* every piece is from the least piece to the module long;
* joints that two neighbouring courses really have are at least the lap apart;
* a cut piece costs one, one shorter than half a module two, a stock length nothing.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from ortools.sat.python import cp_model

Run = tuple[int, int]
Courses = tuple[tuple[Run, ...], ...]
"""The runs of each course, course 1 first; each from where to where, in steps."""

Places = dict[int, cp_model.IntVar]
Joined = tuple[frozenset[int], frozenset[int]]

SECONDS = 60.0


@dataclass(frozen=True)
class Numbers:
    """Module, least piece, least lap and stock lengths in steps. The lap may not be over the least piece."""

    module: int
    least: int
    lap: int
    stock: tuple[int, ...]

    def cost(self, length: int) -> int:
        """What one piece of this length cuts."""
        if length in self.stock:
            return 0
        return 2 if 2 * length < self.module else 1


class BondModel:
    """The variables: ``pattern`` by parity and place, ``joint`` by run and place, ``moved`` by end and place.

    ``active`` says whether the wall is laid at all, for a model in which it is one case of several. ``joined`` are ends of
    odd and of even courses that are head joints themselves, against another wall.
    """

    def __init__(self, numbers: Numbers, courses: Courses, cp: cp_model.CpModel | None = None,
                 active: cp_model.IntVar | int = 1, joined: Joined = (frozenset(), frozenset())) -> None:
        self.numbers, self.cp = numbers, cp or cp_model.CpModel()
        self.active, self.joined = active, joined
        self.runs = [Counter(run for course in courses[parity::2] for run in course) for parity in (0, 1)]
        places = range(min(r[0] for c in courses for r in c) + 1, max(r[1] for c in courses for r in c))
        self.pattern = [{at: self.cp.new_bool_var("") for at in places} for _ in (0, 1)]
        self.moved: dict[tuple[int, str, int], Places] = {}
        self.joint: dict[tuple[int, Run], Places] = {}
        self.costs: list[cp_model.LinearExpr] = []
        for parity in (0, 1):
            for run in self.runs[parity]:
                self._set_joints(parity, run)
        for pair in {(p, one, other) for p, one, other in _neighbours(courses)}:
            self._keep_lap(*pair)

    def _moves(self, parity: int, side: str, end: int) -> Places:
        """Where a joint too near this end goes: all of its kind that share the end agree, at most one place is true."""
        if (parity, side, end) not in self.moved:
            least, module = self.numbers.least, self.numbers.module
            away = range(least, module + 1)
            places = [end - step if side == "right" else end + step for step in away]
            self.moved[parity, side, end] = {at: self.cp.new_bool_var("") for at in places}
            self.cp.add_at_most_one(self.moved[parity, side, end].values())
        return self.moved[parity, side, end]

    def _set_joints(self, parity: int, run: Run) -> None:
        start, end = run
        least, pieces = self.numbers.least, self._cut_pieces(parity, run)
        inside, pattern = range(start + 1, end), self.pattern[parity]
        near = {"right": [at for at in inside if end - at < least]}
        near["left"] = [at for at in inside if at - start < least and at not in near["right"]]
        sources: dict[int, list[cp_model.IntVar]] = {
            at: [pattern[at]] if end - at >= least <= at - start else [] for at in inside
        }
        for side, close in near.items():
            if not close:
                continue
            is_near = self.cp.new_bool_var("")
            self.cp.add_max_equality(is_near, [pattern[at] for at in close])
            for at, move in self._moves(parity, side, end if side == "right" else start).items():
                outermost = pieces.get((at, end) if side == "right" else (start, at))
                self._move_joint(move, is_near, outermost, sources.get(at))
        joint = {at: self.cp.new_bool_var("") for at in inside}
        for at, causes in sources.items():
            self.cp.add(joint[at] == sum(causes))
        self.joint[parity, run] = joint
        self._join_pieces(parity, run, pieces)

    def _move_joint(self, move: cp_model.IntVar, is_near: cp_model.IntVar, outermost: cp_model.IntVar | None,
                    sources: list[cp_model.IntVar] | None) -> None:
        if outermost is None or sources is None:
            self.cp.add_bool_or([~move, ~is_near])  # the place lies in no run of this length: nothing may go there
            return
        moved = self.cp.new_bool_var("")
        self.cp.add_implication(moved, move)
        self.cp.add_implication(moved, is_near)
        self.cp.add_bool_or([~move, ~is_near, moved])
        self.cp.add_implication(moved, outermost)
        sources.append(moved)

    def _cut_pieces(self, parity: int, run: Run) -> dict[Run, cp_model.IntVar]:
        numbers, times, pieces = self.numbers, self.runs[parity][run], dict[Run, cp_model.IntVar]()
        cuts = list[cp_model.IntVar]()
        for start in range(run[0], run[1]):
            for end in range(start + numbers.least, min(start + numbers.module, run[1]) + 1):
                piece = pieces[start, end] = self.cp.new_bool_var("")
                if cost := numbers.cost(end - start):
                    self.costs.append(piece * (cost * times))
                    cuts.append(piece)
        if not _fills(run[1] - run[0], numbers.stock):
            self.cp.add(sum(cuts) >= self.active)  # follows from the rest, but spares the solver finding it out
        return pieces

    def _join_pieces(self, parity: int, run: Run, pieces: dict[Run, cp_model.IntVar]) -> None:
        """A path of pieces from the run's start to its end that stops at every joint and nowhere else."""
        joint = self.joint[parity, run]
        leaving: dict[int, list[cp_model.IntVar]] = {at: [] for at in range(run[0], run[1] + 1)}
        arriving: dict[int, list[cp_model.IntVar]] = {at: [] for at in range(run[0], run[1] + 1)}
        for (start, end), piece in pieces.items():
            leaving[start].append(piece)
            arriving[end].append(piece)
        self.cp.add(sum(leaving[run[0]]) == self.active)
        self.cp.add(sum(arriving[run[1]]) == self.active)
        for at, stands in joint.items():
            self.cp.add(sum(leaving[at]) == stands)
            self.cp.add(sum(arriving[at]) == stands)

    def _keep_lap(self, parity: int, one: Run, other: Run) -> None:
        # Two joints of one run are a least piece apart, which is no less than the lap, so one joint in all is right.
        mine, theirs, lap = self.joint[parity, one], self.joint[1 - parity, other], self.numbers.lap
        for first in range(max(one[0], other[0]) - lap, min(one[1], other[1]) + 1):
            window = range(first, first + lap)
            joints = [track[at] for track in (mine, theirs) for at in window if at in track]
            ends = sum(end in self.joined[kind] and end in window for kind, run in ((parity, one), (1 - parity, other)) for end in run)
            if ends > 1:
                self.cp.add(self.active == 0)
            elif ends:
                self.cp.add(sum(joints) <= 1 - self.active)
            else:
                self.cp.add_at_most_one(joints)


def _fills(length: int, stock: tuple[int, ...]) -> bool:
    """Whether stock lengths alone add up to a length."""
    sums = {0}
    for total in range(1, length + 1):
        if any(total - one in sums for one in stock):
            sums.add(total)
    return length in sums


def _neighbours(courses: Courses) -> list[tuple[int, Run, Run]]:
    """Pairs of runs, one above the other, as (0, the odd course's run, the even course's run)."""
    pairs = []
    for number in range(len(courses) - 1):
        odd, even = (number, number + 1) if number % 2 == 0 else (number + 1, number)
        pairs += [(0, one, other) for one in courses[odd] for other in courses[even]]
    return pairs


def least_cutting(numbers: Numbers, courses: Courses, work: float = SECONDS) -> int | None:
    """The least cutting of a wall, None where no layout keeps the rules. RuntimeError where neither is proven in time.

    ``work`` is a limit in the solver's own measure of work, about a second of the processor each, the same on any machine.
    """
    if numbers.lap > numbers.least:
        raise ValueError("the model holds for laps up to the least piece")
    model = BondModel(numbers, courses)
    model.cp.minimize(sum(model.costs))
    return solve(model.cp, few_cost=True, work=work)


def solve(cp: cp_model.CpModel, *, few_cost: bool, work: float = SECONDS) -> int | None:
    """The least that a model costs, None where nothing keeps its rules. RuntimeError where neither is proven in time.

    ``few_cost`` says that few of the pieces laid cost anything, which tells the solver where to begin.
    """
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.linearization_level = 2  # the pieces of a run are a path: its relaxation is nearly whole already
    solver.parameters.optimize_with_core = few_cost
    solver.parameters.cp_model_probing_level = 0  # probing takes longer than the search
    solver.parameters.random_seed = 1
    solver.parameters.max_time_in_seconds = SECONDS
    solver.parameters.max_deterministic_time = work
    status = solver.solve(cp)
    if status == cp_model.INFEASIBLE:
        return None
    if status != cp_model.OPTIMAL:
        raise RuntimeError(f"not proven in {SECONDS:g} s or a work of {work:g}: {solver.status_name(status)}")
    return round(solver.objective_value)
