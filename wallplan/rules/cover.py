"""Cover: pieces, head joints, beds and openings fill the wall exactly; nothing overlaps, nothing leaves it.

Each course is a band of the wall. Courses that are laid alike, with the same openings beside them, are measured
once by shapely and stand for each other; that the bands close the wall, and that each course ends flush, is
looked at in every course.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np

from wallplan.findings import Finding
from wallplan.rules.as_laid import OPENING, ROUNDING, AsLaid, Ints
from wallplan.rules.corner_places import corner_places, is_off, is_others, is_tip
from wallplan.rules.outline import trace
from wallplan.rules.reporting import Break, report_breaks, report_held, size
from wallplan.rules.sources import COVER

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

Bounds = tuple[int, int, int, int]

HOLE_REMEDY = "lay the missing piece"
FLUSH_REMEDY = "share the difference among the run's joints, or cut its last piece to suit"


@dataclass(frozen=True)
class Band:
    """One course measured: breaks with course None, and the areas of pieces, joints and band in square ticks."""

    breaks: tuple[Break, ...]
    pieces: float
    joints: float
    net: float


def check_cover(wall: AsLaid) -> tuple[Finding, ...]:
    """Whether every part of the wall is a piece, a joint or an opening, and only one of these."""
    breaks = [*_gaping_courses(wall), *_ends_off(wall)]
    bands: dict[object, Band] = {}
    filled = net = 0.0
    for course in range(len(wall.layout.courses)):
        openings = _openings_beside(wall, course)
        pattern = _pattern(wall, course), openings, _height(wall, course), None if wall.outline is None else course
        if pattern not in bands:
            bands[pattern] = _measure_band(wall, course, openings)
        band = bands[pattern]
        filled, net = filled + band.pieces + band.joints, net + band.net
        breaks.extend(replace(one, course=course) for one in band.breaks)
    if not breaks and wall.outline is None and abs(filled - net) > 1e-9 * net:
        breaks.append(Break(None, None, f"pieces and joints fill {filled / net:.6%}", "100 %", "find what is laid twice"))
    figure = f"{len(wall.left)} pieces in {len(wall.layout.courses)} courses; with their joints they fill 100 %"
    return report_breaks(wall, "cover", COVER, breaks) or (report_held(wall, "cover", COVER, figure, "100 %"),)


def _pattern(wall: AsLaid, course: int) -> bytes:
    span, ground = slice(wall.first[course], wall.first[course + 1]), wall.layout.courses[course].bottom
    return np.concatenate(
        (wall.left[span], wall.right[span], wall.bottom[span] - ground, wall.top[span] - ground)
    ).tobytes()


def _height(wall: AsLaid, course: int) -> int:
    return wall.layout.courses[course].top - wall.layout.courses[course].bottom


def _openings_beside(wall: AsLaid, course: int) -> tuple[Bounds, ...]:
    """The parts of openings within a course, as left, bottom, right, top from the course's own bottom."""
    low, high = wall.layout.courses[course].bottom, wall.layout.courses[course].top
    return tuple(
        (opening.left, max(opening.bottom, low) - low, opening.right, min(opening.top, high) - low)
        for opening in wall.layout.wall.openings if opening.bottom < high and opening.top > low
    )


def _gaping_courses(wall: AsLaid) -> Iterator[Break]:
    """Courses out of count, or that do not begin where the one below ended; the last one's top is the coursing's."""
    ended = 0
    if not wall.layout.courses:
        yield Break(None, None, "no course is laid", "pieces and joints only", "lay the wall")
    if [course.number for course in wall.layout.courses] != list(range(1, len(wall.layout.courses) + 1)):
        yield Break(None, None, "courses are not numbered from the foot", "1, 2, 3 and so on", "number the courses anew")
    for index, course in enumerate(wall.layout.courses):
        if course.bottom != ended:
            yield Break(index, None, f"begins {size(wall, abs(course.bottom - ended))} off the course below", "on it",
                        "set the course on the one below")
        ended = course.top


