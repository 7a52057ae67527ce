"""German octametric dimensions, DIN 4172, module 12.5 cm: free wall n x 12.5 - 1 cm, opening n x 12.5 + 1 cm, projection n x 12.5.

As printed at https://www.klb-klimaleichtblock.de/maßordnung.html, which has the table of rasters too; joints of 10 and 12 mm
and formats by https://www.klinkerkultur.de/glossary/massordnung/ and beton.wiki, Maßordnung. What is from memory says so.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.jobs import MM, broken, count_units, make_job, make_masonry, make_opening, make_wall
from tests.layout.buildings import IN, OUT, build
from tests.long_run import examples
from wallplan.catalogue.load import find_unit, units
from wallplan.layout.build import lay
from wallplan.plan.coursing import set_coursing
from wallplan.rules.check import check

# Raster, opening, outside in metres. The page prints 1.375 for the fourth row's outside, a slip: 1.375 - 0.01 = 1.365.
TABLE = [
    ("1.00", "1.01", "0.99"), ("1.125", "1.135", "1.115"), ("1.25", "1.26", "1.24"), ("1.375", "1.385", "1.365"),
    ("1.50", "1.51", "1.49"), ("1.625", "1.635", "1.615"), ("1.75", "1.76", "1.74"), ("1.875", "1.885", "1.865"),
    ("2.00", "2.01", "1.99"), ("2.50", "2.51", "2.49"),
]
NF = make_masonry("brick-nf", joints_move=False)


def ticks(metres: str) -> int:
    return int(Fraction(metres) * 1000 * MM)


@pytest.mark.parametrize("key", ["brick-nf", "brick-df", "brick-2df"])
@pytest.mark.parametrize(("raster", "opening", "outside"), TABLE)
def test_outside_length_takes_whole_and_half_bricks(key: str, raster: str, opening: str, outside: str) -> None:
    masonry = make_masonry(key, joints_move=False)
    layout = lay(make_job(masonry, make_wall(ticks(outside), masonry.unit.height_of_courses(4)), measure="metric"))
    assert layout.walls[0].cutting == 0
    assert [count_units(layout, course) for course in range(1, 5)] == [Fraction(raster) / Fraction("0.25")] * 4


@pytest.mark.parametrize(("raster", "opening", "outside"), TABLE)
def test_opening_between_piers_of_the_order_cuts_nothing(raster: str, opening: str, outside: str) -> None:
    # Piers of 1.24 and 0.99 m beside it; the whole is again n x 12.5 - 1 cm.
    left, right = ticks("1.24"), ticks("1.24") + ticks(opening)
    hatch = make_opening(left, right, 0, NF.unit.height_of_courses(6), lintel="steel", name="Hatch")
    layout = lay(make_job(NF, make_wall(right + ticks("0.99"), NF.unit.height_of_courses(9), [hatch]), measure="metric"))
    assert layout.walls[0].cutting == 0
    assert not broken(check(layout))


@settings(max_examples=examples(30))
@given(st.integers(4, 40), st.integers(-40, 40))
def test_only_lengths_of_the_order_go_without_a_cut(eighths: int, off: int) -> None:
    # n x 12.5 - 1 cm lays whole in both courses; a length up to 4 cm off it cuts in both.
    layout = lay(make_job(NF, make_wall((125 * eighths - 10 + off) * MM, NF.unit.height_of_courses(2)), measure="metric"))
    assert (layout.walls[0].cutting == 0) == (off == 0)
    assert off == 0 or layout.walls[0].cutting >= 2


@pytest.mark.parametrize("depth", ["0.50", "0.625", "1.00", "1.125"])
def test_a_projection_is_n_times_12_5_cm(depth: str) -> None:
    # A porch measured from the wall's face: n x 12.5 cm exactly, all free sides n x 12.5 - 1 cm.
    porch, side = ticks(depth), ticks("1.25")
    layout = lay(build(NF, ticks("0.50"), (2 * side - NF.joint, OUT), (side - NF.joint, OUT), (side, IN), (porch, OUT),
                       (side - NF.joint, OUT), (side + porch - NF.joint, OUT)))
    assert sum(wall.cutting for wall in layout.walls) == 0
    assert not broken(check(layout))


@pytest.mark.parametrize(("aim", "built"), [("0.625", "0.635"), ("0.75", "0.76"), ("0.875", "0.885"), ("1.00", "1.01"), ("1.125", "1.135")])
def test_door_openings_stand_on_the_order_two_metres_high(aim: str, built: str) -> None:
    # https://www.bau-wiki.de, Baunennmaß: Richtmaß by 200 cm becomes Nennmaß, a centimetre wider. 2 m is 24 courses of NF.
    assert ticks(built) - ticks(aim) == find_unit("brick-nf").joint
    door = make_opening(ticks("0.99"), ticks("0.99") + ticks(built), 0, NF.unit.height_of_courses(24), lintel="steel")
    assert door.top == ticks("2.00")
    layout = lay(make_job(NF, make_wall(door.right + ticks("0.99"), ticks("2.25"), [door]), measure="metric"))
    assert len(layout.walls[0].courses) == 27
    assert layout.walls[0].cutting == 0


# Length, width, height in mm; courses to the metre and to 12.5 cm's multiples. NF: 8.33 less 1.2 is 7.1 cm, printed; the sizes
# of DF and 2DF as suppliers state them, their courses from memory of DIN 4172.
FORMATS = [("brick-df", (240, 115, 52), 16), ("brick-nf", (240, 115, 71), 12), ("brick-2df", (240, 115, 113), 8)]


@pytest.mark.parametrize(("key", "size", "courses"), FORMATS)
def test_formats_and_courses_to_the_metre(key: str, size: tuple[int, int, int], courses: int) -> None:
    brick = find_unit(key)
    assert (brick.length, brick.thickness, brick.height) == tuple(millimetres * MM for millimetres in size)
    assert brick.module == 250 * MM
    rows = set_coursing(make_wall(ticks("0.99"), ticks("1.00")), make_masonry(key))
    assert len(rows) == courses and rows[-1].top == ticks("1.00"), "a metre of courses closes to the tick"
    # Beds: 12 mm for NF and 2DF, 10 1/2 mm for DF (62.5 less 52), as printed or by geometry, to half a millimetre.
    assert abs(rows[0].bed - {"brick-df": 10.5, "brick-nf": 12.3, "brick-2df": 12}[key] * MM) <= MM // 2


def test_every_german_unit_of_the_catalogue_stands_in_the_table() -> None:
    assert {unit.key for unit in units().values() if unit.country == "Germany"} == {row[0] for row in FORMATS}


def test_two_thin_or_three_half_normal_courses_meet_at_every_eighth_of_a_metre() -> None:
    # By the module: 12.5 cm are two courses of DF, one of 2DF; 25 cm are three of NF.
    df, nf, two = (find_unit(key) for key, _, _ in FORMATS)
    for eighths in (1, 2, 4, 8, 24):
        assert df.height_of_courses(2 * eighths) == two.height_of_courses(eighths) == ticks("0.125") * eighths
        assert nf.height_of_courses(3 * eighths) == 2 * two.height_of_courses(eighths)
