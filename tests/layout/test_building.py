"""Walls that meet: which runs through, what stands at the corner, whole buildings against published counts."""

from __future__ import annotations

import pytest

from tests.jobs import broken, inches, make_masonry
from tests.layout.buildings import IN, OUT, build, count_course, rectangle
from wallplan.layout.build import lay
from wallplan.rules.check import check


def test_a_basement_of_22_by_32_ft_takes_79_blocks_a_course() -> None:
    # NAVEDTRA 14043: basement 22 x 32 ft outside, 8 in. wall: 79 a course, ten courses 790. Sizes less a joint.
    masonry = make_masonry(joints_move=False)
    joint = masonry.joint
    layout = lay(rectangle(masonry, inches(264) - joint, inches(384) - joint, inches(80)))
    assert [count_course(layout, number) for number in range(1, 11)] == [79] * 10
    assert sum(wall.cutting for wall in layout.walls) == 0
    assert broken(check(layout)) == []


@pytest.mark.parametrize(("unit", "perimeter_less"), [("block-4", 16), ("block-8", 32), ("block-12", 48)])
def test_the_average_of_blocks_a_course_in_a_closed_rectangle(unit: str, perimeter_less: int) -> None:
    # By geometry: (P - 16) / 16 for 4 in. walls, (P - 32) / 16 for 8 in., (P - 48) / 16 for 12 in., P the nominal
    # outside perimeter in inches, as whole units of length in a course.
    masonry = make_masonry(unit, joints_move=False)
    across, deep = inches(20 * 16) - masonry.joint, inches(12 * 16) - masonry.joint
    layout = lay(rectangle(masonry, across, deep, inches(32)))
    expected = inches(2 * 32 * 16 - perimeter_less)
    for course in range(4):
        pieces = [p for wall in layout.walls for p in wall.courses[course].pieces if p.shape != "return"]
        assert sum(piece.length + masonry.joint for piece in pieces) == expected


@pytest.mark.parametrize(("unit", "first"), [("block-6", 6), ("block-8", 8), ("block-10", 10), ("block-12", 12)])
def test_head_joints_at_a_plain_corner_keep_the_lap(unit: str, first: int) -> None:
    # The unit of the other leg shows its width; the lap beside it is at least a quarter of the unit, 4 in., in every
    # thickness (by geometry 6, 8, 6 and 4 in. where only full units are used).
    masonry = make_masonry(unit, joints_move=False)
    layout = lay(rectangle(masonry, inches(10 * 16) - masonry.joint, inches(8 * 16) - masonry.joint, inches(32)))
    assert broken(check(layout)) == []
    for wall in layout.walls:
        for course in wall.courses:
            ends = [piece for piece in course.pieces if piece.shape == "return"]
            assert {piece.length + masonry.joint for piece in ends} <= {inches(first)}


def test_the_walls_run_through_in_turn_at_every_corner() -> None:
    masonry = make_masonry(joints_move=False)
    layout = lay(rectangle(masonry, inches(96) - masonry.joint, inches(64) - masonry.joint, inches(32)))
    for one, other in zip(layout.walls, (*layout.walls[1:], layout.walls[0]), strict=True):
        right = [course.pieces[-1].shape == "return" for course in one.courses]
        left = [course.pieces[0].shape == "return" for course in other.courses]
        assert right == [not stops for stops in left]
        assert right in ([True, False] * 2, [False, True] * 2)
        assert {course.pieces[-1].of for course in one.courses if course.pieces[-1].shape == "return"} == {other.wall.name}


def test_at_an_inside_corner_the_wall_that_runs_through_goes_on_behind_the_other() -> None:
    masonry = make_masonry(joints_move=False)
    module, joint, thick = masonry.module, masonry.joint, masonry.unit.thickness
    layout = lay(build(masonry, inches(32), (6 * module - joint, OUT), (2 * module - joint, OUT), (3 * module, IN),
                       (2 * module, OUT), (3 * module - joint, OUT), (4 * module - joint, OUT)))
    assert broken(check(layout)) == []
    back = layout.walls[2]
    ends = {course.pieces[-1].right for course in back.courses}
    assert ends == {back.wall.length + thick}
    stopped = [course for course in back.courses if course.pieces[-1].shape == "return"]
    assert {course.pieces[-2].right for course in stopped} == {back.wall.length - joint}


def test_the_whole_building_cuts_no_more_than_any_other_choice_at_its_corners() -> None:
    # Brute force over which wall runs through in odd courses, four corners, two ways each.
    from itertools import product

    from wallplan.bond.cost import count_cutting
    from wallplan.layout.building import bond_walls
    from wallplan.layout.corners import Choice, Turn, end_wall
    from wallplan.layout.runs import lay_tracks
    from wallplan.layout.tracks import pose_problem, runs_of_rows
    from wallplan.plan.coursing import set_coursing

    masonry = make_masonry("block-6", joints_move=False)
    job = rectangle(masonry, inches(97), inches(71), inches(24))

    def cut(index: int, left: bool, right: bool) -> int:
        wall = job.walls[index]
        ends = end_wall(wall, masonry, Choice(Turn(left), Turn(right)), ("before", "after"))
        rows = set_coursing(wall, masonry)
        return count_cutting(lay_tracks(
            pose_problem(wall, masonry, runs_of_rows(wall, masonry, rows, (), ends), ends), masonry.joint).cost)

    best = min(
        sum(cut(index, not ways[index - 1], ways[index]) for index in range(4)) for ways in product((True, False), repeat=4)
    )
    assert sum(count_cutting(wall.tracks.cost) for wall in bond_walls(job)) == best


def test_both_legs_of_a_corner_lead_are_equally_high() -> None:
    # Six courses' leads fit the long walls, only three the short ones: (64 - 16) / 16 - 1 = 2 whole units between.
    masonry = make_masonry(joints_move=False)
    layout = lay(rectangle(masonry, inches(320) - masonry.joint, inches(80) - masonry.joint, inches(64)))
    lifts = []
    for wall in layout.walls:
        ends = [{piece.lead for piece in course.pieces if piece.lead == "left"} for course in wall.courses]
        widths = [sum(piece.length for piece in course.pieces if piece.lead == "left") for course in wall.courses]
        assert all(ends)
        # A new lift begins where a course's lead is longer than the one below it.
        lifts.append([number for number in range(1, 8) if widths[number] > widths[number - 1]])
    assert all(lift == lifts[0] for lift in lifts)
