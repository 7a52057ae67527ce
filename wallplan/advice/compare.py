"""Alternatives side by side: the same walls in other bonds, other units of the same thickness, other ranges of joints."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import get_args

from wallplan.advice.figures import Figures, add_figures, take_figures
from wallplan.advice.trial import may_stand
from wallplan.catalogue.load import units
from wallplan.catalogue.unit import Unit
from wallplan.layout.build import lay
from wallplan.layout.model import Layout
from wallplan.lengths import print_size
from wallplan.plan.job import ONE_BRICK, Bond, Job, Masonry, Wall
from wallplan.plan.masonry_table import read_masonry
from wallplan.plan.notebook import Notebook
from wallplan.plan.opening_table import usual_lintel
from wallplan.plan.schema import MasonryTable, read_table


@dataclass(frozen=True)
class Alternative:
    """One way to build the same walls: what is other, its figures and its layout, None where it cannot be laid so."""

    name: str
    figures: Figures | None
    layout: Layout | None = None

    @property
    def wandering(self) -> int | None:
        """What would be cut at least, were each course laid on its own and perpends let wander: a bound, run by run."""
        return None if self.layout is None else sum(wall.cutting_at_least for wall in self.layout.walls)


def take_job_figures(job: Job) -> Figures:
    """The figures of all walls of a job together."""
    return add_figures(take_figures(wall, job) for wall in lay(job).walls)


def compare(job: Job, told: Callable[[int], None] = lambda laid: None) -> tuple[Alternative, ...]:
    """The plan as it is first, then other bonds, other units, joints that stay and joints that move; each changed alone."""
    found = [_lay_so("as planned", job)]
    for name, other in _others(job):
        stands = all(may_stand(wall, other) for wall in other.walls)
        found.append(_lay_so(name, other) if stands else Alternative(name, None))
        told(len(found))
    return tuple(found)


def _lay_so(name: str, job: Job) -> Alternative:
    layout = lay(job)
    return Alternative(name, add_figures(take_figures(wall, job) for wall in layout.walls), layout)


def _others(job: Job) -> Iterator[tuple[str, Job]]:
    masonry = job.masonry
    one_brick = masonry.bond in ONE_BRICK
    for bond in get_args(Bond):
        # Bonds with headers make a wall of one brick: of another thickness, it would be another wall.
        if bond != masonry.bond and (bond in ONE_BRICK) == one_brick:
            yield f"{bond} bond", replace(job, masonry=_usual_masonry(masonry.unit, bond, job))
    for unit in units().values():
        if unit.thickness == masonry.unit.thickness and unit.key != masonry.unit.key and unit.kind == masonry.unit.kind:
            yield unit.name, _lay_in(unit, job)
    yield from _joint_ranges(job)


def _joint_ranges(job: Job) -> Iterator[tuple[str, Job]]:
    masonry, unit = job.masonry, job.masonry.unit
    ranges = {(masonry.joint, masonry.joint): "joints all",
              (min(unit.tightest_joint, masonry.joint), max(unit.widest_joint, masonry.joint)): "joints"}
    for (tightest, widest), name in ranges.items():
        if (tightest, widest) != (masonry.tightest_joint, masonry.widest_joint):
            low, high = print_size(tightest, job.measure), print_size(widest, job.measure)
            told = low if low == high else f"{low} to {high}"
            yield f"{name} {told}", replace(job, masonry=replace(masonry, tightest_joint=tightest, widest_joint=widest))


def _usual_masonry(unit: Unit, bond: Bond, job: Job) -> Masonry:
    """Masonry of a unit with all that hangs on it as usual."""
    table = read_table(MasonryTable, {"unit": unit.key, "bond": bond})
    usual = read_masonry(table, unit, Notebook(job.measure))
    if unit.key != job.masonry.unit.key:
        return usual
    planned = job.masonry
    return replace(planned, bond=bond, least_lap=min(planned.least_lap, usual.least_lap))


def _lay_in(unit: Unit, job: Job) -> Job:
    return replace(job, masonry=_usual_masonry(unit, job.masonry.bond, job),
                   walls=tuple(_fit_out(wall, unit) for wall in job.walls))


def _fit_out(wall: Wall, unit: Unit) -> Wall:
    """The wall with lintels that the unit comes in."""
    return replace(wall, openings=tuple(
        replace(opening, lintel=usual_lintel(unit)) if opening.lintel == "block" and "lintel" not in unit.shapes else opening
        for opening in wall.openings))
