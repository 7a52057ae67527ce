"""The order of preference as one whole number: each grade outweighs all that stand after it.

Whole numbers have no widest value in Python, so grades never run into one another below 2**56 each:
a wall of a million courses by 3,000 m stays under that.
"""

from __future__ import annotations

_WIDTH = 56

FIRST_FULL = 1
MIDDLE = FIRST_FULL << _WIDTH
SHOWS = MIDDLE << _WIDTH
JOINT = SHOWS << _WIDTH
LAP = JOINT << _WIDTH
SETTING = LAP << _WIDTH
SHORT = SETTING << _WIDTH
CUTTING = SHORT << _WIDTH
BROKEN = CUTTING << _WIDTH

IMPOSSIBLE = BROKEN << _WIDTH
"""More than any layout costs."""


def count_broken(cost: int) -> int:
    """Broken rules in a cost."""
    return cost // BROKEN


def count_cutting(cost: int) -> int:
    """Cutting in a cost: a cut counts one, one shorter than half a unit two."""
    return cost % BROKEN // CUTTING


def count_settings(cost: int) -> int:
    """Different cut lengths in a cost."""
    return cost % SHORT // SETTING
