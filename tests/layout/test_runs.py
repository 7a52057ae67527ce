"""Runs as laid: pieces set out to the tick, joints alike."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from tests.jobs import MM, broken, inches, make_job, make_masonry, make_opening, make_wall
from wallplan.layout.build import lay
from wallplan.layout.reach import reach_openings
from wallplan.layout.runs import LaidRun, LaidTracks, lay_tracks
from wallplan.layout.tracks import pose_problem, runs_of_rows
from wallplan.plan.coursing import set_coursing
from wallplan.plan.job import Masonry
from wallplan.rules.check import check


def tracks_of(length: int, masonry: Masonry) -> LaidTracks:
    wall = make_wall(length, masonry.unit.height_of_courses(4))
    rows = set_coursing(wall, masonry)
    runs = runs_of_rows(wall, masonry, rows, reach_openings(wall, rows))
    return lay_tracks(pose_problem(wall, masonry, runs), masonry.joint)


def test_joints_of_a_run() -> None:
    run = LaidRun(0, 100, ((0, 30), (34, 30), (67, 33)), 2, 0, 0)
    assert run.joints == (3, 4)
    assert LaidRun(0, 30, ((0, 30),), 2, 0, 0).joints == (0, 0)


def test_pier_of_38_inches_has_one_cut_a_course() -> None:
    tracks = tracks_of(inches("37 5/8"), make_masonry(joints_move=False))
    assert not tracks.broken
    assert [(run.cutting, run.at_least) for run in tracks.runs] == [(1, 1), (1, 1)]


def test_joints_open_alike_to_close_a_longer_run() -> None:
    # 80 in. and a quarter: four joints of 3/8 + 1/16 in. between five blocks.
    tracks = tracks_of(inches("79 7/8"), make_masonry())
    assert {run.joints for run in tracks.runs if len(run.pieces) == 5} == {(inches("7/16"), inches("7/16"))}
    assert {run.cutting for run in tracks.runs} == {0}


def test_a_lap_that_drifts_short_does_not_have_a_sliver_sawn_off_every_course() -> None:
    # The pier of 48 in. misses the module by 3/8 in.; so does all that is right of the door, by as much the other way. Its
    # joints are 13 of 0.346 in. and, beside the hatch, 5 of 0.300 in.: no mason saws 3/8 in. off a block in each of them.
    openings = (make_opening(inches(48), inches("88 3/8"), 0, inches(88)),
                make_opening(inches(152), inches("224 3/8"), inches(40), inches(88), name="Hatch"))
    layout = lay(make_job(make_masonry(), make_wall(inches("311 5/8"), inches(112), openings)))
    assert broken(check(layout)) == []
    right = [piece for course in layout.walls[0].courses[:11] for piece in course.pieces if piece.left > inches(88)]
    assert len(right) > 100 and {piece.piece for piece in right} == {"full", "half"}


@given(length=st.integers(400 * MM, 4_000 * MM), key=st.sampled_from(["block-8", "brick-uk", "brick-nf"]))
def test_pieces_and_joints_close_every_run_to_the_tick(length: int, key: str) -> None:
    for run in tracks_of(length, make_masonry(key)).runs:
        lefts = [left for left, _ in run.pieces]
        assert run.pieces[0][0] == run.left
        assert sum(run.pieces[-1]) == run.right
        gaps = [two - one - size for (one, size), two in zip(run.pieces, lefts[1:], strict=False)]
        assert not gaps or max(gaps) - min(gaps) <= 1
        assert all(one < two for one, two in pairwise(lefts))
