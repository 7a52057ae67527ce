"""A track as a graph: from each joint to the joints that may follow, with what the piece between them costs.

Where joints may open or close, a run's first piece may take a stock length and leave a difference that the
run's joints share; a state then also carries that difference until the run's last piece settles it. A run is
held to have as many joints as it has at least, so what is promised here the laid run can always do.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from dataclasses import dataclass, field
from itertools import product

from wallplan.bond.cost import BROKEN, FIRST_FULL, IMPOSSIBLE, JOINT, MIDDLE, SHOWS
from wallplan.bond.figures import Problem, Stretch
from wallplan.bond.nodes import Node, joint_in, make_nodes, nearness
from wallplan.bond.pieces import fit_run, grade_piece, near_stock

LONG_RUN = 64
"""Joints beyond which a run at a fixed end is laid from there as it comes."""

Owing = tuple[tuple[int, int], ...]
"""Open runs whose first piece left a difference: where the run began, and the difference."""


@dataclass(frozen=True, slots=True)
class Step:
    """From one state to the next: its cost, and the saw settings (bits) of the pieces it lays."""

    to: int
    cost: int
    settings: int


@dataclass
class Settings:
    """A bit for each length that is sawn, given out as lengths turn up."""

    bits: dict[int, int] = field(default_factory=dict)

    def bit(self, length: int) -> int:
        """The bit of a cut length."""
        return self.bits.setdefault(length, 1 << len(self.bits))


class Track:
    """One track of a problem. A state is a node and what its open runs still owe; state 0 is the first."""

    def __init__(self, problem: Problem, which: int, positions: tuple[int, ...], settings: Settings,
                 relaxed: bool) -> None:
        self.problem, self.terms, self.relaxed = problem, problem.terms, relaxed
        self.stretches, self.first = problem.tracks[which], which == 0
        self.settings = settings
        self.nodes = _make_all_nodes(problem, self.stretches, positions, relaxed)
        self.places = [node.at for node in self.nodes]
        self._ends = sorted(end for s in self.stretches for end in (s.start, s.end))
        self._reach = {s.start: max(t.end for t in self.stretches if t.start == s.start) for s in self.stretches}
        self.states: list[tuple[int, Owing]] = [(0, ())]
        self._known: dict[tuple[int, Owing], int] = {(0, ()): 0}
        self._steps: dict[int, tuple[Step, ...]] = {}
        self._laid: dict[int, list[tuple[int, _Piecework]]] = {}

    @property
    def last(self) -> int:
        """The state at the last node, with nothing owing; -1 where no path comes so far."""
        return self._known.get((len(self.nodes) - 1, ()), -1)

    def node(self, state: int) -> Node:
        """The node of a state."""
        return self.nodes[self.states[state][0]]

    def steps(self, state: int) -> tuple[Step, ...]:
        """Steps from a state, nearest first; () from the last."""
        if state not in self._steps:
            self._steps[state] = tuple(self._find_steps(*self.states[state]))
        return self._steps[state]

    def _state(self, node: int, owing: Owing) -> int:
        if (node, owing) not in self._known:
            self._known[node, owing] = len(self.states)
            self.states.append((node, owing))
        return self._known[node, owing]

    def _find_steps(self, index: int, owing: Owing) -> list[Step]:
        if index not in self._laid:
            self._laid[index] = list(self._lay_from(index))
        found = []
        for to, work in self._laid[index]:
            there = self.nodes[to].at
            for begun in product(*work.starts):
                cost, settings, owed = work.cost, work.settings, dict(owing)
                for more, setting, at, left in begun:
                    cost, settings = cost + more, settings | setting
                    owed[at] = left
                ended = self._end_runs(work.ends, owed)
                cost, settings = cost + ended[0], settings | ended[1]
                if cost < (IMPOSSIBLE if self.relaxed else BROKEN):
                    kept = tuple((at, left) for at, left in sorted(owed.items()) if left and self._reach[at] > there)
                    found.append(Step(self._state(to, kept), cost, settings))
        return found

    def _end_runs(self, ends: list[tuple[Stretch, int]], owed: dict[int, int]) -> tuple[int, int]:
        cost, settings = 0, 0
        for stretch, length in ends:
            more, setting = self._end_run(stretch, length, owed.get(stretch.start, 0))
            cost, settings = cost + more, settings | setting
        return cost, settings

    def _end_run(self, stretch: Stretch, length: int, left: int) -> tuple[int, int]:
        joints = self.terms.least_joints(stretch.end - stretch.start)
        best = (IMPOSSIBLE, 0)
        for taken in (length, *near_stock(self.terms, length, self.terms.share(joints) + abs(left))):
            over = left + length - taken
            if self.terms.absorbs(over, joints):
                begin = stretch.end - length
                cost, setting = self.charge(taken, begin, stretch.end, stretch.end_shows, stretch.weight)
                best = min(best, (cost + JOINT * abs(over) * stretch.weight, setting))
        return best

    def begin_run(self, at: int, length: int, weight: int) -> tuple[tuple[int, int, int, int], ...]:
        """Choices for the first piece of the runs that begin at ``at``: cost, saw setting, place, difference.

        At the head of a long run the pattern begins as it is: what the run has over, its other end can settle.
        """
        anchored = at in self.problem.fixed and self.terms.least_joints(self._reach[at] - at) > LONG_RUN
        reach = 0 if anchored else self.terms.share(self.terms.least_joints(self._reach[at] - at))
        choices = []
        for taken in (length, *near_stock(self.terms, length, reach)):
            shows = 3 if at == self.problem.fixed[0] else 2
            cost, setting = self.charge(taken, at, at + length, shows, weight)
            if cost < (IMPOSSIBLE if self.relaxed else BROKEN):
                choices.append((cost, setting, at, length - taken))
        return tuple(choices)

    def _lay_from(self, index: int) -> list[tuple[int, _Piecework]]:
        here, found = self.nodes[index], []
        if here.fixed and (void := self._cross_void(here)) is not None:
            return [(void, _Piecework())]
        for to in range(bisect_right(self.places, here.at), len(self.nodes)):
            there = self.nodes[to]
            if there.at - here.at > self.terms.module:
                break
            if self.relaxed or there.fixed or here.fixed or there.at - here.at >= self.terms.least:
                work = self._measure(here, there)
                if work.cost < (IMPOSSIBLE if self.relaxed else BROKEN):
                    found.append((to, work))
            if there.fixed:
                break
        return found

    def _cross_void(self, here: Node) -> int | None:
        following = [at for at in self.problem.fixed if at > here.at]
        if not following or any(s.start < following[0] and s.end > here.at for s in self.stretches):
            return None
        return bisect_left(self.places, following[0])

    def _measure(self, here: Node, there: Node) -> _Piecework:
        plain = not (here.moves or there.moves)
        if plain and bisect_left(self._ends, here.at) == bisect_right(self._ends, there.at):
            weight = sum(mask.bit_count() for _, mask in here.parts)
            return _Piecework(*self.charge(there.at - here.at, here.at, there.at, None, weight))
        return _lay_step(self, here, there)

    def charge(self, length: int, start: int, end: int, shows: int | None, weight: int) -> tuple[int, int]:
        """Cost and saw setting of a piece of ``length`` that stands from ``start`` to ``end`` in ``weight`` courses."""
        if not weight:
            return 0, 0
        graded = grade_piece(self.terms, length)
        if graded >= IMPOSSIBLE:
            return IMPOSSIBLE, 0
        if length in self.terms.stock:
            return graded * weight, 0
        rank = self.problem.shows(start, end) if shows is None else shows
        seen = SHOWS * rank + MIDDLE * self.problem.off_middle(start, end)
        return (graded + seen) * weight, self.settings.bit(length)

    def begins_full(self, stretch: Stretch, length: int) -> int:
        """A hair's cost where course 1 does not begin with a full unit: it only breaks ties."""
        begins = self.first and stretch.start == self.problem.fixed[0]
        return FIRST_FULL if begins and length != self.terms.module else 0


