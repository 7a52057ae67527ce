"""What the pieces between two joints of a track cost, in all courses at once.

A run's first piece may leave a difference that its joints share until its last piece settles it: those two are kept apart
from what is sure.
"""

from __future__ import annotations

import sys
from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from typing import NamedTuple

from wallplan.bond.cost import BROKEN, FIRST_FULL, IMPOSSIBLE, JOINT, MIDDLE, SHOWS
from wallplan.bond.figures import Problem, Stretch, merge_stretches
from wallplan.bond.nodes import Node, crowd, doubles, find_near, points_after, points_before
from wallplan.bond.pieces import fit_run, grade_piece, near_stock, pull_alike

FEW = 4
"""So many joints share what a run's first piece leaves beside a jamb."""

Begun = tuple[int, int, int, int]
"""A choice for the first piece of the runs that begin at a place: cost, saw setting, place, difference."""


@dataclass
class Settings:
    """A bit for each length that is sawn, given out as lengths turn up."""

    bits: dict[int, int] = field(default_factory=dict)

    def bit(self, length: int) -> int:
        """The bit of a cut length."""
        return self.bits.setdefault(length, 1 << len(self.bits))


class Piecework(NamedTuple):
    """One step's pieces over the runs it touches: the sure cost, choices at runs' starts, pieces at their ends.

    An end is a run by its number and the nominal length of its last piece.
    """

    cost: int
    settings: int
    starts: tuple[tuple[Begun, ...], ...] = ()
    ends: tuple[tuple[int, int], ...] = ()


_make_work = tuple.__new__


class Share(NamedTuple):
    """What one run adds to a step: sure cost, settings, length of a piece begun at its start or ended at its end, or 0."""

    cost: int
    settings: int
    begun: int = 0
    ended: int = 0


NOT_TO_BE = Share(IMPOSSIBLE, 0)
_Points = tuple[int, ...]
_Spots = tuple[tuple[int, int], ...]


