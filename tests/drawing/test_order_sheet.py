"""The order as a sheet: every line with its figures and a box to tick, its sums where they fit, nothing on top of anything."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from tests.drawing.sheets import faults_of, texts_of
from tests.drawing.walls import PLANS, laid
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.flow import Block, flow
from wallplan.drawing.lettering import LARGE_FIGURES
from wallplan.drawing.order_rows import IN_CSV, MOST_LINES, TICK, set_columns, set_rows
from wallplan.drawing.order_sheet import plan_order_sheets
from wallplan.drawing.panel import Panel
from wallplan.drawing.primitives import Outlines, Page, Text
from wallplan.layout.build import lay
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.line import Line, Order
from wallplan.plan.load import load_plan

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


def drawn(order: Order, pages: tuple[Page, ...]) -> None:
    """Every line's order stands once, 5 mm high, in the order's order, and has a box to tick."""
    for page in pages:
        assert faults_of(page) == []
    figures = [text.text for page in pages for text in texts_of(page) if text.height == LARGE_FIGURES and text.anchor == "end"]
    assert figures == [f"{float(line.order):.4f}".rstrip("0").rstrip(".") for line in order.lines]
    ticks = [box for page in pages for item in page.ink if isinstance(item, Outlines) for box in item.boxes
             if box.width == pytest.approx(TICK) == box.height]
    assert len(ticks) == len(order.lines)


@pytest.mark.parametrize("paper", ["letter", "A4"])
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_line_stands_once_with_its_figures_and_sums(path: Path, paper: str) -> None:
    layout = lay(load_plan(path))
    order = list_order(layout)
    pages = number_sheets(plan_order_sheets(layout, order, paper))
    drawn(order, pages)
    told = " ".join(text.text for page in pages for text in texts_of(page))
    for line in order.lines:
        assert line.item in told
        assert line.why in told or IN_CSV in told
    for key, words in order.batch:
        assert key in told and words in told


@pytest.mark.parametrize("name", PLANS)
def test_walls_of_every_kind_keep_their_orders_apart(name: str) -> None:
    layout = laid(name)[0]
    order = list_order(layout)
    drawn(order, number_sheets(plan_order_sheets(layout, order, "tabloid")))


def test_long_sums_end_at_a_sum_and_long_names_are_wrapped() -> None:
    layout = lay(load_plan(next(path for path in SAMPLES if path.stem == "pier")))
    why = "; ".join(f"sawn: {n} as A + B, some words about it" for n in range(60))
    line = Line("other", "a very long name of an item " * 5, "bag of 94 lb", Fraction("12345.67"), Fraction(1), why, Fraction("1234567"))
    order = replace(list_order(layout), lines=tuple(replace(line, item=f"{line.item}{n}") for n in range(30)))
    pages = number_sheets(plan_order_sheets(layout, order, "A4"))
    drawn(order, pages)
    columns = set_columns(order.lines, 180.0)
    row = set_rows(order.lines[:1], columns, reckoned=True)[1].panel
    sums = [item for item in row.ink if isinstance(item, Text) and item.height == 2.5]
    assert len(sums) <= MOST_LINES and sums[-1].text.endswith(IN_CSV)


def test_an_order_without_lines_has_no_sheet() -> None:
    layout = lay(load_plan(SAMPLES[0]))
    assert number_sheets(plan_order_sheets(layout, replace(list_order(layout), lines=()), None)) == ()


def block(height: float, *, tied: bool = False) -> Block:
    return Block(Panel(10.0, height, ()), tied)


def test_blocks_run_over_to_the_next_sheet_and_a_heading_takes_its_line_along() -> None:
    blocks = [block(4), block(4), block(2, tied=True), block(5), block(4)]
    assert flow(blocks, 10) == ((0, 2), (2, 4), (4, 5))
    assert flow(blocks, 12, head=1) == ((0, 2), (2, 5))
    assert flow(blocks, 4) == () == flow([], 10)
