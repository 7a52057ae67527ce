"""The shared vocabulary of random plans: length texts, plans that are valid, plans that nearly are."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from hypothesis import reject
from hypothesis import strategies as st

from tests.jobs import make_job, make_masonry, make_opening, make_wall
from wallplan.catalogue.load import units
from wallplan.catalogue.unit import Unit
from wallplan.findings import PlanError
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure
from wallplan.plan.advice_table import KINDS
from wallplan.plan.job import ONE_BRICK, Job
from wallplan.plan.load import read_plan

SIXTEENTH = TICKS_PER_INCH // 16
Table = dict[str, Any]


@dataclass(frozen=True)
class Written:
    """A length as a plan may write it, and the ticks that it means."""

    text: str | int
    ticks: int


def fraction_text(sixteenths: int) -> str:
    """Sixteenths of an inch under one inch as a reduced fraction."""
    low = 16
    while sixteenths % 2 == 0:
        sixteenths, low = sixteenths // 2, low // 2
    return f"{sixteenths}/{low}"


def inches_texts(sixteenths: int) -> st.SearchStrategy[str]:
    """Ways to write inches without a mark; whole inches have one way."""
    whole, part = divmod(sixteenths, 16)
    if not part:
        return st.just(str(whole))
    fraction = fraction_text(part)
    ways = [f"{whole} {fraction}", f"{whole}-{fraction}", str(sixteenths / 16)]
    return st.sampled_from([*ways, fraction] if not whole else ways)


@st.composite
def feet_lengths(draw: st.DrawFn, least: int = 0, most: int = 100 * 12 * 16) -> Written:
    """A length in feet and inches, on the sixteenth of an inch, in one of the ways to write it."""
    sixteenths = draw(st.integers(least, most))
    feet, rest = divmod(sixteenths, 12 * 16)
    ticks = sixteenths * SIXTEENTH
    bare = draw(inches_texts(rest))
    foot = draw(st.sampled_from(["'", " ft", "′", "’"]))
    inch = draw(st.sampled_from(["", '"', " in", "″", "”"]))
    if not feet:
        return Written(f"{bare}{inch}", ticks)
    if not rest and draw(st.booleans()):
        return Written(f"{feet}{foot}", ticks)
    return Written(f"{feet}{foot}{draw(st.sampled_from([' ', '-']))}{bare}{inch}", ticks)


@st.composite
def metric_lengths(draw: st.DrawFn, least: int = 0, most: int = 30_000) -> Written:
    """A length on the whole millimetre, in one of the ways to write it in a metric plan."""
    whole = draw(st.integers(least, most))
    ways: list[str | int] = [whole, f"{whole}", f"{whole} mm", f"{whole}mm", f"{whole / 1000:.3f} m", f"{whole / 10:.1f} cm"]
    return Written(draw(st.sampled_from(ways)), whole * TICKS_PER_MM)


def lengths(measure: Measure, least: int, most: int) -> st.SearchStrategy[Written]:
    """A length between two numbers of ticks, as the measure writes it; both ends are rounded inwards."""
    if measure == "feet":
        return feet_lengths(-(-least // SIXTEENTH), most // SIXTEENTH)
    return metric_lengths(-(-least // TICKS_PER_MM), most // TICKS_PER_MM)


def write_value(value: object) -> str:
    """A value as TOML."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        escaped = value.replace("\\", "\\\\").replace('"', '\\"')
        return '"' + "".join(c if c.isprintable() else f"\\u{ord(c):04x}" for c in escaped) + '"'
    if isinstance(value, list):
        return f"[{', '.join(write_value(item) for item in value)}]"
    if isinstance(value, dict):
        return "{" + ", ".join(f"{key} = {write_value(item)}" for key, item in value.items()) + "}"
    return str(value)


