"""Walls of unequal height that meet: low returns, parapets, low partitions, tops off the coursing. Expected by pencil."""

from __future__ import annotations

import random
from itertools import pairwise

import pytest

from tests.jobs import broken, inches
from tests.long_run import LONG
from wallplan.layout.build import lay
from wallplan.layout.model import Course, Layout
from wallplan.plan.load import read_plan
from wallplan.rules.check import check

TOP = 'title = "Ferry landing"\nmeasure = "feet"\nsizes = "nominal"\nmasonry.unit = "{unit}"\n'
OUT, IN = "outside corner", "inside corner"


def lay_walls(unit: str, *walls: str) -> Layout:
    return lay(read_plan(TOP.format(unit=unit) + "".join(f"[[wall]]\n{wall}\n" for wall in walls), "landing.toml"))


def wall(name: str, length: str, height: str, left: str = "end", right: str = "end", more: str = "") -> str:
    return f'name = "{name}"\nlength = "{length}"\nheight = "{height}"\nleft = "{left}"\nright = "{right}"\n{more}'


def low_return(unit: str = "block-8", low: str = "4'") -> Layout:
    """A wall 16 ft long and 8 ft high with a low return of 8 ft round its right corner."""
    return lay_walls(unit, wall("Quay", "16'", "8'", right=OUT), wall("Return", "8'", low, left=OUT))


def ends(course: Course) -> tuple[int, int]:
    own = [piece for piece in course.pieces if piece.shape != "return"]
    return min(piece.left for piece in own), max(piece.right for piece in own)


@pytest.mark.parametrize("unit", ["block-4", "block-6", "block-8", "block-10", "block-12"])
def test_up_to_the_low_walls_top_they_run_through_in_turn_and_over_it_the_high_ones_end_is_free(unit: str) -> None:
    layout = low_return(unit)
    quay, low = layout.walls
    assert broken(check(layout)) == []
    stops = quay.wall.length - layout.job.masonry.unit.thickness - layout.job.masonry.joint
    through = [ends(course)[1] == quay.wall.length for course in quay.courses]
    assert all(one is not other for one, other in pairwise(through[:6]))
    assert {ends(course)[1] for course in quay.courses[:6]} == {quay.wall.length, stops}
    assert through[6:] == [True] * 6
    assert [ends(course)[0] == 0 for course in low.courses] == [not one for one in through[:6]]


def test_in_8_in_block_nothing_is_cut_and_the_bond_goes_on_over_the_low_wall() -> None:
    # The high wall's end over the return: full and half in turn, a half over each unit that stopped there.
    quay, low = low_return().walls
    assert quay.cutting == low.cutting == 0
    assert [course.pieces[-1].piece for course in quay.courses[6:]] in (["full", "half"] * 3, ["half", "full"] * 3)
    # Twelve units in six courses, a half and eleven where the wall stops, two halves and eleven over those; six in the return's.
    assert sum(piece.shape != "return" for wall in (quay, low) for course in wall.courses for piece in course.pieces) == \
        6 * 12 + 3 * 12 + 3 * 13 + 6 * 6


def test_each_end_is_drawn_once_as_long_as_both_stand() -> None:
    quay, low = low_return().walls
    pieces = [piece for wall in (quay, low) for course in wall.courses for piece in course.pieces]
    assert sorted(piece.of for piece in pieces if piece.shape == "return") == ["Quay"] * 3 + ["Return"] * 3


@pytest.mark.parametrize(("low", "rip"), [("4' 5", "4 5/8"), ("4' 3", "2 5/8")])
def test_over_a_ripped_last_course_the_high_wall_runs_through(low: str, rip: str) -> None:
    # 4 ft are six courses; what is left over the sixth is ripped, so the high wall is laid through there, and the low wall
    # through in course 6 under it: no joint runs up the corner.
    layout = low_return(low=low)
    quay, wall = layout.walls
    assert broken(check(layout)) == []
    assert len(wall.courses) == 7
    assert {piece.height for piece in wall.courses[6].pieces if piece.shape != "return"} == {inches(rip)}
    assert [ends(course)[1] == quay.wall.length for course in quay.courses[5:]] == [False] + [True] * 6


