"""Whole walls laid, against what a mason works out by hand: nominal inches of each piece, left to right."""

from __future__ import annotations

import itertools
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import Phase, given, settings

from tests.jobs import (
    INCH,
    MM,
    broken,
    heads_of,
    inches,
    make_job,
    make_masonry,
    make_opening,
    make_wall,
    nominal_lengths,
    pieces_of,
    pump_house,
)
from tests.long_run import examples
from tests.strategies import laid_jobs
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.job import Job, Opening, Wall
from wallplan.rules.check import check

QUICK = (Phase.explicit, Phase.reuse, Phase.generate)
"""Without shrinking: laying a failing wall over and over takes minutes, and the wall is printed in full."""


def laid_wall(length: str, height: str, unit: str = "block-8", **changes: object) -> Layout:
    return lay(make_job(make_masonry(unit, joints_move=False, **changes), make_wall(inches(length), inches(height))))


def test_pier_of_38_inches_is_8_14_16_and_back() -> None:
    # 38 = 8 + 14 + 16: joints at 8 and 22; turned round 16 + 14 + 8: joints at 16 and 30. Laps 8 and 6 in., one cut each.
    # (16 + 16 + 6 would leave a piece under half; 16 + 8 + 14 and 14 + 16 + 8 are as good: laps of at least 6 in.)
    layout = laid_wall("37 5/8", "32")
    for course in range(1, 5):
        assert sorted(nominal_lengths(layout, course)) == [8, 14, 16]
    heads = [[Fraction(head, INCH) for head in heads_of(layout, course)] for course in (1, 2)]
    assert min(abs(one - two) for one in heads[0] for two in heads[1]) >= 6
    wall = layout.walls[0]
    assert (wall.cutting, wall.cutting_at_least, wall.why) == (4, 4, ())
    assert not broken(check(layout))


def test_five_full_blocks_at_80_inches() -> None:
    # Common practice, no source: 5 x 16 = 80 in.; the course above begins and ends with a half.
    layout = laid_wall("79 5/8", "16")
    assert nominal_lengths(layout, 1) == [16, 16, 16, 16, 16]
    assert nominal_lengths(layout, 2) == [8, 16, 16, 16, 16, 8]
    assert layout.walls[0].cutting == 0


def test_four_and_a_half_blocks_turn_their_half_round() -> None:
    # 72 in.: a half at one end in odd courses, at the other in even ones.
    layout = laid_wall("71 5/8", "32")
    assert nominal_lengths(layout, 1) == [16, 16, 16, 16, 8]
    assert nominal_lengths(layout, 2) == [8, 16, 16, 16, 16]


def test_third_bond_laps_a_third() -> None:
    # 12 in. bricks: module 12, a third is 4 in. Every joint stands 4 in. from one of the next course, none nearer.
    masonry = make_masonry("brick-utility", "third", joints_move=False)
    layout = lay(make_job(masonry, make_wall(inches("143 5/8"), inches(16))))
    for course in (1, 2, 3):
        above = heads_of(layout, course + 1)
        laps = {min(abs(head - other) for other in above) for head in heads_of(layout, course)}
        assert laps == {inches(4)}
    assert not broken(check(layout))


def test_quarter_bond_laps_a_quarter() -> None:
    layout = laid_wall("159 5/8", "32", bond="quarter")
    laps = {min(abs(head - other) for other in heads_of(layout, 2)) for head in heads_of(layout, 1)}
    assert laps == {inches(4)}


def test_stack_bond_stands_in_line() -> None:
    layout = laid_wall("79 5/8", "32", bond="stack")
    assert {tuple(nominal_lengths(layout, course)) for course in range(1, 5)} == {(16, 16, 16, 16, 16)}
    assert len({tuple(heads_of(layout, course)) for course in range(1, 5)}) == 1