def write_plan(table: Mapping[str, Any], heading: str = "") -> str:
    """A plan's tables as TOML text, one key a line; lists of tables under double brackets."""
    lines, below = [], []
    for key, value in table.items():
        path = f"{heading}.{key}" if heading else key
        if isinstance(value, dict):
            below.append(f"[{path}]\n{write_plan(value, path)}")
        elif isinstance(value, list) and value and all(isinstance(item, dict) for item in value):
            below += [f"[[{path}]]\n{write_plan(item, path)}" for item in value]
        else:
            lines.append(f"{key} = {write_value(value)}\n")
    return "".join(lines + below)


def _opening(draw: st.DrawFn, measure: Measure, unit: Unit, start: int) -> tuple[Table, int, int]:
    """One opening right of ``start`` ticks, with where it ends and how high it reaches."""
    module = unit.length + unit.joint
    lintel = draw(st.sampled_from(["none", "precast", "steel", *(["block"] if "lintel" in unit.shapes else [])]))
    left = draw(lengths(measure, start + module, start + 5 * module))
    width = draw(lengths(measure, module, 6 * module))
    sill = draw(lengths(measure, 0, 6 * unit.gauge))
    height = draw(lengths(measure, unit.gauge, 12 * unit.gauge))
    table = {"from_left": left.text, "width": width.text, "sill": sill.text, "height": height.text, "lintel": lintel}
    return table, left.ticks + width.ticks, sill.ticks + height.ticks


@st.composite
def wall_tables(draw: st.DrawFn, measure: Measure, unit: Unit, name: str, most_openings: int = 4) -> Table:
    """A straight wall with some openings side by side, right of them perhaps a control joint."""
    module = unit.length + unit.joint
    reach, top = 0, 0
    openings = []
    for _ in range(draw(st.integers(0, most_openings))):
        opening, reach, high = _opening(draw, measure, unit, reach)
        openings.append(opening)
        top = max(top, high)
    table: Table = {"name": name}
    if draw(st.booleans()):
        joint = draw(lengths(measure, reach + 3 * module, reach + 8 * module))
        reach, table["control_joints"] = joint.ticks, [joint.text]
    table["length"] = draw(lengths(measure, reach + 2 * module, reach + 12 * module)).text
    table["height"] = draw(lengths(measure, top + unit.gauge, top + 8 * unit.gauge)).text
    if "bond beam" in unit.shapes and draw(st.booleans()):
        table["bond_beams"] = ["top"]
    if openings:
        table["opening"] = openings
    return table


@st.composite
def advice_tables(draw: st.DrawFn, measure: Measure) -> Table:
    """What may be moved, and how far: some of the keys."""
    table: Table = {
        "farthest": draw(lengths(measure, 4 * TICKS_PER_INCH, 40 * TICKS_PER_INCH)).text,
        "least_pier": draw(lengths(measure, 0, 40 * TICKS_PER_INCH)).text,
        "step": draw(lengths(measure, TICKS_PER_INCH, 12 * TICKS_PER_INCH)).text,
        "move": draw(st.lists(st.sampled_from(KINDS), unique=True)),
    }
    return {key: table[key] for key in draw(st.lists(st.sampled_from(sorted(table)), unique=True))}


@st.composite
def plan_tables(draw: st.DrawFn) -> Table:
    """A valid plan of one to three straight walls, as the tables of its file."""
    unit = draw(st.sampled_from(sorted(units().values(), key=lambda unit: unit.key)))
    measure: Measure = draw(st.sampled_from(("feet", "metric")))
    masonry: Table = {"unit": unit.key, "bond": draw(st.sampled_from(["half", "third", "quarter", "stack"]))}
    if draw(st.booleans()):
        masonry["leads"] = draw(st.integers(2, 9))
    names = draw(st.lists(st.sampled_from(["Landing", "Water", "Road", "Shed", "Slip"]), min_size=1, max_size=3, unique=True))
    walls = [draw(wall_tables(measure, unit, name)) for name in names]
    plan: Table = {"title": "Ferry landing", "measure": measure, "masonry": masonry, "wall": walls}
    if draw(st.booleans()):
        plan["advice"] = draw(advice_tables(measure))
    return plan


