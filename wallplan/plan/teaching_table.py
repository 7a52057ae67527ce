"""``[teaching]``: within what a pupil's wall is marked, with every default filled in."""

from __future__ import annotations

from typing import TYPE_CHECKING

from wallplan.lengths import TICKS_PER_INCH, TICKS_PER_MM, Measure
from wallplan.plan.job import Tolerances
from wallplan.plan.notebook import Notebook

if TYPE_CHECKING:
    from wallplan.plan.schema import TeachingTable


def usual_tolerances(measure: Measure) -> Tolerances:
    """What is allowed where the plan does not say, in ticks. Common practice, no source."""
    if measure == "feet":
        eighth = TICKS_PER_INCH // 8
        return Tolerances(dimension=eighth, plumb=eighth, level=eighth, joint=TICKS_PER_INCH // 16, bond=eighth)
    three = 3 * TICKS_PER_MM
    return Tolerances(dimension=three, plumb=three, level=three, joint=2 * TICKS_PER_MM, bond=three)


def read_tolerances(table: TeachingTable | None, notebook: Notebook) -> Tolerances:
    """The tolerances of a plan. What is wrong is noted, and the usual stands in for it."""
    usual = usual_tolerances(notebook.measure)
    if table is None:
        return usual

    def read(key: str, default: int) -> int:
        given = notebook.read(("teaching", key), getattr(table, key), least=1)
        return default if given is None else given

    return Tolerances(read("dimension", usual.dimension), read("plumb", usual.plumb), read("level", usual.level),
                      read("joint", usual.joint), read("bond", usual.bond))
