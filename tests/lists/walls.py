"""Small layouts for the lists' tests, from plans as a mason writes them."""

from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.plan.load import read_plan

PIER = """
title = "Pier"
measure = "feet"
[masonry]
unit = "block-8"
tightest_joint = "3/8"
widest_joint = "3/8"
least_piece = '8"'
least_lap = '6"'
[[wall]]
name = "Pier"
length = '38"'
height = "4'"
"""

BRICK = """
title = "Bench"
measure = "metric"
[masonry]
unit = "brick-uk"
tightest_joint = 10
widest_joint = 10
[[wall]]
name = "Back"
length = 1015
courses = 4
"""


def lay_text(text: str) -> Layout:
    """The layout of a plan's text."""
    return lay(read_plan(text, "test.toml"))
