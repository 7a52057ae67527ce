"""No figure that a wall is built by is left out of its sheets: jambs, ends, control joints, tops of courses, the top."""

from __future__ import annotations

from itertools import combinations, pairwise
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.drawing.sheets import faults_of, ink_of, texts_of, untold
from wallplan.drawing.dimensions import numbered_courses
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.paper import PAPERS
from wallplan.drawing.primitives import Page
from wallplan.drawing.wall_sheet import plan_wall_sheets
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.load import load_plan, read_plan

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))
FEET = 'title = "Stalls"\nmeasure = "feet"\n[masonry]\nunit = "{}"\n[[wall]]\nname = "Front"\n'
METRIC = FEET.replace("feet", "metric")
OPENING = '[[wall.opening]]\nname = "{}"\nfrom_left = "{}"\nwidth = "{}"\nsill = "{}"\nheight = "{}"\n'
STALLS = FEET.format("block-8") + 'length = "57\' 3 5/8"\nheight = "8\'"\n' + "".join(
    OPENING.format(f"Hatch {place}", f"{1 + 6 * place}' 11 5/8", "2' 8 3/8", "3' 4", "2' 8") for place in range(9))


def sheets(layout: Layout, paper: str | None = None) -> list[Page]:
    return list(number_sheets(plan_wall_sheets(layout, (), paper)))


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_jamb_end_and_control_joint_and_the_top_are_told(path: Path, paper: str) -> None:
    layout = lay(load_plan(path))
    assert untold(layout, sheets(layout, paper)) == set()


def test_nine_hatches_close_together_have_all_their_jambs() -> None:
    layout = lay(read_plan(STALLS, "stalls.toml"))
    pages = sheets(layout)
    assert untold(layout, pages) == set()
    assert [faults_of(page) for page in pages] == [[]] * len(pages)
    words = [text.text for page in pages for text in texts_of(page)]
    assert {"Hatch", "0", "8"} <= set(words)
    assert any(word.startswith("Hatch 0 and Hatch 2, each 2'-8") for word in words)


@pytest.mark.parametrize(("courses", "top"), [(35, "2625"), (32, "2400"), (15, "1125")])
def test_the_top_of_a_brick_wall_is_told_whatever_its_number_of_courses(courses: int, top: str) -> None:
    """By pencil: courses of 75 mm."""
    plan = METRIC.format("brick-uk") + f"length = 4490\ncourses = {courses}\n"
    assert {top, str(courses)} <= {text.text for page in sheets(lay(read_plan(plan, "wall.toml"))) for text in texts_of(page)}


def test_a_wall_as_high_as_its_sheet_has_its_height() -> None:
    """The figure beside the top reached over the sheet's edge, and was left out."""
    plan = METRIC.format("brick-uk") + "length = 4490\nheight = 2400\n" + OPENING.format("Window", 1790, 910, 920, 1160)
    assert "2400" in {text.text for text in texts_of(sheets(lay(read_plan(plan, "wall.toml")))[0])}


def test_heights_with_fractions_stand_at_every_course() -> None:
    """Eleven courses to 7 ft 5 in., 8 1/11 in. each: fractions hang lower than whole inches."""
    plan = FEET.format("block-8") + 'length = "17\' 4"\nheight = "7\' 5"\n'
    texts = {text.text for text in texts_of(sheets(lay(read_plan(plan, "wall.toml")))[0])}
    assert {'8 1/16"', "1'-4 3/16\"", "2'-0 1/4\"", "6'-8 15/16\"", "7'-5\""} <= texts


@given(first=st.integers(1, 90), count=st.integers(1, 60), step=st.sampled_from([1, 2, 3, 5, 10]))
def test_numbered_courses_keep_apart_and_end_with_the_last(first: int, count: int, step: int) -> None:
    numbers = numbered_courses(first, first + count - 1, step)
    assert numbers[-1] == first + count - 1
    assert all(other - one >= step for one, other in pairwise(numbers))
    assert all(number % step == 0 for number in numbers[1:-1])


def test_two_figures_in_a_row_are_not_read_as_one() -> None:
    """0 and 327.5 stood a millimetre apart, 5 mm high: 0327.5."""
    plan = METRIC.format("brick-uk") + ("length = 9000\ncourses = 16\n"
                                        '[[wall.pier]]\nname = "Pier"\nfrom_left = 0\nwidth = 327.5\n')
    pages = sheets(lay(read_plan(plan, "wall.toml")))
    row = [text for text in texts_of(pages[0]) if text.anchor == "middle" and text.text.replace(".", "").isdigit()]
    assert {"0", "327.5"} <= {text.text for text in row}
    for one, other in combinations(row, 2):
        if one.y == other.y:
            left, right = sorted((ink_of(one).bounds, ink_of(other).bounds))
            assert right[0] - left[2] > 0.35 * one.height
