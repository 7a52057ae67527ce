"""Where head joints are tried: at every fixed end, shifted by whole modules and by what pieces and laps measure.

Push every joint of a layout to the left until something holds it: each then stands at a fixed end plus a sum
of stock lengths, laps, least pieces and half modules. Where those have a common measure, all of its multiples
are tried and nothing is lost, if they are few; else the single shifts are tried, and multiples of the lap.

Where a wall has more of that than can be gone through, fewer places are tried, and fewer again until they are few enough.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from math import gcd
from typing import NamedTuple

from wallplan.bond.figures import Problem, Terms

MOST_SHIFTS = 6
MOST_NEAR = 40
MOST_LAPS = 64
"""So many laps in a module at most are tried one by one: with a lap of nearly nothing their multiples are everywhere."""


class Places(NamedTuple):
    """Where joints are tried: positions in order, and the lengths that a joint beside a near end may leave there.

    ``owing`` says whether a run's first piece beside a jamb may leave a difference that its joints share; ``all`` whether
    these are all the places that may matter, ``few`` whether they are soon gone through, ``fewest`` whether no fewer are
    ever tried.
    """

    positions: tuple[int, ...]
    end_pieces: tuple[int, ...]
    owing: bool = True
    all: bool = False
    few: bool = False
    fewest: bool = False


def shifts(terms: Terms) -> tuple[int, ...]:
    """Distances, smaller than a module, by which a joint may stand off a fixed end."""
    steps = _single_steps(terms)
    measure = gcd(terms.module, *steps)
    if terms.module // measure <= MOST_SHIFTS:
        return tuple(range(0, terms.module, measure))
    laps = {times * terms.lap for times in range(terms.module // terms.lap + 1)} if terms.lap else set()
    single = {sign * step for step in steps for sign in (1, -1)} | laps | {0}
    return tuple(sorted({shift % terms.module for shift in single}))


def _single_steps(terms: Terms) -> set[int]:
    steps = {step for step in (*terms.stock, terms.least, terms.lap, terms.ideal) if step}
    return steps | {terms.module // 2} if terms.module % 2 == 0 else steps


def try_positions(problem: Problem) -> tuple[int, ...]:
    """All positions that may matter between the first and last fixed end, in order, the fixed ones included.

    Where many openings stand at odd distances, a joint is tried only against the fixed ends nearest to it.
    """
    ends, offs, module = _all_ends(problem), shifts(problem.terms), problem.terms.module
    residues = {(end + off) % module for end in ends for off in offs}
    if len(residues) > MOST_NEAR:
        return _in_order(problem, _near_positions(problem, ends, offs, 3))
    first, last = problem.fixed[0], problem.fixed[-1]
    return _in_order(problem, {at for residue in residues for at in range(first + (residue - first) % module, last, module)})


def try_places(problem: Problem) -> Iterator[Places]:
    """Ever fewer places, all of them first: of the last even a large wall has only a few in each unit's length.

    Fewer are those beside the nearest ends; then at single shifts alone; then no run beside a jamb begins with a difference;
    then at the bond's own shifts, in the end from fixed ends alone, and a joint too near a jamb can only go.
    """
    found = set[tuple[object, ...]]()
    for places in _try_fewer(problem):
        alike = places.positions, places.end_pieces, places.owing and not problem.terms.fixed
        if alike not in found or places.fewest:
            yield places
        found.add(alike)


def _try_fewer(problem: Problem) -> Iterator[Places]:
    terms, ends = problem.terms, _all_ends(problem)
    own = terms.ideal or terms.lap
    bonded = tuple(sorted({0, own, (terms.module - own) % terms.module}))
    single = tuple(sorted({sign * step % terms.module for step in (0, *_single_steps(terms)) for sign in (1, -1)}))
    few, least = _end_lengths(terms, {terms.least, own, *terms.stock}), _end_lengths(terms, {terms.least})
    if not terms.lap or terms.module // terms.lap <= MOST_LAPS:
        everywhere = try_positions(problem)
        yield Places(everywhere, end_pieces(terms), all=True)
        yield Places(everywhere, end_pieces(terms), owing=False)
        nearest = _in_order(problem, _near_positions(problem, ends, shifts(terms), 1))
        yield Places(nearest, end_pieces(terms))
    for offs, pieces, owing in ((single, few, True), (single, few, False), (bonded, few, False)):
        yield Places(_in_order(problem, _near_positions(problem, ends, offs, 1)), pieces, owing)
    yield Places(_in_order(problem, _near_positions(problem, ends, bonded, 0)), least, owing=False, few=True)
    fixed = sorted(problem.fixed)
    yield Places(_in_order(problem, _near_positions(problem, fixed, bonded, 0)), (), owing=False, few=True, fewest=True)


@lru_cache(maxsize=64)
def end_pieces(terms: Terms) -> tuple[int, ...]:
    """Every length that a joint too near an end may be moved to leave there: stock lengths, the least and whole laps."""
    laps = range(terms.lap, terms.module, terms.lap) if terms.lap else ()
    return _end_lengths(terms, {terms.least, *laps, *terms.stock})


def _end_lengths(terms: Terms, lengths: set[int]) -> tuple[int, ...]:
    return tuple(sorted(length for length in lengths if terms.least <= length < terms.module))


def _all_ends(problem: Problem) -> list[int]:
    return sorted({end for track in problem.tracks for s in track for end in (s.start, s.end)} | set(problem.fixed))


def _in_order(problem: Problem, found: set[int]) -> tuple[int, ...]:
    return tuple(sorted({*problem.fixed_of(0), *problem.fixed_of(1), *found}))


def _near_positions(problem: Problem, ends: list[int], offs: tuple[int, ...], near: int) -> set[int]:
    module = problem.terms.module
    found: set[int] = set()
    for index, start in enumerate(ends[:-1]):
        around = {*ends[max(0, index - near) : index + near + 2], *problem.fixed[:1], *problem.fixed[-1:]}
        for residue in {(end + off) % module for end in around for off in offs}:
            found.update(range(start + (residue - start) % module, ends[index + 1], module))
    return found
