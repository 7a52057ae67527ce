"""Walls one brick thick: headers and closers as they must be, closers beside quoin headers, the back as the face."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from wallplan.findings import Finding
from wallplan.layout.model import Course, Piece
from wallplan.rules.as_laid import ROUNDING, AsLaid
from wallplan.rules.reporting import Break, exact, report_breaks, report_held, size
from wallplan.rules.sources import HEADERS
from wallplan.rules.turns import (
    Turns,
    find_courses_out_of_turn,
    find_departures,
    find_runs,
    find_untied,
    read_turns,
    tell_ties,
)

CORNERS = ("outside corner", "inside corner")


def check_headers(wall: AsLaid) -> tuple[Finding, ...]:
    """Every header, closer and pair of a one-brick wall. () for walls of another thickness."""
    masonry = wall.masonry
    if not masonry.one_brick:
        return ()
    limit = "closers beside quoin headers, a like brick behind every stretcher"
    turns = read_turns(wall)
    breaks = [*_off_size(wall), *_off_place(wall), *find_courses_out_of_turn(wall, turns), *find_untied(wall),
              *_unlike_behind(wall), *_straight_behind(wall)]
    broken = report_breaks(wall, "headers", HEADERS, breaks)
    if broken:
        return broken
    pieces = [piece for course in wall.layout.courses for piece in course.pieces]
    headers = sum(piece.shape == "header" for piece in pieces)
    closers = sum(piece.shape == "closer" for piece in pieces)
    figure = f"{headers} headers and {closers} closers go through; {_tell_departures(wall, turns)}"
    return (report_held(wall, "headers", HEADERS, figure, limit), *tell_ties(wall))


def _off_size(wall: AsLaid) -> Iterator[Break]:
    unit, joint = wall.masonry.unit, wall.masonry.joint
    wanted = {"header": unit.thickness, "closer": (unit.length + joint) // 4 - joint}
    for number, course in enumerate(wall.layout.courses):
        for piece in course.pieces:
            length, name = wanted.get(piece.shape), "closer" if piece.shape == "closer" else "full"
            if length is not None and piece.piece != name:
                yield Break(number, piece.left, f"a {piece.shape} called {piece.piece}", name, f"call it {name}")
            if length is not None and abs(piece.length - length) > 2 * ROUNDING:
                yield Break(number, piece.left, f"a {piece.shape} of {exact(wall, piece.length, length)}",
                            size(wall, length), f"lay a {piece.shape}, {size(wall, length)} on the face")


def _off_place(wall: AsLaid) -> Iterator[Break]:
    """Closers that stand anywhere but beside the header at the end of a run."""
    for number, course in enumerate(wall.layout.courses):
        for run in find_runs(wall, course):
            for place, piece in enumerate(run):
                if piece.shape == "closer" and not _beside_quoin(run, place):
                    yield Break(number, piece.left, "a closer in the run of the wall", "next to the quoin header",
                                "lay it beside the header at the quoin or jamb")


def _beside_quoin(run: list[Piece], place: int) -> bool:
    ends = ((1, 0), (len(run) - 2, len(run) - 1))
    return any(place == at and 0 <= end < len(run) and run[end].shape in ("header", "return") for at, end in ends)


def _unlike_behind(wall: AsLaid) -> Iterator[Break]:
    """Stretchers without their like behind them, but quoin stretchers, behind which the other wall goes on."""
    for number, course in enumerate(wall.layout.courses):
        behind = {(piece.left, piece.length, piece.bottom, piece.height) for piece in course.backing}
        fronts = {(piece.left, piece.length, piece.bottom, piece.height) for piece in course.pieces if piece.leaf == "front"}
        quoins = {span for span in fronts - behind if _is_quoin(wall, span)}
        for left, *_ in sorted((fronts - behind - quoins) | (behind - fronts)):
            yield Break(number, left, "no brick of the same length behind this stretcher", "stretchers in pairs",
                        "lay a like brick behind it")


def _is_quoin(wall: AsLaid, span: tuple[int, int, int, int]) -> bool:
    own = wall.layout.wall
    return (own.left_end in CORNERS and span[0] <= 0) or (own.right_end in CORNERS and span[0] + span[1] >= own.length)


def _straight_behind(wall: AsLaid) -> Iterator[Break]:
    """Head joints at the back that stand over one another."""
    least, lines = wall.masonry.least_lap, [_joints_behind(wall, course) for course in wall.layout.courses]
    for number, (below, above) in enumerate(pairwise(lines), start=1):
        for at in above:
            near = min((abs(at - other) for other in below), default=least)
            if near < least - ROUNDING:
                yield Break(number, at, f"at the back {exact(wall, near, least)}", size(wall, least),
                            f"move this joint {size(wall, least - near)}")


def _joints_behind(wall: AsLaid, course: Course) -> list[int]:
    backs = sorted([*course.backing, *(piece for piece in course.pieces if piece.leaf in ("through", "back"))])
    controls = wall.layout.wall.control_joints
    return [(one.right + two.left) // 2 for one, two in pairwise(backs) if two.left - one.right <= wall.hole
            and not any(one.right <= joint <= two.left for joint in controls)]


def _tell_departures(wall: AsLaid, turns: Turns) -> str:
    """Where the bond is broken: headers or stretchers out of turn, and pairs sawn to length."""
    found: dict[int, int] = {}
    for number, course in enumerate(wall.layout.courses):
        for run in find_runs(wall, course):
            for at in find_departures(turns, number, run):
                found[at] = found.get(at, 0) + 1
    if not found:
        return "the bond is kept throughout"
    shown = ", ".join(size(wall, at) for at in sorted(found)[:6]) + (" and more" if len(found) > 6 else "")
    return f"broken bond in {max(found.values())} courses at {shown} from the left end"
