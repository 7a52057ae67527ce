"""The unit catalogue as tables and as JSON."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from wallplan.catalogue.unit import Unit
from wallplan.lengths import Measure, print_size, to_mm
from wallplan.lists.columns import set_columns, wrap_text


def report_units(units: Sequence[Unit], width: int) -> str:
    """All units, by country: key, size, joint, courses."""
    blocks = []
    for country, family in groupby(units, key=lambda unit: unit.country):
        rows = [["key", "length x height x thickness", "joint", "coursing", "name"]]
        rows += [[unit.key, _size(unit), _print(unit.joint, unit), print_coursing(unit), unit.name] for unit in family]
        blocks.append(f"{country}\n" + set_columns(rows, width, indent=2))
    return "\n\n".join([*blocks, "One unit in full, with its sources: wallplan units block-8"])


def report_unit(unit: Unit, width: int) -> str:
    """One unit in full."""
    pieces = ", ".join(f"{piece.name} {_print(piece.length, unit)}" + (" (a bat, broken from a full)" if piece.sawn else "")
                       for piece in unit.pieces)
    rows = [
        ["name", unit.name], ["kind", unit.kind], ["length", _both(unit.length)], ["height", _both(unit.height)],
        ["thickness", _both(unit.thickness)],
        ["joint", f"{_both(unit.joint)}, {_print(unit.tightest_joint, unit)} to {_print(unit.widest_joint, unit)}"],
        ["coursing", print_coursing(unit)], ["stock lengths", pieces],
        ["half-high", "none" if unit.half_high is None else _both(unit.half_high)],
        ["shapes", ", ".join(unit.shapes)], ["leads", f"{unit.leads} courses"],
        ["net volume", "not given" if unit.net_litres is None else f"{unit.net_litres:g} litres"],
        ["weight", "not given" if unit.mass_kg is None else "{:.1f} to {:.1f} kg".format(*unit.mass_kg)],
    ]
    return f"{unit.key}\n" + set_columns(rows, width, indent=2) + "\n" + wrap_text(unit.source, width, indent="  ")


def print_coursing(unit: Unit) -> str:
    """The gauge as the trade states it: so many courses to so much height."""
    courses, height = unit.coursing or (1, unit.gauge)
    return f"{courses} to {_print(height, unit)}"


def units_as_json(units: Sequence[Unit]) -> dict[str, object]:
    """The units with lengths in float millimetres."""
    return {"wallplan_units": 1, "units": [_as_json(unit) for unit in units]}


def _as_json(unit: Unit) -> dict[str, object]:
    courses, height = unit.coursing or (1, unit.gauge)
    return {
        "key": unit.key, "name": unit.name, "kind": unit.kind, "country": unit.country,
        "length": to_mm(unit.length), "height": to_mm(unit.height), "thickness": to_mm(unit.thickness),
        "joint": to_mm(unit.joint), "tightest_joint": to_mm(unit.tightest_joint),
        "widest_joint": to_mm(unit.widest_joint), "coursing": {"courses": courses, "height": to_mm(height)},
        "pieces": {piece.name: to_mm(piece.length) for piece in unit.pieces},
        "half_high": None if unit.half_high is None else to_mm(unit.half_high), "shapes": list(unit.shapes),
        "leads": unit.leads, "solid": unit.solid, "net_litres": unit.net_litres,
        "mass_kg": None if unit.mass_kg is None else list(unit.mass_kg), "source": unit.source,
    }


def _measure(unit: Unit) -> Measure:
    return "feet" if unit.country == "United States" else "metric"


def _print(ticks: int, unit: Unit) -> str:
    return print_size(ticks, _measure(unit))


def _both(ticks: int) -> str:
    return f"{print_size(ticks, 'feet')} ({to_mm(ticks):.4g} mm)"


def _size(unit: Unit) -> str:
    sides = (unit.length, unit.height, unit.thickness)
    return " x ".join(_print(side, unit).removesuffix(" mm") for side in sides) + (
        "" if _measure(unit) == "feet" else " mm")
