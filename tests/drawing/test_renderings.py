"""The files as others render them: SVG by resvg and PDF by pdfium show one picture; line weights and the line to measure stand
in both exactly; and a half-size photocopy can still be read."""

from __future__ import annotations

import io
import re
from functools import cache
from pathlib import Path
from typing import Any

import matplotlib
import pypdf
import pypdfium2
import pytest
import resvg_py
from PIL import Image, ImageChops, ImageDraw, ImageFilter, ImageFont
from pypdf.generic import ContentStream

from tests.drawing.sheets import advance
from tests.drawing.walls import drawn
from tests.long_run import LONG
from wallplan.drawing.lettering import font_size
from wallplan.drawing.pdf import draw_pdf
from wallplan.drawing.primitives import Drawing, Outlines, Page, Strokes, Text
from wallplan.drawing.print_check import CHECK_LINE
from wallplan.drawing.sheet_set import DRAWN, draw_sheets
from wallplan.drawing.svg import draw_svg
from wallplan.layout.build import lay
from wallplan.plan.load import load_plan

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))
FONT = str(Path(matplotlib.get_data_path()) / "fonts" / "ttf" / "DejaVuSans.ttf")
FINE = 10.0
"""Pixels to the mm: every paper is a whole number of them."""


@cache
def whole_set(path: Path) -> Drawing:
    return draw_sheets(lay(load_plan(path)), (), None, DRAWN, full_size=True)


def picture_of_svg(page: Page, pixels: float) -> Image.Image:
    size = (round(page.paper.width * pixels), round(page.paper.height * pixels))
    data = resvg_py.svg_to_bytes(svg_string=draw_svg(page).decode(), width=size[0], height=size[1], dpi=96.0,
                                 skip_system_fonts=True, font_files=[FONT])
    return Image.open(io.BytesIO(bytes(data))).convert("L")


def picture_of_pdf(page: Page, pixels: float) -> Image.Image:
    document = pypdfium2.PdfDocument(draw_pdf(Drawing("sheet", (page,))))
    picture: Image.Image = document[0].render(scale=pixels * 25.4 / 72).to_pil().convert("L")
    return picture


def dark(picture: Image.Image) -> Image.Image:
    return picture.point(lambda value: 255 if value < 128 else 0)


def moved(one: Image.Image, other: Image.Image) -> float:
    """The share of one picture's dark pixels that have none of the other's within a pixel."""
    here, there = dark(one), dark(other).filter(ImageFilter.MaxFilter(3))
    outside = ImageChops.subtract(here, there)
    return outside.histogram()[255] / max(1, here.histogram()[255])


def pages_to_compare() -> list[tuple[Path, int]]:
    """A page of each kind; in a long run every page of every sample."""
    found: list[tuple[Path, int]] = []
    kinds = set[str]()
    for path in SAMPLES if LONG else (path for path in SAMPLES if path.stem in ("breaks-a-rule", "ticket-kiosk")):
        for number, page in enumerate(whole_set(path).pages):
            kind = page.name.split("-")[0] + ("full" if "full" in page.name else "")
            if LONG or kind not in kinds:
                found.append((path, number))
            kinds.add(kind)
    return found


@pytest.mark.parametrize(("path", "number"), pages_to_compare(), ids=lambda value: getattr(value, "stem", str(value)))
def test_svg_and_pdf_are_one_picture_to_other_renderers(path: Path, number: int) -> None:
    page = whole_set(path).pages[number]
    one, other = picture_of_svg(page, FINE), picture_of_pdf(page, FINE)
    assert one.size == other.size
    assert moved(one, other) < 0.01 and moved(other, one) < 0.01
    assert moved(ImageChops.offset(one, 3, 0), other) > 0.1  # a third of a millimetre is seen


def strokes_in(page: Any) -> tuple[set[float], list[tuple[float, float]]]:
    """Line widths in mm of a PDF page's own operators, and the lengths across and down of its straight lines, mm."""
    widths, lines, at, width = set[float](), list[tuple[float, float]](), (0.0, 0.0), 0.0
    for operands, operator in ContentStream(page.get_contents(), page.pdf).operations:
        if operator == b"w":
            width = float(operands[0]) * 25.4 / 72
        elif operator == b"m":
            at = (float(operands[0]), float(operands[1]))
        elif operator == b"l":
            end = (float(operands[0]), float(operands[1]))
            lines.append((abs(end[0] - at[0]) * 25.4 / 72, abs(end[1] - at[1]) * 25.4 / 72))
            at = end
        elif operator == b"S":
            widths.add(round(width, 4))
    return widths, lines


