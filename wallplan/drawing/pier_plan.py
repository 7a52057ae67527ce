"""One pier in plan: a course that ties it in or one in which the wall goes on, to scale with its sizes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from wallplan.drawing.board import Board
from wallplan.drawing.hatching import hatch_cut, hatch_half, hatch_part
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, SMALLEST, clean, measure, measure_text, shorten
from wallplan.drawing.letters import fit_letter
from wallplan.drawing.outlines import THIN_LINE, UNIT_LINE
from wallplan.drawing.paper import Scale
from wallplan.drawing.primitives import Box, Dash, Segment, Text
from wallplan.layout.model import Piece, PierCourse, PierLayout, WallLayout
from wallplan.lengths import Measure, print_length

TITLE, FOOT, SIDE, GAP = 14.0, 19.0, 20.0, 6.0
"""Over, under, beside and between the drawings for what is lettered there, mm."""

BREAK_DASH: Dash = (1.5, 1.0)
"""Where the wall is broken off."""


@dataclass(frozen=True)
class PierPlan:
    """A course of a pier at a scale, its upper left corner at (``x``, ``y``) on the sheet, mm.

    ``stub`` is how much of the wall is shown beside it, ``thick`` the wall's thickness, in ticks.
    """

    wall: WallLayout
    pier: PierLayout
    course: PierCourse
    scale: Scale
    measured: Measure
    thick: int
    stub: int
    x: float
    y: float

    @property
    def ends(self) -> tuple[int, int]:
        """From where to where along the wall it is drawn."""
        one = self.pier.pier
        return max(0, one.left - self.stub), min(self.wall.wall.length, one.right + self.stub)

    @property
    def deep(self) -> int:
        """How deep the pier is, with the wall."""
        return self.pier.pier.front + self.thick + self.pier.pier.back

    @property
    def size(self) -> tuple[float, float]:
        """Width and height with all lettering, mm."""
        wide = self.scale.on_paper(self.ends[1] - self.ends[0]) + SIDE
        return (max(wide, measure(self.title, LARGE_FIGURES), measure(self.told, SMALLEST)) + GAP,
                TITLE + self.scale.on_paper(self.deep) + FOOT)

    @property
    def title(self) -> str:
        """Which courses are laid so."""
        return f"COURSE {self.course.number} ({'odd' if self.course.number % 2 else 'even'})"

    @property
    def told(self) -> str:
        """What the course does."""
        does = "ties the pier in" if self.course.tied else "the wall goes on"
        return f"{shorten(clean(self.pier.pier.name), SMALLEST, 40.0)}: {does}"

    def box(self, left: int, right: int, near: int, far: int) -> Box:
        """A rectangle of the wall on the paper, seen from above with the outside face below."""
        start, front = self.ends[0], self.pier.pier.front
        low = self.y + TITLE + self.scale.on_paper(self.deep)
        return Box(self.x + self.scale.on_paper(left - start), low - self.scale.on_paper(far + front),
                   self.x + self.scale.on_paper(right - start), low - self.scale.on_paper(near + front))


def draw_pier(board: Board, plan: PierPlan) -> None:
    """Draw a course of a pier, the wall beside it, and its sizes."""
    board.letter(Text(plan.x, plan.y + LARGE_FIGURES + 1.0, plan.title, LARGE_FIGURES),
                 Text(plan.x, plan.y + LARGE_FIGURES + 5.5, plan.told, SMALLEST))
    boxes = [(one.piece, plan.box(one.piece.left, one.piece.left + one.along, one.near, one.near + one.deep))
             for one in plan.course.pieces]
    boxes += list(_wall_boxes(plan))
    hatch: list[Segment] = []
    for piece, box in boxes:
        hatch += _hatch(board, piece, box)
    board.outline([box for _, box in boxes], UNIT_LINE)
    board.stroke(hatch, THIN_LINE)
    _draw_breaks(board, plan)
    _draw_sizes(board, plan)


def _wall_boxes(plan: PierPlan) -> Iterator[tuple[Piece, Box]]:
    """The wall's own units of the course beside and, where it goes on, within the pier."""
    left, right = plan.ends
    course = plan.wall.courses[plan.course.number - 1]
    unit = min((min(one.along, one.deep) for one in plan.course.pieces if one.piece.piece == "full"), default=plan.thick)
    for piece in course.bricks:
        if piece.shape != "return" and piece.right > left and piece.left < right:
            near, far = {"front": (0, unit), "back": (plan.thick - unit, plan.thick)}.get(piece.leaf or "", (0, plan.thick))
            whole = left <= piece.left and piece.right <= right
            shown = piece if whole else piece._replace(mark=None, piece="full")
            yield shown, plan.box(max(piece.left, left), min(piece.right, right), near, far)