def _make_all_nodes(problem: Problem, stretches: tuple[Stretch, ...], positions: tuple[int, ...],
                    relaxed: bool) -> list[Node]:
    fixed, nodes = set(problem.fixed), []
    for at in positions:
        if at in fixed:
            nodes.append(Node(at, (), (), fixed=True))
        else:
            nodes.extend(make_nodes(problem.terms, stretches, positions, at, relaxed))
    return nodes


@dataclass
class _Piecework:
    """One step's pieces over the runs it touches: the sure cost, choices at runs' starts, pieces at their ends."""

    cost: int = 0
    settings: int = 0
    starts: list[tuple[tuple[int, int, int, int], ...]] = field(default_factory=list)
    ends: list[tuple[Stretch, int]] = field(default_factory=list)

    def add(self, charged: tuple[int, int]) -> None:
        self.cost += charged[0]
        self.settings |= charged[1]


def _lay_step(track: Track, here: Node, there: Node) -> _Piecework:
    work, begun = _Piecework(), dict[int, list[int]]()
    for stretch in track.stretches:
        if stretch.start < there.at and stretch.end > here.at:
            points = _points(track, stretch, here, there)
            if any(one >= other for one, other in zip(points, points[1:], strict=False)):
                work.cost = IMPOSSIBLE
            elif len(points) > 1:
                _lay_in_run(track, work, begun, stretch, points)
            if work.cost >= IMPOSSIBLE:
                return work
    for at, (length, weight) in sorted(begun.items()):
        work.starts.append(track.begin_run(at, length, weight))
    return work


