"""The search on problems small enough to work out, and against trying every pair of rows."""

from __future__ import annotations

from functools import cache
from itertools import accumulate

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.long_run import examples
from wallplan.bond.cost import count_broken, count_cutting
from wallplan.bond.figures import Problem, Stretch, Terms
from wallplan.bond.pairs import Found
from wallplan.bond.zipper import close_zip

Row = tuple[int, ...]


def block(lap: int = 4, ideal: int = 8, keeps_bond: bool = False) -> Terms:
    return Terms(module=16, stock=(16, 8), least=4, lap=lap, ideal=ideal, close=0, open=0, keeps_bond=keeps_bond)


def plain_wall(length: int, terms: Terms, courses: int = 2) -> Problem:
    odd = sum(1 << number for number in range(1, courses + 1, 2))
    even = sum(1 << number for number in range(2, courses + 1, 2))
    return Problem(terms, ((Stretch(0, length, odd, 3, 3),), (Stretch(0, length, even, 3, 3),)), (0, length), ())


def joints(found: Found) -> tuple[Row, Row]:
    odd, even = (tuple(node.at for node in track[1:-1]) for track in found.tracks)
    return odd, even


def test_whole_blocks_over_blocks_with_halves_at_the_ends() -> None:
    found = close_zip(plain_wall(64, block()))
    assert joints(found) == ((16, 32, 48), (8, 24, 40, 56))
    assert found.cost and count_cutting(found.cost) == 0


def test_pier_of_38_has_one_cut_in_each_course() -> None:
    found = close_zip(plain_wall(38, block()))
    assert count_cutting(found.cost) == 2
    assert min(abs(one - other) for one in joints(found)[0] for other in joints(found)[1]) >= 4


def test_stack_bond_is_in_line() -> None:
    odd, even = joints(close_zip(plain_wall(64, block(lap=0, ideal=0, keeps_bond=True))))
    assert odd == even == (16, 32, 48)


def test_lap_that_cannot_be_had_is_broken_and_counted() -> None:
    # Pieces of 4 to 16 in 20 with a lap of 15: no two joints between 4 and 16 are so far apart.
    found = close_zip(plain_wall(20, block(lap=15)))
    assert count_broken(found.cost) == 1


@cache
def rows(length: int) -> tuple[Row, ...]:
    """Every row of pieces of 4 to 16 that fills a length."""
    if length == 0:
        return ((),)
    return tuple((piece, *rest) for piece in range(4, min(16, length) + 1) for rest in rows(length - piece))


def cutting(row: Row) -> int:
    return sum(0 if piece in (16, 8) else 2 if piece < 8 else 1 for piece in row)


def least_by_trying(length: int, lap: int) -> int:
    """The least cutting of two courses over all pairs of rows: the cheapest rows first."""
    ordered = sorted(((cutting(row), tuple(accumulate(row[:-1]))) for row in rows(length)), key=lambda one: one[0])
    best = 2 * length
    for cost, mine in ordered:
        if 2 * cost > 2 * best:
            break
        for other_cost, theirs in ordered:
            if cost + other_cost >= best:
                break
            if all(abs(one - other) >= lap for one in mine for other in theirs):
                best = cost + other_cost
    return best


@given(length=st.integers(8, 38), lap=st.sampled_from([3, 4, 5, 6]))
@settings(max_examples=examples(40))
def test_cutting_is_the_least_of_all_pairs_of_rows(length: int, lap: int) -> None:
    found = close_zip(plain_wall(length, block(lap=lap)))
    reached = count_cutting(found.cost) if not count_broken(found.cost) else 2 * length
    assert reached == least_by_trying(length, lap)


def test_a_run_that_ends_within_a_lap_of_where_the_other_courses_begin_is_laid() -> None:
    # A run of the even courses goes 12 past where the odd ones have nothing but another wall's end, and 1 beside it: one cut
    # of 13. What is to be kept clear of there was never past, and no layout was found.
    problem = Problem(block(), ((), (Stretch(-12, 1, 0b10100, 3, 3),)), (-12, 1), (), ends=((0, 1), (-12, 1)),
                      joined=(frozenset({0}), frozenset()))
    found = close_zip(problem)
    assert (count_broken(found.cost), count_cutting(found.cost)) == (0, 2)
