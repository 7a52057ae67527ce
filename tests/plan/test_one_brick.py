"""What a plan in a bond with headers may not have: one clear line each."""

from __future__ import annotations

import pytest

from wallplan.findings import PlanError
from wallplan.plan.job import Job
from wallplan.plan.load import read_plan

PLAN = """title = "Ferry landing: quay wall"
measure = "{measure}"
[masonry]
unit = "{unit}"
bond = "{bond}"
{masonry}
[[wall]]
name = "Quay wall"
length = {length}
height = {height}
{wall}
"""


def read(unit: str = "brick-uk", *, bond: str = "flemish", measure: str = "metric", masonry: str = "", wall: str = "",
         length: str = "4265", height: str = "900") -> Job:
    """A plan read."""
    return read_plan(PLAN.format(unit=unit, bond=bond, measure=measure, masonry=masonry, wall=wall, length=length,
                                 height=height), "quay.toml")


def mistake(**plan: str) -> str:
    """The one mistake of a plan."""
    with pytest.raises(PlanError) as caught:
        read(**plan)
    assert len(caught.value.mistakes) == 1
    return caught.value.mistakes[0].message


def test_the_wall_is_as_thick_as_the_brick_is_long() -> None:
    masonry = read().masonry
    assert (masonry.thickness, masonry.least_lap, masonry.least_piece) == (215 * 960, 53.75 * 960, 112.5 * 960)


@pytest.mark.parametrize(("bond", "asked", "count"), [
    ("english garden wall", "", 3), ("common", "", 5), ("english garden wall", "stretcher_courses = 5", 5), ("flemish", "", 0),
    ("flemish garden wall", "", 0), ("header", "", 0)])
def test_courses_of_stretchers_between_those_of_headers(bond: str, asked: str, count: int) -> None:
    masonry = read(bond=bond, masonry=asked).masonry
    assert masonry.one_brick and masonry.stretcher_courses == count and masonry.bond_name.endswith(" bond")


@pytest.mark.parametrize(("unit", "measure"), [("brick-uk", "metric"), ("brick-au", "metric"), ("brick-modular", "feet")])
def test_bricks_of_two_thicknesses_and_a_joint_are_allowed(unit: str, measure: str) -> None:
    length, height = ('"14\'"', '"4\'"') if measure == "feet" else ("4265", "1032" if unit == "brick-au" else "900")
    assert read(unit, measure=measure, length=length, height=height).masonry.one_brick


@pytest.mark.parametrize(("plan", "told"), [
    ({"unit": "block-8", "measure": "feet", "length": '"14\'"', "height": '"4\'"'}, "is hollow; write bond ="),
    ({"unit": "brick-norman", "measure": "feet", "length": '"14\'"', "height": '"4\'"'},
     'two of 3 5/8" and 3/8" are 7 5/8", brick-norman is 11 5/8" long'),
    ({"masonry": "least_lap = 80"}, "least_lap: 80 mm is over a quarter of the unit and its joint: flemish bond laps no more"),
    ({"masonry": "least_piece = 60"}, "no piece but a closer is under a header"),
    ({"wall": '[[wall.gable]]\nwidth = 4000\nrise = 1000'}, "gables are not laid in flemish bond"),
    ({"bond": "english", "wall": "[[wall.step]]\nat = 2000\nup = 75"},
     "steps of the footing are not laid in english bond"),
    ({"wall": "[[wall.top_step]]\nat = 2000\nup = 75"}, "steps of the top are not laid in flemish bond"),
    ({"wall": "[[wall.pier]]\nfrom_left = 2000"}, "piers are not laid in flemish bond"),
    ({"masonry": "stretcher_courses = 3"}, 'flemish bond has no courses of headers after so many of stretchers; leave it out, or '
     'write bond = "english garden wall" or "common"'),
    ({"bond": "common", "masonry": "stretcher_courses = 0"}, "0; a course of headers comes after 1 to 12 courses of stretchers; "
     "write stretcher_courses = 5"),
    ({"bond": "english garden wall", "masonry": "stretcher_courses = 4",
      "wall": 'right = "outside corner"\n[[wall]]\nname = "Side"\nlength = 2690\nheight = 900\nleft = "outside corner"'},
     "stretcher_courses: 4: at corners a header stands at the quoin in every second course, and an even number brings the course "
     "of headers to the others; write 3 or 5"),
    ({"height": "335"}, "height: 335 mm is off the coursing, and no course is ripped in flemish bond; courses end at 300 mm and "
     "375 mm"),
    ({"wall": "[[wall.opening]]\nfrom_left = 1800\nwidth = 910\nsill = 320\nheight = 430"},
     "sill: 320 mm is off the coursing, and no course is ripped in flemish bond; courses end at 300 mm and 375 mm"),
])
def test_what_is_not_laid_is_told_in_one_line(plan: dict[str, str], told: str) -> None:
    assert told in mistake(**plan)
