"""The search itself: a shortest path over pairs of states, one of either track.

What one track alone would still cost, and where it is worked out what both together cost beyond that, is a bound that never
overstates, so the first finished path is the best (A*, Hart, Nilsson and Raphael, 1968).
"""

from __future__ import annotations

from heapq import heappop, heappush
from typing import TYPE_CHECKING, NamedTuple

from wallplan.bond.cost import BOND, BROKEN, IMPOSSIBLE, LAP, SETTING
from wallplan.bond.figures import adjoining
from wallplan.bond.nodes import Node
from wallplan.bond.track import Track

if TYPE_CHECKING:
    from wallplan.bond.together import Together

Tail = tuple[int, int]
"""A moved joint that later joints of the other track must still keep clear of: place and courses."""


class Side(NamedTuple):
    """One track's share of a state: where it has come to, and which moved joints still matter."""

    state: int
    tails: tuple[Tail, ...] = ()


State = tuple[int, int, int]
"""Numbers of both sides, and the lengths sawn so far (bits)."""


class Bounds(NamedTuple):
    """What is still to be paid at least: for each state of either track alone, and what both together cost beyond."""

    alone: tuple[dict[int, int], dict[int, int]]
    together: Together | None = None


class Found(NamedTuple):
    """The best pair of tracks: the nodes of each from first to last, and what they cost together.

    ``settings_proven`` is True where no layout as good in broken rules, cutting and short pieces saws fewer lengths;
    ``everywhere`` where joints were tried at every place that may matter.
    """

    tracks: tuple[tuple[Node, ...], tuple[Node, ...]]
    cost: int
    settings_proven: bool
    everywhere: bool = True


_Row = tuple[int, int, int, int, int]
"""A step as the zip takes it: the least that its track then costs to the end, its cost, state, node and settings."""


class _Turn(NamedTuple):
    """What is the same whenever a pair of states goes on: which track does, the least that the other costs to its end,
    the steps, the moved joints that this track leaves behind, the other's node and tails, and laps known so far by node.
    """

    which: int
    sure: int
    rows: list[_Row]
    tails: tuple[Tail, ...]
    beside: Node
    beside_tails: tuple[Tail, ...]
    laps: dict[int, int]


