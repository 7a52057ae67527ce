"""A drawing as PDF: the one module that knows matplotlib, and of it only the PDF back end.

Pages are drawn straight onto the back end's renderer, without figures: a sheet is some hundred primitives, and
none of them needs layout. Text stays text, its font is embedded as TrueType.
"""

from __future__ import annotations

import io
import logging
from collections.abc import Iterable, Iterator
from itertools import groupby
from operator import itemgetter
from typing import Any

import numpy as np

from wallplan.drawing.lettering import font_size, measure
from wallplan.drawing.primitives import Area, Box, Dot, Drawing, Outlines, Page, Primitive, Segment, Strokes, Text

logging.getLogger("matplotlib").setLevel(logging.ERROR)
# Before it comes in: it would tell of a home folder that it may not write. A letter that the font lacks is an empty box.

import matplotlib  # noqa: E402
from matplotlib import font_manager  # noqa: E402
from matplotlib.backends import backend_pdf  # noqa: E402
from matplotlib.font_manager import FontProperties  # noqa: E402
from matplotlib.path import Path  # noqa: E402
from matplotlib.transforms import Affine2D  # noqa: E402

POINTS = 72 / 25.4
"""PDF points to the mm."""

_RECTANGLE = [Path.MOVETO, Path.LINETO, Path.LINETO, Path.LINETO, Path.CLOSEPOLY]
_COLOURS = {"white": (1.0, 1.0, 1.0), "black": (0.0, 0.0, 0.0)}
_pdf: Any = backend_pdf  # the back end carries no annotations
_font_manager: Any = font_manager
_NOTHING = np.empty((0, 2))
_SETTINGS: Any = {"pdf.fonttype": 42, "pdf.compression": 6, "pdf.use14corefonts": False, "path.simplify": False}


def draw_pdf(drawing: Drawing) -> bytes:
    """The drawing's pages as one PDF, the same bytes for the same drawing. A drawing without pages gives a PDF
    without pages."""
    written = io.BytesIO()
    with matplotlib.rc_context(_SETTINGS):
        metadata = {"Title": drawing.title, "Creator": "wallplan", "Producer": None, "CreationDate": None}
        file = _pdf.PdfFile(written, metadata=metadata)
        glyphs = _Glyphs(file)
        for page in drawing.pages:
            _draw_page(file, glyphs, page)
        file.finalize()
        file.close()
    return written.getvalue()


def _draw_page(file: Any, glyphs: _Glyphs, page: Page) -> None:
    width, height = page.paper.width / 25.4, page.paper.height / 25.4
    file.newPage(width, height)
    renderer = _pdf.RendererPdf(file, 72, height, width)
    pen = _Pen(renderer, glyphs, page.paper.height)
    for item in page.ink:
        pen.draw(item)
    renderer.finalize()


class _Glyphs:
    """Letters as glyphs of the font that a file embeds; each letter is looked up once."""

    def __init__(self, file: Any) -> None:
        self.file = file
        self.font = _font_manager.get_font(_font_manager.findfont(FontProperties(family="DejaVu Sans")))
        self.known: dict[str, tuple[Any, bytes]] = {}

    def encode(self, text: str) -> Iterator[tuple[Any, bytes]]:
        """The text in parts of one subset of the font each, none kerned or joined: letters stand as measured."""
        glyphs = [self.known.get(letter) or self._look_up(letter) for letter in text]
        for name, part in groupby(glyphs, key=itemgetter(0)):
            yield name, b"".join(code for _, code in part)

    def _look_up(self, letter: str) -> tuple[Any, bytes]:
        file, font = self.file, self.font
        subset, code = file._character_tracker.track_glyph(font, ord(letter), font.get_char_index(ord(letter)))
        name = file.fontName(_font_manager.FontPath(font.fname, font.face_index), subset)
        self.known[letter] = name, code.to_bytes(2, "big")
        return self.known[letter]


class _Pen:
    """Draws primitives on one page; y is turned round, mm become points."""

    def __init__(self, renderer: Any, glyphs: _Glyphs, height: float) -> None:
        self.renderer = renderer
        self.glyphs = glyphs
        self.height = height
        self.turn = Affine2D().scale(POINTS, -POINTS).translate(0, height * POINTS)

    def draw(self, item: Primitive) -> None:
        match item:
            case Strokes():
                self._stroke(_lines(item.segments), item.width, item.dash)
            case Outlines():
                self._stroke(_boxes(item.boxes), item.width, ())
            case Area():
                self._fill(_boxes((item.box,)), item.fill)
            case Dot():
                self._fill(Path.circle((item.x, item.y), item.radius), "black")
            case Text():
                self._letter(item)

    def _stroke(self, path: Path, width: float, dash: tuple[float, ...]) -> None:
        style = self.renderer.new_gc()
        style.set_linewidth(width * POINTS)
        style.set_capstyle("butt")
        style.set_joinstyle("miter")
        if dash:
            style.set_dashes(0, [part * POINTS for part in dash])
        self.renderer.draw_path(style, path, self.turn)
        style.restore()

    def _fill(self, path: Path, fill: str) -> None:
        style = self.renderer.new_gc()
        style.set_linewidth(0)
        self.renderer.draw_path(style, path, self.turn, _COLOURS[fill])
        style.restore()

    def _letter(self, text: Text) -> None:
        style = self.renderer.new_gc()
        back = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor] * measure(text.text, text.height)
        x, y = (text.x, text.y + back) if text.upright else (text.x - back, text.y)
        turn = (0, 1, -1, 0) if text.upright else (1, 0, 0, 1)
        self.renderer.check_gc(style, (0.0, 0.0, 0.0))
        self.renderer.file.output(_pdf.Op.gsave, *turn, x * POINTS, (self.height - y) * POINTS, _pdf.Op.concat_matrix,
                                  _pdf.Op.begin_text)
        for name, codes in self.glyphs.encode(text.text):
            self.renderer.file.output(name, font_size(text.height) * POINTS, _pdf.Op.selectfont, [codes], _pdf.Op.showkern)
        self.renderer.file.output(_pdf.Op.end_text, _pdf.Op.grestore)
        style.restore()


def _lines(segments: Iterable[Segment]) -> Path:
    points = [point for a, b, c, d in segments for point in ((a, b), (c, d))]
    return _path(points, [Path.MOVETO, Path.LINETO])


def _boxes(boxes: Iterable[Box]) -> Path:
    points = [
        point for left, top, right, bottom in boxes
        for point in ((left, top), (right, top), (right, bottom), (left, bottom), (left, top))
    ]
    return _path(points, _RECTANGLE)


def _path(points: list[tuple[float, float]], codes: list[Any]) -> Path:
    return Path(points, codes * (len(points) // len(codes))) if points else Path(_NOTHING)
