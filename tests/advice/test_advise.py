"""Advice on a whole job: what is ranked first, what is left out, and that no rule is broken by it."""

from dataclasses import replace
from pathlib import Path

import pytest

from tests.jobs import INCH, inches, make_job, make_masonry, make_opening, make_wall
from wallplan.advice.advise import MOST_PROPOSALS, advise, stands_alone
from wallplan.advice.compare import compare, take_job_figures
from wallplan.advice.figures import Figures
from wallplan.advice.moves import Thing
from wallplan.layout.build import lay
from wallplan.lists.cuts import list_cuts
from wallplan.plan.job import Job
from wallplan.plan.load import load_plan
from wallplan.rules.check import check

SAMPLES = Path(__file__).parents[2] / "samples"


def two_walls() -> Job:
    """A wall 3 in. too short, and one with a door 2 in. off the half block; nine and five courses of block."""
    masonry = make_masonry(joints_move=False)
    door = make_opening(inches("41 5/8"), inches("82"), 0, 40 * INCH, "none", 0)
    return make_job(masonry, make_wall(inches("100 5/8"), 72 * INCH, name="Landing"),
                    make_wall(inches("143 5/8"), 40 * INCH, [door], name="Slip"))


def test_the_wall_that_cuts_more_comes_first_and_each_gets_its_move() -> None:
    advice = advise(two_walls())
    told = [(one.wall, [(move.thing.kind, move.by) for move in one.moves]) for one in advice.proposals[:2]]
    # By hand: 100 5/8 in. is 101 nominal, 3 in. under 13 half blocks: a cut in each of nine courses. The door's two piers
    # are both 2 in. off: two cuts in each of five courses.
    assert told == [(1, [("opening", -2 * INCH)]), (0, [("right end", 3 * INCH)])]
    assert [one.before.cutting for one in advice.proposals[:2]] == [10, 9]
    assert advice.after.grade == (0, 0)
    assert advise(advice.advised).fits


def test_proposals_are_few_and_no_two_alike() -> None:
    for sample in sorted(SAMPLES.glob("[bkp]*.toml")):
        advice = advise(load_plan(sample))
        assert len(advice.proposals) <= MOST_PROPOSALS
        seen = [(one.wall, frozenset((move.thing, move.by) for move in one.moves)) for one in advice.proposals]
        assert len(seen) == len(set(seen))
        assert all(one.after.grade < one.before.grade for one in advice.proposals)
        assert list(advice.proposals) == sorted(advice.proposals, key=lambda one: one.saving)


def test_an_end_is_told_once_not_for_left_and_right() -> None:
    advice = advise(make_job(make_masonry(joints_move=False), make_wall(inches("100 5/8"), 24 * INCH)))
    assert [[move.thing for move in one.moves] for one in advice.proposals] == [[Thing("right end")]]


@pytest.mark.parametrize("sample", ["breaks-a-rule", "pier", "boat-store"])
def test_advice_breaks_no_rule_that_the_plan_held(sample: str) -> None:
    advice = advise(load_plan(SAMPLES / f"{sample}.toml"))
    held = {(one.wall, one.rule) for one in check(lay(advice.job)) if one.held}
    broken = {(one.wall, one.rule) for one in check(lay(advice.advised)) if not one.held}
    assert held & broken == set()


def test_walls_shared_among_processes_give_the_same_advice() -> None:
    job, heard = two_walls(), list[int]()
    assert advise(job, heard.append, processes=2) == advise(job)
    assert heard == sorted(heard) and heard


def building(door: str = "61 5/8") -> Job:
    """Four walls of block round a shed, on the module; the front has a door with its left jamb at ``door``."""
    masonry = make_masonry(joints_move=False)
    walls = [make_wall(inches("159 5/8"), 40 * INCH, name=name) for name in ("Front", "Right", "Back", "Left")]
    jamb = inches(door)
    walls[0] = replace(walls[0], openings=(make_opening(jamb, jamb + inches("40 3/8"), 0, 40 * INCH, "none", 0),))
    return make_job(masonry, *(replace(one, left_end="outside corner", right_end="outside corner") for one in walls))


def test_a_door_between_corners_is_moved_onto_the_half_block_and_no_corner_is_touched() -> None:
    """By hand: 63 5/8 in. is 8 half blocks less a joint from the corner and 55 5/8 is 7; 61 5/8 is 2 in. from the nearer."""
    job = building()
    advice = advise(job)
    assert [(one.wall, [(move.thing.kind, move.by) for move in one.moves]) for one in advice.together] == [
        (0, [("opening", 2 * INCH)])]
    assert advice.figures.cutting > 0 and advice.after.grade == (0, 0)
    assert advice.after == take_job_figures(advice.advised)
    assert [wall.length for wall in advice.advised.walls] == [wall.length for wall in job.walls]
    assert advise(building("63 5/8")).fits


def test_advice_on_a_building_breaks_no_rule_in_any_of_its_walls() -> None:
    job = load_plan(SAMPLES / "kiosk-with-porch.toml")
    advice = advise(job)
    held = {(one.wall, one.rule) for one in check(lay(job)) if one.held}
    broken = {(one.wall, one.rule) for one in check(lay(advice.advised)) if not one.held}
    assert held & broken == set()


def test_walls_that_meet_are_counted_each_unit_once() -> None:
    job = load_plan(SAMPLES / "pump-shed-closed.toml")
    advice = advise(job)
    assert not any(stands_alone(wall) for wall in job.walls)
    assert advice.figures.units == sum(
        piece.shape not in ("precast", "return") for wall in lay(job).walls for course in wall.courses
        for piece in course.pieces)


def test_figures_are_those_of_the_saw_list() -> None:
    layout = lay(two_walls())
    figures, cuts = take_job_figures(two_walls()), list_cuts(layout)
    assert figures.sawn == sum(cut.count for cut in cuts)
    assert len(figures.settings) == len({cut.mark for cut in cuts})
    assert figures.cutting == sum(wall.cutting for wall in layout.walls)
    # Each sawn piece takes 3 1/2 minutes.
    assert figures.saw_minutes == -(-figures.sawn * 7 // 2)


def test_a_rule_broken_more_often_is_no_advice_even_where_another_is_mended() -> None:
    plain = Figures((), 0, 0, 0, 0, frozenset())
    before = replace(plain, broken=(("lap", 2), ("plumb", 1)))
    assert replace(plain, broken=(("lap", 1), ("cover", 1))).breaks_more_than(before)
    assert not replace(plain, broken=(("lap", 2),)).breaks_more_than(before)


def test_alternatives_change_one_thing_each_and_say_what_cannot_be_laid() -> None:
    job = two_walls()
    found = {one.name: one.figures for one in compare(job)}
    assert found["as planned"] == take_job_figures(job)
    assert {"third bond", "quarter bond", "stack bond"} <= set(found)
    free = found['joints 1/4" to 1/2"']
    fixed = found["as planned"]
    # More freedom for the joints never cuts more.
    assert free is not None and fixed is not None and free.cutting <= fixed.cutting


def test_other_units_are_of_the_same_thickness_and_kind() -> None:
    job = make_job(make_masonry("brick-modular"), make_wall(inches("119 5/8"), 24 * INCH))
    names = [one.name for one in compare(job)]
    assert "US modular brick" not in names and any("orman" in name for name in names)
    assert not any("block" in name.lower() for name in names)
