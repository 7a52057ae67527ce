"""Runs as laid: the lengths of their pieces and, to the tick, where each stands."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from typing import NamedTuple

from wallplan.bond.bounds import fills_with_stock
from wallplan.bond.cost import BROKEN, IMPOSSIBLE, SHORT, count_cutting
from wallplan.bond.effort import Effort
from wallplan.bond.figures import Problem, Stretch, Terms, adjoining
from wallplan.bond.nodes import Node, joint_in
from wallplan.bond.pairs import Found
from wallplan.bond.pieces import fit_run
from wallplan.bond.zipper import close_zip

TICKS_OF_ROUNDING = 2


class LaidRun(NamedTuple):
    """One run as its courses lay it: (left, length) of each piece, its head joints, cutting in one course and at least.

    ``joined`` are the middles of head joints at its ends, against what another wall lays there. ``kinds`` are those of the
    pieces in a one-brick wall, as ``bond.one_brick`` names them; () in other walls.
    """

    left: int
    right: int
    pieces: tuple[tuple[int, int], ...]
    courses: int
    cutting: int
    at_least: int
    joined: tuple[int, ...] = ()
    kinds: tuple[str, ...] = ()

    @property
    def joints(self) -> tuple[int, int]:
        """Tightest and widest head joint; (0, 0) where one piece fills the run."""
        gaps = [two[0] - one[0] - one[1] for one, two in zip(self.pieces, self.pieces[1:], strict=False)]
        return (min(gaps), max(gaps)) if gaps else (0, 0)


class Doubt(NamedTuple):
    """Laps that fall short where joints open or close, in so many pairs of courses, and what was asked of the search."""

    problem: Problem
    joint: int
    short: int


class LaidTracks(NamedTuple):
    """Both tracks as laid, whether their saw settings are proven the fewest, whether joints were tried at every place, and
    whether any rule had to give. Where there is a ``doubt`` the cost is the least that they come to once it is settled.
    """

    runs: tuple[LaidRun, ...]
    settings_proven: bool
    everywhere: bool
    broken: bool
    cost: int
    doubt: Doubt | None = None


def lay_tracks(problem: Problem, joint: int, effort: Effort | None = None) -> LaidTracks:
    """Search the bond and lay every run of it. ``effort`` is the work that may be done; what is done is taken from it."""
    left = Effort() if effort is None else effort
    return settle_doubt(lay_aimed(problem, joint, left), left)


def lay_aimed(problem: Problem, joint: int, effort: Effort) -> LaidTracks:
    """The bond with joints where the search aims them. Those that open or close shift the ones between them, of which it
    does not know: where laps fall short for it, that is left as a doubt.
    """
    laid = _lay(problem, close_zip(problem, effort), joint)
    short = 0 if problem.terms.fixed else count_short_laps(problem, laid.runs, joint)
    return laid._replace(doubt=Doubt(problem, joint, short)) if short else laid


def settle_doubt(laid: LaidTracks, left: Effort) -> LaidTracks:
    """Where opened joints drift so far that a lap falls short, the bond is searched again, once with joints fixed and, where
    that cuts more and work is left, once with so much more lap; the best of all is taken. Without a doubt all stays.
    """
    if laid.doubt is None:
        return laid
    (problem, joint, short), laid = laid.doubt, laid._replace(doubt=None)
    terms = problem.terms
    tried, more = [_count_broken(laid, short)], _find_shortfall(problem, laid.runs, joint)
    for asked in (replace(terms, close=0, open=0), replace(terms, lap=terms.lap + more)):
        if len(tried) > 1 and (left.used_up or tried[1].cost // SHORT <= laid.cost // SHORT):
            break
        posed = replace(problem, terms=asked)
        other = _lay(posed, close_zip(posed, left), joint, terms)
        tried.append(_count_broken(other, count_short_laps(problem, other.runs, joint)))
    return min(tried, key=lambda one: one.cost)


def _count_broken(laid: LaidTracks, short: int) -> LaidTracks:
    """With short laps that the search did not know of in what it costs."""
    cost = laid.cost + short * BROKEN
    return laid._replace(cost=cost, broken=cost >= BROKEN)


def _lay(problem: Problem, found: Found, joint: int, plans: Terms | None = None) -> LaidTracks:
    """``plans`` are the plan's own terms, by which runs are bounded, where others were asked of the search."""
    runs = [
        _lay_run((problem.terms, plans or problem.terms), nodes, stretch, joint, joined)
        for nodes, track, joined in zip(found.tracks, problem.tracks, problem.joined, strict=True)
        for stretch in track
    ]
    return LaidTracks(tuple(runs), found.settings_proven, found.everywhere, found.cost >= BROKEN, found.cost)


