"""A whole building as one constraint model, written from the rules alone: plain numbers, nothing of the search's.

At each corner a yes or no says whether the wall on its left runs through in odd courses; the other wall then does in even
ones. For every wall and every pair of answers at its two ends the runs are known, and the bond of that case is a model of
its own (``bond_model``) that counts only where the answers are these. A wall that runs through at an outside corner begins
at 0; one that stops begins a thickness in, where its first head joint stands against the other's unit. At an inside corner
all stands a thickness further back.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product

from ortools.sat.python import cp_model

from tests.oracle.bond_model import BondModel, Courses, Joined, Numbers, Run, solve


@dataclass(frozen=True)
class Side:
    """One wall in steps: nominal length from corner to corner, kinds of its corners (True outside), holes in it.

    A hole is (left, right, first course, last course), nominal.
    """

    length: int
    outside: tuple[bool, bool]
    holes: tuple[tuple[int, int, int, int], ...] = ()

    def span(self, thick: int, through: tuple[bool, bool]) -> Run:
        """Where the wall's own masonry begins and ends in a course in which it runs through at these ends or not."""
        left, right = (
            (0 if runs_through else thick) - (0 if outside else thick)
            for runs_through, outside in zip(through, self.outside, strict=True)
        )
        return left, self.length - right

    def courses(self, thick: int, odd_through: tuple[bool, bool], count: int) -> Courses:
        """The runs of each course."""
        rows = []
        for number in range(1, count + 1):
            odd = number % 2 == 1
            start, end = self.span(thick, (odd_through[0] is odd, odd_through[1] is odd))
            runs = list[Run]()
            for left, right, first, last in self.holes:
                if first <= number <= last:
                    runs.append((start, left))
                    start = right
            rows.append((*runs, (start, end)))
        return tuple(rows)

    def joined(self, thick: int, odd_through: tuple[bool, bool]) -> Joined:
        """The ends that are head joints against the other wall, for odd and for even courses."""
        found = []
        for odd in (True, False):
            stops = [through is not odd for through in odd_through]
            span = self.span(thick, (not stops[0], not stops[1]))
            found.append(frozenset(at for at, stop in zip(span, stops, strict=True) if stop))
        return found[0], found[1]


def least_cutting_of_building(numbers: Numbers, sides: tuple[Side, ...], thick: int, count: int) -> int | None:
    """The least cutting of a closed building, None where no layout keeps the rules. RuntimeError where not proven in time."""
    cp = cp_model.CpModel()
    corners = [cp.new_bool_var(f"corner {number}") for number in range(len(sides))]
    """Whether the wall whose right end is at the corner runs through in odd courses."""
    costs: list[cp_model.LinearExpr] = []
    for index, side in enumerate(sides):
        left, right = corners[index - 1], corners[index]
        for through in product((True, False), repeat=2):
            active = cp.new_bool_var("")
            # At its left corner the wall runs through where the wall before does not.
            wanted = (~left if through[0] else left, right if through[1] else ~right)
            cp.add_bool_and(wanted).only_enforce_if(active)
            cp.add_bool_or([active, ~wanted[0], ~wanted[1]])
            case = BondModel(numbers, side.courses(thick, through, count), cp, active, side.joined(thick, through))
            costs += case.costs
    cp.minimize(sum(costs))
    return solve(cp, few_cost=False)