@pytest.mark.parametrize("path", [path for path in SAMPLES if path.stem in ("ticket-kiosk", "kiosk-with-porch")],
                         ids=lambda path: path.stem)
def test_line_weights_and_the_line_to_measure_are_exact_in_both_files(path: Path) -> None:
    layout, drawing = lay(load_plan(path)), whole_set(path)
    length = CHECK_LINE[layout.job.measure][0]
    for page, written in zip(drawing.pages, pypdf.PdfReader(io.BytesIO(draw_pdf(drawing))).pages, strict=True):
        wanted = {item.width for item in page.ink if isinstance(item, Strokes | Outlines)}
        widths, lines = strokes_in(written)
        assert widths == wanted
        assert any(abs(across - length) < 0.001 and down < 0.001 for across, down in lines)
        told = draw_svg(page).decode()
        assert {float(found) for found in re.findall(r'stroke-width="([\d.]+)"', told)} == wanted
        assert any(abs(float(end) - float(start) - length) < 0.001 for start, end in
                   re.findall(r"M([\d.]+) [\d.]+L([\d.]+) ", told))


COPIED = 300 / 25.4 / 2
"""Pixels to the sheet's mm on a copy at 50 %, scanned at 300 to the inch."""

LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ0123456789"


def copied(page: Page) -> Image.Image:
    """A black-and-white copy at half size: one bit a pixel."""
    return dark(picture_of_pdf(page, COPIED))


def read_letter(picture: Image.Image, x: float, text: Text, width: float) -> str:
    """The letter that a cell of a copy looks most like, of all letters and digits."""
    scores = {}
    for letter in LETTERS:
        cell = Image.new("L", (round(width * COPIED) + 4, round(1.3 * text.height * COPIED)), 0)
        ImageDraw.Draw(cell).text((2, round(1.15 * text.height * COPIED)), letter, font=_type(text.height), fill=255, anchor="ls")
        left, top = round(x * COPIED) - 2, round((text.y - 1.15 * text.height) * COPIED)
        scores[letter] = min(_difference(picture, cell, left + across, top + down)
                             for across in (-1, 0, 1) for down in (-1, 0, 1))
    return min(scores, key=lambda letter: scores[letter])


@cache
def _type(height: float) -> ImageFont.FreeTypeFont:
    return ImageFont.truetype(FONT, font_size(height) * COPIED)


def _difference(picture: Image.Image, cell: Image.Image, left: int, top: int) -> int:
    found = picture.crop((left, top, left + cell.width, top + cell.height))
    return ImageChops.difference(found, dark(ImageChops.invert(cell))).histogram()[255]


def letters_to_read(page: Page) -> list[tuple[str, float, Text, float]]:
    """Cut letters and the digits of their sizes and counts: the letter, where it starts, its text and its advance, mm."""
    found = []
    for text in (item for item in page.ink if isinstance(item, Text)):
        if text.upright or not re.fullmatch(r"[A-HJ-NP-Z]{1,2}|[\d /x\"]+\*?", text.text) or text.height < 3.5:
            continue
        unit = text.height / 1493
        width = sum(advance(letter) for letter in text.text) * unit
        x = text.x - {"start": 0.0, "middle": width / 2, "end": width}[text.anchor]
        for letter in text.text:
            if letter in LETTERS:
                found.append((letter, x, text, advance(letter) * unit))
            x += advance(letter) * unit
    return found


def test_a_half_size_black_and_white_copy_can_be_read() -> None:
    read = []
    for page in drawn("kiosk").pages[:2]:  # both walls: the sizes of their cuts stand on the sheet where there is room
        picture = copied(page)
        read += [(letter, read_letter(picture, x, text, width)) for letter, x, text, width in letters_to_read(page)]
    assert len(read) > 80 and {"A", "B", "C"} <= {letter for letter, _ in read}
    assert [pair for pair in read if pair[0] != pair[1]] == []


def test_what_is_too_small_cannot_be_read_from_such_a_copy() -> None:
    """The reader does not read what is not there: lettering of 0.6 mm is lost."""
    ink = tuple(Text(20 + 10 * place, 40, letter, 0.6) for place, letter in enumerate(LETTERS))
    page = Page(drawn("kiosk").pages[0].paper, "x", "x", "x", ink)
    picture = copied(page)
    read = [read_letter(picture, text.x, text, advance(text.text) * text.height / 1493) == text.text for text in ink]
    assert sum(read) < len(read)
