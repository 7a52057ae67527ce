"""The search of one-brick walls against every pair of courses that there is, on short runs."""

from __future__ import annotations

import pytest

from tests.oracle.one_brick_model import best
from wallplan.bond.one_brick import lay_span
from wallplan.bond.one_brick_figures import BROKEN, DEPARTED, SAWN, End, Grammar, Rule, Span

GRAIN = 13_500
"""A sixteenth of a stretcher of 225 mm."""

FLEMISH: tuple[Rule, Rule] = ("in turn", "in turn")
ENGLISH: tuple[Rule, Rule] = ("stretchers", "headers")


@pytest.mark.parametrize(("rules", "ends"), [(FLEMISH, (0, 0)), (FLEMISH, (0, 1)), (ENGLISH, (0, 0)), (ENGLISH, (1, 1))])
@pytest.mark.parametrize("length", [*range(16, 38, 3), 36, 39])
def test_no_two_courses_are_better(rules: tuple[Rule, Rule], ends: tuple[int, int], length: int) -> None:
    grammar = Grammar(16 * GRAIN, 4 * GRAIN, 8 * GRAIN, 0, 0, rules)
    found = lay_span(grammar, Span(length * GRAIN, (End(ends[0]), End(ends[1])), (3, 2), 4))
    reached = found.cost // BROKEN, found.cost % BROKEN // DEPARTED, found.cost % DEPARTED // SAWN
    names = {"stretchers": "S", "headers": "H"}
    assert reached == best(length, (names.get(rules[0], rules[0]), names.get(rules[1], rules[1])), ends, (3, 2), 4)
    assert [sum(grains for _, grains in track.pieces) for track in found.tracks] == [length * GRAIN] * 2
