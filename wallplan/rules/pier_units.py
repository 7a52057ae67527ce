"""Units of piers one by one: as wide and as high as they are made, called what they are, jointed as the plan allows.

Measured on the finished layout, in plan: from the wall's left end and behind its outside face.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wallplan.findings import Finding, RuleName
from wallplan.layout.model import Layout, PierCourse, PierLayout, PierPiece, WallLayout
from wallplan.lengths import print_size
from wallplan.plan.job import Job, Masonry
from wallplan.rules.as_laid import ROUNDING
from wallplan.rules.pieces import name_lengths
from wallplan.rules.sources import COVER, HEAD_JOINTS, UNITS


class _Box(NamedTuple):
    """What a unit takes in plan."""

    left: int
    near: int
    right: int
    far: int


class _Wrong(NamedTuple):
    """What is wrong in a course, by which rule, and what mends it."""

    rule: RuleName
    figure: str
    limit: str
    source: str
    remedy: str


def check_pier_units(layout: Layout) -> tuple[Finding, ...]:
    """Every course of every pier: what is wrong, told of the lowest course; held with the number of units. () for none."""
    found: list[Finding] = []
    for wall in layout.walls:
        for pier in wall.piers:
            wrongs: dict[_Wrong, int] = {}
            for course in pier.courses:
                for wrong in _judge(wall, pier, course, layout.job):
                    wrongs.setdefault(wrong, course.number)
            found += [Finding(wrong.rule, False, wall.wall.name, number, pier.pier.left, f"{pier.pier.name}: {wrong.figure}",
                              wrong.limit, wrong.source, wrong.remedy) for wrong, number in wrongs.items()]
            if not wrongs:
                count = sum(len(course.pieces) for course in pier.courses)
                told = f"{pier.pier.name}: {count} units, each as it is made and jointed"
                found.append(Finding("units", True, wall.wall.name, None, None, told, "as made", UNITS, ""))
    return tuple(found)


def _judge(wall: WallLayout, pier: PierLayout, course: PierCourse, job: Job) -> Iterator[_Wrong]:
    boxes = [_Box(one.piece.left, one.near, one.piece.left + one.along, one.near + one.deep) for one in course.pieces]
    inside = any(box.near < job.masonry.thickness - ROUNDING and box.far > ROUNDING for box in boxes)
    if inside is not course.tied:
        yield _Wrong("units", f"{'tied' if course.tied else 'not tied'} in by name only", "as laid", UNITS,
                     "name it as it is laid")
    own = wall.courses[course.number - 1]
    lines = {(piece.bottom, piece.top) for piece in own.pieces}
    for one in course.pieces:
        yield from _judge_unit(one, pier, job)
        if lines and (one.piece.bottom, one.piece.top) not in lines:
            yield _Wrong("coursing", "a unit off the wall's course", "level with the wall's course", UNITS,
                         "lay it level with the wall")
    beside = [_Box(piece.left, 0, piece.right, job.masonry.thickness) for piece in own.pieces if piece.shape != "return"]
    yield from _judge_joints(boxes, beside, job)
    yield from _judge_faces(boxes, pier, job)


def _judge_unit(one: PierPiece, pier: PierLayout, job: Job) -> Iterator[_Wrong]:
    """A unit's size in plan against what it is called, and who counts it."""
    piece, unit = one.piece, job.masonry.unit
    size = print_size(piece.length, job.measure)
    sides = sorted((abs(one.along - piece.length) + abs(one.deep - unit.thickness),
                    abs(one.deep - piece.length) + abs(one.along - unit.thickness)))
    if sides[0] > 2 * ROUNDING:
        yield _Wrong("units", f"a unit {size} long takes {print_size(one.along, job.measure)} by "
                     f"{print_size(one.deep, job.measure)} in plan", f"as thick as it is made, "
                     f"{print_size(unit.thickness, job.measure)}", UNITS, "lay a unit of that size")
    if piece.piece != _call(piece.length, job.masonry):
        yield _Wrong("least piece", f"{size}, called {piece.piece}", f"called {_call(piece.length, job.masonry)}", UNITS,
                     "call it what it is")
    if piece.shape != "stretcher" or piece.of != pier.pier.name:
        yield _Wrong("units", f"a {piece.shape} counted in {piece.of}", f"a plain unit counted in {pier.pier.name}", UNITS,
                     "lay and count a plain unit")


def _call(length: int, masonry: Masonry) -> str:
    """What a unit of a length is called."""
    return next((name for name, lengths in name_lengths(masonry).items()
                 if any(abs(length - one) <= ROUNDING for one in lengths)), "cut")


def _judge_joints(boxes: list[_Box], beside: list[_Box], job: Job) -> Iterator[_Wrong]:
    """Joints of the pier's units with each other and with the wall, where no more than a joint is between."""
    masonry = job.masonry
    low, high = masonry.tightest_joint - ROUNDING, masonry.widest_joint + ROUNDING
    for place, one in enumerate(boxes):
        for other in (*boxes[place + 1:], *beside):
            across = max(one.left, other.left) - min(one.right, other.right)
            deep = max(one.near, other.near) - min(one.far, other.far)
            width = across if deep < -ROUNDING else deep if across < -ROUNDING else None
            if width is not None and (0 <= width < low or high < width <= 2 * high):
                yield _Wrong("joints", f"a joint of {print_size(width, job.measure)}",
                             f"{print_size(masonry.tightest_joint, job.measure)} to "
                             f"{print_size(masonry.widest_joint, job.measure)}", HEAD_JOINTS, "move the units beside it")


def _judge_faces(boxes: list[_Box], pier: PierLayout, job: Job) -> Iterator[_Wrong]:
    """Units that end a little short of, or beyond, the pier's faces; what is more than a joint is measured in plan."""
    own, thick = pier.pier, job.masonry.thickness
    near = 2 * (job.masonry.widest_joint + ROUNDING)
    for box in boxes:
        # A course that the wall goes through shows the pier's sides before and behind it only.
        edges = [(box.left, own.left), (box.right, own.right)]
        edges += [(box.near, -own.front)] if own.front else []
        edges += [(box.far, thick + own.back)] if own.back else []
        for edge, face in edges:
            off = abs(edge - face)
            if ROUNDING < off <= near:
                yield _Wrong("cover", f"a unit {print_size(off, job.measure)} off the pier's face", "flush", COVER,
                             "set it flush")
