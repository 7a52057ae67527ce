"""Walls that abut others in a T: tied by every other course, by straps, or kept apart by a joint that moves."""

from __future__ import annotations

import random
from dataclasses import replace
from pathlib import Path

import pytest

from tests.jobs import broken, inches, make_job, make_masonry, make_opening, make_wall, nominal_lengths
from tests.layout.buildings import rectangle
from tests.long_run import examples
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.tied import strap_courses
from wallplan.plan.job import Abutment, Job, Masonry, Tie, Wall
from wallplan.planner import lay_plan
from wallplan.rules.check import check


def stem(masonry: Masonry, length: int, height: int, at: int, tie: Tie = "interlocked", *, end: str = "left",
         inside: bool = True) -> Wall:
    """A wall that abuts the wall called Landing, so many ticks from that wall's left end."""
    abutment = Abutment("left" if end == "left" else "right", "Landing", at, inside, tie, inches(32) if tie == "straps" else None)
    wall = make_wall(length, height, name="Stem")
    return replace(wall, left_end="abuts", abuts=(abutment,)) if end == "left" else replace(
        wall, right_end="abuts", abuts=(abutment,))


def tee(tie: Tie = "interlocked", **changes: object) -> Layout:
    """A free wall of 160 in. (ten blocks), four courses, and one of 64 in. that abuts it at 72 in."""
    masonry = make_masonry(joints_move=False)
    main = make_wall(inches(160) - masonry.joint, inches(32))
    return lay(make_job(masonry, main, stem(masonry, inches(64), inches(32), inches(72), tie, **changes)))  # type: ignore[arg-type]


def test_every_other_course_of_the_stem_runs_through_the_main_wall() -> None:
    # By hand: where it runs through, the main wall has joints at 72 and 80 in.; 72 is four blocks and a half, 80 five. In
    # the courses between joints must stand 4 in. from both: two pieces of 12 in. meet at 76, or one block stands from 68 to
    # 84 and one of 12 in. on either side. Two cuts either way, and none in the courses that are tied.
    layout = tee()
    assert broken(check(layout)) == []
    rows = [nominal_lengths(layout, course) for course in (1, 2, 3, 4)]
    assert sorted(rows[1]) == [8, 8, *[16] * 9]  # a half, the stem's end of 8 in., and nine blocks
    assert sorted(rows[0]) == [8, 12, 12, *[16] * 8]
    assert layout.walls[0].cutting == 2 * 2
    ends = [[piece for piece in course.pieces if piece.shape == "return"] for course in layout.walls[0].courses]
    assert [len(end) for end in ends] == [0, 1, 0, 1]
    assert {(piece.left, piece.length, piece.of) for end in ends for piece in end} == {(inches(72), inches("7 5/8"), "Stem")}
    assert [course.pieces[0].left for course in layout.walls[1].courses][1::2] == [-inches("7 5/8")] * 2


@pytest.mark.parametrize("tie", ["straps", "control joint"])
def test_a_wall_tied_otherwise_stops_a_joint_short_and_leaves_the_main_wall_alone(tie: Tie) -> None:
    layout = tee(tie)
    assert broken(check(layout)) == []
    assert layout.walls[0].cutting == layout.walls[1].cutting == 0
    assert {course.pieces[0].left for course in layout.walls[1].courses} == {layout.job.masonry.joint}
    assert not any(piece.shape == "return" for wall in layout.walls for course in wall.courses for piece in course.pieces)


@pytest.mark.parametrize("end", ["left", "right"])
@pytest.mark.parametrize("inside", [True, False])
def test_either_end_abuts_on_either_face(end: str, inside: bool) -> None:
    layout = tee(end=end, inside=inside)
    assert broken(check(layout)) == []
    assert sum(finding.rule == "ties" for finding in check(layout)) == 1


def test_each_unit_of_a_tie_is_counted_once() -> None:
    # Four courses in plan: 159 5/8 in. and 64 in. of wall; where tied the stem's units take 72 to 79 5/8 of the main wall.
    (finding,) = (finding for finding in check(tee()) if finding.rule == "in plan")
    volume = (159.625 + 64) * 7.625 * 32 / 1728
    assert finding.held and finding.figure.endswith(f"2 walls less openings {volume:.3f}")