def test_walls_that_meet_share_one_coursing_off_the_gauge() -> None:
    # 8 ft 4 in. leave 3 5/8 in. over twelve courses. One wall's sill would have the odd course first, the other's last: they
    # must agree, or no course would meet at the corner.
    sill = "[[wall.opening]]\nfrom_left = \"8'\"\nwidth = \"3' 4\"\nsill = {}\nheight = 40\nlintel = \"steel\""
    layout = lay_walls("block-8", wall("Quay", "24'", "8' 4", right=OUT, more=sill.format(4)),
                       wall("Slip", "16'", "8' 4", left=OUT, more=sill.format(8)))
    assert [course.top for course in layout.walls[0].courses] == [course.top for course in layout.walls[1].courses]
    assert {finding.rule for finding in broken(check(layout))}.isdisjoint({"corners", "in plan", "cover"})


def test_at_an_inside_corner_the_high_wall_goes_on_over_the_low_ones_end() -> None:
    layout = lay_walls("block-8", wall("Quay", "16'", "8'", right=IN), wall("Return", "8'", "4'", left=IN))
    assert broken(check(layout)) == []
    quay = layout.walls[0]
    assert {ends(course)[1] - quay.wall.length for course in quay.courses[6:]} == {inches("7 5/8")}


PARTITION = "[[wall.abuts]]\nmeets = \"Quay\"\nat = \"8'\""


def test_a_partition_lower_than_the_wall_is_tied_in_by_every_other_of_its_own_courses() -> None:
    layout = lay_walls("block-8", wall("Quay", "16'", "8'"), wall("Stall", "8'", "4'", more=PARTITION).replace('left = "end"\n', ""))
    assert broken(check(layout)) == []
    quay, stall = layout.walls
    through = [ends(course)[0] < 0 for course in stall.courses]
    assert through in ([True, False] * 3, [False, True] * 3)
    parts = [any(piece.of == "Stall" for piece in course.pieces) for course in quay.courses]
    assert parts == through + [False] * 6


def test_a_wall_higher_than_the_one_it_is_tied_into_stands_over_it_in_every_course() -> None:
    layout = lay_walls("block-8", wall("Quay", "16'", "4'"), wall("Stall", "8'", "8'", more=PARTITION).replace('left = "end"\n', ""))
    assert broken(check(layout)) == []
    stall = layout.walls[1]
    assert {ends(course)[0] for course in stall.courses[6:]} == {-inches("7 5/8")}


def test_a_closed_shed_with_gables_on_its_ends_holds_every_rule() -> None:
    # The everyday shed: 24 by 16 ft, 8 ft to the eaves, two gables of 8/12 over the short walls, a door and a window.
    door = "[[wall.opening]]\nfrom_left = \"8'\"\nwidth = \"3' 4\"\nheight = \"6' 8\""
    gable = '[[wall.gable]]\npitch = "8/12"\n'
    window = "[[wall.opening]]\nfrom_left = \"6'\"\nwidth = \"4'\"\nsill = \"2' 8\"\nheight = \"4'\""
    layout = lay_walls("block-8", wall("North", "24'", "8'", OUT, OUT, door), wall("East", "16'", "8'", OUT, OUT, gable + window),
                       wall("South", "24'", "8'", OUT, OUT), wall("West", "16'", "8'", OUT, OUT, gable))
    assert broken(check(layout)) == []
    # 8/12 over 15 ft 11 5/8 in.: 5 ft 3 7/8 in., so seven courses and the tip; two raked cuts in each.
    raked = [sum(piece.rake is not None for course in wall.courses for piece in course.pieces) for wall in layout.walls]
    assert raked == [0, 16, 0, 16]


def random_walls(number: int) -> Layout:
    """Two walls at a corner, three sides, or a closed rectangle, each wall of another height; some lower tops off the coursing."""
    chance = random.Random(f"unequal {number}")
    unit = chance.choice(["block-4", "block-6", "block-8", "block-10", "block-12"])
    corners = chance.choice([["end", OUT], ["end", IN], ["end", OUT, OUT], [OUT] * 4])
    across, deep = (chance.randint(10, 20) * 8 for _ in range(2))
    highs = [chance.randint(3, 10) * 8 for _ in corners]
    highs = [high - (chance.choice([0, 0, 0, 2, 3, 4]) if high < max(highs) else 0) for high in highs]
    walls = []
    for index, (left, high) in enumerate(zip(corners, highs, strict=True)):
        right = corners[(index + 1) % len(corners)]
        more = "[[wall.opening]]\nfrom_left = 48\nwidth = 32\nsill = 8\nheight = 8\nlintel = \"none\"" \
            if chance.random() < 0.3 and (across, deep)[index % 2] >= 128 and high > 24 else ""
        walls.append(wall(f"Side {index}", str((across, deep)[index % 2]), str(high), left, right, more))
    return lay_walls(unit, *walls)


