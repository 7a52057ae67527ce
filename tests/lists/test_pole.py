"""The story pole against gauges worked by hand."""

from __future__ import annotations

import pytest

from tests.jobs import INCH, inches, make_job, make_masonry, make_opening, make_wall, pump_house
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lists.pole import answer_gauges, list_poles, set_gauge
from wallplan.plan.load import read_plan


def test_a_block_pole_rises_eight_inches_a_course() -> None:
    (pole,) = list_poles(lay(pump_house()))
    assert pole.tops == tuple(8 * INCH * number for number in range(1, 14))
    assert [(level.height // INCH, level.words) for level in pole.levels] == [
        (40, "sill Window"), (88, "head Door, Window"), (104, "top of bond beam")]
    assert pole.answers == ()


def test_sill_and_head_off_the_coursing_by_one_gauge_and_by_two() -> None:
    """Modular brick, sill 2 ft 9 in., head 7 ft 1 in., worked by hand: one gauge of 85/32 in. misses the sill by 1 1/8 in.
    over course 12; two gauges are 12 courses of 2.75 in. on a bed of 1/2 in. and 20 of 2.6 in. on one of 0.35 in."""
    masonry = make_masonry("brick-modular", tightest_joint=inches("1/4"), widest_joint=inches("1/2"))
    tops = tuple(masonry.unit.height_of_courses(number) for number in range(1, 40))
    found = answer_gauges(make_opening(0, 10, 33 * INCH, 85 * INCH), "A", tops, masonry.unit.bed_joint, masonry)
    assert found is not None and found.below is not None and found.above is not None
    assert (found.one.courses, found.one.height) == (32, round(85 * INCH / 32))
    assert found.one.bed == pytest.approx(0.40625 * INCH, abs=1)
    assert found.sill_off == pytest.approx(1.125 * INCH, abs=1)
    assert (found.below.courses, found.below.bed) == (12, inches("1/2"))
    assert (found.above.courses, found.above.bed) == (20, pytest.approx(0.35 * INCH, abs=1))
    assert found.one.held and found.below.held and found.above.held
    # The hand stops at 11 courses, 29 7/32 in., and fills 3 25/32 in. with a rowlock sill.
    assert found.fill == (11, pytest.approx(inches("3 25/32"), abs=1))


@pytest.mark.parametrize(("off", "met"), [(0, True), ("3/16", True), ("3/8", True), ("7/16", False), ("-1/16", False)])
def test_a_sill_stands_on_a_course_or_in_the_bed_over_it(off: int | str, met: bool) -> None:
    masonry = make_masonry()
    tops = tuple(masonry.unit.height_of_courses(number) for number in range(1, 15))
    opening = make_opening(0, 10, 32 * INCH + (-inches("1/16") if off == "-1/16" else inches(off)), 88 * INCH)
    assert (answer_gauges(opening, "A", tops, masonry.unit.bed_joint, masonry) is None) is met


def test_eaves_and_ridge_of_a_gable_are_on_the_pole() -> None:
    # 15 ft 11 5/8 in. wide at 6 in 12: from 6 ft it rises by a quarter of the width, 47 29/32 in.
    plan = """
        title = "Slip"
        measure = "feet"
        masonry.unit = "block-8"
        [[wall]]
        name = "Front"
        length = "15' 11 5/8"
        height = "6'"
        [[wall.gable]]
        pitch = "6/12"
    """
    (pole,) = list_poles(lay(read_plan(plan, "slip.toml")))
    assert [(level.words, level.height) for level in pole.levels] == [
        ("eaves", 72 * INCH), ("ridge", 72 * INCH + inches("47 29/32"))]


def test_a_gauge_whose_bed_is_out_of_its_limits_is_not_held() -> None:
    unit = make_masonry("block-8").unit
    assert not set_gauge(81 * INCH, 10, unit, (INCH // 4, INCH // 2 - INCH // 16)).held
    with pytest.raises(ValueError, match="at least one course"):
        set_gauge(81 * INCH, 0, unit, (0, 1))


def test_walls_of_one_coursing_share_a_pole() -> None:
    masonry = make_masonry()
    walls = [make_wall(20 * 16 * INCH - inches("3/8"), height * INCH, name=name)
             for name, height in (("A", 80), ("B", 96), ("C", 80))]
    layout = lay(make_job(masonry, *walls))
    assert [[wall.wall.name for wall in pole.walls] for pole in list_poles(layout)] == [["A", "C"], ["B"]]
    assert list_poles(Layout(layout.job, ())) == ()


def test_no_gauge_is_told_whose_courses_have_no_bed_between_them() -> None:
    """3 ft of 8 in. block: five courses would overlap by 0.425 in. each; four leave beds of 1 3/8 in., out of limits."""
    masonry = make_masonry()
    tops = tuple(masonry.unit.height_of_courses(number) for number in range(1, 15))
    found = answer_gauges(make_opening(0, 10, 36 * INCH, 86 * INCH), "A", tops, masonry.unit.bed_joint, masonry)
    assert found is not None and found.below is not None
    assert (found.below.courses, found.below.bed, found.below.held) == (4, inches("1 3/8"), False)
