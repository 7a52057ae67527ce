"""What the trade takes for granted. Common practice, no source."""

from __future__ import annotations

import pytest

from tests.jobs import inches, make_job, make_masonry, make_wall, nominal_lengths, pieces_of
from wallplan.layout.build import lay
from wallplan.layout.leads import plan_leads

LEVEL = inches(48)
"""A mason's level is 4 ft long."""


def test_five_full_blocks_are_set_out_at_80_inches() -> None:
    layout = lay(make_job(make_masonry(joints_move=False), make_wall(inches(80) - inches("3/8"), inches(16))))
    assert nominal_lengths(layout, 1) == [16, 16, 16, 16, 16]
    assert [piece.left for piece in pieces_of(layout, 1)] == [inches(16) * n for n in range(5)]


@pytest.mark.parametrize("key", ["block-8", "block-12", "brick-modular", "brick-standard"])
def test_lead_is_no_longer_than_a_four_foot_level_spans(key: str) -> None:
    masonry = make_masonry(key)
    plan = plan_leads(100 * masonry.module, masonry.module, masonry.leads)
    assert plan is not None
    assert plan.length <= LEVEL


def test_three_blocks_make_four_feet_and_three_courses_two() -> None:
    unit = make_masonry().unit
    assert 3 * unit.module == LEVEL
    assert unit.height_of_courses(3) == LEVEL // 2


def test_four_uk_bricks_make_900_millimetres() -> None:
    assert 4 * make_masonry("brick-uk").module == 900 * 960
