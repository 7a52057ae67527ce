"""How the days fall: by hand, and so that no course is lost, none is laid before the one below, and no day is too long."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.jobs import INCH, inches, make_job, make_masonry, make_opening, make_wall, pump_house
from tests.lists.walls import lay_text
from tests.long_run import examples
from wallplan.layout.build import lay
from wallplan.lists.order.batch import measure_batch
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.days import find_output, group_walls, plan_days
from wallplan.lists.order.figures import FEET, METRIC
from wallplan.lists.order.report import report_order
from wallplan.plan.order_wishes import Mix, OrderWishes, SteelWishes

FOOT = 12 * INCH


def wall_of(feet: int, courses: int, name: str = "Landing") -> object:
    """A wall of 8 in. block, whole feet by whole courses."""
    return make_wall(feet * FOOT - 3 * INCH // 8, courses * 8 * INCH, name=name)


def test_a_day_ends_at_five_feet_and_the_next_wall_takes_what_is_left() -> None:
    # 20 ft: 15 or 16 block a course. 100 a day lay 6 courses (93), the 7th would be 108; the second wall is 4 ft: 3 or 4.
    layout = lay(make_job(make_masonry(), wall_of(20, 12), wall_of(4, 2, "Short")))  # type: ignore[arg-type]
    rows = plan_days(layout, Fraction(100), Fraction(1, 40))
    assert [(row.day, row.wall, row.courses, row.units) for row in rows] == [
        (1, "Landing", (1, 6), 93), (1, "Short", (1, 2), 7), (2, "Landing", (7, 12), 93)]
    assert [row.height // INCH for row in rows] == [48, 16, 96]
    assert rows[0].batches == Fraction("2.3") and "leads first from courses 1, 6" in rows[0].due
    assert "scaffold: platform at 5'-0\"" in rows[2].due and "brace" not in rows[2].due
    # A day of 1,000 block still stops at 5 ft: seven courses of 8 in.
    assert [row.courses for row in plan_days(layout, Fraction(1000), Fraction(1)) if row.wall == "Landing"] == [(1, 7), (8, 12)]


def test_what_is_due_over_eight_feet_and_at_a_bond_beam() -> None:
    wall = make_wall(239 * INCH + 5 * INCH // 8, 104 * INCH, bond_beams=(13,))
    rows = list_order(lay(make_job(make_masonry(), wall))).days
    assert [due.kind for due in rows[-1].dues] == ["bond beam", "steel", "scaffold", "brace", "grout"]
    assert "bond beam: course 13" in rows[-1].due and "steel as the designer says" in rows[-1].due


CELLS = """
title = "Store"
measure = "feet"
sizes = "nominal"
[masonry]
unit = "block-8"
[[wall]]
name = "Quay"
length = "20'"
height = "10'"
bond_beams = [6]
[order]
masons = 2
{more}
[order.steel]
bar = "#4"
cell_spacing = "4'"
"""


def test_grout_is_poured_before_a_bond_beam_is_covered_and_no_higher_at_once_than_the_plan_says() -> None:
    # 200 a day: 5 ft are 7 courses, then 7, then 1. The bond beam ends a pour at course 6; 7 to 14 would be 5 ft 4 in. at once.
    rows = list_order(lay_text(CELLS.format(more=""))).days
    assert [row.courses for row in rows] == [(1, 7), (8, 14), (15, 15)]
    poured = [[words.split(", ")[0] for words in row.due if words.startswith("grout")] for row in rows]
    assert poured == [["grout pour: courses 1 to 6", "grout pour: course 7"], ["grout pour: courses 8 to 14"],
                      ["grout pour: course 15"]]
    assert any(words.endswith("cu ft, before course 7") for words in rows[0].due)
    # Six courses are 4 ft, over 32 in. at once; a day of no more than 32 in. never is.
    high, low = (list_order(lay_text(CELLS.format(more=f"pour_height = '32\"'\n{more}"))).days
                 for more in ("", "day_height = '32\"'"))
    assert any(words.endswith("2'-8\" high at once at most") for words in high[0].due)
    assert not any("at once" in words for row in low for words in row.due)


@pytest.mark.parametrize("more", ["", "day_height = '16\"'", "pour_height = \"10'\""])
def test_pours_together_are_the_grout_that_is_ordered_net(more: str) -> None:
    order = list_order(lay_text(CELLS.format(more=more)))
    net = sum(line.net for line in order.lines if line.group == "grout")
    poured = [row.pour for row in order.days if row.pour is not None]
    assert abs(sum(poured, Fraction(0)) - net) <= Fraction(len(poured) + 1, 20)  # each is told to a tenth


def test_walls_that_meet_rise_together_and_others_follow() -> None:
    corner = 'right = "outside corner"', 'left = "outside corner"'
    text = "".join(f"""
