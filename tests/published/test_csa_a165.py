"""Canadian metric block, CSA A165.1 by way of the masonry producers' manual (CCMPA), section 3: 390 x 190 mm on 400 x 200."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import MM, broken, count_units, make_job, make_masonry, make_opening, make_wall
from tests.layout.buildings import count_course, rectangle
from wallplan.catalogue.load import find_unit, units
from wallplan.layout.build import lay
from wallplan.rules.check import check

WIDTHS = [90, 140, 190, 240, 290]
BLOCK = make_masonry("block-ca-190", joints_move=False)


@pytest.mark.parametrize("width", WIDTHS)
def test_size_and_module(width: int) -> None:
    # Widths are nominal 100 to 300 less 10. Half of 190 mm: from memory.
    block = find_unit(f"block-ca-{width}")
    assert [size // MM for size in (block.length, block.thickness, block.height)] == [390, width, 190]
    assert (block.module, block.gauge, block.pieces[1].length) == (400 * MM, 200 * MM, 190 * MM)


def test_every_canadian_unit_of_the_catalogue_stands_in_the_table() -> None:
    assert {unit.key for unit in units().values() if unit.country == "Canada"} == {f"block-ca-{width}" for width in WIDTHS}


def test_twelve_and_a_half_to_the_square_metre() -> None:
    # By geometry 1 / (0.4 x 0.2).
    layout = lay(make_job(BLOCK, make_wall(7990 * MM, 2400 * MM), measure="metric"))
    assert count_units(layout) / (8 * Fraction("2.4")) == Fraction("12.5")


# n x 200 - 10 for a free wall, n x 200 + 10 for an opening (the manual's modular coordination, from memory).
@pytest.mark.parametrize("modules", [4, 5, 9, 18, 31])
def test_modular_walls_and_openings_lay_without_a_cut(modules: int) -> None:
    wall = make_wall((200 * modules - 10) * MM, 800 * MM)
    assert lay(make_job(BLOCK, wall, measure="metric")).walls[0].cutting == 0
    assert lay(make_job(BLOCK, make_wall(200 * modules * MM, 800 * MM), measure="metric")).walls[0].cutting >= 4
    hatch = make_opening(790 * MM, (800 + 200 * modules) * MM, 0, 800 * MM, lintel="steel")
    pierced = lay(make_job(BLOCK, make_wall((1590 + 200 * modules) * MM, 1600 * MM, [hatch]), measure="metric"))
    assert pierced.walls[0].cutting == 0 and not broken(check(pierced))


def test_a_closed_building_counts_its_corners_once() -> None:
    # 8.0 by 6.0 m outside, less a joint: (28 m - 4 x 0.2 m) / 0.4 m = 68 block a course.
    layout = lay(rectangle(BLOCK, 7990 * MM, 5990 * MM, 2400 * MM))
    assert [count_course(layout, course) for course in range(1, 13)] == [68] * 12
    assert sum(wall.cutting for wall in layout.walls) == 0
