"""A page as SVG: the one module that knows svgwrite. Millimetres throughout, text as text, no script."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

import svgwrite

from wallplan.drawing.lettering import font_size, measure
from wallplan.drawing.primitives import Area, Box, Dot, Outlines, Page, Primitive, Segment, Strokes, Text

FONT = "DejaVu Sans, Verdana, Arial, sans-serif"
"""The letters that were measured, and what stands in for them; each text is drawn to its measured width."""


def draw_svg(page: Page) -> bytes:
    """The page as an SVG file: width and height in mm, a title and a description, the same bytes for the same page."""
    paper = page.paper
    sheet = svgwrite.Drawing(
        size=(f"{_number(paper.width)}mm", f"{_number(paper.height)}mm"), debug=False,
        viewBox=f"0 0 {_number(paper.width)} {_number(paper.height)}",
        font_family=FONT, fill="none", stroke="none", stroke_linecap="butt", role="img",
    )
    sheet.attribs["style"] = "font-kerning:none;font-variant-ligatures:none"  # letters stand where they were measured
    sheet.attribs["xml:space"] = "preserve"  # two spaces in a name are two
    sheet.attribs["xml:lang"] = "en"
    sheet.set_desc(title=page.title, desc=page.description)
    sheet.add(sheet.rect((0, 0), ("100%", "100%"), fill="white"))
    for item in page.ink:
        sheet.add(_draw(sheet, item))
    return b'<?xml version="1.0" encoding="UTF-8"?>\n' + str(sheet.tostring()).encode() + b"\n"


def _draw(sheet: svgwrite.Drawing, item: Primitive) -> Any:
    match item:
        case Strokes():
            dashes = {"stroke_dasharray": ",".join(map(_number, item.dash))} if item.dash else {}
            return sheet.path(_lines(item.segments), stroke="black", stroke_width=_number(item.width), **dashes)
        case Outlines():
            return sheet.path(_boxes(item.boxes), stroke="black", stroke_width=_number(item.width))
        case Area():
            return sheet.path(_boxes((item.box,)), fill=item.fill)
        case Dot():
            return sheet.circle((_number(item.x), _number(item.y)), _number(item.radius), fill="black")
        case Text():
            return _letter(sheet, item)


def _letter(sheet: svgwrite.Drawing, text: Text) -> Any:
    turn = {"transform": f"rotate(-90 {_number(text.x)} {_number(text.y)})"} if text.upright else {}
    return sheet.text(
        text.text, insert=(_number(text.x), _number(text.y)), font_size=_number(font_size(text.height)),
        text_anchor=text.anchor, fill="black", textLength=_number(measure(text.text, text.height)),
        lengthAdjust="spacingAndGlyphs", **turn,
    )


def _lines(segments: Iterable[Segment]) -> str:
    return "".join(f"M{_number(a)} {_number(b)}L{_number(c)} {_number(d)}" for a, b, c, d in segments)


def _boxes(boxes: Iterable[Box]) -> str:
    return "".join(
        f"M{_number(left)} {_number(top)}H{_number(right)}V{_number(bottom)}H{_number(left)}Z"
        for left, top, right, bottom in boxes
    )


def _number(value: float) -> str:
    """A number of mm to 1/10,000: at 1:100 that is 0.01 mm of wall."""
    shown = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if shown == "-0" else shown
