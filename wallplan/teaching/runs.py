"""What a teacher points at in a course: its runs, what each ends at, and its head joints."""

from __future__ import annotations

from bisect import bisect_left
from itertools import pairwise
from typing import Literal, NamedTuple

from wallplan.layout.model import Course, Layout, Piece, WallLayout
from wallplan.lengths import print_length
from wallplan.lists.marks import find_head_joints
from wallplan.plan.job import Job

SAME = 2
"""Ticks by which figures that are equal on paper may differ after rounding."""

EndKind = Literal["end", "corner", "join", "jamb", "control joint", "slope", "step", "taller unit"]


class End(NamedTuple):
    """What a run ends at: its kind, the name of the opening or the other wall ("" for none), and both in words."""

    kind: EndKind
    name: str
    words: str


class Run(NamedTuple):
    """Pieces of one course side by side, head joints between them, and what stands at either end. Ticks."""

    pieces: tuple[Piece, ...]
    start: End
    end: End

    @property
    def left(self) -> int:
        """Left side of its first piece."""
        return self.pieces[0].left

    @property
    def right(self) -> int:
        """Right side of its last piece."""
        return self.pieces[-1].right

    @property
    def joints(self) -> tuple[int, ...]:
        """Widths of its head joints, left to right; () for one piece."""
        return tuple(two.left - one.right for one, two in pairwise(self.pieces))


class WallRuns(NamedTuple):
    """One wall of a layout as it is explained. ``runs`` and ``middles`` (of head joints) go course by course."""

    layout: Layout
    wall: WallLayout
    runs: tuple[tuple[Run, ...], ...]
    middles: tuple[tuple[int, ...], ...]

    @property
    def job(self) -> Job:
        """The job that the wall belongs to."""
        return self.layout.job

    def course(self, number: int) -> Course | None:
        """The course of a number; None above the top and below the footing."""
        return self.wall.courses[number - 1] if 1 <= number <= len(self.wall.courses) else None

    def run_of(self, number: int, piece: Piece) -> Run:
        """The run that a piece of a course stands in. ValueError for a piece that the course has not."""
        for run in self.runs[number - 1]:
            if piece in run.pieces:
                return run
        raise ValueError(f"course {number} has no piece at {piece.left}")

    def nearest(self, number: int, at: int) -> int | None:
        """The middle of the head joint in a course that is nearest to ``at``; None where the course has none."""
        course = self.course(number)
        middles = self.middles[number - 1] if course is not None else ()
        after = bisect_left(middles, at)
        return min(middles[max(0, after - 1) : after + 1], key=lambda middle: abs(middle - at), default=None)


def read_runs(layout: Layout, index: int) -> WallRuns:
    """The runs of a layout's wall, by its place in the plan. Raises IndexError for a place that it has not."""
    wall = layout.walls[index]
    return WallRuns(layout, wall, tuple(find_runs(wall, layout.job, course) for course in wall.courses),
                    tuple(_find_middles(wall, layout.job, course) for course in wall.courses))


def is_layered(course: Course) -> bool:
    """Whether a course is laid in two layers, beside a sill or head off the coursing."""
    return len({(piece.bottom, piece.height) for piece in course.pieces if piece.shape != "precast"}) > 1


def find_runs(wall: WallLayout, job: Job, course: Course) -> tuple[Run, ...]:
    """The runs of a course, lower layer first and left to right; other walls' units are in none. () for no pieces."""
    widest = _widest(wall, job)
    own = sorted((piece for piece in course.pieces if piece.shape != "return"), key=lambda piece: (piece.bottom, piece.left))
    groups: list[list[Piece]] = []
    for piece in own:
        before = groups[-1][-1] if groups else None
        if before is None or before.bottom != piece.bottom or not _is_joint(wall, before.right, piece.left, widest):
            groups.append([])
        groups[-1].append(piece)
    return tuple(_make_run(wall, job, course, tuple(group)) for group in groups)


def _widest(wall: WallLayout, job: Job) -> int:
    return max(job.masonry.joint, *wall.joints) + SAME


def _is_joint(wall: WallLayout, near: int, far: int, widest: int) -> bool:
    """Whether the gap between two sides is a head joint and not a control joint or an opening."""
    return 0 <= far - near <= widest and not any(near <= place <= far for place in wall.wall.control_joints)


def _make_run(wall: WallLayout, job: Job, course: Course, pieces: tuple[Piece, ...]) -> Run:
    return Run(pieces, _name_end(wall, job, course, pieces[0], right=False),
               _name_end(wall, job, course, pieces[-1], right=True))


def _name_end(wall: WallLayout, job: Job, course: Course, piece: Piece, *, right: bool) -> End:
    side, at = ("right", piece.right) if right else ("left", piece.left)
    for opening in wall.wall.openings:
        if at == (opening.left if right else opening.right) and opening.bottom < piece.top and opening.top > piece.bottom:
            return End("jamb", opening.name, f"the {'left' if right else 'right'} jamb of {opening.name}")
    for place in wall.wall.control_joints:
        if abs(at - place) <= job.masonry.joint:
            return End("control joint", "", f"the control joint at {print_length(place, job.measure)}")
    met = _find_met(wall, job, course, at, right)
    if met is not None:
        return met
    if (at >= wall.wall.length) if right else (at <= 0):
        return End("end", "", f"the {side} end")
    return _name_outline(wall, job, piece, at, right)


def _name_outline(wall: WallLayout, job: Job, piece: Piece, at: int, right: bool) -> End:
    """The slope or the step that a run ends at, in a wall that is no rectangle; else a taller unit."""
    if piece.rake is not None and piece.hand in ("right" if right else "left", "ridge"):
        return End("slope", "", "the slope")
    outline = wall.wall.outline
    for path in (outline.footing, outline.top) if outline is not None else ():
        for (place, before), (other, after) in pairwise(path):
            if place == other == at and min(before, after) < piece.top and max(before, after) > piece.bottom:
                return End("step", "", f"the step at {print_length(at, job.measure)}")
    return End("taller unit", "", "a taller unit")


def _find_met(wall: WallLayout, job: Job, course: Course, at: int, right: bool) -> End | None:
    """The other wall that a run ends at: at a corner, or where one wall meets another between its ends; None for none."""
    reach = job.masonry.unit.thickness + job.masonry.joint
    for abutment in wall.wall.abuts:
        edge = wall.wall.length if right else 0
        if abutment.end == ("right" if right else "left") and abs(at - edge) <= reach:
            return End("join", abutment.meets, f"the join with {abutment.meets}")
    for other in course.pieces:
        if other.shape == "return" and _touches(other, at, right, _widest(wall, job)):
            kind: EndKind = "corner" if is_at_end(wall, other) else "join"
            return End(kind, other.of, f"the {kind} with {other.of}")
    return None


def is_at_end(wall: WallLayout, piece: Piece) -> bool:
    """Whether a piece of another wall stands at an end of this one, as at a corner, and not between them."""
    return piece.left <= 0 or piece.right >= wall.wall.length


def _touches(other: Piece, at: int, right: bool, widest: int) -> bool:
    return 0 <= (other.left - at if right else at - other.right) <= widest


def _find_middles(wall: WallLayout, job: Job, course: Course) -> tuple[int, ...]:
    widest = _widest(wall, job)
    return tuple(sorted({(near + far) // 2 for near, far in find_head_joints(course, widest)
                         if _is_joint(wall, near, far, widest)}))