def test_joints_open_rather_than_cut() -> None:
    # 80 1/4 in. with joints up to 1/2 in.: five blocks, four joints of 7/16; in even courses six pieces, five joints of
    # 3/8 + 1/20 in.
    layout = lay(make_job(make_masonry(), make_wall(inches("79 7/8"), inches(32))))
    wall = layout.walls[0]
    assert wall.cutting == 0
    assert wall.joints == (inches("3/8") + inches("1/4") // 5, inches("7/16"))
    assert not broken(check(layout))


def test_joints_close_rather_than_cut() -> None:
    layout = lay(make_job(make_masonry(), make_wall(inches("79 3/8"), inches(32))))
    assert (layout.walls[0].cutting, layout.walls[0].joints[0]) == (0, inches("5/16"))


def test_same_wall_is_cut_where_joints_are_fixed() -> None:
    # 80 1/4 in.: no row of 16s and 8s, so each of four courses cuts at least one. One cut of 8 1/4 in. in all of them would
    # bring two joints within 1/4 in. of each other where the bond changes over; the layout says so.
    wall = laid_wall("79 7/8", "32").walls[0]
    assert wall.cutting > wall.cutting_at_least == 4
    assert any("too little lap" in sentence for sentence in wall.why)


def window_wall(window: Opening, height: str = "104") -> Layout:
    return lay(make_job(make_masonry(joints_move=False), make_wall(inches("143 5/8"), inches(height), [window])))


def test_sill_at_half_a_course_is_met_by_half_high_units() -> None:
    # Sill at 44 in.: 5 courses and 4 in., the height of a 3 5/8 in. unit on a 3/8 in. bed. Nothing is ripped below it.
    window = make_opening(inches("47 5/8"), inches(88), inches(44), inches(88), lintel="steel", name="Window")
    layout = window_wall(window)
    below = [piece for piece in pieces_of(layout, 6) if piece.left < window.right and piece.right > window.left]
    assert {(piece.bottom, piece.height) for piece in below} == {(inches("40 3/8"), inches("3 5/8"))}
    assert {piece.piece for piece in below} <= {"full", "half"}
    assert not broken(check(layout))


def test_sill_off_the_half_course_is_met_by_rips() -> None:
    # Sill at 45 in.: 5 in. above the course line, less a bed of 3/8 in., is a rip of 4 5/8 in.
    window = make_opening(inches("47 5/8"), inches(88), inches(45), inches(88), lintel="steel", name="Window")
    below = [piece for piece in pieces_of(window_wall(window), 6) if piece.left < window.right and piece.right > window.left]
    assert {(piece.height, piece.piece, piece.mark is not None) for piece in below} == {(inches("4 5/8"), "cut", True)}


def test_block_lintel_bears_the_plans_bearing_each_side() -> None:
    layout = lay(pump_house())
    lintels = [piece for piece in pieces_of(layout, 12) if piece.shape == "lintel"]
    for opening in layout.walls[0].wall.openings:
        over = [p for p in lintels if p.left <= opening.right + 8 * INCH and p.right >= opening.left - 8 * INCH]
        assert over[0].left <= opening.left - opening.bearing
        assert over[-1].right >= opening.right + opening.bearing
        assert all(two.left - one.right == inches("3/8") for one, two in itertools.pairwise(over))


def test_precast_lintel_is_one_piece_that_ends_on_head_joints() -> None:
    # Joints of course 12 at 8, 24, 40, ... 88, 104 in.: 8 in. beside 47 5/8 and 88 is reached from 24 and by 103 5/8.
    door = make_opening(inches("47 5/8"), inches(88), 0, inches(88), lintel="precast")
    precast = [piece for piece in pieces_of(window_wall(door), 12) if piece.shape == "precast"]
    assert [(piece.left, piece.right) for piece in precast] == [(inches(24), inches("103 5/8"))]


def test_bond_beam_course_is_of_bond_beam_units() -> None:
    layout = lay(pump_house())
    assert {piece.shape for piece in pieces_of(layout, 13)} == {"bond beam"}
    assert all(piece.shape != "bond beam" for course in range(1, 13) for piece in pieces_of(layout, course))


def test_control_joint_has_sash_units_on_both_sides_of_every_course() -> None:
    wall = make_wall(inches("127 5/8"), inches(32), control_joints=(inches("63 13/16"),))
    layout = lay(make_job(make_masonry(joints_move=False), wall))
    for course in range(1, 5):
        sides = [piece for piece in pieces_of(layout, course) if inches("63 5/8") in (piece.right, piece.left - inches("3/8"))]
        assert [piece.shape for piece in sides] == ["sash", "sash"]


def test_corner_units_stand_at_ends_and_jambs() -> None:
    # Course 3: 16 16 16 | door | 8 16 16 16 ...: plain ends at 0, both jambs and the far end.
    shapes = [piece.shape for piece in pieces_of(lay(pump_house()), 3)]
    assert shapes[:5] == ["corner", "stretcher", "corner", "corner", "stretcher"]
    assert shapes[-1] == "corner"


def test_brick_has_no_block_shapes() -> None:
    layout = laid_wall("95 5/8", "8", unit="brick-modular")
    assert {piece.shape for course in layout.walls[0].courses for piece in course.pieces} == {"stretcher"}


def test_half_high_course_is_of_half_high_units_without_a_cut() -> None:
    layout = laid_wall("79 5/8", "36")
    odd = [course for course in layout.walls[0].courses if course.pieces[0].height == inches("3 5/8")]
    assert len(odd) == 1
    assert {piece.piece for piece in odd[0].pieces} <= {"full", "half"}
    assert layout.walls[0].cutting == 0


def test_ripped_course_is_cut_all_along_and_so_is_its_bound() -> None:
    # 37 in.: four courses and a rip of 4 5/8 in.; five ripped blocks cannot be less than five cuts.
    wall = laid_wall("79 5/8", "37").walls[0]
    ripped = [piece for course in wall.courses for piece in course.pieces if piece.height == inches("4 5/8")]
    assert len(ripped) >= 5 and {piece.piece for piece in ripped} == {"cut"}
    assert wall.cutting >= wall.cutting_at_least == 5


def test_job_without_walls_gives_none() -> None:
    assert lay(make_job(make_masonry())).walls == ()


def test_joint_near_a_jamb_moves_and_the_lap_is_kept() -> None:
    # Left jamb at 50 in.: odd courses' joint at 48 would leave 2 in. Two odd courses beside the window have it elsewhere.
    window = make_opening(inches("49 5/8"), inches(82), inches(16), inches(48), lintel="steel", name="Hatch")
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(inches("191 5/8"), inches(64), [window])))
    beside = nominal_lengths(layout, 3)
    assert min(beside) >= 4
    assert nominal_lengths(layout, 3) == nominal_lengths(layout, 5)
    assert nominal_lengths(layout, 1) == nominal_lengths(layout, 7)
    assert not broken(check(layout))


