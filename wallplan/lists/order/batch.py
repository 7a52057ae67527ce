"""What the mason mixes: ingredients to order, and the batch in shovels, with how far it goes and how long it lasts."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from wallplan.lists.order.figures import LITRES_PER_CUBIC_FOOT, Scale, scale_of, settle, settle_up, show
from wallplan.lists.order.line import Line
from wallplan.lists.order.mix import MATERIALS, MORTAR, share_volume
from wallplan.lists.order.mortar import Mortar
from wallplan.plan.job import Job
from wallplan.plan.order_wishes import OrderWishes

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
    "fire_clay": Ingredient("fire clay", 0, 0, 0),
    "sand": Ingredient("sand, damp and loose", 80, 0, 0),
}
"""Cement 94, lime 40 and dry sand in damp 80 lb to the cu ft; a 94 lb and a 50 lb bag: Masonry Magazine March 1978,
https://masonrymagazine.com/?pageID=21184. Masonry cement 70 lb a bag, taken as a cubic foot: a maker. Bags of 25 kg: common
practice, no source. Fire clay: by volume alone, no source for its weight."""

WATER_PER_BINDER = Fraction(2, 3)
"""Water as a guide, to the volume of cement and lime: common practice, no source. The trowel decides."""


def order_ingredients(mortar: Mortar, job: Job) -> Iterator[Line]:
    """A line for each ingredient of the mix: bags, or sand by volume, for the least mortar net and for the most in order."""
    mix, scale = job.order.mix, scale_of(job.measure)
    for key, ingredient in INGREDIENTS.items():
        part: Fraction = getattr(mix, key)
        if part:
            volumes = [settle(share_volume(volume, part, mix.parts), 2) for volume in (mortar.low, mortar.high)]
            told = [f"{show(volume)} x {MATERIALS} / {MORTAR} x {show(part)} / {show(mix.parts)} = {show(share)} "
                    f"{scale.volume}" for volume, share in zip((mortar.low, mortar.high), volumes, strict=True)]
            yield _order_ingredient(key, ingredient, volumes, told, job)


def _order_ingredient(key: str, ingredient: Ingredient, volumes: list[Fraction], told: list[str], job: Job) -> Line:
    scale = scale_of(job.measure)
    head = f"rule of 38, mortar at least and at most: {'; '.join(told)}"
    weight = _bag_of(key, job.order, scale)
    wish = job.order.of(ingredient.name)
    if not weight:
        order = settle_up(volumes[1])
        heavy = _density(ingredient, scale)
        weighed = f"; by weight {show(order)} x {show(heavy)} = {show(order * heavy)} {scale.weight}" if heavy else ""
        dry = " of dry sand; damp, the scale shows up to a quarter more" if key == "sand" else ""
        return Line("mortar", ingredient.name, scale.volume, volumes[0], order - volumes[0],
                    f"{head}, up to {show(order)}; {_rest(order, volumes[0])}{weighed}{dry}", wish.price)
    bag = settle(weight / _density(ingredient, scale), 2)
    bags = [settle(volume / bag, 2) for volume in volumes]
    order = settle_up(bags[1])
    why = (f"{head}; a bag holds {show(weight)} / {show(_density(ingredient, scale))} = {show(bag)} {scale.volume}; "
           f"{show(volumes[0])} / {show(bag)} = {show(bags[0])}; {show(volumes[1])} / {show(bag)} = {show(bags[1])}, "
           f"up to {show(order)}; {_rest(order, bags[0])}")
    measure = f"bag of {show(weight)} {scale.weight}"
    return Line("mortar", ingredient.name, measure, bags[0], order - bags[0], why, wish.price)


def _rest(order: Fraction, net: Fraction) -> str:
    return f"{show(order)} - {show(net)} = {show(order - net)}"


def _bag_of(key: str, wishes: OrderWishes, scale: Scale) -> Fraction:
    own = {"cement": wishes.cement_bag, "masonry_cement": wishes.cement_bag, "lime": wishes.lime_bag}.get(key)
    usual = INGREDIENTS[key].pounds if scale.weight == "lb" else INGREDIENTS[key].kilograms
    if key == "masonry_cement" and wishes.mix.cement:
        return Fraction(usual)  # cement_bag speaks of the portland cement where a mix has both
    return Fraction(usual) if own is None else own


def _density(ingredient: Ingredient, scale: Scale) -> Fraction:
    """Weight to the volume in the plan's measure."""
    exact = Fraction(ingredient.density)
    return exact if scale.weight == "lb" else settle(exact * POUND_PER_CUBIC_FOOT, 3)


def measure_batch(wishes: OrderWishes, scale: Scale) -> Fraction:
    """Mortar of one batch, in the scale's volume, to the hundredth."""
    shovels = wishes.batch / wishes.mix.sand * wishes.mix.parts
    volume = shovels / wishes.shovels * MORTAR / MATERIALS
    return settle(volume if scale.volume == "cu ft" else volume * LITRES_PER_CUBIC_FOOT, 2)


def describe_batch(mortar: Mortar, courses: int, job: Job) -> tuple[tuple[str, str], ...]:
    """The batch as rows of a table: what goes in, what it makes, how many for the job and a course, how long it lasts."""
    wishes, scale = job.order, scale_of(job.measure)
    mix, made = wishes.mix, measure_batch(wishes, scale)
    shovels = {key: settle(wishes.batch / mix.sand * getattr(mix, key), 1) for key in INGREDIENTS if getattr(mix, key)}
    low, high = (settle(volume / made, 1) for volume in (mortar.low, mortar.high))
    together = sum(shovels.values(), Fraction(0))
    raw = settle(together / wishes.shovels, 2)
    water = (together - shovels["sand"]) / wishes.shovels * WATER_PER_BINDER
    return (
        ("one batch", ", ".join(f"{show(n)} shovels {INGREDIENTS[key].name}" for key, n in shovels.items())),
        ("volume", f"{show(together)} shovels / {show(wishes.shovels)} to the cu ft = {show(raw)} cu ft of "
                   f"materials; x {MORTAR} / {MATERIALS} makes about {show(made)} {scale.volume} of mortar"),
        ("water", f"as a guide {_print_water(water, scale)}, to the trowel (common practice, no source)"),
        ("batches", f"{show(low)} to {show(high)} for the job, {show(settle(low / courses, 2))} to "
                    f"{show(settle(high / courses, 2))} a course ({courses} courses)"),
        ("mixing", "3 to 5 minutes by machine; use within 2 1/2 hours of mixing, adding water as it stiffens before "
                   "(Masonry Magazine March 1978); other texts say 2 hours"),
    )


def _print_water(cubic_feet: Fraction, scale: Scale) -> str:
    if scale.volume == "cu ft":
        return f"{show(settle(cubic_feet * Fraction('7.48052'), 1))} US gallons"
    return f"{show(settle(cubic_feet * LITRES_PER_CUBIC_FOOT, 0))} litres"
