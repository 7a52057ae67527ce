"""Plumb head joints: one course's joint off the others' is told; a joint moved beside a jamb is not."""

from __future__ import annotations

import pytest

from tests.jobs import inches, make_job, make_masonry, make_opening, make_wall, pump_house
from tests.rules.breaking import breaks_of, change_course, places, shift_joint, told_of
from wallplan.layout.build import lay
from wallplan.layout.model import Layout, Piece
from wallplan.plan.load import read_plan
from wallplan.rules.check import check


@pytest.fixture(scope="module")
def good() -> Layout:
    return lay(pump_house())


def test_joint_an_inch_out_of_plumb_is_told_with_how_far_and_which_way(good: Layout) -> None:
    # Even courses begin with a half: their first joint stands at 7 5/8 in. In course 6 it is put an inch further on.
    told = breaks_of(shift_joint(good, 6, 0, inches(1)), "plumb")
    assert places(told) == {(6, inches("8 5/8"))}
    assert told[0].figure == '1" out of plumb'
    assert told[0].limit == "plumb with the other even courses"
    assert told[0].remedy == 'move this joint 1" to the left'


def test_odd_courses_are_judged_by_odd_ones(good: Layout) -> None:
    # Course 3 ends with full blocks; its last joint stands 16 in. before the end, at 223 5/8 in. Moved back by 2 in.
    # the piece before it is 14 in., the last one 18 in. long: too long as well, so it is made two.
    def split(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
        first, second = pieces[0], pieces[1]
        return (
            first._replace(length=inches("13 5/8"), piece="cut", mark="A"),
            second._replace(left=inches(14), length=inches("5 5/8"), piece="cut", mark="B"),
            second._replace(left=inches(20), length=inches("11 5/8"), piece="cut", mark="C"),
            *pieces[2:],
        )

    told = told_of(change_course(good, 3, split), "plumb")
    assert {(3, inches("13 5/8")), (3, inches("19 5/8"))} <= places(told)
    assert {one.limit for one in told} == {"plumb with the other odd courses"}


def test_missing_joint_of_a_course_is_told() -> None:
    # Bricks of 8 in.: course 3 laid with one piece where the others have two has no joint at 15 5/8 in.
    layout = lay(make_job(make_masonry("brick-modular", joints_move=False), make_wall(inches("31 5/8"), inches(16))))

    def join(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
        one, two, *rest = pieces
        return (one._replace(length=two.right - one.left), *rest)

    told = told_of(change_course(layout, 3, join), "plumb")
    assert [(one.course, one.at, one.figure) for one in told] == [
        (3, inches("7 5/8"), "a joint of the other courses is missing here")]


def test_joint_moved_beside_a_jamb_is_told_with_the_held_rule() -> None:
    # A window whose left jamb stands 50 in. from the end: odd courses have a joint at 48, 2 in. from that jamb. Dropped, it
    # would leave a piece of 18 in., so the two odd courses beside the window (3 and 5) have it elsewhere.
    window = make_opening(inches("49 5/8"), inches(82), inches(16), inches(48), lintel="steel", name="Hatch")
    job = make_job(make_masonry(joints_move=False), make_wall(inches("191 5/8"), inches(64), [window]))
    finding = next(one for one in check(lay(job)) if one.rule == "plumb")
    assert (finding.held, finding.figure) == (True, "plumb from footing to top; 2 courses have a joint moved beside Hatch")


def test_good_wall_is_plumb_from_footing_to_top(good: Layout) -> None:
    finding = next(one for one in check(good) if one.rule == "plumb")
    assert (finding.held, finding.figure) == (True, "plumb from footing to top")


def test_drift_of_opened_joints_is_no_break() -> None:
    # 79 3/8 in. is 1/4 in. short of five blocks: joints close by 1/16 in. in odd courses.
    layout = lay(make_job(make_masonry(), make_wall(inches("79 3/8"), inches(40))))
    finding = next(one for one in check(layout) if one.rule == "plumb")
    assert finding.held


def test_a_layered_lintel_follows_no_joints_where_its_opening_parts_all_other_courses() -> None:
    # 12 courses of 8 in., the door's head at 7 ft: course 11 carries the lintel as the only odd course over the door.
    plan = """
        title = "Shed"
        measure = "feet"
        [masonry]
        unit = "block-8"
        [[wall]]
        name = "Front"
        length = "20'"
        height = "8'"
        [[wall.opening]]
        name = "Door"
        from_left = "3' 11 1/4"
        width = "3'"
        height = "7'"
    """
    assert not [one for one in check(lay(read_plan(plan, "shed.toml"))) if one.rule == "plumb" and not one.held]
