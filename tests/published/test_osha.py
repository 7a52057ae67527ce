"""OSHA 29 CFR 1926.706, as OSHA's letters restate it (1993-02-16-3), and 1926.1153 Table 1 as copied in California's 1532.3
(http://dir.ca.gov/title8/1532_3.html): the zone beside a fresh wall, bracing, and sawing."""

from __future__ import annotations

import re

import pytest

from tests.lists.walls import lay_text, plan_wall, take_off
from wallplan.drawing.cautions import DUST, FRESH, ORDER, USUAL
from wallplan.lengths import read_length
from wallplan.lists.order.compose import list_order

# Height, and the zone beside it: the wall's height and 4 ft, on the side without scaffold, along all of it.
ZONES = [("8'", "12'-0\""), ("10'", "14'-0\""), ("12'", "16'-0\""), ("16' 8", "20'-8\"")]


@pytest.mark.parametrize(("height", "zone"), ZONES)
def test_the_zone_to_keep_clear(height: str, zone: str) -> None:
    told = " ".join(take_off("20'", height).notes)
    assert f"Keep clear of a fresh wall: {zone} on its unscaffolded side, along all of it" in told
    assert read_length(zone.strip('"'), "feet") - read_length(height, "feet") == read_length("4'", "feet")


@pytest.mark.parametrize(("height", "braced"), [("7' 4", False), ("8'", False), ("8' 8", True), ("12'", True)])
def test_walls_over_8_ft_are_braced(height: str, braced: bool) -> None:
    order = take_off("20'", height)
    assert ("so braced until its supports are in" in " ".join(order.notes)) == braced
    assert any(due.kind == "brace" for row in order.days for due in row.dues) == braced


def test_the_same_zone_in_metric_is_4_ft_to_a_tenth_of_a_metre() -> None:
    plan = plan_wall("6090", "3000", unit="block-ca-190").replace('"feet"', '"metric"')
    told = " ".join(list_order(lay_text(plan)).notes)
    found = re.search(r"Keep clear of a fresh wall: (\d+) mm", told)
    assert found and abs(int(found[1]) - (3000 + 1219.2)) <= 1 and "so braced" in told


def test_sheets_say_the_zone_the_bracing_and_the_saw() -> None:
    for text in (USUAL, FRESH):
        assert re.search(r"its height and 4 ft \(1\.2 m\)", text) and "brace" in text
    assert "over 8 ft (2.4 m)" in FRESH and "side without scaffold" in FRESH
    for text in (USUAL, DUST, ORDER):  # 1926.1153 Table 1: a stationary saw is fed with water
        assert "wet" in text and "dust kills" in text
