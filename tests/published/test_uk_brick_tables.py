"""UK brick lengths laid without a cut. CO, CO+ and CO- for a 215 mm brick with 10 mm joints, as a brick maker's Technical
Information Sheet 9, Table 1, prints them; explained at https://www.firstinarchitecture.co.uk/brick-dimension-tables-explained/."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.jobs import MM, broken, make_job, make_masonry, make_opening, make_wall
from wallplan.catalogue.load import find_unit
from wallplan.layout.build import lay
from wallplan.rules.check import check

# Bricks, CO+, CO, CO- in millimetres.
TABLE = [
    ("0.5", "122.5", "112.5", "102.5"), ("1", "235", "225", "215"), ("1.5", "347.5", "337.5", "327.5"),
    ("2", "460", "450", "440"), ("3", "685", "675", "665"), ("4", "910", "900", "890"),
    ("4.5", "1022.5", "1012.5", "1002.5"), ("5", "1135", "1125", "1115"), ("6", "1360", "1350", "1340"),
    ("34", "7660", "7650", "7640"), ("38.5", "8672.5", "8662.5", "8652.5"), ("68", "15310", "15300", "15290"),
    ("72", "16210", "16200", "16190"),
]


def ticks(millimetres: str) -> int:
    return int(Fraction(millimetres) * MM)


@pytest.mark.parametrize(("bricks", "wider", "exact", "pier"), TABLE)
def test_pier_of_co_less_a_joint_takes_whole_and_half_bricks(bricks: str, wider: str, exact: str, pier: str) -> None:
    assert ticks(wider) - ticks(exact) == ticks(exact) - ticks(pier) == find_unit("brick-uk").joint
    layout = lay(make_job(make_masonry("brick-uk", joints_move=False), make_wall(ticks(pier), ticks("300")), measure="metric"))
    assert len(layout.walls[0].courses) == 4  # gauge 75: four courses to 300 mm
    assert layout.walls[0].cutting == 0
    for course in layout.walls[0].courses:
        assert sum(Fraction(1 if piece.piece == "full" else "1/2") for piece in course.pieces) == Fraction(bricks)


@pytest.mark.parametrize(("bricks", "wider"), [("2", "460"), ("4", "910"), ("4.5", "1022.5"), ("6", "1360")])
def test_opening_of_co_and_a_joint_between_piers_cuts_nothing(bricks: str, wider: str) -> None:
    # 890 and 1002.5 mm piers beside it, 890 + 10 above: pier + opening + pier is a CO- again.
    left, right = ticks("890"), ticks("890") + ticks(wider)
    hatch = make_opening(left, right, 0, ticks("300"), lintel="steel", name="Hatch")
    wall = make_wall(right + ticks("1002.5"), ticks("600"), [hatch])
    layout = lay(make_job(make_masonry("brick-uk", joints_move=False), wall, measure="metric"))
    assert layout.walls[0].cutting == 0
    assert not broken(check(layout))


def test_length_between_the_rows_is_cut() -> None:
    layout = lay(make_job(make_masonry("brick-uk", joints_move=False), make_wall(ticks("900"), ticks("300")), measure="metric"))
    # 900 is four bricks with all their joints: 10 mm more than four bricks' pier takes, so each of four courses cuts.
    assert layout.walls[0].cutting >= layout.walls[0].cutting_at_least == 4


@pytest.mark.parametrize(("key", "exact", "rule"), [("brick-uk", "59.26", 60), ("block-uk-100", "9.88", 10)])
def test_units_per_square_metre(key: str, exact: str, rule: int) -> None:
    # By geometry 1 / (0.225 x 0.075) = 59.26 and 1 / (0.45 x 0.225) = 9.88; the trade says 60 and 10. A wall of a hundred
    # modules by forty courses holds as many whole units, halves counted as such.
    masonry = make_masonry(key, joints_move=False)
    unit = masonry.unit
    wall = make_wall(100 * unit.module - unit.joint, unit.height_of_courses(40))
    pieces = [piece for course in lay(make_job(masonry, wall)).walls[0].courses for piece in course.pieces]
    units = sum(Fraction(1 if piece.piece == "full" else "1/2") for piece in pieces)
    area = Fraction(100 * unit.module, 1000 * MM) * Fraction(unit.height_of_courses(40), 1000 * MM)
    assert round(float(units / area), 2) == float(exact)
    assert abs(units / area - rule) / rule < Fraction(2, 100)