class Laying:
    """One track's runs and nodes, and what the pieces between two nodes cost. Nodes go by their numbers."""

    def __init__(self, problem: Problem, which: int, nodes: list[Node], settings: Settings, relaxed: bool) -> None:
        self.terms, self.stretches = problem.terms, problem.tracks[which]
        self.fixed, self.first, self.settings, self.nodes = problem.fixed_of(which), which == 0, settings, nodes
        self.most = IMPOSSIBLE if relaxed else BROKEN
        self.reach = {s.start: max(t.end for t in self.stretches if t.start == s.start) for s in self.stretches}
        ends = {end for s in self.stretches for end in (s.start, s.end)}
        events = sorted({*ends, *self.fixed, *(node.at for node in nodes if node.moves)})
        self._middle = problem.fixed[0] + problem.fixed[-1]
        self.places = [node.at for node in nodes]
        self._covered = merge_stretches(problem.covered)
        self._covers = [self._find_cover(at) for at in self.places]
        self._graded: dict[int, tuple[int, bool, int]] = {}
        self._begun: dict[tuple[int, int, int], tuple[Begun, ...]] = {}
        self._ended: dict[tuple[int, int, int], tuple[int, int]] = {}
        self._shares: list[dict[_Points, dict[_Points, Share]]] = [{} for _ in self.stretches]
        self._weights: dict[int, int] = {}
        self._listed: dict[int, tuple[int, ...]] = {}
        about = [self._find_points(node) for node in nodes]
        self._heads, self._tails = [heads for heads, _ in about], [tails for _, tails in about]
        self._headed = [sum(1 << run for run in heads) for heads in self._heads]
        self._tailed = [sum(1 << run for run in tails) for tails in self._tails]
        self._inner = [self._find_inner(number) for number in range(len(nodes))]
        self._near = [find_near(self.terms, self.stretches, node) if node.moves else None for node in nodes]
        self._crowds = [crowd(node, problem.kept_clear[which], problem.bridged[which], self.terms.lap) for node in nodes]
        self._alone_until = [
            bisect_left(self.places, events[after]) if (after := bisect_left(events, at)) < len(events) else 0
            for at in self.places]

    def _find_points(self, node: Node) -> tuple[dict[int, _Points], dict[int, _Points]]:
        """By run, where a piece after the node begins in it and where one before it ends, in the runs about the node."""
        near, at, heads, tails = self.terms.module, node.at, dict[int, _Points](), dict[int, _Points]()
        bare = not (node.moves or node.fixed)
        for number, stretch in enumerate(self.stretches):
            if bare and stretch.start < at < stretch.end:
                heads[number] = tails[number] = (at,)
            elif stretch.start - near <= at <= stretch.end + near:
                if points := points_after(self.terms, node, stretch):
                    heads[number] = points
                if points := points_before(self.terms, node, stretch):
                    tails[number] = points
        return heads, tails

    def _find_inner(self, number: int) -> int:
        """The runs (bits) in which the node has its joint where it belongs, ending one piece and beginning the next."""
        here, tails = (self.nodes[number].at,), self._tails[number]
        return sum(1 << run for run, points in self._heads[number].items()
                   if points == here == tails.get(run) and self.stretches[run].start < here[0] < self.stretches[run].end)

    def alone_until(self, here: int) -> int:
        """The next node not before the next place where a run begins or ends or a joint is moved; none later if it is it."""
        return self._alone_until[here]

    def between_alone(self, here: int, nodes: range) -> list[tuple[int, int, int]]:
        """Each node with the cost and the saw setting of the piece up to it, where nothing begins or ends between; not
        those that cost ``most``.
        """
        start, weight, crowds, most = self.places[here], self._weigh(self._inner[here]), self._crowds, self.most
        if not weight:
            return [(to, crowds[to], 0) for to in nodes if crowds[to] < most]
        places, known, covers, mirror = self.places, self._graded, self._covers, self.places[here] - self._middle
        found = list[tuple[int, int, int]]()
        for to in nodes:
            end = places[to]
            graded, whole, setting = known.get(end - start) or self._grade(end - start)
            seen = 0 if whole else MIDDLE * abs(end + mirror) + (0 if covers[to] > start else SHOWS)
            cost = crowds[to] + (graded + seen) * weight
            if cost < most:
                found.append((to, cost, setting))
        return found

    def between(self, here: int, nodes: range) -> Iterator[tuple[int, Piecework]]:
        """Each node with the pieces from one to it, whatever begins or ends between; not those that cost ``most``."""
        start, near, all_inner, headed = self.places[here], self._near[here], self._inner[here], self._headed[here]
        places, crowds, most, known = self.places, self._crowds, self.most, self._weights
        shares = {run: self._shares[run].setdefault(points, {}) for run, points in self._heads[here].items()}
        for to in nodes:
            beside = self._near[to]
            if near and beside and doubles(near, beside):
                continue
            inner, end = all_inner & self._inner[to], places[to]
            cost, settings = self.charge(end - start, start, end, None, known.get(inner) or self._weigh(inner))
            cost += crowds[to]
            begun, ends, tails = list[tuple[int, int, int]](), list[tuple[int, int]](), self._tails[to]
            for run in self._list_runs(headed & self._tailed[to] & ~inner):
                points = tails[run]
                more, sawn, first, last = shares[run].get(points) or self._share(run, here, points)
                cost, settings = cost + more, settings | sawn
                if cost >= most:
                    break
                if first:
                    begun.append((self.stretches[run].start, first, self.stretches[run].weight))
                if last:
                    ends.append((run, last))
            if cost < most:
                yield to, _make_work(Piecework, (cost, settings, self._begin_runs(begun) if begun else (), tuple(ends)))

    def _list_runs(self, runs: int) -> tuple[int, ...]:
        """The numbers of some runs (bits)."""
        known = self._listed.get(runs)
        if known is None:
            known = self._listed[runs] = tuple(run for run in range(len(self.stretches)) if runs >> run & 1)
        return known

    def _begin_runs(self, begun: list[tuple[int, int, int]]) -> tuple[tuple[Begun, ...], ...]:
        """Choices for the first pieces of runs, each told by where it begins, its first length and its weight."""
        weights = dict[int, tuple[int, int]]()
        for at, length, weight in begun:
            weights[at] = length, weights.get(at, (0, 0))[1] + weight
        return tuple(self._begin_run(at, length, weight) for at, (length, weight) in sorted(weights.items()))

    def _weigh(self, runs: int) -> int:
        """In how many courses some runs (bits) lie."""
        if runs not in self._weights:
            self._weights[runs] = sum(s.weight for number, s in enumerate(self.stretches) if runs >> number & 1)
        return self._weights[runs]

    def _share(self, run: int, here: int, points: _Points) -> Share:
        heads = self._heads[here][run]
        share = self._shares[run][heads][points] = self._lay_in_run(self.stretches[run], heads + points)
        return share

    def _lay_in_run(self, stretch: Stretch, points: _Points) -> Share:
        """The pieces of one run between joints and ends."""
        pairs = list(pairwise(points))
        if any(start >= end for start, end in pairs):
            return NOT_TO_BE
        if points[0] == stretch.start and points[-1] == stretch.end:
            return self._lay_whole(stretch, pairs)
        cost, settings, begun, ended = 0, 0, 0, 0
        if points[0] == stretch.start:
            start, end = pairs.pop(0)
            begun = end - start
            cost += self._begins_full(stretch, begun)
        if points[-1] == stretch.end:
            start, end = pairs.pop()
            ended = end - start
        for start, end in pairs:
            more, setting = self.charge(end - start, start, end, None, stretch.weight)
            cost, settings = cost + more, settings | setting
        return Share(cost, settings, begun, ended)

    def _lay_whole(self, stretch: Stretch, pairs: list[tuple[int, int]]) -> Share:
        """A run that one step fills: its pieces and joints are settled at once."""
        fit = fit_run(self.terms, tuple(end - start for start, end in pairs))
        if fit.cost >= IMPOSSIBLE:
            return NOT_TO_BE
        cost = self._begins_full(stretch, fit.pieces[0]) + JOINT * abs(fit.difference) * stretch.weight
        settings, shows = 0, max(stretch.start_shows, stretch.end_shows)
        for length, (start, end) in zip(fit.pieces, pairs, strict=True):
            more, setting = self.charge(length, start, end, shows, stretch.weight)
            cost, settings = cost + more, settings | setting
        return Share(cost, settings)

    def _begin_run(self, at: int, length: int, weight: int) -> tuple[Begun, ...]:
        """Choices for the first piece of the runs that begin at ``at``.

        At a fixed end the pattern begins as it is, and at a jamb only a few joints' worth is taken up (``FEW``): what
        a run has over beyond that, its other end can settle.
        """
        key = at, length, weight
        if key not in self._begun:
            joints = 0 if at in self.fixed else min(FEW, self.terms.least_joints(self.reach[at] - at))
            shows, choices = 3 if at == self.fixed[0] else 2, list[Begun]()
            for taken in (length, *near_stock(self.terms, length, self.terms.share(joints))):
                cost, setting = self.charge(taken, at, at + length, shows, weight)
                if cost < self.most:
                    choices.append((cost, setting, at, length - taken))
            self._begun[key] = tuple(choices)
        return self._begun[key]

    def end_run(self, run: int, length: int, left: int) -> tuple[int, int]:
        """Cost and saw setting of a run's last piece, where its first left a difference."""
        key = run, length, left
        if key not in self._ended:
            self._ended[key] = self._settle(self.stretches[run], length, left)
        return self._ended[key]

    def _settle(self, stretch: Stretch, length: int, left: int) -> tuple[int, int]:
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

    def charge(self, length: int, start: int, end: int, shows: int | None, weight: int) -> tuple[int, int]:
        """Cost and saw setting of a piece of ``length`` that stands from ``start`` to ``end`` in ``weight`` courses."""
        if not weight:
            return 0, 0
        graded, whole, setting = self._graded.get(length) or self._grade(length)
        if whole:
            return graded * weight, 0
        rank = self._shows(start, end) if shows is None else shows
        return (graded + SHOWS * rank + MIDDLE * abs(start + end - self._middle)) * weight, setting

    def _grade(self, length: int) -> tuple[int, bool, int]:
        """A piece's cost by its length, whether that is all it costs, and its saw setting."""
        graded = grade_piece(self.terms, length)
        whole = length in self.terms.stock or graded >= IMPOSSIBLE
        self._graded[length] = graded, whole, 0 if whole else self.settings.bit(length)
        return self._graded[length]

    def _shows(self, start: int, end: int) -> int:
        """Rank of a cut in the open: 0 where it lies above or below an opening, else 1."""
        return 0 if self._find_cover(end) > start else 1

    def _find_cover(self, end: int) -> int:
        """Where the last opening that begins before a place ends; long before the wall where none does."""
        place = bisect_left(self._covered, (end,))
        return self._covered[place - 1][1] if place else -sys.maxsize

    def _begins_full(self, stretch: Stretch, length: int) -> int:
        """A hair's cost where course 1 does not begin with a full unit: it only breaks ties."""
        begins = self.first and stretch.start == self.fixed[0]
        return FIRST_FULL if begins and length != self.terms.module else 0
