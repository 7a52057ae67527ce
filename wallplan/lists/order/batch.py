"""What the mason mixes: ingredients to order, and the batch in shovels, with how far it goes and how long it lasts."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from wallplan.lists.order.figures import LITRES_PER_CUBIC_FOOT, Scale, scale_of, settle, settle_some, settle_up, show
from wallplan.lists.order.ingredients import (
    INGREDIENTS,
    Ingredient,
    bag_of,
    density_of,
    make_ready,
    resolve_mix,
    tell_bags,
)
from wallplan.lists.order.line import Line
from wallplan.lists.order.mix import MATERIALS, MORTAR, share_volume
from wallplan.lists.order.mortar import Mortar
from wallplan.plan.job import Job
from wallplan.plan.order_wishes import OrderWishes

MOST_WALLS = 12
"""More walls are not told one by one."""

WATER_PER_BINDER = Fraction(2, 3)
"""Water as a guide, to the volume of cement and lime: common practice, no source. The trowel decides."""


LEAST_BAGS = Fraction(5, 2)
"""Bags of masonry cement to 100 block: two suppliers' rule sheets; others say 3, and 35 block to a bag."""


def order_ingredients(mortar: Mortar, job: Job) -> Iterator[Line]:
    """A line for each ingredient of the mix: bags, or sand by volume, for the least mortar net and for the most in order.

    For ready-mixed mortar, its bags alone.
    """
    scale = scale_of(job.measure)
    if job.order.ready_bag is not None:
        yield _order_ready(mortar, job)
        return
    mix = resolve_mix(job.order, scale)
    bags = tell_bags(job.order, scale)
    for key, ingredient in INGREDIENTS.items():
        part: Fraction = getattr(mix, key)
        if part:
            volumes = [settle(share_volume(volume, part, mix.parts), 2) for volume in (mortar.low, mortar.high)]
            told = [f"{show(volume)} x {MATERIALS} / {MORTAR} x {show(part)} / {show(mix.parts)} = {show(share)} "
                    f"{scale.volume}" for volume, share in zip((mortar.low, mortar.high), volumes, strict=True)]
            told[0] = f"{bags}; mortar at least: {told[0]}" if bags else told[0]
            yield _order_ingredient(key, ingredient, volumes, told, mortar, job)


def _order_ready(mortar: Mortar, job: Job) -> Line:
    scale, weight = scale_of(job.measure), job.order.ready_bag or Fraction(0)
    made, source = make_ready(job.order, scale)
    net, most = (settle(volume / made, 2) for volume in (mortar.low, mortar.high))
    order = settle_up(most)
    name = "ready-mixed mortar"
    why = (f"a bag makes {show(made)} {scale.volume} ({source}); {show(mortar.low)} / {show(made)} = {show(net)}; "
           f"{show(mortar.high)} / {show(made)} = {show(most)}, up to {show(order)}; {_rest(order, net)}")
    return Line("mortar", name, f"bag of {show(weight)} {scale.weight}", net, order - net, why, job.order.of(name).price)


def _order_ingredient(key: str, ingredient: Ingredient, volumes: list[Fraction], told: list[str], mortar: Mortar,
                      job: Job) -> Line:
    scale = scale_of(job.measure)
    head = f"rule of 38, mortar at least and at most: {'; '.join(told)}"
    weight = bag_of(key, job.order, scale)
    wish = job.order.of(ingredient.name)
    if not weight:
        order = settle_up(volumes[1])
        heavy = density_of(ingredient, scale)
        weighed = f"; by weight {show(order)} x {show(heavy)} = {show(order * heavy)} {scale.weight}" if heavy else ""
        dry = " of dry sand; damp, the scale shows up to a quarter more" if key == "sand" else ""
        return Line("mortar", ingredient.name, scale.volume, volumes[0], order - volumes[0],
                    f"{head}, up to {show(order)}; {_rest(order, volumes[0])}{weighed}{dry}", wish.price)
    bag = settle_some(weight / density_of(ingredient, scale), 2)
    bags = [settle(volume / bag, 2) for volume in volumes]
    rule = _tell_published(key, mortar, bags[0], job)
    net, order = (bags[0] if rule is None else rule[0]), settle_up(bags[1])
    why = (f"{head}; a bag holds {show(weight)} / {show(density_of(ingredient, scale))} = {show(bag)} {scale.volume}; "
           f"{show(volumes[0])} / {show(bag)} = {show(bags[0])}; {show(volumes[1])} / {show(bag)} = {show(bags[1])}, "
           f"up to {show(order)}{'' if rule is None else rule[1]}; {_rest(order, net)}")
    measure = f"bag of {show(weight)} {scale.weight}"
    return Line("mortar", ingredient.name, measure, net, order - net, why, wish.price)


