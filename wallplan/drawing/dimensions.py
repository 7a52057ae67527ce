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
from wallplan.drawing.spread import spread
from wallplan.drawing.view import View
from wallplan.layout.model import WallLayout
from wallplan.lengths import print_length
from wallplan.plan.job import Job

LINE_DROP = 4.0
"""From the wall's foot to the line of running distances, mm."""

_TICK = 1.2
_GAP = 1.0
_APART = 0.4
_MOST_ROWS = 8
_LEAD = 4.5
_CLEAR = 0.7
_NUDGES = (0.0, 0.25, -0.25)
_STEPS = (1, 2, 3, 5, 10, 20, 50, 100)


@dataclass(frozen=True)
class Figure:
    """A running distance: where its tick stands, where its lettering is centred and in which row, from 0, or upright."""

    x: float
    centre: float
    row: int
    text: str
    upright: bool = False


def running_points(view: View) -> tuple[int, ...]:
    """Distances in view that are told: ends, jambs, control joints, steps of footing and top, ridges and match lines."""
    wall, window = view.wall.wall, view.window
    jambs = {side for opening in view.openings for side in (opening.left, opening.right)}
    risers = set() if wall.outline is None else {
        *(at for at, _ in wall.outline.footing),
        *(at for at, level in wall.outline.top if window.bottom < level <= window.top)}
    points = {0, wall.length, *wall.control_joints, *jambs, *window.matches, *risers}
    return tuple(sorted(point for point in points if window.left <= point <= window.right))


def stagger(view: View, height: float) -> tuple[Figure, ...]:
    """Running figures in as few rows as keep them apart, the ends' first; where a row is full a figure stands in the
    next, or aside of its tick. If a figure finds no room the ends' figures stand outward, or all are set from left to
    right, or in rows in turn; the attempt that leaves out fewest counts. Piers are marked where all find room.
    Figures 3.5 mm high that do not all find room stand upright, none left out."""
    points = running_points(view)
    plain = _stagger(view, points, height)
    piers = {side for pier in view.wall.wall.piers for side in (pier.left, pier.right)
             if view.window.left <= side <= view.window.right}
    if piers - {*points}:
        found = _stagger(view, tuple(sorted({*points, *piers})), height)
        rows, most = (max((figure.row for _, figure in figures), default=0) for figures in (found, plain))
        if {*points, *piers} == {point for point, _ in found} and rows <= most + 1:
            return tuple(figure for _, figure in found)
    if len(plain) < len(points) and height <= FIGURES:
        return _stand_upright(view, points, height)
    return tuple(figure for _, figure in plain)


def is_complete(view: View, figures: tuple[Figure, ...]) -> bool:
    """Whether every distance that a view must tell is among its figures."""
    return len(figures) >= len(running_points(view))


def _stand_upright(view: View, points: tuple[int, ...], height: float) -> tuple[Figure, ...]:
    """All figures upright under their ticks, moved apart where these are close."""
    low, high = (max(view.reach[0], view.outline.left - 20.0), min(view.reach[1], view.outline.right + 20.0))
    places = [view.across(point) for point in points]
    middles = spread(places, (1.05 + _APART) * height, low + height / 2, high - height / 2)
    return tuple(Figure(x, middle, 0, _tell(view, point), upright=True)
                 for x, middle, point in zip(places, middles, points, strict=True))


def _tell(view: View, point: int) -> str:
    told = view.face.told(point)
    return print_length(told, view.job.measure) if told else "0"


def _stagger(view: View, points: tuple[int, ...], height: float) -> tuple[tuple[int, Figure], ...]:
    ends = {points[0]: -1, points[-1]: 1}
    ends_first = sorted(points, key=lambda point: (point not in ends, point))
    attempts: list[tuple[Sequence[int], dict[int, int], int]] = [
        (ends_first, {}, 1), (ends_first, ends, 1), (points, {}, 1), (points, ends, 1),
    ]
    for turns in (2, 3):  # rows in turn, the lowest first, so that its leaders are kept free
        in_turn = sorted(points, key=lambda point: (-(points.index(point) % turns), point))
        attempts += [(in_turn, {}, turns), (in_turn, ends, turns)]
    best: tuple[tuple[int, Figure], ...] = ()
    for order, outward, turns in attempts:
        placer = Placer(Box(view.reach[0], -1.0, view.reach[1], 1e6))
        placed = [(point, _place_figure(placer, view, point, height, (outward.get(point, 0), points.index(point) % turns)))
                  for point in order]
        figures = tuple(sorted(((point, figure) for point, figure in placed if figure), key=lambda found: found[1].x))
        best = max(best, figures, key=len)
        if len(best) == len(points):
            break
    return best


