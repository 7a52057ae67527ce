"""What two tracks together still cost at least beyond what each costs alone: the laps that one leaves to the other.

Every pair of nodes is worked out from the end back (dynamic programming, Bellman, 1957), with arrays. What runs owe is left
out: between two nodes the step of least cost counts, whatever is owed, and a moved joint counts only where it is not moved.
So the bound never overstates, and where joints are fixed it is nearly what the layout costs.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

import numpy as np

from wallplan.bond.cost import GRADE, IMPOSSIBLE
from wallplan.bond.figures import adjoining
from wallplan.bond.nodes import Node
from wallplan.bond.track import Track

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Numbers = NDArray[np.int64]

FAR = 1 << 60
"""More than any layout comes to in one group of grades."""


class Group(NamedTuple):
    """Two grades of cost in one machine word, by their places in a cost, and the lower one's bits, 0 for a grade alone."""

    high: int
    low: int
    bits: int

    def read(self, digits: Numbers) -> Numbers:
        """This group's share of costs given grade by grade."""
        return (digits[:, self.high] << self.bits) + digits[:, self.low] if self.bits else digits[:, self.high]

    def cost(self, value: int) -> int:
        """The cost that a value stands for."""
        if not self.bits:
            return value << GRADE * self.high
        half = 1 << self.bits - 1
        low = ((value + half) & (2 * half - 1)) - half
        return ((value - low >> self.bits) << GRADE * self.high) + (low << GRADE * self.low)


_FIRST, _MIDDLE, _SHOWS, _JOINT, _LAP, _SETTING, _SHORT, _CUTTING, _BOND, _BROKEN = range(10)
_CUTS, _LAST = Group(_CUTTING, _SHORT, 27), (Group(_JOINT, _SHOWS, 27), Group(_MIDDLE, _FIRST, 6))
KEEPS_BOND = (Group(_BOND, 0, 0), _CUTS, Group(_LAP, 0, 0), *_LAST)
"""The grades in the order of preference where the bond's own lap goes before cutting; laps come into the first group."""
SAVES_CUTS = (_CUTS, Group(_LAP, 0, 0), *_LAST)
"""The grades in half bond; laps come into the second group, those under the least into the first."""
BREAKS = Group(_BROKEN, 0, 0)
"""Where rules may be broken, this goes before the others, and laps under the least count here."""


def read_grades(costs: list[int]) -> Numbers:
    """Costs grade by grade, the least weighty first, one cost a row; a grade may be under nought. No costs give no rows."""
    grades, size = 10, GRADE // 8
    half = sum(1 << GRADE * place + GRADE - 1 for place in range(grades))
    raw = b"".join((cost + half).to_bytes(grades * size, "little") for cost in costs)
    wide = np.zeros((len(costs), grades, 8), dtype=np.uint8)
    wide[:, :, :size] = np.frombuffer(raw, dtype=np.uint8).reshape(len(costs), grades, size)
    return wide.view("<i8")[:, :, 0] - (1 << GRADE - 1)


class _Side:
    """One track in numbers: its nodes' places and joints, its steps one after the other, and where its pairs stand.

    A pair in which this track is to go on is written in the row of its own node, in the column of the other's.
    """

    def __init__(self, track: Track, least: dict[int, int], groups: tuple[Group, ...]) -> None:
        self.count = track.count
        self.at = np.array(track.places, dtype=np.int64)
        self.order = self.at.copy()
        self.order[-1] = np.iinfo(np.int64).max
        self.joints = [next((mask for place, mask in node.parts if place == node.at), 0) for node in track.nodes]
        steps = _reduce(track, least)
        self.begins = np.cumsum([0, *map(len, steps)])
        self.to = np.array([to for after in steps for to in after], dtype=np.int64)
        digits = read_grades([cost for after in steps for cost in after.values()])
        self.costs = [group.read(digits) for group in groups]
        farthest = [max(after, default=0) for after in steps]
        self.farthest = np.maximum.accumulate(np.array(farthest, dtype=np.int64))
        self.longest = max((track.places[to] - track.places[node] for node, to in enumerate(farthest) if to), default=0)

    def face(self, other: _Side, *, ties: bool, base: int) -> int:
        """Find which nodes of the other track may stand beside each of this one's; ``ties`` where this track goes first.

        Gives the end of the table that begins at ``base``.
        """
        self.low = np.searchsorted(other.order, self.order, side="left" if ties else "right")
        earlier = np.searchsorted(other.at, self.at, side="right") - 1
        self.high = np.where(earlier >= 0, other.farthest[earlier], 0)
        width = max(1, int((self.high - self.low).max()) + 1)
        self.offset = base + np.arange(self.count, dtype=np.int64) * width - self.low
        return base + self.count * width


