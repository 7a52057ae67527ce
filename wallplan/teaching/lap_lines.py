"""The lap, dotted and measured: from a joint of the course below up past the new course, to the nearest joint of that."""

from __future__ import annotations

from wallplan.drawing.board import Board
from wallplan.drawing.lettering import FIGURES, measure_text
from wallplan.drawing.outlines import THIN_LINE
from wallplan.drawing.primitives import Dash, Segment, Text
from wallplan.drawing.view import View
from wallplan.layout.model import Course
from wallplan.lengths import print_size
from wallplan.teaching.runs import WallRuns, is_layered

DOTTED: Dash = (0.5, 0.8)
"""The lap's lines."""

ROOM = 10.0
"""Over the wall, for the laps of its last course, mm."""

MOST_LAPS = 4
_APART = 32.0
_RISE = 3.2
_TICK = 0.9


def draw_laps(board: Board, view: View, runs: WallRuns, number: int) -> None:
    """Draw the least lap of a course over the one below, and others well apart from it, up to four.

    Nothing for course 1, in stack bond, and beside a course laid in layers.
    """
    below, course = runs.course(number - 1), runs.course(number)
    if below is None or course is None or runs.job.masonry.bond == "stack" or is_layered(below) or is_layered(course):
        return
    drawn: list[float] = []
    for lap, at, other in _find_laps(runs, view, number):
        middle = view.across((at + other) // 2)
        apart = len(drawn) < MOST_LAPS and all(abs(middle - one) >= _APART for one in drawn)
        if apart and _draw_lap(board, view, (course, at), (below, other), print_size(lap, runs.job.measure)):
            drawn.append(middle)


def _find_laps(runs: WallRuns, view: View, number: int) -> list[tuple[int, int, int]]:
    """Lap, joint and nearest joint below, of all joints in view; the least lap first, then from the left."""
    found = []
    for at in runs.middles[number - 1]:
        other = runs.nearest(number - 1, at)
        if other is not None and all(view.window.left < place < view.window.right for place in (at, other)):
            found.append((abs(at - other), at, other))
    return sorted(found)


def _draw_lap(board: Board, view: View, new: tuple[Course, int], old: tuple[Course, int], words: str) -> bool:
    top = view.up(new[0].top)
    y = top - _RISE
    xs = (view.across(new[1]), view.across(old[1]))
    text = Text(sum(xs) / 2, y - 2.4, words, FIGURES, "middle")
    level = Segment(min(xs), y, max(xs), y)
    if not board.placer.is_free(measure_text(text), 0.4) or not board.placer.is_clear(level):
        return False
    board.letter(text)
    uprights = [Segment(x, y - 0.6, x, view.up(course.bottom)) for x, course in zip(xs, (new[0], old[0]), strict=True)]
    board.stroke([part for line in uprights for part in board.placer.spare(line, 0.3)], 0.35, DOTTED)
    board.stroke([level, *(Segment(x - _TICK, y + _TICK, x + _TICK, y - _TICK) for x in xs)], THIN_LINE)
    board.placer.take_lines([*uprights, level])
    return True
