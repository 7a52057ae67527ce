"""Leads against the trade's own counts: n courses racked back on both sides of a corner hold n(n + 1)/2 units."""

from __future__ import annotations

import itertools
from pathlib import Path

import pytest

from tests.jobs import inches, make_job, make_masonry, make_wall, pump_house
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lists.leads import list_leads
from wallplan.plan.load import load_plan

SAMPLES = Path(__file__).parents[2] / "samples"


def test_a_corner_of_five_courses_holds_fifteen_units_and_loses_one_a_course() -> None:
    leads = list_leads(lay(load_plan(SAMPLES / "pump-shed-closed.toml")))
    assert [len(lead.legs) for lead in leads] == [2, 2]
    for lead in leads:  # opposite corners of a rectangle are built alike
        assert len(lead.also) == 1
        assert lead.units == 15
        assert [sum(lead.units_of(number)) for number in range(1, 6)] == [5, 4, 3, 2, 1]


def test_a_lead_in_stack_bond_stands_back_by_a_whole_unit_every_other_course() -> None:
    # Half a unit a course, and only whole units: three in course 1 (40 in. are asked for in course 2), then two, two, one, one.
    wall = make_wall(inches("191 5/8"), inches(64))
    (lead,) = list_leads(lay(make_job(make_masonry("block-8", "stack"), wall)))
    assert [sum(lead.units_of(number)) for number in range(1, lead.courses + 1)] == [3, 2, 2, 1, 1]


def test_a_free_end_racks_back_half_a_unit_a_course() -> None:
    layout = lay(pump_house())
    (lead,) = list_leads(layout)
    (leg,) = lead.legs
    assert lead.also == ("right end of Landing",)
    reaches = [leg.reach(number) for number in range(1, lead.courses + 1)]
    assert {one - other for one, other in itertools.pairwise(reaches)} == {layout.job.masonry.module // 2}
    assert leg.reach(lead.courses + 1) == 0


@pytest.mark.parametrize("name", ["pump-shed-closed", "kiosk-with-porch", "ticket-kiosk", "boat-store"])
def test_every_lead_piece_of_the_first_lift_is_in_a_lead_or_one_like_it(name: str) -> None:
    layout = lay(load_plan(SAMPLES / f"{name}.toml"))
    told = {end for lead in list_leads(layout) for end in (lead.name, *lead.also)}
    for wall in layout.walls:
        for side in {piece.lead for piece in wall.courses[0].pieces if piece.lead}:
            assert any(wall.wall.name in end and (end.startswith(("corner", side))) for end in told)


def test_a_job_without_walls_has_no_leads() -> None:
    assert list_leads(Layout(pump_house(), ())) == ()


def test_a_pier_at_the_end_is_built_with_its_lead() -> None:
    """By pencil: a gate pier of 440 mm holds eight bricks in odd courses; the lead reaches 900 mm past it: four more."""
    left, right = list_leads(lay(load_plan(SAMPLES / "boat-park-wall.toml")))
    assert (left.courses, right.courses) == (7, 7)
    assert left.units_of(1) == (12,)
    assert all(left.units_of(number)[0] >= 8 for number in range(1, 8))
    assert all(right.units_of(number)[0] >= 2 for number in range(1, 8))


def test_a_lead_goes_on_past_a_pier_that_is_tied_in() -> None:
    """By pencil: a block, the pier's unit from 1'-4" on, a block from 2'-0" on, within 4 ft; course 2 begins with a cut."""
    left, right = list_leads(lay(load_plan(SAMPLES / "garden-wall-piers.toml")))
    assert left.units_of(1) == (2,) and left.courses == 4
    assert right.units_of(1) == (3,)
    (leg,) = left.legs
    assert [round(leg.reach(1) / 24_384, 3), round(leg.reach(2) / 24_384, 3)] == [39.625, 27.625]


@pytest.mark.parametrize("path", sorted(SAMPLES.glob("*.toml")), ids=lambda path: path.stem)
def test_no_unit_of_a_lead_stands_out_over_the_course_below(path: Path) -> None:
    layout = lay(load_plan(path))
    for wall in layout.walls:
        for side in ("left", "right"):
            below = 10**12
            for course in wall.courses:
                reach = [piece.right if side == "left" else wall.wall.length - piece.left
                         for piece in course.pieces if piece.lead == side]
                begun = max(reach, default=0) >= below + layout.job.masonry.module // 4  # the next lift
                assert begun or max(reach, default=0) <= below + 3 * 960
                below = max(reach, default=0) or 10**12
