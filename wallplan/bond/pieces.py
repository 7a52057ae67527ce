"""What one piece costs, and what a whole run costs once its joints share what its pieces leave over."""

from __future__ import annotations

from itertools import product
from typing import NamedTuple

from wallplan.bond.cost import BROKEN, CUTTING, IMPOSSIBLE, JOINT, SHORT
from wallplan.bond.figures import Terms

NO_PIECE = 8
"""So many broken rules weighs what is no longer than its joint: there is no piece, but where nothing else fills the run."""


def grade_piece(terms: Terms, length: int) -> int:
    """Cost of a piece by its nominal length: broken rule, cutting and shortness; IMPOSSIBLE over a unit."""
    if length <= 0 or length > terms.module:
        return IMPOSSIBLE
    short = SHORT if 2 * length <= terms.module else 0
    if length in terms.stock:
        return short
    cutting = CUTTING * (2 if 2 * length < terms.module else 1)
    if length <= terms.joint:
        return cutting + short + NO_PIECE * BROKEN
    return cutting + short + (BROKEN if length < terms.least else 0)


def near_stock(terms: Terms, length: int, reach: int) -> tuple[int, ...]:
    """Stock lengths within ``reach`` of a length that is none itself."""
    if length in terms.stock:
        return ()
    return tuple(stock for stock in terms.stock if abs(length - stock) <= reach)


def pull_alike(one: int, other: int) -> bool:
    """Whether what a run's two end pieces leave opens its joints, or closes them, both alike.

    Were one to open and the other to close them, the joints between would shift by more than they take up in all,
    and stand out of plumb with the other courses.
    """
    return one * other >= 0


class RunFit(NamedTuple):
    """A run's pieces as they will be: nominal lengths after its joints took up ``difference``, and the cost."""

    pieces: tuple[int, ...]
    difference: int
    cost: int


def fit_run(terms: Terms, pieces: tuple[int, ...]) -> RunFit:
    """Let a run's first and last piece take a stock length where its joints can share the difference.

    ``pieces`` are nominal lengths at the joint aimed for; the best of all choices is returned. A run that
    cannot be filled costs IMPOSSIBLE or more.
    """
    joints = len(pieces) - 1
    reach = terms.share(joints)
    ends = sorted({0, joints})
    choices = [(pieces[end], *near_stock(terms, pieces[end], reach)) for end in ends]
    best: RunFit | None = None
    for chosen in product(*choices):
        taken = list(pieces)
        for end, length in zip(ends, chosen, strict=True):
            taken[end] = length
        difference = sum(pieces) - sum(taken)
        alike = pull_alike(pieces[0] - taken[0], pieces[-1] - taken[-1])
        if not (alike and terms.absorbs(difference, joints)):
            continue
        cost = sum(grade_piece(terms, length) for length in taken) + JOINT * abs(difference)
        if best is None or cost < best.cost:
            best = RunFit(tuple(taken), difference, cost)
    return best or RunFit(pieces, 0, IMPOSSIBLE)
