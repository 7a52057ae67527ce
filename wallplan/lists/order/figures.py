"""Figures that a pencil can follow: what is printed is what is reckoned on with, rounded where it is printed."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from wallplan.lengths import TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM, Measure

LITRES_PER_CUBIC_FOOT = Fraction("0.3048") ** 3 * 1000
"""Exact: the foot is 0.3048 m (international yard and pound agreement, 1959)."""


@dataclass(frozen=True)
class Scale:
    """How a plan's measure names lengths, volumes and weights. ``cube`` is length cubed to the volume."""

    length: str
    volume: str
    weight: str
    run: str
    tick: int
    run_ticks: int
    cube: int

    def size(self, ticks: int) -> Fraction:
        """Inches or millimetres, to the thousandth of an inch or the tenth of a millimetre."""
        return settle(Fraction(ticks, self.tick), 3 if self.length == "in" else 1)

    def run_of(self, ticks: int) -> Fraction:
        """Feet or metres, to the hundredth."""
        return settle(Fraction(ticks, self.run_ticks), 2)


FEET = Scale("in", "cu ft", "lb", "ft", TICKS_PER_INCH, TICKS_PER_FOOT, 1728)
METRIC = Scale("mm", "litres", "kg", "m", TICKS_PER_MM, 1000 * TICKS_PER_MM, 1_000_000)


def scale_of(measure: Measure) -> Scale:
    """The scale of a plan's measure."""
    return FEET if measure == "feet" else METRIC


def settle(value: Fraction | int, places: int) -> Fraction:
    """A figure to so many decimals, halves up."""
    step = 10**places
    return Fraction(math.floor(value * step + Fraction(1, 2)), step)


def settle_some(value: Fraction | int, places: int) -> Fraction:
    """As ``settle``, but what would be rounded to nothing is left as it is: it is divided by. Nought stays nought."""
    return settle(value, places) or Fraction(value)


def settle_up(value: Fraction | int, places: int = 0) -> Fraction:
    """A figure to so many decimals, never under itself."""
    step = 10**places
    return Fraction(math.ceil(value * step), step)


def show(value: Fraction | int) -> str:
    """A settled figure in full, without nought at its end; a figure that does not end is printed to four decimals."""
    exact = settle(value, 4)
    text = f"{float(exact):.4f}".rstrip("0").rstrip(".")
    return text or "0"


def show_sum(values: Iterable[Fraction | int]) -> str:
    """``a + b + c``; a single figure stands alone, and none is 0."""
    return " + ".join(show(value) for value in values) or "0"


def plain(value: Fraction) -> int | float:
    """A figure for JSON: whole ones as whole numbers."""
    return int(value) if value.denominator == 1 else float(value)
