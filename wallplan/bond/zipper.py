"""The search: two tracks closed like a zip, the lagging one always laying the next piece.

A shortest path over states (last odd joint, last even joint). What one track alone would still cost is a
bound that never overstates, so the first finished path is the best (A*, Hart, Nilsson and Raphael, 1968).
The model is that of boxes, glue and penalties (Knuth and Plass, Software: Practice and Experience, 1981).
Different cut lengths do not add up piece by piece: a second search, in which a state also knows which lengths
it has sawn, looks for fewer at the same cutting, and gives up after a set number of states (``SETTINGS_TRIES``).
"""

from __future__ import annotations

from heapq import heappop, heappush
from typing import NamedTuple

from wallplan.bond.cost import BOND, BROKEN, IMPOSSIBLE, LAP, SETTING, count_settings
from wallplan.bond.figures import Problem, adjoining
from wallplan.bond.nodes import Node
from wallplan.bond.positions import try_positions
from wallplan.bond.track import Settings, Track

SETTINGS_TRIES = 2_000

Tail = tuple[int, int]
"""A moved joint that later joints of the other track must still keep clear of: place and courses."""


class Side(NamedTuple):
    """One track's share of a state: where it has come to, and which moved joints still matter."""

    state: int
    tails: tuple[Tail, ...] = ()


State = tuple[int, int, int]
"""Numbers of both sides, and the lengths sawn so far (bits)."""


class Found(NamedTuple):
    """The best pair of tracks: the nodes of each from first to last, and what they cost together.

    ``settings_proven`` is True where no layout as good in broken rules, cutting and short pieces saws fewer lengths.
    """

    tracks: tuple[tuple[Node, ...], tuple[Node, ...]]
    cost: int
    settings_proven: bool


def close_zip(problem: Problem) -> Found:
    """The first layout in the order of preference; where no layout keeps every rule, the one that breaks fewest."""
    quick = try_positions(problem, thorough=False)
    full = try_positions(problem)
    found = _search(problem, quick, relaxed=False)
    if found is None and quick != full:
        found = _search(problem, full, relaxed=False)
    found = found or _search(problem, quick, relaxed=True)
    if found is None:
        raise ValueError("no pieces fill this run; its ends stand on no common position")
    return found


def _search(problem: Problem, positions: tuple[int, ...], relaxed: bool) -> Found | None:
    settings = Settings()
    tracks = [Track(problem, which, positions, settings, relaxed) for which in (0, 1)]
    bounds = [_bound_alone(track) for track in tracks]
    if bounds[0][0] >= IMPOSSIBLE or bounds[1][0] >= IMPOSSIBLE:
        return None
    zipped = _Zip((tracks[0], tracks[1]), (bounds[0], bounds[1]), relaxed, ceiling=IMPOSSIBLE, minds_settings=False)
    first = zipped.close(tries=None)
    if first is None or count_settings(first.cost) < 2:
        return first and first._replace(settings_proven=True)
    again = _Zip((tracks[0], tracks[1]), (bounds[0], bounds[1]), relaxed, first.cost, minds_settings=True)
    better = again.close(SETTINGS_TRIES)
    return better or first._replace(settings_proven=not again.gave_up)


def _bound_alone(track: Track) -> list[int]:
    """For each state of a track, the least that the track alone still costs."""
    waiting, seen = [0], {0}
    while waiting:
        for step in track.steps(waiting.pop()):
            if step.to not in seen:
                seen.add(step.to)
                waiting.append(step.to)
    least = [IMPOSSIBLE] * len(track.states)
    if track.last >= 0:
        least[track.last] = 0
    for state in sorted(seen, key=lambda one: -track.states[one][0]):
        for step in track.steps(state):
            least[state] = min(least[state], step.cost + least[step.to])
    return least