def _tell_published(key: str, mortar: Mortar, bags: Fraction, job: Job) -> tuple[Fraction, str] | None:
    """Bags of masonry cement by suppliers' rules where these ask for fewer, and the sum in words; None elsewhere."""
    if key != "masonry_cement" or job.order.mix.cement or mortar.blocks is None or job.measure != "feet":
        return None
    fewest = settle(mortar.blocks * LEAST_BAGS / 100, 2)
    if fewest >= bags or job.order.mortar_per_100 is not None:
        return None
    return fewest, (f"; low, two suppliers' rules of 2 1/2 bags to 100 block, 40 to a bag: {show(mortar.blocks)} x "
                    f"{show(LEAST_BAGS)} / 100 = {show(fewest)}")


def _rest(order: Fraction, net: Fraction) -> str:
    return f"{show(order)} - {show(net)} = {show(order - net)}"


def measure_batch(wishes: OrderWishes, scale: Scale) -> Fraction:
    """Mortar of one batch, in the scale's volume, to the hundredth; of ready-mixed mortar a bag is a batch."""
    if wishes.ready_bag is not None:
        return make_ready(wishes, scale)[0]
    mix = resolve_mix(wishes, scale)
    volume = wishes.batch / mix.sand * mix.parts / wishes.shovels * MORTAR / MATERIALS
    return settle_some(volume if scale.volume == "cu ft" else volume * LITRES_PER_CUBIC_FOOT, 2)


def describe_batch(mortar: Mortar, courses: int, job: Job,
                   walls: Mapping[str, int] | None = None) -> tuple[tuple[str, str], ...]:
    """The batch as rows of a table: what goes in, what it makes, how many for the job and a course, how long it lasts.

    ``walls`` is how many pieces are laid in each wall; of more than one, each is told by its share of them.
    """
    wishes, scale = job.order, scale_of(job.measure)
    made = measure_batch(wishes, scale)
    low, high = (settle(volume / made, 1) for volume in (mortar.low, mortar.high))
    batches = (f"{show(low)} to {show(high)} for the job, {show(settle(low / courses, 2))} to "
               f"{show(settle(high / courses, 2))} a course ({courses} courses)")
    by_wall = [] if walls is None or len(walls) < 2 else [("by wall", _tell_walls(walls, low, high))]
    return (
        *(_describe_ready(wishes, scale) if wishes.ready_bag is not None else _describe_mix(wishes, scale)),
        ("batches", batches),
        *by_wall,
        ("mixing", "3 to 5 minutes by machine; use within 2 1/2 hours of mixing, adding water as it stiffens before "
                   "(Masonry Magazine March 1978); other texts say 2 hours"),
    )


def _tell_walls(walls: Mapping[str, int], low: Fraction, high: Fraction) -> str:
    total = sum(walls.values()) or 1
    told = [f"{name} {show(settle(low * pieces / total, 1))} to {show(settle(high * pieces / total, 1))}"
            for name, pieces in list(walls.items())[:MOST_WALLS]]
    more = f"; {len(walls) - MOST_WALLS} more" if len(walls) > MOST_WALLS else ""
    return f"{'; '.join(told)}{more}"


def _describe_ready(wishes: OrderWishes, scale: Scale) -> Iterator[tuple[str, str]]:
    made, source = make_ready(wishes, scale)
    yield "one batch", f"a bag of {show(wishes.ready_bag or 0)} {scale.weight}, sand and all"
    yield "volume", f"makes about {show(made)} {scale.volume} of mortar ({source})"
    yield "water", "as it says on the bag, to the trowel"


def _describe_mix(wishes: OrderWishes, scale: Scale) -> Iterator[tuple[str, str]]:
    mix, made = resolve_mix(wishes, scale), measure_batch(wishes, scale)
    shovels = {key: settle(wishes.batch / mix.sand * getattr(mix, key), 1) for key in INGREDIENTS if getattr(mix, key)}
    together = sum(shovels.values(), Fraction(0))
    raw = settle(together / wishes.shovels, 2)
    water = (together - shovels["sand"]) / wishes.shovels * WATER_PER_BINDER
    bags = {key: settle(wishes.batch / mix.sand * getattr(wishes.mix, key), 2) for key in shovels if wishes.mix.bags
            and key in ("cement", "lime", "masonry_cement")}
    yield "one batch", ", ".join(
        (f"{show(bags[key])} bag{'' if bags[key] <= 1 else 's'}" if key in bags else f"{show(n)} shovels")
        + f" {INGREDIENTS[key].name}" for key, n in shovels.items())
    yield "volume", (f"{show(together)} shovels / {show(wishes.shovels)} to the cu ft = {show(raw)} cu ft of "
                     f"materials; x {MORTAR} / {MATERIALS} makes about {show(made)} {scale.volume} of mortar")
    yield "water", f"as a guide {_print_water(water, scale)}, to the trowel (common practice, no source)"


def _print_water(cubic_feet: Fraction, scale: Scale) -> str:
    if scale.volume == "cu ft":
        return f"{show(settle(cubic_feet * Fraction('7.48052'), 1))} US gallons"
    return f"{show(settle(cubic_feet * LITRES_PER_CUBIC_FOOT, 0))} litres"
