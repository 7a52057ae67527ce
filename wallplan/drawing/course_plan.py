"""One course of a building in plan: its pieces, which wall runs through at each corner, and the diagonals of a rectangle."""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.drawing.board import Board
from wallplan.drawing.ground_plan import Building, Extent, Leg, Place
from wallplan.drawing.hatching import hatch_cut, hatch_half, hatch_part
from wallplan.drawing.lettering import LARGE_FIGURES, clean, measure, measure_text, shorten
from wallplan.drawing.letters import fit_letter
from wallplan.drawing.outlines import HEAVY_LINE, THIN_LINE, UNIT_LINE
from wallplan.drawing.paper import Scale
from wallplan.drawing.primitives import Box, Dash, Segment, Text
from wallplan.layout.model import Course, Piece
from wallplan.lengths import Measure

MARGIN = 11.5
"""Round the walls for lengths and corner numbers, mm."""

HEAD = 11.0
"""Over that for the course's name, mm."""

DIAGONAL_DASH: Dash = (6.0, 1.5, 1.0, 1.5)
"""The diagonals of a rectangle."""

LEAST_MODULE = 1.6
"""Where a unit comes out shorter on the paper, walls are drawn without their pieces, mm."""


@dataclass(frozen=True)
class CoursePlan:
    """One course of a building at a scale. (``x``, ``y``) is where the lower left of its extent stands, mm."""

    building: Building
    number: int
    scale: Scale
    measured: Measure
    x: float
    y: float

    def point(self, place: Place) -> tuple[float, float]:
        """A place on the paper."""
        extent = self.building.extent
        return (self.x + self.scale.on_paper(place.x - extent.left), self.y - self.scale.on_paper(place.y - extent.bottom))

    def box(self, extent: Extent) -> Box:
        """A rectangle on the paper."""
        left, bottom = self.point(Place(extent.left, extent.bottom))
        right, top = self.point(Place(extent.right, extent.top))
        return Box(left, top, right, bottom)

    def course_of(self, leg: Leg) -> Course | None:
        """The wall's course of this number; None where the wall ends below it."""
        courses = leg.wall.courses
        return courses[self.number - 1] if self.number <= len(courses) else None

    def pieces_of(self, leg: Leg) -> list[tuple[Piece, Box]]:
        """The wall's own pieces in plan; of two layers the lower one, of a one-brick wall both leaves."""
        course = self.course_of(leg)
        found: list[tuple[Piece, Box]] = []
        reach = -(10**12)
        for piece in sorted(course.pieces if course else (), key=lambda piece: (piece.left, piece.bottom)):
            if piece.shape != "return" and piece.left >= reach:
                found.append((piece, self._stand(leg, piece)))
                reach = piece.right
        return [*found, *((piece, self._stand(leg, piece)) for piece in (course.backing if course else ()))]

    def _stand(self, leg: Leg, piece: Piece) -> Box:
        thick, leaf = self.building.thickness, self.building.leaf
        near, far = {"front": (0, leaf), "back": (thick - leaf, thick)}.get(piece.leaf or "", (0, thick))
        return self.box(leg.extent(piece.left, piece.right, near, far))

    def pier_pieces_of(self, leg: Leg) -> list[tuple[Piece, Box]]:
        """The units of the piers that are built into the wall, in plan."""
        courses = [course for pier in leg.wall.piers for course in pier.courses if course.number == self.number]
        return [(one.piece, self.box(leg.extent(one.piece.left, one.piece.left + one.along, one.near, one.near + one.deep)))
                for course in courses for one in course.pieces]

    def is_through(self, leg: Leg, right: bool) -> bool:
        """Whether the wall runs through at its left or right corner in this course."""
        course = self.course_of(leg)
        pieces = course.pieces if course else ()
        return bool(pieces) and (max if right else min)(pieces, key=lambda piece: piece.left).shape != "return"


def plan_size(building: Building, scale: Scale) -> tuple[float, float]:
    """Width and height that a course takes on the paper with all that is lettered round it, mm."""
    extent = building.extent
    name = MARGIN + measure(_name_course(building, 2), LARGE_FIGURES)
    return (max(scale.on_paper(extent.right - extent.left) + 2 * MARGIN, name),
            scale.on_paper(extent.top - extent.bottom) + 2 * MARGIN + HEAD)


Small = tuple[Piece, Box, Leg]
"""A cut too small for its letter: the piece, its rectangle on the paper, and its wall."""


def draw_course(board: Board, plan: CoursePlan) -> list[Small]:
    """Draw a course with its name over it, and keep lettering off the walls; cuts that were not lettered are given back."""
    box = plan.box(plan.building.extent)
    board.letter(Text(box.left, box.top - MARGIN - 3.5, _name_course(plan.building, plan.number), LARGE_FIGURES))
    if plan.building.shows_diagonals:
        _draw_diagonals(board, plan)
    small = _draw_pieces(board, plan)
    for leg in plan.building.drawn:
        board.placer.take(plan.box(_body(plan, leg)).shrunk(-0.6))
        board.placer.take(*(plan.box(leg.extent(one.left, one.right, -one.front, plan.building.thickness + one.back))
                            for one in leg.wall.wall.piers))
    return small


