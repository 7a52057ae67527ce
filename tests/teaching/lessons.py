"""Lessons that several tests look at, drawn once."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from wallplan.drawing.primitives import Drawing, Page, Text
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.load import load_plan, read_plan
from wallplan.planner import LESSON
from wallplan.rules.check import check
from wallplan.teaching.lesson import draw_lesson_sheets

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))

HOSTILE = """\
title = "Kiosk <script>alert('1')</script> & \\"slip\\" </svg>"
measure = "feet"
[masonry]
unit = "ferry\\"><b>"
[own_unit]
key = "ferry\\"><b>"
name = "Block <img src=x onerror=alert(2)> & 'half'"
kind = "block"
length = '15 5/8"'
height = '7 5/8"'
thickness = '7 5/8"'
joint = '3/8"'
[[wall]]
name = "Quay \\"side\\" <script>alert(3)</script>"
length = "20'"
height = "8'"
[[wall.opening]]
name = "</text><script>alert(4)</script> & door"
from_left = "5' 4"
width = "3' 4"
height = "6'"
"""


@cache
def laid(sample: Path) -> Layout:
    """A sample laid out."""
    return lay(load_plan(sample))


@cache
def lesson(sample: Path, paper: str | None = None) -> Drawing:
    """All lesson sheets of a sample."""
    layout = laid(sample)
    return draw_lesson_sheets(layout, check(layout), paper, LESSON)


@cache
def hostile() -> tuple[Layout, Drawing]:
    """A plan whose names are full of markup, and its lesson."""
    layout = lay(read_plan(HOSTILE, "hostile.toml"))
    return layout, draw_lesson_sheets(layout, check(layout), None, LESSON)


def sample(name: str) -> Path:
    """The path of a sample by its name."""
    return next(path for path in SAMPLES if path.stem == name)


def words_on(page: Page) -> str:
    """All lettering of a page, line after line."""
    return "\n".join(item.text for item in page.ink if isinstance(item, Text))