def _place_figure(placer: Placer, view: View, point: int, height: float, wished: tuple[int, int]) -> Figure | None:
    """The first free place for a figure, measured from the line of running distances; ``wished`` is whether it stands
    outward (-1 left, 1 right) and the row that is tried first."""
    x, text = view.across(point), _tell(view, point)
    apart = max(_GAP, _APART * height) - _GAP / 2  # so that 0 and 327 are not read as one figure
    half = measure(text, height) / 2
    outward, first = wished
    farther = (1.3 * half, -1.3 * half) if view.wall.wall.outline is not None else ()
    shifts = (0.0, 0.35 * half, -0.35 * half, 0.7 * half, -0.7 * half, half, -half, *farther)
    for row in (*range(first, _MOST_ROWS), *range(first)):
        for shift in (outward * half, 0.8 * outward * half) if outward else shifts:
            figure = Figure(x, x + shift, row, text)
            box = measure_text(_letter_figure(figure, 0.0, height))
            leader = _lead_figure(figure, 0.0, height)
            if placer.is_free(box, _GAP / 2) and placer.is_clear(leader, _GAP / 2):
                placer.take(Box(box.left - apart, box.top - _GAP / 2, box.right + apart, box.bottom + _GAP / 2))
                placer.take_lines([leader])
                return figure
    return None


def _letter_figure(figure: Figure, line: float, height: float) -> Text:
    if figure.upright:
        return Text(figure.centre + height / 2, line + _LEAD, figure.text, height, "end", upright=True)
    return Text(figure.centre, line + 2.0 + height + figure.row * _row_pitch(height), figure.text, height, "middle")


def _lead_figure(figure: Figure, line: float, height: float) -> Segment:
    if figure.upright:
        return Segment(figure.x, line, figure.centre, line + _LEAD - 0.8)
    return Segment(figure.x, line, figure.centre, line + 1.2 + figure.row * _row_pitch(height))


def running_height(figures: tuple[Figure, ...], height: float) -> float:
    """From the wall's foot to under the overall dimension, mm."""
    return LINE_DROP + _under_line(figures, height) + _row_pitch(height) + 2.0


def _under_line(figures: tuple[Figure, ...], height: float) -> float:
    """What the figures take under the line of running distances, mm."""
    if any(figure.upright for figure in figures):
        return _LEAD + max(measure(figure.text, height) for figure in figures)
    return _row_pitch(height) * (1 + max((figure.row for figure in figures), default=0))


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
    _draw_overall(board, view, line + 2.0 + height / 2 + _under_line(figures, height), height)


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
    """How high course numbers and heights are, up to ``figures`` mm, and every how many courses one
    stands: each if it can."""
    pitch = view.scale.on_paper(view.job.masonry.unit.gauge)
    for height in (LARGE_FIGURES, 4.5, 4.0, FIGURES):
        if height <= figures and _stack_pitch(view, height) <= pitch:
            return height, 1
    return figures, next((step for step in _STEPS if step * pitch >= _stack_pitch(view, figures)), _STEPS[-1])


def _stack_pitch(view: View, height: float) -> float:
    """From one height to the next over it at least, mm: fractions hang lower than whole figures."""
    hanging = max((measure_text(Text(0, 0, print_length(course.top, view.job.measure), height)) for course in view.courses),
                  key=lambda box: box.height, default=Box(0, 0, 0, 0))
    return max(height + _CLEAR, hanging.height + 0.1)


def numbered_courses(first: int, last: int, step: int) -> tuple[int, ...]:
    """The courses that are numbered: every one, or the last and each whole ``step`` that is clear of it, and the first
    where that is clear too."""
    numbers = [number for number in range(first, last) if number % step == 0 and last - number >= step]
    if not numbers or numbers[0] - first >= step:
        numbers = [*((first,) if last - first >= step else ()), *numbers]
    return (*numbers, last)


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
    for number in reversed(numbers):  # the top's height is the one that must stand
        course = view.wall.courses[number - 1]
        middle = (view.up(course.bottom) + view.up(course.top)) / 2 + height / 2
        for x in (outline.left - 2.5, outline.right + 2.0 + width):
            texts = (Text(x, middle + aside * height, str(number), height, "end") for aside in _NUDGES)
            any(board.letter_if_free(text, 0.1) for text in texts)
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
