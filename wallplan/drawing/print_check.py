"""The print check: a line to measure, and a scale bar that shrinks with the print."""

from __future__ import annotations

from wallplan.drawing.lettering import SMALLEST, measure
from wallplan.drawing.outlines import UNIT_LINE
from wallplan.drawing.panel import Panel
from wallplan.drawing.paper import Scale
from wallplan.drawing.primitives import Area, Box, Outlines, Primitive, Segment, Strokes, Text
from wallplan.lengths import Measure

CHECK_LINE: dict[Measure, tuple[float, str]] = {
    "feet": (101.6, "this line is 4 in: measure it"), "metric": (100.0, "this line is 100 mm: measure it"),
}
"""The line to measure: its length in mm, and what it says."""

SMALLEST_USUAL = 100
"""Over this ratio the bar's parts are ten feet or ten metres."""

LARGEST_USUAL = 8
"""Up to this ratio the bar's parts are three inches."""

FULL_SIZE = 1
"""At this ratio they are an inch or a centimetre."""

_LINE_Y = 5.2


def set_print_check(scale: Scale | None, measured: Measure, width: float) -> Panel:
    """The line to measure on the left, the scale bar beside it, none where nothing is to scale; 7.5 mm high."""
    length, words = CHECK_LINE[measured]
    line = (Segment(0, _LINE_Y, length, _LINE_Y), Segment(0, _LINE_Y - 2, 0, _LINE_Y + 1.5),
            Segment(length, _LINE_Y - 2, length, _LINE_Y + 1.5))
    ink = (Strokes(line, UNIT_LINE), Text(length / 2, _LINE_Y - 1.4, words, SMALLEST, "middle"))
    bar = [] if scale is None else _draw_bar(scale, measured, length + 8.0, width)
    return Panel(width, 7.5, (*ink, *bar))


def bar_part(scale: Scale, measured: Measure) -> tuple[float, str]:
    """Length of one part of the bar on the paper, mm, and what it is called."""
    if scale.ratio > SMALLEST_USUAL:
        return (3048.0 / scale.ratio, "x 10 ft") if measured == "feet" else (10_000.0 / scale.ratio, "x 10 m")
    if scale.ratio == FULL_SIZE:
        return (25.4, "in") if measured == "feet" else (10.0, "x 10 mm")
    if measured == "feet":
        return (76.2 / scale.ratio, "x 3 in") if scale.ratio <= LARGEST_USUAL else (304.8 / scale.ratio, "ft")
    return (1000.0 / scale.ratio, "m") if scale.ratio >= 50 else (100.0 / scale.ratio, "x 100 mm")


def _draw_bar(scale: Scale, measured: Measure, x: float, width: float) -> list[Primitive]:
    """Blocks, black and white in turn, with a figure at either end."""
    part, unit = bar_part(scale, measured)
    count = next((count for count in (8, 6, 5, 4, 3) if x + part * count + 4 <= 0.86 * width), 2)
    words = next((words for words in (f"{count} {unit}, {scale.name}", f"{count} {unit}", str(count))
                  if x + part * count + measure(words, SMALLEST) < width - 4), "")
    top, low = _LINE_Y - 0.9, _LINE_Y + 0.9
    blocks = [Box(x + part * place, top, x + part * (place + 1), low) for place in range(count)]
    ink: list[Primitive] = [Outlines(tuple(blocks), UNIT_LINE)]
    ink += [Area(block, "black") for block in blocks[::2]]
    base = top - 0.9
    ink += [Text(x, base, "0", SMALLEST, "middle"), Text(x + part, base, "1", SMALLEST, "middle"),
            Text(x + part * count, base, words, SMALLEST)]
    return ink