[[wall]]
name = "{name}"
length = "{length}'"
height = "8'"
{ends}
""" for name, length, ends in (("A", 16, corner[0]), ("B", 12, corner[1]), ("C", 8, "")))
    layout = lay_text('title = "L"\nmeasure = "feet"\n[masonry]\nunit = "block-8"\n' + text)
    assert group_walls(layout) == ((0, 1), (2,))
    rows = plan_days(layout, Fraction(40), Fraction(1))
    tall = {name: [row.courses[1] for row in rows if row.wall == name] for name in ("A", "B")}
    assert all(abs(a - b) <= 1 for a, b in zip(tall["A"], tall["B"], strict=True))


@given(st.lists(st.tuples(st.integers(3, 60), st.integers(1, 16)), min_size=1, max_size=3), st.integers(1, 200))
@settings(max_examples=examples(40))
def test_every_course_is_laid_once_in_order_and_no_day_is_over(walls: list[tuple[int, int]], a_day: int) -> None:
    job = make_job(make_masonry(), *(wall_of(feet, courses, f"W{n}") for n, (feet, courses) in enumerate(walls)))  # type: ignore[arg-type]
    layout = lay(job)
    rows = plan_days(layout, Fraction(a_day), Fraction(1, 40))
    for wall in layout.walls:
        mine = [row for row in rows if row.wall == wall.wall.name]
        assert sum(row.units for row in mine) == sum(len(course.pieces) for course in wall.courses)
        numbers = [number for row in mine for number in range(row.courses[0], row.courses[1] + 1)]
        assert sorted(set(numbers)) == [course.number for course in wall.courses] and numbers == sorted(numbers)
        assert mine[-1].height == wall.courses[-1].top
    for day in {row.day for row in rows}:
        assert sum(row.units for row in rows if row.day == day) <= a_day
    assert [row.day for row in rows] == sorted(row.day for row in rows)


def test_a_batch_of_eighteen_shovels_of_sand() -> None:
    # 18 + 3 + 3 shovels at 6 to the cu ft are 4 cu ft of materials; 27 / 38 of that is mortar.
    assert measure_batch(OrderWishes(), FEET) == Fraction("2.84")
    assert measure_batch(OrderWishes(), METRIC) == Fraction("80.48")
    # 12 of sand, 3 and 2: 17 shovels at 7.
    field = OrderWishes(mix=Mix(Fraction(3), Fraction(2), sand=Fraction(12)), batch=Fraction(12), shovels=Fraction(7))
    assert measure_batch(field, FEET) == Fraction("1.73")


def test_the_batch_is_told_in_shovels_with_water_and_time() -> None:
    told = dict(list_order(lay_text("""
