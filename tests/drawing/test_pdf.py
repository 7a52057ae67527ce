"""The PDF: pages of the right size, text that can be read out, an embedded font, the same bytes; and one picture
with the SVG."""

from __future__ import annotations

import io
import os
import subprocess
import sys
from functools import cache
from pathlib import Path

import pypdf
import pypdfium2
import pytest
from PIL import Image, ImageChops, ImageDraw

from tests.drawing.sheets import advance, texts_of
from tests.drawing.walls import PLANS, drawn
from wallplan.drawing.pdf import draw_pdf
from wallplan.drawing.primitives import Area, Dot, Drawing, Outlines, Page, Strokes

ROOT = Path(__file__).resolve().parents[2]


@cache
def pdf(name: str) -> bytes:
    return draw_pdf(drawn(name))


@pytest.mark.parametrize("name", ["kiosk", "quay", "shelter"])
def test_each_page_is_as_large_as_its_paper(name: str) -> None:
    reader = pypdf.PdfReader(io.BytesIO(pdf(name)))
    pages = drawn(name).pages
    assert len(reader.pages) == len(pages)
    for found, page in zip(reader.pages, pages, strict=True):
        assert float(found.mediabox.width) == pytest.approx(page.paper.width * 72 / 25.4, abs=0.01)
        assert float(found.mediabox.height) == pytest.approx(page.paper.height * 72 / 25.4, abs=0.01)


@pytest.mark.parametrize("name", ["kiosk", "quay"])
def test_every_text_can_be_read_out_where_it_stands(name: str) -> None:
    document = pypdfium2.PdfDocument(pdf(name))
    for number, page in enumerate(drawn(name).pages):
        words = document[number].get_textpage()
        for text in texts_of(page):
            unit = text.height / 1493
            width = sum(advance(letter) for letter in text.text) * unit
            left = text.x - {"start": 0.0, "middle": width / 2, "end": width}[text.anchor]
            found = words.get_text_bounded(
                left * 72 / 25.4 - 0.2, (page.paper.height - text.y - 0.1 * text.height) * 72 / 25.4,
                (left + width) * 72 / 25.4 + 0.2, (page.paper.height - text.y + text.height) * 72 / 25.4)
            assert text.text in " ".join(found.split()) or text.text.split() == found.split(), (text, found)


def test_the_title_is_the_jobs_and_no_time_is_in_the_file() -> None:
    metadata = pypdf.PdfReader(io.BytesIO(pdf("quay"))).metadata
    assert metadata is not None
    assert metadata.title == "Boat store <script>alert('x')</script> & \"slip\""
    assert metadata.creation_date is None


def test_the_font_is_embedded_as_truetype() -> None:
    for page in pypdf.PdfReader(io.BytesIO(pdf("quay"))).pages:
        for reference in page["/Resources"]["/Font"].values():  # type: ignore[index]
            font = reference.get_object()
            inner = font["/DescendantFonts"][0].get_object() if "/DescendantFonts" in font else font
            assert "/FontFile2" in inner["/FontDescriptor"]
            assert "DejaVuSans" in inner["/BaseFont"]


def test_the_same_drawing_is_the_same_bytes_under_any_hash_seed() -> None:
    code = """
import hashlib
from wallplan.drawing.paper import PAPERS
from wallplan.drawing.pdf import draw_pdf
from wallplan.drawing.primitives import Dot, Drawing, Page, Segment, Strokes, Text
from wallplan.drawing.svg import draw_svg
ink = (Strokes((Segment(20, 20, 40, 50),), 0.35, (3.0, 1.0)), Dot(30, 30, 1), Text(50, 50, "12'-4 5/8 in Jamb", 3.5))
page = Page(PAPERS["A4"], "kiosk", "Kiosk", "A wall", ink)
print(hashlib.sha256(draw_pdf(Drawing("Kiosk", (page,))) + draw_svg(page)).hexdigest())
"""
    path = os.pathsep.join([str(ROOT), os.environ.get("PYTHONPATH", "")])
    hashes = {
        subprocess.run([sys.executable, "-c", code], env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": path},
                       capture_output=True, text=True, check=True).stdout
        for seed in ("1", "2")
    }
    assert len(hashes) == 1
    assert len(hashes.pop().strip()) == 64


def test_a_page_is_small_and_no_pages_is_no_error() -> None:
    for name in PLANS:
        assert len(pdf(name)) < 300_000
    assert draw_pdf(Drawing("Nothing", ())).startswith(b"%PDF")


SCALE = 4.0
"""Pixels to the mm."""


def _draw_lines(page: Page) -> Image.Image:
    """The page's lines and areas (no lettering), by a painter of the test's own."""
    picture = Image.new("L", (round(page.paper.width * SCALE), round(page.paper.height * SCALE)), 255)
    pen = ImageDraw.Draw(picture)
    for item in page.ink:
        if isinstance(item, Strokes) and not item.dash:
            for segment in item.segments:
                pen.line([value * SCALE for value in segment], fill=0, width=max(1, round(item.width * SCALE)))
        elif isinstance(item, Outlines):
            for box in item.boxes:
                a, b, c, d = (value * SCALE for value in box)
                pen.line([a, b, c, b, c, d, a, d, a, b], fill=0, width=max(1, round(item.width * SCALE)))
        elif isinstance(item, Area):
            pen.rectangle([value * SCALE for value in item.box], fill=0)
        elif isinstance(item, Dot):
            x, y, r = item.x * SCALE, item.y * SCALE, item.radius * SCALE
            pen.ellipse([x - r, y - r, x + r, y + r], fill=0)
    return picture


def _grown(picture: Image.Image, pixels: int) -> Image.Image:
    from PIL import ImageFilter

    return picture.filter(ImageFilter.MinFilter(2 * pixels + 1))


def _share_outside(picture: Image.Image, other: Image.Image) -> float:
    """Share of a picture's dark pixels that lie over a pixel and a half away from the other's."""
    dark = picture.point(lambda value: 255 if value < 96 else 0)
    near = _grown(other, 2).point(lambda value: 255 if value > 200 else 0)
    outside = ImageChops.multiply(dark, near)
    return sum(outside.histogram()[128:]) / max(1, sum(dark.histogram()[128:]))


@pytest.mark.parametrize("name", ["kiosk", "shelter"])
def test_the_pdfs_picture_is_that_of_the_primitives_that_the_svg_holds(name: str) -> None:
    page = drawn(name).pages[0]
    bare = Page(page.paper, "x", "x", "x", tuple(
        item for item in page.ink if isinstance(item, Strokes | Outlines | Area | Dot)
        and not (isinstance(item, Strokes) and item.dash)))
    document = pypdfium2.PdfDocument(draw_pdf(Drawing("x", (bare,))))
    rendered = document[0].render(scale=SCALE * 25.4 / 72).to_pil().convert("L")
    painted = _draw_lines(bare).resize(rendered.size)
    assert _share_outside(rendered, painted) < 0.01
    assert _share_outside(painted, rendered) < 0.01
    moved = ImageChops.offset(painted, 12, 12)
    assert _share_outside(moved, rendered) > 0.1
