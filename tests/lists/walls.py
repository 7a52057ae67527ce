"""Small layouts for the lists' tests, from plans as a mason writes them."""

from fractions import Fraction

from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lists.order.compose import list_order
from wallplan.lists.order.line import Line, Order
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


NOMINAL_WALL = """
title = "Takeoff"
measure = "feet"
sizes = "nominal"
[masonry]
unit = "{unit}"
[[wall]]
name = "Long side"
length = "{length}"
height = "{height}"
"""


def plan_wall(length: str, height: str, more: str = "", unit: str = "block-8") -> str:
    """The text of a plan of one wall, sizes nominal, as "20'"; ``more`` follows it."""
    return NOMINAL_WALL.format(unit=unit, length=length, height=height) + more


def take_off(length: str, height: str, more: str = "", unit: str = "block-8") -> Order:
    """The order of such a wall."""
    return list_order(lay_text(plan_wall(length, height, more, unit)))


def count_whole(order: Order) -> Fraction:
    """Net units in whole ones, two halves to one; for orders without cuts."""
    return sum((line.net / (2 if "half" in line.item else 1) for line in order.lines if line.group == "units"), Fraction(0))


def line_of(order: Order, item: str) -> Line:
    """The one line whose item begins so."""
    (line,) = (line for line in order.lines if line.item.startswith(item))
    return line
