"""What stands on the ground at one level: a wall's body by its outline, its openings, and its units as they are sawn.

Between two neighbouring levels of ``list_levels`` everything widens or narrows evenly, so that what is measured half way,
times the height between them, is the volume to the last cube.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from wallplan.layout.model import Piece, PierPiece, Rake
from wallplan.plan.job import Masonry, Outline, Pier
from wallplan.plan.outline import reach_between
from wallplan.rules.ground import Placed, reach_behind
from wallplan.rules.outline import cut_level

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry


class Stood(NamedTuple):
    """A unit as a level cuts it, and the wall that counts it."""

    shape: BaseGeometry
    placed: Placed


def own_pieces(placed: Placed, number: int) -> tuple[Piece, ...]:
    """The units of a course that the wall counts itself; () over its top."""
    courses = placed.layout.courses
    return tuple(piece for piece in courses[number - 1].bricks if piece.shape != "return") if number <= len(courses) else ()


def pier_pieces(placed: Placed, number: int) -> tuple[PierPiece, ...]:
    """The units that a wall's piers lay in a course; () over its top and for no piers."""
    here = (pier.courses[number - 1] for pier in placed.layout.piers if number <= len(pier.courses))
    return tuple(one for course in here for one in course.pieces)


def list_levels(placed: Placed, number: int) -> Iterator[int]:
    """The heights over the datum at which something of a course begins, ends or is sawn otherwise; some lie outside it."""
    course, wall = placed.layout.courses[number - 1], placed.layout.wall
    yield from (course.bottom, course.top)
    for piece in own_pieces(placed, number):
        yield from (piece.bottom, piece.top)
        if piece.rake is not None:
            yield from (piece.bottom + piece.rake.left, piece.bottom + piece.rake.right)
        if piece.notch is not None:
            yield piece.bottom + piece.notch.height
    yield from (level for opening in wall.openings for level in (opening.bottom, opening.top))
    if wall.outline is None:
        return
    yield from (level for _, level in (*wall.outline.footing, *wall.outline.top))
    # Where a slope comes out from behind the wall that it meets.
    for (left, begin), (right, end) in pairwise(wall.outline.top):
        for at in (placed.thick, wall.length - placed.thick) if left < right and begin != end else ():
            if left < at < right:
                yield begin + round((end - begin) * (at - left) / (right - left))


def slopes_past(placed: Placed, bottom: int, top: int) -> bool:
    """Whether a slope of the wall's top passes between two heights."""
    line = () if placed.layout.wall.outline is None else placed.layout.wall.outline.top
    return any(min(one[1], two[1]) < top and max(one[1], two[1]) > bottom for one, two in pairwise(line)
               if one[1] != two[1] and one[0] < two[0])


def cut_body(placed: Placed, height: float, over: int = 0) -> list[BaseGeometry]:
    """The wall itself at a height, its openings filled. Level tops are taken ``over`` ticks higher. [] over its top."""
    import shapely

    wall = placed.layout.wall
    start, end = -reach_behind(wall, "left", placed.thick), wall.length + reach_behind(wall, "right", placed.thick)
    if wall.outline is None:
        courses, piers = placed.layout.courses, [one.pier for one in placed.layout.piers]
        standing = [placed.body, *(placed.bounds(one.left, one.right, -one.front, placed.thick + one.back) for one in piers)]
        return [shapely.box(*bounds) for bounds in standing] if courses and height < courses[-1].top else []
    spans = cut_level(wall.outline, start, end, height, over)
    standing = [placed.bounds(left, right) for left, right in spans]
    standing += [placed.bounds(one.left, one.right, -one.front, placed.thick + one.back) for one in wall.piers
                 if _stands(one, wall.outline, placed, height, over)]
    return [shapely.box(*bounds) for bounds in standing]


def _stands(pier: Pier, outline: Outline, placed: Placed, height: float, over: int) -> bool:
    """Whether a pier stands at a height: from the footing to the wall's top, under a slope by the last whole course beside
    which a piece of the wall has room. Level tops are taken ``over`` ticks higher."""
    foot = reach_between(outline.footing, pier.left, pier.right)[1]
    left, right = max(pier.left - placed.clear, 0), min(pier.right + placed.clear, placed.layout.wall.length)
    sloped = any(one[0] < two[0] and one[1] != two[1] and one[0] < right and two[0] > left
                 for one, two in pairwise(outline.top))
    top = reach_between(outline.top, *((left, right) if sloped else (pier.left, pier.right)))[0] + over
    if sloped and top > outline.coursed:
        top = max((course.top for course in placed.layout.courses if course.top <= top), default=0)
    return foot < height < top


def cut_openings(placed: Placed, height: float) -> Iterator[BaseGeometry]:
    """What openings leave free at a height."""
    import shapely

    for one in placed.layout.wall.openings:
        if one.bottom < height < one.top:
            yield shapely.box(*placed.bounds(one.left, one.right))


def cut_units(placed: Placed, number: int, height: float, masonry: Masonry) -> Iterator[Stood]:
    """The units of a course at a height, raked and notched as they are."""
    import shapely

    for piece in own_pieces(placed, number):
        if not piece.bottom < height < piece.top:
            continue
        parts = placed.parts_of(piece, masonry.unit.ell_return, masonry.joint)
        shape = shapely.union_all([shapely.box(*part) for part in parts])
        if piece.rake is not None:
            left, right = _cut_rake(piece, piece.rake, height - piece.bottom)
            shape = shapely.box(*placed.bounds(left, right))
        if piece.notch is not None and height < piece.bottom + piece.notch.height:
            gone = placed.bounds(piece.left + piece.notch.left, piece.left + piece.notch.right)
            shape = shapely.difference(shape, shapely.box(*gone))
        yield Stood(shape, placed)
    for one in pier_pieces(placed, number):
        if one.piece.bottom < height < one.piece.top:
            left, near = one.piece.left, one.near
            yield Stood(shapely.box(*placed.bounds(left, left + one.along, near, near + one.deep)), placed)


def _cut_rake(piece: Piece, rake: Rake, up: float) -> tuple[float, float]:
    """Where a raked piece begins and ends so far up from its underside."""
    left, right = 0.0, float(piece.length)
    if up > rake.left:
        left = rake.top_left * (up - rake.left) / (piece.height - rake.left)
    if up > rake.right:
        right = piece.length - (piece.length - rake.top_right) * (up - rake.right) / (piece.height - rake.right)
    return piece.left + left, piece.left + right
