"""The layout as JSON, version 1: millimetres from the left end and the footing, broken rules only."""

from __future__ import annotations

import json
from typing import Any

import pytest

from tests.jobs import inches, pump_house
from tests.layout.test_walls_that_abut import tee
from tests.rules.breaking import change_piece
from wallplan.layout.as_json import layout_as_json
from wallplan.layout.build import lay
from wallplan.rules.check import check


@pytest.fixture(scope="module")
def told() -> dict[str, Any]:
    layout = lay(pump_house())
    read: dict[str, Any] = json.loads(json.dumps(layout_as_json(layout, check(layout))))
    return read


def test_heading_and_wall(told: dict[str, Any]) -> None:
    assert (told["wallplan_layout"], told["title"], told["measure"]) == (1, "Ferry landing", "feet")
    wall, = told["walls"]
    # 239 5/8 in. = 6086.475 mm, 104 in. = 2641.6 mm, 7 5/8 in. = 193.675 mm, 4 in. = 101.6 mm.
    assert [wall[key] for key in ("name", "length", "height", "thickness", "unit", "bond", "least_lap")] == [
        "Landing", 6086.475, 2641.6, 193.675, "block-8", "half", 101.6]
    assert (wall["cutting"], wall["cutting_at_least"], wall["broken_rules"]) == (0, 0, [])


def test_opening(told: dict[str, Any]) -> None:
    # 47 5/8 in. = 1209.675, 88 in. = 2235.2 mm.
    door = told["walls"][0]["openings"][0]
    assert [door[key] for key in ("name", "left", "right", "bottom", "top")] == ["Door", 1209.675, 2235.2, 0.0, 2235.2]


def test_pieces(told: dict[str, Any]) -> None:
    courses = told["walls"][0]["courses"]
    assert [course["course"] for course in courses] == list(range(1, 14))
    # A block, 15 5/8 by 7 5/8 in. on a bed of 3/8 in., in the left lead of the wall.
    first = courses[0]["pieces"][0]
    expected = {"left": 0.0, "length": 396.875, "bottom": 9.525, "height": 193.675, "piece": "full", "shape": "corner",
                "mark": None, "lead": "left", "of": "Landing"}
    assert {key: first[key] for key in expected} == expected


def test_broken_rules_stand_with_their_wall() -> None:
    layout = change_piece(lay(pump_house()), 1, 1, piece="half")
    wall, = layout_as_json(layout, check(layout))["walls"]  # type: ignore[misc]
    (rule,) = wall["broken_rules"]
    assert (rule["rule"], rule["course"], rule["at"]) == ("least piece", 1, 406.4)
    assert rule["figure"] == '15 5/8", called half' and rule["source"] and rule["remedy"]


def test_inches_and_millimetres_agree() -> None:
    assert inches(16) == 960 * 406.4


def test_a_wall_that_abuts_another_says_where() -> None:
    layout = tee("straps")
    main, stem = json.loads(json.dumps(layout_as_json(layout, ())))["walls"]
    assert (main["abuts"], stem["left"]) == ([], "abuts")
    # 72 in. = 1828.8 mm, 32 in. = 812.8 mm.
    assert stem["abuts"] == [{"end": "left", "meets": "Landing", "at": 1828.8, "face": "inside", "tie": "straps",
                              "strap_spacing": 812.8}]