def _ends_off(wall: AsLaid) -> Iterator[Break]:
    """Pieces that end short of, or beyond, a wall's end or a jamb by less than a hole's width."""
    rows, gaps = wall.rows, wall.gaps
    if wall.outline is None:
        first, last = rows.piece[rows.start[:-1]], rows.piece[rows.start[1:] - 1]
        yield from _tell_off(wall, rows.course, wall.left[first], wall.start, "the left end")
        yield from _tell_off(wall, rows.course, wall.right[last], wall.end, "the right end")
    else:
        yield from _off_outline(wall)
    beside = np.flatnonzero(gaps.kind == OPENING)
    for opening in wall.layout.wall.openings:
        for edges, jamb, side in ((gaps.left, opening.left, "left"), (gaps.right, opening.right, "right")):
            near = beside[np.abs(edges[beside] - jamb) <= wall.hole]
            tall = (rows.bottom[gaps.row[near]] < opening.top) & (rows.top[gaps.row[near]] > opening.bottom)
            near = near[tall]
            yield from _tell_off(wall, rows.course[gaps.row[near]], edges[near], jamb, f"the {side} jamb of {opening.name}")


def _off_outline(wall: AsLaid) -> Iterator[Break]:
    """Pieces that end short of, or beyond, a riser or a slope, measured just over the underside of each row."""
    rows = wall.rows
    for row in range(len(rows.bottom)):
        pieces = rows.piece[rows.start[row]:rows.start[row + 1]]
        lefts, rights = wall.left[pieces], wall.right[pieces]
        for left, right in wall.cut_level(int(rows.bottom[row])):
            within = (rights > left) & (lefts < right)
            if within.any() and not wall.notched[pieces[within]].any():
                course = rows.course[row:row + 1]
                ends = pieces[within][[lefts[within].argmin(), rights[within].argmax()]]
                for piece, edge, end in zip(ends, (lefts[within].min(), rights[within].max()), (round(left), round(right)),
                                            strict=True):
                    if is_off(wall, int(edge), end) and wall.shape[piece] != "return":
                        yield from _tell_off(wall, course, np.array([edge]), end, "the wall's outline")


def _tell_off(wall: AsLaid, courses: Ints, edges: Ints, end: int, named: str) -> Iterator[Break]:
    off = np.abs(edges - end)
    for index in np.flatnonzero((off > 0) & (off <= wall.hole)).tolist():
        yield Break(int(courses[index]), int(edges[index]), f"{_fine(wall, int(off[index]))} off {named}", "flush",
                    FLUSH_REMEDY)


def _fine(wall: AsLaid, ticks: int) -> str:
    """A difference, in ticks where it is too small to print as a length."""
    return size(wall, ticks) if ticks >= 1_000 else f"{ticks}/960 mm"


