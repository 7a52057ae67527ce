"""A wall as numbers for the search: stock lengths, runs, fixed places."""

from __future__ import annotations

from tests.jobs import MM, inches, make_masonry, make_opening, make_wall
from wallplan.layout.reach import reach_openings
from wallplan.layout.tracks import Span, bond_terms, pose_problem, runs_of_rows, stock_lengths
from wallplan.plan.coursing import set_coursing
from wallplan.plan.job import Masonry, Wall

JOINT = inches("3/8")


def runs_of(wall: Wall, masonry: Masonry) -> tuple[tuple[Span, ...], ...]:
    rows = set_coursing(wall, masonry)
    return runs_of_rows(wall, masonry, rows, reach_openings(wall, rows))


def test_moulded_half_keeps_its_size_and_a_bat_suits_the_joint() -> None:
    assert stock_lengths(make_masonry()) == {inches("15 5/8"): "full", inches("7 5/8"): "half"}
    # UK brick, 215 and 102.5 mm at 10 mm joints; at 12 mm the bat is (215 + 12)/2 - 12 = 101.5.
    wide = make_masonry("brick-uk", joint=12 * MM)
    assert stock_lengths(wide) == {215 * MM: "full", 203 * MM // 2: "half"}


def test_terms_are_nominal() -> None:
    terms = bond_terms(make_masonry())
    assert (terms.module, terms.stock) == (inches(16), (inches(16), inches(8)))
    assert (terms.close, terms.open) == (inches("1/8"), inches("1/8"))
    assert (terms.lap, terms.ideal, terms.keeps_bond) == (inches(4), inches(8), False)


def test_stack_bond_asks_for_no_lap_and_keeps_to_it() -> None:
    terms = bond_terms(make_masonry(bond="stack"))
    assert (terms.lap, terms.ideal, terms.keeps_bond) == (0, 0, True)


def test_opening_cuts_the_runs_of_its_courses_only() -> None:
    door = make_opening(inches(24), inches(64), 0, inches(16))
    runs = runs_of(make_wall(inches(96), inches(32), [door]), make_masonry())
    beside = (Span(0, inches(24)), Span(inches(64), inches(96)))
    assert runs == (beside, beside, (Span(0, inches(96)),), (Span(0, inches(96)),))


def test_control_joint_cuts_every_course_by_a_joint() -> None:
    runs = runs_of(make_wall(inches(96), inches(16), control_joints=[inches("40 3/16")]), make_masonry())
    assert set(runs) == {(Span(0, inches(40)), Span(inches("40 3/8"), inches(96)))}


def test_opening_at_the_wall_end_leaves_no_run_beside_it() -> None:
    gate = make_opening(0, inches(40), 0, inches(16))
    assert runs_of(make_wall(inches(96), inches(16), [gate]), make_masonry())[0] == (Span(inches(40), inches(96)),)


def test_problem_has_a_joints_stand_in_before_each_start() -> None:
    # Odd courses 1, 3: bits 1 and 3 set, 2 + 8; even ones 2, 4: 4 + 16.
    door = make_opening(inches(24), inches(64), 0, inches(16))
    wall, masonry = make_wall(inches(96), inches(32), [door]), make_masonry()
    problem = pose_problem(wall, masonry, runs_of(wall, masonry))
    odd, even = problem.tracks
    assert [(s.start, s.end, s.courses) for s in odd] == [
        (-JOINT, inches(24), 2), (-JOINT, inches(96), 8), (inches(64) - JOINT, inches(96), 2)]
    assert [s.courses for s in even] == [4, 16, 4]
    assert problem.fixed == (-JOINT, inches(96))
    assert problem.covered == ((inches(24) - JOINT, inches(64)),)


def test_what_is_open_in_every_even_course_begins_that_track_anew() -> None:
    """A wall of three courses with a window in the second: the even track has nothing between its jambs."""
    window = make_opening(inches(24), inches(64), inches(8), inches(16))
    wall, masonry = make_wall(inches(96), inches(24), [window]), make_masonry()
    problem = pose_problem(wall, masonry, runs_of(wall, masonry))
    assert problem.own == ((), (inches(24), inches(64) - JOINT))
    assert problem.fixed_of(1) == (-JOINT, inches(24), inches(64) - JOINT, inches(96))
    assert problem.fixed_of(0) == problem.fixed == (-JOINT, inches(96))


def test_opening_from_footing_to_top_begins_both_tracks_anew() -> None:
    gate = make_opening(inches(24), inches(64), 0, inches(32))
    wall, masonry = make_wall(inches(96), inches(32), [gate]), make_masonry()
    problem = pose_problem(wall, masonry, runs_of(wall, masonry))
    assert problem.fixed == (-JOINT, inches(24), inches(64) - JOINT, inches(96))
