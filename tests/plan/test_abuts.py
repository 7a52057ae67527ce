"""``[[wall.abuts]]``: what is read, and every mistake in a line of its own."""

from __future__ import annotations

import pytest

from tests.plan.kiosk import mistakes_in
from wallplan.lengths import TICKS_PER_INCH
from wallplan.plan.ground import Line, join_corners, place_walls
from wallplan.plan.job import Abutment, EndKind
from wallplan.plan.load import read_plan

OUT: EndKind = "outside corner"
IN: EndKind = "inside corner"
HEAD = 'title = "Net store"\nmeasure = "feet"\n[masonry]\nunit = "block-8"\n'
SIDE = '[[wall]]\nname = "{}"\nlength = "{}"\nheight = "8\'"\nleft = "outside corner"\nright = "outside corner"\n'
STORE = "".join(SIDE.format(name, length) for name, length in
                (("Landing", "20'"), ("East", "12'"), ("Water", "20'"), ("West", "12'")))
# 12 ft less two walls of 7 5/8 in.
STEM = '[[wall]]\nname = "Stem"\nlength = "10\' 8 3/4"\nheight = "8\'"\n'
LEFT = '[[wall.abuts]]\nend = "left"\nmeets = "Landing"\nat = "8\'"\n'
RIGHT = '[[wall.abuts]]\nend = "right"\nmeets = "Water"\nat = "11\' 4 3/8"\ntie = "straps"\nstrap_spacing = \'32"\'\n'
PLAN = HEAD + STORE + STEM + LEFT + RIGHT


def told(text: str) -> list[str]:
    """Each mistake without its line."""
    return [f"{place}: {message}" for _, place, message in mistakes_in(text)]


