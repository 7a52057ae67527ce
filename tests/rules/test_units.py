"""Kinds of units: what bond beams, ends, jambs, control joints, heads and corners ask for, and who counts a piece."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.jobs import broken, inches, make_job, make_masonry, make_wall, pump_house
from tests.rules.breaking import Pieces, breaks_of, change_course, change_courses, change_piece, places
from wallplan.layout.build import lay
from wallplan.layout.model import Layout, Notch, Rake, Shape
from wallplan.rules.check import check


@pytest.fixture(scope="module")
def good() -> Layout:
    """A door and a window, a bond beam as course 13."""
    return lay(pump_house())


@pytest.fixture(scope="module")
def parted() -> Layout:
    """Four courses of eight blocks with a control joint in the middle."""
    wall = make_wall(inches("127 5/8"), inches(32), control_joints=(inches(64) - inches("3/16"),))
    return lay(make_job(make_masonry(joints_move=False), wall))


def test_a_good_wall_has_the_kinds_that_its_places_ask_for(good: Layout, parted: Layout) -> None:
    for layout in (good, parted):
        assert next(one for one in check(layout) if one.rule == "units").held


def test_a_plain_unit_in_a_bond_beam_is_told(good: Layout) -> None:
    # Course 13 begins with a block: the fourth stands at 48 in.
    told = breaks_of(change_piece(good, 13, 3, shape="stretcher"), "units")
    assert [(one.course, one.at, one.figure) for one in told] == [
        (13, inches(48), "a stretcher where a bond-beam unit is asked for")]


def test_a_bond_beam_that_is_left_out_is_told_all_along(good: Layout) -> None:
    plain = change_course(good, 13, lambda pieces: tuple(piece._replace(shape="stretcher") for piece in pieces))
    told = breaks_of(plain, "units")
    assert len(told) == len(good.walls[0].courses[12].pieces) and {one.course for one in told} == {13}


def test_a_bond_beam_in_the_wrong_course_is_told(good: Layout) -> None:
    assert places(breaks_of(change_piece(good, 4, 1, shape="bond beam"), "units")) == {(4, inches(8))}


@pytest.mark.parametrize(("shape", "called"), [
    ("sash", "a sash unit where a stretcher is asked for"), ("corner", "a corner unit where a stretcher is asked for"),
    ("lintel", "a lintel unit where none belongs"), ("precast", "a precast lintel where none belongs"),
    ("return", "another wall's end where none belongs"), ("corner L", "an L corner unit where none belongs"),
    ("header", "a header where none belongs"), ("closer", "a closer where none belongs"),
])
def test_any_other_kind_in_the_middle_of_a_plain_course_is_told(good: Layout, shape: Shape, called: str) -> None:
    # Course 3, its second block, from 16 in.; that a piece of the wall is not another wall's end is told as well.
    told = [one for one in broken(check(change_piece(good, 3, 1, shape=shape))) if one.rule == "units"]
    assert (3, inches(16), called) in [(one.course, one.at, one.figure) for one in told]


@pytest.mark.parametrize(("place", "at"), [(0, "0"), (2, "32"), (-1, "224")])
def test_a_stretcher_where_a_plain_end_shows_is_told(good: Layout, place: int, at: str) -> None:
    # Course 3: the wall's ends, and the block that ends at the door's left jamb, 47 5/8 in.
    told = breaks_of(change_piece(good, 3, place, shape="stretcher"), "units")
    assert [(one.course, one.at, one.figure) for one in told] == [
        (3, inches(at), "a stretcher where a corner unit is asked for")]


def test_a_corner_unit_in_line_with_a_jamb_but_under_its_sill_is_told(good: Layout) -> None:
    # The window's left jamb, 143 5/8 in.; its sill, 40 in., lies on course 5. The unit from 128 in. is a plain one.
    place = next(n for n, piece in enumerate(good.walls[0].courses[4].pieces) if piece.right == inches("143 5/8"))
    assert good.walls[0].courses[4].pieces[place].shape == "stretcher"
    assert places(breaks_of(change_piece(good, 5, place, shape="corner"), "units")) == {(5, inches(128))}


def test_a_plain_unit_at_a_control_joint_is_told(parted: Layout) -> None:
    place = next(n for n, piece in enumerate(parted.walls[0].courses[2].pieces) if piece.left == inches(64))
    told = breaks_of(change_piece(parted, 3, place, shape="stretcher"), "units")
    assert [(one.course, one.at, one.figure) for one in told] == [
        (3, inches(64), "a stretcher where a sash unit is asked for")]


def test_a_piece_that_is_counted_in_another_wall_is_told(good: Layout) -> None:
    told = breaks_of(change_piece(good, 3, 1, of="Elsewhere"), "units")
    assert [(one.course, one.at, one.figure) for one in told] == [(3, inches(16), "counted in Elsewhere")]


def test_a_slope_or_a_notch_in_a_square_wall_is_told(good: Layout) -> None:
    height = inches("7 5/8")
    for sawn in ({"rake": Rake(height, height, 0, inches(8))}, {"notch": Notch(0, inches(4), inches(1))}):
        assert {one.figure for one in broken(check(change_piece(good, 3, 1, **sawn))) if one.rule == "units"} == {
            "sawn to a slope or notched in a wall without either"}


def test_a_back_behind_a_wall_one_unit_thick_is_told(good: Layout) -> None:
    backed = change_courses(good, lambda course: replace(course, backing=course.pieces[:2] if course.number == 3 else ()))
    assert [(one.course, one.figure) for one in breaks_of(backed, "units")] == [(3, "2 pieces behind the face")]


def test_a_lintel_that_goes_on_past_its_bearing_is_told(good: Layout) -> None:
    # The window's right jamb is at 192 in., the bearing ends at 200; the unit from 216 in. of course 12 lies past it.
    place = next(n for n, piece in enumerate(good.walls[0].courses[11].pieces) if piece.left == inches(216))
    assert places(breaks_of(change_piece(good, 12, place, shape="lintel"), "units")) == {(12, inches(216))}


def test_a_unit_of_which_the_family_has_no_kinds_is_a_stretcher_everywhere() -> None:
    def name_corner(pieces: Pieces) -> Pieces:
        return (pieces[0]._replace(shape="corner"), *pieces[1:])

    layout = lay(make_job(make_masonry("brick-modular"), make_wall(inches("31 5/8"), inches(8), bond_beams=(1,))))
    assert next(one for one in check(layout) if one.rule == "units").held
    assert places(breaks_of(change_course(layout, 2, name_corner), "units")) == {(2, 0)}
