"""No kind of sheet runs over to a nearly empty one where another way of standing on the paper would hold it."""

from __future__ import annotations

from collections import defaultdict
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.drawing.sheets import faults_of, texts_of
from tests.long_run import examples
from wallplan.drawing.columns import INSET, Row, Table, fill_columns
from wallplan.drawing.day_sheet import plan_day_sheets
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.flow import Block, count_sheets, flow
from wallplan.drawing.marks_sheet import plan_marks_sheets
from wallplan.drawing.order_sheet import plan_order_sheets
from wallplan.drawing.panel import Panel
from wallplan.drawing.paper import PAPERS
from wallplan.drawing.primitives import Outlines, Page
from wallplan.drawing.saw_sheet import plan_saw_sheets
from wallplan.drawing.wall_sheet import plan_wall_sheets
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lists.order.compose import list_order
from wallplan.plan.load import load_plan, read_plan
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
                                               ("pump-house", "A4"), ("cycle-shelter", "A4"), ("slip-wall-steps", "letter"),
                                               ("boat-park-wall", "A4")])
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


SIXTY_FEET = """\
title = "Ferry landing store and waiting room beside the old slip"
measure = "feet"
sizes = "nominal"
[masonry]
unit = "block-8"
[[wall]]
name = "Side of the ticket office"
length = "60'"
height = "10'"
bond_beams = ["top"]
control_joints = ["20'", "40'"]
""" + "".join(f'[[wall.opening]]\nname = "{name}"\nfrom_left = "{left}"\nwidth = "{width}"\nsill = "{sill}"\nheight = "{high}"\n'
              'lintel = "steel"\n'
              for name, left, width, sill, high in (
                  ("Office door", "4'", "3' 4", "0", "7' 4"), ("Office window", "10' 8", "4'", "3' 4", "4'"),
                  ("Boat door", "24'", "10'", "0", "8'"), ("Hatch", "42'", "2' 8", "4'", "2' 8"),
                  ("Vent", "47'", "1' 4", "6'", "1' 4"), ("Side door", "53' 4", "3' 4", "0", "6' 10")))


@cache
def sixty_feet() -> Layout:
    """A wall sixty feet long with six openings and long names."""
    return lay(read_plan(SIXTY_FEET, "store.toml"))


def test_a_long_wall_is_split_over_as_few_sheets_as_hold_it_since_each_tells_its_own_openings_alone() -> None:
    pages = number_sheets(plan_wall_sheets(sixty_feet(), (), "letter"))
    assert len(pages) == 4  # three had room for it, but not for the vent's and the side door's jambs
    assert [faults_of(page) for page in pages] == [[]] * 4
    assert all(sum("from the left end." in text.text and text.text.startswith(("Office", "Hatch", "Vent", "Side", "Boat"))
                   for text in texts_of(page)) <= 2 for page in pages)


def test_titles_stand_whole_in_the_title_block_smaller_where_they_are_long() -> None:
    pages = number_sheets((*plan_wall_sheets(sixty_feet(), (), "letter"), *plan_marks_sheets(sixty_feet(), "letter"),
                           *plan_saw_sheets(sixty_feet(), "letter")))
    for page in pages:
        told = " ".join(text.text for text in texts_of(page))
        assert "Ferry landing store and waiting room beside the old slip" in told, page.name
    assert any(text.text == "WALL Side of the ticket office" for text in texts_of(pages[0]))


def test_no_line_of_a_saw_card_is_cut_short() -> None:
    texts = [text.text for page in number_sheets(plan_saw_sheets(sixty_feet(), "letter")) for text in texts_of(page)]
    assert not [text for text in texts if text.endswith("...")]
    assert "the sawn side to the mortar." in " ".join(texts)


@pytest.mark.parametrize(("sample", "sheets"), [("boat-store", 1), ("harbour-office-flemish", 2), ("net-store-with-partition", 2)])
def test_bars_are_lower_where_that_spares_a_sheet_of_the_days(sample: str, sheets: int) -> None:
    layout = lay(load_plan(SAMPLES / f"{sample}.toml"))
    drafts = plan_day_sheets(layout, list_order(layout), None)
    assert len(drafts) == sheets
    assert [faults_of(page) for page in number_sheets(drafts)] == [[]] * sheets
