"""What is lettered round a course in plan: lengths, names, gaps, corner numbers, diagonals, and letters of small cuts."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from wallplan.drawing.board import Board
from wallplan.drawing.course_plan import CoursePlan, Small
from wallplan.drawing.ground_plan import Building, Leg
from wallplan.drawing.lettering import FIGURES, LARGE_FIGURES, SMALLEST, clean, measure, measure_text
from wallplan.drawing.outlines import THIN_LINE
from wallplan.drawing.primitives import Box, Segment, Text
from wallplan.lengths import print_length

_DROP = 5.0
_SHIFTS = (0.0, *(way * shift for shift in (6.0, 12.0, 18.0, 24.0, 30.0, 36.0, 44.0) for way in (1, -1)))


def letter_course(board: Board, plan: CoursePlan, small: list[Small]) -> tuple[str, ...]:
    """Letter a course that is drawn; what found no room on the drawing is given back in words."""
    if len(plan.building.points) > 2:
        _number_corners(board, plan)
    missing = [words for letter in (_letter_length, _letter_gaps, _letter_name) for leg in plan.building.drawn
               if leg not in plan.building.piers for words in letter(board, plan, leg)]
    if plan.building.shows_diagonals:
        centre = plan.box(plan.building.extent).centre
        _letter_diagonals(board, plan, centre.x, centre.y)
    return (*missing, *_letter_small(board, small))


def _letter_diagonals(board: Board, plan: CoursePlan, x: float, y: float) -> None:
    words = f"1 to 3 = 2 to 4 = {print_length(plan.building.checks()[0].length, plan.measured)}"
    for height, drop, side in product((FIGURES, SMALLEST), range(4, 60, 2), (-1, 1)):
        if abs(drop) < plan.box(plan.building.extent).height / 2 and board.letter_if_free(
                Text(x, y + side * drop + height / 2, words, height, "middle"), 0.8):
            return


def _number_corners(board: Board, plan: CoursePlan) -> None:
    """A point's number off the walls: over the corner, where no length is drawn, or where else it is free."""
    for number, place in enumerate(plan.building.points, start=1):
        x, y = plan.point(place)
        words = str(number)
        reach = measure(words, FIGURES) / 2 + 1.0
        (off_x, off_y), inward = _way_off(plan.building, number), len(words) > 1
        thick = plan.scale.on_paper(plan.building.thickness)
        ways = [(-off_x, -off_y, thick)] if inward else [(off_x, off_y, 0.0), (off_x, off_y, thick)]
        ways += [(a, b, away) for away in (0.0, thick + 0.5, thick + 4.0) for a, b in product((-1, 1), (1, -1))]
        spots = [(x + a * (reach + away), y + b * (2.9 + away)) for a, b, away in ways]
        for left, middle in spots:
            if board.letter_if_free(Text(left, middle + FIGURES / 2, words, FIGURES, "middle"), 0.15):
                break


def _way_off(building: Building, number: int) -> tuple[int, int]:
    """From a point off the walls on the paper: outward at an outside corner, into the room at an inside one."""
    if number not in building.corners:
        leg, on = (building.legs[0], -1) if number == 1 else (building.legs[-1], 1)
        return leg.way.y + on * leg.way.x, leg.way.x - on * leg.way.y
    before, after = building.meeting(number)
    turn = 1 if before.wall.wall.right_end == "outside corner" else -1
    return turn * (before.way.y + after.way.y), turn * (before.way.x + after.way.x)


def _letter_length(board: Board, plan: CoursePlan, leg: Leg) -> list[str]:
    """The length out to out on a line outside the wall, or in words where that finds no room."""
    wall = leg.wall.wall
    return [] if _draw_length(board, plan, leg) else [
        f"{clean(wall.name)} {print_length(wall.length, plan.measured)} long"]


