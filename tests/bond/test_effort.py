"""Work is counted, and shared among the searches of a plan."""

from __future__ import annotations

import pytest

from tests.bond.test_limits import landing
from tests.bond.test_together import problem_of
from wallplan.bond.effort import LEAST, TRY, Effort
from wallplan.bond.zipper import MOST_STEPS, close_zip
from wallplan.layout import building
from wallplan.layout.build import lay
from wallplan.layout.runs import LaidTracks, lay_aimed
from wallplan.plan.load import read_plan

SHED = """
title = "Rope shed"
measure = "feet"
[masonry]
unit = "block-8"
""" + "".join(f"""
[[wall]]
name = "Side {side}"
length = "{length}'"
courses = 4
left = "outside corner"
right = "outside corner"
""" for side, length in enumerate((12, 8, 12, 8)))


def test_a_quarter_of_what_is_left_is_allowed_and_a_little_always() -> None:
    effort = Effort(4 * MOST_STEPS)
    assert effort.allow(MOST_STEPS) == MOST_STEPS and effort.allow(MOST_STEPS, TRY) == MOST_STEPS // TRY
    effort.spend(2 * MOST_STEPS)
    assert effort.allow(MOST_STEPS) == MOST_STEPS // 2 and not effort.used_up
    effort.spend(9 * MOST_STEPS)
    assert effort.allow(MOST_STEPS) == LEAST and effort.used_up


@pytest.mark.parametrize(("among", "left"), [(1, 1000), (3, 1000), (6, 500), (30, 100)])
def test_a_share_is_three_times_a_searches_part(among: int, left: int) -> None:
    assert Effort(1000).share(among).left == left
    assert Effort(-5).share(among).left == 0


def test_where_nothing_is_left_a_wall_is_laid_at_few_places_and_that_is_told() -> None:
    found = close_zip(problem_of(landing("4", "half")), none := Effort(0))
    assert not found.everywhere and all(found.tracks) and none.left < 0


def test_a_search_takes_what_it_does_from_what_is_left() -> None:
    close_zip(problem_of(landing("4", "half")), effort := Effort())
    assert Effort().left - effort.left > MOST_STEPS // 2


def test_the_walls_of_a_building_share_what_may_be_done(monkeypatch: pytest.MonkeyPatch) -> None:
    given: list[int] = []

    def spy(problem: object, joint: int, effort: Effort) -> LaidTracks:
        given.append(effort.left)
        effort.spend(300_000)
        return lay_aimed(problem, joint, effort)  # type: ignore[arg-type]

    monkeypatch.setattr(building, "lay_aimed", spy)
    lay(read_plan(SHED, "shed.toml"))
    # Two lengths, each with two ways at either corner: eight searches, and those that take more leave the others less.
    assert len(given) == 8 and given == sorted(given, reverse=True) and given[-1] < given[0] / 2
