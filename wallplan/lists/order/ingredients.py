"""What goes into a mortar: weights, bags, and a mix in bags turned into volumes."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import NamedTuple

from wallplan.lists.order.figures import LITRES_PER_CUBIC_FOOT, Scale, settle, settle_some, show
from wallplan.plan.order_wishes import Mix, OrderWishes

POUND_PER_CUBIC_FOOT = Fraction("0.45359237") / LITRES_PER_CUBIC_FOOT
"""In kilograms to the litre (international yard and pound agreement, 1959)."""


class Ingredient(NamedTuple):
    """Pounds to the cubic foot, and a bag's weight in pounds and in kilograms (nought where it comes loose)."""

    name: str
    density: int
    pounds: int
    kilograms: int


INGREDIENTS = {
    "cement": Ingredient("portland cement", 94, 94, 25),
    "lime": Ingredient("hydrated lime", 40, 50, 25),
    "masonry_cement": Ingredient("masonry cement", 70, 70, 25),
    "lime_putty": Ingredient("lime putty", 0, 0, 0),
    "fire_clay": Ingredient("fire clay", 0, 0, 0),
    "sand": Ingredient("sand, damp and loose", 80, 0, 0),
}
"""Cement 94, lime 40 and dry sand in damp 80 lb to the cu ft; a 94 lb and a 50 lb bag: Masonry Magazine March 1978,
https://masonrymagazine.com/?pageID=21184. Masonry cement 70 lb a bag, taken as a cubic foot: a maker. Bags of 25 kg: common
practice, no source. Lime putty and fire clay: by volume alone, no source for
their weight."""

READY_DENSITY = 120
"""Pounds of ready-mixed dry mortar to a cubic foot of wet mortar, from memory; the bag says."""


def bag_of(key: str, wishes: OrderWishes, scale: Scale) -> Fraction:
    """Weight of a bag in the scale's measure; nought where it comes loose."""
    own = {"cement": wishes.cement_bag, "masonry_cement": wishes.cement_bag, "lime": wishes.lime_bag}.get(key)
    usual = INGREDIENTS[key].pounds if scale.weight == "lb" else INGREDIENTS[key].kilograms
    if key == "masonry_cement" and wishes.mix.cement:
        return Fraction(usual)  # cement_bag speaks of the portland cement where a mix has both
    return Fraction(usual) if own is None else own


def density_of(ingredient: Ingredient, scale: Scale) -> Fraction:
    """Weight to the volume in the plan's measure."""
    exact = Fraction(ingredient.density)
    return exact if scale.weight == "lb" else settle(exact * POUND_PER_CUBIC_FOOT, 3)


def resolve_mix(wishes: OrderWishes, scale: Scale) -> Mix:
    """The mix in parts by volume: bags turned into shovels, to the hundredth, and nothing else changed."""
    mix = wishes.mix
    if not mix.bags:
        return mix
    parts = {key: getattr(mix, key) * shovels_in_bag(key, wishes, scale) for key in ("cement", "lime", "masonry_cement")}
    return replace(mix, bags=False, **{key: settle_some(part, 2) for key, part in parts.items()})


def shovels_in_bag(key: str, wishes: OrderWishes, scale: Scale) -> Fraction:
    """Shovels that a bag fills."""
    volume = bag_of(key, wishes, scale) / density_of(INGREDIENTS[key], scale)
    return (volume if scale.volume == "cu ft" else volume / LITRES_PER_CUBIC_FOOT) * wishes.shovels


def tell_bags(wishes: OrderWishes, scale: Scale) -> str:
    """How a mix in bags becomes one in shovels, for a pencil; "" for any other mix."""
    mix = resolve_mix(wishes, scale)
    told = list[str]()
    for key in ("cement", "lime", "masonry_cement"):
        bags: Fraction = getattr(wishes.mix, key)
        if wishes.mix.bags and bags:
            told.append(f"{show(bags)} {'bag' if bags <= 1 else 'bags'} of {INGREDIENTS[key].name}: "
                        f"{show(getattr(mix, key))} shovels")
    return "; ".join(told)


def make_ready(wishes: OrderWishes, scale: Scale) -> tuple[Fraction, str]:
    """Mortar of a bag of ready-mixed dry mortar, in the scale's volume, and where the figure is from. Needs ready_bag."""
    if wishes.ready_yield is not None:
        return wishes.ready_yield, "the plan's own figure"
    pounds = Fraction(READY_DENSITY)
    dense = pounds if scale.weight == "lb" else settle(pounds * POUND_PER_CUBIC_FOOT, 1)
    made = settle_some((wishes.ready_bag or Fraction(0)) / dense, 2)
    return made, f"{show(dense)} {scale.weight} to the {'cu ft' if scale.volume == 'cu ft' else 'litre'}, from memory"
