"""The leads' sheets: pieces to scale, units and line heights told, the level drawn as long as it is."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.drawing.sheets import faults_of, texts_of
from tests.drawing.walls import PLANS, laid
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.leads_sheet import plan_leads_sheets
from wallplan.drawing.pole_sheet import POLE_SCALES
from wallplan.drawing.primitives import Outlines, Page
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lengths import print_length
from wallplan.plan.load import load_plan

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


def ratio_of(page: Page, layout: Layout) -> int:
    told = next(text.text for text in texts_of(page) if text.text.startswith("Scale "))
    return next(scale.ratio for scale in POLE_SCALES[layout.job.measure] if f"Scale {scale.name}." in told)


@pytest.mark.parametrize("paper", ["letter", "A4"])
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_no_lettering_meets_anything(path: Path, paper: str) -> None:
    for page in number_sheets(plan_leads_sheets(lay(load_plan(path)), paper)):
        assert faults_of(page) == []


@pytest.mark.parametrize("name", PLANS)
def test_leads_of_every_wall_keep_their_lettering_apart(name: str) -> None:
    for page in number_sheets(plan_leads_sheets(laid(name)[0], None)):
        assert faults_of(page) == []


def test_the_level_is_four_feet_and_the_units_are_units() -> None:
    layout = lay(load_plan(Path(__file__).parents[2] / "samples" / "pump-shed-closed.toml"))
    (page,) = number_sheets(plan_leads_sheets(layout, None))
    ratio = ratio_of(page, layout)
    boxes = [box for item in page.ink if isinstance(item, Outlines) for box in item.boxes]
    wide = {round(box.width * ratio, 1) for box in boxes}
    assert {1219.2, 396.9, 193.7} <= wide  # 4 ft, 15 5/8 in, 7 5/8 in


def test_line_heights_are_course_tops() -> None:
    layout = laid("kiosk")[0]
    texts = [text.text for page in number_sheets(plan_leads_sheets(layout, None)) for text in texts_of(page)]
    for course in layout.walls[0].courses[: layout.job.masonry.leads]:
        assert print_length(course.top, "feet") in texts
    assert "4 ft level" in texts


def test_leads_built_alike_and_long_names_are_told_whole() -> None:
    """Five other ends ran out of their line: "right end of North g..."."""
    layout = lay(load_plan(Path(__file__).parents[2] / "samples" / "boat-store.toml"))
    words = " ".join(text.text for page in number_sheets(plan_leads_sheets(layout, None)) for text in texts_of(page))
    assert "right end of North gable, left end of South gable, right end of South gable" in words
    assert "..." not in words
