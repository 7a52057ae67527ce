"""Why lines of walls that are worked out by hand, and that a line which is not so is found."""

from __future__ import annotations

import pytest

from tests.jobs import inches, make_job, make_masonry, make_wall, pump_house
from tests.layout.test_one_brick import lay_free
from tests.teaching.judging import Told, judge
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.teaching.why import Reason, read_runs, reasons_of_piece, why_course, why_piece


def pump() -> Layout:
    return lay(pump_house())


def nominal_trap() -> Layout:
    """20 ft 0 in. exactly, joints fixed: 15 blocks are 19 ft 11 5/8 in., so each course wants one cut at the least."""
    return lay(make_job(make_masonry(joints_move=False), make_wall(inches(240), inches(32))))


def test_a_half_is_told_by_the_lap_that_a_full_unit_would_lose() -> None:
    # Course 1 begins with a full block; were course 2 to do so too, its joint would stand over the joint below.
    layout = pump()
    runs, first = read_runs(layout, 0), layout.walls[0].courses[1].pieces[0]
    assert why_piece(runs, 2, first) == (
        'Corner unit: its plain end shows at the left end. Half unit, 7 5/8", at the left end. A full unit here would bring its '
        'joint in line with a joint in the course below; the lap must be 4" at least. It laps the nearest joint below by 8".'
    )


def test_a_cut_is_told_by_what_full_units_leave() -> None:
    layout = nominal_trap()
    runs = read_runs(layout, 0)
    cuts = [piece for piece in layout.walls[0].courses[0].pieces if piece.mark]
    assert cuts
    assert ("From the left end to the right end is 20'-0\": 15 full units leave no room for a piece, "
            "and no stock lengths fill it at any joint allowed.") in why_piece(runs, 1, cuts[0])


def test_an_opened_joint_is_told_with_what_it_takes() -> None:
    # 20 ft 0 in. with joints that may open: 3/8 in. over 14 joints.
    layout = lay(make_job(make_masonry(), make_wall(inches(240), inches(32))))
    assert ("Joints opened to 0.402\" from 3/8\": with 3/8\" the pieces from the left end to the right end would come 3/8\" "
            "short, and its 14 joints share it, so nothing is cut.") in why_course(read_runs(layout, 0), 1)


def test_a_course_is_told_what_matters() -> None:
    # Sill of the window 40 in.: on course 5. Heads 88 in.: the lintels stand in course 12. The top course is a bond beam.
    runs = read_runs(pump(), 0)
    assert why_course(runs, 1)[0].startswith("The first course decides")
    assert 'The sill of Window stands on this course, 11\'-11 5/8" to 16\'-0".' in why_course(runs, 5)
    assert 'Door stops the course from 3\'-11 5/8" to 7\'-4".' in why_course(runs, 11)
    assert sum("Lintel unit on the head of" in line for line in why_course(runs, 12)) == 2
    assert "A bond-beam course" in " ".join(why_course(runs, 13))
    with pytest.raises(IndexError):
        why_course(runs, 14)


def test_closer_and_header_of_flemish_bond_by_hand() -> None:
    """890 mm: course 1 S H S H S, joints after 4, 6, 10, 12 quarters; course 2 H C S H S C H, joints after 2, 3, 7, 9, 13, 14.
    Without the left closer the first stretcher would end at 6, where course 1 has a joint."""
    layout = lay_free(890, 300)
    runs, pieces = read_runs(layout, 0), layout.walls[0].courses[1].pieces
    closer = why_piece(runs, 2, pieces[1])
    assert closer.startswith("Queen closer A, 46 mm on the face, beside the header at the left end: a brick ripped along its "
                             "length. Without it the bricks after it would bring a joint in line with a joint of course 1;")
    assert "It never stands at the end itself" in closer and "by 56 mm" in closer
    # The header after 7 and before 9 quarters, over the stretcher from 6 to 10.
    assert "It stands over the middle of a stretcher of course 1." in why_piece(runs, 2, pieces[3])
    assert "Headers and stretchers in turn: 2 headers and 3 stretchers." in why_course(runs, 1)
    assert "Behind the face 3 bricks lie, one for each stretcher; 2 headers and closers go through." in why_course(runs, 1)


def test_a_length_off_the_bond_is_told_with_those_beside_it() -> None:
    """Wall situation 6: 4,500 mm between 4,265 and 4,602.5."""
    layout = lay_free(4500)
    told = " ".join(why_course(read_runs(layout, 0), 1))
    assert "Broken bond: from the left end to the right end is 4500, and Flemish bond with joints of 10 mm is 4265 or 4602.5." in told


def test_a_piece_that_the_course_has_not_is_refused() -> None:
    layout = pump()
    with pytest.raises(ValueError, match="course 2 has no piece at 0"):
        why_piece(read_runs(layout, 0), 2, layout.walls[0].courses[0].pieces[0])


@pytest.mark.parametrize("layout", [pump(), nominal_trap()], ids=["pump house", "nominal trap"])
def test_a_why_line_that_is_not_so_is_found(layout: Layout) -> None:
    """The measuring can fail: each figure put off by a tick or a course is told."""
    runs, wall = read_runs(layout, 0), layout.walls[0]
    tried = 0
    for course in wall.courses:
        for piece in course.pieces:
            for reason in reasons_of_piece(runs, course.number, piece):
                for place in range(len(reason.figures)):
                    wrong = tuple(figure + (place == at) for at, figure in enumerate(reason.figures))
                    with pytest.raises((AssertionError, ValueError, StopIteration)):
                        judge(Told(layout, wall, course, piece, Reason(reason.kind, reason.words, wrong)))
                    tried += 1
    assert tried > 100
