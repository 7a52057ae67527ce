"""Grout: channels of bond beams and lintel units, and the cells that the plan asks for, from the unit's real net volume."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from wallplan.catalogue.unit import Unit
from wallplan.layout.model import Layout
from wallplan.lengths import to_mm
from wallplan.lists.order.cells import CHANNELS, find_stretches
from wallplan.lists.order.counted import counted_pieces
from wallplan.lists.order.figures import LITRES_PER_CUBIC_FOOT, Scale, scale_of, settle, settle_up, show
from wallplan.lists.order.line import Line

CELLS_PER_UNIT = 2
"""Cells of a hollow block (from memory: the two-cell block)."""


def measure_void(unit: Unit, scale: Scale, given: Fraction | None = None) -> Fraction | None:
    """What a unit's cells hold, in the scale's volume: as given, or gross less net.

    None for a solid unit, and where nothing is given and the net volume is not known.
    """
    if unit.solid or given is not None:
        return None if unit.solid else given
    if unit.net_litres is None:
        return None
    gross = Fraction(str(to_mm(unit.length))) * Fraction(str(to_mm(unit.height))) * Fraction(str(to_mm(unit.thickness)))
    litres = gross / 1_000_000 - Fraction(str(unit.net_litres))
    return settle(litres / LITRES_PER_CUBIC_FOOT, 3) if scale.volume == "cu ft" else settle(litres, 2)


def order_grout(layout: Layout) -> Iterator[Line]:
    """A line each for channels and cells; none where there are none, or where the unit's void is not known."""
    job, scale = layout.job, scale_of(layout.job.measure)
    void = measure_void(job.masonry.unit, scale, job.order.cell_volume)
    if void is None:
        return
    channels = Counter[int]()
    for piece in counted_pieces(layout):
        if piece.shape in CHANNELS:
            channels[piece.height] += piece.length
    if channels:
        units, told = _count_channels(channels, job.masonry.unit, scale)
        yield _order(layout, "grout, bond beams and lintel units", void, units, f"bond-beam and lintel units {told}")
    cells = sum(stretch.cells for wall in layout.walls for stretch in find_stretches(wall, job))
    if cells:
        rise, high = scale.size(job.masonry.unit.gauge), scale.size(job.masonry.unit.height)
        units = settle(Fraction(cells, CELLS_PER_UNIT) * rise / high, 2)
        yield _order(layout, "grout, cells", void, units,
                     f"courses of cells outside channels, with their beds: {cells} / {CELLS_PER_UNIT} x {show(rise)} / "
                     f"{show(high)} = {show(units)} units")


def _count_channels(channels: Counter[int], unit: Unit, scale: Scale) -> tuple[Fraction, str]:
    """Full units that channels come to, a lower piece counted by its height, and the sum in words."""
    terms, units = list[str](), Fraction(0)
    full_length, full_height = scale.size(unit.length), scale.size(unit.height)
    for height, ticks in sorted(channels.items(), reverse=True):
        run, high = scale.size(ticks), scale.size(height)
        lower = "" if height == unit.height else f" x {show(high)} / {show(full_height)}"
        units += run / full_length * (1 if height == unit.height else high / full_height)
        terms.append(f"{show(run)} / {show(full_length)}{lower}")
    settled = settle(units, 2)
    return settled, f"({scale.length}): {' + '.join(terms)} = {show(settled)} full units"


def _order(layout: Layout, item: str, void: Fraction, units: Fraction, counted: str) -> Line:
    scale, waste = scale_of(layout.job.measure), layout.job.order.grout_waste
    net = settle(units * void, 2)
    exact = settle(net * waste / 100, 4)
    spare = settle_up(exact, 2)
    source = "gross less net volume of the full unit" if layout.job.order.cell_volume is None else "the plan's own figure"
    why = (f"{counted}; a unit's cells hold {show(void)} {scale.volume}: {source}; "
           f"{show(units)} x {show(void)} = {show(net)} {scale.volume}; waste {show(net)} x {show(waste)} / 100 = "
           f"{show(exact)}, up to {show(spare)}; {show(net)} + {show(spare)} = {show(net + spare)}")
    return Line("grout", item, scale.volume, net, spare, why, layout.job.order.of(item).price)


def tell_unknown(layout: Layout) -> str | None:
    """What to say where grout is wanted and the unit's net volume is not known; None where all is counted."""
    job = layout.job
    wanted = any(piece.shape in CHANNELS for piece in counted_pieces(layout))
    wanted = wanted or job.order.steel.cell_spacing is not None or job.order.steel.jamb_cells
    if not wanted or job.masonry.unit.solid or measure_void(job.masonry.unit, scale_of(job.measure), job.order.cell_volume):
        return None
    feet = job.measure == "feet"
    return (f"Grout is NOT counted: what the cells of {job.masonry.unit.name} hold is not known. Ask the plant, or fill one "
            f"with dry sand and measure it, and write in the plan: [order] cell_volume = {'0.25' if feet else '7'}, the "
            f"{'cubic feet' if feet else 'litres'} of one full unit.")
