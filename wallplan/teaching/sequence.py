"""The order in which a wall is really laid: in each lift the leads first, course by course; then each course is filled to
the line, from both sides to the closure. Common practice, no source; leads as in NAVEDTRA 14043.

What stands on an opening's head waits for the lintel, and nothing is laid before all that it rests on.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Literal, NamedTuple

from wallplan.layout.corners import joined_to
from wallplan.layout.leads import count_lead_courses, find_rack, measure_end_piers, plan_leads
from wallplan.layout.model import Course, Layout, Lead, Piece, WallLayout
from wallplan.teaching.runs import Run, WallRuns, read_runs

Stage = Literal["lead", "fill"]

SIDES: tuple[Lead, ...] = ("left", "right")


class Step(NamedTuple):
    """One piece laid: its course, its lift (from 1), whether it belongs to a lead or to the fill, and to which lead.

    ``closure`` is True for the last piece of a run, with masonry on both sides. A piece of shape "return" is laid with the
    other wall, which counts it.
    """

    piece: Piece
    course: int
    lift: int
    stage: Stage
    side: Lead | None
    closure: bool

    @property
    def words(self) -> str:
        """What is being done, in words."""
        if self.stage == "lead":
            return f"{self.side} lead, course {self.course}"
        return f"fill to the line, course {self.course}" + (", closure" if self.closure else "")


def order_wall(layout: Layout, index: int) -> tuple[Step, ...]:
    """Every piece of a wall once, in the order of laying; a wall too short for leads is filled course by course.

    ``index`` is the wall's place in the plan. () for a wall without courses. IndexError for a place that the plan has not.
    """
    return order_runs(read_runs(layout, index), _count_lift(layout, index))


def order_runs(runs: WallRuns, lift: int) -> tuple[Step, ...]:
    """The order of a wall whose runs are known; ``lift`` is how many courses its leads have."""
    laid: set[tuple[int, Piece]] = set()
    steps: list[Step] = []
    courses = runs.wall.courses
    for first in range(0, len(courses), lift):
        raised = courses[first : first + lift]
        steps += _lead(runs, raised, laid, first // lift + 1)
        for course in raised:
            steps += _fill(runs, course, laid, first // lift + 1)
            laid.update((course.number, piece) for piece in course.pieces)
    return tuple(steps)


def _count_lift(layout: Layout, index: int) -> int:
    corners = joined_to(layout.job, index) != (None, None)
    wished = count_lead_courses(layout.job) if corners else layout.job.masonry.leads
    wall, masonry = layout.walls[index].wall, layout.job.masonry
    plan = plan_leads(wall.length, masonry.module, wished, find_rack(masonry), measure_end_piers(wall))
    return max(1, plan.courses if plan is not None else wished)


def _lead(runs: WallRuns, raised: tuple[Course, ...], laid: set[tuple[int, Piece]], lift: int) -> Iterator[Step]:
    """Both leads of a lift, one after the other, each from its end inwards and from the foot up."""
    for side in SIDES:
        for course in raised:
            own = [piece for piece in course.pieces if piece.lead == side]
            for piece in sorted(own, key=lambda piece: (piece.bottom, piece.left if side == "left" else -piece.right)):
                if _can_stand(runs, course, piece, laid):
                    laid.add((course.number, piece))
                    yield Step(piece, course.number, lift, "lead", side, False)


def _can_stand(runs: WallRuns, course: Course, piece: Piece, laid: set[tuple[int, Piece]]) -> bool:
    """Whether all that a piece rests on is laid, and no opening's head is under it. Lintels wait for both jambs."""
    if piece.shape in ("lintel", "precast") or stands_on_head(runs.wall, course, piece):
        return False
    return all(place in laid for place in rests_on(runs.wall, course, piece))


def stands_on_head(wall: WallLayout, course: Course, piece: Piece) -> bool:
    """Whether a piece lies on the head of an opening, in part or whole."""
    bed = max(wall.bed, piece.bottom - course.bottom)
    return any(opening.left < piece.right and opening.right > piece.left
               and piece.bottom - bed <= opening.top <= piece.bottom for opening in wall.wall.openings)


def rests_on(wall: WallLayout, course: Course, piece: Piece) -> tuple[tuple[int, Piece], ...]:
    """Course number and piece of each that lies under a piece: in the course below, or in the layer below of its own."""
    below = [(course.number, other) for other in course.pieces if other.top <= piece.bottom]
    if course.number > 1:
        below += [(course.number - 1, other) for other in wall.courses[course.number - 2].pieces]
    return tuple((number, other) for number, other in below if other.left < piece.right and other.right > piece.left)


def _fill(runs: WallRuns, course: Course, laid: set[tuple[int, Piece]], lift: int) -> Iterator[Step]:
    """What the leads left of a course: other walls' units, then run by run, the lower layer first."""
    for piece in course.pieces:
        if piece.shape == "return" and (course.number, piece) not in laid:
            yield Step(piece, course.number, lift, "fill", None, False)
    for run in runs.runs[course.number - 1]:
        rest = [piece for piece in run.pieces if (course.number, piece) not in laid]
        closure = find_closure(run, rest)
        if closure is None:
            yield from (Step(piece, course.number, lift, "fill", None, False) for piece in rest)
            continue
        left = [piece for piece in rest if piece.left < closure.left]
        right = [piece for piece in reversed(rest) if piece.left > closure.left]
        yield from (Step(piece, course.number, lift, "fill", None, False) for piece in (*left, *right))
        yield Step(closure, course.number, lift, "fill", None, True)


def find_closure(run: Run, rest: Iterable[Piece]) -> Piece | None:
    """The piece that closes a run: of those left to lay, not at the run's ends, a cut or else the one nearest the middle.

    None where only end pieces are left: at a jamb or an end nothing is closed.
    """
    left = [piece for piece in rest if piece not in (run.pieces[0], run.pieces[-1])]
    if not left:
        return None
    middle = left[0].left + left[-1].right

    def preference(piece: Piece) -> tuple[bool, bool, int]:
        return piece.shape in ("lintel", "precast"), piece.piece != "cut", abs(piece.left + piece.right - middle)

    return min(left, key=preference)
