"""Choices that several walls share, made together at the least cost: exact, by eliminating one choice after another.

Non-serial dynamic programming (Bertele and Brioschi, Nonserial Dynamic Programming, 1972; cited from memory). Along a chain
of walls it is Bellman's; a closed building adds one choice that is carried round, walls between walls some more.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass
from itertools import product
from typing import Generic, TypeVar

Name = TypeVar("Name", bound=Hashable)
Value = TypeVar("Value", bound=Hashable)


@dataclass(frozen=True)
class Party(Generic[Name, Value]):
    """One wall: the choices that it hangs on, and its cost for each combination of their values, in the same order."""

    names: tuple[Name, ...]
    costs: Mapping[tuple[Value, ...], int]


@dataclass(frozen=True)
class _Settled(Generic[Name, Value]):
    """A choice taken out: what its best value is for each combination of the choices that were left beside it."""

    name: Name
    beside: tuple[Name, ...]
    best: dict[tuple[Value, ...], Value]


def choose(parties: Sequence[Party[Name, Value]], values: Mapping[Name, Sequence[Value]]) -> dict[Name, Value]:
    """The values at the least sum of costs; of equals the one that comes first in ``values``. {} for no choices.

    A combination that a party has no cost for cannot be; ValueError where none can.
    """
    left, settled = list(parties), list[_Settled[Name, Value]]()
    open_names = list(values)
    while open_names:
        name = min(open_names, key=lambda one: (len(_beside(one, left)), open_names.index(one)))
        open_names.remove(name)
        beside = tuple(_beside(name, left))
        about = [party for party in left if name in party.names]
        left = [party for party in left if name not in party.names]
        costs, best = _take_out(name, beside, about, values)
        left.append(Party(beside, costs))
        settled.append(_Settled(name, beside, best))
    chosen: dict[Name, Value] = {}
    for one in reversed(settled):
        key = tuple(chosen[name] for name in one.beside)
        if key not in one.best:
            raise ValueError("no choice at the corners fits all walls")
        chosen[one.name] = one.best[key]
    return chosen


def _beside(name: Name, parties: Sequence[Party[Name, Value]]) -> dict[Name, None]:
    """The other choices that share a party with this one, in order."""
    return {other: None for party in parties if name in party.names for other in party.names if other != name}


def _take_out(name: Name, beside: tuple[Name, ...], about: Sequence[Party[Name, Value]],
              values: Mapping[Name, Sequence[Value]]) -> tuple[dict[tuple[Value, ...], int], dict[tuple[Value, ...], Value]]:
    costs: dict[tuple[Value, ...], int] = {}
    best: dict[tuple[Value, ...], Value] = {}
    for around in product(*(values[one] for one in beside)):
        given = dict(zip(beside, around, strict=True))
        for value in values[name]:
            given[name] = value
            parts = [party.costs.get(tuple(given[one] for one in party.names)) for party in about]
            if None in parts:
                continue
            total = sum(part for part in parts if part is not None)
            if around not in costs or total < costs[around]:
                costs[around], best[around] = total, value
    return costs, best
