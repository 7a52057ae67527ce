"""The unit: from the catalogue by its key, or the plan's own."""

from __future__ import annotations

from typing import TYPE_CHECKING

from wallplan.catalogue.load import UnknownUnit, find_unit, spell_key, units
from wallplan.catalogue.own import own_unit
from wallplan.catalogue.own_rules import SHAPES, Measured, OwnUnitError
from wallplan.catalogue.unit import Unit
from wallplan.plan.found import find_nearest, make_plain, print_choices, print_found, print_name
from wallplan.plan.notebook import Notebook

if TYPE_CHECKING:
    from wallplan.plan.schema import OwnUnitTable

_MOST_MEASURED = 1_000


def choose_unit(key: str | None, own: Unit | None, own_key: str | None, notebook: Notebook) -> Unit | None:
    """The unit that ``[masonry] unit`` names. None where it names none, which is noted.

    ``own_key`` is the key of the plan's own unit, also where that unit could not be read: then nothing is noted here.
    """
    if key is None or notebook.knows(("own_unit",), ("own_unit", "key")):
        return None  # what is called so may be the plan's own
    own_meant = own_key is not None and make_plain(own_key) == make_plain(key)
    if own_meant or key == own_key:
        return own
    try:
        return find_unit(spell_key(key))
    except UnknownUnit as error:
        near = find_nearest(key, [own_key]) if own_key else None
        catalogues = f"nearest: {', '.join(error.nearest)}" if error.nearest else "try block-8 or brick-modular"
        hint = f"nearest: {print_name(near)}, the plan's own" if near else catalogues
        notebook.note(("masonry", "unit"), f"{print_found(key)} is no unit of the catalogue; {hint}; wallplan units shows "
                      "them all")
        return None


def read_own_unit(table: OwnUnitTable, notebook: Notebook) -> Unit | None:
    """The plan's own unit, or None where something in its table is missing or wrong, which is noted."""
    known = len(notebook.wrongs)
    _check_own(table, notebook)
    length, height, thickness = (_read_measured(table, size, notebook) for size in ("length", "height", "thickness"))
    joint, gauge, tightest, widest, three_quarter, quarter, half_high, ell_return = (
        notebook.read(("own_unit", key), getattr(table, key))
        for key in ("joint", "gauge", "tightest_joint", "widest_joint", "three_quarter", "quarter", "half_high",
                    "ell_return"))
    half = table.half if isinstance(table.half, bool) else notebook.read(("own_unit", "half"), table.half)
    if table.key is None or table.kind is None or length is None or height is None or thickness is None or joint is None:
        return None
    if len(notebook.wrongs) > known:
        return None
    try:
        return own_unit(
            table.key, measure=notebook.measure, kind=table.kind, length=length, height=height, thickness=thickness,
            joint=joint, tightest_joint=tightest, widest_joint=widest,
            gauge=None if gauge is None else (1 if table.gauge_courses is None else table.gauge_courses, gauge),
            half=True if half is None else half, three_quarter=three_quarter, quarter=quarter, half_high=half_high,
            shapes=None if table.shapes is None else tuple(table.shapes), leads=table.leads, solid=table.solid,
            name=table.name, ell_return=ell_return)
    except OwnUnitError as error:
        for field, text in error.mistakes:
            notebook.note(("own_unit", field), text)
        return None


def _check_own(table: OwnUnitTable, notebook: Notebook) -> None:
    if table.key is not None and table.key in units():
        notebook.note(("own_unit", "key"), f"{print_found(table.key)} is a unit of the catalogue; write another key")
    for number, shape in enumerate(table.shapes or ()):
        if shape not in SHAPES:
            notebook.note(("own_unit", "shapes", number), f"{print_found(shape)} is not a shape; allowed: "
                          f"{print_choices(SHAPES)}")
    if table.gauge is None and table.gauge_courses is not None:
        notebook.note(("own_unit", "gauge_courses"), 'without a gauge; write gauge too, the height of so many courses')
    elif table.gauge_courses is not None and table.gauge_courses < 1:
        notebook.note(("own_unit", "gauge_courses"), f"{print_found(table.gauge_courses)} courses have no height; "
                      "write at least 1")


def _read_measured(table: OwnUnitTable, size: str, notebook: Notebook) -> Measured | None:
    value: object = getattr(table, size)
    if not isinstance(value, list):
        return notebook.read(("own_unit", size), value)
    if len(value) > _MOST_MEASURED:
        notebook.note(("own_unit", size), f"more than {_MOST_MEASURED:,} measurements; write at most {_MOST_MEASURED:,}")
        return None
    read = [notebook.read(("own_unit", size), one) for one in value]
    sound = tuple(ticks for ticks in read if ticks is not None)
    if not value:
        notebook.note(("own_unit", size), "no measurement; measure at least one unit, better ten")
    return sound if value and len(sound) == len(value) else None
