"""Fitting lengths in bonds with headers, against the hand's figures."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.jobs import MM, make_job, make_opening, make_wall
from tests.layout.buildings import OUT
from tests.layout.test_one_brick import one_brick
from wallplan.advice.advise import advise
from wallplan.advice.fit import Size, measure_fit
from wallplan.advice.one_brick import list_fitting, list_open
from wallplan.advice.remedies import find_remedies
from wallplan.advice.tell import report_advice
from wallplan.plan.job import Bond


def actual(nominal: tuple[int, ...]) -> list[float]:
    """Nominal lengths as the tape reads them, mm."""
    return [length / MM - 10 for length in nominal]


def length_of(length: float, bond: Bond = "flemish") -> Size:
    """What the fit says of a free wall's length, mm."""
    job = make_job(one_brick(bond), make_wall(round(length * MM), 900 * MM), measure="metric")
    return next(size for size in measure_fit(job) if size.what == "length")


def test_wall_situation_6_the_repeat_and_the_nearest_lengths() -> None:
    masonry = one_brick()
    assert actual(list_fitting(masonry, 4510 * MM)) == [4602.5, 4265]
    # By hand: S HS ... S C H, half a brick and a closer more than whole repeats and a stretcher.
    assert actual(list_fitting(masonry, 4510 * MM, alike=False)) == [4433.75, 4771.25]


def test_wall_situation_6_the_fit_offers_what_the_hand_does() -> None:
    job = make_job(one_brick(), replace(make_wall(4500 * MM, 900 * MM), left_end=OUT, right_end=OUT), measure="metric")
    size = next(one for one in measure_fit(job) if one.what == "length")
    first, second = find_remedies(size, job)
    assert (size.off / MM, size.taken) == (-102.5, "broken")
    assert first.startswith("make it 4602.5 mm or 4265 mm, both ends alike, or 4434 mm")
    assert second == "broken bond in the middle, pieces no shorter than a header"


@pytest.mark.parametrize(("length", "bond", "off"), [
    (4265, "flemish", 0), (4602.5, "flemish", 0), (4433.75, "flemish", 0), (4275, "flemish", 10), (215, "flemish", 0),
    (4490, "english", 0), (4500, "english", 10), (4600, "english", 110),
])
def test_how_far_a_length_is_off(length: float, bond: Bond, off: float) -> None:
    assert length_of(length, bond).off / MM == off


def test_masonry_under_one_brick_has_no_bond_and_is_offered_what_has() -> None:
    """160 mm beside a jamb: a stretcher, 215 mm, is the least; the next with both ends alike is S H S, 552.5 mm."""
    opening = make_opening(160 * MM, round(957.5 * MM), 150 * MM, 450 * MM, "steel", 100 * MM, "Window")
    job = make_job(one_brick(), make_wall(round(2577.5 * MM), 600 * MM, (opening,)), measure="metric")
    narrow = next(size for size in measure_fit(job) if size.what == "pier" and size.size == 160 * MM)
    first, last = find_remedies(narrow, job)
    assert first.startswith("make it 215 mm or 552.5 mm")
    assert last == "nothing else: masonry under one brick, 215 mm, has no bond"


@pytest.mark.parametrize(("bond", "length", "off"), [
    ("english garden wall", 2690, 0), ("common", 2690, 0), ("common", 2802.5, 112.5), ("header", 2802.5, 0),
    ("flemish garden wall", 3702.5, 0), ("flemish garden wall", 3365, 0), ("flemish garden wall", 3477.5, 112.5),
])
def test_lengths_of_garden_walls(bond: Bond, length: float, off: float) -> None:
    """225 n - 10; every half brick in header bond; in Flemish garden wall bond 52, 56, 60, 66 quarters less a joint: one stretcher
    at both ends, one and two, two at both."""
    assert length_of(length, bond).off / MM == off


def test_openings_fit_where_the_bond_runs_past_them() -> None:
    # H, or H SH, and so on, with a joint on both sides: 122.5, 460, 797.5, 1135 mm.
    assert [(width + 10 * MM) / MM for width in sorted(list_open(one_brick(), 790 * MM))] == [797.5, 1135]
    opening = make_opening(890 * MM, round(1687.5 * MM), 150 * MM, 450 * MM, "steel", 100 * MM, "Window")
    job = make_job(one_brick(), make_wall(round(2577.5 * MM), 600 * MM, (opening,)), measure="metric")
    assert {size.taken for size in measure_fit(job)} == {"fits"}


def test_advice_tells_the_lengths_that_keep_the_bond() -> None:
    job = make_job(one_brick(), make_wall(4500 * MM, 900 * MM), measure="metric")
    told = " ".join(report_advice(advise(job), (), 100).split())
    assert "4500 mm: 102.5 mm under" in told and "make it 4602.5 mm or 4265 mm, both ends alike" in told
