"""One-brick runs against patterns drawn by hand on a ruler of 225 mm stretchers."""

from __future__ import annotations

import pytest

from tests.jobs import MM
from wallplan.bond.one_brick import lay_span
from wallplan.bond.one_brick_figures import BROKEN, DEPARTED, SAWN, End, Found, Grammar, Rule, Span

FLEMISH: tuple[Rule, Rule] = ("in turn", "in turn")
ENGLISH: tuple[Rule, Rule] = ("stretchers", "headers")


def lay(length: float, rules: tuple[Rule, Rule] = FLEMISH, *, right: int = 0, give: float = 0) -> Found:
    """A run of so many actual mm of UK brick; joints may open and close by ``give``."""
    grammar = Grammar(225 * MM, 225 * MM // 4, 225 * MM // 2, round(give * MM), round(give * MM), rules)
    return lay_span(grammar, Span(round((length + 10) * MM), (End(0), End(right)), (1, 1), 1))


def drawn(found: Found) -> tuple[str, str]:
    """Both courses in letters, sawn pairs with their actual length in mm."""
    odd, even = (" ".join(kind if kind != "P" else f"{nominal / MM - 10:g}" for kind, nominal in track.pieces)
                 for track in found.tracks)
    return odd, even


def grades(found: Found) -> tuple[int, int, int]:
    """Broken laps, departures, bricks sawn."""
    return found.cost // BROKEN, found.cost % BROKEN // DEPARTED, found.cost % DEPARTED // SAWN


@pytest.mark.parametrize(("length", "rules", "right", "odd", "even"), [
    (215, FLEMISH, 0, "S", "H H"), (327.5, FLEMISH, 1, "S H", "H S"), (440, FLEMISH, 0, "S S", "H S H"),
    (552.5, FLEMISH, 0, "S H S", "H C S C H"), (890, FLEMISH, 0, "S H S H S", "H C S H S C H"),
    (383.75, FLEMISH, 1, "S C H", "H C S"), (721.25, FLEMISH, 1, "S H S C H", "H C S H S"),
    (215, ENGLISH, 0, "S", "H H"), (665, ENGLISH, 0, "S S S", "H C H H H C H"),
    (777.5, ENGLISH, 0, "S H S S", "H C H H H H C H"),
])
def test_the_bond_as_drawn_by_hand(length: float, rules: tuple[Rule, Rule], right: int, odd: str, even: str) -> None:
    found = lay(length, rules, right=right)
    assert drawn(found) in ((odd, even), ("S S H S", even)) and grades(found)[0] == 0


def test_broken_bond_stands_in_the_middle_and_joints_give_the_rest() -> None:
    found = lay(4500, give=2.5)
    odd, even = drawn(found)
    assert odd.count("S S") == 1 and even.count("S S") == 1 and grades(found) == (0, 2, 2)
    assert found.over == 10 * MM and abs(len(odd.split("S S")[0]) - len(odd.split("S S")[1])) <= 4


def test_without_give_a_pair_is_sawn_not_shorter_than_a_header() -> None:
    found = lay(4500)
    sawn = [nominal / MM - 10 for track in found.tracks for kind, nominal in track.pieces if kind == "P"]
    assert found.over == 0 and sawn and min(sawn) >= 102.5 and grades(found)[0] == 0


def test_a_long_run_is_a_short_one_with_repeats_more() -> None:
    short, long = lay(4500, give=2.5), lay(4500 + 20 * 337.5, give=2.5)
    assert grades(short) == grades(long) and short.over == long.over
    assert [len(one.pieces) + 40 for one in short.tracks] == [len(one.pieces) for one in long.tracks]
    assert [sum(nominal for _, nominal in one.pieces) for one in long.tracks] == [(4500 + 20 * 337.5) * MM] * 2


def test_what_is_under_a_header_breaks_a_rule() -> None:
    assert grades(lay(90))[0] > 0 and grades(lay(102.5))[0] == 0


def test_what_a_given_quoin_leaves_no_room_for_is_still_covered() -> None:
    grammar = Grammar(225 * MM, 225 * MM // 4, 225 * MM // 2, 0, 0, FLEMISH)
    found = lay_span(grammar, Span(230 * MM, (End(0), End(0, True)), (1, 1), 1))
    assert grades(found)[0] > 0
    # A stretcher given at the right leaves 5 mm; in the other course the given header stands beside what is left.
    assert drawn(found) == ("220", "107.5 H")
