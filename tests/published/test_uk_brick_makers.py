"""UK brick by its makers' co-ordinating dimensions: CO, CO+ and CO- for a 215 mm brick with 10 mm joints, gauge 75.

As a brick maker's Technical Information Sheet 9, Table 1, prints them; explained at
https://www.firstinarchitecture.co.uk/brick-dimension-tables-explained/. CO+ is for openings, CO- for piers and walls with two
free ends, CO where one end meets a return. Rows that the sheet has and that were not read are from memory and by its rule.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.jobs import MM, broken, count_units, make_job, make_masonry, make_opening, make_wall
from tests.layout.buildings import IN, OUT, build
from tests.layout.test_one_brick import lay_free
from tests.long_run import examples
from wallplan.catalogue.load import find_unit
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lists.order.compose import list_order
from wallplan.plan.coursing import set_coursing
from wallplan.plan.job import Bond
from wallplan.rules.check import check

BRICK = make_masonry("brick-uk", joints_move=False)

# Bricks, CO+, CO, CO- in millimetres.
TABLE = [
    ("0.5", "122.5", "112.5", "102.5"), ("1", "235", "225", "215"), ("1.5", "347.5", "337.5", "327.5"),
    ("2", "460", "450", "440"), ("3", "685", "675", "665"), ("4", "910", "900", "890"),
    ("4.5", "1022.5", "1012.5", "1002.5"), ("5", "1135", "1125", "1115"), ("6", "1360", "1350", "1340"),
    ("34", "7660", "7650", "7640"), ("38.5", "8672.5", "8662.5", "8652.5"), ("68", "15310", "15300", "15290"),
    ("72", "16210", "16200", "16190"),
]
# From memory of the same table, and by its rule.
MORE = [("2.5", "572.5", "562.5", "552.5"), ("3.5", "797.5", "787.5", "777.5"), ("5.5", "1247.5", "1237.5", "1227.5"),
        ("8", "1810", "1800", "1790"), ("10", "2260", "2250", "2240"), ("20", "4510", "4500", "4490")]


def ticks(millimetres: str | Fraction) -> int:
    return int(Fraction(millimetres) * MM)


def lay_wall(length: int, courses: int = 4) -> Layout:
    return lay(make_job(BRICK, make_wall(length, 75 * MM * courses), measure="metric"))


def test_size_and_gauge() -> None:
    # 215 x 102.5 x 65 mm; four courses to 300.
    brick = find_unit("brick-uk")
    assert [Fraction(size, MM) for size in (brick.length, brick.thickness, brick.height)] == [215, Fraction("102.5"), 65]
    assert [row.top for row in set_coursing(make_wall(215 * MM, 300 * MM), BRICK)] == [75 * n * MM for n in range(1, 5)]


@pytest.mark.parametrize(("bricks", "wider", "exact", "pier"), TABLE + MORE)
def test_pier_of_co_less_a_joint_takes_whole_and_half_bricks(bricks: str, wider: str, exact: str, pier: str) -> None:
    assert ticks(wider) - ticks(exact) == ticks(exact) - ticks(pier) == find_unit("brick-uk").joint
    layout = lay_wall(ticks(pier))
    assert layout.walls[0].cutting == 0
    assert [count_units(layout, course) for course in range(1, 5)] == [Fraction(bricks)] * 4


@pytest.mark.parametrize(("bricks", "wider", "exact", "pier"), TABLE + MORE)
def test_opening_of_co_and_a_joint_between_piers_cuts_nothing(bricks: str, wider: str, exact: str, pier: str) -> None:
    # 890 and 1002.5 mm piers beside it: pier + opening + pier is a CO- again.
    left, right = ticks("890"), ticks("890") + ticks(wider)
    hatch = make_opening(left, right, 0, ticks("300"), lintel="steel", name="Hatch")
    layout = lay(make_job(BRICK, make_wall(right + ticks("1002.5"), ticks("600"), [hatch]), measure="metric"))
    assert layout.walls[0].cutting == 0
    assert not broken(check(layout))
    if Fraction(bricks) <= 6:  # the same hole 10 mm narrower, CO, cuts beside a jamb in each of the four courses
        narrow = make_opening(left, right - ticks("10"), 0, ticks("300"), lintel="steel", name="Hatch")
        other = lay(make_job(BRICK, make_wall(right + ticks("1002.5"), ticks("600"), [narrow]), measure="metric"))
        assert other.walls[0].cutting >= 4


@pytest.mark.parametrize(("bricks", "wider", "exact", "pier"), [row for row in TABLE if 3 <= Fraction(row[0]) <= 6])
def test_a_projection_of_co_from_a_return_takes_whole_and_half_bricks(bricks: str, wider: str, exact: str, pier: str) -> None:
    # One end free, one against another wall's face: CO, one joint counted. A hut with a porch of that depth, measured face to
    # face, all other sides on the brick.
    depth = ticks(exact)
    five = 5 * BRICK.module
    layout = lay(build(BRICK, ticks("300"), (2 * five - BRICK.joint, OUT), (five - BRICK.joint, OUT), (five, IN), (depth, OUT),
                       (five - BRICK.joint, OUT), (five + depth - BRICK.joint, OUT)))
    assert sum(wall.cutting for wall in layout.walls) == 0
    assert not broken(check(layout))


def test_length_between_the_rows_is_cut() -> None:
    layout = lay_wall(ticks("900"))
    # 900 is four bricks with all their joints: 10 mm more than four bricks' pier takes, so each of four courses cuts.
    assert layout.walls[0].cutting >= layout.walls[0].cutting_at_least == 4


@settings(max_examples=examples(30))
@given(st.integers(4, 60), st.integers(-40, 40))
def test_only_co_less_a_joint_goes_without_a_cut(halves: int, off: int) -> None:
    # The rule of the whole table: n x 112.5 - 10 lays whole; up to 40 mm off it does not, every course cutting once or more.
    layout = lay_wall(ticks(Fraction(halves) * Fraction("112.5") - 10 + off), courses=2)
    assert (layout.walls[0].cutting == 0) == (off == 0)
    assert off == 0 or layout.walls[0].cutting >= 2


def test_a_closed_building_on_the_brick_lays_without_a_cut() -> None:
    # From memory, the sheet's note: outside faces CO-, inside faces CO+ of a brick less. 20 by 12 bricks outside.
    layout = lay(build(BRICK, ticks("300"), *[(ticks(size), OUT) for size in ("4490", "2690", "4490", "2690")]))
    assert sum(wall.cutting for wall in layout.walls) == 0
    # Corners counted once: 2 x (20 + 12) less half a brick at each of four corners.
    for course in range(4):
        own = [piece for wall in layout.walls for piece in wall.courses[course].pieces if piece.shape != "return"]
        assert sum(Fraction(1 if piece.piece == "full" else "1/2") for piece in own) == 62


@pytest.mark.parametrize(("key", "exact", "rule"), [("brick-uk", "59.26", 60), ("block-uk-100", "9.88", 10)])
def test_units_per_square_metre(key: str, exact: str, rule: int) -> None:
    # 60 brick and 10 block to the square metre, as the trade says; by geometry 1 / (0.225 x 0.075) = 59.26 and
    # 1 / (0.45 x 0.225) = 9.88. A wall of a hundred modules by forty courses holds as many, halves counted as such.
    masonry = make_masonry(key, joints_move=False)
    unit = masonry.unit
    layout = lay(make_job(masonry, make_wall(100 * unit.module - unit.joint, unit.height_of_courses(40))))
    area = Fraction(100 * unit.module, 1000 * MM) * Fraction(unit.height_of_courses(40), 1000 * MM)
    assert round(float(count_units(layout) / area), 2) == float(exact)
    assert abs(count_units(layout) / area - rule) / rule < Fraction(2, 100)


# Gauge 75, vertical brickwork table (from memory): courses and height in mm.
HEIGHTS = [(1, 75), (2, 150), (3, 225), (4, 300), (8, 600), (12, 900), (14, 1050), (20, 1500), (28, 2100), (32, 2400), (36, 2700)]


@pytest.mark.parametrize(("courses", "height"), HEIGHTS)
def test_vertical_gauge(courses: int, height: int) -> None:
    rows = set_coursing(make_wall(ticks("890"), height * MM), BRICK)
    assert len(rows) == courses and {row.bed for row in rows} == {10 * MM}


def test_three_courses_of_brick_are_one_of_block() -> None:
    # 225 mm: 3 x 75 and one block of 215 with its bed.
    block = make_masonry("block-uk-100")
    assert [row.top for row in set_coursing(make_wall(ticks("890"), 900 * MM), block)] == [
        row.top for row in set_coursing(make_wall(ticks("890"), 900 * MM), BRICK)[2::3]]


# One-brick walls: 120 to the square metre, as the trade says; by geometry 2 / (0.225 x 0.075) = 118.5. On the face 79.0 in
# Flemish bond and 88.9 in English, 59.3 in stretcher bond (by geometry: a repeat of 337.5 mm shows two brick; two courses
# show one and two to 225 mm).
@pytest.mark.parametrize(("bond", "face"), [("flemish", "79.0"), ("english", "88.9")])
def test_brick_of_a_one_brick_wall_to_the_square_metre(bond: Bond, face: str) -> None:
    masonry = make_masonry("brick-uk", bond, joints_move=False, least_lap=215 * MM // 4, least_piece=225 * MM // 2)
    repeats = 120
    length = int((337 * repeats + Fraction(repeats, 2) + 215) * MM)  # whole repeats and a stretcher
    layout = lay(make_job(masonry, make_wall(length, 4 * 75 * MM), measure="metric"))
    courses = layout.walls[0].courses
    seen = sum(1 for course in courses for piece in course.pieces if piece.shape != "closer")
    area = Fraction(length + masonry.joint, 1000 * MM) * Fraction(300, 1000)
    assert abs(seen / area / Fraction(face) - 1) <= Fraction(5, 1000)
    brick = sum(1 for course in courses for piece in (*course.pieces, *course.backing) if piece.shape != "closer")
    assert abs(brick / area / Fraction("118.5") - 1) <= Fraction(5, 1000)
    assert abs(brick / area - 120) / 120 <= Fraction(2, 100)


@pytest.mark.parametrize("bond", ["flemish", "english"])
def test_118_and_a_half_bricks_to_a_square_metre_are_ordered_net(bond: str) -> None:
    # 337.5 x 40 + 215 mm suits both bonds; closers are sawn from whole brick, two of one, and so take no more.
    length = 337.5 * 40 + 215
    order = list_order(lay_free(length, 3000, bond))  # type: ignore[arg-type]
    (brick,) = (line for line in order.lines if line.item == "brick-uk full")
    assert float(brick.net) / ((length + 10) * 3) * 1000 == pytest.approx(118.5, abs=0.1)


@pytest.mark.parametrize("bricks", [8, 12, 13, 20])
def test_english_bond_lays_at_every_length_of_the_table_with_closers_alone(bricks: int) -> None:
    # CO- again: n x 225 - 10 takes n stretchers, or 2 n - 1 headers and two closers beside the quoin headers (46.25 mm each,
    # that is a quarter brick and its joint): nothing else is cut. An inch off, more is.
    masonry = make_masonry("brick-uk", "english", joints_move=False, least_lap=215 * MM // 4, least_piece=225 * MM // 2)
    layout = lay(make_job(masonry, make_wall((225 * bricks - 10) * MM, 600 * MM), measure="metric"))
    for course in layout.walls[0].courses:
        shapes = [piece.shape for piece in course.pieces]
        assert shapes in (["stretcher"] * bricks,
                          ["header", "closer", *["header"] * (2 * bricks - 3), "closer", "header"])
        assert not any(piece.piece == "cut" for piece in (*course.pieces, *course.backing))
    off = lay(make_job(masonry, make_wall((225 * bricks + 15) * MM, 600 * MM), measure="metric"))
    assert any(piece.piece == "cut" for course in off.walls[0].courses for piece in course.pieces)