def _measure_band(wall: AsLaid, course: int, openings: tuple[Bounds, ...]) -> Band:
    import shapely
    from shapely.affinity import translate

    low, span = wall.layout.courses[course].bottom, slice(wall.first[course], wall.first[course + 1])
    boxes = shapely.box(wall.left[span], wall.bottom[span] - low, wall.right[span], wall.top[span] - low)
    band = _open_band(wall, course, openings)
    if wall.outline is not None:
        boxes = _shape_raked(wall, course, boxes)
        band = shapely.intersection(band, translate(trace(wall.outline, wall.start, wall.end), 0, -low))
    laid, limits = shapely.union_all(boxes), band
    void = shapely.difference(band, laid)
    if wall.outline is not None:
        # A higher wall's end may stand over this one's outline.
        laid = shapely.union_all(boxes[wall.shape[span] != "return"])
        # How far a level top may be off its courses is the steps' to judge.
        over = trace(wall.outline, wall.start, wall.end, wall.masonry.unit.bed_joint // 2 + ROUNDING)
        body = shapely.union_all([over, *corner_places(wall)])
        limits = shapely.intersection(_open_band(wall, course, openings), translate(body, 0, -low))
    rest = shapely.difference(laid, limits) if len(boxes) else shapely.Polygon()
    breaks = (
        *_overlaps(wall, boxes),
        *(_outside if wall.outline is None else _beyond)(wall, _height(wall, course), rest),
        *_holes(wall, void, low),
    )
    return Band(breaks, float(shapely.area(boxes).sum()), float(void.area), float(band.area))


def _open_band(wall: AsLaid, course: int, openings: tuple[Bounds, ...]) -> BaseGeometry:
    """A course's band from end to end without its openings."""
    import shapely

    band = shapely.box(wall.start, 0, wall.end, _height(wall, course))
    return shapely.difference(band, shapely.union_all(shapely.box(*np.array(openings, dtype=float).T))) if openings else band


def _shape_raked(wall: AsLaid, course: int, boxes: Ints) -> Ints:
    """The pieces of a course as they are sawn."""
    from shapely.geometry import Polygon, box

    shapes, low = boxes.copy(), wall.layout.courses[course].bottom
    for place, piece in enumerate(wall.layout.courses[course].pieces):
        if piece.rake is not None:
            rake, bottom = piece.rake, piece.bottom - low
            sides = [(0, 0), (0, rake.left), (rake.top_left, piece.height), (rake.top_right, piece.height),
                     (piece.length, rake.right), (piece.length, 0)]
            shapes[place] = Polygon([(piece.left + x, bottom + y) for x, y in sides])
        if piece.notch is not None:
            notch, bottom = piece.notch, piece.bottom - low
            gone = box(piece.left + notch.left, bottom, piece.left + notch.right, bottom + notch.height)
            shapes[place] = shapes[place].difference(gone)
    return shapes


def _beyond(wall: AsLaid, height: int, rest: BaseGeometry) -> Iterator[Break]:
    """Pieces that reach out of an outline by more than rounding to ticks."""
    import shapely

    for part in _parts(shapely.buffer(rest, -ROUNDING, join_style="mitre")):
        left, bottom, right, top = _bounds(part)
        # A lintel that hangs into its opening does so by the height of what is in it, however wide the opening.
        across, up = right - left, top - bottom
        reach = _fine(wall, (up if up < wall.hole < across else max(across, up)) + 2 * ROUNDING)
        yield Break(None, left, f"a piece reaches {reach} out of the wall",
                    "inside its course, the wall's outline and outside openings", "saw it to the outline")


def _overlaps(wall: AsLaid, boxes: Ints) -> Iterator[Break]:
    import shapely

    one, other = shapely.STRtree(boxes).query(boxes, predicate="intersects")
    pairs = one < other
    shared = shapely.intersection(boxes[one[pairs]], boxes[other[pairs]])
    for part in shared[shapely.area(shared) > 0].tolist():
        left, _, right, _ = _bounds(part)
        yield Break(None, left, f"two pieces overlap by {_fine(wall, right - left)}", "no overlap",
                    f"move them apart by {size(wall, right - left + wall.masonry.joint)}, a joint between them")


def _outside(wall: AsLaid, height: int, rest: BaseGeometry) -> Iterator[Break]:
    limit = "inside its course, outside openings"
    for part in _parts(rest):
        left, bottom, right, top = _bounds(part)
        if bottom < 0 or top > height:
            if top - bottom > ROUNDING:
                yield Break(None, left, f"a piece leaves its course by {_fine(wall, top - bottom)}", limit,
                            "set the piece on its bed")
        elif right - left > wall.hole and top - bottom > ROUNDING:
            # A piece that reaches less far past an end or a jamb is told as one that is not flush.
            reach = size(wall, min(right - left, top - bottom))
            yield Break(None, left, f"a piece reaches {reach} into an opening", limit, f"cut {reach} away")


def _holes(wall: AsLaid, void: BaseGeometry, low: int) -> Iterator[Break]:
    import shapely

    # What a square of this side fits into is no joint. Mitred corners keep the shrunken void's edges straight.
    shrink = wall.hole / 2
    for part in _parts(shapely.buffer(void, -shrink, join_style="mitre")):
        left, right = part.bounds[0] - shrink, part.bounds[2] + shrink
        bottom, top = part.bounds[1] + low, part.bounds[3] + low
        if (is_tip(wall, left, right, top) or is_others(wall, (left, right), bottom)
                or _is_over_head(wall, left, right, bottom - shrink)):
            continue
        yield Break(None, round(left), f"nothing is laid for {size(wall, round(right - left))}", "pieces and joints only",
                    HOLE_REMEDY)


def _is_over_head(wall: AsLaid, left: float, right: float, bottom: float) -> bool:
    """Whether a void is what an opening lacks to the course over it: that is the openings' to judge."""
    hole, openings = wall.hole, wall.layout.wall.openings
    return any(opening.left - hole <= left and right <= opening.right + hole and abs(bottom - opening.top) <= ROUNDING
               for opening in openings)


def _parts(shape: BaseGeometry) -> list[BaseGeometry]:
    import shapely

    return [part for part in shapely.get_parts(shape).tolist() if not part.is_empty and part.area > 0]


def _bounds(part: BaseGeometry) -> Bounds:
    left, bottom, right, top = part.bounds
    return round(left), round(bottom), round(right), round(top)
