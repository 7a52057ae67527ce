"""German octametric lengths, DIN 4172: free wall n x 12.5 - 1 cm, opening n x 12.5 + 1 cm, as printed at
https://www.klb-klimaleichtblock.de/maßordnung.html; the rows from the same pages' table of rasters."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import MM, broken, make_job, make_masonry, make_opening, make_wall
from wallplan.catalogue.load import find_unit
from wallplan.layout.build import lay
from wallplan.rules.check import check

# Raster, opening, outside in metres. The page prints 1.375 for the fourth row's outside, a slip: 1.375 - 0.01 = 1.365.
TABLE = [
    ("1.00", "1.01", "0.99"), ("1.125", "1.135", "1.115"), ("1.25", "1.26", "1.24"), ("1.375", "1.385", "1.365"),
    ("1.50", "1.51", "1.49"), ("1.625", "1.635", "1.615"), ("1.75", "1.76", "1.74"), ("1.875", "1.885", "1.865"),
    ("2.00", "2.01", "1.99"),
]


def ticks(metres: str) -> int:
    return int(Fraction(metres) * 1000 * MM)


@pytest.mark.parametrize("key", ["brick-nf", "brick-df", "brick-2df"])
@pytest.mark.parametrize(("raster", "opening", "outside"), TABLE)
def test_outside_length_takes_whole_and_half_bricks(key: str, raster: str, opening: str, outside: str) -> None:
    masonry = make_masonry(key, joints_move=False)
    height = masonry.unit.height_of_courses(4)
    layout = lay(make_job(masonry, make_wall(ticks(outside), height), measure="metric"))
    assert layout.walls[0].cutting == 0
    halves = Fraction(raster) / Fraction("0.125")
    for course in layout.walls[0].courses:
        assert sum(2 if piece.piece == "full" else 1 for piece in course.pieces) == halves


@pytest.mark.parametrize(("raster", "opening", "outside"), TABLE)
def test_opening_between_piers_of_the_order_cuts_nothing(raster: str, opening: str, outside: str) -> None:
    # Piers of 1.24 and 0.99 m beside it; the whole is again n x 12.5 - 1 cm.
    masonry = make_masonry("brick-nf", joints_move=False)
    left, right = ticks("1.24"), ticks("1.24") + ticks(opening)
    hatch = make_opening(left, right, 0, masonry.unit.height_of_courses(6), lintel="steel", name="Hatch")
    wall = make_wall(right + ticks("0.99"), masonry.unit.height_of_courses(9), [hatch])
    layout = lay(make_job(masonry, wall, measure="metric"))
    assert layout.walls[0].cutting == 0
    assert not broken(check(layout))


@pytest.mark.parametrize(("aim", "built"), [("0.625", "0.635"), ("0.75", "0.76"), ("0.875", "0.885"), ("1.00", "1.01"), ("1.125", "1.135")])
def test_door_openings_stand_on_the_order_two_metres_high(aim: str, built: str) -> None:
    # https://www.bau-wiki.de, Baunennmaß: Richtmaß by 200 cm becomes Nennmaß, a centimetre wider. 2 m is 24 courses of NF.
    assert ticks(built) - ticks(aim) == find_unit("brick-nf").joint
    masonry = make_masonry("brick-nf", joints_move=False)
    door = make_opening(ticks("0.99"), ticks("0.99") + ticks(built), 0, masonry.unit.height_of_courses(24), lintel="steel")
    assert door.top == ticks("2.00")
    layout = lay(make_job(masonry, make_wall(door.right + ticks("0.99"), ticks("2.25"), [door]), measure="metric"))
    assert len(layout.walls[0].courses) == 27
    assert layout.walls[0].cutting == 0


@pytest.mark.parametrize(("key", "courses"), [("brick-df", 16), ("brick-nf", 12), ("brick-2df", 8)])
def test_courses_to_the_metre(key: str, courses: int) -> None:
    # NF: 8.33 cm printed; DF and 2DF from memory of DIN 4172.
    assert find_unit(key).height_of_courses(courses) == ticks("1.00")
