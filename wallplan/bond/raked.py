"""Courses that end on a slope: which joints beside it go, and which one may take their place. Numbers only.

The bond is carried through as if the courses went on. What is left of it beside a slope is laid anew: a joint that one
unit could span, were it not there, goes or moves, so that one unit takes the whole slope where it can. All such courses
of a wall are settled at once, one above the other (dynamic programming, Bellman, 1957).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, product
from typing import NamedTuple

from wallplan.bond.figures import Terms

ROUNDING = 2
"""Ticks by which joints that share what a run has over may differ from one another, and pieces with them."""

MOST_CHOICES = 24
"""So many of the best ways to lay a course are carried on to the next."""

MOST_LAPS = 16
"""So many lengths are tried for a lap's sake: of the multiples of a lap of nearly nothing there is no end."""

Grade = tuple[int, int, int, int, int, int]
"""Broken rules, raked pieces, cutting, short pieces, pieces, how far joints were moved: each before all that follow."""


@dataclass(frozen=True)
class RakedRun:
    """One run under a slope, nominal: from ``start`` to ``end`` at its bottom, shorter at its top by the rakes.

    ``joints`` are those of the bond inside it, in order; each is ``open`` wider than the one aimed for, or closer where
    that is negative. ``start`` is a joint before its first piece, ``half`` half a joint's width.
    """

    start: int
    end: int
    rakes: tuple[int, int]
    joints: tuple[int, ...]
    open: int = 0
    half: int = 0

    def lengths(self, joints: tuple[int, ...]) -> tuple[int, ...]:
        """Nominal lengths of its pieces between these joints."""
        return tuple(end - start - self.open for start, end in pairwise((self.start, *joints, self.end)))


class Choice(NamedTuple):
    """A way to lay the raked runs of one course: the joints of each, and the middles of those that may have been moved."""

    joints: tuple[tuple[int, ...], ...]
    loose: tuple[int, ...]
    grade: Grade


def settle_rakes(terms: Terms, courses: Sequence[tuple[RakedRun, ...]],
                 beside: Sequence[tuple[int, ...]]) -> tuple[tuple[tuple[int, ...], ...], ...]:
    """The joints of every raked run, course by course from the lowest.

    ``beside`` are the middles of the joints of the other runs of each course; those of the course under the first come
    first, those of the course over the last come last. () for no courses.
    """
    best: list[tuple[Grade, tuple[Choice, ...]]] = [((0, 0, 0, 0, 0, 0), ())]
    firm = [_firm_joints(terms, runs, also) for runs, also in zip(courses, beside[1:-1], strict=True)]
    around = [beside[0], *firm, beside[-1]]
    for place, runs in enumerate(courses):
        neighbours = (*around[place], *around[place + 2])
        choices = _choose_course(terms, runs, neighbours)
        best = [min(((_add(_add(grade, choice.grade), _laps(terms, choice.loose, way[-1].loose if way else ())),
                      (*way, choice)) for grade, way in best), key=lambda found: found[0])
                for choice in sorted(choices, key=lambda choice: choice.grade)[:MOST_CHOICES]]
    return tuple(choice.joints for choice in min(best, key=lambda found: found[0])[1])


def _add(one: Grade, other: Grade) -> Grade:
    a, b, c, d, e, f = (x + y for x, y in zip(one, other, strict=True))
    return a, b, c, d, e, f


def _laps(terms: Terms, joints: Sequence[int], others: Sequence[int]) -> Grade:
    """A broken rule for each pair of joints that stand nearer than the lap."""
    short = sum(abs(one - other) < terms.lap for one in joints for other in others)
    return short, 0, 0, 0, 0, 0


def least_ends(terms: Terms, run: RakedRun) -> tuple[int, int]:
    """The least piece at both ends of a run: the whole slope where one unit can take it."""
    left, right = (rake if terms.least < rake <= terms.module else terms.least for rake in run.rakes)
    return (left if run.rakes[0] else 0), (right if run.rakes[1] else 0)


def _firm_joints(terms: Terms, runs: tuple[RakedRun, ...], also: tuple[int, ...]) -> tuple[int, ...]:
    """The middles of the joints of a course that stay where the bond has them."""
    return (*also, *(joint + run.half for run in runs for joint in _split(terms, run)[1]))


