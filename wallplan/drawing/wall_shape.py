"""A wall that is no rectangle on the paper: its outline, the true shape of pieces beside it, and its levels in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, SMALLEST, measure_text
from wallplan.drawing.primitives import Box, Point, Segment, Text
from wallplan.drawing.view import View, Window
from wallplan.lengths import print_length
from wallplan.plan.job import Outline, Place

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry


def trace(view: View, outline: Outline) -> tuple[Point, ...]:
    """The wall's outline on the paper, from the footing's left end round by the right, also what the window cuts off."""
    return tuple(Point(view.across(at), view.up(level)) for at, level in (*outline.footing, *reversed(outline.top)))


def outline_lines(view: View, outline: Outline) -> list[Segment]:
    """The outline as far as the window shows it; where a match line cuts the wall off it is left open."""
    points = trace(view, outline)
    lines = (Segment(*one, *other) for one, other in pairwise((*points, points[0])) if one != other)
    return [part for line in lines for part in clip(line, view.outline)]


def clip(line: Segment, box: Box) -> list[Segment]:
    """The part of a line inside a box, edges allowed; [] for none (Liang and Barsky, ACM Trans. Graphics, 1984)."""
    enters, leaves, across, down = 0.0, 1.0, line.x2 - line.x1, line.y2 - line.y1
    hair = 1e-6
    for step, room in ((-across, line.x1 - box.left + hair), (across, box.right - line.x1 + hair),
                       (-down, line.y1 - box.top + hair), (down, box.bottom - line.y1 + hair)):
        if step == 0:
            if room < 0:
                return []
        elif step < 0:
            enters = max(enters, room / step)
        else:
            leaves = min(leaves, room / step)
    if enters >= leaves:
        return []
    return [Segment(line.x1 + enters * across, line.y1 + enters * down, line.x1 + leaves * across, line.y1 + leaves * down)]


def cut_box(box: Box, shape: Sequence[Point]) -> tuple[Point, ...]:
    """A piece's rectangle cut off at the wall's outline: its corners in order; () where nothing is left."""
    from shapely.geometry import MultiPolygon, Polygon
    from shapely.geometry import box as rectangle

    left = rectangle(box.left, box.top, box.right, box.bottom).intersection(Polygon(shape))
    if isinstance(left, MultiPolygon):
        left = max(left.geoms, key=lambda part: part.area)
    return tuple(Point(x, y) for x, y in left.exterior.coords[:-1]) if isinstance(left, Polygon) and left.area > 0 else ()


def clip_hatch(lines: Sequence[Segment], shape: Sequence[tuple[float, float]], blanks: Sequence[Box] = ()) -> list[Segment]:
    """Hatching of a rectangle as far as it lies inside of a shape, with blanks for lettering; [] for no shape."""
    from shapely import union_all
    from shapely.geometry import Polygon, box

    if not shape:
        return []
    lettered = union_all([box(blank.left, blank.top, blank.right, blank.bottom) for blank in blanks])
    return _within(lines, Polygon(shape).buffer(-0.15).difference(lettered))


def hatch_rest(lines: Sequence[Segment], box: Box, shape: Sequence[tuple[float, float]]) -> list[Segment]:
    """Hatching of a rectangle as far as it lies outside of a shape in it."""
    from shapely.geometry import Polygon
    from shapely.geometry import box as rectangle

    return _within(lines, rectangle(box.left, box.top, box.right, box.bottom).difference(Polygon(shape).buffer(0.35)))


def _within(lines: Sequence[Segment], area: BaseGeometry) -> list[Segment]:
    from shapely.geometry import LineString, MultiLineString

    if not lines:
        return []
    inside = MultiLineString([((a, b), (c, d)) for a, b, c, d in lines]).intersection(area)
    parts = [part for part in getattr(inside, "geoms", [inside]) if isinstance(part, LineString) and part.length > 0.3]
    return [Segment(*part.coords[0], *part.coords[-1]) for part in parts]


def free_paper(view: View, outline: Outline) -> tuple[Box, ...]:
    """Rectangles over slopes and lowered tops, where lettering may stand."""
    found, top = [], view.outline.top
    for (at, level), (to, other) in pairwise(outline.top):
        if at >= to:
            continue
        (x1, y1), (x2, y2) = (view.across(at), view.up(level)), (view.across(to), view.up(other))
        if level == other:
            found.append(Box(x1, top, x2, y1))
        else:
            middle = (x1 + x2) / 2
            found.append(Box(x1, top, middle, (y1 + y2) / 2) if level < other else Box(middle, top, x2, (y1 + y2) / 2))
    return tuple(box for box in found if box.height > 4.0 and box.width > 4.0)


def letter_levels(board: Board, view: View) -> list[str]:
    """Letter the level of each tread of the footing, each lowered top and each ridge; those without room are told."""
    outline = view.wall.wall.outline
    if outline is None:
        return []
    from shapely.geometry import Polygon, box

    missing, wall, seen = [], Polygon(trace(view, outline)), view.outline
    for words, spots in _find_labels(view, outline):
        texts = [Text(x, y, words, height, "middle") for height in (FIGURES, SMALLEST) for x, y in spots(height)]
        clear = (text for text in texts if seen.left <= measure_text(text).left and measure_text(text).right <= seen.right
                 and not wall.intersects(box(*measure_text(text).shrunk(-0.5))))
        if not any(board.letter_if_free(text, 0.6) for text in clear):
            missing.append(words)
    return missing


def _find_labels(view: View, outline: Outline) -> Iterator[tuple[str, _Spots]]:
    measure, window = view.job.measure, view.window
    for (at, level), (to, _) in pairwise(outline.footing):
        if level and _is_seen(window, at, to, level):
            yield f"footing at {print_length(level, measure)}", _Spots(view, (at, to), level, below=True)
    highest = max(level for _, level in outline.top)
    for (at, level), (to, other) in pairwise(outline.top):
        if level == other < highest and _is_seen(window, at, to, level):
            yield f"top at {print_length(level, measure)}", _Spots(view, (at, to), level, below=False)
    for at, level in _find_ridges(outline.top):
        if window.left <= at <= window.right and level <= window.top:
            yield f"ridge at {print_length(level, measure)}", _Spots(view, (at, at), level, below=False)


def _is_seen(window: Window, left: int, right: int, level: int) -> bool:
    """Whether most of a level stretch stands in a window."""
    seen = min(right, window.right) - max(left, window.left)
    return left < right and 2 * seen >= right - left and window.bottom <= level <= window.top


def _find_ridges(top: Sequence[Place]) -> tuple[Place, ...]:
    """Places from which the top slopes down."""
    slopes = [(one, other) for one, other in pairwise(top) if one[0] != other[0] and one[1] != other[1]]
    return tuple(dict.fromkeys(max(pair, key=lambda place: place[1]) for pair in slopes))


class _Spots:
    """Where a level may be lettered: under a tread or over a top, from the middle outward."""

    def __init__(self, view: View, span: tuple[int, int], level: int, *, below: bool) -> None:
        left, right = (view.across(min(max(at, view.window.left), view.window.right)) for at in span)
        self.middle, self.reach, self.y, self.below = (left + right) / 2, (right - left) / 2, view.up(level), below

    def __call__(self, height: float) -> Iterator[tuple[float, float]]:
        """Baselines, nearest first."""
        for drop in (1.2, 2.4, 4.0, 6.0, 9.0, 12.0) if self.below else (2.4, 4.0, 6.0, 9.0, 12.0):
            y = self.y + drop + height if self.below else self.y - drop
            for aside in (0.0, 0.25, -0.25, 0.5, -0.5):
                yield self.middle + aside * self.reach, y
            if not self.reach:
                yield from ((self.middle + shift, y) for shift in (12.0, -12.0, 20.0, -20.0))