def _name_course(building: Building, number: int) -> str:
    """The course in words; a free wall's name stands with them."""
    words = f"COURSE {number} ({'odd' if number % 2 else 'even'})"
    if len(building.drawn) > 1:
        return words
    return f"{words} {shorten(clean(building.legs[0].wall.wall.name), LARGE_FIGURES, 90)}"


def _body(plan: CoursePlan, leg: Leg) -> Extent:
    """What the wall takes in this course, behind an inside corner too."""
    course = plan.course_of(leg)
    pieces = course.pieces if course else ()
    ends = [0, leg.wall.wall.length, *(end for piece in pieces for end in (piece.left, piece.right))]
    return leg.extent(min(ends), max(ends), 0, plan.building.thickness)


def _draw_diagonals(board: Board, plan: CoursePlan) -> None:
    """Both diagonals of the outside corners, drawn within the walls, whose pieces may be lettered."""
    points = [plan.point(place) for place in plan.building.points]
    thick = plan.scale.on_paper(plan.building.thickness)
    lines = []
    for (x1, y1), (x2, y2) in ((points[0], points[2]), (points[1], points[3])):
        off = max(thick / abs(x2 - x1), thick / abs(y2 - y1))
        across, down = off * (x2 - x1), off * (y2 - y1)
        lines += [Segment(x1 + across, y1 + down, x2 - across, y2 - down)] if off < 0.5 else []
    board.stroke(lines, THIN_LINE, DIAGONAL_DASH)
    board.placer.take_lines(lines)


def _draw_pieces(board: Board, plan: CoursePlan) -> list[Small]:
    """Draw and hatch the pieces; the cuts too small for their letter are given back."""
    small: list[Small] = []
    boxes, heavy, hatch = list[Box](), list[Box](), list[Segment]()
    for leg in plan.building.drawn:
        pieces = plan.pieces_of(leg)
        if not pieces:
            continue
        if plan.scale.on_paper(max(piece.length for piece, _ in pieces)) < LEAST_MODULE:
            boxes.append(plan.box(leg.extent(0, leg.wall.wall.length, 0, plan.building.thickness)))
            continue
        heavy += _through(plan, leg, pieces)
        pieces += plan.pier_pieces_of(leg)
        boxes += [box for piece, box in pieces if piece.shape != "corner L"]
        board.stroke(_ells(plan, leg, pieces), HEAVY_LINE)
        for piece, box in pieces:
            hatch += _hatch(board, piece, box)
            if piece.mark and fit_letter(box, piece.mark) is None:
                small.append((piece, box, leg))
    board.outline(boxes, UNIT_LINE)
    board.outline([box.shrunk(HEAVY_LINE / 2) for box in heavy], HEAVY_LINE)
    board.stroke(hatch, THIN_LINE)
    return small


def _through(plan: CoursePlan, leg: Leg, pieces: list[tuple[Piece, Box]]) -> list[Box]:
    """The corner pieces of a wall that runs through."""
    joins = (leg.wall.wall.left_end, leg.wall.wall.right_end)
    first, last = min(pieces, key=lambda one: one[0].left), max(pieces, key=lambda one: one[0].right)
    ends = ((False, *first), (True, *last))
    return [box for (right, piece, box), kind in zip(ends, joins, strict=True)
            if kind in ("outside corner", "inside corner") and plan.is_through(leg, right) and piece.shape != "corner L"]


def _ells(plan: CoursePlan, leg: Leg, pieces: list[tuple[Piece, Box]]) -> list[Segment]:
    """The outlines of a wall's L corner units."""
    lines = list[Segment]()
    for piece, _ in pieces:
        if piece.shape == "corner L" and plan.building.ell is not None:
            places = leg.ell_outline(piece.left, piece.right, plan.building.thickness, plan.building.ell)
            points = [plan.point(place) for place in places]
            lines += [Segment(*one, *other) for one, other in zip(points, (*points[1:], points[0]), strict=True)]
    return lines


def _hatch(board: Board, piece: Piece, box: Box) -> list[Segment]:
    text = fit_letter(box, piece.mark) if piece.mark else None
    if text:
        board.letter(text)
    blank = measure_text(text).shrunk(-0.35) if text else None
    inner = box.shrunk(UNIT_LINE / 2)
    if piece.piece in ("cut", "closer"):
        return hatch_cut(inner, blank)
    if piece.piece == "full" or min(box.width, box.height) < 1.0:
        return []
    return hatch_half(inner) if piece.piece == "half" else hatch_part(inner)
