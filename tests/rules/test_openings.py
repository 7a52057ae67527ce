"""Openings: a lintel too short, missing, broken or off the head, and masonry short of the sill."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.jobs import broken, inches, make_job, make_masonry, make_opening, make_wall, pump_house
from tests.rules.breaking import Pieces, breaks_of, change_course, places, told_of
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.load import read_plan
from wallplan.rules.check import check


@pytest.fixture(scope="module")
def good() -> Layout:
    return lay(pump_house())


def as_stretchers(layout: Layout, right_of: int, left_of: int) -> Layout:
    """Lintel units of course 12 that lie wholly between two distances made plain."""
    def plain(pieces: Pieces) -> Pieces:
        return tuple(
            piece._replace(shape="stretcher")
            if piece.shape == "lintel" and piece.left >= right_of and piece.right <= left_of else piece
            for piece in pieces
        )

    return change_course(layout, 12, plain)


def test_good_lintels_bear_at_least_what_the_plan_asks(good: Layout) -> None:
    # Course 12 begins with a half: joints at 8, 24, 40, ... Lintel units that cover 8 in. beside the door (39 5/8 to 96)
    # begin at 24 in., where a block covers the 3/8 in. that one from 40 in. leaves bare, and end at 103 5/8 in.
    finding = next(one for one in check(good) if one.rule == "openings")
    assert finding.held
    assert 'Door: bears 23 5/8" and 15 5/8"' in finding.figure


def test_lintel_that_ends_at_the_jamb_bears_nothing(good: Layout) -> None:
    # Without the unit from 88 to 103 5/8 in. the door's lintel ends at 87 5/8 in., inside the opening's right jamb at 88.
    told = breaks_of(as_stretchers(good, inches(88), inches(104)), "openings")
    assert places(told) == {(12, inches(88))}
    assert (told[0].figure, told[0].limit) == ("no bearing on the right of Door", '8"')


def test_lintel_too_short_is_told_with_the_bearing_reached(good: Layout) -> None:
    # Without the unit from 24 to 39 5/8 in. it begins at 40 in., 7 5/8 in. before the jamb at 47 5/8.
    told = breaks_of(as_stretchers(good, inches(24), inches(40)), "openings")
    assert places(told) == {(12, inches("47 5/8"))}
    assert (told[0].figure, told[0].limit) == ('7 5/8" on the left of Door', '8"')
    assert '3/8"' in told[0].remedy


def test_a_lintel_that_ends_with_the_wall_is_not_to_be_lengthened() -> None:
    # 4 in. of wall are left of the window, and no lintel reaches past the wall's end.
    window = make_opening(inches(4), inches(52), inches(32), inches(80))
    layout = lay(make_job(make_masonry(), make_wall(inches(144), inches(96), [window])))
    (told,) = (one for one in broken(check(layout)) if one.rule == "openings")
    assert (told.figure, told.remedy) == ('4" on the left of Door', 'move the jamb by 4" into the opening')


def test_missing_lintel_is_told(good: Layout) -> None:
    told = breaks_of(as_stretchers(good, 0, inches(110)), "openings")
    assert [(one.at, one.figure) for one in told] == [(inches("47 5/8"), "no block lintel on the head of Door")]


def test_lintel_with_a_plain_unit_in_it_does_not_span(good: Layout) -> None:
    told = broken(check(as_stretchers(good, inches(56), inches(72))))
    assert {one.rule for one in told} == {"openings"}


def test_masonry_short_of_the_sill_is_told() -> None:
    # The window's sill is said to be at 40 5/8 in. while the course under it ends at 40 in.: more than a bed of 3/8.
    layout = lay(pump_house())
    wall = layout.walls[0]
    door, window = wall.wall.openings
    higher = replace(wall.wall, openings=(door, replace(window, bottom=inches("40 5/8"))))
    told = told_of(replace(layout, walls=(replace(wall, wall=higher),)), "openings")
    assert [(one.course, one.figure) for one in told] == [(5, 'masonry ends 5/8" under the sill of Window')]


def test_precast_lintel_bears_by_its_own_length() -> None:
    door = make_opening(inches("47 5/8"), inches(88), 0, inches(88), lintel="precast")
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(inches("143 5/8"), inches(104), [door])))
    assert not broken(check(layout))

    def shorten(pieces: Pieces) -> Pieces:
        return tuple(
            piece._replace(left=inches(44), length=piece.right - inches(44)) if piece.shape == "precast" else piece
            for piece in pieces
        )

    told = told_of(change_course(layout, 12, shorten), "openings")
    assert [(one.course, one.figure) for one in told] == [(12, '3 5/8" on the left of Door')]


def test_steel_lintel_takes_no_units_place(good: Layout) -> None:
    door = make_opening(inches("47 5/8"), inches(88), 0, inches(88), lintel="steel")
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(inches("143 5/8"), inches(104), [door])))
    assert {piece.shape for piece in layout.walls[0].courses[11].pieces} <= {"stretcher", "corner"}
    assert next(one for one in check(layout) if one.rule == "openings").held


def test_a_thin_rip_under_a_sill_hides_what_ends_below_it() -> None:
    # Sill at 33 in. in 8/3 in. courses: course 13 is ripped to meet it, so the course below it ends under no sill.
    plan = """
        title = "Sill"
        measure = "feet"
        [masonry]
        unit = "brick-modular"
        [[wall]]
        name = "W"
        length = "11' 11 5/8"
        height = "8' 8"
        [[wall.opening]]
        name = "Light"
        from_left = "3' 11 5/8"
        width = "3' 4 3/8"
        sill = "2' 9"
        height = "4' 4"
    """
    findings = check(lay(read_plan(plan, "sill.toml")))
    # The head at 85 in. is 1/3 in. under the line of 32 courses, and the course over it stands on a bed of 5/12 in.
    assert [(finding.rule, finding.figure) for finding in findings if not finding.held][1:] == [
        ("openings", 'masonry begins 3/4" over the head of Light')]
    assert [finding.remedy for finding in findings if finding.rule == "openings"] == ["put the head at 7'-1 5/16\""]


@pytest.mark.parametrize("head, figure, mend", [
    # Course 9 ends at 2025 mm, so a lintel on it stands at 2035; course 10 ends at 2250, so at 2260.
    (2040, "the lintel's underside is 5 mm below the head of Door", "put the head at 2035 mm"),
    (2240, "the lintel's underside is 20 mm above the head of Door", "put the head at 2250 mm"),
])
def test_a_head_a_little_off_the_course_line_is_told_with_where_the_lintel_stands(head: int, figure: str, mend: str) -> None:
    plan = f"""
        title = "Shed"
        measure = "metric"
        [masonry]
        unit = "block-uk-100"
        [[wall]]
        name = "Front"
        length = 4490
        height = 2700
        [[wall.opening]]
        name = "Door"
        from_left = 1340
        width = 910
        height = {head}
        lintel = "precast"
    """
    told = broken(check(lay(read_plan(plan, "shed.toml"))))
    (off,) = (one for one in told if one.rule == "openings")
    assert (off.figure, off.remedy) == (figure, mend)
    # The lintel that hangs 5 mm into the opening is told so by the cover, not as 910 mm to be cut off.
    assert [one.figure for one in told if one.rule == "cover"] == (["a piece reaches 5 mm into an opening"] if head < 2100 else [])


def test_a_lintel_that_hangs_in_is_told_alike_in_a_wall_with_a_stepped_top() -> None:
    # 111 in. are 14 courses with beds closed to 17/56 in.: the head, 56 in. up, is 1/2 in. over the 7th, at 55 1/2.
    plan = """
        title = "Slip"
        measure = "feet"
        [masonry]
        unit = "block-6"
        [[wall]]
        name = "Front"
        length = "15' 11 5/8"
        height = "111"
        [[wall.opening]]
        name = "Door"
        from_left = "7' 4"
        width = "40"
        height = "56"
        lintel = "precast"
        [[wall.top_step]]
        at = "12'"
        up = "8"
    """
    told = broken(check(lay(read_plan(plan, "slip.toml"))))
    assert [one.figure for one in told if one.rule == "cover"] == ['a piece reaches 3/16" out of the wall']