class _Zip:
    """One search. ``ceiling`` is a cost already reached; only what costs less is looked for.

    Sides are numbered as they turn up, and what two of them cost in laps is worked out once: states repeat them often.
    """

    def __init__(self, tracks: tuple[Track, Track], bounds: tuple[list[int], list[int]], relaxed: bool,
                 ceiling: int, minds_settings: bool) -> None:
        self.terms, self.tracks, self.bounds = tracks[0].terms, tracks, bounds
        self.relaxed, self.ceiling, self.minds_settings = relaxed, ceiling, minds_settings
        self.lap_grade = BOND if self.terms.keeps_bond else LAP
        self.sides: tuple[list[Side], list[Side]] = ([], [])
        self.numbers: tuple[dict[object, int], dict[object, int]] = ({}, {})
        self.laps: tuple[dict[int, dict[int, int]], dict[int, dict[int, int]]] = ({}, {})
        self.best: dict[tuple[int, int], list[tuple[int, int]]] = {}
        self.came: dict[State, State] = {}
        self.heap: list[tuple[int, int, int, State, int]] = []
        self.pushed, self.expanded, self.gave_up = 0, 0, False

    def close(self, tries: int | None) -> Found | None:
        """Run the search to its end, or for so many states; None where no pair of tracks fits together."""
        lasts = (self.tracks[0].last, self.tracks[1].last)
        self._push((self._number(0, 0, ()), self._number(1, 0, ()), 0), 0, None)
        while self.heap:
            _, _, _, state, cost = heappop(self.heap)
            if (cost, state[2]) not in self.best[state[:2]]:
                continue
            if (self.sides[0][state[0]].state, self.sides[1][state[1]].state) == lasts:
                unminded = 0 if self.minds_settings else SETTING * state[2].bit_count()
                return Found(self._trace(state), cost + unminded, settings_proven=self.minds_settings)
            self.expanded += 1
            if tries is not None and self.expanded > tries:
                self.gave_up = True
                return None
            self._expand(state, cost)
        return None

    def _number(self, which: int, state: int, tails: tuple[Tail, ...]) -> int:
        numbers = self.numbers[which]
        key = (state, tails) if tails else state
        number = numbers.get(key)
        if number is None:
            number = numbers[key] = len(self.sides[which])
            self.sides[which].append(Side(state, tails))
        return number

    def _push(self, state: State, cost: int, before: State | None) -> None:
        one, other, settings = state
        known = self.best.get((one, other))
        if known is not None and not self.minds_settings and known[0][0] <= cost:
            return
        if known is not None and any(best <= cost and sawn & settings == sawn for best, sawn in known):
            return
        ones, others = self.sides[0][one].state, self.sides[1][other].state
        total = cost + self.bounds[0][ones] + self.bounds[1][others]
        if total >= self.ceiling:
            return
        if known is None or not self.minds_settings:
            self.best[one, other] = [(cost, settings)]
        else:
            known.append((cost, settings))
        if before is not None:
            self.came[state] = before
        self.pushed += 1
        progress = -(self.tracks[0].node(ones).at + self.tracks[1].node(others).at)
        heappush(self.heap, (total, progress, self.pushed, state, cost))

    def _expand(self, state: State, cost: int) -> None:
        sides = self.sides[0][state[0]], self.sides[1][state[1]]
        nodes = self.tracks[0].node(sides[0].state), self.tracks[1].node(sides[1].state)
        which = 0 if nodes[0].at <= nodes[1].at else 1
        if sides[which].state == self.tracks[which].last:
            which = 1 - which
        track, tails = self.tracks[which], self._tails(nodes[which], sides[which], nodes[1 - which])
        laps = self.laps[which].setdefault(state[1 - which], {})
        for step in track.steps(sides[which].state):
            node = track.states[step.to][0]
            lap = laps.get(node)
            if lap is None:
                lap = laps[node] = self._lap_cost(track.nodes[node], nodes[1 - which], sides[1 - which].tails)
            if lap < IMPOSSIBLE:
                settings = state[2] | step.settings
                new = (settings ^ state[2]).bit_count() * SETTING if self.minds_settings else 0
                side = self._number(which, step.to, tails)
                following = (side, state[1], settings) if which == 0 else (state[0], side, settings)
                self._push(following, cost + step.cost + lap + new, state)

    def _lap_cost(self, there: Node, other: Node, tails: tuple[Tail, ...]) -> int:
        cost = 0
        for place, courses in there.parts:
            for spot, others in (*other.parts, *tails):
                gap = abs(place - spot)
                if gap < self.terms.lap and (pairs := adjoining(courses, others)):
                    if not self.relaxed:
                        return IMPOSSIBLE
                    cost += BROKEN * pairs
                if spot == other.at and place == there.at:
                    cost += self.lap_grade * self.terms.departure(gap) * adjoining(courses, others)
        return cost

    def _tails(self, node: Node, mine: Side, beside: Node) -> tuple[Tail, ...]:
        """What the other track must still keep clear of when this one has moved on from a node.

        A joint where it belongs is behind all that the other lays later. Not so one that was moved, nor any while the
        other stands where it has no joint: its next may be an end against another wall, as near as it likes.
        """
        if beside.parts and not (mine.tails or node.moved):
            return ()
        clear = min((place for place, _ in beside.parts), default=beside.at) - self.terms.lap
        late = [part for part in node.parts if part[0] != node.at or not beside.parts]
        return tuple(tail for tail in (*mine.tails, *late) if tail[0] > clear)

    def _trace(self, state: State) -> tuple[tuple[Node, ...], tuple[Node, ...]]:
        states = [state]
        while states[-1] in self.came:
            states.append(self.came[states[-1]])
        paths: tuple[list[Node], list[Node]] = ([], [])
        for one in reversed(states):
            for which in (0, 1):
                node = self.tracks[which].node(self.sides[which][one[which]].state)
                if not paths[which] or paths[which][-1] is not node:
                    paths[which].append(node)
        return tuple(paths[0]), tuple(paths[1])
