"""Paper sizes and scales by the standards that name them."""

from __future__ import annotations

import pytest

from wallplan.drawing.paper import PAPERS, SCALES, UnknownPaper, find_paper, readable_scales
from wallplan.lengths import TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM


@pytest.mark.parametrize(("name", "width", "height"), [
    ("letter", 11 * 25.4, 8.5 * 25.4), ("tabloid", 17 * 25.4, 11 * 25.4), ("A4", 297, 210), ("A3", 420, 297),
])
def test_papers_are_ansi_a_and_b_and_iso_216(name: str, width: float, height: float) -> None:
    assert (PAPERS[name].width, PAPERS[name].height) == pytest.approx((width, height))


def test_a_plan_in_feet_takes_letter_and_a_metric_one_a4() -> None:
    assert find_paper(None, "feet").name == "letter"
    assert find_paper(None, "metric").name == "A4"
    assert find_paper("a3", "feet").name == "A3"


def test_an_unknown_paper_is_refused_with_the_names_of_those_there_are() -> None:
    with pytest.raises(UnknownPaper, match=r'"legal\?" is no paper.*letter, tabloid, A4, A3'):
        find_paper("legal\n", "feet")


def test_fifteen_mm_are_left_blank_on_every_side() -> None:
    assert PAPERS["A4"].usable_width == 267
    assert PAPERS["A4"].turned().usable_height == 267


@pytest.mark.parametrize(("place", "inches"), list(enumerate([1 / 2, 3 / 8, 1 / 4, 3 / 16, 1 / 8])))
def test_a_scale_in_feet_is_what_its_name_says(place: int, inches: float) -> None:
    assert SCALES["feet"][place].on_paper(TICKS_PER_FOOT) == pytest.approx(inches * 25.4)


def test_a_metric_scale_is_what_its_name_says() -> None:
    for scale in SCALES["metric"]:
        assert scale.name == f"1:{scale.ratio}"
        assert scale.on_paper(1000 * TICKS_PER_MM) == pytest.approx(1000 / scale.ratio)
        assert scale.on_wall(scale.on_paper(123_456)) == pytest.approx(123_456, abs=1)


def test_block_is_readable_down_to_a_quarter_inch_and_brick_only_at_larger_scales() -> None:
    assert readable_scales("feet", 8 * TICKS_PER_INCH)[-1].name == "1/4 in = 1 ft"
    assert readable_scales("metric", 75 * TICKS_PER_MM)[-1].name == "1:25"
    assert readable_scales("metric", TICKS_PER_MM)[-1].name == "1:10"
