"""The line to measure and the scale bar are as long as they say."""

from __future__ import annotations

import pytest

from wallplan.drawing.paper import SCALES
from wallplan.drawing.primitives import Outlines, Strokes, Text
from wallplan.drawing.print_check import set_print_check
from wallplan.lengths import Measure


@pytest.mark.parametrize(("measure", "length", "words"), [
    ("feet", 4 * 25.4, "this line is 4 in: measure it"), ("metric", 100.0, "this line is 100 mm: measure it"),
])
def test_the_line_is_as_long_as_it_says(measure: Measure, length: float, words: str) -> None:
    for scale in SCALES[measure]:
        panel = set_print_check(scale, measure, 180)
        line = next(item for item in panel.ink if isinstance(item, Strokes)).segments[0]
        assert line.x2 - line.x1 == length
        assert words in [item.text for item in panel.ink if isinstance(item, Text)]


@pytest.mark.parametrize("measure", ["feet", "metric"])
def test_the_bar_is_as_long_as_its_last_figure_says(measure: Measure) -> None:
    for scale in SCALES[measure]:
        panel = set_print_check(scale, measure, 180)
        boxes = next(item for item in panel.ink if isinstance(item, Outlines)).boxes
        words = [item.text for item in panel.ink if isinstance(item, Text)][-1].replace(",", "").split()
        part = 304.8 if "ft" in words else 1000 if "m" in words else 100
        assert (boxes[-1].right - boxes[0].left) * scale.ratio == pytest.approx(int(words[0]) * part)
        assert boxes[-1].right < 180
