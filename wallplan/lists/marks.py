"""Layout -> marks: the running distance of every head joint from the wall's left end, for odd and for even courses.

Every figure is measured on the finished layout from the end itself; none is a sum of others.
"""

from __future__ import annotations

import csv
import io
from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from wallplan.layout.explain import print_courses
from wallplan.layout.model import Course, Layout, Lead, WallLayout
from wallplan.lengths import Measure, print_length, print_size, to_mm

MARKS_HEADER = ("wall", "courses", "mark", "joint from ({unit})", "joint to ({unit})", "which courses",
                "joint from (mm, exact)", "joint to (mm, exact)")


@dataclass(frozen=True)
class Mark:
    """A head joint: ``near`` is its side towards the wall's left end, ``far`` where the next unit begins, in ticks.

    ``courses`` are those that have it.
    """

    near: int
    far: int
    courses: tuple[int, ...]


@dataclass(frozen=True)
class RakedEnd:
    """Where the slope passes one end of a course: at the underside of its units and at their top, in ticks."""

    course: int
    side: Lead
    bottom: int
    top: int


@dataclass(frozen=True)
class WallMarks:
    """The marks of a wall, in order from its left end. ``jambs`` are (opening, left, right), ``control_joints`` their two
    sides. ``odd_courses`` and ``even_courses`` say how many courses there are of either kind. ``risers`` are the steps of
    the footing, ``raked`` the ends of courses on a slope, from the lowest course up, ``piers`` (name, left, right)."""

    wall: str
    length: int
    odd: tuple[Mark, ...]
    even: tuple[Mark, ...]
    odd_courses: int
    even_courses: int
    jambs: tuple[tuple[str, int, int], ...]
    control_joints: tuple[tuple[int, int], ...]
    risers: tuple[int, ...] = ()
    raked: tuple[RakedEnd, ...] = ()
    piers: tuple[tuple[str, int, int], ...] = ()


def list_marks(layout: Layout) -> tuple[WallMarks, ...]:
    """The marks of every wall, in the plan's order; () for a job without walls."""
    return tuple(mark_wall(wall, layout.job.masonry.joint) for wall in layout.walls)


def mark_wall(wall: WallLayout, joint: int) -> WallMarks:
    """The marks of one wall. ``joint`` is the width of its control joints, in ticks."""
    controls = tuple((centre - joint // 2, centre - joint // 2 + joint) for centre in wall.wall.control_joints)
    widest = max(joint, *wall.joints) + joint // 2
    odd, even = (_gather(wall, first, widest, controls) for first in (1, 2))
    jambs = tuple((opening.name, opening.left, opening.right) for opening in wall.wall.openings)
    count = len(wall.courses)
    footing = wall.wall.outline.footing if wall.wall.outline else ()
    risers = tuple(at for (at, _), (also, _) in pairwise(footing) if at == also)
    raked = tuple(end for course in wall.courses for end in _find_raked(course))
    return WallMarks(wall.wall.name, wall.wall.length, odd, even, (count + 1) // 2, count // 2, jambs, controls, risers,
                     raked, tuple((pier.name, pier.left, pier.right) for pier in wall.wall.piers))


def _find_raked(course: Course) -> Iterator[RakedEnd]:
    """The raked ends of a course, left before right: from the toe of the first piece to where the last one is whole."""
    for side in ("left", "right"):
        pieces = sorted(piece for piece in course.pieces if piece.rake and piece.hand in (side, "ridge"))
        if pieces and side == "left":
            last = max(pieces, key=lambda piece: piece.left)
            yield RakedEnd(course.number, "left", pieces[0].left, last.left + (last.rake.top_left if last.rake else 0))
        elif pieces:
            first, last = pieces[0], pieces[-1]
            yield RakedEnd(course.number, "right", last.right, first.left + (first.rake.top_right if first.rake else 0))


def _gather(wall: WallLayout, first: int, widest: int, controls: tuple[tuple[int, int], ...]) -> tuple[Mark, ...]:
    found: dict[tuple[int, int], list[int]] = {}
    for course in wall.courses[first - 1 :: 2]:
        for near, far in sorted(set(find_head_joints(course, widest))):
            straddled = any(near < right and far > left for left, right in controls)
            if near >= 0 and far <= wall.wall.length and not straddled:
                found.setdefault((near, far), []).append(course.number)
    return tuple(Mark(near, far, tuple(found[near, far])) for near, far in sorted(found))


def find_head_joints(course: Course, widest: int) -> list[tuple[int, int]]:
    """Both sides of each gap of at most ``widest`` ticks between pieces side by side; [] for no pieces or one.

    Where a course is laid in two layers, each layer has its own.
    """
    pieces = sorted(course.pieces)
    lefts = [piece.left for piece in pieces]
    joints = []
    for piece in pieces:
        for other in pieces[bisect_right(lefts, piece.right) : bisect_left(lefts, piece.right + widest + 1)]:
            if other.bottom < piece.top and piece.bottom < other.top:
                joints.append((piece.right, other.left))
                break
    return joints


def write_marks_csv(marks: tuple[WallMarks, ...], measure: Measure) -> str:
    """The marks as CSV text with CRLF line ends (RFC 4180); the header alone for no walls."""
    unit = "in" if measure == "feet" else "mm"
    rows = [[title.format(unit=unit) for title in MARKS_HEADER]]
    for wall in marks:
        for kind, found in (("odd", wall.odd), ("even", wall.even)):
            rows += [[wall.wall, kind, str(number), _figure(mark.near, measure), _figure(mark.far, measure),
                      print_courses(list(mark.courses)), f"{to_mm(mark.near):.3f}", f"{to_mm(mark.far):.3f}"]
                     for number, mark in enumerate(found, start=1)]
        others = [(f"jambs of {name}", left, right) for name, left, right in wall.jambs]
        others += [("control joint", left, right) for left, right in wall.control_joints]
        others += [(f"sides of pier {name}", left, right) for name, left, right in wall.piers]
        others += [("riser", at, at) for at in wall.risers]
        others += [(f"raked {end.side} end, course {end.course}: bottom, top", end.bottom, end.top) for end in wall.raked]
        rows += [[wall.wall, "all", name, _figure(left, measure), _figure(right, measure), "", f"{to_mm(left):.3f}",
                  f"{to_mm(right):.3f}"] for name, left, right in others]
    text = io.StringIO(newline="")
    csv.writer(text).writerows(rows)
    return text.getvalue()


def _figure(ticks: int, measure: Measure) -> str:
    """A length as a plain figure, its unit in the header."""
    return print_size(ticks, measure).rstrip('"') if measure == "feet" else print_length(ticks, measure)
