"""A track as a graph: from each joint to the joints that may follow, with what the piece between them costs.

Where joints may open or close, a run's first piece may take a stock length and leave a difference that the
run's joints share; a state then also carries that difference until the run's last piece settles it. A run is
held to have as many joints as it has at least, so what is promised here the laid run can always do.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from itertools import islice, product
from typing import NamedTuple

from wallplan.bond.cost import IMPOSSIBLE
from wallplan.bond.effort import MADE
from wallplan.bond.figures import Problem
from wallplan.bond.laying import Laying, Piecework, Settings
from wallplan.bond.nodes import Node, make_nodes
from wallplan.bond.positions import Places

MOST_OWING = 1
"""So many runs at a time may have begun with a difference that they still owe: more would multiply the states."""


OTHERS = 3
"""Steps that one in which a run begins or ends is worth."""


class TooMany(Exception):
    """A search would take more steps than it may: fewer places are to be tried. Raised before they are all held.

    ``work`` is what was done for a track that is not held, in steps.
    """

    def __init__(self, work: int = 0) -> None:
        super().__init__()
        self.work = work


Owing = tuple[tuple[int, int], ...]
"""Open runs whose first piece left a difference: where the run began, and the difference."""


Step = tuple[int, int, int]
"""From one state to the next: that one, the cost, and the saw settings (bits) of the pieces it lays."""


class _Way(NamedTuple):
    """Steps from a node: those whose cost no run's beginning or end comes into, and the others as pieces."""

    plain: tuple[Step, ...]
    others: tuple[tuple[int, Piecework], ...]


