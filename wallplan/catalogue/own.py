"""A unit of the plan's own: from specified sizes, or from the mean of units measured on site."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Literal

from wallplan.catalogue.own_rules import (
    SHAPES,
    Measured,
    OwnUnitError,
    find_count_mistakes,
    find_size_mistakes,
    mean_of,
)
from wallplan.catalogue.pieces import half_bat, stock_of
from wallplan.catalogue.unit import Unit
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure

Kind = Literal["block", "brick"]

USUAL_SHAPES: Mapping[Kind, tuple[str, ...]] = {"block": SHAPES, "brick": ("stretcher",)}
"""Shapes of an own unit where the plan names none (common practice, no source)."""

USUAL_LEADS: Mapping[Kind, int] = {"block": 5, "brick": 7}
"""Courses in a lead: NAVEDTRA 14043 (block, 4 or 5); free-ed.net masonry course, lesson 3-07 (brick, 6 or 7)."""

_JOINT_PLAY: Mapping[Measure, int] = {"feet": TICKS_PER_INCH // 8, "metric": 3 * TICKS_PER_MM}


def own_unit(
    key: str, *, measure: Measure, kind: Kind, length: Measured, height: Measured, thickness: Measured, joint: int,
    tightest_joint: int | None = None, widest_joint: int | None = None, gauge: int | tuple[int, int] | None = None,
    half: bool | int = True, three_quarter: int | None = None, quarter: int | None = None,
    half_high: int | None = None, shapes: tuple[str, ...] | None = None, leads: int | None = None,
    solid: bool | None = None, name: str | None = None, ell_return: int | None = None,
) -> Unit:
    """Build a unit from a plan's own definition. Lengths are ticks; several measurements stand for their mean.

    ``gauge`` is a course's height with its bed, or (courses, their height); left out, height and joint. ``half`` is
    a moulded half's length, False for none, True for half a unit less half a joint (a brick's is a sawn bat). Joints
    play 1/8 in or 3 mm either way unless told, never over a third. Raises OwnUnitError with every mistake at once.
    """
    courses, risen = gauge if isinstance(gauge, tuple) else (1, gauge)
    mistakes = (*find_size_mistakes({
        "length": length, "height": height, "thickness": thickness, "joint": joint, "tightest_joint": tightest_joint,
        "widest_joint": widest_joint, "gauge": None if risen is None else Fraction(risen, max(courses, 1)),
        "half": None if isinstance(half, bool) else half, "three_quarter": three_quarter, "quarter": quarter,
        "half_high": half_high, "ell_return": ell_return,
    }, measure), *find_count_mistakes(courses, leads, shapes))
    if mistakes:
        raise OwnUnitError(mistakes)
    tall, long, play = mean_of(height), mean_of(length), min(_JOINT_PLAY[measure], joint // 3)
    rise = tall + joint if risen is None else risen
    return Unit(
        key=key, name=name or key, kind=kind, country="own", length=long, height=tall, thickness=mean_of(thickness),
        joint=joint, tightest_joint=joint - play if tightest_joint is None else tightest_joint,
        widest_joint=joint + play if widest_joint is None else widest_joint,
        gauge=round(Fraction(rise, courses)), coursing=(courses, rise),
        pieces=stock_of(long, half=_half_length(half, long, joint), half_sawn=half is True and kind == "brick",
                        three_quarter=three_quarter, quarter=quarter),
        half_high=half_high, shapes=shapes or USUAL_SHAPES[kind], leads=leads or USUAL_LEADS[kind],
        solid=kind == "brick" if solid is None else solid, net_litres=None, mass_kg=None, ell_return=ell_return,
        source=_source(length, height, thickness),
    )


def _half_length(half: bool | int, length: int, joint: int) -> int | None:
    if isinstance(half, bool):
        return half_bat(length, joint) if half else None
    return half


def _source(*sizes: Measured) -> str:
    measured = max((len(size) for size in sizes if isinstance(size, tuple)), default=0)
    return f"the plan's own unit, mean of {measured} measured" if measured else "the plan's own unit, as specified"
