"""Walls as customers ask for them, each with what a mason found amiss in its layout once."""

from __future__ import annotations

from tests.jobs import broken, heads_of, inches
from wallplan.drawing.opening_labels import find_bearings
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lists.order.sawing import nest_cuts
from wallplan.plan.load import read_plan
from wallplan.planner import name_broken_rules
from wallplan.rules.check import check


def laid(plan: str) -> Layout:
    return lay(read_plan('title = "Ferry landing"\n' + plan, "landing.toml"))


def test_a_pier_a_hair_under_the_bearing_is_not_told_as_held_before_it_is_measured() -> None:
    # Piers of half a block are 7 5/8 in.; the lintel is to bear 8 in.: lay, which measures doubtful walls only, must doubt it.
    # On the pier between the bays it bears no more, though it goes on over the next one.
    layout = laid("""
        measure = "feet"
        sizes = "nominal"
        masonry = {unit = "block-8"}
        [[wall]]
        name = "Boat bays"
        length = "12'"
        height = "8'"
        opening = [{from_left = '8"', width = "4'", height = "7' 4"}, {from_left = "5' 4", width = "6'", height = "7' 4"}]
    """)
    assert [one.figure for one in broken(check(layout))] == [
        f'7 5/8" on the {side} of opening {number}' for number in (1, 2) for side in ("left", "right")]
    assert [find_bearings(layout.walls[0], opening) for opening in layout.walls[0].wall.openings] == [
        (inches("7 5/8"), inches("7 5/8"))] * 2
    assert layout.walls[0].doubtful


def test_no_half_brick_in_a_course_of_third_bond_to_save_its_cut() -> None:
    # A corner's even course is 8 in. and 19 bricks of 12 in. A half for the 8 in. would save a cut and put 2 in. into 19
    # joints: that course would stand in no bond with those above and below.
    layout = laid("""
        measure = "feet"
        sizes = "nominal"
        masonry = {unit = "brick-utility", bond = "third"}
        [[wall]]
        name = "Front"
        length = "20'"
        height = "2'"
        right = "outside corner"
        opening = [{from_left = "6'", width = "4'", height = "1' 8"}]
        [[wall]]
        name = "Side"
        length = "12'"
        height = "2'"
        left = "outside corner"
    """)
    assert not broken(check(layout))
    assert heads_of(layout, 6)[:3] == [inches("7 5/8"), inches("19 5/8"), inches("31 5/8")]
    assert {run.piece for course in layout.walls[0].courses for run in course.pieces} <= {"full", "cut"}


def test_joints_beside_a_sill_are_as_wide_as_those_of_their_run() -> None:
    # The run right of the door closes its joints to 0.35 in.; a brick beside the window's jamb is laid in two over the sill.
    layout = laid("""
        measure = "feet"
        masonry = {unit = "brick-modular"}
        [[wall]]
        name = "Front"
        length = "18' 3 5/8"
        height = "8'"
        opening = [{from_left = "5'", width = "3' 4 3/8", height = "6' 8"},
                   {name = "W", from_left = "11' 4", width = "3' 2", sill = "3'", height = "3' 4"}]
    """)
    told = broken(check(layout))
    assert "joints" not in {one.rule for one in told} and "cover" not in {one.rule for one in told}
    # Its head, 76 in., is 4/3 in. under the line of 29 courses: no brick can be ripped to that, so the wall goes on at that
    # line, 77 1/3 in., and the next course stands 5/12 in. over it.
    assert [(one.figure, one.remedy) for one in told if one.rule == "openings"] == [
        ('masonry begins 1 3/4" over the head of W', "put the head at 6'-5 5/16\"")]


def test_a_gate_as_high_as_its_wall_is_no_height_in_a_wrong_unit() -> None:
    layout = laid("""
        measure = "metric"
        masonry = {unit = "brick-uk"}
        [[wall]]
        name = "Yard"
        length = 4490
        height = 1500
        opening = [{name = "Gate", from_left = 1790, width = 910, height = 1500, lintel = "none"}]
    """)
    # Eight bricks, the gate, eight bricks: 1790 + 910 + 1790.
    assert [len(course.pieces) for course in layout.walls[0].courses] == [16, 18] * 10
    assert not broken(check(layout))


