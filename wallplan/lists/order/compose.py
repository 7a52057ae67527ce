"""Layout -> the whole order: units, mortar, grout, steel, days, and what must be said with them."""

from __future__ import annotations

from fractions import Fraction

from wallplan.layout.model import Layout
from wallplan.lists.order.batch import describe_batch, measure_batch, order_ingredients
from wallplan.lists.order.built_in import order_built_in
from wallplan.lists.order.caps import order_caps
from wallplan.lists.order.counted import counted_pieces, pieces_in
from wallplan.lists.order.days import find_output, plan_days
from wallplan.lists.order.figures import scale_of
from wallplan.lists.order.grout import order_grout
from wallplan.lists.order.line import GROUPS, DayRow, Order
from wallplan.lists.order.mortar import Mortar, order_mortar
from wallplan.lists.order.notes import tell_days, tell_mix, tell_nesting, tell_strangers, tell_weight
from wallplan.lists.order.sawing import nest_cuts
from wallplan.lists.order.steel import order_bars
from wallplan.lists.order.units import order_units


def list_order(layout: Layout) -> Order:
    """The order of a layout; without lines for a job without pieces."""
    job = layout.job
    sawings = nest_cuts(layout)
    lines = list(order_units(layout, sawings))
    mixed = order_mortar(layout)
    batch: tuple[tuple[str, str], ...] = ()
    days: tuple[DayRow, ...] = ()
    fastest = 0
    if mixed is not None:
        line, mortar = mixed
        lines += [line, *order_ingredients(mortar, job)]
        pieces = {wall.wall.name: sum(len(pieces_in(course, wall)) for course in wall.courses) for wall in layout.walls}
        batch = describe_batch(mortar, sum(len(wall.courses) for wall in layout.walls), job, pieces)
        days, fastest = _fall_into_days(layout, mortar)
    lines += [*order_grout(layout), *order_bars(layout), *order_built_in(layout), *order_caps(layout)]
    ordered = tuple(sorted(lines, key=lambda line: GROUPS.index(line.group)))
    notes = (*tell_nesting(sawings), *tell_mix(layout), *tell_weight(layout), *tell_days(layout, days, fastest),
             *tell_strangers(layout, ordered))
    return Order(job.title, ordered, sawings, batch, days, notes, job.order.currency, fastest)


def _fall_into_days(layout: Layout, mortar: Mortar) -> tuple[tuple[DayRow, ...], int]:
    """The days at the low output, and how many there would be at the high one."""
    pieces = sum(1 for _ in counted_pieces(layout))
    each = mortar.high / pieces / measure_batch(layout.job.order, scale_of(layout.job.measure))
    low, high = find_output(layout.job)
    fast = plan_days(layout, high, each)
    return plan_days(layout, low, each), fast[-1].day if fast else 0


def total_cost(order: Order) -> Fraction | None:
    """All prices together; None where no line has one."""
    costs = [line.cost for line in order.lines if line.cost is not None]
    return sum(costs, Fraction(0)) if costs else None
