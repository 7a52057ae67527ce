"""The order as the terminal shows it, and as CSV."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from fractions import Fraction

from wallplan.lengths import Measure, print_length
from wallplan.lists.columns import set_columns, set_rows, wrap_text
from wallplan.lists.order.compose import total_cost
from wallplan.lists.order.figures import scale_of, show
from wallplan.lists.order.line import GROUPS, Line, Order

CAUTION = (
    "An estimate counted from the layout, not a design: what a wall needs of steel, grout, lintels, mortar type and bracing "
    "is for whoever answers for the structure, under local codes. Cement burns: gloves and goggles. Lift heavy units in "
    "pairs. Cut wet or with extraction, and wear a mask: the dust is silica."
)
HEADER = ("group", "item", "measure", "net (in measure)", "spare (in measure)", "order (in measure)", "why")
MOST_DAY_ROWS = 200
"""More rows of the day plan are left to the files."""

DAYS_HEADER = ("day", "wall", "lift", "first course", "last course", "units", "batches", "from ({unit})", "to ({unit})",
               "grout ({volume})", "due")


def report_order(order: Order, measure: Measure, width: int) -> str:
    """The whole report of ``wallplan order``."""
    if not order.lines:
        return wrap_text(f"{order.title}: nothing to order.", width)
    priced = any(line.price is not None for line in order.lines)
    parts = [wrap_text(f"{order.title}: order", width), _table(order.lines, priced, width)]
    if (cost := total_cost(order)) is not None:
        parts.append(wrap_text(f"Priced lines together: {_money(cost)} {order.currency}", width))
    parts += ["How each line is counted:\n" + "\n".join(
        wrap_text(f"{line.item}: {line.why}", width, indent="  ") for line in order.lines)]
    if order.batch:
        parts.append("Mortar by the batch:\n" + set_columns(order.batch, width, indent=2))
    if order.days:
        parts.append("Day by day, at the least output:\n" + _day_table(order, measure, width))
    parts += [wrap_text(note, width) for note in order.notes]
    return "\n\n".join([*parts, wrap_text(CAUTION, width)])


def _table(lines: Sequence[Line], priced: bool, width: int) -> str:
    rows = [["", "net", "spare", "order", *(["price", "cost"] if priced else []), "measure"]]
    for group in GROUPS:
        found = [line for line in lines if line.group == group]
        rows += [[group]] if found else []
        for line in found:
            money = [_money(line.price), _money(line.cost)] if priced else []
            rows.append([f"  {line.item}", show(line.net), show(line.spare), show(line.order), *money, line.measure])
    return set_columns(rows, width, right=frozenset({1, 2, 3, *((4, 5) if priced else ())}))


def _money(amount: Fraction | None) -> str:
    return "" if amount is None else f"{float(amount):.2f}"


def _day_table(order: Order, measure: Measure, width: int) -> str:
    """A line for each day and wall, and under it what is due."""
    rows = [["day", "wall", "lift", "courses", "units", "batches", "height"]]
    for row in order.days[:MOST_DAY_ROWS]:
        first, last = row.courses
        rows.append([str(row.day), row.wall, str(row.lift), str(first) if first == last else f"{first} to {last}",
                     str(row.units), show(row.batches), print_length(row.height, measure)])
    head, *lines = set_rows(rows, width, right=frozenset({0, 2, 4, 5, 6}), indent=2)
    told = [head]
    for line, row in zip(lines, order.days, strict=False):
        told.append(line)
        if row.dues:
            told.append(wrap_text("; ".join(row.due), width, indent="       "))
    if len(order.days) > MOST_DAY_ROWS:
        more = len(order.days) - MOST_DAY_ROWS
        told.append(f"  ... and {more:,} rows more, to day {order.days[-1].day:,}: in the JSON and the CSV file")
    return "\n".join(told)


def write_order_csv(order: Order) -> str:
    """The order as CSV text with CRLF line ends, RFC 4180; the header alone for an order without lines."""
    priced = any(line.price is not None for line in order.lines)
    rows = [[*HEADER, *((f"price of one ({order.currency or 'as given'})", "cost") if priced else ())]]
    for line in order.lines:
        rows.append([line.group, line.item, line.measure, show(line.net), show(line.spare), show(line.order), line.why,
                     *((_money(line.price), _money(line.cost)) if priced else ())])
    text = io.StringIO(newline="")
    csv.writer(text).writerows(rows)
    return text.getvalue()


def write_days_csv(order: Order, measure: Measure) -> str:
    """The day plan as CSV text, likewise: a row for each day and wall."""
    volume = scale_of(measure).volume
    rows = [[title.format(unit="ft-in" if measure == "feet" else "mm", volume=volume) for title in DAYS_HEADER]]
    for row in order.days:
        rows.append([str(row.day), row.wall, str(row.lift), *map(str, row.courses), str(row.units), show(row.batches),
                     print_length(row.bottom, measure), print_length(row.height, measure),
                     "" if row.pour is None else show(row.pour), "; ".join(row.due)])
    text = io.StringIO(newline="")
    csv.writer(text).writerows(rows)
    return text.getvalue()


def report_difference(first: Order, second: Order, width: int) -> str:
    """Two orders side by side, line by line: what each orders and what the second orders more (or less, with a minus)."""
    orders = [{(line.group, line.item, line.measure): line.order for line in order.lines} for order in (first, second)]
    keys = sorted({key: None for order in orders for key in order}, key=lambda key: GROUPS.index(key[0]))
    rows = [["", "A", "B", "B less A", "measure"]]
    for group, item, measure in keys:
        one, two = (order.get((group, item, measure), Fraction(0)) for order in orders)
        rows.append(_compare(item, one, two, measure))
    one, two = (Fraction(order.days[-1].day if order.days else 0) for order in (first, second))
    rows.append(_compare("days, at the least output", one, two, "days"))
    costs = [total_cost(order) for order in (first, second)]
    if any(cost is not None for cost in costs) and first.currency == second.currency:
        one, two = (cost or Fraction(0) for cost in costs)
        rows.append(_compare("priced lines together", one, two, first.currency))
    head = "\n".join(wrap_text(f"{word}: {order.title}", width) for word, order in (("A", first), ("B", second)))
    return "\n\n".join([head, set_columns(rows, width, right=frozenset({1, 2, 3})), wrap_text(CAUTION, width)])


def _compare(item: str, one: Fraction, two: Fraction, measure: str) -> list[str]:
    return [item, show(one), show(two), ("+" if two > one else "") + show(two - one), measure]