def test_a_lintel_laid_over_the_next_course_line_is_told_with_what_it_bears_there() -> None:
    # The head is 5/8 in. under the line of ten courses. Course 11 has a block from 32 in. and one that ends at 79 5/8 in.: of
    # an opening from 40 to 72 in. they bear 8 and 7 5/8 in., the last not enough, so one more block is a lintel unit.
    layout = laid("""
        measure = "feet"
        masonry = {unit = "block-8"}
        [[wall]]
        name = "Lee"
        length = "11' 11 5/8"
        height = "8'"
        opening = [{name = "H", from_left = "3' 4", width = "2' 8", sill = "2' 8", height = "3' 11 3/8"}]
    """)
    row = layout.walls[0].courses[10]
    lintel = [piece for piece in row.pieces if piece.shape == "lintel"]
    assert find_bearings(layout.walls[0], layout.walls[0].wall.openings[0]) == (
        inches(40) - lintel[0].left, lintel[-1].right - inches(72))
    assert lintel[-1].right - inches(72) > inches(8)


def test_no_piece_is_shorter_than_nothing() -> None:
    # The window's right jamb stands a hair over half a joint from where the courses below have a joint: the piece beside it
    # came out 3 mm less than nothing, and its nesting went on for ever.
    layout = laid("""
        measure = "feet"
        sizes = "actual"
        masonry = {unit = "block-10", tightest_joint = "4.35 mm", widest_joint = "13.7 mm", joint = "8.8427 mm"}
        [[wall]]
        name = "Quay side"
        length = "1014.2917 mm"
        right = "outside corner"
        height = "1422.4 mm"
        opening = [{from_left = "121.2458 mm", width = "204.7875 mm", height = "203.2 mm", bearing = "49.6 mm", lintel = "none"}]
        [[wall]]
        name = "Slip side"
        length = "2235.2 mm"
        left = "outside corner"
        height = "1422.4 mm"
        right = "inside corner"
        control_joints = ["2056.6396 mm"]
        pier = [{from_left = "372.4323 mm", projects = "337.1104 mm"}]
        opening = [{from_left = "736.9146 mm", width = "507.1458 mm", height = "406.4 mm", sill = "812.8 mm"}]
        [[wall]]
        name = "Boat side"
        length = "966.7875 mm"
        left = "inside corner"
        height = "1422.4 mm"
    """)
    assert min(piece.length for wall in layout.walls for course in wall.courses for piece in course.pieces) > 0
    assert sum(one.nesting.units for one in nest_cuts(layout)) >= 25


def test_a_bearing_cut_short_at_a_corner_is_told_by_lay_as_by_the_check() -> None:
    # The wall opposite a door takes 240 mm of the corner, 10 mm a joint: 120 mm is left of the 122.125 mm that the lintel is
    # to bear there.
    layout = laid("""
        measure = "metric"
        sizes = "actual"
        masonry = {unit = "block-ca-240"}
        [[wall]]
        name = "Quay side"
        length = "1400 mm"
        right = "outside corner"
        courses = 13
        [[wall]]
        name = "Slip side"
        courses = 13
        length = "1400 mm"
        left = "outside corner"
        control_joints = ["1000 mm"]
        opening = [{from_left = "370 mm", width = "202.5 mm", height = "1400 mm", bearing = "122.125 mm", lintel = "block"}]
    """)
    assert set(name_broken_rules(layout)) == set(broken(check(layout)))
    assert "120 mm on the left of opening 1" in [one.figure for one in broken(check(layout))]


def test_a_cut_a_hair_from_a_stock_length_is_told_by_lay_and_check_alike() -> None:
    # Half of a queen brick at this joint is 87052 ticks, the cut 87054: two thousandths of a millimetre.
    layout = laid("""
        measure = "metric"
        sizes = "actual"
        masonry = {unit = "brick-queen", bond = "quarter", widest_joint = "14.7 mm", joint = "12.3156 mm"}
        [[wall]]
        name = "Slip side"
        length = "1866.25 mm"
        height = "568.9604 mm"
        opening = [{from_left = "76.1281 mm", width = "154.4906 mm", height = "406.4 mm", bearing = "34.1187 mm", lintel = "none"}]
    """)
    assert set(name_broken_rules(layout)) == set(broken(check(layout)))
