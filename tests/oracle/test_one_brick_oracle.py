"""The search of one-brick walls against every pair of courses that there is, on short runs."""

from __future__ import annotations

import pytest

from tests.oracle.one_brick_model import best, best_beside
from wallplan.bond.one_brick import lay_span
from wallplan.bond.one_brick_figures import BROKEN, DEPARTED, NEITHER, SAWN, Beside, End, Grammar, Rule, Span

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


STRETCHERS: tuple[Rule, Rule] = ("stretchers", "stretchers")
HEADERS: tuple[Rule, Rule] = ("headers", "headers")
THREE: tuple[Rule, Rule] = ("three in turn", "three in turn")


@pytest.mark.parametrize(("rules", "ends"), [(STRETCHERS, (0, 0)), (STRETCHERS, (0, 1)), (HEADERS, (0, 0)), (HEADERS, (1, 0)),
                                             (THREE, (0, 0)), (THREE, (0, 1))])
@pytest.mark.parametrize("length", [16, 21, 26, 32, 35, 40])
def test_no_two_courses_of_a_garden_wall_are_better(rules: tuple[Rule, Rule], ends: tuple[int, int], length: int) -> None:
    """In Flemish garden wall bond headers over the middle of stretchers come before fewer sawn bricks: those may be more."""
    grammar = Grammar(16 * GRAIN, 4 * GRAIN, 8 * GRAIN, 0, 0, rules, 4 * GRAIN, quoins=True)
    found = lay_span(grammar, Span(length * GRAIN, (End(ends[0]), End(ends[1])), (3, 2), 4))
    reached = found.cost // BROKEN, found.cost % BROKEN // DEPARTED, found.cost % (1 << 100) // SAWN
    names = {"stretchers": "S", "headers": "H", "three in turn": "three in turn"}
    wanted = best(length, (names[rules[0]], names[rules[1]]), ends, (3, 2), 4, True)
    assert reached[:2] == wanted[:2] and (reached[2] == wanted[2] or (rules is THREE and reached[2] > wanted[2]))


@pytest.mark.parametrize("shift", [0, 3, 8])
@pytest.mark.parametrize("length", [24, 29, 32, 40])
def test_no_course_of_headers_is_better_between_courses_of_stretchers(length: int, shift: int) -> None:
    """One course of headers between two of stretchers whose joints stand a whole brick apart, ``shift`` grains from the end."""
    over = tuple(range(shift or 16, length, 16))
    grammar = Grammar(16 * GRAIN, 4 * GRAIN, 8 * GRAIN, 0, 0, HEADERS, 4 * GRAIN, quoins=True)
    beside = tuple(Beside(at * GRAIN, 1, 1, False) for at in over)
    found = lay_span(grammar, Span(length * GRAIN, (End(NEITHER), End(NEITHER)), (0, 1), 0, (), beside, (shift % 4 * GRAIN,)))
    reached = found.cost // BROKEN, found.cost % BROKEN // DEPARTED, found.cost % DEPARTED // SAWN
    assert reached == best_beside(length, "H", over)
    assert not found.tracks[0].pieces and sum(grains for _, grains in found.tracks[1].pieces) == length * GRAIN