def test_straps_lie_on_courses_no_further_apart_than_asked_and_the_order_has_them() -> None:
    masonry = make_masonry(joints_move=False)
    main = make_wall(inches(160) - masonry.joint, inches(96))
    layout = lay(make_job(masonry, main, stem(masonry, inches(64), inches(96), inches(72), "straps")))
    # 32 in. is four courses: on courses 4 and 8 of twelve; none on the last, under which nothing holds it down.
    assert strap_courses(layout.walls[1], layout.walls[1].wall.abuts[0], layout.job) == (4, 8)
    lines = {line.item: line for line in list_order(layout).lines}
    assert (lines["straps where walls abut"].net, lines["straps where walls abut"].spare) == (2, 1)


def test_a_control_joint_between_walls_has_its_gasket_in_the_order() -> None:
    lines = {line.item: line for line in list_order(tee("control joint")).lines}
    line = lines["control-joint gasket where walls abut"]
    assert (line.measure, round(float(line.net), 2), line.net + line.spare) == ("ft", 2.67, 3)


def partitioned(number: int) -> Job:
    """A closed building with a partition from the first wall to the third, tied anyhow, and a door in the second."""
    chance = random.Random(f"partition {number}")
    masonry = make_masonry(chance.choice(["block-6", "block-8", "block-12", "brick-uk"]), joints_move=chance.random() < 0.3)
    module, thick, joint = masonry.module, masonry.unit.thickness, masonry.joint
    step = inches("1/8")
    across, deep = (chance.randint(6 * module // step, 9 * module // step) * step for _ in range(2))
    height = masonry.unit.height_of_courses(4)
    at = chance.randint((thick + module) // step, (across - 2 * thick - module) // step) * step
    ties: list[Tie] = ["interlocked", "straps", "control joint"]
    ends = [Abutment(end, f"wall {wall}", place, True, tie, inches(16) if tie == "straps" else None)
            for end, wall, place, tie in (("left", 0, at, chance.choice(ties)),
                                          ("right", 2, across - at - thick, chance.choice(ties)))]
    building = rectangle(masonry, across, deep, height)
    partition = replace(make_wall(deep - 2 * thick, height, name="Partition"), left_end="abuts", right_end="abuts",
                        abuts=tuple(ends))
    left = module + thick
    door = make_opening(left, left + module, 0, masonry.unit.height_of_courses(3), "steel", joint)
    walls = (building.walls[0], replace(building.walls[1], openings=(door,)), *building.walls[2:], partition)
    return replace(building, walls=walls)


@pytest.mark.parametrize("number", range(examples(10)))
def test_random_buildings_with_a_partition_keep_every_rule(number: int) -> None:
    findings = check(lay(partitioned(number)))
    assert [(finding.rule, finding.where, finding.figure) for finding in broken(findings)] == []
    assert sum(finding.rule == "in plan" for finding in findings) == 1


def test_piers_of_a_garden_wall_are_bonded_in_by_every_other_course() -> None:
    # Three piers of eight courses: in four courses a full unit runs through the wall and stands 8 in. out, in the others a
    # half stands before its face. Each unit once: four full and four halves a pier.
    layout = lay_plan(Path(__file__).parents[2] / "samples" / "garden-wall-piers.toml")
    findings = check(layout)
    assert broken(findings) == []
    assert sum(finding.rule == "ties" for finding in findings) == 3
    for pier in layout.walls[1:]:
        own = [[piece.piece for piece in course.pieces if piece.shape != "return"] for course in pier.courses]
        assert sorted(own) == [["full"]] * 4 + [["half"]] * 4
    volume = (295.625 + 3 * 8) * 7.625 * 64 / 1728
    (plan,) = (finding for finding in findings if finding.rule == "in plan")
    assert plan.figure.endswith(f"4 walls less openings {volume:.3f}")
