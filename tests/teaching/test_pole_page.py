"""The pole beside the wall: it uses its page, and says whole what it says."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.drawing.sheets import faults_of, texts_of
from tests.teaching.lessons import SAMPLES, laid
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.paper import BORDER, PAPERS
from wallplan.drawing.primitives import Outlines, Page, Strokes
from wallplan.teaching.pole_page import plan_pole_pages


def _use(page: Page) -> float:
    """How much of the width or, if that is more, of the height over the title block the drawing takes, from 0 to 1."""
    title = max(box.top for item in page.ink if isinstance(item, Outlines) for box in item.boxes
                if len(item.boxes) == 1 and box.left < BORDER + 1 and box.width > 50)
    lines = [line for item in page.ink if isinstance(item, Strokes) for line in item.segments if max(line.y1, line.y2) < title]
    texts = [text for text in texts_of(page) if text.y < title]
    xs = [x for line in lines for x in (line.x1, line.x2)] + [text.x for text in texts]
    ys = [y for line in lines for y in (line.y1, line.y2)]
    return max((max(xs) - min(xs)) / page.paper.usable_width, (max(ys) - min(ys)) / (title - BORDER))


@pytest.mark.parametrize("paper", ["letter", "A4"])
@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_the_drawing_takes_more_than_half_of_its_page_one_way_or_the_other(sample: Path, paper: str) -> None:
    pages = number_sheets(plan_pole_pages(laid(sample), PAPERS[paper]))
    assert pages
    for page in pages:
        assert _use(page) > 0.55  # the next scale up would not fit
        assert faults_of(page) == []


def test_a_wall_of_twenty_feet_stands_whole_beside_its_pole_at_a_quarter_inch_to_the_foot() -> None:
    (kiosk,) = (path for path in SAMPLES if path.stem == "ticket-kiosk")
    (page,) = number_sheets(plan_pole_pages(laid(kiosk), PAPERS["letter"]))
    texts = [text.text for text in texts_of(page)]
    assert any(text.startswith("Scale 1/4 in = 1 ft.") for text in texts)
    assert "head Door, Ticket window" in " ".join(texts)  # in two lines
    assert not any(text.endswith("...") for text in texts)