class Track:
    """One track of a problem. A state is a node and what its open runs still owe; state 0 is the first.

    States that owe the same lie together, as many as there are nodes: a state's number is that of its node and as often
    the count of nodes as what it owes has been met before. TooMany where it has more than ``most`` steps.
    """

    def __init__(self, problem: Problem, which: int, places: Places, settings: Settings, relaxed: bool,
                 most: int | None = None, laying: type[Laying] = Laying) -> None:
        self.terms, self.relaxed, self.most = problem.terms, relaxed, most
        self.most_owing = MOST_OWING if places.owing else 0
        self.stretches, self.fixed = problem.tracks[which], problem.fixed_of(which)
        self.nodes = _make_all_nodes(problem, which, places, relaxed, most)
        self.places, self.count, self._paid = [node.at for node in self.nodes], len(self.nodes), 0
        self._spans = self._find_spans()
        self.laying = laying(problem, which, self.nodes, settings, relaxed)
        self.owings: list[Owing] = [()]
        self._known: dict[Owing, int] = {(): 0}
        self._ways: list[_Way | None] = [None] * self.count
        self._others: dict[int, tuple[Step, ...]] = {}
        self._steps: dict[int, tuple[Step, ...]] = {}

    @property
    def last(self) -> int:
        """The state at the last node, with nothing owing."""
        return self.count - 1

    @property
    def size(self) -> int:
        """What the track has taken of work: nodes made and steps found."""
        plain = sum(len(way.plain) for way in self._ways if way)
        return MADE * self.count + plain + OTHERS * sum(map(len, self._others.values()))

    def take_stock(self) -> int:
        """What of its work was not told before."""
        before, self._paid = self._paid, self.size
        return self._paid - before

    def begin_again(self, places: Places, most: int | None) -> None:
        """Keep the pieces that are known, and forget what is owed: in a next search more or less may be."""
        self.most, self.most_owing = most, MOST_OWING if places.owing else 0
        self.owings, self._known = [()], {(): 0}
        self._others.clear()
        self._steps.clear()
        self._paid = self.size

    def node(self, state: int) -> Node:
        """The node of a state."""
        return self.nodes[state % self.count]

    def plain(self, state: int) -> tuple[Step, ...]:
        """Steps from a state's node that cost the same whatever is owed, as they are where nothing is."""
        return self._way(state % self.count).plain

    def settled(self, state: int) -> int:
        """The first node at which a state owes no longer; 0 where it owes nothing."""
        owing = self.owings[state // self.count]
        return bisect_left(self.places, max(self.laying.reach[at] for at, _ in owing)) if owing else 0

    def steps(self, state: int) -> tuple[Step, ...]:
        """Every step from a state; () from the last."""
        if state not in self._steps:
            base, settled = state - state % self.count, self.settled(state)
            plain = self.plain(state)
            if base:
                plain = tuple(step if step[0] >= settled else (step[0] + base, *step[1:]) for step in plain)
            self._steps[state] = (*plain, *self.others(state))
        return self._steps[state]

    def others(self, state: int) -> tuple[Step, ...]:
        """Steps from a state in which a run begins or ends."""
        if state not in self._others:
            self._others[state] = tuple(self._find_others(state))
        return self._others[state]

    def _find_others(self, state: int) -> Iterator[Step]:
        laying, owing, most = self.laying, self.owings[state // self.count], self.laying.most
        for to, work in self._way(state % self.count).others:
            if not owing and not work.starts:
                cost, settings = self._end_runs(work.cost, work.settings, work.ends, {})
                if cost < most:
                    yield to, cost, settings
                continue
            there = self.places[to]
            for begun in product(*work.starts):
                cost, settings, owed = work.cost, work.settings, dict(owing)
                for more, setting, at, left in begun:
                    cost, settings = cost + more, settings | setting
                    owed[at] = left
                kept = tuple((at, left) for at, left in sorted(owed.items()) if left and laying.reach[at] > there)
                if len(kept) <= self.most_owing:
                    cost, settings = self._end_runs(cost, settings, work.ends, owed)
                    if cost < most:
                        yield self._number(kept) * self.count + to, cost, settings

    def _end_runs(self, cost: int, settings: int, ends: tuple[tuple[int, int], ...],
                  owed: dict[int, int]) -> tuple[int, int]:
        """Cost and settings with the last pieces of runs."""
        for run, length in ends:
            more, setting = self.laying.end_run(run, length, owed.get(self.stretches[run].start, 0))
            cost, settings = cost + more, settings | setting
        return cost, settings

    def _number(self, owing: Owing) -> int:
        if owing not in self._known:
            self._known[owing] = len(self.owings)
            self.owings.append(owing)
        return self._known[owing]

    def _way(self, number: int) -> _Way:
        way = self._ways[number]
        if way is None:
            way = self._ways[number] = self._find_way(number)
        return way

    def _find_way(self, number: int) -> _Way:
        here, plain, others = self.nodes[number], list[Step](), list[tuple[int, Piecework]]()
        if number == self.last:
            return _Way((), ())
        if here.fixed and (void := self._cross_void(here)) is not None:
            return _Way((), ((void, Piecework(0, 0)),))
        laying, (first, last) = self.laying, self._spans[number]
        events = min(last, max(first, laying.alone_until(number)))
        plain += laying.between_alone(number, range(first, events))
        for to, work in laying.between(number, range(events, last)):
            if work.starts or work.ends:
                others.append((to, work))
            else:
                plain.append((to, work.cost, work.settings))
        return _Way(tuple(plain), tuple(others))

    def _find_spans(self) -> list[tuple[int, int]]:
        """For each node the first node that a piece from it may end at, and the one after the last."""
        found, steps, places = list[tuple[int, int]](), 0, self.places
        for node in self.nodes:
            least = 1 if self.relaxed or node.fixed else self.terms.least
            first, last = bisect_left(places, node.at + least), bisect_right(places, node.at + self.terms.module)
            after = bisect_right(self.fixed, node.at)
            end = bisect_left(places, self.fixed[after]) if after < len(self.fixed) else len(places)
            found.append((min(first, end), min(last, end + 1)))
            steps += found[-1][1] - found[-1][0]
            if self.most is not None and steps > self.most:
                raise TooMany(MADE * self.count)
        return found

    def _cross_void(self, here: Node) -> int | None:
        following = [at for at in self.fixed if at > here.at]
        if not following or any(s.start < following[0] and s.end > here.at for s in self.stretches):
            return None
        return bisect_left(self.places, following[0])


def bound_alone(track: Track) -> dict[int, int]:
    """For each state that a track comes to, the least that the track alone still costs; IMPOSSIBLE where nothing goes on."""
    reached = _reach_states(track)
    least = dict.fromkeys(reached, IMPOSSIBLE)
    least[track.last] = 0
    count = track.count
    for state in sorted(reached, key=lambda one: -(one % count)):
        base = state - state % count
        settled = track.settled(state) if base else 0
        costs = [cost + least[to if to >= settled else to + base] for to, cost, _ in track.plain(state)]
        costs += [cost + least[to] for to, cost, _ in track.others(state)]
        if costs:
            least[state] = min(costs)
    return least


def _reach_states(track: Track) -> set[int]:
    waiting, reached, count, steps = [0], {0}, track.count, 0
    while waiting:
        state = waiting.pop()
        base = state - state % count
        settled = track.settled(state) if base else 0
        plain, others = track.plain(state), track.others(state)
        following = {to if to >= settled else to + base for to, _, _ in plain}
        following.update(to for to, _, _ in others)
        steps += len(plain) + len(others)
        if track.most is not None and steps > track.most:
            raise TooMany
        fresh = following - reached
        reached |= fresh
        waiting += fresh
    return reached


def _make_all_nodes(problem: Problem, which: int, places: Places, relaxed: bool, most: int | None) -> list[Node]:
    stretches, fixed, nodes = problem.tracks[which], problem.fixed_of(which), list[Node]()
    for at in places.positions:
        if at in fixed:
            beside = sum(s.courses for s in stretches if at in (s.start, s.end))
            parts = ((at, beside),) if at in problem.joined[which] else ()
            nodes.append(Node(at, parts, (), fixed=True))
        elif fixed[0] < at < fixed[-1]:
            made = make_nodes(problem.terms, stretches, fixed, at, relaxed, places.end_pieces)
            nodes += made if most is None else islice(made, most + 1 - len(nodes))
        if most is not None and len(nodes) > most:
            raise TooMany(MADE * len(nodes))
    return nodes
