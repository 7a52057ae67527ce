"""Dimensions: running distances from the wall's left end, one overall, course numbers and course heights.

Every figure is the nearest 1/16 in or 1 mm to the exact distance from the end or the datum; none is a sum of
rounded ones.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from wallplan.drawing.board import Board
from wallplan.drawing.face import OUTSIDE, Face
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, Placer, measure, measure_text
from wallplan.drawing.outlines import THIN_LINE
from wallplan.drawing.primitives import Box, Segment, Text
from wallplan.drawing.view import View
from wallplan.layout.model import WallLayout
from wallplan.lengths import print_length
from wallplan.plan.job import Job

LINE_DROP = 4.0
"""From the wall's foot to the line of running distances, mm."""

_TICK = 1.2
_GAP = 1.0
_MOST_ROWS = 8
_CLEAR = 0.7
_STEPS = (1, 2, 3, 5, 10, 20, 50, 100)


@dataclass(frozen=True)
class Figure:
    """A running distance: where its tick stands, where its lettering is centred and in which row, from 0."""

    x: float
    centre: float
    row: int
    text: str


def running_points(view: View) -> tuple[int, ...]:
    """Distances in view that are marked on the footing: ends, jambs, control joints, steps, ridges and match lines."""
    wall, window = view.wall.wall, view.window
    jambs = {side for opening in view.openings for side in (opening.left, opening.right)}
    risers = () if wall.outline is None else tuple(at for at, _ in wall.outline.footing)
    points = {0, wall.length, *wall.control_joints, *jambs, *window.matches, *risers}
    return tuple(sorted(point for point in points if window.left <= point <= window.right))


def stagger(view: View, height: float) -> tuple[Figure, ...]:
    """Running figures in as few rows as keep them apart, the ends' first; where a row is full a figure stands in the
    next, or aside of its tick. If a figure finds no room the ends' figures stand outward, or all are set from left to
    right; the attempt that leaves out fewest counts. Steps of the top, ridges and piers are marked where all find room."""
    points, window = running_points(view), view.window
    plain = _stagger(view, points, height)
    for more in (_list_also(view), _list_also(view, piers=False)):
        also = {at for at in more if window.left <= at <= window.right}
        found = _stagger(view, tuple(sorted({*points, *also})), height) if also else []
        rows, most = (max((figure.row for _, figure in figures), default=0) for figures in (found, plain))
        if also and {*points, *also} == {point for point, _ in found} and rows <= most + bool(view.wall.wall.piers):
            return tuple(figure for _, figure in found)
    return tuple(figure for _, figure in plain)


def _list_also(view: View, *, piers: bool = True) -> set[int]:
    """What is marked where it finds room: steps of the top and ridges, and the sides of piers."""
    wall = view.wall.wall
    tops = set() if wall.outline is None else {at for at, _ in wall.outline.top}
    return tops | ({side for pier in wall.piers for side in (pier.left, pier.right)} if piers else set())


def _stagger(view: View, points: tuple[int, ...], height: float) -> tuple[tuple[int, Figure], ...]:
    ends = {points[0]: -1, points[-1]: 1}
    ends_first = sorted(points, key=lambda point: (point not in ends, point))
    attempts: tuple[tuple[Sequence[int], dict[int, int]], ...] = (
        (ends_first, {}), (ends_first, ends), (points, {}), (points, ends),
    )
    best: tuple[tuple[int, Figure], ...] = ()
    for order, outward in attempts:
        placer = Placer(Box(view.reach[0], -1.0, view.reach[1], 1e6))
        placed = [(point, _place_figure(placer, view, point, height, outward.get(point, 0))) for point in order]
        figures = tuple(sorted(((point, figure) for point, figure in placed if figure), key=lambda found: found[1].x))
        best = max(best, figures, key=len)
        if len(best) == len(points):
            break
    return best


def _place_figure(placer: Placer, view: View, point: int, height: float, outward: int) -> Figure | None:
    """The first free place for a figure, measured from the line of running distances; ``outward`` is -1 left, 1 right."""
    told, x = view.face.told(point), view.across(point)
    text = print_length(told, view.job.measure) if told else "0"
    half = measure(text, height) / 2
    farther = (1.3 * half, -1.3 * half) if view.wall.wall.outline is not None else ()
    shifts = (0.0, 0.35 * half, -0.35 * half, 0.7 * half, -0.7 * half, half, -half, *farther)
    for row in range(_MOST_ROWS):
        for shift in (outward * half, 0.8 * outward * half) if outward else shifts:
            figure = Figure(x, x + shift, row, text)
            box = measure_text(_letter_figure(figure, 0.0, height))
            leader = _lead_figure(figure, 0.0, height)
            if placer.is_free(box, _GAP / 2) and placer.is_clear(leader, _GAP / 2):
                placer.take(box.shrunk(-_GAP / 2))
                placer.take_lines([leader])
                return figure
    return None


def _letter_figure(figure: Figure, line: float, height: float) -> Text:
    return Text(figure.centre, line + 2.0 + height + figure.row * _row_pitch(height), figure.text, height, "middle")


def _lead_figure(figure: Figure, line: float, height: float) -> Segment:
    return Segment(figure.x, line, figure.centre, line + 1.2 + figure.row * _row_pitch(height))


