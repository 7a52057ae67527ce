"""One piece of a course tried out: the wall as built so far, with any length laid in the place of the right one.

What a learner picks is laid like a mason would go on from it: back to the wall's own joints as soon as a piece reaches one.
The rules of ``check`` then measure that wall; what they newly find broken is what the pick did.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

from wallplan.catalogue.unit import PieceName
from wallplan.findings import Finding
from wallplan.layout.model import Course, Leaf, Piece, Shape, WallLayout
from wallplan.layout.stock import stock_lengths
from wallplan.plan.job import Job
from wallplan.rules.as_laid import ROUNDING, measure_wall
from wallplan.teaching.header_faults import back_up
from wallplan.teaching.runs import Run, WallRuns, is_layered

UNDER = 3
"""Courses under the one being laid that are measured with it: the one that it laps and two that it is plumb with."""


@dataclass(frozen=True)
class Bench:
    """A place in a run where a piece is to be picked. ``place`` counts the run's pieces from its left end."""

    runs: WallRuns
    course: int
    run: Run
    place: int

    @property
    def job(self) -> Job:
        """The job that the wall belongs to."""
        return self.runs.job

    @property
    def piece(self) -> Piece:
        """The piece that the layout has here."""
        return self.run.pieces[self.place]

    @property
    def ends_run(self) -> bool:
        """Whether the piece is the last of its run."""
        return self.place == len(self.run.pieces) - 1

    @property
    def _joint(self) -> int:
        """The head joint behind the piece, opened or closed as the run has it; behind the last the one aimed for."""
        if self.ends_run:
            return self.job.masonry.joint
        return self.run.pieces[self.place + 1].left - self.piece.right

    @cached_property
    def _own_breaks(self) -> tuple[Finding, ...]:
        return _measure(self._build(self.run.pieces), self.job)

    @cached_property
    def _own_cover(self) -> tuple[Finding, ...]:
        return _measure_cover(self._build(self.run.pieces), self.job)

    @property
    def is_broken(self) -> bool:
        """Whether the layout's own piece breaks a rule, so that there is nothing right to pick."""
        left, right = self.piece.left - ROUNDING, self.piece.right + ROUNDING
        found = (*self._own_breaks, *(self._own_cover if self.runs.wall.doubtful else ()))
        return any(finding.at is not None and left <= finding.at <= right for finding in found)

    def lay(self, length: int) -> tuple[Piece, ...]:
        """The run with a piece of another length here, and what a mason would lay behind it."""
        before, offered = self.run.pieces[:self.place], self._cut(self.piece.left, length)
        start = offered.right + self._joint
        rest = [other for other in self.run.pieces[self.place:] if other.right > start + ROUNDING]
        if not rest:
            return (*before, offered)
        next_one = self._close(start, rest)
        return (*before, offered, next_one, *(other for other in rest if other.left > next_one.right))

    def _close(self, start: int, rest: list[Piece]) -> Piece:
        """The piece that brings the run back to the wall's own joints, no sliver where a longer one does it too."""
        masonry = self.job.masonry
        ends = [other.right for other in rest if other.right - start <= masonry.unit.length + ROUNDING]
        whole = [end for end in ends if end - start + masonry.joint >= masonry.least_piece - ROUNDING]
        return self._cut(start, (whole or ends or [rest[0].right])[0] - start)

    def _cut(self, left: int, length: int) -> Piece:
        if self.job.masonry.one_brick and self.piece.leaf is not None:
            return self._cut_brick(left, length)
        stock = {one.length: one.name for one in reversed(self.job.masonry.unit.pieces)}
        near = next((one for one in stock if abs(one - length) <= ROUNDING), None)
        name = "cut" if near is None else stock[near]
        return self.piece._replace(left=left, length=length, piece=name, mark="?" if name == "cut" else None)

    def _cut_brick(self, left: int, length: int) -> Piece:
        """A brick of a wall one brick thick by what shows of it: header, closer, or one in front and one behind."""
        masonry, own = self.job.masonry, self.piece
        if abs(length - own.length) <= ROUNDING:
            return own._replace(left=left, length=length)
        names: dict[int, tuple[PieceName, Shape, Leaf]] = {
            masonry.unit.length: ("full", "stretcher", "front"), masonry.unit.thickness: ("full", "header", "through"),
            masonry.module // 4 - masonry.joint: ("closer", "closer", "through"),
            masonry.module * 3 // 4 - masonry.joint: (stock_lengths(masonry).get(
                masonry.module * 3 // 4 - masonry.joint, "cut"), "stretcher", "front")}
        near = next((one for one in names if abs(one - length) <= ROUNDING), None)
        cut: tuple[PieceName, Shape, Leaf] = ("cut", "stretcher", "front")
        name, shape, leaf = cut if near is None else names[near]
        return own._replace(left=left, length=length, piece=name, shape=shape, leaf=leaf,
                            mark="?" if name in ("cut", "closer") else None)

    def name(self, length: int) -> str:
        """The stock name of a length, or "cut"; in walls one brick thick what shows: stretcher, header or closer."""
        piece = self._cut(self.piece.left, length)
        if piece.leaf is not None and piece.piece in ("full", "closer"):
            return piece.shape
        return self._cut(self.piece.left, length).piece

    def find_breaks(self, laid: tuple[Piece, ...]) -> tuple[Finding, ...]:
        """What the rules find broken in the wall so far with the run laid like this, and not with the layout's own run.

        A run that ends where the layout's ends covers what that covers: only one that does not is measured for it.
        """
        wall = self._build(laid)
        found, before = _measure(wall, self.job), self._own_breaks
        if laid[-1].right != self.run.right:
            found, before = (*_measure_cover(wall, self.job), *found), (*self._own_cover, *before)
        known = {_key(finding) for finding in before}
        return tuple(finding for finding in found if _key(finding) not in known)

    def find_clash_above(self, laid: tuple[Piece, ...]) -> Finding | None:
        """The first lap that the run, laid like this, would spoil for the course above as the layout has it."""
        courses = self.runs.wall.courses[self.course - 1:self.course + 1]
        if len(courses) < 2 or any(is_layered(course) for course in courses):
            return None
        known = {_key(finding) for finding in self._measure_above(self.run.pieces, courses)}
        return next((finding for finding in self._measure_above(laid, courses) if _key(finding) not in known), None)

    def _measure_above(self, laid: tuple[Piece, ...], courses: tuple[Course, ...]) -> tuple[Finding, ...]:
        from wallplan.rules.lap import check_lap

        wall = replace(self.runs.wall, courses=(self._with_run(courses[0], laid), *courses[1:]))
        return tuple(finding for finding in check_lap(measure_wall(wall, self.job)) if not finding.held)

    def _build(self, laid: tuple[Piece, ...]) -> WallLayout:
        """The wall up to this course; what that breaks by being no whole wall is broken with the right piece too."""
        courses = self.runs.wall.courses[max(0, self.course - 1 - UNDER):self.course]
        return replace(self.runs.wall, courses=(*courses[:-1], self._with_run(courses[-1], laid)))

    def _with_run(self, course: Course, laid: tuple[Piece, ...]) -> Course:
        others = tuple(piece for piece in course.pieces if piece not in self.run.pieces)
        pieces = tuple(sorted((*others, *laid), key=lambda piece: piece.left))
        return back_up(course, pieces) if self.job.masonry.one_brick else replace(course, pieces=pieces)


def _measure(wall: WallLayout, job: Job) -> tuple[Finding, ...]:
    """The rules that a piece can break while a wall is built, but for its cover: what is broken, in the last course and
    under it."""
    from wallplan.rules.headers import check_headers
    from wallplan.rules.joints import check_joints
    from wallplan.rules.lap import check_lap
    from wallplan.rules.pieces import check_pieces
    from wallplan.rules.plumb import check_plumb

    laid, own = measure_wall(wall, job), measure_wall(replace(wall, courses=wall.courses[-1:]), job)
    rules = ((check_pieces, own), (check_joints, own), (check_lap, laid), (check_plumb, laid), (check_headers, laid))
    return tuple(finding for rule, measured in rules for finding in rule(measured) if not finding.held)


def _measure_cover(wall: WallLayout, job: Job) -> tuple[Finding, ...]:
    from wallplan.rules.cover import check_cover

    own = measure_wall(replace(wall, courses=wall.courses[-1:]), job)
    return tuple(finding for finding in check_cover(own) if not finding.held)


def _key(finding: Finding) -> tuple[object, ...]:
    return finding.rule, finding.course, finding.at, finding.figure.partition(" (so in ")[0]
