"""Control joints: crossed by a piece, too wide, too narrow, off their centre."""

from __future__ import annotations

import pytest

from tests.jobs import INCH, inches, make_job, make_masonry, make_wall
from tests.rules.breaking import Pieces, breaks_of, change_course, change_piece, places, told_of
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.rules.check import check

# The centre of the joint between the fourth and the fifth block: 63 5/8 in. and half of 3/8 in.
CENTRE = inches("63 13/16")


@pytest.fixture(scope="module")
def good() -> Layout:
    wall = make_wall(inches("127 5/8"), inches(32), control_joints=(CENTRE,))
    return lay(make_job(make_masonry(joints_move=False), wall))


def test_good_joint_is_straight_through_all_courses(good: Layout) -> None:
    finding = next(one for one in check(good) if one.rule == "control joints")
    assert (finding.held, finding.figure, finding.limit) == (True, "1 through 4 courses", '3/8" wide in every course')


def test_piece_across_the_joint_is_told(good: Layout) -> None:
    # In course 2 both sides begin and end with halves: 8 in. before and 8 in. behind the joint made one block.
    def bridge(pieces: Pieces) -> Pieces:
        before = next(piece for piece in pieces if piece.right == inches("63 5/8"))
        behind = next(piece for piece in pieces if piece.left == inches(64))
        laid = [piece for piece in pieces if piece not in (before, behind)]
        return tuple(sorted([*laid, before._replace(length=behind.right - before.left, piece="full", shape="stretcher")]))

    told = breaks_of(change_course(good, 2, bridge), "control joints")
    assert places(told) == {(2, CENTRE)}
    assert (told[0].figure, told[0].limit) == ("a piece crosses it", "straight through")


def test_joint_too_wide_is_told(good: Layout) -> None:
    place = next(n for n, piece in enumerate(good.walls[0].courses[2].pieces) if piece.right == inches("63 5/8"))
    harmed = change_piece(good, 3, place, length=inches("15 3/8"), piece="cut", mark="A")
    told = told_of(harmed, "control joints")
    assert [(one.course, one.at, one.figure) for one in told] == [(3, CENTRE, '5/8"')]


def test_joint_off_its_centre_is_told(good: Layout) -> None:
    # As wide as it should be, but an eighth too far to the right.
    def shift(pieces: Pieces) -> Pieces:
        laid = []
        for piece in pieces:
            if piece.right == inches("63 5/8"):
                laid.append(piece._replace(length=piece.length + INCH // 8, piece="cut", mark="A"))
            elif piece.left == inches(64):
                left = piece.left + INCH // 8
                laid.append(piece._replace(left=left, length=piece.right - left, piece="cut", mark="B"))
            else:
                laid.append(piece)
        return tuple(laid)

    told = told_of(change_course(good, 1, shift), "control joints")
    assert [(one.course, one.at, one.figure) for one in told] == [(1, CENTRE, '1/8" off its centre')]
