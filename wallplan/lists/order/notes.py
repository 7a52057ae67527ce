"""What must be said with an order: how sure the nesting is, the mix, the days, and what keeps people clear of harm."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Sequence
from fractions import Fraction

from wallplan.layout.model import Layout
from wallplan.lengths import TICKS_PER_MM, print_length, print_size
from wallplan.lists.order.counted import counted_pieces
from wallplan.lists.order.days import MOST_DAYS, find_output
from wallplan.lists.order.dues import BRACED, ZONE_BEYOND_HEIGHT
from wallplan.lists.order.figures import scale_of, settle, show
from wallplan.lists.order.grout import tell_unknown
from wallplan.lists.order.ingredients import resolve_mix, tell_bags
from wallplan.lists.order.line import DayRow, Line, Sawing
from wallplan.lists.order.mix import check_mix
from wallplan.plan.order_table import usual_wishes

RULES_WASTE = 100
"""Percent on top of full joints that comes to what the rules of _RULES ask for brick."""

LEAST_GENERAL = 6 * TICKS_PER_MM
"""Thinnest joint of general-purpose mortar, EN 1996-1-1 8.1.5, from memory; of thin-layer mortar 0.5 to 3 mm."""

_RULES = {
    "feet": "Rule sheets of suppliers ask for 7 to 8.5 bags of masonry cement and 1,500 to 2,000 lb of sand to 1,000 brick, "
            "cores, furrows and droppings in it",
    "metric": "The British trade allows 500 to 600 litres to 1,000 brick, frogs and droppings in it (from memory)",
}
"""What the trade buys for brick; full joints alone are 8.1 cu ft to 1,000 modular and 297 litres to 1,000 UK brick."""


def tell_nesting(sawings: Sequence[Sawing]) -> Iterator[str]:
    """How many units the cuts come from, and whether fewer could do; nothing where nothing is sawn."""
    if not sawings:
        return
    units, least = (sum(counts) for counts in zip(
        *((sawing.nesting.units, sawing.nesting.at_least) for sawing in sawings), strict=True))
    things = "strips and units" if any(sawing.rip is not None for sawing in sawings) else "units"
    proof = "and no fewer can do" if units == least else f"and at least {least} are needed: fewer are not ruled out"
    yield f"All cuts come from {units} {things}, {proof}."


def tell_weight(layout: Layout) -> Iterator[str]:
    """What a unit and all that is laid of it weigh, light and heavy; nothing where no source has the unit's weight."""
    unit = layout.job.masonry.unit
    if unit.mass_kg is None:
        return
    pieces = [piece for piece in counted_pieces(layout) if piece.shape != "precast"]
    laid = Fraction(sum(piece.length * piece.height for piece in pieces), unit.length * unit.height)
    scale = scale_of(layout.job.measure)
    kilogram = Fraction(1) if scale.weight == "kg" else 1 / Fraction("0.45359237")
    each = [settle(Fraction(str(mass)) * kilogram, 1) for mass in unit.mass_kg]
    low, high = (int(settle(mass * laid / 10, 0)) * 10 for mass in each)
    yield (f"A full unit weighs {show(each[0])} to {show(each[1])} {scale.weight}, of light or heavy concrete, and all that "
           f"is laid about {low:,} to {high:,} {scale.weight} (NCMA laboratory, 1989): ask the plant. Mind platforms and "
           "backs.")


def tell_mix(layout: Layout) -> Iterator[str]:
    """The mix against ASTM C270, and grout that could not be counted."""
    wishes = layout.job.order
    if wishes.ready_bag is not None:
        yield "Mortar: ready-mixed; its type is the one printed on the bag (ASTM C1714 for such mortar, from memory)."
    else:
        bags = tell_bags(wishes, scale_of(layout.job.measure))
        checked = check_mix(resolve_mix(wishes, scale_of(layout.job.measure)))
        yield f"Mortar: {f'{bags}; ' if bags else ''}{'; '.join(checked.told)}."
        yield from _tell_thin_joints(layout)
    if layout.job.masonry.unit.kind == "brick" and layout.job.masonry.unit.solid and wishes.mortar_waste < RULES_WASTE:
        yield (f"Mortar is counted as full joints and {show(wishes.mortar_waste)} % of waste. {_RULES[layout.job.measure]}: "
               f"about twice as much. To have as much, write [order] mortar_waste = {RULES_WASTE}.")
    if (unknown := tell_unknown(layout)) is not None:
        yield unknown


