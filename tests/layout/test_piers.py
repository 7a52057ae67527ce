"""Piers wider or thicker than their wall: how many units by hand, which courses tie them in, what the wall shows of them."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from random import Random

import pytest

from tests.jobs import MM, broken, inches, make_job, make_masonry, make_opening, make_wall
from wallplan.layout.as_json import layout_as_json
from wallplan.layout.build import lay
from wallplan.layout.model import Layout, PierLayout
from wallplan.lists.order.counted import counted_pieces
from wallplan.plan.job import Pier
from wallplan.plan.pier_sizes import find_lattice
from wallplan.rules.check import check


def mm(value: str) -> int:
    return int(Fraction(value) * MM)


def pier(left: str, width: str, front: str, back: str, name: str = "pier") -> Pier:
    return Pier(name, *(mm(size) for size in (left, width, front, back)))


def lay_with(*piers: Pier, unit: str = "brick-uk", length: str = "4715", courses: int = 6, **changes: object) -> Layout:
    """A wall of so many millimetres with these piers, laid."""
    masonry = make_masonry(unit)
    wall = make_wall(mm(length), masonry.unit.height_of_courses(courses), name="Wall")
    return lay(make_job(masonry, replace(wall, piers=piers, **changes), measure="metric"))


def units(laid: PierLayout, *, tied: bool) -> Counter[str]:
    """The units of a course that ties the pier in, or of one in which the wall goes on."""
    course = next(course for course in laid.courses if course.tied is tied)
    return Counter(one.piece.piece for one in course.pieces)


@pytest.mark.parametrize(("unit", "size", "tied", "plain"), [
    # A half-brick wall and a pier of one brick by one behind it: two headers through; then a stretcher behind the wall's own.
    ("brick-uk", ("215", "0", "112.5"), {"full": 2}, {"full": 1}),
    # Two bricks by two behind it: 440 x 440 is 8 bricks; the wall's strip left out, 440 x 327.5 is 6.
    ("brick-uk", ("440", "0", "337.5"), {"full": 8}, {"full": 6}),
    # Two of 215 mm block through the wall, and one behind it.
    ("block-uk-215", ("440", "0", "225"), {"full": 2}, {"full": 1}),
])
def test_a_pier_takes_the_units_that_a_pencil_counts(unit: str, size: tuple[str, str, str], tied: dict[str, int],
                                                     plain: dict[str, int]) -> None:
    layout = lay_with(pier("2250", *size), unit=unit)
    (laid,) = layout.walls[0].piers
    assert (units(laid, tied=True), units(laid, tied=False)) == (tied, plain)
    assert (laid.cutting, laid.straight[0]) == (0, 0)
    assert broken(check(layout)) == []


def test_units_are_tied_in_by_every_other_course_and_the_wall_goes_on_in_the_rest() -> None:
    layout = lay_with(pier("2250", "215", "0", "112.5"))
    wall = layout.walls[0]
    (laid,) = wall.piers
    assert [course.tied for course in laid.courses] == [True, False] * 3
    # Tied: two headers from face to face, which show their ends in the wall; else a stretcher a joint behind it.
    first, second = laid.courses[:2]
    assert [(one.piece.left, one.near, one.along, one.deep) for one in first.pieces] == [
        (mm("2250"), 0, mm("102.5"), mm("215")), (mm("2362.5"), 0, mm("102.5"), mm("215"))]
    assert [(one.piece.left, one.near, one.along, one.deep) for one in second.pieces] == [
        (mm("2250"), mm("112.5"), mm("215"), mm("102.5"))]
    ends = [(piece.left, piece.length, piece.of) for piece in wall.courses[0].pieces if piece.shape == "return"]
    assert ends == [(mm("2250"), mm("102.5"), "pier"), (mm("2362.5"), mm("102.5"), "pier")]
    assert not any(piece.shape == "return" for piece in wall.courses[1].pieces)


def test_a_pier_at_each_end_is_where_the_wall_begins() -> None:
    layout = lay_with(pier("0", "215", "0", "112.5", "one"), pier("4500", "215", "0", "112.5", "other"))
    wall = layout.walls[0]
    own = [piece for piece in wall.courses[0].pieces if piece.shape != "return"]
    # Clear between the piers are 4,285, of which a joint each side: 19 bricks, 4,265.
    assert (own[0].left, own[-1].right, len(own)) == (mm("225"), mm("4490"), 19)
    assert (wall.courses[1].pieces[0].left, wall.courses[1].pieces[-1].right) == (0, mm("4715"))
    assert broken(check(layout)) == []


def test_the_walls_joints_keep_a_lap_from_those_within_the_pier() -> None:
    layout = lay_with(pier("2250", "440", "0", "337.5"))
    wall = layout.walls[0]
    tied, plain = ([piece for piece in course.pieces if piece.right > mm("2200") and piece.left < mm("2750")]
                   for course in wall.courses[:2])
    joints = [[(one.right + two.left) // 2 for one, two in pairwise(pieces)] for pieces in (tied, plain)]
    assert min(abs(at - other) for at in joints[0] for other in joints[1]) >= mm("56.25") - 2


def test_pieces_are_counted_once() -> None:
    layout = lay_with(pier("2250", "440", "0", "337.5"), length="4715")
    counted = sum(piece.length + mm("10") for piece in counted_pieces(layout) if piece.height == mm("65"))
    # In six courses: the wall's 21 bricks' length in three of them; less the pier's 450 in the three that tie it in, with three
    # joints at its sides; three times 8 and three times 6 bricks of 225 in the pier.
    wall = 3 * 4725 + 3 * (4725 - 450)
    assert counted == mm(str(wall + 3 * (8 + 6) * 225))


def test_the_json_holds_the_pier_in_plan() -> None:
    layout = lay_with(pier("2250", "215", "112.5", "0", "Gate pier"))
    (wall,) = layout_as_json(layout, ())["walls"]  # type: ignore[misc, var-annotated]
    (found,) = wall["piers"]
    assert {key: found[key] for key in ("name", "left", "width", "front", "back", "cutting")} == {
        "name": "Gate pier", "left": 2250.0, "width": 215.0, "front": 112.5, "back": 0.0, "cutting": 0}
    assert found["joint_over_joint"] == {"on_faces": 0.0, "inside": 0.0}
    one = found["courses"][0]["pieces"][0]
    assert (one["near"], one["along"], one["deep"], one["piece"], one["of"]) == (-112.5, 102.5, 215.0, "full", "Gate pier")


def test_a_control_joint_may_stand_at_a_piers_face() -> None:
    # 31 halves less a joint to the pier's right face; the joint stands there, half a joint on.
    layout = lay_with(pier("3262.5", "215", "0", "112.5"), length="6965", control_joints=(mm("3482.5"),))
    wall = layout.walls[0]
    assert broken(check(layout)) == []
    for course in wall.courses:
        assert any(piece.right == mm("3477.5") for piece in course.pieces)
        assert any(piece.left == mm("3487.5") for piece in course.pieces)


def test_an_opening_may_have_a_pier_as_its_jamb() -> None:
    gate = make_opening(mm("1115"), mm("2025"), 0, mm("450"), "none", 0, name="Gate")
    layout = lay_with(pier("900", "215", "0", "112.5", "one"), pier("2025", "215", "0", "112.5", "two"), openings=(gate,))
    assert broken(check(layout)) == []
    assert not any(piece.left < gate.right and piece.right > gate.left
                   for course in layout.walls[0].courses for piece in course.pieces)


def test_a_pier_of_block_twelve_by_sixteen_shows_what_cannot_be_bonded() -> None:
    # 12 by 16 in. of 8 in. block: in each course beside a block through the wall 4 in. are left, of which two pieces stand one
    # behind the other with their joint at the wall's face, over the one behind the wall. Whole and half units alone bond.
    masonry = make_masonry()
    wall = make_wall(inches("239 5/8"), masonry.unit.height_of_courses(4), name="Wall")
    block = Pier("pier", inches(96), inches("11 5/8"), 0, inches(8))
    layout = lay(make_job(masonry, replace(wall, piers=(block,))))
    assert {finding.rule for finding in broken(check(layout))} == {"lap"}
    assert layout.walls[0].doubtful


@pytest.mark.parametrize("bond", ["english", "flemish"])
@pytest.mark.parametrize(("centres", "bricks"), [("2925", "11"), ("3037.5", "11.5")])
def test_a_one_brick_garden_wall_with_piers_of_440_comes_out_as_the_hand_has_it(bond: str, centres: str, bricks: str) -> None:
    # Situation of practice: one-brick, 440 piers, 1.5 m high, three bays. Piers at 2,925 centres, 11 bricks or 2,485 between
    # faces, 9,215 over all; or at 3,037.5, 11 1/2 bricks.
    assert Fraction(centres) - 440 == Fraction(bricks) * 225 + 10
    masonry = make_masonry("brick-uk", bond, least_lap=mm("53.75"), least_piece=mm("112.5"))  # type: ignore[arg-type]
    piers = tuple(pier(str(number * Fraction(centres)), "440", "112.5", "112.5", f"pier {number + 1}") for number in range(4))
    wall = make_wall(3 * mm(centres) + mm("440"), masonry.unit.height_of_courses(20), name="Garden wall")
    layout = lay(make_job(masonry, replace(wall, piers=piers), measure="metric"))
    assert broken(check(layout)) == []
    for laid in layout.walls[0].piers:
        # 440 x 440 is 8 bricks; without the wall's 215 and its two joints, 102.5 on both faces, 4 of them: two each.
        assert (units(laid, tied=True), units(laid, tied=False)) == ({"full": 8}, {"full": 4})


@pytest.mark.parametrize("seed", range(6))
def test_random_piers_take_each_place_once_are_tied_in_and_told_where_no_bond_comes_out(seed: int) -> None:
    random = Random(seed)
    masonry = make_masonry(random.choice(["brick-uk", "block-8", "block-uk-215", "block-4", "block-12"]))
    lattice = find_lattice(masonry)
    assert lattice is not None
    sizes = [(columns, rows, both) for columns in range(lattice.wide, 7) for rows in range(lattice.thick + 1, 7)
             for both in (False, True) if not (both and ((rows - lattice.thick) % 2 or columns < 2))
             and all(lattice.is_filled(columns, cells) for cells in (rows, (rows - lattice.thick) // (1 + both)))]
    piers, at = list[Pier](), 0
    for number in range(3):
        columns, rows, both = random.choice(sizes)
        spare = lattice.size(rows) - masonry.thickness
        front = spare // 2 if both else random.choice((0, spare))
        piers.append(Pier(f"pier {number}", at, lattice.size(columns), front, spare - front))
        at = piers[-1].right + masonry.joint + lattice.step * random.randint(4, 40)
    wall = make_wall(piers[-1].right, masonry.unit.height_of_courses(3), name="Wall")
    layout = lay(make_job(masonry, replace(wall, piers=tuple(piers)), measure="metric"))
    amiss = {finding.rule for finding in broken(check(layout))}
    assert amiss <= {"lap"}
    assert layout.walls[0].doubtful or not amiss