def _split(terms: Terms, run: RakedRun) -> tuple[tuple[int, ...], tuple[int, ...], tuple[int, ...]]:
    """A run's joints: those near its left end, those that stay, those near its right end."""
    left, right = least_ends(terms, run)
    near_left = tuple(joint for joint in run.joints if joint - run.start < left)
    near_right = tuple(joint for joint in run.joints if run.end - joint < right and joint not in near_left)
    return near_left, tuple(j for j in run.joints if j not in near_left and j not in near_right), near_right


def _choose_course(terms: Terms, runs: tuple[RakedRun, ...], neighbours: tuple[int, ...]) -> list[Choice]:
    found = []
    for ways in product(*(_choose_run(terms, run, neighbours) for run in runs)):
        grade: Grade = (0, 0, 0, 0, 0, 0)
        for way in ways:
            grade = _add(grade, way.grade)
        found.append(Choice(tuple(way.joints[0] for way in ways), tuple(at for way in ways for at in way.loose), grade))
    return found


def _choose_run(terms: Terms, run: RakedRun, neighbours: tuple[int, ...]) -> list[Choice]:
    """The ways to lay one run, the best first; where none keeps to the unit's length, it is filled unit by unit."""
    near_left, firm, near_right = _split(terms, run)
    left = [*_ways(terms, run, 0, near_left, firm, neighbours)]
    right = [*_ways(terms, run, 1, near_right, firm, neighbours)]
    found = []
    for one, other in product(left, right):
        loose = tuple(sorted({*one, *other}))
        joints = tuple(sorted({*loose, *firm}))
        if all(0 < length <= terms.module + ROUNDING for length in run.lengths(joints)):
            middles = tuple(joint + run.half for joint in loose)
            grade = _add(_grade(terms, run, joints, loose), _laps(terms, middles, neighbours))
            found.append(Choice((joints,), middles, grade))
    if not found:
        step = terms.module + run.open
        units = tuple(range(run.start + step, run.end - terms.least, step))
        found = [Choice((units,), tuple(unit + run.half for unit in units), _grade(terms, run, units, units))]
    return sorted(found, key=lambda choice: choice.grade)[:MOST_CHOICES]


def _ways(terms: Terms, run: RakedRun, side: int, near: tuple[int, ...], firm: tuple[int, ...],
          neighbours: tuple[int, ...]) -> Iterator[tuple[int, ...]]:
    """What may become of the joints near one end: all as they are, none of them, or one in their place.

    ``neighbours`` are joints of the courses below and above, from which it may stand just a lap.
    """
    yield near
    rake, end, inward = run.rakes[side], run.end if side else run.start, -1 if side else 1
    if not rake:
        return
    yield ()
    laps = tuple(range(terms.lap, terms.module, max(terms.lap, terms.module // MOST_LAPS))) if terms.lap else ()
    lengths = {terms.least, *laps, *terms.stock, rake, *(rake + lap for lap in laps)}
    nearest = (max if side else min)(firm, default=None)
    if nearest is not None:
        between = abs(nearest - end) - 2 * run.open
        lengths |= {between - length for length in (*terms.stock, *laps, terms.least)}
    lengths |= {inward * (joint - run.half + way * terms.lap - end) - run.open for joint in neighbours for way in (1, -1)}
    for length in sorted(lengths):
        if terms.least <= length <= terms.module:
            yield (end + inward * (length + run.open),)


def _grade(terms: Terms, run: RakedRun, joints: tuple[int, ...], loose: tuple[int, ...]) -> Grade:
    broken = raked = cutting = short = 0
    for start, end, length in zip((run.start, *joints), (*joints, run.end), run.lengths(joints), strict=True):
        sloped = start < run.start + run.rakes[0] or end > run.end - run.rakes[1]
        broken += length < terms.least - ROUNDING
        raked += sloped
        short += 2 * length <= terms.module
        if sloped or all(abs(length - stock) > ROUNDING for stock in terms.stock):
            cutting += 2 if 2 * length < terms.module else 1
    moved = sum(min((abs(joint - other) for other in run.joints), default=0) for joint in loose)
    return broken, raked, cutting, short, len(joints) + 1, moved


def least_cutting(terms: Terms, run: RakedRun) -> int:
    """The fewest pieces that the slopes at a run's two ends cut."""
    ends = sum(-(-rake // terms.module) for rake in run.rakes)
    return min(ends, -(-(run.end - run.start) // (terms.module + terms.open)))
