"""Trials: walls laid on trial, each once, and whether a moved wall may stand in a plan at all."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from wallplan.advice.figures import Figures, take_figures
from wallplan.advice.spans import count_rips, merging_courses
from wallplan.bond.zipper import least_cutting
from wallplan.layout.build import lay_wall
from wallplan.layout.corners import WallEnds, free_ends
from wallplan.layout.reach import reach_openings
from wallplan.layout.spots import make_namer
from wallplan.layout.tracks import pose_problem, runs_of_rows
from wallplan.plan.check_openings import check_openings
from wallplan.plan.check_walls import check_wall
from wallplan.plan.coursing import set_coursing
from wallplan.plan.height import count_courses, least_height
from wallplan.plan.job import Job, Masonry, Wall
from wallplan.plan.notebook import Notebook
from wallplan.plan.schema import WallTable, read_table
from wallplan.plan.wall_table import ReadWall

MOST_TRIALS = 24
"""Walls laid in one search, where no more are asked for."""


class Trials:
    """Lays walls of one job on trial and keeps their figures. ``told`` is called with the number of walls laid so far.

    ``most`` walls are laid in one search, None for as many as it takes; a wall that is only weighed counts a quarter.
    ``ends`` are how the walls end, where they are variants of one that meets others; left out, both ends are free.
    """

    def __init__(self, job: Job, told: Callable[[int], None] = lambda laid: None, most: int | None = MOST_TRIALS,
                 ends: WallEnds | None = None) -> None:
        self.job, self.most, self.ends = job, most, ends
        self._told = told
        self._known: dict[Wall, Figures] = {}
        self._weighed: dict[Wall, int] = {}

    @property
    def laid(self) -> int:
        """How many walls were laid."""
        return len(self._known)

    @property
    def spent(self) -> int:
        """Quarters of walls laid: what was done so far."""
        return 4 * len(self._known) + len(self._weighed)

    def out_of(self, begun: int, part: int = 1) -> bool:
        """Whether a search that began when so much was spent has had what it may have, or the half of it (``part`` 2)."""
        return self.most is not None and self.spent - begun >= 4 * self.most // part

    def weigh(self, wall: Wall) -> int:
        """The least cutting of any layout of a wall that keeps the rules, found without laying it."""
        if wall not in self._weighed:
            self._weighed[wall] = least_cutting_of(wall, self.job.masonry, self.ends_of(wall))
        return self._weighed[wall]

    def ends_of(self, wall: Wall) -> WallEnds:
        """How a wall ends: as those are that were given, the right end where the wall now has it."""
        if self.ends is None:
            return free_ends(wall)
        right = self.ends.right
        moved = 0 if right.returns is not None else wall.length - right.at[0]
        return self.ends._replace(right=right._replace(at=(right.at[0] + moved, right.at[1] + moved)))

    def lay(self, wall: Wall) -> Figures:
        """The figures of a wall in this job's masonry."""
        if wall not in self._known:
            self._known[wall] = take_figures(lay_wall(wall, self.job, self.ends_of(wall)), self.job)
            self._told(len(self._known))
        return self._known[wall]


def least_cutting_of(wall: Wall, masonry: Masonry, ends: WallEnds | None = None) -> int:
    """The least cutting of a wall by what its odd and its even courses cut alone, and the rips it is certain to have.

    Of courses that meet a sill or a head in part, carry a precast lintel or are ripped, nothing is counted but those rips.
    0 for a wall whose footing or top is stepped or raked.
    """
    if wall.outline is not None:
        return 0
    rows = set_coursing(wall, masonry)
    reaches = reach_openings(wall, rows)
    left_out = {number for reach in reaches for number in merging_courses(reach)}
    left_out |= {row.number for row in rows if row.kind == "ripped" or row.unit_height not in make_namer(masonry).heights}
    counted = ~sum(1 << number for number in left_out)
    problem = pose_problem(wall, masonry, runs_of_rows(wall, masonry, rows, reaches, ends), ends)
    odd, even = (tuple(replace(stretch, courses=stretch.courses & counted) for stretch in track) for track in problem.tracks)
    return least_cutting(replace(problem, tracks=(odd, even))) + count_rips(wall, masonry)


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
