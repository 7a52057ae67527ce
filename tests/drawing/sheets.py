"""What every sheet must keep, looked for in its primitives with the font's own outlines and shapely."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from pathlib import Path

import matplotlib
import numpy as np
import shapely
from matplotlib.ft2font import FT2Font, LoadFlags
from shapely import STRtree
from shapely.geometry import Polygon, box

from wallplan.drawing.primitives import Area, Dot, Outlines, Page, Strokes, Text
from wallplan.layout.model import Layout
from wallplan.lengths import print_length

BORDER = 15.0
FONT_UNITS = 2048
CAPITALS = 1493


@cache
def font() -> FT2Font:
    """The font that the PDF embeds."""
    return FT2Font(str(Path(matplotlib.get_data_path()) / "fonts" / "ttf" / "DejaVuSans.ttf"))


@cache
def advance(letter: str) -> int:
    """How far a letter advances in the font's file, in its units."""
    return font().load_char(ord(letter), flags=LoadFlags.NO_SCALE).horiAdvance


@cache
def _rise_and_fall(text: str) -> tuple[int, int]:
    boxes = [font().load_char(ord(letter), flags=LoadFlags.NO_SCALE).bbox for letter in text if letter != " "]
    return min(b[1] for b in boxes), max(b[3] for b in boxes)


def ink_of(text: Text) -> Polygon:
    """The rectangle that a text's letters blacken, mm, by the font's outlines."""
    unit = text.height / CAPITALS
    width = sum(advance(letter) for letter in text.text) * unit
    start = {"start": 0.0, "middle": -width / 2, "end": -width}[text.anchor]
    low, high = (height * unit for height in _rise_and_fall(text.text))
    if text.upright:
        return box(text.x - high, text.y - start - width, text.x - low, text.y - start)
    return box(text.x + start, text.y - high, text.x + start + width, text.y - low)


def texts_of(page: Page) -> list[Text]:
    """Every text of a page."""
    return [item for item in page.ink if isinstance(item, Text)]


def lines_of(page: Page) -> list[Polygon]:
    """Every stroke of a page as what it blackens; dashes and all."""
    found: list[Polygon] = []
    for item in page.ink:
        if isinstance(item, Strokes):
            ends = np.array(item.segments, dtype=float).reshape(-1, 2, 2)
            found += shapely.buffer(shapely.linestrings(ends), item.width / 2, cap_style="flat").tolist()
        elif isinstance(item, Outlines):
            rings = shapely.get_exterior_ring(shapely.box(*np.array(item.boxes, dtype=float).T))
            found += shapely.buffer(rings, item.width / 2, join_style="mitre").tolist()
        elif isinstance(item, Area):
            found.append(box(*item.box))
        elif isinstance(item, Dot):
            found.append(box(item.x, item.y, item.x, item.y).buffer(item.radius))
    return [shape for shape in found if not shape.is_empty]


def faults_of(page: Page) -> list[str]:
    """What is wrong with a page, a line each: lettering that meets lettering or lines, anything in the border,
    lettering or lines under the limits."""
    texts = texts_of(page)
    inks = [ink_of(text) for text in texts]
    lines = lines_of(page)
    sheet = box(BORDER, BORDER, page.paper.width - BORDER, page.paper.height - BORDER)
    faults = [f"{text.text!r} leaves the sheet" for text, ink in zip(texts, inks, strict=True) if not sheet.covers(ink)]
    faults += [f"a line leaves the sheet: {lines[place].bounds}"
               for place in np.flatnonzero(~shapely.covers(sheet.buffer(1e-6), lines)).tolist()]
    faults += [f"{text.text!r} is {text.height} mm high" for text in texts if text.height < 2.5]
    faults += [f"a line of {item.width} mm" for item in page.ink
               if isinstance(item, Strokes | Outlines) and item.width < 0.25]
    tree = STRtree(inks)
    faults += [f"{texts[place].text!r} meets {texts[other].text!r}"
               for place, other in tree.query(inks, "intersects").T.tolist() if other > place]
    faults += [f"{texts[place].text!r} meets a line {tuple(round(x, 1) for x in lines[line].bounds)}"
               for line, place in tree.query(lines, "intersects").T.tolist()]
    return faults


def untold(layout: Layout, pages: Iterable[Page]) -> set[str]:
    """Jambs, ends, steps, ridges, control joints and the walls' tops that no wall sheet of these pages tells."""
    told = {text.text for page in pages if page.name.startswith("wall-") for text in texts_of(page)}
    wanted = set[str]()
    for laid in layout.walls:
        wall, measured = laid.wall, layout.job.measure
        sides = {side for opening in wall.openings for side in (opening.left, opening.right)}
        corners = () if wall.outline is None else (*wall.outline.footing, *wall.outline.top)
        steps = {at for at, level in corners if level <= laid.courses[-1].top}
        wanted |= {print_length(side, measured) for side in (wall.length, *sides, *steps, *wall.control_joints) if side}
        wanted.add(print_length(laid.courses[-1].top, measured))
    return wanted - told