def _points(track: Track, stretch: Stretch, here: Node, there: Node) -> tuple[int, ...]:
    """Joints and ends between which a step lays pieces in a run; () where it lays none."""
    points: tuple[int, ...] = (stretch.start,)
    if here.at > stretch.start:
        side, place = nearness(track.terms, stretch, here.at), joint_in(track.terms, here, stretch)
        if side == "end":
            return ()
        if place is not None:
            points = (stretch.start, place) if side == "start" else (place,)
    if there.at >= stretch.end:
        return (*points, stretch.end)
    side, place = nearness(track.terms, stretch, there.at), joint_in(track.terms, there, stretch)
    if side == "start":
        return ()
    if side == "end":
        return (*points, stretch.end) if place is None else (*points, place, stretch.end)
    return (*points, there.at)


def _lay_in_run(track: Track, work: _Piecework, begun: dict[int, list[int]], stretch: Stretch,
                points: tuple[int, ...]) -> None:
    begins, ends = points[0] == stretch.start, points[-1] == stretch.end
    if begins and ends:
        _lay_whole(track, work, stretch, points)
        return
    pairs = list(zip(points, points[1:], strict=False))
    if begins:
        start, end = pairs.pop(0)
        work.cost += track.begins_full(stretch, end - start)
        begun.setdefault(start, [end - start, 0])[1] += stretch.weight
    if ends:
        start, end = pairs.pop()
        work.ends.append((stretch, end - start))
    for start, end in pairs:
        work.add(track.charge(end - start, start, end, None, stretch.weight))


def _lay_whole(track: Track, work: _Piecework, stretch: Stretch, points: tuple[int, ...]) -> None:
    """A run that one step fills: its pieces and joints are settled at once."""
    lengths = tuple(end - start for start, end in zip(points, points[1:], strict=False))
    fit = fit_run(track.terms, lengths)
    work.cost += IMPOSSIBLE if fit.cost >= IMPOSSIBLE else track.begins_full(stretch, fit.pieces[0])
    work.cost += JOINT * abs(fit.difference) * stretch.weight
    shows = max(stretch.start_shows, stretch.end_shows)
    for length, start, end in zip(fit.pieces, points, points[1:], strict=False):
        work.add(track.charge(length, start, end, shows, stretch.weight))
