"""Openings against courses of 8 in., by hand: course n reaches from 8(n - 1) to 8n in."""

from __future__ import annotations

from tests.jobs import inches, make_masonry, make_opening, make_wall
from wallplan.layout.reach import Reach, reach_openings
from wallplan.plan.coursing import set_coursing


def reach(bottom: str, top: str, height: int = 104) -> Reach:
    opening = make_opening(inches(24), inches(64), inches(bottom), inches(top))
    wall = make_wall(inches(96), inches(height), [opening])
    return reach_openings(wall, set_coursing(wall, make_masonry()))[0]


def test_window_on_the_coursing_cuts_whole_courses() -> None:
    # 40 to 88 in. are courses 6 to 11; the lintel stands in course 12.
    found = reach("40", "88")
    assert (found.first, found.last, found.lintel_course) == (6, 11, 12)
    assert found.partly == ()


def test_door_begins_in_course_one() -> None:
    found = reach("0", "88")
    assert (found.first, found.last, found.sill_course) == (1, 11, None)


def test_opening_up_to_the_top_has_no_lintel() -> None:
    found = reach("40", "104")
    assert (found.first, found.last, found.lintel_course) == (6, 13, None)


def test_sill_within_a_bed_above_a_course_line_is_on_it() -> None:
    # 40 3/8 in. is the underside of the units of course 6: the sill lies where their bed would.
    found = reach("40 3/8", "88")
    assert (found.sill, found.first, found.sill_course) == (inches(40), 6, None)


def test_sill_inside_a_course_leaves_it_laid_in_layers() -> None:
    # 44 in. is inside course 6 (40 to 48); whole courses are cut from 7 on.
    found = reach("44", "88")
    assert (found.sill_course, found.first) == (6, 7)


def test_head_inside_a_course_has_its_lintel_there() -> None:
    # 84 in. is inside course 11 (80 to 88), which carries the lintel above it; courses to 10 are cut whole.
    found = reach("0", "84")
    assert (found.last, found.head_course, found.lintel_course) == (10, 11, 11)


def test_head_too_near_the_next_line_goes_up_to_it() -> None:
    # From 87 in. a lintel ripped to 1 in. less a bed would be left in course 11: it stands in course 12.
    found = reach("0", "87")
    assert (found.last, found.head_course, found.lintel_course) == (11, None, 12)


def test_opening_within_one_course_cuts_none_whole() -> None:
    found = reach("42", "46")
    assert found.first > found.last
    assert found.partly == (6,)


def test_head_just_over_a_course_line_has_its_lintel_on_the_course_below() -> None:
    # 88 3/8 in. is the bed's top. At 88 5/8 in. a rip of 1/4 in. would have to lie under the lintel: no piece, so there is none.
    for head in ("88 1/2", "88 3/4"):
        found = reach("0", head)
        assert (found.head, found.last, found.head_course, found.lintel_course) == (inches(88), 11, None, 12)
    assert reach("0", "89").head_course == 12


def test_sill_just_over_a_course_line_opens_the_whole_course() -> None:
    # 40 in. is a course line; up to two beds over it no rip is low enough, so the bed under the sill is thicker.
    for sill in ("40 1/2", "40 3/4"):
        found = reach(sill, "88")
        assert (found.sill, found.first, found.sill_course) == (inches(40), 6, None)
    assert reach("41", "88").sill_course == 6
