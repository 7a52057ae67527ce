"""Random tables of a plan besides its walls, with every key that they may have: masonry, own units, order, advice, teaching."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from tests.strategies import Table, advice_tables, lengths, write_plan
from wallplan.catalogue.load import units
from wallplan.catalogue.unit import Unit
from wallplan.findings import PlanError
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure
from wallplan.plan.job import ONE_BRICK, Masonry
from wallplan.plan.load import read_plan

MM, INCH = TICKS_PER_MM, TICKS_PER_INCH
NAMES = ("Landing", "Water", "Road", "Slip")


def some(draw: st.DrawFn, table: Table, most: int | None = None) -> Table:
    """Some of a table's keys, often few."""
    keys = draw(st.lists(st.sampled_from(sorted(table)), unique=True, max_size=most))
    return {key: table[key] for key in keys}


def exactly(ticks: float) -> str:
    """Ticks as a plan may write them, to the tick."""
    return f"{ticks / MM:.4f} mm"


def text_of(draw: st.DrawFn, measure: Measure, least: float, most: float) -> Any:
    """A length between two numbers of millimetres, as the measure may write it."""
    return draw(lengths(measure, round(least * MM), round(most * MM))).text


def _is_square(unit: Unit) -> bool:
    """Whether two bricks with a joint are as wide as one is long."""
    return unit.solid and abs(2 * unit.thickness + unit.joint - unit.length) <= 2 * MM


@st.composite
def heads(draw: st.DrawFn) -> tuple[Table, Masonry | None]:
    """A plan's tables above its walls, and the masonry that they make; None where they are refused."""
    measure: Measure = draw(st.sampled_from(("feet", "metric")))
    head: Table = {"title": draw(st.sampled_from(["Ferry landing", "Ferry landing, second stage: waiting room, store and tug office"])),
                   "measure": measure, "sizes": draw(st.sampled_from(["actual", "actual", "nominal"]))}
    date = draw(st.sampled_from([None, None, "spring", "2031-04-02"]))
    if date is not None:
        head["date"] = date
    if draw(st.integers(0, 3)) == 0:
        head["own_unit"] = draw(own_unit_tables(measure))
        key, unit = head["own_unit"]["key"], None
    else:
        unit = draw(st.sampled_from(sorted(units().values(), key=lambda one: one.key)))
        key = unit.key
    headers = unit is not None and _is_square(unit) and draw(st.booleans())
    bond = draw(st.sampled_from(sorted(ONE_BRICK) if headers else ["half", "half", "half", "third", "quarter", "stack"]))
    head["masonry"] = {"unit": key, "bond": bond, **some(draw, _masonry_choices(draw, measure, unit, headers), 3)}
    if bond in ("english garden wall", "common") and draw(st.booleans()):
        head["masonry"]["stretcher_courses"] = draw(st.sampled_from([3, 5, 7]))
    if draw(st.integers(0, 3)) == 0:
        head["teaching"] = some(draw, {key: text_of(draw, measure, 1, 12) for key in ("dimension", "plumb", "level", "joint", "bond")})
    return head, _masonry_of(head)


def _masonry_choices(draw: st.DrawFn, measure: Measure, unit: Unit | None, headers: bool) -> Table:
    """Keys of masonry that may be given; of a plan's own unit only those that hang on no size of it."""
    choices: Table = {"leads": draw(st.integers(1, 12)), "keep_bond": draw(st.booleans())}
    if unit is None or headers:
        return choices
    module = unit.module / MM
    choices |= {
        "joint": exactly(draw(st.integers(unit.tightest_joint, unit.widest_joint))),
        "tightest_joint": exactly(unit.tightest_joint - draw(st.integers(0, 2)) * MM),
        "widest_joint": exactly(unit.widest_joint + draw(st.integers(0, 2)) * MM),
        "least_lap": text_of(draw, measure, 0, module / 2 - 2), "least_piece": text_of(draw, measure, 2, module / 2 - 2),
    }
    if unit.ell_return is not None:
        choices["corner_unit"] = draw(st.sampled_from(["plain", "L", "L where it saves"]))
    return choices


def _masonry_of(head: Table) -> Masonry | None:
    """What a plan of these tables is laid in; None where it is refused."""
    try:
        return read_plan(write_plan({**head, "wall": [{"name": "Trial", "length": "20 m", "courses": 4}]}), "plan.toml").masonry
    except PlanError:
        return None


@st.composite
def own_unit_tables(draw: st.DrawFn, measure: Measure) -> Table:
    """A unit that no catalogue holds, of plausible sizes that agree."""
    kind = draw(st.sampled_from(["block", "brick"]))
    least, most = ((290, 90), (600, 250)) if kind == "block" else ((180, 45), (300, 90))
    length, height = draw(st.integers(least[0], most[0])), draw(st.integers(least[1], most[1]))
    joint, thick = draw(st.integers(5, 13)), draw(st.sampled_from([0, draw(st.integers(90, 300))]))
    thick = thick or (length - joint) // 2
    spread = draw(st.lists(st.integers(-2, 2), min_size=2, max_size=6))
    table: Table = {
        "key": "quay-unit", "kind": kind, "height": f"{height} mm", "thickness": f"{thick} mm", "joint": f"{joint} mm",
        "length": [f"{length + one} mm" for one in spread] if draw(st.booleans()) else f"{length} mm",
    }
    count = draw(st.sampled_from([None, 1, 3, 4, 10]))
    choices: Table = {
        "name": "Reclaimed quay unit", "half": draw(st.one_of(st.booleans(), st.just(f"{(length - joint) // 2} mm"))),
        "half_high": f"{(height - joint) // 2} mm", "leads": draw(st.integers(1, 9)), "solid": draw(st.booleans()),
        "gauge": f"{(height + draw(st.integers(6, 13))) * (count or 1)} mm", "tightest_joint": f"{draw(st.integers(2, joint))} mm",
        "widest_joint": f"{draw(st.integers(joint, 20))} mm", "quarter": f"{(length - 3 * joint) // 4} mm",
        "three_quarter": f"{(3 * length - joint) // 4} mm", "ell_return": f"{(length + 2 * thick) // 3 if thick < length else length // 2} mm",
        "shapes": ["stretcher", *draw(st.lists(st.sampled_from(["corner", "sash", "bond beam", "lintel"]), unique=True))],
    }
    found = table | some(draw, choices)
    return found | {"gauge_courses": count} if count is not None and "gauge" in found else found


