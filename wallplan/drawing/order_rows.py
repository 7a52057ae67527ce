"""The order's lines as rows to tick: item, net, spare, what to order, and under it how it was counted."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from wallplan.drawing.flow import Block
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, SMALLEST, clean, measure, shorten, wrap
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE, UNIT_LINE
from wallplan.drawing.panel import LEADING, Panel
from wallplan.drawing.primitives import Box, Outlines, Primitive, Segment, Strokes, Text
from wallplan.lists.order.figures import show
from wallplan.lists.order.line import GROUPS, Line

MOST_LINES = 4
"""Lines that a row's sums may take; longer ones are left to the list in the CSV file."""

TICK = 5.0
"""Side of the box to tick, mm."""

IN_CSV = "how it is counted: see the CSV file"
"""What stands for sums that are too long."""

_INSET = 1.5
_ITEM = _INSET + TICK + 2.5
_GAP = 4.0
_NEAR = 2.0
_BASE = 6.6


@dataclass(frozen=True)
class Columns:
    """Where each column of figures ends and where the measure starts, mm from the left; the width of the whole table."""

    net: float
    spare: float
    order: float
    measured: float
    price: float
    cost: float
    width: float
    item: float

    @property
    def figures(self) -> tuple[float, ...]:
        """Where figures end: net, spare, order, price, cost."""
        return self.net, self.spare, self.order, self.price, self.cost


HEADS = ("NET", "SPARE", "ORDER", "PRICE", "COST")
_HEIGHTS = (FIGURES, FIGURES, LARGE_FIGURES, FIGURES, FIGURES)


def set_columns(lines: Sequence[Line], width: float) -> Columns:
    """Columns as wide as what stands in them, from the right; the items get what is left."""
    net, spare, order, price, cost = (
        max([measure(head, SMALLEST), *(measure(cell, height) for cell in cells)])
        for head, height, *cells in zip(HEADS, _HEIGHTS, *(_cells(line) for line in lines), strict=True))
    measures = max([measure("MEASURE", SMALLEST), *(measure(line.measure, FIGURES) for line in lines)])
    ends = [width - _INSET]
    if any(line.price is not None for line in lines):
        ends += [ends[-1] - cost - _GAP, ends[-1] - cost - price - 2 * _GAP]
    else:
        ends += [ends[-1], ends[-1]]
    measured = ends[2] - measures
    shown = measured - _NEAR
    return Columns(shown - order - spare - 2 * _GAP, shown - order - _GAP, shown, measured, ends[1], ends[0], width,
                   shown - order - spare - net - 3 * _GAP - _ITEM)


def _cells(line: Line) -> tuple[str, ...]:
    money = ("" if amount is None else f"{float(amount):,.2f}" for amount in (line.price, line.cost))
    return show(line.net), show(line.spare), show(line.order), *money


def set_head(lines: Sequence[Line], columns: Columns) -> Panel:
    """The words over the columns, ruled off."""
    priced = any(line.price is not None for line in lines)
    ink: list[Primitive] = [Text(_ITEM, 3.6, "ITEM", SMALLEST), Text(columns.measured, 3.6, "MEASURE", SMALLEST)]
    ink += [Text(end, 3.6, word, SMALLEST, "end")
            for word, end in zip(HEADS[:5 if priced else 3], columns.figures, strict=False)]
    ink.append(_rule(columns.width, 5.6, HEAVY_LINE))
    return Panel(columns.width, 6.2, tuple(ink))


def set_rows(lines: Sequence[Line], columns: Columns, *, reckoned: bool) -> tuple[Block, ...]:
    """A block for each line, under headings of their groups; () for none. ``reckoned`` letters how each was counted."""
    blocks: list[Block] = []
    for group in GROUPS:
        found = [line for line in lines if line.group == group]
        if found:
            blocks.append(Block(_set_group(group, columns.width), tied=True))
        blocks += [Block(_set_row(line, columns, reckoned=reckoned)) for line in found]
    return tuple(blocks)


def _set_group(group: str, width: float) -> Panel:
    return Panel(width, 6.4, (Text(_INSET, 5.0, group.upper(), FIGURES), _rule(width, 6.0, UNIT_LINE)))


def _set_row(line: Line, columns: Columns, *, reckoned: bool) -> Panel:
    top = _BASE - LARGE_FIGURES
    ink: list[Primitive] = [Outlines((Box(_INSET, top, _INSET + TICK, top + TICK),), UNIT_LINE)]
    for cell, end, height in zip(_cells(line), columns.figures, _HEIGHTS, strict=True):
        if cell:
            ink.append(Text(end, _BASE, cell, height, "end"))
    ink.append(Text(columns.measured, _BASE, line.measure, FIGURES))
    y = _BASE
    for number, part in enumerate(wrap(clean(line.item), FIGURES, columns.item)):
        y = _BASE + number * LEADING * FIGURES
        ink.append(Text(_ITEM, y, part, FIGURES))
    for number, part in enumerate(_tell_sums(line, columns.width) if reckoned else ()):
        y += SMALLEST * LEADING + (0.8 if number == 0 else 0.0)
        ink.append(Text(_ITEM, y, part, SMALLEST))
    y += 1.8
    return Panel(columns.width, y, (*ink, _rule(columns.width, y, THIN_LINE)))


def _tell_sums(line: Line, width: float) -> tuple[str, ...]:
    """How a line was counted, in at most MOST_LINES lines: whole, or up to the end of a sum."""
    room = width - _ITEM - _INSET
    told = wrap(clean(line.why), SMALLEST, room)
    if len(told) <= MOST_LINES:
        return told
    clauses = clean(line.why).split("; ")
    for count in range(len(clauses) - 1, 0, -1):
        told = wrap(f"{'; '.join(clauses[:count])}; {IN_CSV}", SMALLEST, room)
        if len(told) <= MOST_LINES:
            return told
    return (shorten(IN_CSV.capitalize(), SMALLEST, room),)


def _rule(width: float, y: float, heavy: float) -> Strokes:
    return Strokes((Segment(0.0, y, width, y),), heavy)


def tell_cost(total: Fraction | None, currency: str) -> str:
    """All prices together in words; "" where there are none."""
    return "" if total is None else f"Priced lines together: {float(total):,.2f} {clean(currency)}".rstrip() + "."
