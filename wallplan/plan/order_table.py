"""``[order]`` read and checked: what the plan asks of its order, with every default filled in."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from wallplan.lengths import TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM, Measure
from wallplan.plan.found import print_found, print_number
from wallplan.plan.mix_table import read_cap, read_mix
from wallplan.plan.notebook import KeyPath, Notebook
from wallplan.plan.order_wishes import ItemWish, OrderWishes, SteelWishes

if TYPE_CHECKING:
    from wallplan.plan.order_schema import ItemTable, OrderTable, SteelTable

LAP_DIAMETERS = 48
"""Lap of a Grade 60 bar: http://www.masonryconstruction.com/reinforced-concrete/rebar-laps.aspx. The designer's rules."""

US_BARS = range(2, 19)
"""Numbers of bars, to #18 (ASTM A615, from memory; #2 was once made)."""

METRIC_BARS = range(5, 51)
"""Diameters of bars in mm, to 50 (EN 10080, from memory)."""

_ORDER: KeyPath = ("order",)
_STEEL: KeyPath = ("order", "steel")
_MOST = 1_000_000
_US_BAR = re.compile(r"#(\d{1,2})")
_METRIC_BAR = re.compile(r"(\d{1,2}) ?mm")


def read_order(table: OrderTable | None, walls: Sequence[str], notebook: Notebook) -> OrderWishes:
    """The wishes of a plan; those of a plan that has none where ``table`` is None. What is wrong is noted.

    ``walls`` are the names of the plan's walls.
    """
    usual = usual_wishes(notebook.measure)
    if table is None:
        return usual
    _check_ready(table, notebook)
    return OrderWishes(
        spare=_percent("spare", table.spare, usual.spare, notebook),
        kerf=_length("kerf", table.kerf, usual.kerf, notebook),
        mortar_waste=_percent("mortar_waste", table.mortar_waste, usual.mortar_waste, notebook),
        grout_waste=_percent("grout_waste", table.grout_waste, usual.grout_waste, notebook),
        mortar_per_100=_range("mortar_per_100", table.mortar_per_100, notebook),
        mix=usual.mix if table.mix is None else read_mix(table.mix, notebook),
        batch=_number("batch", table.batch, notebook) or _whole_mix(table) or usual.batch,
        shovels=_number("shovels", table.shovels, notebook) or usual.shovels,
        cement_bag=_bag("cement_bag", table.cement_bag, notebook),
        lime_bag=_bag("lime_bag", table.lime_bag, notebook),
        ready_bag=_bag("ready_bag", table.ready_bag, notebook),
        ready_yield=_number("ready_yield", table.ready_yield, notebook),
        cell_volume=_number("cell_volume", table.cell_volume, notebook),
        masons=_count((*_ORDER, "masons"), table.masons, notebook) or usual.masons,
        output=_range("output", table.output, notebook),
        day_height=_length("day_height", table.day_height, usual.day_height, notebook, least=1),
        pour_height=_length("pour_height", table.pour_height, usual.pour_height, notebook, least=1),
        scaffold=_read_scaffold(table, usual.scaffold, notebook),
        steel=usual.steel if table.steel is None else _read_steel(table.steel, usual.steel, notebook),
        cap=None if table.cap is None else read_cap(table.cap, walls, notebook),
        items=tuple(_read_item(item, number, notebook) for number, item in enumerate(table.item or ())),
        currency=table.currency or "",
    )


def usual_wishes(measure: Measure) -> OrderWishes:
    """What counts for a plan without ``[order]``: lengths as the trade of its measure has them."""
    if measure == "feet":
        return OrderWishes()
    metre = 1000 * TICKS_PER_MM
    reach = 1500 * TICKS_PER_MM
    return OrderWishes(day_height=reach, pour_height=reach, scaffold=reach, steel=SteelWishes(
        stock=6 * metre, reinforcement_stock=3 * metre, reinforcement_lap=150 * TICKS_PER_MM))


def _whole_mix(table: OrderTable) -> Fraction | None:
    """The sand of a mix in bags, which is a batch as it stands; None for any other."""
    return _exact(table.mix.sand) if table.mix is not None and table.mix.bags and table.mix.sand else None


def _check_ready(table: OrderTable, notebook: Notebook) -> None:
    if table.ready_bag is not None and table.mix is not None:
        notebook.note((*_ORDER, "ready_bag"), "ready-mixed mortar has its sand in it; leave out ready_bag or [order.mix]")
    if table.ready_yield is not None and table.ready_bag is None:
        notebook.note((*_ORDER, "ready_yield"), "of which bag? Write ready_bag, its weight: ready_bag = 80")


def _exact(value: float) -> Fraction:
    return Fraction(str(value))


def _percent(key: str, value: float | None, usual: Fraction, notebook: Notebook, path: KeyPath = _ORDER) -> Fraction:
    if value is None:
        return usual
    if not 0 <= value <= 100:
        notebook.note((*path, key), f"{print_number(value)} percent; write 0 to 100")
        return usual
    return _exact(value)


def _number(key: str, value: float | None, notebook: Notebook, path: KeyPath = _ORDER) -> Fraction | None:
    if value is None:
        return None
    if not 0 < value <= _MOST:
        notebook.note((*path, key), f"{print_number(value)} is not over nothing and at most {_MOST:,}; write such a number")
        return None
    return _exact(value)