def _letter_gaps(board: Board, plan: CoursePlan, leg: Leg) -> list[str]:
    """The gaps that openings leave in this course."""
    wall, course = leg.wall.wall, plan.course_of(leg)
    missing = []
    for opening in wall.openings:
        if course and opening.bottom < course.top and opening.top > course.bottom:
            words = f"{clean(opening.name)} {print_length(opening.right - opening.left, plan.measured)}"
            if not _letter_along(board, plan, leg, (opening.left + opening.right) // 2, words):
                missing.append(f"{clean(wall.name)}: {words}")
    return missing


def _letter_name(board: Board, plan: CoursePlan, leg: Leg) -> list[str]:
    name = clean(leg.wall.wall.name)
    if len(plan.building.drawn) == 1:
        return []
    found = _letter_along(board, plan, leg, leg.wall.wall.length // 2, name)
    return [] if found else [f"wall {name} between {_tell_ends(plan, leg)}"]


def _tell_ends(plan: CoursePlan, leg: Leg) -> str:
    if leg in plan.building.stems:
        return " and ".join(clean(one.meets) for one in leg.wall.wall.abuts)
    number = plan.building.legs.index(leg)
    return f"{number + 1} and {(number + 1) % len(plan.building.points) + 1}"


def _draw_length(board: Board, plan: CoursePlan, leg: Leg) -> bool:
    """The length out to out, on a line outside the wall; False where it finds no room."""
    level = leg.way.y == 0
    out_x, out_y = leg.way.y, leg.way.x  # outward on the paper, where y runs down
    (x1, y1), (x2, y2) = plan.point(leg.at(0, 0)), plan.point(leg.at(leg.wall.wall.length, 0))
    drop = _DROP + plan.scale.on_paper(max((one.front for one in leg.wall.wall.piers), default=0))
    line = Segment(x1 + out_x * drop, y1 + out_y * drop, x2 + out_x * drop, y2 + out_y * drop)
    words = print_length(leg.wall.wall.length, plan.measured)
    for height, aside in product((LARGE_FIGURES, FIGURES), (0.0, 0.1, -0.1, 0.2, -0.2, 0.3, -0.3)):
        long = abs(line.x2 - line.x1) + abs(line.y2 - line.y1)
        beside = long / 2 - abs(aside) * long - measure(words, height) / 2  # spare between figure and slash
        away = (1.0 if beside >= 1.0 else 1.8) + height / 2
        if beside < 1.0 and (aside or height > FIGURES):
            continue
        x = line.x1 + (line.x2 - line.x1) * (0.5 + aside) + out_x * away
        y = line.y1 + (line.y2 - line.y1) * (0.5 + aside) + out_y * away
        text = (Text(x, y + height / 2, words, height, "middle") if level
                else Text(x + height / 2, y, words, height, "middle", upright=True))
        if board.placer.is_free(measure_text(text), 0.8) and board.placer.is_clear(_shorten(line), 0.2):
            board.letter(text)
            ticks = [line, *_end_ticks(line, x1, y1), *_end_ticks(Segment(line.x2, line.y2, 0, 0), x2, y2)]
            board.stroke(ticks, THIN_LINE)
            board.placer.take_lines(ticks)
            return True
    return False


def _shorten(line: Segment) -> Segment:
    """The line without its ends, which may stand on another wall's face."""
    across, down = (min(1.5, max(-1.5, (end - start) / 3)) for start, end in ((line.x1, line.x2), (line.y1, line.y2)))
    return Segment(line.x1 + across, line.y1 + down, line.x2 - across, line.y2 - down)


def _end_ticks(line: Segment, x: float, y: float) -> list[Segment]:
    """The slash at a dimension's end, and the line that leads to it from the wall."""
    near_x, near_y = (line.x1 - x) / _DROP, (line.y1 - y) / _DROP
    return [Segment(line.x1 - 0.8, line.y1 + 0.8, line.x1 + 0.8, line.y1 - 0.8),
            Segment(x + near_x, y + near_y, line.x1 + near_x * 0.8, line.y1 + near_y * 0.8)]


def _letter_along(board: Board, plan: CoursePlan, leg: Leg, along: int, words: str) -> bool:
    """Letter words beside a wall, inside before outside, as near ``along`` as they are free."""
    level = leg.way.y == 0
    out_x, out_y = leg.way.y, leg.way.x
    reach = plan.scale.on_paper(leg.wall.wall.length) / 2
    for side, row, height, shift in _offers():
        if shift and abs(shift) + measure(words, height) / 2 > reach:
            continue
        deep = plan.building.thickness if side < 0 else 0
        x, y = plan.point(leg.at(along, deep))
        away = 2.3 + height / 2 + row
        x, y = x + out_x * side * away, y + out_y * side * away
        text = (Text(x + shift, y + height / 2, words, height, "middle") if level
                else Text(x + height / 2, y + shift, words, height, "middle", upright=True))
        box = measure_text(text)
        if board.placer.is_free(Box(box.left - 2 * level, box.top, box.right + 2 * level, box.bottom), 0.4):
            board.letter(text)
            return True
    return False


def _offers() -> Iterator[tuple[int, float, float, float]]:
    """Which side, how far off, how high and how far aside, the best first."""
    for height in (FIGURES, SMALLEST):
        for side, row in ((-1, 0.0), (-1, 5.5), (1, 0.0)):
            yield from ((side, row, height, shift) for shift in _SHIFTS)


def _letter_small(board: Board, cuts: list[Small]) -> list[str]:
    """Letters of small cuts beside the wall, with a leader from the piece."""
    missing = []
    offers = tuple(product((-1, 1), (3.2, 7.0, 11.0), _SHIFTS[:7]))
    for piece, box, leg in cuts:
        assert piece.mark
        if not any(_lead_out(board, box, leg, piece.mark, offer) for offer in offers):
            missing.append(f"{piece.mark} in {clean(leg.wall.wall.name)}")
    return list(dict.fromkeys(missing))


def _lead_out(board: Board, box: Box, leg: Leg, mark: str, offer: tuple[int, float, float]) -> bool:
    side, away, shift = offer
    middle = box.centre
    reach = away + FIGURES / 2 + (box.height if leg.way.y == 0 else box.width) / 2
    x, y = middle.x + leg.way.y * side * reach, middle.y + leg.way.x * side * reach
    x, y = (x + shift, y) if leg.way.y == 0 else (x, y + shift)
    text = Text(x, y + FIGURES / 2, mark, FIGURES, "middle")
    letter = measure_text(text).shrunk(-0.5)
    end = Segment(middle.x, middle.y, min(max(middle.x, letter.left), letter.right),
                  min(max(middle.y, letter.top), letter.bottom))
    off = (0.9 + (box.height if leg.way.y == 0 else box.width) / 2) / reach
    outside = Segment(middle.x + off * (end.x2 - middle.x), middle.y + off * (end.y2 - middle.y), end.x2, end.y2)
    free = board.placer.is_free(measure_text(text), 0.4) and board.placer.is_clear(outside)
    if not free or board.placer.crosses(end):
        return False
    board.lead(end)
    board.letter(text)
    return True