def _lay_run(asked: tuple[Terms, Terms], nodes: tuple[Node, ...], stretch: Stretch, joint: int,
             joined: frozenset[int]) -> LaidRun:
    terms, plans = asked
    places = [place for node in nodes if (place := joint_in(terms, node, stretch)) is not None]
    points = [stretch.start, *sorted(places), stretch.end]
    nominal = tuple(end - start for start, end in pairwise(points))
    fit = fit_run(terms, nominal)
    lengths = [length - joint for length in fit.pieces]
    left, right = stretch.start + joint, stretch.end
    cutting = 0 if fit.cost >= IMPOSSIBLE else count_cutting(fit.cost)
    at_least = 0 if fills_with_stock(plans, stretch.end - stretch.start) else 1
    middles = tuple(end + joint // 2 for end in (stretch.start, stretch.end) if end in joined)
    return LaidRun(left, right, set_out(lengths, left, right), stretch.courses, cutting, at_least, middles)


def set_out(lengths: list[int], left: int, right: int) -> tuple[tuple[int, int], ...]:
    """Left ends from lengths: what the lengths leave is shared by the joints alike, to the tick."""
    joints, spare = len(lengths) - 1, right - left - sum(lengths)
    placed, done = [], 0
    for index, length in enumerate(lengths):
        given = spare * index // joints if joints else 0
        placed.append((left + done + given, length))
        done += length
    return tuple(placed)


def count_short_laps(problem: Problem, runs: tuple[LaidRun, ...], joint: int) -> int:
    """Pairs of courses in which a joint stands closer to one below or above than the lap asked for."""
    terms, joints = problem.terms, _joints_of(runs)
    places, least = sorted(joints), terms.lap - TICKS_OF_ROUNDING
    short = sum((joints[place] & mask).bit_count() for spots in problem.kept_clear for at, mask in spots
                for place in places if abs(at + joint // 2 - place) < least)
    short += sum((joints[place] << 1 & joints[place]).bit_count() for place in places if terms.lap)
    return short + sum(adjoining(joints[one], joints[two]) for one, two in _too_near(places, least))


def _find_shortfall(problem: Problem, runs: tuple[LaidRun, ...], joint: int) -> int:
    """The most that a lap of neighbouring courses, or to a place kept clear, lacks of the lap asked for."""
    terms, joints = problem.terms, _joints_of(runs)
    places = sorted(joints)
    gaps = [abs(at + joint // 2 - place) for spots in problem.kept_clear for at, mask in spots
            for place in places if joints[place] & mask]
    gaps += [0 for place in places if joints[place] << 1 & joints[place]]
    gaps += [two - one for one, two in _too_near(places, terms.lap) if adjoining(joints[one], joints[two])]
    return terms.lap - min((terms.lap, *gaps))


def _joints_of(runs: tuple[LaidRun, ...]) -> dict[int, int]:
    """The middle of every head joint, with its courses (bits)."""
    joints = dict[int, int]()
    for run in runs:
        between = [(one[0] + one[1] + two[0]) // 2 for one, two in pairwise(run.pieces)]
        for middle in (*between, *run.joined):
            joints[middle] = joints.get(middle, 0) | run.courses
    return joints


def _too_near(places: list[int], least: int) -> Iterator[tuple[int, int]]:
    """Pairs of different places nearer than ``least``, each once."""
    for index, place in enumerate(places):
        for ahead in range(index + 1, len(places)):
            if places[ahead] - place >= least:
                break
            yield place, places[ahead]
