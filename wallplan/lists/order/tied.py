"""What ties a wall to the one that it abuts, or keeps them apart: straps in the beds, gasket in the joint."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from wallplan.layout.model import Layout, WallLayout
from wallplan.lengths import print_size
from wallplan.lists.order.figures import scale_of, settle_up, show
from wallplan.lists.order.line import Line
from wallplan.lists.order.units import add_spare
from wallplan.plan.job import Abutment, Job

STRAPS = "straps where walls abut"
GASKET = "control-joint gasket where walls abut"


def strap_courses(wall: WallLayout, abutment: Abutment, job: Job) -> tuple[int, ...]:
    """The courses on which straps lie: the first no higher than the spacing, none on the last course; () for no straps."""
    if abutment.strap_spacing is None:
        return ()
    every = max(1, abutment.strap_spacing // job.masonry.unit.gauge)
    return tuple(course.number for course in wall.courses[:-1] if course.number % every == 0)


def order_tied(layout: Layout) -> Iterator[Line]:
    """Straps, counted, with spare; gasket in running length. None where no wall abuts another so."""
    yield from _order_straps(layout)
    yield from _order_gasket(layout)


def _order_straps(layout: Layout) -> Iterator[Line]:
    job = layout.job
    counts = [(wall.wall.name, abutment, len(strap_courses(wall, abutment, job)))
              for wall in layout.walls for abutment in wall.wall.abuts if abutment.tie == "straps"]
    if not counts:
        return
    net = sum(count for _, _, count in counts)
    told = "; ".join(f"{name} to {one.meets}: one every {print_size(one.strap_spacing or 0, job.measure)} or less, none on "
                     f"the last course, {count}" for name, one, count in counts)
    terms = " + ".join(f"{times} x {count}" for count, times in sorted(Counter(count for _, _, count in counts).items()))
    yield add_spare("other", STRAPS, "each", Fraction(net), f"{told}; ends x straps: {terms} = {net}", job)


def _order_gasket(layout: Layout) -> Iterator[Line]:
    job, scale = layout.job, scale_of(layout.job.measure)
    heights = [scale.run_of(wall.wall.height) for wall in layout.walls for abutment in wall.wall.abuts
               if abutment.tie == "control joint"]
    if not heights:
        return
    net = sum(heights, Fraction(0))
    order = settle_up(net)
    terms = " + ".join(show(height) for height in heights)
    yield Line("other", GASKET, scale.run, net, order - net,
               f"heights of the joints: {terms} = {show(net)} {scale.run}, up to {show(order)}; "
               f"{show(order)} - {show(net)} = {show(order - net)}", job.order.of(GASKET).price)