@st.composite
def orders(draw: st.DrawFn, measure: Measure, unit: str, walls: tuple[str, ...]) -> Table:
    """What an order asks: some of all its keys, with steel, caps and lines of its own."""
    percent, few = st.integers(0, 30), st.integers(1, 4)
    figure = st.floats(0.1, 99).map(lambda number: round(number, 2))
    pair = st.tuples(st.integers(5, 99), st.integers(100, 400)).map(list)
    table: Table = {
        **{key: draw(percent) for key in ("spare", "mortar_waste", "grout_waste")}, "kerf": text_of(draw, measure, 2, 6),
        "mortar_per_100": draw(pair), "batch": draw(st.integers(6, 30)), "shovels": draw(figure), "cement_bag": draw(figure),
        "lime_bag": draw(figure), "cell_volume": draw(st.sampled_from([0.01, 0.25, 7])), "masons": draw(few), "output": draw(pair),
        "day_height": text_of(draw, measure, 250, 3000), "pour_height": text_of(draw, measure, 250, 3000),
        "scaffold": text_of(draw, measure, 320, 2500), "currency": draw(st.sampled_from(["EUR", "USD", "£"])),
        "steel": draw(steels(measure)), "cap": draw(caps(measure, walls)),
        "item": [draw(_items(name)) for name in draw(st.lists(st.sampled_from(
            [f"{unit} full", f"{unit} half", f"{unit} stretcher", "sand", "full", "lintel, precast"]), unique=True, max_size=3))],
    }
    table = some(draw, table)
    if draw(st.booleans()):
        table["mix"] = draw(mixes())
    elif draw(st.booleans()):
        table["ready_bag"] = draw(st.sampled_from([25, 40, 80]))
        table |= some(draw, {"ready_yield": draw(figure)})
    return table


@st.composite
def _items(draw: st.DrawFn, name: str) -> Table:
    price = draw(st.floats(0.1, 900).map(lambda number: round(number, 2)))
    return {"name": name, **some(draw, {"spare": draw(st.integers(0, 30)), "pallet": draw(st.integers(1, 500)), "price": price})}


@st.composite
def mixes(draw: st.DrawFn) -> Table:
    """Parts of a mortar that binds."""
    parts = st.sampled_from([0.25, 0.5, 1, 1.5, 2, 3])
    binders = draw(st.lists(st.sampled_from(["cement", "lime", "masonry_cement", "lime_putty"]), unique=True, min_size=1))
    mix: Table = {**{key: draw(parts) for key in binders}, "sand": draw(st.sampled_from([2.25, 3, 6, 9, 12, 28]))}
    return mix | some(draw, {"fire_clay": draw(parts), "bags": draw(st.booleans())})


@st.composite
def steels(draw: st.DrawFn, measure: Measure) -> Table:
    """Steel with a bar wherever bars are asked for; laps that its stock takes."""
    few, ins = st.integers(1, 4), 1 if measure == "metric" else 25.4 / 25
    table: Table = {
        "lap": text_of(draw, measure, 200, 1200), "stock": text_of(draw, measure, 2900 * ins, 12_000), "hook": text_of(draw, measure, 0, 400),
        "bond_beam_bars": draw(few), "through_joints": draw(st.booleans()), "cell_spacing": text_of(draw, measure, 110, 2000),
        "jamb_cells": draw(st.booleans()), "reinforcement_courses": draw(few), "gasket": draw(st.booleans()),
        "reinforcement_stock": text_of(draw, measure, 1300, 6000), "reinforcement_lap": text_of(draw, measure, 50, 600),
        "tie_courses": draw(few), "tie_spacing": text_of(draw, measure, 110, 1000),
    }
    table = some(draw, table)
    if "tie_courses" in table:
        table.setdefault("tie_spacing", text_of(draw, measure, 110, 1000))
    return {"bar": draw(st.sampled_from(["#4", "#5", "#3", "12 mm", "8mm"])), **table}


@st.composite
def caps(draw: st.DrawFn, measure: Measure, walls: tuple[str, ...]) -> Table:
    """Caps or coping on some of the walls."""
    table: Table = {"name": "coping", "joint": text_of(draw, measure, 0, 20), "overhang": text_of(draw, measure, 0, 60),
                    "walls": draw(st.lists(st.sampled_from(walls), unique=True))}
    return {"length": text_of(draw, measure, 150, 1200), **some(draw, table)}


@st.composite
def tails(draw: st.DrawFn, measure: Measure, unit: str, walls: tuple[str, ...]) -> Table:
    """Order and advice, or one, or none."""
    table: Table = {"order": draw(orders(measure, unit, walls)), "advice": draw(advice_tables(measure))}
    return some(draw, table)
