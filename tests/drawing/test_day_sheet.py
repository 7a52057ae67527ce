"""The days as a sheet: every day's courses in its column, bars to the scale of heights, and nothing on top of anything."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.drawing.sheets import faults_of, texts_of
from tests.drawing.walls import PLANS, laid
from wallplan.drawing.day_chart import RISE, WIDEST_COLUMN, Chart, set_wall
from wallplan.drawing.day_sheet import plan_day_sheets
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.outlines import UNIT_LINE
from wallplan.drawing.primitives import Outlines, Strokes
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lists.order.compose import list_order
from wallplan.plan.load import load_plan, read_plan

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


def hold(layout: Layout, paper: str | None) -> int:
    """No fault on any sheet; courses and units of every day stand there as often as in the plan. How many sheets."""
    order = list_order(layout)
    pages = number_sheets(plan_day_sheets(layout, order, paper))
    texts = [text.text for page in pages for text in texts_of(page)]
    for page in pages:
        assert faults_of(page) == []
    for row in order.days:
        first, last = row.courses
        told = str(first) if first == last else f"{first} to {last}"
        assert texts.count(told) >= sum(one.courses == row.courses for one in order.days)
        assert str(row.day) in texts and row.wall in texts
    return len(pages)


@pytest.mark.parametrize("paper", ["letter", "A4"])
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_samples(path: Path, paper: str) -> None:
    assert hold(lay(load_plan(path)), paper) >= 1


@pytest.mark.parametrize("name", PLANS)
def test_walls_of_every_kind(name: str) -> None:
    assert hold(laid(name)[0], None) >= 1


def test_many_days_run_over_many_sheets_and_small_walls_have_thin_bars() -> None:
    text = 'title = "Sea wall"\nmeasure = "feet"\n[masonry]\nunit = "block-8"\n' + "".join(f"""
[[wall]]
name = "Part {number}"
length = "{length}'"
height = "{height}'"
""" for number, (length, height) in enumerate([(120, 8), (4, 2), (40, 12), (8, 4), (60, 6)]))
    assert hold(lay(read_plan(text, "wall.toml")), None) >= 3


def test_bars_stand_where_the_heights_are_and_are_hatched_apart_above_the_scaffold() -> None:
    layout = lay(load_plan(next(path for path in SAMPLES if path.stem == "tool-store-order")))
    first, second = list_order(layout).days
    chart = Chart((1, 2), WIDEST_COLUMN, layout.walls[0].wall.height, layout.job, 3.5)
    panel = set_wall([first, second], layout.walls[0].wall.height, chart)
    bars = [item.boxes[0] for item in panel.ink if isinstance(item, Outlines) and item.width == UNIT_LINE]
    # 7 courses of 8 in. and 5 of them, of 8 ft that are 22 mm high.
    assert [round(bar.height + UNIT_LINE, 2) for bar in bars] == [round(RISE * 7 / 12, 2), round(RISE * 5 / 12, 2)]
    assert bars[0].top == pytest.approx(bars[1].bottom + UNIT_LINE)
    slopes = [{round((line.y2 - line.y1) / (line.x2 - line.x1)) for line in item.segments} for item in panel.ink
              if isinstance(item, Strokes) and len(item.segments) > 3 and all(s.x1 != s.x2 and s.y1 != s.y2 for s in item.segments)]
    assert slopes[0] == {1} and slopes[1] >= {-1}
