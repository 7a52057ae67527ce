"""A good layout, and ways to break it: one piece changed, taken away or put in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from tests.jobs import broken
from wallplan.findings import Finding, RuleName
from wallplan.layout.model import Course, Layout, Piece
from wallplan.rules.check import check

Pieces = tuple[Piece, ...]


def change_course(layout: Layout, number: int, change: Callable[[Pieces], Pieces]) -> Layout:
    """The layout with the pieces of one course changed."""
    wall = layout.walls[0]
    courses = tuple(
        replace(course, pieces=change(course.pieces)) if course.number == number else course for course in wall.courses
    )
    return replace(layout, walls=(replace(wall, courses=courses), *layout.walls[1:]))


def change_piece(layout: Layout, number: int, place: int, **changes: Any) -> Layout:
    """The layout with fields of one piece changed: ``place`` counts from 0 at the left, or from -1 at the right."""
    def change(pieces: Pieces) -> Pieces:
        laid = list(pieces)
        laid[place] = laid[place]._replace(**changes)
        return tuple(laid)

    return change_course(layout, number, change)


def shift_joint(layout: Layout, number: int, place: int, by: int) -> Layout:
    """Move the head joint right of a piece: that piece grows and the next one shrinks, both become cuts."""
    def shift(pieces: Pieces) -> Pieces:
        laid = list(pieces)
        one, two = laid[place], laid[place + 1]
        laid[place] = one._replace(length=one.length + by, piece="cut", mark="A")
        laid[place + 1] = two._replace(left=two.left + by, length=two.length - by, piece="cut", mark="B")
        return tuple(laid)

    return change_course(layout, number, shift)


def change_courses(layout: Layout, change: Callable[[Course], Course]) -> Layout:
    """The layout with every course changed."""
    wall = layout.walls[0]
    return replace(layout, walls=(replace(wall, courses=tuple(change(course) for course in wall.courses)),))


def shift_even_courses(layout: Layout, by: int) -> Layout:
    """All of course 2 moved: its first piece grows, its last one shrinks."""
    def shift(course: Course) -> Course:
        if course.number % 2:
            return course
        first, *middle, last = course.pieces
        moved: list[Piece] = [
            first._replace(length=first.length + by, piece="cut", mark="A"),
            *(piece._replace(left=piece.left + by) for piece in middle),
            last._replace(left=last.left + by, length=last.length - by, piece="cut", mark="B"),
        ]
        return replace(course, pieces=tuple(moved))

    return change_courses(layout, shift)


def breaks_of(layout: Layout, rule: RuleName) -> list[Finding]:
    """What the check tells of a rule in a layout that breaks it, after looking that it breaks no other."""
    told = broken(check(layout))
    assert {finding.rule for finding in told} == {rule}
    return told


def told_of(layout: Layout, rule: RuleName) -> list[Finding]:
    """What the check tells of one rule, whatever else is broken."""
    return [finding for finding in broken(check(layout)) if finding.rule == rule]


def places(findings: list[Finding]) -> set[tuple[int | None, int | None]]:
    """Course and distance of each finding."""
    return {(finding.course, finding.at) for finding in findings}


def tell_bearing(layout: Layout, by: int) -> str:
    """What the check says of the only opening once its precast lintel is cut to bear ``by`` ticks on both sides.

    The plan is taken to ask for no more than that.
    """
    (wall,) = layout.walls
    (opening,) = wall.wall.openings
    asked = replace(layout, walls=(replace(wall, wall=replace(wall.wall, openings=(replace(opening, bearing=by),))),))

    def cut(course: Course) -> Course:
        return replace(course, pieces=tuple(
            piece._replace(left=opening.left - by, length=opening.right - opening.left + 2 * by)
            if piece.shape == "precast" else piece for piece in course.pieces))

    (finding,) = (one for one in check(change_courses(asked, cut)) if one.rule == "openings")
    assert finding.held  # the plan's own bearing rules
    return finding.figure
