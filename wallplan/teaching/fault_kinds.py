"""Five ways to spoil a wall, each as edits of a layout: where each could be seeded, and the wall that comes of it.

Candidates are found by arithmetic; whether one is really found, and nothing besides it, the rules say.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Literal, NamedTuple

from wallplan.catalogue.unit import PieceName
from wallplan.findings import RuleName
from wallplan.layout.model import Course, Piece, WallLayout
from wallplan.layout.stock import stock_lengths
from wallplan.plan.job import Masonry
from wallplan.teaching.header_faults import (
    Spoiled,
    displace_closers,
    lay_other_courses,
    leave_out_closers,
    turn_bricks,
)
from wallplan.teaching.runs import SAME, Run, WallRuns, is_layered

FaultKind = Literal[
    "course missing the head", "sliver", "wandering head joint", "short lap", "straight joint",
    "course out of turn", "closer out of place", "brick out of turn",
]

KINDS: tuple[FaultKind, ...] = ("course missing the head", "sliver", "wandering head joint", "short lap", "straight joint")
"""In the order in which they are seeded: what has fewest places first."""

HEADER_KINDS: tuple[FaultKind, ...] = (
    "course missing the head", "course out of turn", "straight joint", "closer out of place", "brick out of turn")
"""Those of walls one brick thick, in the same order."""

BROKEN: dict[FaultKind, RuleName] = {
    "course missing the head": "coursing", "sliver": "least piece", "wandering head joint": "plumb", "short lap": "lap",
    "straight joint": "lap", "course out of turn": "headers", "closer out of place": "headers", "brick out of turn": "plumb",
}
"""The rule that each must break."""


class Edit(NamedTuple):
    """A spoiled wall: which kind, the courses in which the rules may find it, where (ticks), and the wall with it.

    ``reach`` is how far from ``at`` a finding of it may stand; None for all along the course.
    """

    kind: FaultKind
    courses: tuple[int, ...]
    at: int
    reach: int | None
    wall: WallLayout


def list_kinds(masonry: Masonry) -> tuple[FaultKind, ...]:
    """The five kinds that walls of a masonry are spoiled with, in the order of seeding."""
    return HEADER_KINDS if masonry.one_brick else KINDS


def find_edits(kind: FaultKind, runs: WallRuns) -> Iterator[Edit]:
    """Where a kind of fault could be seeded in a wall, from the foot up and from left to right; none where nowhere."""
    if runs.job.masonry.one_brick and kind != "course missing the head":
        yield from (Edit(kind, (one.course, one.course + 1), one.at, one.reach, one.wall) for one in _spoil(kind, runs))
        return
    match kind:
        case "course missing the head":
            yield from _miss_heads(runs)
        case "sliver":
            yield from _lay_slivers(runs)
        case "wandering head joint":
            yield from _move_joints(runs)
        case "short lap":
            least = runs.job.masonry.least_lap
            yield from _split_units(runs, kind, (least // 2, -(least // 2)))
        case "straight joint":
            yield from _split_units(runs, kind, (0,))


def _spoil(kind: FaultKind, runs: WallRuns) -> Iterator[Spoiled]:
    match kind:
        case "course out of turn":
            yield from lay_other_courses(runs)
        case "straight joint":
            yield from leave_out_closers(runs)
        case "closer out of place":
            yield from displace_closers(runs)
        case _:
            yield from turn_bricks(runs)


def _plain_courses(runs: WallRuns) -> Iterator[Course]:
    """Courses that are laid in one layer and have one over them laid so too."""
    for course, above in zip(runs.wall.courses, runs.wall.courses[1:], strict=False):
        if not is_layered(course) and not is_layered(above):
            yield course


def _swap(wall: WallLayout, number: int, old: tuple[Piece, ...], new: tuple[Piece, ...]) -> WallLayout:
    """The wall with some pieces of a course in place of others."""
    course = wall.courses[number - 1]
    kept = [piece for piece in course.pieces if piece not in old]
    pieces = tuple(sorted((*kept, *new), key=lambda piece: (piece.bottom, piece.left)))
    courses = list(wall.courses)
    courses[number - 1] = replace(course, pieces=pieces)
    return replace(wall, courses=tuple(courses))


def _cut(piece: Piece, left: int, right: int, masonry: Masonry) -> Piece:
    """A piece from one side to another, by its stock name or as a cut without a letter."""
    name: PieceName = stock_lengths(masonry).get(right - left, "cut")
    return piece._replace(left=left, length=right - left, piece=name, mark=None)


def _behind(piece: Piece) -> Piece:
    """A piece as one that shows no plain end."""
    return piece._replace(shape="stretcher") if piece.shape == "corner" else piece


def _joint_of(run: Run, masonry: Masonry) -> int:
    return run.joints[0] if run.joints else masonry.joint


def _is_clear(runs: WallRuns, number: int, at: int) -> bool:
    """Whether a joint at a place has the least lap over and under it."""
    least = runs.job.masonry.least_lap
    near = (runs.nearest(number - 1, at), runs.nearest(number + 1, at))
    return all(middle is None or abs(middle - at) >= least for middle in near)


def _split_units(runs: WallRuns, kind: FaultKind, offs: tuple[int, ...]) -> Iterator[Edit]:
    """A full unit laid as two pieces whose joint stands in line with one below, or too near it."""
    masonry = runs.job.masonry
    for course in _plain_courses(runs):
        for run in runs.runs[course.number - 1] if course.number > 1 else ():
            joint = _joint_of(run, masonry)
            for piece in run.pieces[1:-1]:
                below = runs.nearest(course.number - 1, (piece.left + piece.right) // 2)
                for at in () if below is None or piece.piece != "full" or piece.shape == "precast" else offs:
                    assert below is not None
                    wall = _split(runs, course.number, piece, below + at, joint)
                    if wall is not None:
                        yield Edit(kind, (course.number, course.number + 1), below + at, masonry.module, wall)


def _split(runs: WallRuns, number: int, piece: Piece, at: int, joint: int) -> WallLayout | None:
    """A piece in two with a joint in the middle of ``at``; None where either would be under the least piece."""
    masonry = runs.job.masonry
    left, right = at - joint // 2, at - joint // 2 + joint
    if min(left - piece.left, piece.right - right) + masonry.joint < masonry.least_piece:
        return None
    parts = (_cut(piece, piece.left, left, masonry), _cut(piece, right, piece.right, masonry))
    return _swap(runs.wall, number, (piece,), parts)


def _lay_slivers(runs: WallRuns) -> Iterator[Edit]:
    """A full unit at a free end or a jamb laid as a sliver and the rest."""
    masonry = runs.job.masonry
    for course in _plain_courses(runs):
        for run in runs.runs[course.number - 1]:
            joint = _joint_of(run, masonry)
            for piece, end, sign in ((run.pieces[0], run.start, 1), (run.pieces[-1], run.end, -1)):
                short = masonry.least_piece * 5 // 8 - masonry.joint
                if piece.piece != "full" or end.kind not in ("end", "jamb") or short <= 0:
                    continue
                left = piece.left + short if sign > 0 else piece.right - short - joint
                if _is_clear(runs, course.number, left + joint // 2):
                    parts = (_cut(piece, piece.left, left, masonry), _cut(piece, left + joint, piece.right, masonry))
                    parts = (parts[0], _behind(parts[1])) if sign > 0 else (_behind(parts[0]), parts[1])
                    yield Edit("sliver", (course.number,), left, masonry.module // 2,
                               _swap(runs.wall, course.number, (piece,), parts))


def _move_joints(runs: WallRuns) -> Iterator[Edit]:
    """The joint between two pieces of a run moved, both still whole enough and the lap kept."""
    masonry = runs.job.masonry
    for course in _plain_courses(runs):
        for run in runs.runs[course.number - 1]:
            for one, other in zip(run.pieces, run.pieces[1:], strict=False):
                for off in (masonry.module * 3 // 16, -masonry.module * 3 // 16, masonry.module // 8, -masonry.module // 8):
                    if "precast" not in (one.shape, other.shape) and _fits(runs, course.number, (one, other), off):
                        parts = (_cut(one, one.left, one.right + off, masonry),
                                 _cut(other, other.left + off, other.right, masonry))
                        yield Edit("wandering head joint", (course.number,), one.right + off, masonry.module // 2,
                                   _swap(runs.wall, course.number, (one, other), parts))


def _fits(runs: WallRuns, number: int, pair: tuple[Piece, Piece], off: int) -> bool:
    masonry = runs.job.masonry
    lengths = pair[0].length + off, pair[1].length - off
    middle = (pair[0].right + pair[1].left) // 2 + off
    return (max(lengths) <= masonry.unit.length and min(lengths) + masonry.joint >= masonry.least_piece
            and _is_clear(runs, number, middle))


def _miss_heads(runs: WallRuns) -> Iterator[Edit]:
    """The course that carries the lintel, or the one that ends at the head, raised by part of a bed."""
    tops = {course.top: course.number for course in runs.wall.courses}
    plain = {course.number for course in _plain_courses(runs)}
    for opening in runs.wall.wall.openings:
        under = tops.get(opening.top)
        if under is None or opening.lintel == "none":
            continue
        for number in (under + 1, under):
            for part in (2, 3):
                if number in plain and runs.wall.bed > 2 * SAME:
                    rise = runs.wall.bed * (part - 1) // part if part > 2 else runs.wall.bed // part
                    yield Edit("course missing the head", (number, number + 1), opening.left, None,
                               _raise(runs.wall, number, rise))


def _raise(wall: WallLayout, number: int, rise: int) -> WallLayout:
    """A course laid on a bed thicker by ``rise``; the one over it stays, on a bed thinner by as much."""
    course, above = wall.courses[number - 1 : number + 1]
    pieces = tuple(piece._replace(bottom=piece.bottom + rise) for piece in course.pieces)
    courses = list(wall.courses)
    backing = tuple(piece._replace(bottom=piece.bottom + rise) for piece in course.backing)
    courses[number - 1] = replace(course, top=course.top + rise, pieces=pieces, backing=backing)
    courses[number] = replace(above, bottom=above.bottom + rise)
    return replace(wall, courses=tuple(courses))
