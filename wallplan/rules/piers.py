"""Piers built into walls: tied in by every other course, and no head joint over another on their faces or in the wall.

Measured on the finished layout: units as rectangles in plan, from the wall's left end and behind its outside face.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise
from typing import NamedTuple

from wallplan.findings import Finding, RuleName
from wallplan.layout.model import Layout, PierCourse, PierLayout, WallLayout
from wallplan.lengths import Measure, print_size
from wallplan.plan.job import Masonry
from wallplan.rules.sources import PIER_LAP, PIER_TIES

ROUNDING = 2
"""Ticks that the placing of units may be off."""


class _Ground(NamedTuple):
    """What all rules of a pier ask."""

    wall: WallLayout
    pier: PierLayout
    masonry: Masonry
    measure: Measure
    pairs: tuple[tuple[PierCourse, PierCourse], ...]


def check_piers(layout: Layout) -> tuple[Finding, ...]:
    """Ties and laps of every pier: held, or each place where they are broken; () for no piers."""
    found: list[Finding] = []
    for wall in layout.walls:
        for pier in wall.piers:
            pairs = tuple(pair for pair in pairwise(pier.courses) if pair[0].pieces and pair[1].pieces)
            ground = _Ground(wall, pier, layout.job.masonry, layout.job.measure, pairs)
            found += [*_check_ties(ground), *_check_laps(ground)]
    return tuple(found)


def _check_ties(ground: _Ground) -> Iterator[Finding]:
    """Of each two courses one has units across each face of the wall from which the pier stands out."""
    pier, thick = ground.pier.pier, ground.masonry.thickness
    planes = [(0, "outside")] * bool(pier.front) + [(thick, "inside")] * bool(pier.back)
    joint, broken = ground.masonry.joint, False
    reached = pier.width
    for lower, upper in ground.pairs:
        for plane, face in planes:
            wide = max(_tied_width(course, plane, ground.masonry) for course in (lower, upper))
            reached = min(reached, wide)
            if wide + joint < (pier.width + joint) // 3 - ROUNDING:
                broken = True
                yield _find(ground, "ties", lower.number, f"{pier.name}: units tie {_size(ground, wide)} of it across the "
                            f"wall's {face} face in courses {lower.number} and {upper.number}",
                            f"a third of {_size(ground, pier.width)}",
                            "lay units through the wall's face in every other course")
    if not broken:
        yield _held(ground, "ties", f"{pier.name}: of each two courses one ties {_size(ground, reached)} of it in",
                    f"a third of {_size(ground, pier.width)}", PIER_TIES)


def _tied_width(course: PierCourse, plane: int, masonry: Masonry) -> int:
    """How much of the pier's width units take that reach a lap to both sides of a plane, a joint between two counted."""
    lap = masonry.least_lap - masonry.joint - ROUNDING
    tied = [one.along for one in course.pieces if plane - one.near >= lap and one.near + one.deep - plane >= lap]
    return sum(tied) + masonry.joint * max(0, len(tied) - 1)


def _check_laps(ground: _Ground) -> Iterator[Finding]:
    limit, least = ground.masonry.least_lap, ground.masonry.least_lap
    broken: dict[tuple[str, int], list[int]] = {}
    for lower, upper in ground.pairs:
        for where, below, above in _joints_of(lower, upper, ground):
            for gap in (abs(at - other) for at in below for other in above):
                least = min(least, gap)
                if gap < limit - ROUNDING:
                    broken.setdefault((where, gap), []).append(upper.number)
    name, inside = ground.pier.pier.name, _size(ground, ground.pier.straight[1])
    for (where, gap), courses in broken.items():
        several = f" (so in {len(courses)} courses)" if len(courses) > 1 else ""
        yield _find(ground, "lap", courses[0], f"{name}: a joint {_size(ground, gap)} from the one below it, "
                    f"{where}{several}", _size(ground, limit),
                    "make it as wide and as deep as whole and half units with their joints")
    if not broken:
        yield _held(ground, "lap", f"{name}: {_size(ground, least)} on its faces and in the wall; inside, {inside} of joint "
                    "stand over a joint in each two courses", _size(ground, limit), PIER_LAP)


def _joints_of(lower: PierCourse, upper: PierCourse, ground: _Ground) -> Iterator[tuple[str, set[int], set[int]]]:
    """For each face of the pier, and for the wall's own thickness: the middles of both courses' joints."""
    pier, thick = ground.pier.pier, ground.masonry.thickness
    if pier.front:
        yield "on its outside face", _along(lower, -pier.front), _along(upper, -pier.front)
    if pier.back:
        far = thick + pier.back - 1
        yield "on its inside face", _along(lower, far), _along(upper, far)
    for side, at in (("left", pier.left), ("right", pier.right - 1)):
        yield f"on its {side} side", _through(lower, at, ground), _through(upper, at, ground)
    yield "in the wall", _in_wall(lower, ground), _in_wall(upper, ground)


def _along(course: PierCourse, near: int) -> set[int]:
    """Middles of the head joints that a face along the wall shows; ``near`` is a place within the units at that face."""
    met = sorted((one.piece.left, one.piece.left + one.along) for one in course.pieces
                 if one.near <= near + ROUNDING and one.near + one.deep >= near - ROUNDING)
    return _middles(met)


def _through(course: PierCourse, at: int, ground: _Ground) -> set[int]:
    """Middles of the joints that a side of the pier shows, clear of the wall; beside it, where the wall goes on."""
    met = sorted((one.near, one.near + one.deep) for one in course.pieces
                 if one.piece.left <= at + ROUNDING and one.piece.left + one.along >= at - ROUNDING)
    if not course.tied:
        met = sorted([*met, (0, ground.masonry.thickness)])
    return _middles(met)


def _in_wall(course: PierCourse, ground: _Ground) -> set[int]:
    """Middles of the head joints within the pier's width and the wall's thickness."""
    pier, thick = ground.pier.pier, ground.masonry.thickness
    if course.tied:
        ends = {one.piece.left + one.along for one in course.pieces if one.near < thick and one.near + one.deep > 0}
        return {end + ground.masonry.joint // 2 for end in ends if end < pier.right - ROUNDING}
    own = sorted((piece.left, piece.right) for piece in ground.wall.courses[course.number - 1].pieces)
    return {at for at in _middles(own) if pier.left < at < pier.right}


def _middles(spans: Iterable[tuple[int, int]]) -> set[int]:
    return {(one[1] + two[0]) // 2 for one, two in pairwise(spans)}


def _find(ground: _Ground, rule: RuleName, course: int, figure: str, limit: str, remedy: str) -> Finding:
    source = PIER_TIES if rule == "ties" else PIER_LAP
    return Finding(rule, False, ground.wall.wall.name, course, ground.pier.pier.left, figure, limit,
                   source, remedy)


def _held(ground: _Ground, rule: RuleName, figure: str, limit: str, source: str) -> Finding:
    return Finding(rule, True, ground.wall.wall.name, None, None, figure, limit, source, "")


def _size(ground: _Ground, ticks: int) -> str:
    return print_size(ticks, ground.measure)
