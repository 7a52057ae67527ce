"""Sheets of one-brick walls: both leaves in plan, closers lettered, nothing over anything."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.drawing.sheets import faults_of, texts_of
from wallplan.drawing.course_plan import CoursePlan
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.ground_plan import find_buildings
from wallplan.drawing.leads_sheet import plan_leads_sheets
from wallplan.drawing.paper import Scale
from wallplan.drawing.saw_sheet import plan_saw_sheets
from wallplan.layout.model import Layout
from wallplan.lists.cuts import list_cuts
from wallplan.planner import lay_plan

PLAN = Path(__file__).parents[2] / "samples" / "harbour-office-flemish.toml"


@pytest.fixture(scope="module")
def office() -> Layout:
    return lay_plan(PLAN)


def test_the_plan_shows_every_brick_once_and_none_over_another(office: Layout) -> None:
    (building,) = find_buildings(office)
    for number in (1, 2):
        plan = CoursePlan(building, number, Scale("1:1", 1), "metric", 0, 0)
        boxes = [box for leg in building.drawn for _, box in plan.pieces_of(leg)]
        own = sum(piece.shape != "return" for wall in office.walls for piece in wall.courses[number - 1].bricks)
        assert len(boxes) == own
        area = sum(box.width * box.height for box in boxes)
        bricks = sum((piece.length / 960) * (102.5 if piece.shape == "stretcher" else 215)
                     for wall in office.walls for piece in wall.courses[number - 1].bricks if piece.shape != "return")
        assert area == pytest.approx(bricks)
        for place, one in enumerate(boxes):
            for other in boxes[:place]:
                assert min(one.right, other.right) - max(one.left, other.left) < 0.01 or (
                    min(one.bottom, other.bottom) - max(one.top, other.top) < 0.01)


def test_the_leads_count_the_bricks_behind(office: Layout) -> None:
    texts = [text.text for page in number_sheets(plan_leads_sheets(office, None)) for text in texts_of(page)]
    assert any("courses," in text and "units" in text for text in texts)
    assert not any(faults_of(page) for page in number_sheets(plan_leads_sheets(office, None)))


def test_the_saw_list_rips_closers_along_the_brick(office: Layout) -> None:
    (cut,) = list_cuts(office)
    counted = sum(piece.shape == "closer" for wall in office.walls for course in wall.courses for piece in course.pieces)
    assert (cut.count, cut.served, cut.shape, cut.length) == (counted, counted // 2, "closer", 46.25 * 960)
    words = [text.text for page in number_sheets(plan_saw_sheets(office, None)) for text in texts_of(page)]
    assert any("along its length" in text for text in words)