def test_a_partition_in_a_closed_building_is_read() -> None:
    job = read_plan(PLAN, "store.toml")
    stem = job.walls[4]
    assert (stem.left_end, stem.right_end) == ("abuts", "abuts")
    assert stem.abuts == (
        Abutment("left", "Landing", 96 * TICKS_PER_INCH, True, "interlocked", None),
        Abutment("right", "Water", 136 * TICKS_PER_INCH + 3 * TICKS_PER_INCH // 8, True, "straps", 32 * TICKS_PER_INCH),
    )


def test_a_nominal_wall_that_abuts_is_measured_from_face_to_face() -> None:
    text = PLAN.replace('measure = "feet"', 'measure = "feet"\nsizes = "nominal"').replace(LEFT + RIGHT, LEFT)
    stem = read_plan(text.replace("10' 8 3/4", "10' 8"), "store.toml").walls[4]
    # One end free and one against a wall's face: n units exactly.
    assert stem.length == 128 * TICKS_PER_INCH
    assert stem.abuts[0].at == 96 * TICKS_PER_INCH


@pytest.mark.parametrize(("change", "into", "message"), [
    ('meets = "Landing"', 'meets = "Landnig"', 'meets: "Landnig" is no other wall of the plan; the nearest is Landing'),
    ('meets = "Landing"', 'meets = "Stem"', 'meets: "Stem" is no other wall of the plan; write the name of another wall'),
    ('meets = "Landing"\n', "", 'meets: missing; write meets = "Water side"'),
    ("at = \"8'\"", 'at = "10"', "at: 10\" leaves no piece between this wall and an end of wall \"Landing\"; write 1'-0\" to "
     "18'-4 3/8\""),
    ('strap_spacing = \'32"\'\n', "", "strap_spacing: missing; straps are spaced by whoever answers for the structure: ask, then "
     "write strap_spacing = \"2' 8\""),
    ('strap_spacing = \'32"\'', 'strap_spacing = \'6"\'', 'strap_spacing: 6" is less than a course; straps lie in beds: write at '
     'least 8"'),
    ('tie = "straps"\n', "", 'strap_spacing: has no meaning without straps; leave it out, or write tie = "straps"'),
    ('end = "right"', 'end = "left"', 'end: the left end abuts twice; write "left" in one and "right" in the other'),
    ('name = "Stem"\n', 'name = "Stem"\nleft = "inside corner"\n',
     'end: the wall\'s left is "inside corner"; an end that abuts another wall is no corner: leave left out'),
    ("length = \"10' 8 3/4\"", "length = \"10' 6 3/4\"", 'at: the wall\'s right end comes 2" short of the place on wall "Water"; '
     "mend its length, or where it begins"),
    ("length = \"10' 8 3/4\"", "length = \"10' 9 3/4\"", 'at: the wall\'s right end comes 1" too far of the place on wall "Water"; '
     "mend its length, or where it begins"),
    ("at = \"11' 4 3/8\"", "at = \"11' 6 3/8\"", 'at: the wall\'s right end comes 2" aside of the place on wall "Water"; mend its '
     "length, or where it begins"),
])
def test_each_mistake_is_told(change: str, into: str, message: str) -> None:
    place, said = message.split(": ", 1)
    lines = [line for line in told(PLAN.replace(change, into, 1) if change != 'end = "right"' else PLAN.replace(change, into))
             if "Stem" in line.split(": ")[0]]
    assert any(line.startswith('wall "Stem", abuts') and line.endswith(f"{place}: {said}") for line in lines), lines


def test_a_wall_that_stands_in_a_door_or_on_a_control_joint_is_told() -> None:
    door = "[[wall.opening]]\nname = \"Door\"\nfrom_left = \"7'\"\nwidth = \"3' 4\"\nheight = \"7' 4\"\n"
    landing = SIDE.format("Landing", "20'")
    (line,) = told(PLAN.replace(landing, landing + door))
    assert 'the wall stands in or beside opening "Door" of wall "Landing"; keep 4 3/8" of masonry between them' in line
    (line,) = told(PLAN.replace(landing, landing + 'control_joints = ["8\' 4"]\n'))
    assert "the wall stands on or beside the control joint at 8'-4\"" in line


def test_walls_go_round_before_what_abuts_them_and_the_last_to_the_first() -> None:
    assert join_corners([(OUT, OUT)] * 4 + [("abuts", "abuts")]) == (1, 2, 3, 0, None)
    assert join_corners([("end", OUT), (OUT, "end"), ("abuts", "end")]) == (1, None, None)
    assert join_corners([(OUT, "end"), ("end", OUT)]) == (None, 0)
    assert join_corners([(OUT, OUT)]) == (None,)
    assert join_corners([]) == ()


def test_walls_are_placed_by_what_they_abut() -> None:
    # A main wall of 100 along the x axis, 10 thick, its body above; a stem of 50 from its inside at 40, one to its outside.
    main = Line("main", 100, "end", "end")
    inner = Line("inner", 50, "abuts", "end", (Abutment("left", "main", 40, True, "straps"),))
    outer = Line("outer", 50, "end", "abuts", (Abutment("right", "main", 40, False, "straps"),))
    found = place_walls([main, inner, outer], 10).standings
    # Running up, its body to its left, x from 40 to 50; running up to y = 0 likewise.
    assert [(one.x, one.y, one.dx, one.dy) for one in found] == [(0, 0, 1, 0), (50, 10, 0, 1), (50, -50, 0, 1)]
    assert {one.group for one in found} == {0}


def test_two_walls_hang_together_by_one_between_them() -> None:
    between = Line("between", 80, "abuts", "abuts", (
        Abutment("left", "one", 30, True, "straps"), Abutment("right", "other", 60, True, "straps")))
    ground = place_walls([Line("one", 100, "end", "end"), Line("other", 100, "end", "end"), between], 10)
    assert ground.amiss == ()
    # The other wall runs the other way, 80 and a thickness off: its 60 lies over the first one's 40.
    assert ground.standings[1][1:] == (100, 100, -1, 0)


GARDEN = HEAD + '[[wall]]\nname = "Garden wall"\nlength = "24\' 8"\ncourses = 8\n{}'
PIER = '[[wall.pier]]\nfrom_left = "{}"\n{}'


def test_a_pier_is_a_short_wall_tied_through_its_wall() -> None:
    job = read_plan(GARDEN.format(PIER.format("8'", "") + PIER.format("16'", "name = \"Gate pier\"\nface = \"outside\"\n")), "g.toml")
    first, second = job.walls[1:]
    # A full unit of 15 5/8 in. runs through a wall of 7 5/8 in.: 8 in. stand out.
    assert (first.name, first.length, first.height) == ("Garden wall, pier 1", 8 * TICKS_PER_INCH, job.walls[0].height)
    assert first.abuts == (Abutment("left", "Garden wall", 96 * TICKS_PER_INCH, True, "interlocked", None),)
    assert (second.name, second.abuts[0].inside) == ("Gate pier", False)


@pytest.mark.parametrize(("pier", "message"), [
    (PIER.format("2", ""), "from_left: 2\" leaves no piece between this pier and an end of wall \"Garden wall\"; write 4 3/8\" to "
                           "23'-8\""),
    (PIER.format("8'", 'projects = "2"\n'), 'projects: 2" leaves no piece before the wall\'s face; write at least 4"'),
    (PIER.format("8'", 'name = "Garden Wall"\n'), 'name: "Garden Wall" is the name of another wall or pier, or has no letters; '
                                                 "write one that differs in its letters and digits"),
    (PIER.format("8'", "") + PIER.format("8' 6", 'name = "Garden Wall 2"\n'), 'from_left: 6" from another wall or pier that abuts '
     'wall "Garden wall"; keep 1\'-0" from side to side'),
    ("[[wall.pier]]\n", "from_left: missing; write from_left = \"7' 8\""),
])
def test_a_pier_that_cannot_be_is_told(pier: str, message: str) -> None:
    (line,) = told(GARDEN.format(pier))
    assert line.startswith('wall "Garden wall", pier ') and line.endswith(f": {message}")


def test_a_pier_that_stands_where_two_others_do_is_told_once() -> None:
    pier = "[[wall.pier]]\nfrom_left = \"8'\"\n"
    lines = told(GARDEN.format(3 * pier))
    assert len(lines) == len(set(lines)) == 2, lines
