"""A builders' handbook of the last century but one, https://chestofbooks.com/architecture/Building-Construction-V4/Brickwork.html.

Face brick 300 to 400 a day; 5 % of brick for breakage; 7 1/2 brick to the sq ft of wall one brick thick in plan (4 in.), which
has cuts, waste and smaller brick in it. And https://chestofbooks.com/architecture/Building-Construction-5/: a closer stands next
to the quoin header, not at the angle.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import MM, make_masonry
from tests.layout.buildings import OUT, build
from tests.lists.walls import count_whole, lay_text, plan_wall, take_off
from wallplan.layout.build import lay
from wallplan.lists.order.days import find_output
from wallplan.plan.job import Bond


def test_a_mason_lays_300_to_400_face_brick_a_day() -> None:
    job = lay_text(plan_wall("20'", "8'", unit="brick-modular")).job
    assert find_output(job) == (300, 400)
    # 20 ft by 8 ft of modular brick is 1,080: four days at the least and, a wall rising 5 ft a day, three at the most.
    order = take_off("20'", "8'", unit="brick-modular")
    assert count_whole(order) == 1080
    assert (order.days[-1].day, order.fewest_days) == (4, 3)


def test_five_percent_of_brick_break() -> None:
    # 1,080 brick net, of them 18 in 36 halves: a spare of 5 %, up to whole brick, on every line of units.
    order = take_off("20'", "8'", unit="brick-modular")
    for line in order.lines:
        if line.group == "units":
            assert Fraction(5, 100) <= line.spare / line.net < Fraction(5, 100) + Fraction(1) / line.net


def test_seven_and_a_half_to_the_sq_ft_are_over_what_is_ordered_of_modular_brick() -> None:
    order = take_off("20'", "8'", unit="brick-modular")
    bought = sum((line.order for line in order.lines if line.group == "units"), Fraction(0))
    assert Fraction("6.75") < bought / 160 < Fraction("7.5")


@pytest.mark.parametrize("bond", ["flemish", "english"])
def test_a_closer_stands_next_to_the_quoin_header_and_never_at_the_angle(bond: Bond) -> None:
    masonry = make_masonry("brick-uk", bond, least_lap=215 * MM // 4, least_piece=225 * MM // 2)
    sides = [(round(length * MM), OUT) for length in (4265, 2577.5, 4265, 2577.5)]
    layout = lay(build(masonry, 600 * MM, *sides))
    found = 0
    for wall in layout.walls:
        for course in wall.courses:
            shapes = [piece.shape for piece in course.pieces]
            for place in (index for index, shape in enumerate(shapes) if shape == "closer"):
                found += 1
                assert {place, len(shapes) - 1 - place} & {1}, shapes
                assert (shapes[0] if place == 1 else shapes[-1]) in ("header", "return")
    assert found
