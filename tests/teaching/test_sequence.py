"""The order of laying, by hand: leads first and racked back, then each course to its closure."""

from __future__ import annotations

import pytest

from tests.jobs import inches, make_job, make_masonry, make_opening, make_wall, pump_house
from wallplan.layout.build import lay
from wallplan.teaching.sequence import Step, order_wall


def in_inches(steps: list[Step]) -> list[int]:
    """Where each step's piece begins, nominal inches."""
    return [round(step.piece.left / inches(1)) for step in steps]


def test_the_leads_go_up_first_racked_back_half_a_block_a_course() -> None:
    # Five courses of 48, 40, 32, 24 and 16 in. at the left end: 3, 3, 2, 2 and 1 units (NAVEDTRA 14043's racking).
    steps = order_wall(lay(pump_house()), 0)
    left = [step for step in steps if step.lift == 1 and step.side == "left"]
    assert steps[: len(left)] == tuple(left)
    assert [sum(step.course == course for step in left) for course in range(1, 6)] == [3, 3, 2, 2, 1]
    assert in_inches(left) == [0, 16, 32, 0, 8, 24, 0, 16, 0, 8, 0]
    assert left[0].words == "left lead, course 1"


def test_each_course_is_filled_from_both_sides_to_the_closure() -> None:
    # Course 1 right of the door, 88 to 192 in. (where the right lead begins): half at the jamb, then blocks.
    steps = [step for step in order_wall(lay(pump_house()), 0) if step.stage == "fill" and step.course == 1]
    assert in_inches(steps) == [88, 96, 112, 176, 160, 144, 128]
    assert [step.closure for step in steps] == [False] * 6 + [True]
    assert steps[-1].words == "fill to the line, course 1, closure"


def test_three_lifts_of_five_five_and_three_courses() -> None:
    steps = order_wall(lay(pump_house()), 0)
    assert {step.lift: {s.course for s in steps if s.lift == step.lift} for step in steps} == {
        1: {1, 2, 3, 4, 5}, 2: {6, 7, 8, 9, 10}, 3: {11, 12, 13}}


def test_what_stands_on_a_head_waits_for_the_lintel() -> None:
    # A door 16 in. from the end: the second lift's lead would reach 48 in. over it, but its lintel is laid in the fill.
    door = make_opening(inches(16), inches("55 5/8"), 0, inches(40))
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(inches("239 5/8"), inches(80), [door])))
    steps = order_wall(layout, 0)
    over = [step for step in steps if step.course == 6 and step.piece.left < door.right and step.piece.right > door.left]
    assert over and {step.stage for step in over} == {"fill"} and {step.piece.shape for step in over} == {"lintel"}


def test_a_cut_inside_a_run_is_its_closure() -> None:
    # 20 ft 0 in. with joints fixed: even courses close with a cut, and the cut goes in last.
    steps = order_wall(lay(make_job(make_masonry(joints_move=False), make_wall(inches(240), inches(16)))), 0)
    closures = [step for step in steps if step.closure]
    assert [step.course for step in closures] == [1, 2]
    inner = [step for step in steps if step.piece.mark and step.piece.left > 0 and step.piece.right < inches(240)]
    assert all(step.closure for step in inner if sum(other.course == step.course for other in inner) == 1)


def test_a_wall_too_short_for_leads_is_filled_course_by_course() -> None:
    steps = order_wall(lay(make_job(make_masonry(), make_wall(inches("47 5/8"), inches(24)))), 0)
    assert {step.stage for step in steps} == {"fill"}
    assert [step.course for step in steps] == sorted(step.course for step in steps)


def test_a_wall_that_the_plan_has_not_is_refused() -> None:
    with pytest.raises(IndexError):
        order_wall(lay(pump_house()), 1)
