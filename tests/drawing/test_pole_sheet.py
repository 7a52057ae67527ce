"""The story pole's sheets: heights to scale, figures apart, answers for what is off the coursing."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.drawing.sheets import faults_of, texts_of
from tests.drawing.walls import PLANS, laid
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.outlines import HEAVY_LINE
from wallplan.drawing.pole_sheet import POLE_SCALES, plan_pole_sheets
from wallplan.drawing.primitives import Outlines, Segment, Strokes
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lengths import TICKS_PER_MM, print_length
from wallplan.lists.pole import list_poles
from wallplan.plan.load import load_plan, read_plan

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_no_lettering_meets_anything_and_every_height_is_told(path: Path) -> None:
    layout = lay(load_plan(path))
    pages = number_sheets(plan_pole_sheets(layout, None))
    for page in pages:
        assert faults_of(page) == []
    texts = {text.text for page in pages for text in texts_of(page)}
    for pole in list_poles(layout):
        assert {print_length(top, layout.job.measure) for top in pole.tops} <= texts
        assert all(any(text.startswith(print_length(level.height, layout.job.measure)) for text in texts)
                   for level in pole.levels)


@pytest.mark.parametrize("paper", ["letter", "A3"])
@pytest.mark.parametrize("name", PLANS)
def test_poles_of_every_height_keep_their_figures_apart(name: str, paper: str) -> None:
    for page in number_sheets(plan_pole_sheets(laid(name)[0], paper)):
        assert faults_of(page) == []


def test_course_tops_are_true_to_a_tenth_of_a_millimetre() -> None:
    layout = laid("kiosk")[0]
    (page,) = number_sheets(plan_pole_sheets(layout, None))
    told = next(text.text for text in texts_of(page) if text.text.startswith("Scale "))
    ratio = next(scale.ratio for scale in POLE_SCALES["feet"] if f"Scale {scale.name}." in told)
    (pole,) = [item.boxes[0] for item in page.ink if isinstance(item, Outlines) and item.width == HEAVY_LINE]
    lines: list[Segment] = [line for item in page.ink if isinstance(item, Strokes) and item.width == 0.35
                            for line in item.segments if (line.x1, line.x2) == (pole.left, pole.right)]
    drawn = sorted((pole.bottom - line.y1) * ratio for line in lines)
    assert drawn == pytest.approx([course.top / TICKS_PER_MM for course in layout.walls[0].courses], abs=0.1)


def test_a_sill_off_the_coursing_is_answered_by_one_and_by_two_gauges() -> None:
    layout = lay(load_plan(next(path for path in SAMPLES if path.stem == "high-sill")))
    told = " ".join(text.text for page in number_sheets(plan_pole_sheets(layout, None)) for text in texts_of(page)).replace("\u00a0", " ")
    assert "One gauge to its head" in told and "Two gauges: to its sill" in told
    assert "OUT OF LIMITS" in told


def test_a_job_without_walls_has_no_pole() -> None:
    assert number_sheets(plan_pole_sheets(Layout(laid("kiosk")[0].job, ()), None)) == ()


def test_the_answers_for_a_sill_and_a_head_off_the_coursing_are_told_with_their_beds() -> None:
    """Modular brick, sill 2 ft 9 in., head 7 ft 1 in., by hand: one gauge with beds of .406 in., its sill 1 1/8 in. off; two
    gauges of 12 courses on 1/2 in. and of 20 on .350 in.; or one gauge stopped at course 11 under 3 25/32 in. of sill."""
    plan = ('title = "Signal box"\nmeasure = "feet"\nsizes = "actual"\n[masonry]\nunit = "brick-modular"\n'
            'tightest_joint = "1/4"\nwidest_joint = "1/2"\n[[wall]]\nname = "Track side"\nlength = "12\'"\nheight = "9\'"\n'
            '[[wall.opening]]\nname = "Window"\nfrom_left = "4\'"\nwidth = "4\'"\nsill = "2\' 9"\nheight = "4\' 4"\nlintel = "steel"\n')
    pages = number_sheets(plan_pole_sheets(lay(read_plan(plan, "box.toml")), None))
    told = " ".join(text.text for page in pages for text in texts_of(page)).replace("\u00a0", " ")
    assert 'One gauge to its head: 32 on beds of 0.406", within limits; its sill is then 1 1/8" above a course.' in told
    assert 'Or stop at course 11: 3 13/16" are left for a sill laid on it' in told  # 3 25/32 in. to the nearest 1/16
    assert 'Two gauges: to its sill 12 on beds of 1/2", within limits; on to its head 20 on beds of 0.350", within limits.' in told
    assert "Meets both within limits: two gauges." in told
    assert [faults_of(page) for page in pages] == [[]] * len(pages)


SIGNAL_BOX = """\
title = "Signal box"
measure = "feet"
sizes = "actual"
[masonry]
unit = "brick-modular"
tightest_joint = "1/4"
widest_joint = "1/2"
[[wall]]
name = "Track side"
length = "12'"
height = "9'"
[[wall.opening]]
name = "Window"
from_left = "4'"
width = "4'"
sill = "2' 9"
height = "4' 4"
lintel = "steel"
"""
"""Worked by hand: 12 courses of 2 3/4 in. to the sill, then 20 of 2.6 in. to the head."""


def test_two_gauges_are_drawn_as_a_pole_of_their_own_parted_at_the_sill() -> None:
    pages = number_sheets(plan_pole_sheets(lay(read_plan(SIGNAL_BOX, "box.toml")), "letter"))
    page = next(page for page in pages if any(text.text == "OR TWO GAUGES" for text in texts_of(page)))
    texts = [text.text for text in texts_of(page)]
    below = ['2 3/4"', '5 1/2"', '8 1/4"', '11"', "1'-1 3/4\"", "2'-9\""]
    above = ["2'-11 5/8\"", "3'-2 3/16\"", "4'-11\"", "7'-1\""]  # 35.6, 38.2 (to 1/16), 59 and 85 in.
    assert all(height in texts for height in (*below, *above))
    assert '12 courses, bed 1/2"' in texts and '20 courses, bed 0.350"' in texts
    told = next(text for text in texts if text.startswith("Scale "))
    ratio = next(scale.ratio for scale in POLE_SCALES["feet"] if f"Scale {scale.name}." in told)
    poles = [item.boxes[0] for item in page.ink if isinstance(item, Outlines) and item.width == HEAVY_LINE]
    assert [round(pole.height * ratio / 25.4, 2) for pole in poles] == [33.0, 52.0]  # to the sill, and on to the head
    assert all(faults_of(page) == [] for page in pages)


@pytest.mark.parametrize("paper", ["letter", "A4", "A3"])
def test_a_short_pole_of_two_gauges_stands_beside_the_pole_as_laid_out(paper: str) -> None:
    """UK brick, sill at 530 mm, head at 1370 mm: 7 courses of 75.714 mm on beds of 10.7 mm, 11 of 76.364 on 11.4 mm."""
    plan = ('title = "Signal box"\nmeasure = "metric"\n[masonry]\nunit = "brick-uk"\n[[wall]]\nname = "Track side"\n'
            'length = 3600\nheight = 1500\n[[wall.opening]]\nname = "Hatch"\nfrom_left = 1200\nwidth = 900\n'
            'sill = 530\nheight = 840\nlintel = "steel"\n')
    (page,) = number_sheets(plan_pole_sheets(lay(read_plan(plan, "box.toml")), paper))
    texts = [text.text for text in texts_of(page)]
    assert "AS LAID OUT" in texts and "OR TWO GAUGES" in texts
    together = " ".join(texts)
    assert "7 courses, bed 10.7 mm" in together and "11 courses, bed 11.4 mm" in together
    assert {"76", "151", "530", "606", "1370"} <= set(texts)  # 75.7, 151.4; 530 + 76.4
    assert faults_of(page) == []


def test_gauges_out_of_their_limits_are_not_drawn() -> None:
    layout = lay(load_plan(next(path for path in SAMPLES if path.stem == "high-sill")))
    texts = [text.text for page in number_sheets(plan_pole_sheets(layout, None)) for text in texts_of(page)]
    assert not any(text.startswith(("OR ", "AS LAID OUT")) for text in texts)


@pytest.mark.parametrize("paper", ["letter", "A4"])
def test_every_course_is_numbered_at_least_three_and_a_half_mm_high(paper: str) -> None:
    for name in ("tower", "quay", "shelter"):
        layout = laid(name)[0]
        texts = [text for page in number_sheets(plan_pole_sheets(layout, paper)) for text in texts_of(page)]
        for number in range(1, len(list_poles(layout)[0].tops) + 1):
            assert [text.height for text in texts if text.text == str(number) and text.height >= 3.5], (name, number)


def test_a_head_of_several_openings_names_them_all() -> None:
    """Door and two windows at one head ended in "Window A,..."."""
    plan = ('title = "Waiting room"\nmeasure = "metric"\n[masonry]\nunit = "brick-uk"\n[[wall]]\nname = "Track side"\n'
            'length = 7190\nheight = 2625\n')
    opening = '[[wall.opening]]\nname = "{}"\nfrom_left = {}\nwidth = {}\nsill = {}\nheight = {}\n'
    plan += opening.format("Door", 1122.5, 910, 0, 2100) + opening.format("Window A", 2810, 1135, 900, 1200)
    layout = lay(read_plan(plan + opening.format("Window B", 5000, 1135, 900, 1200), "room.toml"))
    (page,) = number_sheets(plan_pole_sheets(layout, "A4"))
    assert "Window B" in [text.text for text in texts_of(page) if text.text.startswith("Window")]
    assert not any(text.text.endswith("...") for text in texts_of(page))
    assert faults_of(page) == []
