"""Walls one brick thick, piece by piece, against hand answers."""

from __future__ import annotations

from itertools import pairwise

import pytest

from tests.jobs import MM, broken, make_job, make_masonry, make_wall, pieces_of
from wallplan.layout.as_json import layout_as_json
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.job import Bond, Masonry
from wallplan.rules.check import check

LETTERS = {"header": "H", "closer": "C", "stretcher": "S", "return": "r"}


def one_brick(bond: Bond = "flemish", unit: str = "brick-uk") -> Masonry:
    """Masonry in a bond with headers, as a plan gives it."""
    plain = make_masonry(unit)
    return make_masonry(unit, bond, least_lap=plain.unit.length // 4, least_piece=plain.module // 2)


def lay_free(length: float, height: float = 900, bond: Bond = "flemish") -> Layout:
    """A free wall of UK brick in mm."""
    return lay(make_job(one_brick(bond), make_wall(round(length * MM), round(height * MM)), measure="metric"))


def drawn(layout: Layout, course: int, wall: int = 0) -> str:
    """A course's face in letters, sawn pairs by their mark."""
    return "".join(piece.mark if piece.piece == "cut" and piece.mark else LETTERS[piece.shape]
                   for piece in pieces_of(layout, course, wall))


@pytest.mark.parametrize(("length", "repeats"), [(4265, 12), (4602.5, 13)])
def test_wall_situation_6_the_lengths_that_the_hand_offers_are_whole_flemish_bond(length: float, repeats: int) -> None:
    layout = lay_free(length)
    assert drawn(layout, 1) == "S" + "HS" * repeats
    assert drawn(layout, 2) == "HCS" + "HS" * (repeats - 1) + "CH"
    assert not broken(check(layout)) and layout.walls[0].cutting == 12 and layout.walls[0].joints == (10 * MM, 10 * MM)


def test_wall_situation_6_if_refused_carries_a_broken_bond_at_the_centre() -> None:
    layout = lay_free(4500)
    wall = layout.walls[0]
    for course in wall.courses:
        faces = [(piece.left, piece.length) for piece in course.pieces]
        assert min(length for _, length in faces if length > 47 * MM) == 102.5 * MM  # pieces not under a header
        closers = [place for place, piece in enumerate(course.pieces) if piece.shape == "closer"]
        assert closers == ([] if course.number % 2 else [1, len(faces) - 2])  # closers only at quoins
        doubles = [two.left for one, two in pairwise(course.pieces) if one.shape == two.shape == "stretcher"]
        assert len(doubles) == 1 and abs(doubles[0] / MM - 2250) < 225  # the one broken place, at the centre
    assert not broken(check(layout))
    # "10 mm lost over 26 joints (0.4 each)"
    assert [len(course.pieces) - 1 for course in wall.courses[:2]] == [25, 27]
    assert 0.3 * MM < wall.joints[0] - 10 * MM <= wall.joints[1] - 10 * MM <= 0.4 * MM


def test_every_stretcher_has_its_like_behind_it_and_nothing_else_has() -> None:
    layout = lay_free(4265)
    for course in layout.walls[0].courses:
        fronts = [piece for piece in course.pieces if piece.shape == "stretcher"]
        assert [(one.left, one.length) for one in course.backing] == [(one.left, one.length) for one in fronts]
        assert {one.leaf for one in fronts} == {"front"} and {one.leaf for one in course.backing} == {"back"}
        assert {one.leaf for one in course.pieces if one.shape != "stretcher"} <= {"through"}


def test_english_bond_has_courses_of_stretchers_and_of_headers() -> None:
    layout = lay_free(4490, bond="english")
    assert drawn(layout, 1) == "S" * 20 and drawn(layout, 2) == "HC" + "H" * 37 + "CH"
    assert not broken(check(layout))


def test_the_json_tells_what_stands_behind() -> None:
    first, second = layout_as_json(lay_free(552.5, 150), ())["walls"][0]["courses"]  # type: ignore[index]
    assert [(one["left"], one["shape"], one["leaf"]) for one in first["pieces"]] == [
        (0.0, "stretcher", "front"), (225.0, "header", "through"), (337.5, "stretcher", "front")]
    assert [one["left"] for one in first["backing"]] == [0.0, 337.5]
    assert [(one["piece"], one["length"], one["mark"]) for one in second["pieces"]][1] == ("closer", 46.25, "A")
