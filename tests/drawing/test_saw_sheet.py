"""The saw list as a sheet: every cut once, drawn to scale in its unit, with its count and a box to tick."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.drawing.sheets import faults_of, texts_of
from tests.drawing.walls import PLANS, laid
from wallplan.drawing.drafts import number_sheets
from wallplan.drawing.primitives import Area, Outlines
from wallplan.drawing.saw_card import TITLE_HEIGHT
from wallplan.drawing.saw_sheet import CARD_SCALES, plan_saw_sheets
from wallplan.layout.build import lay
from wallplan.lengths import TICKS_PER_MM, print_size
from wallplan.lists.cuts import list_cuts
from wallplan.plan.load import load_plan

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_no_lettering_meets_anything_and_every_cut_stands_once(path: Path) -> None:
    layout = lay(load_plan(path))
    pages, cuts = number_sheets(plan_saw_sheets(layout, None)), list_cuts(layout)
    for page in pages:
        assert faults_of(page) == []
    texts = [text for page in pages for text in texts_of(page)]
    assert [text.text for text in texts if text.height == TITLE_HEIGHT] == [cut.mark for cut in cuts]
    for cut in cuts:
        assert any(text.text.startswith(print_size(cut.length, layout.job.measure)) for text in texts)
        assert any(text.text in (f"saw {cut.count - cut.served}", f"{cut.served} from offcuts") for text in texts)
    assert bool(pages) is bool(cuts)


@pytest.mark.parametrize("paper", ["letter", "A4", "A3"])
@pytest.mark.parametrize("name", PLANS)
def test_many_cuts_keep_their_lettering_apart(name: str, paper: str) -> None:
    for page in number_sheets(plan_saw_sheets(laid(name)[0], paper)):
        assert faults_of(page) == []


def test_what_is_kept_and_the_kerf_are_to_scale() -> None:
    layout = lay(load_plan(next(path for path in SAMPLES if path.stem == "pier")))
    (page,), (cut, *_) = number_sheets(plan_saw_sheets(layout, None)), list_cuts(layout)
    told = next(text.text for text in texts_of(page) if text.text.startswith("Scale "))
    ratio = next(scale.ratio for scale in CARD_SCALES["feet"] if f"Scale {scale.name}." in told)
    kept = next(item.boxes[0] for item in page.ink if isinstance(item, Outlines) and item.width == 0.7)
    assert (kept.width + 0.7) * ratio == pytest.approx(cut.length / TICKS_PER_MM, abs=0.1)
    kerfs = [item.box for item in page.ink if isinstance(item, Area) and item.box.height > 2]
    assert {round(box.width * ratio, 2) for box in kerfs} == {3.17} or {round(box.width * ratio, 1) for box in kerfs} == {3.2}


def test_one_setting_is_one_setting_and_no_offcut_is_none() -> None:
    layout = lay(load_plan(Path(__file__).parents[2] / "samples" / "garden-wall-piers.toml"))
    (page,) = number_sheets(plan_saw_sheets(layout, None))
    words = " ".join(text.text for text in texts_of(page))
    assert "8 cuts in 1 saw setting, the longest first; none from offcuts." in words