def brick_wall(length: str, height: int, *openings: tuple[str, str, int, int]) -> Layout:
    """Modular brick with joints of 1/4 to 1/2 in.; openings from jamb to jamb and from course line to course line."""
    masonry = make_masonry("brick-modular")
    gauge = masonry.unit.gauge
    holes = [make_opening(inches(a), inches(b), gauge * low, gauge * high, lintel="steel") for a, b, low, high in openings]
    return lay(make_job(masonry, make_wall(inches(length), gauge * height, holes)))


def test_end_pieces_of_a_run_never_pull_against_each_other() -> None:
    # A first piece a hair short and a last one long by more than the joints can take between them: the last one stayed
    # longer than a brick.
    layout = brick_wall("65 3/4", 3, ("8", "17 13/16", 0, 3), ("31 7/8", "45 15/16", 0, 1))
    assert not broken(check(layout))
    # Two end pieces that pull apart shift the joints between them by more than they take up in all: out of plumb.
    layout = brick_wall(
        "116 11/16", 6, ("14 1/4", "46 1/4", 2, 4), ("60 1/2", "74 3/4", 2, 6), ("86 3/16", "97 5/8", 1, 3))
    assert [(finding.rule, finding.course) for finding in broken(check(layout))] == []


def mirrored(job: Job) -> Job:
    def mirror(wall: Wall) -> Wall:
        openings = tuple(
            replace(opening, left=wall.length - opening.right, right=wall.length - opening.left)
            for opening in reversed(wall.openings)
        )
        return replace(wall, openings=openings, control_joints=tuple(wall.length - at for at in reversed(wall.control_joints)))

    return replace(job, walls=tuple(mirror(wall) for wall in job.walls))


