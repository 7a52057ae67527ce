"""What advice calls the ends of lengths, and how it prints one."""

from __future__ import annotations

from wallplan.advice.spans import Edge
from wallplan.lengths import Measure, print_length
from wallplan.plan.job import Wall


def name_edge(wall: Wall, edge: Edge) -> str:
    """An end of a length in words: ``left end``, ``Door``, ``control joint 1``."""
    kind, number = edge
    if kind in ("left end", "right end"):
        return kind
    return wall.openings[number].name if kind.endswith("jamb") else f"control joint {number + 1}"


def size_text(ticks: int, measure: Measure) -> str:
    """A length with its unit, feet and inches or ``mm``."""
    return print_length(ticks, measure) + ("" if measure == "feet" else " mm")
