"""Walls one brick thick, piece by piece, against hand answers."""

from __future__ import annotations

import random
from dataclasses import replace
from itertools import pairwise

import pytest

from tests.jobs import MM, broken, make_job, make_masonry, make_opening, make_wall, pieces_of
from tests.layout.buildings import IN, OUT, build, rectangle
from wallplan.layout.as_json import layout_as_json
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.job import Bond, Masonry
from wallplan.plan.load import read_plan
from wallplan.rules.check import check

LETTERS = {"header": "H", "closer": "C", "stretcher": "S", "return": "r"}


def one_brick(bond: Bond = "flemish", unit: str = "brick-uk") -> Masonry:
    """Masonry in a bond with headers, as a plan gives it."""
    plain = make_masonry(unit)
    return make_masonry(unit, bond, least_lap=plain.unit.length // 4, least_piece=plain.module // 2)


def lay_free(length: float, height: float = 900, bond: Bond = "flemish") -> Layout:
    """A free wall of UK brick in mm."""
    return lay(make_job(one_brick(bond), make_wall(round(length * MM), round(height * MM)), measure="metric"))


def drawn(layout: Layout, course: int, wall: int = 0) -> str:
    """A course's face in letters, sawn pairs by their mark."""
    return "".join(piece.mark if piece.piece == "cut" and piece.mark else LETTERS[piece.shape]
                   for piece in pieces_of(layout, course, wall))


@pytest.mark.parametrize(("length", "repeats"), [(4265, 12), (4602.5, 13)])
def test_wall_situation_6_the_lengths_that_the_hand_offers_are_whole_flemish_bond(length: float, repeats: int) -> None:
    layout = lay_free(length)
    assert drawn(layout, 1) == "S" + "HS" * repeats
    assert drawn(layout, 2) == "HCS" + "HS" * (repeats - 1) + "CH"
    assert not broken(check(layout)) and layout.walls[0].cutting == 12 and layout.walls[0].joints == (10 * MM, 10 * MM)


def test_wall_situation_6_if_refused_carries_a_broken_bond_at_the_centre() -> None:
    layout = lay_free(4500)
    wall = layout.walls[0]
    for course in wall.courses:
        faces = [(piece.left, piece.length) for piece in course.pieces]
        assert min(length for _, length in faces if length > 47 * MM) == 102.5 * MM  # pieces not under a header
        closers = [place for place, piece in enumerate(course.pieces) if piece.shape == "closer"]
        assert closers == ([] if course.number % 2 else [1, len(faces) - 2])  # closers only at quoins
        doubles = [two.left for one, two in pairwise(course.pieces) if one.shape == two.shape == "stretcher"]
        assert len(doubles) == 1 and abs(doubles[0] / MM - 2250) < 225  # the one broken place, at the centre
    assert not broken(check(layout))
    # "10 mm lost over 26 joints (0.4 each)"
    assert [len(course.pieces) - 1 for course in wall.courses[:2]] == [25, 27]
    assert 0.3 * MM < wall.joints[0] - 10 * MM <= wall.joints[1] - 10 * MM <= 0.4 * MM


def test_every_stretcher_has_its_like_behind_it_and_nothing_else_has() -> None:
    layout = lay_free(4265)
    for course in layout.walls[0].courses:
        fronts = [piece for piece in course.pieces if piece.shape == "stretcher"]
        assert [(one.left, one.length) for one in course.backing] == [(one.left, one.length) for one in fronts]
        assert {one.leaf for one in fronts} == {"front"} and {one.leaf for one in course.backing} == {"back"}
        assert {one.leaf for one in course.pieces if one.shape != "stretcher"} <= {"through"}


def test_english_bond_has_courses_of_stretchers_and_of_headers() -> None:
    layout = lay_free(4490, bond="english")
    assert drawn(layout, 1) == "S" * 20 and drawn(layout, 2) == "HC" + "H" * 37 + "CH"
    assert not broken(check(layout))


def test_the_json_tells_what_stands_behind() -> None:
    first, second = layout_as_json(lay_free(552.5, 150), ())["walls"][0]["courses"]  # type: ignore[index]
    assert [(one["left"], one["shape"], one["leaf"]) for one in first["pieces"]] == [
        (0.0, "stretcher", "front"), (225.0, "header", "through"), (337.5, "stretcher", "front")]
    assert [one["left"] for one in first["backing"]] == [0.0, 337.5]
    assert [(one["piece"], one["length"], one["mark"]) for one in second["pieces"]][1] == ("closer", 46.25, "A")


def lay_returns(front: float, returns: float, bond: Bond = "flemish") -> Layout:
    """A front between two returns of one length, 12 courses, in mm."""
    walls = [make_wall(round(length * MM), 900 * MM, name=name)
             for name, length in (("Left", returns), ("Front", front), ("Right", returns))]
    return lay(make_job(one_brick(bond), replace(walls[0], right_end=OUT), replace(walls[1], left_end=OUT, right_end=OUT),
                        replace(walls[2], left_end=OUT), measure="metric"))


def test_wall_situation_6_with_returns_keeps_the_bond_at_the_length_that_the_hand_offers() -> None:
    layout = lay_returns(4602.5, 1227.5)
    faces = [drawn(layout, course, 1) for course in (1, 2)]
    assert sorted(faces) == sorted(["S" + "HS" * 13, "rCS" + "HS" * 12 + "Cr"])
    through = faces.index("S" + "HS" * 13) + 1
    assert drawn(layout, through, 0) == "HCSHSHSCr" and drawn(layout, 3 - through, 0) == "SHSHSHS"
    assert not broken(check(layout))


def test_wall_situation_6_with_returns_as_asked_is_laid_with_every_rule_held() -> None:
    layout = lay_returns(4500, 1200)
    assert not broken(check(layout))
    for course in layout.walls[1].courses:
        assert all(piece.length >= 102.5 * MM for piece in course.pieces if piece.shape != "closer")
        assert sum(one.shape == two.shape == "stretcher" for one, two in pairwise(course.pieces)) == 1


def test_a_quoin_is_one_brick_with_the_other_wall_behind_it() -> None:
    layout = lay_returns(4602.5, 1227.5)
    through = next(course for course in layout.walls[1].courses if course.pieces[0].shape == "stretcher")
    assert (through.pieces[0].left, through.pieces[0].leaf) == (0, "front")
    assert min(piece.left for piece in through.backing) > 225 * MM
    other = next(course for course in layout.walls[1].courses if course.pieces[0].shape == "return")
    assert (other.pieces[0].length, other.pieces[0].of, other.pieces[1].left) == (102.5 * MM, "Left", 112.5 * MM)


def test_english_bond_turns_a_corner_from_stretchers_to_headers() -> None:
    layout = lay_returns(4490, 1115, "english")
    front, side = drawn(layout, 1, 1), drawn(layout, 1, 0)
    assert {front, drawn(layout, 2, 1)} == {"S" * 20, "rC" + "H" * 37 + "Cr"}
    assert (set(front) == {"S"}) is (set(side) - set("rC") == {"H"})
    assert not broken(check(layout))


@pytest.mark.parametrize("number", range(8))
def test_random_buildings_hold_every_rule_in_plan_too(number: int) -> None:
    chance = random.Random(f"one brick {number}")
    unit = chance.choice(("brick-uk", "brick-au", "brick-modular"))
    masonry = one_brick(("flemish", "english")[number % 2], unit)
    a, b, c, d = (chance.randrange(5 * masonry.module, 14 * masonry.module) for _ in range(4))
    high = masonry.unit.height_of_courses(4)
    job = rectangle(masonry, a, b, high) if number % 4 < 2 else build(
        masonry, high, (a + b, OUT), (c, OUT), (b, IN), (d, OUT), (a, OUT), (c + d, OUT))
    layout = lay(job)
    findings = check(layout)
    assert not broken(findings) and not any(wall.doubtful for wall in layout.walls)
    assert [one.rule for one in findings].count("in plan") == 1


def test_jambs_on_the_bond_have_closers_in_their_reveals() -> None:
    # Course lengths by hand: 890 (S HS HS), 797.5 open (H SH SH and a joint over the brickwork), 890 again.
    opening = make_opening(890 * MM, round(1687.5 * MM), 150 * MM, 450 * MM, "steel", 100 * MM, "Window")
    layout = lay(make_job(one_brick(), make_wall(round(2577.5 * MM), 600 * MM, (opening,)), measure="metric"))
    assert not broken(check(layout))
    whole, beside = {drawn(layout, 1), drawn(layout, 2)}, {drawn(layout, 3), drawn(layout, 4)}
    assert whole == {"S" + "HS" * 7, "HCS" + "HS" * 6 + "CH"}
    assert beside == {"SHSHS" * 2, "HCSHSCH" * 2}


def test_control_joints_end_the_bond_on_both_sides() -> None:
    wall = make_wall(1790 * MM, 300 * MM, control_joints=(895 * MM,))
    layout = lay(make_job(one_brick(), wall, measure="metric"))
    assert {drawn(layout, 1), drawn(layout, 2)} == {"SHSHS" * 2, "HCSHSCH" * 2} and not broken(check(layout))


def test_a_precast_lintel_takes_the_place_of_both_leaves() -> None:
    opening = make_opening(890 * MM, round(1687.5 * MM), 0, 300 * MM, "precast", 100 * MM)
    layout = lay(make_job(one_brick(), make_wall(round(2577.5 * MM), 450 * MM, (opening,)), measure="metric"))
    course = layout.walls[0].courses[4]
    lintel = next(piece for piece in course.pieces if piece.shape == "precast")
    assert not any(piece.left < lintel.right and piece.right > lintel.left for piece in course.backing)
    assert not broken(check(layout))


def test_leads_rack_back_without_an_overhang() -> None:
    wall = lay_free(4602.5).walls[0]
    reaches = [max((piece.right for piece in course.pieces if piece.lead == "left"), default=0) for course in wall.courses[:6]]
    assert reaches == sorted(reaches, reverse=True) and reaches[0] > 1000 * MM


def test_openings_off_the_bond_are_met_with_broken_bond_and_every_rule_held() -> None:
    door = make_opening(890 * MM, 1810 * MM, 0, 300 * MM, "steel", 100 * MM)
    window = make_opening(round(2702.5 * MM), round(3712.5 * MM), 150 * MM, 300 * MM, "steel", 100 * MM, "Window")
    layout = lay(make_job(one_brick(), make_wall(round(4602.5 * MM), 450 * MM, (door, window)), measure="metric"))
    assert not broken(check(layout))
    closers = [piece for course in layout.walls[0].courses for piece in course.pieces if piece.shape == "closer"]
    assert closers and not layout.walls[0].everywhere


def test_over_a_lower_wall_the_higher_one_has_a_quoin_of_its_own() -> None:
    plan = """title = "Quay"
measure = "metric"
[masonry]
unit = "brick-uk"
bond = "flemish"
[[wall]]
name = "High"
length = 2240
courses = 8
right = "outside corner"
[[wall]]
name = "Low"
length = 1902.5
courses = 5
left = "outside corner"
"""
    layout = lay(read_plan(plan, "quay.toml"))
    assert not broken(check(layout))
    for number in (1, 2):
        below, above = drawn(layout, number), drawn(layout, number + 6 if number == 1 else 6)
        assert above == below.replace("Cr", "CH")  # what the other wall's end was is now a header of its own
    quoins = [course.pieces[-1] for course in layout.walls[0].courses if course.pieces[-1].shape == "stretcher"]
    assert {piece.leaf for piece in quoins} == {"front"}
    behind = {course.number for course in layout.walls[0].courses if any(
        piece.right == layout.walls[0].wall.length for piece in course.backing)}
    assert behind == {course.number for course in layout.walls[0].courses[5:] if course.pieces[-1].shape == "stretcher"}
