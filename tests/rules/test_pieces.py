"""Pieces: a sliver, a piece longer than its unit, a thin rip, a wrong name."""

from __future__ import annotations

import pytest

from tests.jobs import broken, inches, make_job, make_masonry, make_wall
from tests.rules.breaking import breaks_of, change_course, change_piece, places, shift_joint, told_of
from wallplan.catalogue.unit import PieceName
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.rules.check import check


@pytest.fixture(scope="module")
def good() -> Layout:
    """16 16 16 16 and 8 16 16 16 8, two courses of each."""
    return lay(make_job(make_masonry(joints_move=False), make_wall(inches("63 5/8"), inches(32))))


@pytest.fixture(scope="module")
def single() -> Layout:
    """One course: no lap and no plumb to break."""
    return lay(make_job(make_masonry(joints_move=False), make_wall(inches("39 5/8"), inches(8))))


def test_sliver_is_told_in_nominal_length_against_the_least(single: Layout) -> None:
    # 16 + 16 + 8 in some order. The half, 8 in. nominal, cut to 3 in.; its neighbour takes 5 in. more.
    place = [piece.piece for piece in single.walls[0].courses[0].pieces].index("half")
    harmed = shift_joint(single, 1, place, -inches(5)) if place == 0 else shift_joint(single, 1, place - 1, inches(5))
    told = [one for one in broken(check(harmed)) if one.figure == '3"']
    assert [(one.rule, one.limit) for one in told] == [("least piece", '4"')]


def test_piece_longer_than_the_unit_is_told(single: Layout) -> None:
    harmed = change_course(single, 1, lambda pieces: (
        pieces[0]._replace(length=pieces[1].right - pieces[0].left, piece="cut", mark="A"), *pieces[2:]))
    told = breaks_of(harmed, "least piece")
    assert places(told) == {(1, 0)}
    assert told[0].limit == '15 5/8", the unit'


@pytest.mark.parametrize(("called", "limit"), [
    ("half", '7 5/8"'), ("cut", 'a sawn length, not 15 5/8"'), ("quarter", "no quarter is stocked"),
])
def test_full_block_by_another_name_is_told(good: Layout, called: PieceName, limit: str) -> None:
    told = breaks_of(change_piece(good, 1, 1, piece=called, mark="A" if called == "cut" else None), "least piece")
    assert places(told) == {(1, inches(16))}
    assert (told[0].figure, told[0].limit) == (f'15 5/8", called {called}', limit)


def test_thin_rip_is_told(good: Layout) -> None:
    # Half an inch high, on the bed of its course.
    told = told_of(change_piece(good, 2, 1, height=inches("1/2"), piece="cut"), "least piece")
    assert (2, inches(8)) in places(told)
    assert told[0].figure == '1 piece ripped to 1/2" high'


def test_bat_broken_to_the_plans_own_joint_is_a_half() -> None:
    # With 1/2 in. joints the half of a modular brick is (7 5/8 + 1/2) / 2 - 1/2 = 3 9/16 in., not the catalogue's 3 5/8.
    half = inches("1/2")
    masonry = make_masonry("brick-modular", joint=half, tightest_joint=half, widest_joint=half)
    layout = lay(make_job(masonry, make_wall(4 * inches("8 1/8") - half, inches(16))))
    lengths = {piece.length for course in layout.walls[0].courses for piece in course.pieces if piece.piece == "half"}
    assert lengths == {inches("3 9/16")}
    assert not broken(check(layout))
