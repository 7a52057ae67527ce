"""``[[wall.opening]]`` read into ticks."""

from __future__ import annotations

from typing import TYPE_CHECKING

from wallplan.catalogue.unit import Unit
from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure
from wallplan.plan.job import LintelKind, Masonry, Opening
from wallplan.plan.notebook import KeyPath, Notebook

if TYPE_CHECKING:
    from wallplan.plan.schema import OpeningTable


def usual_bearing(unit: Unit, measure: Measure) -> int:
    """Bearing each side where the plan gives none, in ticks: 8 in or 200 mm for block, 4 in or 100 mm for brick.

    Common practice, no source; NCMA TEK 17-1B (2001) has 4 in. as the typical minimum in masonry.
    """
    step = 4 * TICKS_PER_INCH if measure == "feet" else 100 * TICKS_PER_MM
    return 2 * step if unit.kind == "block" else step


def usual_lintel(unit: Unit) -> LintelKind:
    """Lintel units where the unit comes in them, else precast for block and steel for brick (common practice)."""
    if "lintel" in unit.shapes:
        return "block"
    return "precast" if unit.kind == "block" else "steel"


def read_opening(
    table: OpeningTable, path: KeyPath, masonry: Masonry | None, joint: int, notebook: Notebook, shift: int = 0,
) -> Opening | None:
    """One opening, or None where a size is missing or wrong.

    ``joint`` is what a nominal plan puts onto it, else 0; ``shift`` is how far its wall's first module line stands
    inside of an inside corner on the left.
    """
    from_left = notebook.read((*path, "from_left"), table.from_left)
    width = notebook.read((*path, "width"), table.width, least=1)
    sill = notebook.read((*path, "sill"), 0 if table.sill is None else table.sill)
    height = notebook.read((*path, "height"), table.height, least=1)
    lintel, bearing = _read_lintel(table, path, masonry, notebook)
    if from_left is None or width is None or sill is None or height is None:
        return None
    return Opening(
        name=f"opening {int(path[-1]) + 1}" if table.name is None else table.name,
        left=from_left - joint + shift, right=from_left + width + shift, bottom=sill, top=sill + height,
        lintel=lintel, bearing=bearing,
    )


def _read_lintel(
    table: OpeningTable, path: KeyPath, masonry: Masonry | None, notebook: Notebook,
) -> tuple[LintelKind, int]:
    """Kind and bearing; a lintel whose bearing is wrong is taken to have none, so that nothing else is noted for it."""
    given = notebook.read((*path, "bearing"), table.bearing, least=1)
    if masonry is None:
        return table.lintel or "none", given or 0
    if table.lintel == "block" and "lintel" not in masonry.unit.shapes:
        notebook.note((*path, "lintel"), f'"block" needs lintel units, and {masonry.unit.key} does not come in them; '
                      'write "precast", "steel" or "none"')
    lintel = table.lintel or usual_lintel(masonry.unit)
    usual = usual_bearing(masonry.unit, notebook.measure) if table.bearing is None else 0
    return lintel, 0 if lintel == "none" else given or usual
