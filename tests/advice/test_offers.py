"""What is offered: distances that fit, within the plan's limits, and moves that may stand."""

from dataclasses import replace

from tests.jobs import INCH, inches, make_job, make_masonry, make_opening, make_wall
from wallplan.advice.frame import Frame
from wallplan.advice.moves import Move, Thing, distance, move_wall
from wallplan.advice.offers import offer_moves
from wallplan.advice.search import find_best
from wallplan.advice.trial import Trials, may_stand
from wallplan.plan.advice_table import USUAL_KINDS
from wallplan.plan.job import Movable

USUAL = Movable(USUAL_KINDS, 12 * INCH, None, inches("15 5/8"))
MASONRY = make_masonry(joints_move=False)


def test_a_door_two_inches_off_is_offered_both_ways_onto_the_half_block() -> None:
    wall = make_wall(inches("239 5/8"), 104 * INCH, [make_opening(inches("49 5/8"), inches("90"), 0, 88 * INCH)])
    assert offer_moves(wall, MASONRY, USUAL)[Thing("opening", 0)] == (-2 * INCH, 6 * INCH)
    near = replace(USUAL, farthest=4 * INCH)
    assert offer_moves(wall, MASONRY, near)[Thing("opening", 0)] == (-2 * INCH,)


def test_steps_are_offered_only_where_the_plan_asks_for_them() -> None:
    wall = make_wall(inches("239 5/8"), 104 * INCH)
    assert Thing("right end") not in offer_moves(wall, MASONRY, USUAL)
    stepped = offer_moves(wall, MASONRY, replace(USUAL, step=6 * INCH))
    assert stepped[Thing("right end")] == (6 * INCH, -6 * INCH, 12 * INCH, -12 * INCH)


def test_only_kinds_that_the_plan_names_are_moved() -> None:
    opening = make_opening(inches("49 5/8"), inches("88"), 3 * INCH, 87 * INCH)
    wall = make_wall(inches("238"), 102 * INCH, [opening], control_joints=[inches("150")])
    names = {"openings": "opening", "widths": "width", "sills": "sill", "heads": "head", "tops": "top",
             "control joints": "control joint"}
    for kind, called in names.items():
        assert {thing.kind for thing in offer_moves(wall, MASONRY, replace(USUAL, kinds=(kind,)))} == {called}
    assert {thing.kind for thing in offer_moves(wall, MASONRY, replace(USUAL, kinds=("ends",)))} == {"left end", "right end"}
    assert offer_moves(wall, MASONRY, replace(USUAL, kinds=())) == {}


def test_moves_together_add_up() -> None:
    opening = make_opening(40 * INCH, 80 * INCH, 8 * INCH, 88 * INCH)
    wall = make_wall(200 * INCH, 104 * INCH, [opening], control_joints=[120 * INCH])
    moves = (Move(Thing("left end"), -2 * INCH), Move(Thing("right end"), -3 * INCH), Move(Thing("opening", 0), INCH),
             Move(Thing("width", 0), 4 * INCH), Move(Thing("head", 0), -INCH), Move(Thing("sill", 0), INCH))
    after = move_wall(wall, moves)
    assert (after.length, after.control_joints) == (199 * INCH, (122 * INCH,))
    door = after.openings[0]
    assert (door.left, door.right, door.bottom, door.top) == (43 * INCH, 87 * INCH, 9 * INCH, 87 * INCH)
    assert distance(moves) == 12 * INCH
    assert move_wall(wall, ()) == wall


def test_no_move_makes_a_pier_narrower_than_the_least() -> None:
    """A pier of 17 5/8 in. wants to be 15 5/8 or 23 5/8; with a least pier of 16 in. only the longer one is left."""
    opening = make_opening(inches("17 5/8"), inches("58"), 0, 88 * INCH)
    job = make_job(MASONRY, make_wall(inches("143 5/8"), 104 * INCH, [opening]))
    for least, by in ((inches("15 5/8"), -2 * INCH), (16 * INCH, 6 * INCH)):
        movable = replace(USUAL, least_pier=least)
        offers = {Thing("opening", 0): (-2 * INCH, 6 * INCH)}
        best = find_best(job.walls[0], offers, movable, Trials(job, most=None))
        assert [move.by for move in best.moves] == [by]
        piers = [choice.moves for choice in Frame(job.walls[0], MASONRY, offers, least).choose()]
        assert ((Move(Thing("opening", 0), -2 * INCH),) in piers) == (least < 16 * INCH)


def test_what_a_plan_would_refuse_may_not_stand() -> None:
    opening = make_opening(40 * INCH, 80 * INCH, 0, 88 * INCH)
    wall = make_wall(200 * INCH, 104 * INCH, [opening], control_joints=[120 * INCH])
    job = make_job(make_masonry(), wall)
    assert may_stand(wall, job)
    for moves in ([Move(Thing("control joint", 0), -35 * INCH)], [Move(Thing("opening", 0), -40 * INCH)],
                  [Move(Thing("top"), -17 * INCH)], [Move(Thing("top"), -16 * INCH)], [Move(Thing("head", 0), -88 * INCH)],
                  [Move(Thing("right end"), -79 * INCH)]):
        assert not may_stand(move_wall(wall, moves), job), moves
