"""The check as a whole: a good wall holds every rule, a bare one breaks the cover, several walls are told apart."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.jobs import INCH, broken, inches, make_job, make_masonry, make_wall, pump_house
from tests.rules.breaking import change_course, change_courses, change_piece
from wallplan.findings import RuleName
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.rules.check import check

RULES: list[RuleName] = [
    "cover", "joints", "coursing", "lap", "least piece", "plumb", "openings", "control joints", "units",
]
"""Of each wall; the letters of its cuts follow, once all walls are looked at."""


@pytest.fixture(scope="module")
def good() -> Layout:
    return lay(pump_house())


def test_good_wall_holds_every_rule_once(good: Layout) -> None:
    findings = check(good)
    assert [finding.rule for finding in findings] == [*RULES, "letters"]
    assert all(finding.held and finding.source and not finding.remedy for finding in findings)


def test_figures_of_held_rules_are_those_of_the_wall(good: Layout) -> None:
    # Half bond in whole and half blocks laps 8 in. and has no piece under 8 in.; courses stand 8 in. by 3/8 in. beds.
    figures = {finding.rule: finding.figure for finding in check(good)}
    assert figures["lap"] == '8"'
    assert figures["least piece"] == '8"'
    assert figures["joints"] == '3/8" to 3/8"'
    assert figures["coursing"] == 'beds 3/8" to 3/8"'


def test_layout_without_walls_has_no_findings() -> None:
    assert check(lay(make_job(make_masonry()))) == ()


def test_wall_without_a_piece_breaks_the_cover_and_raises_nothing(good: Layout) -> None:
    bare = good
    for course in good.walls[0].courses:
        bare = change_course(bare, course.number, lambda pieces: ())
    assert {finding.rule for finding in broken(check(bare))} >= {"cover"}


def test_wall_of_no_courses_breaks_the_cover(good: Layout) -> None:
    told = broken(check(replace(good, walls=(replace(good.walls[0], courses=()),))))
    assert [one.figure for one in told if one.rule == "cover"] == ["no course is laid"]


def test_findings_name_the_wall_that_is_broken() -> None:
    walls = [make_wall(inches("63 5/8"), inches(32), name=name) for name in ("Water", "Road")]
    layout = lay(make_job(make_masonry(), *walls))
    assert [finding.wall for finding in check(layout)] == ["Water"] * len(RULES) + ["Road"] * len(RULES) + ["Water", "Road"]
    harmed = change_piece(layout, 2, 0, length=inches(7))
    assert {finding.wall for finding in broken(check(harmed))} == {"Water"}


def test_whole_wall_shifted_sideways_is_seen(good: Layout) -> None:
    shifted = change_courses(good, lambda course: replace(course, pieces=tuple(
        piece._replace(left=piece.left + INCH // 4) for piece in course.pieces)))
    told = [finding for finding in broken(check(shifted)) if finding.rule == "cover"]
    assert any("off the left end" in finding.figure for finding in told)
    assert any("off the right end" in finding.figure for finding in told)