@pytest.mark.parametrize("first", range(0, 800 if LONG else 24, 8))
def test_random_walls_of_unequal_height_keep_every_rule(first: int) -> None:
    found = {number: [f"{one.rule}: {one.where}: {one.figure}" for one in broken(check(random_walls(number)))]
             for number in range(first, first + 8)}
    assert {number: wrong for number, wrong in found.items() if wrong} == {}


def test_two_low_walls_ripped_unequally_show_each_others_units_as_high_as_they_are() -> None:
    layout = lay_walls("block-8", wall("Quay", "16'", "8'", right=OUT), wall("Low", "8'", "4' 3", left=OUT, right=OUT),
                       wall("Return", "8'", "4' 5", left=OUT))
    assert broken(check(layout)) == []
    seen = next(piece for piece in layout.walls[1].courses[6].pieces if piece.of == "Return")
    assert seen.height == inches("4 5/8")
    assert [wall.courses[-1].top for wall in layout.walls] == [inches(96), inches(51), inches(53)]


def lean_to(unit: str, across: int, deep: int, low: int, rise: int) -> Layout:
    """Four walls under a roof of one slope: a low front, a high back, and sides that rise from the one to the other."""
    slope = f"[[wall.gable]]\nrise = {rise}\nridge = "
    return lay_walls(unit, wall("Front", str(across), str(low), OUT, OUT), wall("Right", str(deep), str(low), OUT, OUT, f"{slope}{deep}"),
                     wall("Back", str(across), str(low + rise), OUT, OUT), wall("Left", str(deep), str(low), OUT, OUT, f"{slope}0"))


def test_a_lean_to_goes_round_its_high_corners_up_to_the_back_walls_top() -> None:
    # 16 by 8 ft, 6 ft 8 in. in front, 9 ft 4 in. behind: 4 in 12, so a course of 8 in. loses 24 in. and one unit of 16 in.
    # cannot take the slope: two raked cuts in each of four courses, one in the last, where the back wall's end stands.
    layout = lean_to("block-8", 192, 96, 80, 32)
    assert broken(check(layout)) == []
    right, back = layout.walls[1], layout.walls[2]
    assert [sum(piece.rake is not None for piece in course.pieces) for course in right.courses] == [0] * 10 + [2, 2, 2, 1]
    through = [course.pieces[0].shape != "return" for course in back.courses]
    assert all(one is not other for one, other in pairwise(through))
    assert [max(course.pieces, key=lambda piece: piece.right).shape == "return" for course in right.courses] == through


@pytest.mark.parametrize("first", range(0, 400 if LONG else 24, 8))
def test_random_lean_tos_keep_every_rule(first: int) -> None:
    for number in range(first, first + 8):
        chance = random.Random(f"lean-to {number}")
        unit = chance.choice(["block-4", "block-6", "block-8", "block-10", "block-12"])
        across, deep, low, rise = (chance.randint(*sizes) * 8 for sizes in ((10, 20), (8, 16), (4, 9), (2, 6)))
        assert broken(check(lean_to(unit, across, deep, low, rise))) == [], number


@pytest.mark.parametrize(("unit", "deep", "low", "rise"), [("block-8", 64, 48, 48), ("block-12", 72, 40, 40)])
def test_what_is_left_between_a_slope_and_the_back_wall_is_no_sliver(unit: str, deep: int, low: int, rise: int) -> None:
    # 12 in 12 and near it: in the last course the slope comes within 2 in. or so of the back wall's end: mortar or the coping.
    layout = lean_to(unit, 160, deep, low, rise)
    assert broken(check(layout)) == []
    least = layout.job.masonry.least_piece - layout.job.masonry.joint
    assert all(piece.length >= least for wall in layout.walls for course in wall.courses for piece in course.pieces)