def _reduce(track: Track, least: dict[int, int]) -> list[dict[int, int]]:
    """For each node the nodes that may follow, with the least that going there costs over what the track alone costs."""
    count = track.count
    reduced, most = list[dict[int, int]]({} for _ in range(count)), track.laying.most
    for state, sure in least.items():
        if sure < IMPOSSIBLE:
            node, settled = state % count, track.settled(state)
            base, best = state - node, reduced[node]
            for to, cost, _ in track.plain(state):
                rest = least[to if to >= settled else to + base]
                over = cost + rest - sure
                if rest < IMPOSSIBLE and over < most and (to not in best or over < best[to]):
                    best[to] = over
            for there, cost, _ in track.others(state):
                over, to = cost + least[there] - sure, there % count
                if least[there] < IMPOSSIBLE and over < most and (to not in best or over < best[to]):
                    best[to] = over
    return reduced


class _Part(NamedTuple):
    """Where nodes have a joint in some courses (bits)."""

    place: int
    courses: int


def _find_parts(nodes: list[Node], *, moved: bool) -> dict[_Part, Numbers]:
    """The nodes (numbers) that have a joint at a place, and in courses, which is a moved one or where the node itself is."""
    found: dict[_Part, list[int]] = {}
    for number, node in enumerate(nodes):
        for place, courses in node.parts:
            if moved is (place != node.at):
                found.setdefault(_Part(place, courses), []).append(number)
    return {part: np.array(numbers, dtype=np.int64) for part, numbers in found.items()}


def _parts_too_near(tracks: tuple[Track, Track]) -> Iterator[tuple[Numbers, Numbers, int]]:
    """Nodes (numbers) of either track that have parts nearer than a lap, one of them moved, in so many pairs of courses."""
    (own, moved), (others, others_moved) = ([_find_parts(track.nodes, moved=moved) for moved in (False, True)]
                                            for track in tracks)
    for ones, twos in ((moved, others), (moved, others_moved), (own, others_moved)):
        for (place, courses), numbers in ones.items():
            for (spot, beside), there in twos.items():
                if abs(place - spot) < tracks[0].terms.lap and (pairs := adjoining(courses, beside)):
                    yield numbers, there, pairs


