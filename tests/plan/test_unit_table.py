"""The plan's own unit: from specified or measured sizes, its mistakes, and the unit that masonry names."""

from __future__ import annotations

import pytest

from tests.plan.kiosk import marked_line, mistakes_in
from wallplan.catalogue.unit import StockPiece
from wallplan.lengths import TICKS_PER_MM
from wallplan.plan.job import Job
from wallplan.plan.load import read_plan

MM = TICKS_PER_MM
SIZES = 'key = "landing-brick"\nkind = "brick"\nlength = 230\nheight = 68\nthickness = 110\njoint = 10\n'
PLAN = f"""\
title = "Boat store"
measure = "metric"
[masonry]
unit = "landing-brick"
[own_unit]
{SIZES}
[[wall]]
name = "Slip"
length = "3.59 m"
courses = 10
"""


def read(*lines: str, **changes: str) -> Job:
    return read_plan(own(*lines, **changes), "store.toml")


def own(*lines: str, **changes: str) -> str:
    """The boat store with lines added to its own unit, or keys of it written anew."""
    text = PLAN.replace(SIZES, SIZES + "".join(f"{line}\n" for line in lines))
    for key, value in changes.items():
        (before,) = [line for line in SIZES.split("\n") if line.startswith(f"{key} =")]
        text = text.replace(before, f"{key} = {value}")
    return text


def test_specified_sizes_make_a_unit() -> None:
    job = read()
    unit = job.masonry.unit
    assert (unit.key, unit.kind, unit.country) == ("landing-brick", "brick", "own")
    assert (unit.length, unit.height, unit.thickness, unit.joint) == (230 * MM, 68 * MM, 110 * MM, 10 * MM)
    assert (unit.tightest_joint, unit.widest_joint, unit.leads, unit.solid) == (7 * MM, 13 * MM, 7, True)
    assert job.walls[0].height == 780 * MM
    assert (job.masonry.module, job.masonry.least_lap, job.masonry.joint) == (240 * MM, 60 * MM, 10 * MM)


def test_measured_sizes_stand_for_their_mean() -> None:
    unit = read(length='[228, 231, "23.1 cm"]', height="[68, 69]").masonry.unit
    assert (unit.length, unit.height) == (230 * MM, 137 * MM // 2)
    assert "mean of 3 measured" in unit.source


def test_a_gauge_may_be_of_several_courses() -> None:
    assert read("gauge = 308", "gauge_courses = 4").walls[0].height == 770 * MM
    assert read("gauge = 77").walls[0].height == 770 * MM


def test_stock_pieces_and_shapes_are_taken() -> None:
    unit = read("half = 109", "quarter = 50", "three_quarter = 170", "half_high = 29", 'shapes = ["stretcher", "lintel"]',
                "leads = 6", "solid = false", 'name = "Old landing brick"', "tightest_joint = 8", "widest_joint = 12").masonry.unit
    assert unit.pieces == (StockPiece("full", 230 * MM, sawn=False), StockPiece("three-quarter", 170 * MM, sawn=False),
                           StockPiece("half", 109 * MM, sawn=False), StockPiece("quarter", 50 * MM, sawn=False))
    assert (unit.half_high, unit.shapes, unit.leads, unit.solid) == (29 * MM, ("stretcher", "lintel"), 6, False)
    assert (unit.name, unit.tightest_joint, unit.widest_joint) == ("Old landing brick", 8 * MM, 12 * MM)


def test_a_unit_may_have_an_l_corner_unit_which_corners_may_ask_for() -> None:
    text = own("ell_return = 110").replace('unit = "landing-brick"\n', 'unit = "landing-brick"\ncorner_unit = "L"\n')
    job = read_plan(text, "store.toml")
    assert (job.masonry.unit.ell_return, job.masonry.corner_unit) == (110 * MM, "L")
    assert read().masonry.corner_unit == "plain"
    (long,) = mistakes_in(text.replace("ell_return = 110", "ell_return = 230"))
    assert long[-1].endswith("230 mm must be under length, which is 230 mm")
    (line,) = mistakes_in(text.replace("ell_return = 110\n", ""))
    assert line[-1].endswith('landing-brick does not come in L corner units; write "plain", or take a unit that does')


def test_a_unit_without_halves_has_none() -> None:
    assert [piece.name for piece in read("half = false").masonry.unit.pieces] == ["full"]


def test_the_catalogue_is_there_beside_an_own_unit() -> None:
    assert read_plan(PLAN.replace('unit = "landing-brick"', 'unit = "brick-uk"'), "x").masonry.unit.key == "brick-uk"


@pytest.mark.parametrize(("text", "said"), [
    (own(key='"brick-uk" #!').replace('unit = "landing-brick"', 'unit = "brick-uk"'),
     'key: "brick-uk" is a unit of the catalogue; write another key'),
    (own(kind='"stone" #!'), 'kind: "stone" is not known; allowed: block or brick'),
    (own(length="0 #!"), "length: must be more than nothing"),
    (own(length="[230, 300] #!"), "length: measurements of 230 mm and 300 mm are more than a fifth apart"),
    (own(length="[] #!"), "length: no measurement; measure at least one unit"),
    (own(length='[230, "x"] #!'), 'length: "x" is not a length'),
    (own(length=f"[{'230, ' * 1001}] #!"), "length: more than 1,000 measurements"),
    (own(length="true #!"), "length: true is not a length"),
    (own(joint="70 #!"), "joint: 70 mm must be under height, which is 68 mm"),
    (own("gauge = 60", height="68 #!"), "height: 68 mm must be under gauge, which is 60 mm"),
    (own("gauge = 77", "gauge_courses = 0 #!"), "gauge_courses: 0 courses have no height; write at least 1"),
    (own("gauge_courses = 4 #!"), "gauge_courses: without a gauge; write gauge too"),
    (own("half = 240 #!"), "half: 240 mm must be under length, which is 230 mm"),
    (own('half = "some" #!'), 'half: "some" is not a length'),
    (own("half_high = 68 #!"), "half_high: 68 mm must be under height"),
    (own('shapes = ["stretcher", "rou\\tnd"] #!'),
     'shapes 2: "rou?nd" is not a shape; allowed: stretcher, corner, sash, bond beam or lintel'),
    (own("shapes = [3] #!"), "shapes 1: 3 is not text in quotes"),
    (own("leads = 0 #!"), "leads: 0 is too few courses for a lead"),
    (own("tightest_joint = 11 #!"), "tightest_joint: 11 mm must be no more than joint, which is 10 mm"),
    (own("colour = 1 #!"), "colour: unknown key; known here: key, name, kind"),
    (own(key='"" #!').replace('unit = "landing-brick"', 'unit = "brick-uk"'), "key: empty; write"),
])
def test_a_mistake_in_an_own_unit_is_told_where_it_stands(text: str, said: str) -> None:
    ((line, where, message),) = mistakes_in(text)
    assert where == "own_unit"
    assert message.startswith(said)
    assert line == marked_line(text)


def test_missing_keys_are_all_told_at_the_heading() -> None:
    told = mistakes_in(PLAN.replace(SIZES, 'key = "landing-brick"\n'))
    assert {line for line, _, _ in told} == {5}
    assert [message.split(":")[0] for _, _, message in told] == ["kind", "length", "height", "thickness", "joint"]


def test_a_name_near_the_own_unit_is_told_so() -> None:
    ((line, where, message),) = mistakes_in(PLAN.replace('unit = "landing-brick"', 'unit = "landing-brik"'))
    assert (line, where) == (4, "masonry")
    assert "nearest: landing-brick, the plan's own" in message
