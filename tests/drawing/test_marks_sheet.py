"""The marks' sheets: every mark on the strip where it lies, and in the table; figures apart at any length."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.drawing.sheets import faults_of, texts_of
from tests.drawing.walls import PLANS, laid
from tests.long_run import examples
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.marks_sheet import plan_marks_sheets
from wallplan.drawing.marks_strip import make_strips
from wallplan.drawing.paper import SCALES
from wallplan.drawing.primitives import Outlines, Strokes
from wallplan.layout.build import lay
from wallplan.lengths import TICKS_PER_MM, print_length
from wallplan.lists.marks import list_marks
from wallplan.plan.load import load_plan, read_plan

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_no_lettering_meets_anything_and_every_mark_is_in_the_table(path: Path) -> None:
    layout = lay(load_plan(path))
    pages = number_sheets(plan_marks_sheets(layout, None))
    for page in pages:
        assert faults_of(page) == []
    texts = [text.text for page in pages for text in texts_of(page) if not text.upright]
    for wall in list_marks(layout):
        for mark in (*wall.odd, *wall.even):
            assert print_length(mark.far, layout.job.measure) in texts


@pytest.mark.parametrize("paper", ["letter", "A4"])
@pytest.mark.parametrize("name", PLANS)
def test_strips_of_every_wall_keep_their_figures_apart(name: str, paper: str) -> None:
    for page in number_sheets(plan_marks_sheets(laid(name)[0], paper)):
        assert faults_of(page) == []


@settings(max_examples=examples(10))
@given(length=st.integers(30, 900), courses=st.integers(1, 12), unit=st.sampled_from(["block-8", "block-12", "brick-modular"]))
def test_random_walls(length: int, courses: int, unit: str) -> None:
    plan = f'title = "Kiosk"\nmeasure = "feet"\n[masonry]\nunit = "{unit}"\n[[wall]]\nname = "A"\n'
    layout = lay(read_plan(f"{plan}length = {length}\ncourses = {courses}\n", "kiosk.toml"))
    for page in number_sheets(plan_marks_sheets(layout, None)):
        assert faults_of(page) == []


def test_marks_on_the_paper_times_the_scale_are_the_layouts() -> None:
    layout = laid("kiosk")[0]
    page, marks = number_sheets(plan_marks_sheets(layout, None))[0], list_marks(layout)[0]
    told = next(text.text for text in texts_of(page) if text.text.startswith("Scale "))
    ratio = next(scale.ratio for scale in SCALES["feet"] if f"Scale {scale.name}." in told)
    odd_row = next(item for item in page.ink if isinstance(item, Outlines) and len(item.boxes) == 2).boxes[0]
    drawn = {round((line.x1 - odd_row.left) * ratio, 1) for item in page.ink if isinstance(item, Strokes)
             for line in item.segments if (line.y1, line.y2) == (odd_row.top, odd_row.bottom)}
    for mark in marks.odd:
        assert any(abs(place - mark.far / TICKS_PER_MM) <= 0.1 for place in drawn)


def test_a_long_wall_is_split_into_strips_that_hold_each_mark_once() -> None:
    (marks,) = list_marks(laid("quay")[0])
    strips = make_strips(marks, "feet", 186.0, laid("quay")[0].job.masonry.module)
    assert len(strips) > 1
    assert [mark for strip in strips for mark in strip.shown(marks.odd)] == list(marks.odd)
    assert [strip.left for strip in strips[1:]] == [strip.right for strip in strips[:-1]]


def test_large_figures_give_way_where_two_rows_of_them_are_taller_than_the_sheet() -> None:
    opening = '[[wall.opening]]\nfrom_left = "{}"\nwidth = "{}"\nsill = "{}"\nheight = "{}"\nlintel = "none"\n'
    plan = ('title = "Landing"\nmeasure = "feet"\n[masonry]\nunit = "brick-king"\nbond = "quarter"\n[[wall]]\nname = "Landing"\n'
            'length = "15\' 11"\nheight = "4\' 0 13/16"\n'
            + opening.format("1' 2 5/8", "2' 10 7/16", "1' 6 15/16", "1' 1 5/16")
            + opening.format("8' 0 7/8", "4' 6 1/16", "8 1/8", "1' 2 1/16"))
    for page in number_sheets(plan_marks_sheets(lay(read_plan(plan, "landing.toml")), None)):
        assert faults_of(page) == []


def test_openings_of_one_name_and_many_numbers_are_told_apart_on_the_strip() -> None:
    windows = "".join(f'[[wall.opening]]\nname = "Window {number}"\nfrom_left = "{number * 6 - 3}\'"\nwidth = "2\' 8"\n'
                      'sill = "3\' 4"\nheight = "4\'"\n' for number in range(1, 9))
    plan = ('title = "Arcade"\nmeasure = "feet"\nsizes = "nominal"\n[masonry]\nunit = "block-8"\n[[wall]]\nname = "Arcade"\n'
            f'length = "52\'"\nheight = "9\' 4"\n{windows}')
    pages = number_sheets(plan_marks_sheets(lay(read_plan(plan, "arcade.toml")), None))
    texts = [text.text for page in pages for text in texts_of(page)]
    assert all(f"W {number}" in texts or f"Window {number}" in texts for number in range(1, 9))
    assert [faults_of(page) for page in pages] == [[]] * len(pages)


def test_columns_stand_closer_where_a_few_rows_would_take_a_second_sheet() -> None:
    """Forty feet with two doors and a control joint: thirteen rows stood alone on a second sheet."""
    plan = ('title = "Boat hall"\nmeasure = "feet"\nsizes = "nominal"\n[masonry]\nunit = "block-12"\n[[wall]]\nname = "Hall wall"\n'
            'length = "40\' 0"\nheight = "16\' 0"\ncontrol_joints = ["16\' 0"]\n')
    opening = '[[wall.opening]]\nname = "{}"\nfrom_left = "{}"\nwidth = "{}"\nheight = "{}"\n{}'
    plan += opening.format("Boat door", "22' 0", "12' 0", "12' 0", 'lintel = "steel"\n')
    plan += opening.format("Door", "4' 0", "3' 4", "7' 4", "")
    (page,) = number_sheets(plan_marks_sheets(lay(read_plan(plan, "hall.toml")), "letter"))
    assert faults_of(page) == []
    assert {"39'-11 5/8\"", "right end", "left Door", "CJ from"} <= {text.text for text in texts_of(page)}
