"""Garden walls of common practice, invented and worked by hand: bays between piers, and new work tied to old."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from tests.jobs import MM, broken, make_job, make_masonry, make_wall, nominal_lengths
from wallplan.catalogue.own import own_unit
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.job import Abutment, Masonry
from wallplan.rules.check import check


def bay(clear: Fraction) -> Layout:
    """A panel between the faces of two piers of 440 mm, so many millimetres apart, UK brick, four courses."""
    masonry = make_masonry("brick-uk", joints_move=False)
    height, beside = masonry.unit.height_of_courses(4), int(Fraction("168.75") * MM)
    ends = tuple(Abutment(end, f"pier {end}", beside, True, "straps", 150 * MM) for end in ("left", "right"))
    panel = replace(make_wall(int(clear * MM), height, name="panel"), left_end="abuts", right_end="abuts", abuts=ends)
    piers = [make_wall(440 * MM, height, name=f"pier {end}") for end in ("left", "right")]
    return lay(make_job(masonry, *piers, panel, measure="metric"))


@pytest.mark.parametrize(("centres", "clear", "bricks"), [("2925", "2485", "11"), ("3037.5", "2597.5", "11.5")])
def test_piers_of_440_stand_where_the_bay_takes_whole_bricks_or_a_half_more(centres: str, clear: str, bricks: str) -> None:
    # By hand, asked 3.0 m centres: 2,560 between faces is 11.33 bricks; 2,925 centres leave 2,485, 11 bricks, and 3,037.5
    # leave 2,597.5, 11 1/2. Clear between two faces is n x 225 + 10.
    assert Fraction(centres) - 440 == Fraction(clear) == Fraction(bricks) * 225 + 10
    layout = bay(Fraction(clear))
    assert broken(check(layout)) == []
    assert layout.walls[2].cutting == 0
    for course in (1, 2):
        assert sum(nominal_lengths(layout, course, MM, wall=2)) == Fraction(bricks) * 225


def test_the_bay_that_was_asked_for_cuts_in_every_course() -> None:
    layout = bay(Fraction(2560))
    assert broken(check(layout)) == []
    assert layout.walls[2].cutting >= 4


def old_work() -> Masonry:
    """Reclaimed brick of 230 by 68 mm, four courses to 330 mm as the old wall has them, joints up to 13 mm."""
    unit = own_unit("old", measure="metric", kind="brick", length=230 * MM, height=68 * MM, thickness=110 * MM, joint=10 * MM,
                    gauge=(4, 330 * MM))
    return Masonry(unit, "half", unit.joint, unit.tightest_joint, unit.widest_joint, unit.module // 4, unit.module // 4, 7)


def test_new_work_keeps_the_gauge_of_the_old_wall_that_it_is_tied_to() -> None:
    # By hand: gauge 82.5; 2,100 is 25.45 courses, so the lintel goes at 25, 2,062.5, or at 26, 2,145.
    unit = old_work().unit
    assert [unit.height_of_courses(courses) for courses in (25, 26)] == [int(Fraction(at) * MM) for at in ("2062.5", "2145")]
    layout = lay(make_job(old_work(), make_wall(3870 * MM, unit.height_of_courses(26)), measure="metric"))
    assert [course.top for course in layout.walls[0].courses][24:] == [int(Fraction(at) * MM) for at in ("2062.5", "2145")]


def test_the_head_joints_of_new_work_open_to_meet_its_length() -> None:
    # By hand: 3,870 to the new corner is 16 bricks with 30 mm over, 16 joints with the one against the old wall's face: 11.9 mm
    # each. From that joint on, laid at 11.875, 15 joints stand between 16 bricks in 3,858.125 mm, and nothing is cut. In even
    # courses two bats of 110 stand at the ends of 15 bricks: (3,858.125 - 3,670) / 16 joints = 11.758 mm.
    masonry = old_work()
    face = int(Fraction("11.875") * MM)
    layout = lay(make_job(masonry, make_wall(3870 * MM - face, masonry.unit.height_of_courses(4)), measure="metric"))
    assert layout.walls[0].joints == (int(Fraction("188.125") / 16 * MM), face)
    assert layout.walls[0].cutting == 0
    assert [piece.piece for piece in layout.walls[0].courses[0].pieces].count("full") in (15, 16)
