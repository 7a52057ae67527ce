"""Marks: exact distances of head joints, measured on the layout by other means than the code's own."""

from __future__ import annotations

import csv
import io

from hypothesis import given, settings

from tests.jobs import INCH, heads_of, inches, make_job, make_masonry, make_wall, pump_house
from tests.long_run import examples
from tests.strategies import laid_jobs
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lengths import TICKS_PER_INCH, print_length
from wallplan.lists.marks import list_marks, write_marks_csv
from wallplan.plan.job import Job
from wallplan.plan.load import read_plan


def test_a_block_wall_on_the_module_is_marked_every_sixteen_inches() -> None:
    (marks,) = list_marks(lay(pump_house()))
    # 20 ft nominal: units begin at every 16 in. in odd courses, 8 in. further on in even ones. The bond beam on top
    # (course 13) runs over the door, course 12 is lintels.
    assert [mark.far for mark in marks.odd] == [INCH * 16 * n for n in range(1, 15)]
    assert all(mark.far - mark.near == inches("3/8") for mark in (*marks.odd, *marks.even))
    first = [mark.far for mark in marks.even if 2 in mark.courses]
    assert first == [INCH * (16 * n - 8) for n in (1, 2, 3, *range(7, 16))]
    assert marks.jambs[0] == ("Door", inches("47 5/8"), inches(88))


def test_odd_and_even_courses_are_counted_apart() -> None:
    (marks,) = list_marks(lay(pump_house()))  # 8 ft 8 in.: thirteen courses
    assert (marks.odd_courses, marks.even_courses) == (7, 6)


def test_a_control_joint_is_marked_by_both_its_sides_and_is_no_head_joint() -> None:
    # Eight blocks, 3/8 in. of joint in the middle: from 63 5/8 to 64 in.
    wall = make_wall(inches("127 5/8"), inches(32), control_joints=(inches(64) - inches("3/16"),))
    (marks,) = list_marks(lay(make_job(make_masonry(joints_move=False), wall)))
    assert marks.control_joints == ((inches("63 5/8"), inches(64)),)
    assert inches("63 5/8") not in {mark.near for mark in (*marks.odd, *marks.even)}


@settings(max_examples=examples(25))
@given(laid_jobs())
def test_every_head_joint_of_every_course_is_marked_where_it_lies(job: Job) -> None:
    layout = lay(job)
    (marks,) = list_marks(layout)
    for course in layout.walls[0].courses:
        if len({piece.bottom for piece in course.pieces}) > 1:
            continue
        kind = marks.odd if course.number % 2 else marks.even
        assert [mark.near for mark in kind if course.number in mark.courses] == sorted(set(heads_of(layout, course.number)))


GABLE = """
title = "Slip"
measure = "feet"
sizes = "nominal"
masonry.unit = "block-8"
[[wall]]
name = "Slip"
length = "13' 4"
height = "4'"
[[wall.gable]]
pitch = "12/12"
"""


def test_raked_ends_of_a_slope_of_12_in_12_are_as_far_in_as_they_are_high() -> None:
    # The slope begins at the wall's end, 48 in. up: course 7 lies from 48 3/8 to 56 in., and so on, by mirror image at the
    # right end; course 16, the last, runs out under the ridge, in the middle.
    layout = lay(read_plan(GABLE, "slip.toml"))
    (marks,) = list_marks(layout)
    length, rise = inches("159 5/8"), INCH * 8
    left = [(end.course, end.bottom, end.top) for end in marks.raked if end.side == "left"]
    assert left[:-1] == [(7 + n, n * rise + inches("3/8"), (n + 1) * rise) for n in range(9)]
    right = [(end.course, length - end.bottom, length - end.top) for end in marks.raked if end.side == "right"]
    assert right == left


def test_figures_are_the_nearest_to_the_exact_distance_never_a_sum() -> None:
    layout = lay(pump_house())
    rows = list(csv.DictReader(io.StringIO(write_marks_csv(list_marks(layout), "feet"), newline="")))
    odd = [row for row in rows if row["courses"] == "odd"]
    for row, mark in zip(odd, list_marks(layout)[0].odd, strict=True):
        exact = float(row["joint to (mm, exact)"])
        assert abs(exact * 960 - mark.far) < 1
        told = row["joint to (in)"].split()
        inch = sum(int(part.split("/")[0]) / int(part.split("/")[1]) if "/" in part else int(part) for part in told)
        assert abs(inch * TICKS_PER_INCH - mark.far) <= TICKS_PER_INCH / 32


def test_no_walls_have_no_marks_but_a_header() -> None:
    layout = lay(pump_house())
    assert list_marks(Layout(layout.job, ())) == ()
    assert write_marks_csv((), "metric").startswith("wall,courses,mark,joint from (mm)")
    assert print_length(0, "metric") == "0"
