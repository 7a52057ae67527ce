"""``[advice]``: what may be moved, and how far, with every default filled in."""

from __future__ import annotations

from typing import TYPE_CHECKING

from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure
from wallplan.plan.found import find_nearest, print_choices, print_found
from wallplan.plan.job import Masonry, Movable
from wallplan.plan.notebook import KeyPath, Notebook

if TYPE_CHECKING:
    from wallplan.plan.schema import AdviceTable

KINDS = ("openings", "widths", "ends", "sills", "heads", "tops", "control joints")
"""What may be moved, as the plan calls it."""

USUAL_KINDS = tuple(kind for kind in KINDS if kind != "widths")
"""What may be moved where the plan does not say: a width is a door's or a frame's, and not the mason's."""

MOST_STEPS = 96
"""Steps to each side of where a thing stands; more would have a layout searched for each."""


def usual_movable(masonry: Masonry, measure: Measure) -> Movable:
    """What may be moved where the plan does not say; lengths in ticks. Common practice, no source."""
    return Movable(
        USUAL_KINDS, 12 * TICKS_PER_INCH if measure == "feet" else 300 * TICKS_PER_MM, None, masonry.unit.length,
    )


def read_movable(table: AdviceTable | None, masonry: Masonry, notebook: Notebook) -> Movable:
    """The limits of a plan. What is wrong is noted, and the usual stands in for it."""
    usual, path = usual_movable(masonry, notebook.measure), ("advice",)
    if table is None:
        return usual
    farthest = notebook.read((*path, "farthest"), table.farthest, least=1) or usual.farthest
    step = notebook.read((*path, "step"), table.step, least=1)
    least_pier = notebook.read((*path, "least_pier"), table.least_pier)
    if step is not None and farthest // step > MOST_STEPS:
        key = "step" if table.step is not None else "farthest"
        notebook.note((*path, key), f"{farthest // step} steps to each side are too many to try; write a step of at least "
                      f"{notebook.show_least(-(-farthest // MOST_STEPS))}, or a shorter farthest")
    return Movable(
        _read_kinds(table.move, (*path, "move"), notebook), farthest, step,
        usual.least_pier if least_pier is None else least_pier,
    )


def _read_kinds(given: list[str] | None, path: KeyPath, notebook: Notebook) -> tuple[str, ...]:
    for number, kind in enumerate(given or ()):
        if kind not in KINDS:
            near = find_nearest(kind, KINDS)
            hint = f'; write "{near}"' if near else ""
            notebook.note((*path, number), f"{print_found(kind)} is not known; allowed: {print_choices(KINDS)}{hint}")
    return USUAL_KINDS if given is None else tuple(kind for kind in KINDS if kind in given)
