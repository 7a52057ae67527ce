"""A mortar's parts against ASTM C270's proportions by volume, and what a volume of mortar takes of each."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from wallplan.lists.order.figures import settle, show
from wallplan.plan.order_wishes import Mix

SOURCE = "ASTM C270 Table 1 (as restated in Masonry Magazine, March 1978, https://masonrymagazine.com/?pageID=21184)"


class Proportion(NamedTuple):
    """A row of the table: the type, and lime to one part of cement. Where two rows meet, the first is meant."""

    type: str
    least: Fraction
    most: Fraction


CEMENT_LIME = (
    Proportion("M", Fraction(1, 4), Fraction(1, 4)),
    Proportion("S", Fraction(1, 4), Fraction(1, 2)),
    Proportion("N", Fraction(1, 2), Fraction(5, 4)),
    Proportion("O", Fraction(5, 4), Fraction(5, 2)),
)
"""Cement-lime mortars of ASTM C270 Table 1. Limits in full from memory; the 1978 page prints 1/4, 1/2, 1 and 2."""

LEAST_SAND, MOST_SAND = Fraction(9, 4), Fraction(3)
"""Sand to the sum of cement and lime, damp and loose (ASTM C270 Table 1)."""

MATERIALS, MORTAR = 38, 27
"""The rule of 38: 38 cubic feet of materials make 27 of mortar (NAVEDTRA 14043,
https://constructionmanuals.tpub.com/14043/css/Estimating-Mortar-215.htm; small jobs only)."""


@dataclass(frozen=True)
class MixCheck:
    """What a mix is: its type where the standard's proportions hold it, else None; and what must be said of it."""

    type: str | None
    told: tuple[str, ...]


def check_mix(mix: Mix) -> MixCheck:
    """Name a mix by its type, or say what the standard does not admit. Never says that a type suits a wall.

    Lime putty counts as as much hydrated lime, as the table's column does (from memory).
    """
    outside = [*_find_strangers(mix), *_check_sand(mix)]
    if mix.masonry_cement:
        return _check_masonry_cement(mix, outside)
    if not mix.cement:
        return MixCheck(None, (*outside, "lime without cement is a lime mortar, which ASTM C270 does not list: ask whoever "
                                         "answers for the wall"))
    lime = (mix.lime + mix.lime_putty) / mix.cement
    row = next((row for row in CEMENT_LIME if row.least <= lime <= row.most), None)
    if row is None:
        outside.append(f"lime {show(settle(lime, 2))} to 1 of cement: ASTM C270 admits 0.25 (Type M) to 2.5 (Type O)")
    if outside or row is None:
        return MixCheck(None, tuple(outside))
    return MixCheck(row.type, (f"Type {row.type} by proportion: lime {show(settle(lime, 2))} to 1 of cement, of "
                               f"{show(row.least)} to {show(row.most)}; sand within 2.25 to 3 ({SOURCE})",))


def _find_strangers(mix: Mix) -> list[str]:
    if not mix.fire_clay:
        return []
    return ["fire clay is not among ASTM C270's materials and does not stand in for lime: outside the standard; "
            "ask whoever answers for the wall"]


def _check_sand(mix: Mix) -> list[str]:
    binder = mix.cement + mix.lime + mix.lime_putty + mix.masonry_cement
    sand = settle(mix.sand / binder, 2)
    if LEAST_SAND <= mix.sand / binder <= MOST_SAND:
        return []
    return [f"sand {show(mix.sand)} to {show(binder)} of cement and lime is {show(sand)} to 1: ASTM C270 admits 2.25 to 3, "
            f"here {show(settle(LEAST_SAND * binder, 2))} to {show(MOST_SAND * binder)}"]


def _check_masonry_cement(mix: Mix, outside: list[str]) -> MixCheck:
    if mix.lime or mix.lime_putty:
        outside.append("masonry cement with lime is no mix of ASTM C270: the bag has what lime does in it")
    if outside:
        return MixCheck(None, tuple(outside))
    if not mix.cement:
        return MixCheck(None, ("the type is the one printed on the bag of masonry cement: sand is within 2.25 to 3 "
                               "(ASTM C270, from memory)",))
    share = mix.cement / mix.masonry_cement
    kind = {Fraction(1, 2): "S", Fraction(1): "M"}.get(share)
    if kind is None:
        return MixCheck(None, (f"cement {show(settle(share, 2))} to 1 of masonry cement: ASTM C270 lists 1/2 (Type S) and 1 "
                               "(Type M), from memory",))
    return MixCheck(kind, (f"Type {kind} by proportion if the masonry cement is Type N (ASTM C270, from memory)",))


def share_volume(mortar: Fraction, part: Fraction, parts: Fraction) -> Fraction:
    """Volume of one ingredient in a volume of mortar, by the rule of 38: exact, same unit. ``parts`` over nought."""
    return mortar * MATERIALS / MORTAR * part / parts