class Together:
    """The bound for one search. ``beyond`` looks it up."""

    def __init__(self, tracks: tuple[Track, Track], alone: tuple[dict[int, int], dict[int, int]]) -> None:
        terms = tracks[0].terms
        self.relaxed = tracks[0].relaxed
        self.groups = (*(BREAKS,) * self.relaxed, *(KEEPS_BOND if terms.keeps_bond else SAVES_CUTS))
        self.sides = tuple(_Side(track, least, self.groups) for track, least in zip(tracks, alone, strict=True))
        one, other = self.sides
        size = other.face(one, ties=False, base=one.face(other, ties=True, base=0))
        self._found = [np.full(size, FAR, dtype=np.int64), *(np.zeros(size, dtype=np.int64) for _ in self.groups[1:])]
        self._weigh_laps(tracks)
        self._known: dict[tuple[int, int], int] = {}
        self.weighed = sum(int(np.diff(side.begins) @ np.maximum(side.high - side.low + 1, 0)) for side in self.sides)
        """How many steps were weighed beside some node of the other track: what the bound takes of work."""
        self._settle_all()

    def beyond(self, one: int, other: int) -> int:
        """What a pair of nodes costs at least over what its tracks cost alone; IMPOSSIBLE or more where nothing goes on."""
        known = self._known.get((one, other))
        if known is None:
            known = self._known[one, other] = self._look_up(one, other)
        return known

    def _look_up(self, one: int, other: int) -> int:
        sides, pair = self.sides, (one, other)
        which = 0 if sides[0].order[one] <= sides[1].order[other] else 1
        mine, beside = pair[which], pair[1 - which]
        if not sides[which].low[mine] <= beside <= sides[which].high[mine]:
            return IMPOSSIBLE
        place = sides[which].offset[mine] + beside
        if self._found[0][place] >= FAR:
            return IMPOSSIBLE
        return sum(group.cost(int(found[place])) for group, found in zip(self.groups, self._found, strict=True))

    def _weigh_laps(self, tracks: tuple[Track, Track]) -> None:
        """What each pair of joints that may stand beside each other departs from the bond's lap; FAR under the least, or
        the pairs of courses in which a rule is then broken.
        """
        terms, (one, other) = tracks[0].terms, self.sides
        kinds = [sorted(set(side.joints)) for side in self.sides]
        pairs = np.array([[adjoining(mine, theirs) for theirs in kinds[1]] for mine in kinds[0]], dtype=np.int64)
        kind = [np.array([known.index(mask) for mask in side.joints]) for known, side in zip(kinds, self.sides, strict=True)]
        apart = max(abs(int(one.at[end] - other.at[end])) for end in (0, -1))
        span = max(one.longest, other.longest) + apart
        low = np.searchsorted(other.at, one.at - span)
        width = int((np.searchsorted(other.at, one.at + span, side="right") - low).max())
        beside = np.minimum(low[:, None] + np.arange(width), other.count - 1)
        gap = np.abs(one.at[:, None] - other.at[beside])
        adjoin = pairs[kind[0][:, None], kind[1][beside]]
        departure = np.minimum(np.abs(gap - terms.ideal), np.abs(gap - terms.module + terms.ideal)) * adjoin
        if terms.keeps_bond:  # a joint against another wall's end has no bond that is to be kept
            fixed = [np.array([node.fixed for node in track.nodes], dtype=bool) for track in tracks]
            departure[fixed[0][:, None] | fixed[1][beside]] = 0
        short = np.where(gap < terms.lap, adjoin if self.relaxed else FAR * (adjoin > 0), 0)
        self._shorten_moved(tracks, short, low)
        laps = [departure] if terms.keeps_bond else [np.zeros_like(departure), departure]
        if self.relaxed:
            laps.insert(0, short)
        else:
            laps[0] = laps[0] + short
        self._laps = [lap.ravel() for lap in laps]
        self._lap_offset = np.arange(one.count, dtype=np.int64) * width - low

    def _shorten_moved(self, tracks: tuple[Track, Track], short: Numbers, low: Numbers) -> None:
        """Put what moved joints come too near to into the table of short laps: a row for each node of the first track."""
        for numbers, others, pairs in _parts_too_near(tracks):
            columns = others - low[numbers, None]
            rows, within = np.nonzero((columns >= 0) & (columns < short.shape[1]))
            place = numbers[rows], columns[rows, within]
            short[place] = short[place] + pairs if self.relaxed else FAR

    def _settle_all(self) -> None:
        one, other = self.sides
        self._found[0][one.offset[-1] + other.count - 1] = 0
        order = [(at, which, node) for which, side in enumerate(self.sides)
                 for node, at in enumerate(side.order.tolist())]
        for _, which, node in sorted(order, reverse=True):
            side = self.sides[which]
            if side.low[node] <= side.high[node] and side.begins[node] < side.begins[node + 1]:
                self._settle(which, node)

    def _settle(self, which: int, node: int) -> None:
        """All pairs in which this node's track goes on: the best of its steps, grades in their order."""
        mine, beside = self.sides[which], self.sides[1 - which]
        steps = slice(mine.begins[node], mine.begins[node + 1])
        to, near = mine.to[steps, None], np.arange(mine.low[node], mine.high[node] + 1)
        stays = mine.order[to] <= beside.order[near] if which == 0 else mine.order[to] < beside.order[near]
        place = np.where(stays, mine.offset[to] + near, beside.offset[near] + to)
        lap = self._lap_offset[to] + near if which == 0 else self._lap_offset[near] + to
        row = slice(mine.offset[node] + near[0], mine.offset[node] + near[-1] + 1)
        value = self._found[0][place] + mine.costs[0][steps, None] + self._laps[0][lap]
        least = value.min(axis=0)
        self._found[0][row] = np.minimum(least, FAR)
        column, step = np.nonzero((value == least).T)
        for number in range(1, len(self._found)):
            value = self._found[number][place[step, column]] + mine.costs[number][steps][step]
            if number < len(self._laps):
                value += self._laps[number][lap[step, column]]
            least = np.minimum.reduceat(value, np.searchsorted(column, np.arange(len(near))))
            self._found[number][row] = least
            best = value == least[column]
            column, step = column[best], step[best]