@given(job=laid_jobs(joints_move=False))
@settings(max_examples=examples(25), phases=QUICK)
def test_mirror_image_cuts_the_same(job: Job) -> None:
    one, other = lay(job), lay(mirrored(job))
    assert [wall.cutting for wall in one.walls] == [wall.cutting for wall in other.walls]


@given(job=laid_jobs(joints_move=False))
@settings(max_examples=examples(25), phases=QUICK)
def test_random_wall_keeps_the_rules_and_is_laid_alike_twice(job: Job) -> None:
    layout = lay(job)
    hold_to_the_rules(layout)
    assert lay(job) == layout


@given(job=laid_jobs())
@settings(max_examples=examples(10), phases=QUICK)
def test_random_wall_whose_joints_move_keeps_the_rules(job: Job) -> None:
    hold_to_the_rules(lay(job))


def hold_to_the_rules(layout: Layout) -> None:
    """Every rule held, courses that close from end to end, a bound that is one, and reasons where it is not reached.

    What the layout tells of its cutting, beds and joints is counted anew on its pieces.
    """
    assert not broken(check(layout))
    masonry = layout.job.masonry
    for wall in layout.walls:
        cut = [piece.length + masonry.joint for course in wall.courses for piece in course.pieces if piece.piece == "cut"]
        assert wall.cutting == sum(2 if 2 * nominal < masonry.module else 1 for nominal in cut)
        assert {piece.bottom for piece in wall.courses[0].pieces if piece.bottom < masonry.unit.height} <= {wall.bed}
        joints = {two.left - one.right for course in wall.courses for one, two in pairwise(course.pieces)
                  if one.bottom == two.bottom and 0 <= two.left - one.right <= 2 * masonry.widest_joint}
        if joints and not any(piece.shape == "precast" for course in wall.courses for piece in course.pieces):
            assert min(joints) >= wall.joints[0] - 1 and max(joints) <= wall.joints[1] + 1
        assert wall.cutting >= wall.cutting_at_least
        assert bool(wall.why) == (wall.cutting > wall.cutting_at_least)
        for course in wall.courses:
            assert (course.pieces[0].left, course.pieces[-1].right) == _outer_ends(wall.wall, course.bottom)


def _outer_ends(wall: Wall, bottom: int) -> tuple[int, int]:
    """Where a course begins and ends: at the wall's ends, or beside an opening that stands at an end."""
    here = [opening for opening in wall.openings if opening.bottom <= bottom < opening.top]
    left = max((opening.right for opening in here if opening.left == 0), default=0)
    right = min((opening.left for opening in here if opening.right == wall.length), default=wall.length)
    return left, right


@given(job=laid_jobs(on_coursing=False))
@settings(max_examples=examples(8), phases=QUICK)
def test_sill_or_head_off_the_coursing_is_met_or_told(job: Job) -> None:
    # Rips beside openings may break a rule for good; then the layout says that it may, and the check which.
    layout = lay(job)
    for finding in broken(check(layout)):
        assert layout.walls[0].doubtful
        assert finding.figure and finding.limit and finding.remedy


@pytest.mark.parametrize("key", ["block-uk-100", "block-ca-190", "brick-au", "brick-2df"])
def test_metric_units_close_five_modules_without_a_cut(key: str) -> None:
    masonry = make_masonry(key, joints_move=False)
    wall = make_wall(5 * masonry.module - masonry.joint, masonry.unit.height_of_courses(4))
    layout = lay(make_job(masonry, wall, measure="metric"))
    assert [len(course.pieces) for course in layout.walls[0].courses] == [5, 6, 5, 6]
    assert layout.walls[0].cutting == 0
    assert pieces_of(layout, 1)[0].length == masonry.unit.length == masonry.module - 10 * MM