def _hatch(board: Board, piece: Piece, box: Box) -> list[Segment]:
    text = fit_letter(box, piece.mark) if piece.mark else None
    if text:
        board.letter(text)
    blank = measure_text(text).shrunk(-0.35) if text else None
    inner = box.shrunk(UNIT_LINE / 2)
    if piece.piece == "cut":
        return hatch_cut(inner, blank)
    if piece.piece == "full":
        return []
    return hatch_half(inner) if piece.piece == "half" else hatch_part(inner)


def _draw_breaks(board: Board, plan: PierPlan) -> None:
    """A broken line where the wall goes on past the drawing."""
    left, right = plan.ends
    wall = plan.box(left, right, 0, plan.thick)
    broken = [x for x, cut in ((wall.left, left > 0), (wall.right, right < plan.wall.wall.length)) if cut]
    board.stroke([Segment(x, wall.top - 2.5, x, wall.bottom + 2.5) for x in broken], THIN_LINE, BREAK_DASH)


def _draw_sizes(board: Board, plan: PierPlan) -> None:
    """Width under the pier with its distances from the wall's left end; depth and what stands out at its right."""
    one = plan.pier.pier
    box = plan.box(one.left, one.right, -one.front, plan.thick + one.back)
    y = box.bottom + 3.5
    board.stroke([Segment(box.left, y, box.right, y), *_ticks((box.left, box.right), y, level=True)], THIN_LINE)
    board.letter(Text(box.centre.x, y + 1.5 + FIGURES, _show(plan, one.width), FIGURES, "middle"))
    places = f"from {_show(plan, one.left)} to {_show(plan, one.right)}"
    start = max(plan.x, min(box.centre.x - measure(places, SMALLEST) / 2, plan.x + plan.size[0] - measure(places, SMALLEST)))
    board.letter(Text(start, y + 3.5 + FIGURES + SMALLEST, places, SMALLEST),
                 Text(start, y + 5.5 + FIGURES + 2 * SMALLEST, "outside face below", SMALLEST))
    edges = sorted({-one.front, 0, plan.thick, plan.thick + one.back})
    x = plan.box(plan.ends[0], plan.ends[1], 0, 1).right + 4.0
    levels = [plan.box(0, 0, edge, edge).top for edge in edges]
    board.stroke([Segment(x, levels[0], x, levels[-1]), *_ticks(levels, x, level=False)], THIN_LINE)
    for (low, high), (lower, upper) in zip(pairwise(edges), pairwise(levels), strict=True):
        text = Text(x + 1.6, (lower + upper) / 2 + SMALLEST / 2, _show(plan, high - low), SMALLEST)
        board.letter_if_free(text, 0.2)


def _ticks(places: Iterable[float], at: float, *, level: bool) -> list[Segment]:
    points = [(place, at) if level else (at, place) for place in places]
    return [Segment(x - 0.8, y + 0.8, x + 0.8, y - 0.8) for x, y in points]


def _show(plan: PierPlan, ticks: int) -> str:
    return print_length(ticks, plan.measured)
