"""Caps along the tops of walls, worked by hand: openings that cut the top, corners counted once, overhangs, cuts."""

from __future__ import annotations

import re

import pytest

from tests.jobs import INCH
from tests.lists.pencil import follow
from tests.lists.walls import lay_text
from wallplan.lists.order.caps import find_tops
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.line import Line

WALL = """
title = "Landing"
measure = "feet"
sizes = "nominal"
[masonry]
unit = "block-8"
"""

FRONT = """
[[wall]]
name = "Front"
length = "20'"
height = "4'"
"""

NOTCH = """
  [[wall.opening]]
  name = "Gate"
  from_left = "4'"
  width = "4'"
  sill = "{sill}"
  height = "{height}"
  lintel = "none"
"""


def caps_of(text: str) -> Line:
    """The line of caps, its sums followed."""
    (line,) = [line for line in list_order(lay_text(text)).lines if line.item.startswith(("cap", "coping"))]
    assert {line.net, line.order} <= follow(line.why)
    return line


def test_fifteen_caps_on_twenty_feet() -> None:
    # 15 of 15 5/8 in. and 14 joints of 3/8 are 19 ft 11 5/8 in. 5 % are one more.
    line = caps_of(WALL + FRONT + "[order.cap]\nlength = '15 5/8\"'\n")
    assert (line.item, line.net, line.order, line.group) == ("cap, 15 5/8\" long", 15, 16, "other")


def test_an_overhang_and_another_length_leave_a_cut_each() -> None:
    # 239 5/8 + 2 x 1 in. by 24 in.: 10 whole (239 5/8) and 1 5/8 in. more would be a sliver: 9, and two of (23 5/8 + 1 5/8) / 2.
    line = caps_of(WALL + FRONT + "[order.cap]\nname = 'coping'\nlength = '23 5/8\"'\noverhang = '1\"'\n")
    assert line.net == 11 and "1 of 20'-1 5/8\", 9 whole and 12 5/8\" + 12 5/8\"" in line.why
    # 4 in. of overhang a side: 7 5/8 in. more than ten, over a quarter of one.
    line = caps_of(WALL + FRONT + "[order.cap]\nlength = '23 5/8\"'\noverhang = '4\"'\n")
    assert line.net == 11 and "10 whole and 7 5/8\"" in line.why


def test_a_gate_through_the_top_parts_the_caps_and_a_sill_under_it_has_none() -> None:
    for sill, height in (("0", "4'"), ("2'", "2'")):
        layout = lay_text(WALL + FRONT + NOTCH.format(sill=sill, height=height))
        tops = [(top.left / INCH, top.right / INCH, top.height / INCH) for top in find_tops(layout.walls[0], INCH // 2)]
        assert tops == [(0, 47.625, 48), (96, 239.625, 48)]
    # 3 on 47 5/8 in., 9 on 143 5/8.
    assert caps_of(WALL + FRONT + NOTCH.format(sill="0", height="4'") + "[order.cap]\nlength = '15 5/8\"'\n").net == 12


def test_a_window_under_the_top_parts_nothing() -> None:
    text = WALL + FRONT + NOTCH.format(sill="1' 4", height="1' 4").replace('"none"', '"precast"')
    assert [top.right - top.left for top in find_tops(lay_text(text).walls[0], INCH // 2)] == [239 * INCH + 5 * INCH // 8]


def test_corners_are_covered_once() -> None:
    text = WALL + "".join(f"""
[[wall]]
name = "{name}"
length = "{length}'"
height = "4'"
left = "outside corner"
right = "outside corner"
""" for name, length in (("A", 16), ("B", 12), ("C", 16), ("D", 12)))
    # Round the building on the middle of 8 in. walls: 2 x (16 + 12) ft less four corners of 8 in. = 640 in., 40 of 16.
    whole = caps_of(text + "[order.cap]\nlength = '15 5/8\"'\n")
    covered = sum(top.right - top.left for wall in lay_text(text).walls for top in find_tops(wall, INCH // 2))
    # Each of the four stretches is a joint short of its module.
    assert covered == 640 * INCH - 4 * (3 * INCH // 8) and whole.net == 40
    only = caps_of(text + "[order.cap]\nlength = '15 5/8\"'\nwalls = ['A']\n")
    assert 11 <= only.net <= 12


@pytest.mark.parametrize("length", ["7", "15 5/8", "23 5/8", "31"])
def test_caps_laid_and_left_are_caps_ordered(length: str) -> None:
    line = caps_of(WALL + FRONT + NOTCH.format(sill="0", height="4'") + f"[order.cap]\nlength = '{length}\"'\n")
    whole = sum(int(n) * int(each) for n, each in re.findall(r"(\d+) of [^,]+, (\d+) whole", line.why))
    sawn = sum(map(int, re.findall(r"sawn: (\d+) as", line.why)))
    assert whole + sawn == line.net
