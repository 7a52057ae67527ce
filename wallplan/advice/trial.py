"""Trials: walls laid on trial, each once, and whether a moved wall may stand in a plan at all."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from wallplan.advice.figures import Figures, take_figures
from wallplan.layout.build import lay
from wallplan.plan.check_openings import check_openings
from wallplan.plan.check_walls import check_wall
from wallplan.plan.height import count_courses, least_height
from wallplan.plan.job import Job, Wall
from wallplan.plan.notebook import Notebook
from wallplan.plan.schema import WallTable, read_table
from wallplan.plan.wall_table import ReadWall

MOST_TRIALS = 24
"""Walls laid in one search, where no more are asked for."""


class Trials:
    """Lays walls of one job on trial and keeps their figures. ``told`` is called with the number of walls laid so far.

    ``most`` walls are laid in one search, None for as many as it takes.
    """

    def __init__(self, job: Job, told: Callable[[int], None] = lambda laid: None, most: int | None = MOST_TRIALS) -> None:
        self.job, self.most = job, most
        self._told = told
        self._known: dict[Wall, Figures] = {}

    @property
    def laid(self) -> int:
        """How many walls were laid."""
        return len(self._known)

    def lay(self, wall: Wall) -> Figures:
        """The figures of a wall in this job's masonry."""
        if wall not in self._known:
            (laid,) = lay(replace(self.job, walls=(wall,))).walls
            self._known[wall] = take_figures(laid, self.job)
            self._told(len(self._known))
        return self._known[wall]


def may_stand(wall: Wall, job: Job) -> bool:
    """Whether a plan with this wall would be read without a mistake in it."""
    notebook = Notebook(job.measure)
    path = ("wall", 0)
    if wall.height < least_height(job.masonry.unit) or any(opening.top <= opening.bottom for opening in wall.openings):
        return False
    read = ReadWall(
        path=path, table=read_table(WallTable, {}), length=wall.length, height=wall.height,
        courses=count_courses(wall.height, job.masonry),
        control_joints=tuple(((*path, "control_joints", n), centre) for n, centre in enumerate(wall.control_joints)),
        bond_beams=wall.bond_beams,
        openings=tuple(((*path, "opening", n), opening) for n, opening in enumerate(wall.openings)),
    )
    check_openings(read, job.masonry, notebook)
    check_wall(read, job.masonry, notebook)
    return not notebook.wrongs and max(wall.bond_beams, default=0) <= (read.courses or 0)
