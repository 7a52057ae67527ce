"""The shared vocabulary of random plans: length texts, plans that are valid, plans that nearly are."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from hypothesis import strategies as st

from tests.jobs import make_job, make_masonry, make_opening, make_wall
from wallplan.catalogue.load import units
from wallplan.catalogue.unit import Unit
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure
from wallplan.plan.advice_table import KINDS
from wallplan.plan.job import Job

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
def wall_tables(draw: st.DrawFn, measure: Measure, unit: Unit, name: str) -> Table:
    """A straight wall with up to four openings side by side, right of them perhaps a control joint."""
    module = unit.length + unit.joint
    reach, top = 0, 0
    openings = []
    for _ in range(draw(st.integers(0, 4))):
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
def _lesson_wall(draw: st.DrawFn, unit: Unit, name: str) -> tuple[Table, int]:
    """A short wall in halves of the module (or a little off), up to two openings, with the courses it has."""
    half, courses = unit.module // 2, draw(st.integers(3, 9))
    off = draw(st.sampled_from([0, 0, TICKS_PER_INCH, half // 4]))
    reach, openings = draw(st.integers(2, 6)) * half, []
    for number in range(draw(st.integers(0, 2))):
        first = draw(st.integers(0, courses - 2))
        high = draw(st.integers(1, courses - first - 1))
        sunk = draw(st.sampled_from([0, 0, 0, unit.gauge // 2])) if first and high > 1 else 0
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
