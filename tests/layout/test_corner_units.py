"""L corner units: pieces by hand, where they save the cut, the check, the order."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tests.jobs import broken, inches, make_masonry, make_opening
from tests.layout.buildings import IN, OUT, build, rectangle, row_of
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lists.order.compose import list_order
from wallplan.plan.job import CornerUnit
from wallplan.planner import lay_plan, name_broken_rules
from wallplan.rules.check import check
from wallplan.rules.in_plan import check_in_plan

STORE = Path(__file__).parents[2] / "samples" / "chain-store-l-corners.toml"


def lay_rectangle(unit: str, corner_unit: CornerUnit, across: int = 128, deep: int = 96) -> Layout:
    masonry = make_masonry(unit, joints_move=False, corner_unit=corner_unit)
    return lay(rectangle(masonry, inches(across) - masonry.joint, inches(deep) - masonry.joint, inches(32)))


@pytest.mark.parametrize("unit", ["block-6", "block-10", "block-12"])
def test_a_wall_with_l_corner_units_bonds_as_if_it_were_8_in_thick(unit: str) -> None:
    # The trade's L shows 16 in. on one face and 8 in. on the other (from memory): pieces and joints of every course are
    # those of an 8 in. wall, 16s, and 8 showing, then 16s; nothing is cut.
    layout, plain = lay_rectangle(unit, "L"), lay_rectangle("block-8", "plain")
    assert broken(check(layout)) == []
    for wall in range(4):
        for course in range(1, 5):
            assert row_of(layout, wall, course) == row_of(plain, wall, course)
    corners = [piece for wall in layout.walls for course in wall.courses for piece in course.pieces if piece.shape == "corner L"]
    assert len(corners) == 4 * 4  # one in each course of each corner
    assert {piece.piece for piece in corners} == {"full"}


@pytest.mark.parametrize("unit", ["block-6", "block-10", "block-12"])
def test_l_units_fill_outside_and_inside_corners_without_a_gap(unit: str) -> None:
    masonry = make_masonry(unit, joints_move=False, corner_unit="L")
    joint = masonry.joint
    layout = lay(build(masonry, inches(32), (inches(96) - joint, OUT), (inches(64) - joint, OUT), (inches(48), IN),
                       (inches(48), OUT), (inches(48) - joint, OUT), (inches(112) - joint, OUT)))
    # Where L units are asked for everywhere, one that these lengths leave no tail is laid so, and told: in 10 in. walls only.
    told = {finding.figure.rpartition(":")[2] for finding in broken(check(layout))}
    assert told == ({" its tail is under the least piece"} if unit == "block-10" else set())
    (plan,) = check_in_plan(layout)
    assert plan.held


def test_where_it_saves_the_l_unit_stands_only_where_it_saves_the_cut() -> None:
    # 6 in. walls of 128 by 96 in. need cuts with plain units and none with L units; 8 in. walls have no L unit to take.
    plain, where = (lay_rectangle("block-6", way) for way in ("plain", "L where it saves"))
    assert sum(wall.cutting for wall in plain.walls) > 0 == sum(wall.cutting for wall in where.walls)
    # Plain corners do without a cut: sides of 16 n + t, one end through, one stopped.
    layout = lay_rectangle("block-6", "L where it saves", 102, 70)
    shapes = {piece.shape for wall in layout.walls for course in wall.courses for piece in course.pieces}
    assert "corner L" not in shapes
    assert sum(wall.cutting for wall in layout.walls) == 0


def test_plain_corners_stay_plain_unless_the_plan_asks() -> None:
    layout = lay_rectangle("block-12", "plain")
    assert "corner L" not in {piece.shape for wall in layout.walls for course in wall.courses for piece in course.pieces}


def test_an_l_unit_sawn_short_and_one_that_returns_too_far_are_told() -> None:
    layout = lay_rectangle("block-12", "L")
    wall = next(number for number in range(4) if layout.walls[number].courses[0].pieces[-1].shape == "corner L")
    course = layout.walls[wall].courses[0]
    short = course.pieces[-1]._replace(left=course.pieces[-1].right - inches(10), length=inches(10))
    courses = (replace(course, pieces=(*course.pieces[:-1], short)), *layout.walls[wall].courses[1:])
    walls = tuple(replace(one, courses=courses) if number == wall else one for number, one in enumerate(layout.walls))
    figures = [finding.figure for finding in broken(check(replace(layout, walls=walls)))]
    assert any(figure.endswith("is sawn to 10\": its tail is under the least piece") for figure in figures)
    # Were the L a plain block 12 in. deep, it would stand where the other wall's next unit is.
    plain = tuple(replace(one, courses=tuple(replace(each, pieces=tuple(
        piece._replace(shape="corner") if piece.shape == "corner L" else piece for piece in each.pieces))
        for each in one.courses)) for one in layout.walls)
    assert any("take the same place" in finding.figure for finding in broken(check_in_plan(replace(layout, walls=plain))))


def test_the_order_counts_one_l_unit_a_course_and_corner() -> None:
    # Twelve courses, four corners: 48; 5 % spare 2.4, up to 3.
    layout = lay_plan(STORE)
    assert broken(check(layout)) == []
    assert sum(wall.cutting for wall in layout.walls) == 0
    (line,) = (line for line in list_order(layout).lines if line.item == "block-12 full, corner L")
    assert (line.net, line.spare) == (48, 3)


def test_an_l_unit_that_has_no_room_is_told_where_it_was_asked_for() -> None:
    # A jamb 14 in. from the corner: the L unit's 15 5/8 in. find no room.
    masonry = make_masonry("block-12", joints_move=False, corner_unit="L")
    side = inches(96) - masonry.joint
    door = make_opening(inches(14), inches(50), 0, inches(32), "steel", inches(4))
    layout = lay(build(masonry, inches(32), (side, OUT), (side, OUT), (side, OUT), (side, OUT), openings={0: (door,)}))
    told = name_broken_rules(layout)
    assert any(finding.figure == "the L corner unit of wall 0 is sawn to 14\": its tail is under the least piece" for finding in told)
    assert {(finding.rule, finding.wall) for finding in told} == {(f.rule, f.wall) for f in broken(check(layout))}


def test_a_kept_bond_is_kept_over_a_long_wall_whose_joints_may_move() -> None:
    """24 x 30 ft in 10 in. block: 22 joints could take the 2 in. that a corner is off, and would end 6 in. lapped all along.

    The trade's table has 10 in. showing and then a 14 in. piece at each corner, and 8 in. of lap everywhere.
    """
    masonry = make_masonry("block-10", keep_bond=True)
    layout = lay(rectangle(masonry, inches(360) - masonry.joint, inches(288) - masonry.joint, inches(16)))
    assert broken(check(layout)) == []
    for wall in layout.walls:
        own = [piece for course in wall.courses for piece in course.pieces if piece.of == wall.wall.name]
        assert [piece.length for piece in own if piece.piece == "cut"] == [inches("13 5/8")] * 2
        odd, even = ([piece.left for piece in course.pieces[1:]] for course in wall.courses)
        inner = [joint for joint in even if min(odd) <= joint <= max(odd)]
        # The joint beside the other wall's end is 10 in. from the corner and 6 from the first: it is no part of the bond.
        assert all(min(abs(joint - other) for other in odd) == inches(8) for joint in inner[1:-1])
