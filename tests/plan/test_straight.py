"""Walls that go straight on: the same wall as if it had been written in one; what cannot go straight on is told."""

from __future__ import annotations

from typing import Any

import pytest

from tests.plan.kiosk import mistakes_in
from wallplan.layout.as_json import layout_as_json
from wallplan.layout.build import lay
from wallplan.lengths import read_length
from wallplan.plan.load import read_plan
from wallplan.rules.check import check

HEAD = 'title = "Quay wall"\nmeasure = "feet"\nsizes = "{}"\n[masonry]\nunit = "block-8"\n'
DOOR = '[[wall.opening]]\nname = "{}"\nfrom_left = "{}"\nwidth = "3\' 4"\nheight = "6\' 8"\n'


def wall(name: str, length: str, left: str = "end", right: str = "end", rest: str = "") -> str:
    return (f'[[wall]]\nname = "{name}"\nlength = "{length}"\ncourses = 12\nleft = "{left}"\nright = "{right}"\n'
            f'{rest}')


def pieces(text: str) -> list[Any]:
    layout = lay(read_plan(text, "quay.toml"))
    findings = check(layout)
    assert all(finding.held for finding in findings)
    walls: Any = layout_as_json(layout, findings)["walls"]
    return [(wall["name"], wall["courses"]) for wall in walls]


def renamed(text: str) -> str:
    return text.replace("Quay and Ramp", "Whole").replace("Ramp and Quay", "Whole")


@pytest.mark.parametrize("sizes", ["nominal", "actual"])
def test_two_that_go_straight_on_are_laid_as_the_one_they_make(sizes: str) -> None:
    head = HEAD.format(sizes)
    apart = read_plan(head + wall("Quay", "9' 4", right="straight", rest=DOOR.format("Gate", "4'"))
                      + wall("Ramp", "10' 8", left="straight", rest='control_joints = ["5\' 4"]\n'), "quay.toml")
    whole = read_plan(head + wall("Quay and Ramp", "20'", rest='control_joints = ["14\' 8"]\n' + DOOR.format("Gate", "4'")),
                      "quay.toml")
    (one,), (other,) = apart.walls, whole.walls
    assert one.parts == (("Quay", 0), ("Ramp", read_length("9' 4", "feet")))
    assert (one.name, one.length, one.control_joints, one.openings) == (
        other.name, other.length, other.control_joints, other.openings)
    assert [wall.courses for wall in lay(apart).walls] == [wall.courses for wall in lay(whole).walls]


def test_a_closed_building_may_be_written_from_the_middle_of_a_side() -> None:
    def turn(name: str, length: str, left: str = "outside corner", right: str = "outside corner") -> str:
        return wall(name, length, left, right)

    rest = turn("East", "8'") + turn("North", "16'") + turn("West", "8'")
    head = HEAD.format("nominal")
    split = head + turn("Quay", "6'", left="straight") + rest + turn("Ramp", "10'", right="straight")
    whole = head + rest + turn("Whole", "16'")
    assert renamed(str(pieces(split))) == str(pieces(whole))


def test_openings_of_the_same_name_are_told_apart_by_their_part() -> None:
    job = read_plan(HEAD.format("actual") + wall("Quay", "10'", right="straight", rest=DOOR.format("Gate", "4'"))
                    + wall("Ramp", "10'", left="straight", rest=DOOR.format("Gate", "4'")), "quay.toml")
    assert [opening.name for opening in job.walls[0].openings] == ["Gate (Quay)", "Gate (Ramp)"]


@pytest.mark.parametrize(("walls", "line", "told"), [
    (wall("Quay", "9' 4", right="straight") + wall("Ramp", "10'"), 11,
     'right: wall "Quay" ends on the right with "straight", but the left of wall "Ramp" is "end"; write the same in both'),
    (wall("Quay", "9' 4", right="straight") + wall("Ramp", "10'", left="straight").replace("courses = 12", "courses = 9"), 15,
     'courses: 6\'-0", but wall "Quay", from which it goes straight on, is 8\'-0" high; write one height for both, or "end" '
     "on both sides"),
    (wall("Quay", "9' 4", right="straight", rest="bond_beams = [12]\n") + wall("Ramp", "10'", left="straight"), 17,
     'left: courses none are bond beams, but wall "Quay", from which it goes straight on, has 12; a bond beam runs through '
     "both: write the same in both"),
    (wall("Quay", "9' 4", right="straight", rest=DOOR.format("Gate", "8'"))
     + wall("Ramp", "10'", left="straight", rest=DOOR.format("Door", "1'")), 25,
     'from_left: the opening meets opening "Gate" by 1\'-0" across and 6\'-8" up; move one, so that masonry is left between '
     "them, or write one opening in place of both"),
    (wall("Quay", "9' 4", left="straight", right="straight"), 11,
     'right: a wall that stands alone has no corner; write "end"'),
])
def test_what_cannot_go_straight_on_is_told_where_it_stands(walls: str, line: int, told: str) -> None:
    ((where, _, message),) = mistakes_in(HEAD.format("actual") + walls)
    assert (where, message) == (line, told)
