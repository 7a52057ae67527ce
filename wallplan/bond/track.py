"""A track as a graph: from each joint to the joints that may follow, with what the piece between them costs.

Where joints may open or close, a run's first piece may take a stock length and leave a difference that the
run's joints share; a state then also carries that difference until the run's last piece settles it. A run is
held to have as many joints as it has at least, so what is promised here the laid run can always do.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from dataclasses import dataclass, field
from itertools import pairwise, product
from typing import NamedTuple

from wallplan.bond.cost import BROKEN, FIRST_FULL, IMPOSSIBLE, JOINT, MIDDLE, SHOWS
from wallplan.bond.figures import Problem, Stretch
from wallplan.bond.nodes import Node, make_nodes, points_after, points_before
from wallplan.bond.pieces import fit_run, grade_piece, near_stock, pull_alike

FEW = 4
"""So many joints share what a run's first piece leaves beside a jamb."""

MOST_OWING = 1
"""So many runs at a time may have begun with a difference that they still owe: more would multiply the states."""

Owing = tuple[tuple[int, int], ...]
"""Open runs whose first piece left a difference: where the run began, and the difference."""


class Step(NamedTuple):
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
        self.settings, self.fixed = settings, problem.fixed_of(which)
        self.nodes = _make_all_nodes(problem, which, positions, relaxed)
        self.places = [node.at for node in self.nodes]
        self._ends = sorted(end for s in self.stretches for end in (s.start, s.end))
        self._reach = {s.start: max(t.end for t in self.stretches if t.start == s.start) for s in self.stretches}
        self.states: list[tuple[int, Owing]] = [(0, ())]
        self._known: dict[tuple[int, Owing], int] = {(0, ()): 0}
        self._steps: dict[int, tuple[Step, ...]] = {}
        self._laid: dict[int, list[tuple[int, Piecework]]] = {}
        self._shares: dict[tuple[int, tuple[int, ...]], Share] = {}
        self._ended: dict[tuple[int, int, int], tuple[int, int]] = {}
        self.heads = [tuple(points_after(self.terms, node, s) for s in self.stretches) for node in self.nodes]
        self.tails = [tuple(points_before(self.terms, node, s) for s in self.stretches) for node in self.nodes]

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
                kept = tuple((at, left) for at, left in sorted(owed.items()) if left and self._reach[at] > there)
                if len(kept) <= MOST_OWING and cost < (IMPOSSIBLE if self.relaxed else BROKEN):
                    found.append(Step(self._state(to, kept), cost, settings))
        return found

    def _end_runs(self, ends: list[tuple[int, int]], owed: dict[int, int]) -> tuple[int, int]:
        cost, settings = 0, 0
        for index, length in ends:
            key = index, length, owed.get(self.stretches[index].start, 0)
            if key not in self._ended:
                self._ended[key] = self._end_run(self.stretches[index], length, key[2])
            more, setting = self._ended[key]
            cost, settings = cost + more, settings | setting
        return cost, settings

    def _end_run(self, stretch: Stretch, length: int, left: int) -> tuple[int, int]:
        # Only the first and the last piece may be longer than a unit before they take a stock length; all others are
        # at most a unit long, so the run has at least so many joints to share the difference.
        longest = stretch.end - stretch.start - max(0, left) - max(0, length - self.terms.module)
        joints = max(0, -(-longest // self.terms.module) - 1)
        best = (IMPOSSIBLE, 0)
        for taken in (length, *near_stock(self.terms, length, self.terms.share(joints))):
            over = left + length - taken
            if pull_alike(left, length - taken) and self.terms.absorbs(over, joints):
                begin = stretch.end - length
                cost, setting = self.charge(taken, begin, stretch.end, stretch.end_shows, stretch.weight)
                best = min(best, (cost + JOINT * abs(over) * stretch.weight, setting))
        return best

    def begin_run(self, at: int, length: int, weight: int) -> tuple[tuple[int, int, int, int], ...]:
        """Choices for the first piece of the runs that begin at ``at``: cost, saw setting, place, difference.

        At a fixed end the pattern begins as it is, and at a jamb only a few joints' worth is taken up (``FEW``): what
        a run has over beyond that, its other end can settle.
        """
        joints = 0 if at in self.fixed else min(FEW, self.terms.least_joints(self._reach[at] - at))
        reach = self.terms.share(joints)
        choices = []
        for taken in (length, *near_stock(self.terms, length, reach)):
            shows = 3 if at == self.fixed[0] else 2
            cost, setting = self.charge(taken, at, at + length, shows, weight)
            if cost < (IMPOSSIBLE if self.relaxed else BROKEN):
                choices.append((cost, setting, at, length - taken))
        return tuple(choices)

    def _lay_from(self, index: int) -> list[tuple[int, Piecework]]:
        here, found = self.nodes[index], []
        if here.fixed and (void := self._cross_void(here)) is not None:
            return [(void, Piecework())]
        for to in range(bisect_right(self.places, here.at), len(self.nodes)):
            there = self.nodes[to]
            if there.at - here.at > self.terms.module:
                break
            if self.relaxed or there.fixed or here.fixed or there.at - here.at >= self.terms.least:
                work = self._measure(index, to)
                work.cost += BROKEN * self._crowd(there)
                if work.cost < (IMPOSSIBLE if self.relaxed else BROKEN):
                    found.append((to, work))
            if there.fixed:
                break
        return found

    def _crowd(self, node: Node) -> int:
        """How many of a joint's courses have it nearer than a lap to a place that is kept clear in them."""
        return sum((mask & courses).bit_count() for at, courses in self.problem.kept_clear[0 if self.first else 1]
                   for place, mask in node.parts if abs(place - at) < self.terms.lap)

    def _cross_void(self, here: Node) -> int | None:
        following = [at for at in self.fixed if at > here.at]
        if not following or any(s.start < following[0] and s.end > here.at for s in self.stretches):
            return None
        return bisect_left(self.places, following[0])

    def _measure(self, here: int, there: int) -> Piecework:
        one, other = self.nodes[here], self.nodes[there]
        plain = not (one.moves or other.moves)
        if plain and bisect_left(self._ends, one.at) == bisect_right(self._ends, other.at):
            weight = sum(mask.bit_count() for _, mask in one.parts)
            return Piecework(*self.charge(other.at - one.at, one.at, other.at, None, weight))
        return self._lay_step(here, there)

    def _lay_step(self, here: int, there: int) -> Piecework:
        work, begun = Piecework(), dict[int, tuple[int, int]]()
        for index, (before, after) in enumerate(zip(self.heads[here], self.tails[there], strict=True)):
            if before and after:
                share = self._share(index, before + after)
                work.cost += share.cost
                if work.cost >= IMPOSSIBLE:
                    return work
                work.settings |= share.settings
                if share.begun:
                    start = self.stretches[index].start
                    begun[start] = share.begun, begun.get(start, (0, 0))[1] + self.stretches[index].weight
                if share.ended:
                    work.ends.append((index, share.ended))
        for at, (length, weight) in sorted(begun.items()):
            work.starts.append(self.begin_run(at, length, weight))
        return work

    def _share(self, index: int, points: tuple[int, ...]) -> Share:
        key = index, points
        if key not in self._shares:
            self._shares[key] = lay_in_run(self, self.stretches[index], points)
        return self._shares[key]

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
        begins = self.first and stretch.start == self.fixed[0]
        return FIRST_FULL if begins and length != self.terms.module else 0


def _make_all_nodes(problem: Problem, which: int, positions: tuple[int, ...], relaxed: bool) -> list[Node]:
    stretches, fixed, nodes = problem.tracks[which], problem.fixed_of(which), list[Node]()
    for at in positions:
        if at in fixed:
            beside = sum(s.courses for s in stretches if at in (s.start, s.end))
            parts = ((at, beside),) if at in problem.joined[which] else ()
            nodes.append(Node(at, parts, (), fixed=True))
        elif fixed[0] < at < fixed[-1]:
            nodes.extend(make_nodes(problem.terms, stretches, fixed, at, relaxed))
    return nodes


@dataclass
class Piecework:
    """One step's pieces over the runs it touches: the sure cost, choices at runs' starts, pieces at their ends."""

    cost: int = 0
    settings: int = 0
    starts: list[tuple[tuple[int, int, int, int], ...]] = field(default_factory=list)
    ends: list[tuple[int, int]] = field(default_factory=list)


class Share(NamedTuple):
    """What one run adds to a step: sure cost, settings, length of a piece begun at its start or ended at its end, or 0."""

    cost: int
    settings: int
    begun: int
    ended: int


def lay_in_run(track: Track, stretch: Stretch, points: tuple[int, ...]) -> Share:
    """The pieces of one run between joints and ends."""
    pairs = list(pairwise(points))
    if any(start >= end for start, end in pairs):
        return Share(IMPOSSIBLE, 0, 0, 0)
    if points[0] == stretch.start and points[-1] == stretch.end:
        return _lay_whole(track, stretch, pairs)
    cost, settings, begun, ended = 0, 0, 0, 0
    if points[0] == stretch.start:
        start, end = pairs.pop(0)
        begun = end - start
        cost += track.begins_full(stretch, begun)
    if points[-1] == stretch.end:
        start, end = pairs.pop()
        ended = end - start
    for start, end in pairs:
        more, setting = track.charge(end - start, start, end, None, stretch.weight)
        cost, settings = cost + more, settings | setting
    return Share(cost, settings, begun, ended)


def _lay_whole(track: Track, stretch: Stretch, pairs: list[tuple[int, int]]) -> Share:
    """A run that one step fills: its pieces and joints are settled at once."""
    fit = fit_run(track.terms, tuple(end - start for start, end in pairs))
    if fit.cost >= IMPOSSIBLE:
        return Share(IMPOSSIBLE, 0, 0, 0)
    cost, settings = track.begins_full(stretch, fit.pieces[0]) + JOINT * abs(fit.difference) * stretch.weight, 0
    shows = max(stretch.start_shows, stretch.end_shows)
    for length, (start, end) in zip(fit.pieces, pairs, strict=True):
        more, setting = track.charge(length, start, end, shows, stretch.weight)
        cost, settings = cost + more, settings | setting
    return Share(cost, settings, 0, 0)