def plan_texts() -> st.SearchStrategy[str]:
    """The text of a valid plan."""
    return plan_tables().map(write_plan)


JUNK = st.one_of(
    st.text(max_size=12), st.integers(), st.floats(), st.booleans(), st.just([]), st.just({}), st.just([{}]),
    st.just([["x"]]), st.sampled_from(["12-4", "-4", "1e400", "9" * 50, "north", "top", "2031-04-02"]),
    st.lists(st.integers(-3, 3), max_size=4), st.dictionaries(st.sampled_from(["name", "x"]), st.integers(), max_size=2),
)
"""Values that seldom belong where they are put."""


def _tables_in(table: Table) -> list[Table]:
    inner = [value for value in table.values() if isinstance(value, dict)]
    listed = [item for value in table.values() if isinstance(value, list) for item in value if isinstance(item, dict)]
    return [table, *(found for child in inner + listed for found in _tables_in(child))]


@st.composite
def nearly_valid_plans(draw: st.DrawFn) -> str:
    """A valid plan in which one to four keys were lost, misspelt or given junk. Some are valid still."""
    plan = draw(plan_tables())
    for _ in range(draw(st.integers(1, 4))):
        table = draw(st.sampled_from([found for found in _tables_in(plan) if found]))
        key = draw(st.sampled_from(sorted(table)))
        change = draw(st.sampled_from(["lose", "misspell", "junk"]))
        value = table.pop(key)
        if change == "misspell":
            table[key[:-1] + "x"] = value
        elif change == "junk":
            table[key] = draw(JUNK)
    return write_plan(plan)


