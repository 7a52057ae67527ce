"""Where head joints are tried: at every fixed end, shifted by whole modules and by what pieces and laps measure.

Push every joint of a layout to the left until something holds it: each then stands at a fixed end plus a sum
of stock lengths, laps, least pieces and half modules. Where those have a common measure, all of its multiples
are tried and nothing is lost, if they are few; else the single shifts are tried, and multiples of the lap.
"""

from __future__ import annotations

from math import gcd

from wallplan.bond.figures import Problem, Terms

MOST_SHIFTS = 6
MOST_NEAR = 40
MOST_POSITIONS = 2_500
"""Places at which a joint is tried: a brick wall of 50 ft (15 m) with four odd openings has about so many."""


def shifts(terms: Terms) -> tuple[int, ...]:
    """Distances, smaller than a module, by which a joint may stand off a fixed end."""
    steps = {step for step in (*terms.stock, terms.least, terms.lap, terms.ideal) if step}
    if terms.module % 2 == 0:
        steps.add(terms.module // 2)
    measure = gcd(terms.module, *steps)
    if terms.module // measure <= MOST_SHIFTS:
        return tuple(range(0, terms.module, measure))
    laps = {times * terms.lap for times in range(terms.module // terms.lap + 1)} if terms.lap else set()
    single = {sign * step for step in steps for sign in (1, -1)} | laps | {0}
    return tuple(sorted({shift % terms.module for shift in single}))


def try_positions(problem: Problem, *, thorough: bool = True) -> tuple[int, ...]:
    """Positions between the first and last fixed end, in order, the fixed ones included.

    Where many openings stand at odd distances, a joint is tried only against the fixed ends nearest to it. Where that
    comes to more than ``MOST_POSITIONS`` and ``thorough`` is False, it is tried against the two nearest on each side and at
    the bond's own shifts alone.
    """
    found = _all_positions(problem)
    if thorough or len(found) <= MOST_POSITIONS:
        return found
    ends = sorted({end for track in problem.tracks for s in track for end in (s.start, s.end)} | set(problem.fixed))
    own = problem.terms.ideal or problem.terms.lap
    offs = (0, own, problem.terms.module - own) if problem.terms.keeps_bond else shifts(problem.terms)
    few = _near_positions(problem, ends, offs, 1)
    return tuple(sorted({*problem.fixed_of(0), *problem.fixed_of(1), *few}))


def _all_positions(problem: Problem) -> tuple[int, ...]:
    ends = sorted({end for track in problem.tracks for s in track for end in (s.start, s.end)} | set(problem.fixed))
    module, offs = problem.terms.module, shifts(problem.terms)
    residues = {(end + off) % module for end in ends for off in offs}
    found = {*problem.fixed_of(0), *problem.fixed_of(1)}
    if len(residues) <= MOST_NEAR:
        first, last = problem.fixed[0], problem.fixed[-1]
        for residue in residues:
            found.update(range(first + (residue - first) % module, last, module))
    else:
        found.update(_near_positions(problem, ends, offs, 3))
    return tuple(sorted(found))


def _near_positions(problem: Problem, ends: list[int], offs: tuple[int, ...], near: int) -> set[int]:
    module = problem.terms.module
    found: set[int] = set()
    for index, start in enumerate(ends[:-1]):
        around = {*ends[max(0, index - near) : index + near + 2], *problem.fixed[:1], *problem.fixed[-1:]}
        for residue in {(end + off) % module for end in around for off in offs}:
            found.update(range(start + (residue - start) % module, ends[index + 1], module))
    return found
