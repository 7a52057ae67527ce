"""Head joints: too tight, too wide, or unequal in one run, each with its width and the plan's limits."""

from __future__ import annotations

import pytest

from tests.jobs import broken, inches, make_job, make_masonry, make_wall
from tests.rules.breaking import breaks_of, change_piece, places, told_of
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.rules.check import check


@pytest.fixture(scope="module")
def good() -> Layout:
    """Five blocks a course in odd courses; joints from 1/4 to 1/2 in."""
    return lay(make_job(make_masonry(), make_wall(inches("79 5/8"), inches(40))))


def shortened(layout: Layout, by: str) -> Layout:
    """The second piece of course 2 cut back at its right end, so that the joint there opens."""
    piece = layout.walls[0].courses[1].pieces[1]
    return change_piece(layout, 2, 1, length=piece.length - inches(by), piece="cut", mark="A")


def test_joint_too_wide_is_told_with_its_width(good: Layout) -> None:
    # 3/8 + 1/4 = 5/8 in. against 1/2 in. at most; the piece ends at 8 + 15 5/8 - 1/4 in.
    told = breaks_of(shortened(good, "1/4"), "joints")
    assert places(told) == {(2, inches("23 3/8"))}
    assert (told[0].figure, told[0].limit) == ('5/8"', '1/4" to 1/2"')
    assert "1/8" in told[0].remedy


def test_joint_too_tight_is_told_with_its_width(good: Layout) -> None:
    # Lengthened by 1/4 in., the piece leaves 1/8 in.
    piece = good.walls[0].courses[1].pieces[1]
    harmed = change_piece(good, 2, 1, length=piece.length + inches("1/4"))
    told = told_of(harmed, "joints")
    assert places(told) == {(2, inches("23 7/8"))}
    assert (told[0].figure, told[0].limit) == ('1/8"', '1/4" to 1/2"')


def test_unequal_joints_of_one_run_are_told_even_within_the_limits(good: Layout) -> None:
    told = breaks_of(shortened(good, "1/16"), "joints")
    assert places(told) == {(2, inches("23 9/16"))}
    assert (told[0].figure, told[0].limit) == ('3/8" to 7/16" in one run', "equal in one run")


def test_one_tick_of_rounding_is_no_difference(good: Layout) -> None:
    piece = good.walls[0].courses[1].pieces[1]
    assert not broken(check(change_piece(good, 2, 1, length=piece.length - 1, piece="full")))


def test_wall_of_one_piece_a_course_has_no_head_joints() -> None:
    layout = lay(make_job(make_masonry("block-8", "stack"), make_wall(inches("15 5/8"), inches(24))))
    finding = next(one for one in check(layout) if one.rule == "joints")
    assert finding.held and finding.figure == "no head joints"
