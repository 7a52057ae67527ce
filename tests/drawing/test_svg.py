"""The SVG file: millimetres, title and description, text as text, no script, the same bytes."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from tests.drawing.sheets import texts_of
from tests.drawing.walls import PLANS, drawn
from wallplan.drawing.lettering import font_size, measure
from wallplan.drawing.primitives import Outlines, Strokes
from wallplan.drawing.svg import draw_svg

SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("name", PLANS)
def test_a_sheet_is_as_large_as_its_paper_in_mm(name: str) -> None:
    for page in drawn(name).pages:
        root = ElementTree.fromstring(draw_svg(page))
        assert (root.get("width"), root.get("height")) == (f"{page.paper.width:g}mm", f"{page.paper.height:g}mm")
        assert root.get("viewBox") == f"0 0 {page.paper.width:g} {page.paper.height:g}"
        assert root.get("role") == "img"


def test_title_and_description_are_there_and_markup_in_a_name_stays_text() -> None:
    page = drawn("quay").pages[0]
    data = draw_svg(page)
    root = ElementTree.fromstring(data)
    assert root.findtext(f"{SVG}title") == page.title
    assert root.findtext(f"{SVG}desc") == page.description
    assert "<script>alert('x')</script>" in page.title
    assert not [element for element in root.iter() if "script" in element.tag or "href" in str(element.attrib)]
    assert b"<script" not in data


def test_every_text_is_text_at_its_place_drawn_to_its_measured_width() -> None:
    page = drawn("kiosk").pages[0]
    root = ElementTree.fromstring(draw_svg(page))
    found = [(e.text, float(e.get("x", "")), float(e.get("y", "")), float(e.get("font-size", "")),
              float(e.get("textLength", ""))) for e in root.iter(f"{SVG}text")]
    assert len(found) == len(texts_of(page)) > 50
    for (words, x, y, size, width), text in zip(found, texts_of(page), strict=True):
        assert words == text.text
        assert (x, y, size, width) == pytest.approx(
            (text.x, text.y, font_size(text.height), measure(text.text, text.height)), abs=1e-4)


def test_every_line_is_at_its_place_with_its_width() -> None:
    page = drawn("kiosk").pages[0]
    paths = [e for e in ElementTree.fromstring(draw_svg(page)).iter(f"{SVG}path") if e.get("stroke") == "black"]
    items = [item for item in page.ink if isinstance(item, Strokes | Outlines)]
    assert len(paths) == len(items)
    for path, item in zip(paths, items, strict=True):
        assert float(path.get("stroke-width", "")) == item.width
        numbers = [float(number) for number in re.findall(r"-?[\d.]+", path.get("d", ""))]
        if isinstance(item, Strokes):
            assert numbers == pytest.approx([value for segment in item.segments for value in segment], abs=1e-4)
        else:
            drawn_boxes = [(left, top, right, bottom) for left, top, right, bottom, _ in
                           zip(*[iter(numbers)] * 5, strict=True)]
            assert drawn_boxes == [pytest.approx(box, abs=1e-4) for box in item.boxes]


def test_only_black_and_white() -> None:
    for name in PLANS:
        for page in drawn(name).pages:
            colours = set(re.findall(r'(?:fill|stroke)="([^"]*)"', draw_svg(page).decode()))
            assert colours <= {"black", "white", "none"}


def test_the_same_sheet_is_the_same_bytes_and_small() -> None:
    for page in drawn("quay").pages:
        assert draw_svg(page) == draw_svg(page)
        assert len(draw_svg(page)) < 300_000
