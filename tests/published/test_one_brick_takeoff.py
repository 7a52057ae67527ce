"""Bricks of one-brick walls against what tables give for a square metre, and for bonds against stretcher bond.

Geometry of a 215 x 65 mm brick with 10 mm joints: 59.26 stretchers show on a square metre, 79.0 bricks in Flemish bond and
88.9 in English; a one-brick wall takes 118.5. BIA Technical Note 10 adds a third of face brick for Flemish and half for
English bond over stretcher bond (from memory).
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import MM, make_job, make_masonry, make_wall
from tests.layout.test_one_brick import lay_free
from tests.lists.walls import lay_text
from wallplan.layout.build import lay
from wallplan.lists.order.compose import list_order

LENGTH, HEIGHT = 337.5 * 40 + 215, 3000
"""A wall on the bond of either kind: 13,715 mm is 61 stretchers less a joint too."""

AREA = (LENGTH + 10) * HEIGHT / 1e6


@pytest.mark.parametrize(("bond", "shown", "more"), [("flemish", 79.0, Fraction(1, 3)), ("english", 88.9, Fraction(1, 2))])
def test_bricks_that_show_on_a_square_metre(bond: str, shown: float, more: Fraction) -> None:
    layout = lay_free(LENGTH, HEIGHT, bond)  # type: ignore[arg-type]
    pieces = [piece for course in layout.walls[0].courses for piece in course.pieces]
    # Closers and quoin headers at both ends show more bricks than the bond itself: one a course at most.
    count = sum(piece.shape != "closer" for piece in pieces)
    assert count / AREA == pytest.approx(shown, rel=0.01)
    plain = lay(make_job(make_masonry("brick-uk"), make_wall(round(LENGTH * MM), HEIGHT * MM)))
    stretchers = sum(len(course.pieces) for course in plain.walls[0].courses)
    assert stretchers / AREA == pytest.approx(59.26, rel=0.01)
    assert count / stretchers == pytest.approx(float(1 + more), rel=0.02)


@pytest.mark.parametrize("bond", ["flemish", "english"])
def test_118_and_a_half_bricks_to_a_square_metre(bond: str) -> None:
    layout = lay_free(LENGTH, HEIGHT, bond)  # type: ignore[arg-type]
    bricks = next(line for line in list_order(layout).lines if line.item == "brick-uk full")
    assert float(bricks.net) / AREA == pytest.approx(118.5, abs=0.1)


PLAN = """
title = "Quay wall"
measure = "metric"
[masonry]
unit = "brick-uk"
bond = "flemish"
[[wall]]
name = "Quay wall"
length = 890
courses = 4
"""


def test_the_order_of_a_small_wall_by_pencil() -> None:
    # Odd courses S H S H S: 3 pairs and 2 headers, 8 bricks. Even ones H C S H S C H: 2 pairs, 3 headers, 2 closers from one
    # brick, 8. In four courses 32 bricks, 2 of them ripped.
    bricks = next(line for line in list_order(lay_text(PLAN)).lines if line.item == "brick-uk full")
    assert bricks.net == 32
    assert bricks.why.startswith("laid whole 30; sawn: 2 ripped along its length as A + A; 30 + 2 = 32")
