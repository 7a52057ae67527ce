"""Shapes: what stands at ends, jambs and control joints, and what a lintel takes the place of."""

from __future__ import annotations

from tests.jobs import inches, make_masonry, make_opening, make_wall
from wallplan.layout.model import Shape
from wallplan.layout.shapes import Heading, set_lintels, shape_spots
from wallplan.layout.spots import Spot
from wallplan.plan.coursing import Row

JOINT, HEIGHT = inches("3/8"), inches("7 5/8")


def row(*nominal: int, shape: Shape = "stretcher") -> list[Spot]:
    """A run of pieces from the wall's left end, their lengths in nominal inches."""
    spots, left = list[Spot](), 0
    for length in nominal:
        spots.append(Spot(left, inches(length) - JOINT, JOINT, HEIGHT, "full" if length == 16 else "half", shape, None))
        left += inches(length)
    return spots


def course(number: int = 1) -> Row:
    """A course of 8 in. block by its number from the foot."""
    return Row(number, inches(8 * (number - 1)), inches(8 * number), HEIGHT, "regular")


def shapes(spots: list[Spot]) -> list[Shape]:
    return [spot.shape for spot in spots]


def test_corner_units_at_both_ends() -> None:
    wall = make_wall(inches("63 5/8"), inches(8))
    assert shapes(shape_spots(row(16, 16, 16, 16), wall, make_masonry(), course())) == [
        "corner", "stretcher", "stretcher", "corner"]


def test_sash_units_on_both_sides_of_a_control_joint() -> None:
    # The joint between the second and the third block: from 31 5/8 to 32 in., its centre at 31 13/16.
    wall = make_wall(inches("63 5/8"), inches(8), control_joints=[inches("31 13/16")])
    assert shapes(shape_spots(row(16, 16, 16, 16), wall, make_masonry(), course())) == [
        "corner", "sash", "sash", "corner"]


def test_bond_beam_goes_before_corner_and_a_lintel_before_both() -> None:
    wall = make_wall(inches("31 5/8"), inches(8), bond_beams=[1])
    assert shapes(shape_spots(row(16, 16), wall, make_masonry(), course())) == ["bond beam", "bond beam"]
    lintel = row(16, 16, shape="lintel")
    assert shapes(shape_spots(lintel, wall, make_masonry(), course())) == ["lintel", "lintel"]


def test_family_without_shapes_has_stretchers_only() -> None:
    wall = make_wall(inches("31 5/8"), inches(8), bond_beams=[1])
    assert shapes(shape_spots(row(16, 16), wall, make_masonry("block-uk-100"), course())) == ["stretcher"] * 2


def test_block_lintel_is_every_unit_from_bearing_to_bearing() -> None:
    # From 20 to 50 in.: the units at 16 to 31 5/8, 32 to 47 5/8 and 48 to 63 5/8.
    laid = set_lintels(row(16, 16, 16, 16, 16), (Heading("block", inches(20), inches(50), 0),))
    assert shapes(laid) == ["stretcher", "lintel", "lintel", "lintel", "stretcher"]


def test_bearing_that_ends_in_a_joint_takes_the_next_unit_too() -> None:
    # To 47 3/4 in., in the joint behind 47 5/8: only the unit from 48 in. covers it.
    laid = set_lintels(row(16, 16, 16, 16, 16), (Heading("block", inches(20), inches("47 3/4"), 0),))
    assert shapes(laid) == ["stretcher", "lintel", "lintel", "lintel", "stretcher"]


def test_precast_lintel_is_one_piece_in_their_place() -> None:
    laid = set_lintels(row(16, 16, 16, 16), (Heading("precast", inches(20), inches(40), 0),))
    assert [(spot.left, spot.right, spot.shape) for spot in laid] == [
        (0, inches("15 5/8"), "stretcher"), (inches(16), inches("47 5/8"), "precast"),
        (inches(48), inches("63 5/8"), "stretcher")]


def test_lintel_of_another_run_changes_nothing() -> None:
    assert set_lintels(row(16, 16), (Heading("block", inches(100), inches(140), 0),)) == row(16, 16)


def test_jambs_show_plain_ends() -> None:
    door = make_opening(inches("31 5/8"), inches(64), 0, inches(8))
    wall = make_wall(inches("95 5/8"), inches(8), [door])
    assert shapes(shape_spots(row(16, 16), wall, make_masonry(), course())) == ["corner", "corner"]


def test_a_jamb_shows_no_plain_end_under_its_sill_nor_over_its_head() -> None:
    # A window from 16 to 32 in. high: beside courses 3 and 4, over 2 and under 5, whose joints are in line with its jambs.
    window = make_opening(inches("31 5/8"), inches(64), inches(16), inches(32))
    wall = make_wall(inches("95 5/8"), inches(40), [window])
    for number, plain in ((2, "stretcher"), (3, "corner"), (4, "corner"), (5, "stretcher")):
        laid = shape_spots(row(16, 16, 16, 16, 16, 16), wall, make_masonry(), course(number))
        assert shapes(laid) == ["corner", plain, "stretcher", "stretcher", plain, "corner"]
