"""Hatching: parallel lines clipped to a rectangle, with a blank left for lettering. Lines only, never a tint."""

from __future__ import annotations

import math

from wallplan.drawing.primitives import Box, Segment

CUT_SPACING = 1.2
"""Between the lines of a cut's hatch, which rise to the right, mm."""

STOCK_SPACING = 2.6
"""Between the lines of a half's hatch, which fall to the right, mm."""


def hatch_cut(box: Box, blank: Box | None) -> list[Segment]:
    """The hatch of a cut piece: close lines rising to the right. [] for an empty box."""
    return _hatch(box, CUT_SPACING, -1, blank)


def hatch_half(box: Box, blank: Box | None = None) -> list[Segment]:
    """The hatch of a half: open lines falling to the right. [] for an empty box."""
    return _hatch(box, STOCK_SPACING, 1, blank)


def hatch_part(box: Box, blank: Box | None = None) -> list[Segment]:
    """The hatch of any other stock length: open upright lines. [] for an empty box."""
    count = max(1, round(box.width / STOCK_SPACING))
    step = box.width / count
    lines = [Segment(x, box.top, x, box.bottom) for x in (box.left + step * (place + 0.5) for place in range(count))]
    if blank is None:
        return lines
    return [part for line in lines for part in _spare_upright(line, blank)]


def _hatch(box: Box, spacing: float, slope: int, blank: Box | None) -> list[Segment]:
    """Lines y = slope * x + c across a box. ``slope`` is 1 or -1; y runs down, so -1 rises to the right."""
    step = spacing * math.sqrt(2)
    lines = []
    along = box.width + box.height
    start = (along % step) / 2 or step / 2
    for place in range(int((along - start) / step) + 1):
        offset = start + place * step  # along the lower side, then up the far one
        first = box.left + max(0.0, offset - box.height)
        last = box.left + min(box.width, offset)
        base = box.top if slope < 0 else box.bottom
        level = base - slope * offset + slope * (first - box.left)
        if last - first > 0.3:  # a shorter one is a speck in the corner
            lines.extend(_spare(Segment(first, level, last, level + slope * (last - first)), slope, blank))
    return lines


def _spare(line: Segment, slope: int, blank: Box | None) -> list[Segment]:
    """A sloping line without the part in the blank."""
    if blank is None:
        return [line]
    uprights = sorted((line.x1 + slope * (blank.top - line.y1), line.x1 + slope * (blank.bottom - line.y1)))
    enters, leaves = max(blank.left, uprights[0]), min(blank.right, uprights[1])
    if enters >= leaves or enters >= line.x2 or leaves <= line.x1:
        return [line]
    parts = [(line.x1, min(line.x2, enters)), (max(line.x1, leaves), line.x2)]
    return [
        Segment(a, line.y1 + slope * (a - line.x1), b, line.y1 + slope * (b - line.x1)) for a, b in parts if b > a
    ]


def _spare_upright(line: Segment, blank: Box) -> list[Segment]:
    if not blank.left < line.x1 < blank.right:
        return [line]
    parts = [(line.y1, min(line.y2, blank.top)), (max(line.y1, blank.bottom), line.y2)]
    return [Segment(line.x1, a, line.x1, b) for a, b in parts if b > a]
