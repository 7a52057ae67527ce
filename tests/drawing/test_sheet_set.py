"""The whole set: numbers of sheets right for each kind, both renderings alike, the same bytes twice."""

from __future__ import annotations

import html
import re
from pathlib import Path

import pypdfium2
import pytest
from hypothesis import given, settings

from tests.drawing.sheets import faults_of, texts_of
from tests.long_run import examples
from tests.strategies import plan_texts
from wallplan.drawing.pdf import draw_pdf
from wallplan.drawing.primitives import Drawing, Outlines, Strokes
from wallplan.drawing.print_check import CHECK_LINE
from wallplan.drawing.sheet_set import DRAWN, draw_sheets
from wallplan.drawing.svg import draw_svg
from wallplan.layout.build import lay
from wallplan.plan.load import load_plan, read_plan

SAMPLES = Path(__file__).parents[2] / "samples"


def drawn(name: str) -> Drawing:
    return draw_sheets(lay(load_plan(SAMPLES / f"{name}.toml")), (), None, DRAWN)


@pytest.mark.parametrize("name", ["pump-shed-closed", "kiosk-with-porch", "breaks-a-rule", "boat-store"])
def test_sheets_of_a_kind_are_numbered_and_named_apart(name: str) -> None:
    pages = drawn(name).pages
    assert len({page.name for page in pages}) == len(pages)
    for kind in ("courses", "pole", "leads", "saw-list"):
        numbers = [tuple(map(int, found)) for page in pages if re.fullmatch(rf"{kind}(-\d+)?", page.name)
                   for found in re.findall(r"sheet (\d+) of (\d+)$", page.title)]
        assert numbers == [(number, len(numbers)) for number in range(1, len(numbers) + 1)]


@pytest.mark.parametrize("name", ["pump-shed-closed", "kiosk-with-porch", "high-sill"])
def test_svg_and_pdf_hold_the_same_words_in_the_same_order(name: str) -> None:
    drawing = drawn(name)
    document = pypdfium2.PdfDocument(draw_pdf(drawing))
    assert len(document) == len(drawing.pages)
    for number, page in enumerate(drawing.pages):
        told = html.unescape(draw_svg(page).decode())
        lettered = re.findall(r">([^<>]+)</text>", told)
        assert lettered == [text.text for text in texts_of(page)]
        in_pdf = set(re.sub(r"\s", "", document[number].get_textpage().get_text_range()))
        assert set(re.sub(r"\s", "", "".join(lettered))) == in_pdf


@pytest.mark.parametrize("name", ["ticket-kiosk", "kiosk-with-porch"])
def test_every_sheet_has_the_line_to_measure_and_no_line_too_thin(name: str) -> None:
    layout = lay(load_plan(SAMPLES / f"{name}.toml"))
    length, words = CHECK_LINE[layout.job.measure]
    for page in draw_sheets(layout, (), None, DRAWN).pages:
        assert words in [text.text for text in texts_of(page)]
        lines = [line for item in page.ink if isinstance(item, Strokes) for line in item.segments]
        assert any(abs(line.x2 - line.x1 - length) < 1e-6 and line.y1 == line.y2 for line in lines)
        assert min(item.width for item in page.ink if isinstance(item, Strokes | Outlines)) >= 0.25
        assert len(draw_svg(page)) < 300_000


def test_the_same_bytes_twice() -> None:
    one, other = drawn("pump-shed-closed"), drawn("pump-shed-closed")
    assert draw_pdf(one) == draw_pdf(other)
    assert [draw_svg(page) for page in one.pages] == [draw_svg(page) for page in other.pages]


@settings(max_examples=examples(10))
@given(plan_texts())
def test_random_plans_keep_all_their_lettering_apart(plan: str) -> None:
    layout = lay(read_plan(plan, "landing.toml"))
    for page in draw_sheets(layout, (), None, tuple(kind for kind in DRAWN if kind != "wall")).pages:
        assert faults_of(page) == [], page.name