@st.composite
def laid_jobs(draw: st.DrawFn, *, joints_move: bool = True, on_coursing: bool = True) -> Job:
    """A job of one wall in half bond: any length to the sixteenth, up to two openings with room for a piece beside them.

    Sills and heads stand on the coursing, unless ``on_coursing`` is False. Lintels take no unit's place.
    """
    masonry = make_masonry(draw(st.sampled_from(["block-8", "block-12", "brick-modular", "brick-uk"])), joints_move=joints_move)
    unit, module = masonry.unit, masonry.module
    courses = draw(st.integers(3, 9))
    reach, openings = 0, []
    for number in range(draw(st.integers(0, 2))):
        left = reach + draw(_sixteenths(module, 3 * module))
        reach = left + draw(_sixteenths(module, 3 * module))
        first = draw(st.integers(0, courses - 2))
        levels = [unit.height_of_courses(first), unit.height_of_courses(draw(st.integers(first + 1, courses)))]
        if not on_coursing:
            off = [draw(_sixteenths(-unit.gauge // 2, unit.gauge // 2)) for _ in levels]
            levels = [max(0, levels[0] + off[0]), max(levels[1] + off[1], levels[0] + off[0] + unit.gauge // 2)]
        openings.append(make_opening(left, reach, *levels, lintel="steel", name=f"Opening {number}"))
    length = reach + draw(_sixteenths(module, 4 * module))
    return make_job(masonry, make_wall(length, max([unit.height_of_courses(courses), *(o.top for o in openings)]), openings))


def _sixteenths(least: int, most: int) -> st.SearchStrategy[int]:
    """Ticks between two numbers, on the sixteenth of an inch."""
    return st.integers(-(-least // SIXTEENTH), most // SIXTEENTH).map(lambda count: count * SIXTEENTH)


@st.composite
def _lesson_wall(draw: st.DrawFn, unit: Unit, name: str, sinks: tuple[int, ...] = (0, 0, 0, 1)) -> tuple[Table, int]:
    """A short wall in halves of the module (or a little off), up to two openings, with the courses it has.

    ``sinks`` are the halves of a course that sills may be off the coursing.
    """
    half, courses = unit.module // 2, draw(st.integers(3, 9))
    off = draw(st.sampled_from([0, 0, TICKS_PER_INCH, half // 4]))
    reach, openings = draw(st.integers(2, 6)) * half, []
    for number in range(draw(st.integers(0, 2))):
        first = draw(st.integers(0, courses - 2))
        high = draw(st.integers(1, courses - first - 1))
        sunk = draw(st.sampled_from(sinks)) * unit.gauge // 2 if first and high > 1 else 0
        lintel = draw(st.sampled_from(["none", "precast", "steel", *(["block"] * 2 if "lintel" in unit.shapes else [])]))
        wide = draw(st.integers(2, 5)) * half
        openings.append({"name": f"Opening {number}", "from_left": f"{reach / TICKS_PER_MM} mm", "lintel": lintel,
                         "width": f"{wide / TICKS_PER_MM} mm", "sill": f"{(first * unit.gauge - sunk) / TICKS_PER_MM} mm",
                         "height": f"{high * unit.gauge / TICKS_PER_MM} mm", "bearing": f"{half / 2 / TICKS_PER_MM} mm"})
        reach += wide + draw(st.integers(2, 6)) * half
    table: Table = {"name": name, "length": f"{(reach + 2 * half + off) / TICKS_PER_MM} mm", "courses": courses}
    if draw(st.booleans()):
        table["control_joints"] = [f"{reach / TICKS_PER_MM} mm"]
    if "bond beam" in unit.shapes and draw(st.booleans()):
        table["bond_beams"] = ["top"]
    return {**table, **({"opening": openings} if openings else {})}, courses


@st.composite
def lesson_texts(draw: st.DrawFn) -> str:
    """The text of a plan of one short wall, or of two to four that meet at corners: any bond, joints fixed or not."""
    unit = draw(st.sampled_from(sorted(units().values(), key=lambda unit: unit.key)))
    masonry: Table = {"unit": unit.key, "bond": draw(st.sampled_from(["half", "half", "half", "third", "quarter", "stack"]))}
    if draw(st.integers(0, 3)):  # walls whose joints may move take longer to lay
        joint = f"{unit.joint / TICKS_PER_MM} mm"
        masonry.update(joint=joint, tightest_joint=joint, widest_joint=joint)
    walls = [draw(_lesson_wall(unit, "Landing"))[0]]
    if draw(st.booleans()) and masonry["bond"] != "stack":
        walls.append({"name": "Water", "length": f"{draw(st.integers(6, 14)) * unit.module / 2 / TICKS_PER_MM} mm",
                      "courses": walls[0]["courses"], "left": "outside corner"})
        walls[0]["right"] = "outside corner"
    plan = {"title": "Ferry landing", "measure": draw(st.sampled_from(("feet", "metric"))),
            "sizes": draw(st.sampled_from(("actual", "nominal"))), "masonry": masonry, "wall": walls}
    return write_plan(plan)


@st.composite
def outlined_plans(draw: st.DrawFn) -> str:
    """The text of a plan of one block wall with steps of its footing by half courses, steps of its top, or a gable."""
    length = draw(st.integers(10, 22)) * 16
    lines = ['title = "Slip"', 'measure = "feet"', f'sizes = "{draw(st.sampled_from(["nominal", "actual"]))}"',
             'masonry.unit = "block-8"', "[[wall]]", 'name = "Slip"', f"length = {length}", f"height = {draw(st.integers(6, 9)) * 8}"]
    kinds = draw(st.sampled_from([("step",), ("top_step",), ("step", "top_step"), ("gable",), ("step", "gable")]))
    if "gable" in kinds:
        pitch = draw(st.sampled_from(["4/12", "6/12", "8/12", "12/12", "35 deg"]))
        lines.append(f'[[wall.gable]]\npitch = "{pitch}"' + draw(st.sampled_from(["", "", "\nridge = 0"])))
    for kind in ("step", "top_step"):
        at = 0
        for _ in range(draw(st.integers(1, 2)) if kind in kinds else 0):
            at += draw(st.integers(3, 5)) * 16 + draw(st.sampled_from([0, 8]))
            rise = draw(st.sampled_from([8, 16] if kind == "top_step" else [8, 16, 4, 12]))
            if at <= length - 48:
                lines.append(f"[[wall.{kind}]]\nat = {at}\n{draw(st.sampled_from(['up', 'down']))} = {rise}")
    return "\n".join(lines)


@st.composite
def own_unit_tables(draw: st.DrawFn) -> Table:
    """A unit that no catalogue holds, of plausible sizes; some cannot be and are told as mistakes. Given in millimetres."""
    kind = draw(st.sampled_from(["block", "brick"]))
    long, high = (st.integers(290, 600), st.integers(90, 250)) if kind == "block" else (st.integers(180, 300), st.integers(40, 90))
    length, height, joint = draw(long), draw(high), draw(st.integers(5, 13))
    measured = draw(st.lists(st.integers(-3, 3), min_size=2, max_size=6))
    spread = draw(st.booleans())
    table: Table = {
        "key": "quay-unit", "kind": kind, "height": f"{height} mm", "thickness": f"{draw(st.integers(90, 300))} mm",
        "length": [f"{length + one} mm" for one in measured] if spread else f"{length} mm", "joint": f"{joint} mm",
    }
    choices: dict[str, object] = {
        "half": draw(st.one_of(st.booleans(), st.just(f"{(length - joint) // 2} mm"))),
        "half_high": f"{(height - joint) // 2} mm", "leads": draw(st.integers(1, 9)), "solid": draw(st.booleans()),
        "gauge": f"{height + draw(st.integers(1, 15))} mm", "tightest_joint": f"{draw(st.integers(1, joint))} mm",
        "widest_joint": f"{draw(st.integers(joint, 20))} mm", "quarter": f"{(length - 3 * joint) // 4} mm",
        "three_quarter": f"{(3 * length - joint) // 4} mm",
        "shapes": draw(st.lists(st.sampled_from(["stretcher", "corner", "sash", "bond beam", "lintel"]), unique=True, min_size=1)),
    }
    return table | {key: choices[key] for key in draw(st.lists(st.sampled_from(sorted(choices)), unique=True))}


@st.composite
def order_tables(draw: st.DrawFn, measure: Measure) -> Table:
    """What an order asks: some of the keys, with steel or without."""
    percent, few = st.integers(0, 30), st.integers(1, 4)
    inches = lengths(measure, 4 * TICKS_PER_INCH, 80 * TICKS_PER_INCH).map(lambda written: written.text)
    reach = lengths(measure, 13 * TICKS_PER_INCH, 80 * TICKS_PER_INCH).map(lambda written: written.text)
    mix = draw(st.sampled_from([{"cement": 1, "lime": 1, "sand": 6}, {"masonry_cement": 1, "sand": 3}, {"lime": 1, "sand": 3},
                                {"cement": 1, "lime": 0.25, "sand": 3.5}, {"cement": 3, "fire_clay": 1, "sand": 12}]))
    steel: Table = {
        "bar": draw(st.sampled_from(["#4", "#5", "12 mm"])), "bond_beam_bars": draw(st.integers(0, 3)),
        "cell_spacing": draw(inches), "jamb_cells": draw(st.booleans()), "reinforcement_courses": draw(few),
        "tie_courses": draw(few), "tie_spacing": draw(inches), "gasket": draw(st.booleans()), "hook": draw(inches),
    }
    steel = {"bar": steel["bar"], **{key: steel[key] for key in draw(st.lists(st.sampled_from(sorted(steel)), unique=True))}}
    if "tie_courses" in steel:
        steel.setdefault("tie_spacing", "16 in")
    table: Table = {
        "spare": draw(percent), "mortar_waste": draw(percent), "grout_waste": draw(percent), "mix": mix, "masons": draw(few),
        "batch": draw(st.integers(6, 30)), "output": [draw(st.integers(50, 99)), draw(st.integers(100, 500))],
        "day_height": draw(inches), "pour_height": draw(inches), "scaffold": draw(reach), "currency": "EUR", "steel": steel,
        "item": [{"name": "full", "pallet": draw(st.integers(1, 500)), "price": draw(st.floats(0.1, 9).map(lambda n: round(n, 2)))}],
    }
    return {key: table[key] for key in draw(st.lists(st.sampled_from(sorted(table)), unique=True))}


@st.composite
def _walls_that_meet(draw: st.DrawFn, measure: Measure, unit: Unit) -> list[Table]:
    """Walls round a corner, a closed rectangle, or a closed L with its inside corner; openings in the first ones."""
    module, low, high = unit.length + unit.joint, 8, 20
    step = draw(st.sampled_from([module, module // 2, TICKS_PER_INCH if measure == "feet" else 10 * TICKS_PER_MM]))
    least = 2 * (unit.thickness + unit.length) + module

    def side() -> int:
        return -(-(least + draw(st.integers(low, high)) * module // 4) // step) * step

    form = draw(st.sampled_from(["two", "three", "rectangle", "L"]))
    a, b, c, d = side(), side(), side(), side()
    lengths_of = {"two": [a, b], "three": [a, b, c], "rectangle": [a, b, a, b], "L": [a + c, b, a, d, c, b + d]}[form]
    ends = ["outside corner"] * len(lengths_of)
    if form in ("two", "three"):
        ends[-1] = "end"
    if form == "three" and draw(st.booleans()):
        ends[1] = "inside corner"
    if form == "L":
        ends[2] = "inside corner"
    courses = draw(st.integers(5, 16))
    walls = []
    for number, (length, right) in enumerate(zip(lengths_of, ends, strict=True)):
        wall: Table = {"name": f"Side {number + 1}", "length": f"{length / TICKS_PER_MM} mm", "courses": courses,
                       "left": ends[number - 1], "right": right}
        clear = unit.thickness + unit.length
        if draw(st.booleans()) and length > 2 * clear + module:
            first = draw(st.integers(0, courses - 3))
            wall["opening"] = [{
                "from_left": f"{clear / TICKS_PER_MM} mm", "width": f"{(length - 2 * clear) / TICKS_PER_MM} mm",
                "sill": f"{first * unit.gauge / TICKS_PER_MM} mm", "bearing": f"{unit.length / 4 / TICKS_PER_MM} mm",
                "height": f"{draw(st.integers(1, courses - first - 1)) * unit.gauge / TICKS_PER_MM} mm",
            }]
        walls.append(wall)
    return walls


@st.composite
def whole_plans(draw: st.DrawFn) -> str:
    """The text of a plan with any key that a plan may have: nearly all can be laid, a few are told as mistakes."""
    unit = draw(st.sampled_from(sorted(units().values(), key=lambda unit: unit.key)))
    measure: Measure = draw(st.sampled_from(("feet", "metric")))
    masonry: Table = {"unit": unit.key, "bond": draw(st.sampled_from(["half", "half", "third", "quarter", "stack"]))}
    plan: Table = {"title": "Ferry landing", "measure": measure, "sizes": draw(st.sampled_from(["actual", "actual", "nominal"]))}
    if draw(st.integers(0, 3)) == 0:
        plan["own_unit"] = draw(own_unit_tables())
        masonry["unit"] = "quay-unit"
    choices: dict[str, object] = {
        "leads": draw(st.integers(1, 12)), "keep_bond": draw(st.booleans()), "joint": f"{draw(st.integers(8, 12))} mm",
        "least_lap": draw(lengths(measure, 0, unit.length // 2)).text, "least_piece": draw(lengths(measure, 0, unit.length // 2)).text,
    }
    masonry |= {key: choices[key] for key in draw(st.lists(st.sampled_from(sorted(choices)), unique=True, max_size=2))}
    if draw(st.integers(0, 2)) == 0:
        plan["wall"] = draw(_walls_that_meet(measure, unit))
    else:
        names = draw(st.lists(st.sampled_from(["Landing", "Water", "Road"]), min_size=1, max_size=2, unique=True))
        most = draw(st.sampled_from([1, 1, 1, 2, 2, 4]))
        plan["wall"] = [draw(wall_tables(measure, unit, name, most)) for name in names]
        if len(names) > 1 and draw(st.booleans()):
            for first, second in zip(plan["wall"], plan["wall"][1:], strict=False):
                first["right"] = second["left"] = "straight"
                second["height"] = plan["wall"][0]["height"]
                second.pop("bond_beams", None)
                first.pop("bond_beams", None)
    plan["masonry"] = masonry
    for key, tables in (("order", order_tables(measure)), ("advice", advice_tables(measure))):
        if draw(st.booleans()):
            plan[key] = draw(tables)
    return write_plan(plan)


@st.composite
def sheet_plans(draw: st.DrawFn) -> str:
    """The text of a plan with any key and with names of any length: what sheets may have to letter."""
    text = draw(whole_plans())
    title = draw(st.sampled_from(["Ferry landing", "Ferry landing, second stage: waiting room, store and tug office", "gy (jq) Ä"]))
    name = draw(st.sampled_from(["Landing", "Side to the water and the slip, old boundary", "1", "Öst/väst"]))
    return text.replace('"Ferry landing"', f'"{title}"').replace('"Landing"', f'"{name}"').replace('"Side 1"', f'"{name}"')


@st.composite
def pier_plans(draw: st.DrawFn) -> str:
    """The text of a plan of one wall with one to three piers of any width and depth, on either face or both, also at its ends."""
    bonding = [one for one in units().values()
               if any(abs((one.thickness + one.joint) * 4 - one.module * quarters) <= 12 * TICKS_PER_MM for quarters in (2, 3))]
    unit = draw(st.sampled_from(bonding))
    quarter, measure = unit.module // 4, draw(st.sampled_from(("feet", "metric")))
    off = draw(st.sampled_from([0, 0, 0, TICKS_PER_INCH]))
    piers, reach = [], draw(st.sampled_from([0, 0, 4, 8, 9]))
    thick = round((unit.thickness + unit.joint) / quarter)
    for _ in range(draw(st.integers(1, 3))):
        odd = draw(st.integers(0, 7)) == 0  # of sizes that units seldom fill
        face, out = draw(st.sampled_from(["inside", "inside", "outside", "both"])), draw(st.integers(1, 4))
        wide = draw(st.integers(3, 12)) if odd else thick * draw(st.integers(1, 9 // thick))
        deep = thick + out * (2 if face == "both" else 1)
        sizes: Table = {"width": f"{(wide * quarter - unit.joint) / TICKS_PER_MM} mm"}
        sizes |= draw(st.sampled_from([{"depth": f"{(deep * quarter - unit.joint) / TICKS_PER_MM} mm"},
                                       {"projects": f"{out * quarter / TICKS_PER_MM} mm"}]))
        if reach and face != "both" and draw(st.integers(0, 3)) == 0:
            sizes, wide = {}, thick  # as wide as the wall
        if odd:
            sizes = {key: sizes[key] for key in draw(st.lists(st.sampled_from(sorted(sizes)), unique=True))} if sizes else {}
        pier: Table = {"from_left": f"{(reach * quarter + (off if reach else 0)) / TICKS_PER_MM} mm", **sizes}
        piers.append(pier | ({} if face == "inside" else {"face": face}))
        reach += wide + draw(st.integers(4, 16))
    length = (reach - draw(st.sampled_from([0, 0, 4]))) * quarter - unit.joint
    wall: Table = {"name": "Slip", "length": f"{length / TICKS_PER_MM} mm", "courses": draw(st.integers(2, 9)), "pier": piers}
    masonry: Table = {"unit": unit.key, "bond": draw(st.sampled_from(["half", "half", "third", "quarter"]))}
    return write_plan({"title": "Slip wall", "measure": measure, "masonry": masonry, "wall": [wall]})


@st.composite
def header_plans(draw: st.DrawFn) -> str:
    """The text of a plan of walls one brick thick, in Flemish or English bond: free ends or corners, openings, control joints."""
    twice = [unit for unit in units().values() if unit.kind == "brick" and abs(2 * unit.thickness + unit.joint - unit.length) <= 2_000]
    unit = draw(st.sampled_from(twice))
    half = unit.module // 2
    masonry: Table = {"unit": unit.key, "bond": draw(st.sampled_from(ONE_BRICK))}
    if draw(st.booleans()):
        joint = f"{unit.joint / TICKS_PER_MM} mm"
        masonry.update(tightest_joint=joint, widest_joint=joint)
    wall, courses = draw(_lesson_wall(unit, "Landing", (0,) * 15 + (1,)))
    walls = [wall]
    if draw(st.booleans()):
        ends = draw(st.sampled_from([("end", "outside corner", "end"), ("outside corner",) * 3, ("end", "inside corner", "end")]))
        more = [{"name": f"Side {number + 2}", "length": f"{(draw(st.integers(6, 20)) * half - unit.joint) / TICKS_PER_MM} mm",
                 "courses": courses} for number in range(3 if ends[0] != "end" else 1)]
        walls += more
        for number, one in enumerate(walls):
            one["left"] = ends[1] if number else ends[0]
            one["right"] = ends[1] if number < len(walls) - 1 else ends[2]
        if ends[0] != "end":
            walls[2]["length"], walls[3]["length"] = walls[0]["length"], walls[1]["length"]
    measure = draw(st.sampled_from(("feet", "metric")))
    return write_plan({"title": "Ferry landing", "measure": measure, "masonry": masonry, "wall": walls})


@st.composite
def header_jobs(draw: st.DrawFn) -> Job:
    """The job of such a plan; those that the plan room refuses, for levels off the coursing or corners too near, are left out."""
    try:
        return read_plan(draw(header_plans()), "landing.toml")
    except PlanError:
        return reject()


@st.composite
def joined_plans(draw: st.DrawFn) -> str:
    """The text of a plan of walls that meet at corners with unequal heights, and of one that abuts another in a T."""
    unit = draw(st.sampled_from([one for one in units().values() if one.kind == "block" or one.thickness * 2 < one.length]))
    measure: Measure = draw(st.sampled_from(("feet", "metric")))
    walls = draw(_walls_that_meet(measure, unit))
    for wall in walls:
        least = max([4, *(4 + (_mm(one["sill"]) + _mm(one["height"])) // unit.gauge for one in wall.get("opening", ()))])
        wall["courses"] = draw(st.integers(int(least), int(least) + 8)) if draw(st.booleans()) else wall["courses"]
    if draw(st.booleans()):
        walls[0].pop("opening", None)
        stem: Table = {"name": "Stem", "length": f"{draw(st.integers(4, 14)) * unit.module // 2 / TICKS_PER_MM} mm",
                       "courses": draw(st.sampled_from([walls[0]["courses"], draw(st.integers(4, 12))]))}
        tie = draw(st.sampled_from(["interlocked", "straps", "control joint"]))
        at = draw(st.integers(1, 4)) * unit.module
        stem["abuts"] = [{"meets": "Side 1", "at": f"{at / TICKS_PER_MM} mm", "tie": tie,
                          "face": draw(st.sampled_from(["inside", "outside"]))}]
        if tie == "straps":
            stem["abuts"][0]["strap_spacing"] = "600 mm"
        walls.append(stem)
    masonry: Table = {"unit": unit.key, "bond": draw(st.sampled_from(["half", "half", "third", "quarter"]))}
    return write_plan({"title": "Ferry landing", "measure": measure, "masonry": masonry, "wall": walls})


def _mm(text: str) -> int:
    """Ticks of millimetres as written here."""
    return round(float(text.removesuffix(" mm")) * TICKS_PER_MM)