title = "Bench"
measure = "metric"
[masonry]
unit = "brick-uk"
[[wall]]
name = "Back"
length = 4490
courses = 20
[order.mix]
cement = 3
lime = 2
sand = 12
""")).batch)
    # Sand stays at 18 shovels a batch, so cement is 4.5 and lime 3.
    assert told["one batch"] == "4.5 shovels portland cement, 3 shovels hydrated lime, 18 shovels sand, damp and loose"
    assert "2 1/2 hours" in told["mixing"] and "litres" in told["water"] and "(20 courses)" in told["batches"]


def test_stack_bond_is_laid_more_slowly_unless_the_plan_says_how_fast() -> None:
    plain, stack = (make_job(make_masonry(bond=bond), wall_of(20, 4)) for bond in ("half", "stack"))  # type: ignore[arg-type]
    assert find_output(plain) == (100, 180) and find_output(stack) == (92, Fraction("165.6"))
    notes = " ".join(list_order(lay(stack)).notes)
    assert "8 % less in stack bond (NCMA TEK 4-1A)" in notes


def test_batches_of_each_wall_are_its_share() -> None:
    # 20 ft and 10 ft of 4 courses: 15 and 16, 7 and 8 a course and half as many in turn, 62 and 31 (two halves in one course).
    layout = lay(make_job(make_masonry(), wall_of(20, 4, "A"), wall_of(10, 4, "B")))  # type: ignore[arg-type]
    told = dict(list_order(layout).batch)
    pieces = [sum(len(course.pieces) for course in wall.courses) for wall in layout.walls]
    low, high = re.findall(r"([\d.]+) to ([\d.]+) for the job", told["batches"])[0]
    shares = re.findall(r"([AB]) ([\d.]+) to ([\d.]+)", told["by wall"])
    for (name, least, most), count in zip(shares, pieces, strict=True):
        assert name in "AB"
        assert abs(float(least) - float(low) * count / sum(pieces)) <= 0.06
        assert abs(float(most) - float(high) * count / sum(pieces)) <= 0.06


def test_a_gasket_stops_at_an_opening_over_the_joint() -> None:
    opening = make_opening(108 * INCH, 132 * INCH, 0, 40 * INCH, "none")
    wall = make_wall(20 * FOOT - 3 * INCH // 8, 96 * INCH, [opening], control_joints=[10 * FOOT])
    job = replace(make_job(make_masonry(), wall), order=OrderWishes(steel=SteelWishes(gasket=True)))
    (line,) = [line for line in list_order(lay(job)).lines if line.item == "control-joint gasket"]
    # 8 ft less the opening's 40 in.: 4.67 ft, up to 5.
    assert (line.net, line.order) == (Fraction("4.67"), 5)


def test_a_day_plan_without_end_says_so_and_is_not_printed_whole() -> None:
    job = make_job(make_masonry(), wall_of(60, 12))  # type: ignore[arg-type]
    slow = list_order(lay(replace(job, order=OrderWishes(output=(Fraction(2), Fraction(4))))))
    told = report_order(slow, "feet", 80)
    assert slow.days[-1].day == 276 and "... and 76 rows more, to day 276: in the JSON and the CSV file" in told
    assert "not all walls stand" not in told


@pytest.mark.parametrize(("rise", "last"), [("48", 6), ("47 15/16", 5)])
def test_a_day_rises_to_its_height_and_not_over_it(rise: str, last: int) -> None:
    # Courses of 8 in., with more output than a day can take: six of them are 48 in.
    layout = lay(pump_house())
    low = replace(layout, job=replace(layout.job, order=replace(layout.job.order, day_height=inches(rise))))
    assert plan_days(low, Fraction(1000), Fraction(1, 100))[0].courses == (1, last)


def test_what_ends_at_a_platforms_height_is_laid_from_the_one_below() -> None:
    # A wall of 10 ft with a platform to every 5 ft: the last course is laid from 5 ft. Its steel lintel, on a head of 88 in.,
    # rests on course 11 and is set with course 12.
    door = make_opening(inches("31 5/8"), inches(72), 0, inches(88), lintel="steel")
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(inches("127 5/8"), inches(120), [door])))
    order = replace(layout.job.order, day_height=inches(120), scaffold=inches(60))
    (row,) = plan_days(replace(layout, job=replace(layout.job, order=order)), Fraction(1000), Fraction(1, 100))
    dues = {due.kind: due.figure for due in row.dues}
    assert (dues["scaffold"], dues["lintels"]) == ("5'-0\"", "12")