def _tell_thin_joints(layout: Layout) -> Iterator[str]:
    if layout.job.masonry.joint < LEAST_GENERAL:
        joint = print_size(layout.job.masonry.joint, layout.job.measure)
        yield (f"Joints of {joint} are too thin for mortar of sand and shovels, as it is counted here (6 mm at least, "
               "EN 1996-1-1, from memory): take thin-joint mortar from the bag, as the maker of the units says, and write "
               "its [order] ready_bag and ready_yield.")


def tell_days(layout: Layout, days: Sequence[DayRow], fastest: int) -> Iterator[str]:
    """Outputs and their source, the height of a day, the zone to keep clear, bracing, lifts; nothing without days."""
    job = layout.job
    if not days:
        return
    low, high = find_output(job)
    source = "the plan's own figures" if job.order.output is not None else (
        "block from memory" if job.masonry.unit.kind == "block" else "face brick in an old handbook")
    if job.masonry.bond == "stack" and job.order.output is None:
        source += ", 8 % less in stack bond (NCMA TEK 4-1A)"
    usual = usual_wishes(job.measure).day_height == job.order.day_height
    rise = "the plan's own figure" if not usual else (
        "LABC, a British warranty; another text says 1 m" if job.measure == "metric" else "common practice, no source")
    yield (f"Days: {show(low)} to {show(high)} units a day ({source}): {days[-1].day} at the least output, {fastest} at the "
           f"most. A wall rises at most {_print(job.order.day_height, layout)} a day ({rise}), less in cold or "
           "rain.")
    if days[-1].day >= MOST_DAYS:
        yield f"The days end at day {MOST_DAYS:,}: at this output not all walls stand by then."
    tallest = max(wall.wall.height for wall in layout.walls)
    metric = job.measure == "metric"
    zone, limit, pour_limit, wind = (
        ("4 ft, 1219 mm", "2.4 m", "1.5 m", "32 km/h") if metric else ("4 ft", "8 ft", "5 ft", "20 mph"))
    braced = f"; over {limit}, so braced until its supports are in" if tallest > BRACED else ""
    yield (f"Keep clear of a fresh wall: {_print(tallest + ZONE_BEYOND_HEIGHT, layout)} on its unscaffolded side, along all "
           f"of it (its height and {zone}, OSHA 29 CFR 1926.706){braced}. Wind fells fresh walls: stop and keep clear, "
           f"on the first day in any over {wind} (NCMA TEK 3-4B, 2005).")
    if any(due.kind == "grout" for row in days for due in row.dues):
        pour = _print(job.order.pour_height, layout)
        yield (f"Grout is poured {pour} high at once at most, on mortar that is hard (common practice, "
               f"no source); a pour over {pour_limit} needs cleanouts "
               "(http://www.masonryconstruction.com/how-to/how-to-place-grout_o).")


def _print(ticks: int, layout: Layout) -> str:
    return print_length(ticks, layout.job.measure) + (" mm" if layout.job.measure == "metric" else "")


def tell_strangers(layout: Layout, lines: Sequence[Line]) -> Iterator[str]:
    """Items that the plan speaks of and the order has not."""
    known = {line.item for line in lines}
    for wish in layout.job.order.items:
        if wish.name not in known:
            near = difflib.get_close_matches(wish.name, sorted(known), 1)
            hint = f' Nearest: "{near[0]}".' if near else ""
            yield f'The plan has an [[order.item]] "{wish.name}", but the order has no such line.{hint}'
