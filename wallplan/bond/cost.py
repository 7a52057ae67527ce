"""The order of preference as one whole number: each grade outweighs all that stand after it.

Whole numbers have no widest value in Python, so grades never run into one another below 2**56 each:
a wall of a million courses by 3,000 m stays under that.
LAP is the departure from the bond's own lap. Where the plan asks for another bond than half, keeping it is worth more
than any cutting (BOND): by cutting alone a third bond would be laid as a half bond, half units being free.
"""

from __future__ import annotations

GRADE = 56
"""Bits that a grade takes."""

FIRST_FULL = 1
MIDDLE = FIRST_FULL << GRADE
SHOWS = MIDDLE << GRADE
JOINT = SHOWS << GRADE
LAP = JOINT << GRADE
SETTING = LAP << GRADE
SHORT = SETTING << GRADE
CUTTING = SHORT << GRADE
BOND = CUTTING << GRADE
BROKEN = BOND << GRADE

IMPOSSIBLE = BROKEN << GRADE
"""More than any layout costs."""


def count_broken(cost: int) -> int:
    """Broken rules in a cost."""
    return cost // BROKEN


def count_cutting(cost: int) -> int:
    """Cutting in a cost: a cut counts one, one shorter than half a unit two."""
    return cost % BOND // CUTTING


def count_settings(cost: int) -> int:
    """Different cut lengths in a cost."""
    return cost % SHORT // SETTING