def running_height(figures: tuple[Figure, ...], height: float) -> float:
    """From the wall's foot to under the overall dimension, mm."""
    rows = 1 + max((figure.row for figure in figures), default=0)
    return LINE_DROP + _row_pitch(height) * (rows + 1) + 2.0


def _row_pitch(height: float) -> float:
    return height + 2.2


def draw_running(board: Board, view: View, height: float) -> None:
    """The line of running distances under the wall, its figures, and the overall dimension."""
    outline = view.outline
    line = outline.bottom + LINE_DROP
    figures = stagger(view, height)
    ticks = [Segment(outline.left, line, outline.right, line)]
    for figure in figures:
        ticks += [Segment(figure.x, outline.bottom + 1.0, figure.x, line), _lead_figure(figure, line, height),
                  _slash(figure.x, line)]
        board.letter(_letter_figure(figure, line, height))
    board.stroke(ticks, THIN_LINE)
    board.placer.take_lines(ticks)
    rows = 1 + max((figure.row for figure in figures), default=0)
    _draw_overall(board, view, line + 2.0 + height / 2 + rows * _row_pitch(height), height)


def _slash(x: float, y: float) -> Segment:
    return Segment(x - _TICK, y + _TICK, x + _TICK, y - _TICK)


def _draw_overall(board: Board, view: View, y: float, height: float) -> None:
    """One line over the window's length, broken for its figure; an end off the sheet has no tick."""
    outline, wall = view.outline, view.wall.wall
    words = f"overall {print_length(wall.length, view.job.measure)}{' inside' * (view.face.name == 'inside')}"
    text = Text(outline.centre.x, y + height / 2, words, height, "middle")
    box = measure_text(text)
    if box.width + 8 > outline.width:
        text = Text(outline.left, y + height / 2, words, height)
        board.letter(text)
        return
    board.letter(text)
    lines = [Segment(outline.left, y, box.left - _GAP, y), Segment(box.right + _GAP, y, outline.right, y)]
    for x, seen in ((outline.left, view.window.left == 0), (outline.right, view.window.right == wall.length)):
        if seen:
            lines += [_slash(x, y), Segment(x, y - 1.8, x, y + 1.8)]
    board.stroke(lines, THIN_LINE)
    board.placer.take_lines(lines)


def fit_numbers(view: View, figures: float) -> tuple[float, int]:
    """How high course numbers are, up to ``figures`` mm, and every how many courses one stands: each if it can."""
    pitch = view.scale.on_paper(view.job.masonry.unit.gauge)
    for height in (LARGE_FIGURES, 4.5, 4.0, FIGURES):
        if height <= figures and height + _CLEAR <= pitch:
            return height, 1
    return figures, next((step for step in _STEPS if step * pitch >= figures + _CLEAR), _STEPS[-1])


def numbered_courses(first: int, last: int, step: int) -> tuple[int, ...]:
    """The courses that are numbered: every one, or each whole ``step`` with the first and last where they are clear."""
    numbers = [number for number in range(first, last + 1) if number % step == 0]
    if not numbers or numbers[0] - first >= step:
        numbers.insert(0, first)
    if last - numbers[-1] >= step:
        numbers.append(last)
    return tuple(numbers)


def side_widths(job: Job, wall: WallLayout, height: float, face: Face = OUTSIDE) -> tuple[float, float]:
    """Room that course numbers or the first distance take left of a wall, and numbers with heights right of it, mm."""
    number = measure(str(max(len(wall.courses), 10)), height)
    heights = max((measure(print_length(course.top, job.measure), height) for course in wall.courses), default=0.0)
    first = measure(print_length(face.told(0), job.measure), height) / 2
    return max(number + 3.5, first), number + heights + 7.0


def draw_levels(board: Board, view: View, figures: float) -> None:
    """Course numbers at both ends; at the right end, the height of each numbered course's top from the datum.

    ``figures`` is as high as they may be, mm.
    """
    height, step = fit_numbers(view, figures)
    first, last = view.window.courses
    outline = view.outline
    width = measure(str(max(last, 10)), height)
    after = outline.right + 2.0 + width + 3.5
    lines: list[Segment] = []
    numbers = numbered_courses(first, last, step)
    for number in (numbers[-1], *numbers[:-1]):  # the top's height is the one that must stand
        course = view.wall.courses[number - 1]
        middle = (view.up(course.bottom) + view.up(course.top)) / 2 + height / 2
        for x in (outline.left - 2.5, outline.right + 2.0 + width):
            board.letter_if_free(Text(x, middle, str(number), height, "end"), 0.1)
        top = view.up(course.top)
        if board.letter_if_free(Text(after, top + height / 2, print_length(course.top, view.job.measure), height), 0.1):
            lines.append(Segment(outline.right + 0.6, top, after - 0.8, top))
    _draw_datum(board, view, after, height)
    board.stroke([part for line in lines for part in board.placer.spare(line, 0.4)], THIN_LINE)


def _draw_datum(board: Board, view: View, x: float, height: float) -> None:
    if view.window.bottom == 0:
        y = view.outline.bottom
        if board.letter_if_free(Text(x, y + height / 2, "0", height), 0.2):
            board.stroke([Segment(view.outline.right + 0.6, y, x - 0.8, y)], THIN_LINE)
