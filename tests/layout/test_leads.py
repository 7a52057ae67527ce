"""Leads: how far they reach, racked back half a unit a course."""

from __future__ import annotations

import pytest

from tests.jobs import inches, make_job, make_masonry, make_wall, pieces_of
from wallplan.layout.build import lay
from wallplan.layout.leads import find_lead, plan_leads

BLOCK = inches(16)


def test_lead_of_five_courses_reaches_three_blocks() -> None:
    # Five courses racked back 8 in. each: 48, 40, 32, 24, 16 in. (NAVEDTRA 14043: four or five courses).
    plan = plan_leads(inches("239 5/8"), BLOCK, 5)
    assert plan is not None
    assert [plan.limit(course) for course in range(1, 6)] == [inches(n) for n in (48, 40, 32, 24, 16)]


def test_next_lift_begins_as_the_first() -> None:
    plan = plan_leads(inches("239 5/8"), BLOCK, 5)
    assert plan is not None
    assert plan.limit(6) == plan.limit(1)


def test_short_wall_has_lower_leads() -> None:
    # 80 in. less a joint: a block between two leads leaves 63 5/8 in., (63 5/8) // 16 - 1 = 2 courses.
    plan = plan_leads(inches("79 5/8"), BLOCK, 5)
    assert plan is not None
    assert plan.courses == 2


@pytest.mark.parametrize("length", [inches(16), inches(48)])
def test_wall_too_short_for_two_leads_has_none(length: int) -> None:
    assert plan_leads(length, BLOCK, 5) is None
    assert find_lead(None, 1, (0, length), length, (0, BLOCK)) is None


def test_pieces_of_a_lead_stand_within_it_and_are_the_first_of_their_run() -> None:
    # 20 ft: course 1 has three blocks in each lead, course 2 a half and two blocks (8 + 16 + 16 = 40), then 32, 24, 16.
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(inches("239 5/8"), inches(40))))
    left = [[p.length + inches("3/8") for p in pieces_of(layout, n) if p.lead == "left"] for n in range(1, 6)]
    half = inches(8)
    assert left == [[BLOCK] * 3, [half, BLOCK, BLOCK], [BLOCK] * 2, [half, BLOCK], [BLOCK]]
    right = [[p.length + inches("3/8") for p in pieces_of(layout, n) if p.lead == "right"] for n in range(1, 6)]
    assert right == [list(reversed(lengths)) for lengths in left]


def test_no_lead_stands_on_the_far_side_of_a_door() -> None:
    plan = plan_leads(inches("239 5/8"), BLOCK, 5)
    beyond = (inches(40), inches(100))
    assert find_lead(plan, 1, beyond, inches("239 5/8"), (inches(40), inches(48))) is None