def _bag(key: str, value: float | None, notebook: Notebook) -> Fraction | None:
    """The weight of a bag: a pound or a kilogram at least."""
    weight = _number(key, value, notebook)
    if weight is not None and weight < 1:
        unit = "pounds" if notebook.measure == "feet" else "kilograms"
        notebook.note((*_ORDER, key), f"{print_found(value)} {unit} are no bag; write its weight, 1 or more")
        return None
    return weight


def _count(path: KeyPath, value: int | None, notebook: Notebook) -> int | None:
    if value is not None and not 1 <= value <= 1000:
        notebook.note(path, f"{print_found(value)} is not a number from 1 to 1,000; write one, or leave the key out")
        return None
    return value


def _range(key: str, value: list[float] | None, notebook: Notebook) -> tuple[Fraction, Fraction] | None:
    if value is None:
        return None
    if len(value) != 2 or not 0 < value[0] <= value[1] <= _MOST:
        notebook.note((*_ORDER, key), "not a low and a high figure; write two numbers over nothing, the lower first: "
                      f"{key} = {'[100, 150]' if key == 'output' else '[7.5, 8.5]'}")
        return None
    return _exact(value[0]), _exact(value[1])


def _length(key: str, value: object, usual: int, notebook: Notebook, *, path: KeyPath = _ORDER, least: int = 0) -> int:
    read = notebook.read((*path, key), value, least=least)
    return usual if read is None else read


def _read_scaffold(table: OrderTable, usual: int, notebook: Notebook) -> int:
    reach = _length("scaffold", table.scaffold, usual, notebook)
    if reach < TICKS_PER_FOOT:
        notebook.note((*_ORDER, "scaffold"), f"{notebook.show(reach)} is under 1 ft (305 mm); write how far a mason reaches")
        return usual
    return reach


def _read_steel(table: SteelTable, usual: SteelWishes, notebook: Notebook) -> SteelWishes:
    diameter = _read_bar(table, notebook)

    def length(key: str, usual: int, least: int = 1) -> int:
        return _length(key, getattr(table, key), usual, notebook, path=_STEEL, least=least)

    def count(key: str) -> int | None:
        return _count((*_STEEL, key), getattr(table, key), notebook)

    steel = SteelWishes(
        bar=table.bar or "", lap=length("lap", LAP_DIAMETERS * diameter), stock=length("stock", usual.stock),
        hook=length("hook", 0, 0), bond_beam_bars=count("bond_beam_bars") or 0,
        cell_spacing=notebook.read((*_STEEL, "cell_spacing"), table.cell_spacing, least=1),
        through_joints=bool(table.through_joints),
        jamb_cells=bool(table.jamb_cells), reinforcement_courses=count("reinforcement_courses"),
        reinforcement_stock=length("reinforcement_stock", usual.reinforcement_stock),
        reinforcement_lap=length("reinforcement_lap", usual.reinforcement_lap), gasket=bool(table.gasket),
        tie_courses=count("tie_courses"), tie_spacing=length("tie_spacing", 0),
    )
    _check_steel(steel, notebook)
    return steel


def _read_bar(table: SteelTable, notebook: Notebook) -> int:
    """Diameter in ticks, 0 where no bar is named: US numbers are eighths of an inch."""
    if table.bar is None:
        if table.bond_beam_bars or table.cell_spacing is not None or table.jamb_cells:
            notebook.note((*_STEEL, "bar"), 'missing; write what the bars are, bar = "#4" or "12 mm"')
        return 0
    if (found := _US_BAR.fullmatch(table.bar.strip())) and int(found[1]) in US_BARS:
        return int(found[1]) * TICKS_PER_INCH // 8
    if (found := _METRIC_BAR.fullmatch(table.bar.strip())) and int(found[1]) in METRIC_BARS:
        return int(found[1]) * TICKS_PER_MM
    number = re.findall(r"\d+", table.bar)
    numbered = len(number) == 1 and len(number[0]) < 3 and int(number[0]) in US_BARS and notebook.measure == "feet"
    meant = f'"#{int(number[0])}"' if numbered else '"#4" or "12 mm"'
    notebook.note((*_STEEL, "bar"), f"{print_found(table.bar)} is not a bar; write bar = {meant}")
    return 0


def _check_steel(steel: SteelWishes, notebook: Notebook) -> None:
    for stock, lap in (("stock", "lap"), ("reinforcement_stock", "reinforcement_lap")):
        if getattr(steel, stock) < TICKS_PER_FOOT // 3:
            notebook.note((*_STEEL, stock), f"{notebook.show_size(getattr(steel, stock))} is under 4 in. (102 mm); write "
                          "the length in which it is sold")
        elif 2 * getattr(steel, lap) > getattr(steel, stock):
            notebook.note((*_STEEL, lap), f"over half of {stock}; write a shorter lap")
    if steel.tie_courses and not steel.tie_spacing:
        notebook.note((*_STEEL, "tie_spacing"), "missing; write how far apart ties are, tie_spacing = '24\"'")
    least = TICKS_PER_FOOT // 3
    for key in ("cell_spacing", "tie_spacing"):
        spacing = getattr(steel, key)
        if spacing and spacing < least:
            notebook.note((*_STEEL, key), f"{notebook.show_size(spacing)} is under 4 in. (102 mm); write a wider spacing")


def _read_item(table: ItemTable, number: int, notebook: Notebook) -> ItemWish:
    path: KeyPath = (*_ORDER, "item", number)
    return ItemWish(
        table.name or "",
        None if table.spare is None else _percent("spare", table.spare, Fraction(0), notebook, path),
        None if table.pallet is None else _count((*path, "pallet"), table.pallet, notebook),
        None if table.price is None else _number("price", table.price, notebook, path),
    )