class Zip:
    """One search. ``ceiling`` is a cost already reached; only what costs less is looked for.

    A state's steps are taken in the order of the least that they can come to, each only when nothing cheaper waits. A side
    without tails goes by its track's state, others are numbered below nought as they turn up.
    """

    def __init__(self, tracks: tuple[Track, Track], bounds: Bounds, ceiling: int, minds_settings: bool) -> None:
        self.terms, self.tracks, self.bounds = tracks[0].terms, tracks, bounds
        self.relaxed, self.ceiling, self.minds_settings = tracks[0].relaxed, ceiling, minds_settings
        self.lap_grade = BOND if self.terms.keeps_bond else LAP
        self.sides: tuple[list[Side], list[Side]] = ([], [])
        self.numbers: tuple[dict[Side, int], dict[Side, int]] = ({}, {})
        self.rows: tuple[dict[int, list[_Row]], dict[int, list[_Row]]] = ({}, {})
        self.laps: tuple[dict[int, dict[int, int]], dict[int, dict[int, int]]] = ({}, {})
        self.turns: dict[tuple[int, int], _Turn] = {}
        self.best: dict[tuple[int, int], list[tuple[int, int]]] = {}
        self.came: dict[State, State] = {}
        self.heap: list[tuple[int, int, int, int, State, int]] = []
        self.pushed, self.expanded, self.gave_up = 0, 0, False

    def close(self, tries: int | None) -> Found | None:
        """Run the search to its end, or for so many states; None where no pair of tracks fits together."""
        lasts = self.tracks[0].last, self.tracks[1].last
        self._push((0, 0, 0), 0, None)
        while self.heap:
            total, progress, taken, _, state, cost = heappop(self.heap)
            if (cost, state[2]) not in self.best[state[:2]]:
                continue
            if self._ends(state[:2], lasts):
                unminded = 0 if self.minds_settings else SETTING * state[2].bit_count()
                return Found(self._trace(state), cost + unminded, settings_proven=self.minds_settings)
            self.expanded += not taken
            if tries is not None and self.expanded > tries:
                self.gave_up = True
                return None
            self._expand(state, cost, taken, total, progress)
        return None

    def _ends(self, pair: tuple[int, int], lasts: tuple[int, int]) -> bool:
        """Whether both tracks are laid. Joints that are still to be kept clear of then are so: nothing comes after them."""
        return all(number == last or (number < 0 and self.sides[which][-1 - number].state == last)
                   for which, (number, last) in enumerate(zip(pair, lasts, strict=True)))

    def _side(self, which: int, number: int) -> Side:
        return Side(number) if number >= 0 else self.sides[which][-1 - number]

    def _state(self, which: int, number: int) -> int:
        return number if number >= 0 else self.sides[which][-1 - number].state

    def _number(self, which: int, state: int, tails: tuple[Tail, ...]) -> int:
        if not tails:
            return state
        numbers, side = self.numbers[which], Side(state, tails)
        if side not in numbers:
            self.sides[which].append(side)
            numbers[side] = -len(self.sides[which])
        return numbers[side]

    def _push(self, state: State, cost: int, before: State | None) -> None:
        one, other, settings = state
        known = self.best.get((one, other))
        if known is not None:
            if not self.minds_settings and known[0][0] <= cost:
                return
            if any(best <= cost and sawn & settings == sawn for best, sawn in known):
                return
        (first, second), alone = self.tracks, self.bounds.alone
        ones, others = self._state(0, one), self._state(1, other)
        total = cost + alone[0][ones] + alone[1][others]
        ones, others = ones % first.count, others % second.count
        if self.bounds.together is not None:
            total += self.bounds.together.beyond(ones, others)
        if total >= self.ceiling:
            return
        if known is None or not self.minds_settings:
            self.best[one, other] = [(cost, settings)]
        else:
            known.append((cost, settings))
        if before is not None:
            self.came[state] = before
        self.pushed += 1
        heappush(self.heap, (total, -(first.places[ones] + second.places[others]), 0, self.pushed, state, cost))

    def _expand(self, state: State, cost: int, taken: int, total: int, progress: int) -> None:
        """Take the steps of a state from number ``taken`` on that may come to no more than ``total``; the others wait."""
        one, other, before = state
        turn = self.turns.get((one, other)) or self._find_turn(one, other)
        which, rows, tails, laps = turn.which, turn.rows, turn.tails, turn.laps
        sure, limit, nodes = cost + turn.sure, (total // LAP + 1) * LAP, self.tracks[which].nodes
        for number in range(taken, len(rows)):
            key, more, to, node, sawn = rows[number]
            if sure + key >= limit:
                if sure + key < self.ceiling:
                    self.pushed += 1
                    heappush(self.heap, (sure + key, progress, number, self.pushed, state, cost))
                return
            lap = laps.get(node)
            if lap is None:
                lap = laps[node] = self._lap_cost(nodes[node], turn.beside, turn.beside_tails)
            if lap < IMPOSSIBLE:
                settings = before | sawn
                new = (settings ^ before).bit_count() * SETTING if self.minds_settings else 0
                side = self._number(which, to, tails) if tails else to
                self._push((one, side, settings) if which else (side, other, settings), cost + more + lap + new, state)

    def _find_turn(self, one: int, other: int) -> _Turn:
        sides = self._side(0, one), self._side(1, other)
        nodes = self.tracks[0].node(sides[0].state), self.tracks[1].node(sides[1].state)
        which = 0 if nodes[0].at <= nodes[1].at else 1
        if sides[which].state == self.tracks[which].last:
            which = 1 - which
        mine, beside = sides[which], sides[1 - which]
        known = (one, other)[1 - which] if beside.tails else beside.state % self.tracks[1 - which].count
        turn = self.turns[one, other] = _Turn(
            which, self.bounds.alone[1 - which][beside.state], self._rows(which, mine.state),
            self._tails(nodes[which], mine, nodes[1 - which]), nodes[1 - which], beside.tails,
            self.laps[which].setdefault(known, {}))
        return turn

    def _rows(self, which: int, state: int) -> list[_Row]:
        known = self.rows[which]
        if state not in known:
            least, count = self.bounds.alone[which], self.tracks[which].count
            known[state] = sorted((cost + least[to], cost, to, to % count, settings)
                                  for to, cost, settings in self.tracks[which].steps(state) if least[to] < IMPOSSIBLE)
        return known[state]

    def _lap_cost(self, there: Node, other: Node, tails: tuple[Tail, ...]) -> int:
        """What a joint costs beside those of the other track; one against another wall's end has no bond to keep."""
        cost = 0
        for place, courses in there.parts:
            for spot, others in (*other.parts, *tails):
                gap = abs(place - spot)
                if gap < self.terms.lap and (pairs := adjoining(courses, others)):
                    if not self.relaxed:
                        return IMPOSSIBLE
                    cost += BROKEN * pairs
                if spot == other.at and place == there.at and not (self.terms.keeps_bond and (there.fixed or other.fixed)):
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
                node = self.tracks[which].node(self._side(which, one[which]).state)
                if not paths[which] or paths[which][-1] is not node:
                    paths[which].append(node)
        return tuple(paths[0]), tuple(paths[1])
