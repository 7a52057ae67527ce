"""No kind of sheet runs over to a nearly empty one where another way of standing on the paper would hold it."""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.drawing.sheets import texts_of
from tests.long_run import examples
from wallplan.drawing.columns import INSET, Row, Table, fill_columns
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.flow import Block, count_sheets, flow
from wallplan.drawing.marks_sheet import plan_marks_sheets
from wallplan.drawing.order_sheet import plan_order_sheets
from wallplan.drawing.panel import Panel
from wallplan.drawing.paper import PAPERS
from wallplan.drawing.primitives import Outlines, Page
from wallplan.layout.build import lay
from wallplan.lists.order.compose import list_order
from wallplan.plan.load import load_plan
from wallplan.teaching.quiz_sheet import plan_quiz_sheets

SAMPLES = Path(__file__).parents[2] / "samples"
BORDER = 15.0


def filled(page: Page) -> float:
    """How much of the room over its title block a page fills, from 0 to 1."""
    title = max(box.top for item in page.ink if isinstance(item, Outlines) for box in item.boxes
                if len(item.boxes) == 1 and box.left < BORDER + 1 and box.width > 50)
    return max(text.y - BORDER for text in texts_of(page) if text.y < title) / (title - BORDER)


@pytest.mark.parametrize("path", sorted(SAMPLES.glob("*.toml")), ids=lambda path: path.stem)
def test_no_last_sheet_is_nearly_empty(path: Path) -> None:
    layout = lay(load_plan(path))
    paper = "letter" if layout.job.measure == "feet" else "A4"
    drafts = [*plan_marks_sheets(layout, paper), *plan_order_sheets(layout, list_order(layout), paper)]
    drafts += [draft for answers in (False, True) for draft in plan_quiz_sheets(layout, PAPERS[paper], answers=answers)]
    parts = defaultdict(list)
    for draft, page in zip(drafts, number_sheets(drafts), strict=True):
        parts[draft.title].append(page)
    for title, pages in parts.items():
        assert len(pages) == 1 or filled(pages[-1]) > 0.3, (title, [filled(page) for page in pages])


@pytest.mark.parametrize(("sample", "paper"), [("ticket-kiosk", "letter"), ("ticket-kiosk", "A4"), ("pump-house", "letter"),
                                               ("pump-house", "A4"), ("cycle-shelter", "A4"), ("slip-wall-steps", "letter")])
def test_the_marks_of_a_small_wall_stand_on_one_sheet(sample: str, paper: str) -> None:
    assert len(plan_marks_sheets(lay(load_plan(SAMPLES / f"{sample}.toml")), paper)) == 1


def test_a_column_is_no_wider_than_its_own_rows() -> None:
    rows = (Row("8\""), Row("1'-4\""), Row("39'-11 5/8\"", "right end of a long wall"), Row("40'"))
    table = Table(rows)
    narrow, wide = table.measure_rows(0, 2), table.measure_rows(2, 4)
    assert narrow < wide / 2
    assert fill_columns(table, 0, INSET + narrow + wide, 2 * table.pitch) == ((0, 2), (2, 4))
    assert fill_columns(table, 0, INSET + narrow, 2 * table.pitch) == ((0, 2),)


def _blocks(heights: list[tuple[int, bool]]) -> list[Block]:
    return [Block(Panel(100.0, float(height), ()), tied) for height, tied in heights]


def test_two_sheets_are_about_equally_full() -> None:
    blocks = _blocks([(10, False)] * 11)
    assert flow(blocks, 100.0) == ((0, 6), (6, 11))
    assert flow(blocks, 110.0) == ((0, 11),)
    assert flow(blocks, 100.0, abreast=2) == ((0, 10), (10, 11))  # one sheet: the first column as full as it goes


@settings(max_examples=examples(60))
@given(heights=st.lists(st.tuples(st.integers(1, 40), st.booleans()), min_size=1, max_size=30),
       abreast=st.integers(1, 3), head=st.integers(0, 10))
def test_every_block_stands_once_in_order_and_no_heading_ends_a_column(heights: list[tuple[int, bool]], abreast: int,
                                                                       head: int) -> None:
    untied = [(height, tied and place % 2 == 0) for place, (height, tied) in enumerate(heights)]
    found = flow(_blocks(untied), 100.0, head, abreast)
    assert [place for first, last in found for place in range(first, last)] == list(range(len(untied)))
    for first, last in found:
        assert sum(height for height, _ in untied[first:last]) + head <= 100.0
        assert last == len(untied) or not untied[last - 1][1]
    assert count_sheets(found, abreast) <= count_sheets(flow(_blocks(untied), 100.0, head), abreast)
