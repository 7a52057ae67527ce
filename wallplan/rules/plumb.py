"""Plumb head joints: all odd courses share one set of joints, all even courses another, wherever their runs reach.

The layout does not say which joints are the set's. A joint is one where every course of its kind (odd, even)
whose run reaches the place has it. A joint that some lack is an exception only if every course that has it has it
as its first or last joint beside a jamb (or beside a precast lintel's end), where the set's own joint would leave a
piece under the least. Where a run's joints were opened or closed, they may be off by what the run took in all.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from wallplan.findings import Finding
from wallplan.rules.as_laid import ROUNDING, AsLaid
from wallplan.rules.line import Line, read_lines
from wallplan.rules.reporting import Break, exact, report_breaks, report_held, size
from wallplan.rules.sources import PLUMB
from wallplan.rules.turns import is_of_headers


@dataclass(frozen=True, eq=False)
class Doubt:
    """A place at which some lines of one kind have a joint and others, whose runs reach it, have none."""

    place: int
    have: list[Line]
    lack: list[Line]


def check_plumb(wall: AsLaid) -> tuple[Finding, ...]:
    """Odd and even courses each against their own kind; exceptions are told with the held rule."""
    lines = read_lines(wall)
    breaks, moved, layered = list[Break](), dict[tuple[int, int], str](), set[int]()
    sets = [[line for line in lines if line.odd is odd and not line.layered] for odd in (True, False)]
    for kind in sets if not wall.masonry.one_brick else _part_by_runs(wall, sets):
        _judge(wall, kind, breaks, moved)
    for line in lines:
        if line.layered:
            layered.update(line.courses)
            odd, even = (_judge_layer(wall, line, kind) for kind in sets)
            breaks.extend(odd if len(odd) <= len(even) else even)
    figure = _tell(wall, lines, moved, layered)
    return report_breaks(wall, "plumb", PLUMB, breaks) or (
        report_held(wall, "plumb", PLUMB, figure, "one set of joints for odd courses, one for even"),
    )


def _part_by_runs(wall: AsLaid, sets: list[list[Line]]) -> list[list[Line]]:
    """Lines of the same runs together: in bonds with headers a jamb's closers part its courses from those over it."""
    parted: dict[object, list[Line]] = {}
    for lines in sets:
        for line in lines:
            key = line.odd, line.start.tobytes(), line.end.tobytes(), _is_of_headers(wall, line)
            parted.setdefault(key, []).append(line)
    return list(parted.values())


def _is_of_headers(wall: AsLaid, line: Line) -> bool:
    """Whether a line's courses are of headers, where the bond has a course of them after several of stretchers."""
    if not wall.masonry.stretcher_courses:
        return False
    return is_of_headers(wall.layout.courses[line.courses[0]])


def _judge(wall: AsLaid, lines: list[Line], breaks: list[Break], moved: dict[tuple[int, int], str]) -> None:
    doubts = list(_find_doubts(wall, lines))
    told: set[tuple[int, int]] = set()
    for doubt in doubts:
        reasons = [line.why_moved(doubt.place, lines, doubt.lack, wall.masonry.least_piece, wall.masonry.module)
                   for line in doubt.have]
        # Lines that have it only within their drift are judged at their own joint's place.
        own = [reason for line, reason in zip(doubt.have, reasons, strict=True) if line.is_at(doubt.place)]
        if all(own):
            for line, reason in zip(doubt.have, reasons, strict=True):
                moved.update({(course, doubt.place): reason for course in line.courses if reason})
            continue
        extra = [line for line, reason in zip(doubt.have, reasons, strict=True) if not reason]
        if _count(extra) <= _count(doubt.lack):
            found = [(line, doubt.place) for line in extra]
        else:
            found = [(line, line.nearest(doubt.place, wall.masonry.least_piece)) for line in doubt.lack]
        for line, at in found:
            if (id(line), at) not in told:
                told.add((id(line), at))
                breaks.extend(_out_of_plumb(wall, line, at, doubt.place, lines))


def _count(lines: list[Line]) -> int:
    return sum(len(line.courses) for line in lines)


def _find_doubts(wall: AsLaid, lines: list[Line]) -> Iterator[Doubt]:
    if len(lines) < 2:
        return
    places = np.concatenate([line.joints for line in lines])
    slack = np.concatenate([line.slack for line in lines])
    order = np.lexsort((slack, places))
    places, slack = places[order], slack[order]
    new = np.concatenate(([True], np.diff(places) > 0)) if len(places) else np.zeros(0, dtype=bool)
    places, slack = places[new], slack[new]
    have = np.array([line.has(places, slack) for line in lines])
    lack = np.array([line.reaches(places, slack, wall.masonry.least_piece, wall.masonry.module) for line in lines]) & ~have
    for at in np.flatnonzero(lack.any(axis=0)).tolist():
        yield Doubt(
            int(places[at]), [line for line, one in zip(lines, have[:, at], strict=True) if one],
            [line for line, one in zip(lines, lack[:, at], strict=True) if one],
        )


def _out_of_plumb(wall: AsLaid, line: Line, at: int, place: int, lines: list[Line]) -> Iterator[Break]:
    others = [other for other in lines if other is not line]
    if at == place:
        spots = [other.nearest(at, wall.masonry.module) for other in others if _count([other])]
        target = min((spot for spot in spots if spot != at), key=lambda spot: abs(spot - at), default=None)
    else:
        target = place
    kind = "odd" if line.odd else "even"
    if line.has(np.array([at]), np.array([0]))[0] and target is not None:
        off = abs(target - at)
        figure, remedy = f"{exact(wall, off, 0)} out of plumb", f"move this joint {size(wall, off)} to the " + (
            "right" if target > at else "left")
    else:
        figure, remedy = "a joint of the other courses is missing here", "lay a joint here"
    for course in line.courses:
        yield Break(course, at, figure, f"plumb with the other {kind} courses", remedy)


def _judge_layer(wall: AsLaid, line: Line, lines: list[Line]) -> list[Break]:
    """A layer of a course laid in two follows odd or even joints: what it has that they have not, where any reaches."""
    if not lines or not len(line.joints):
        return []
    least, module = wall.masonry.least_piece, wall.masonry.module
    known = np.any([other.has(line.joints, line.slack) for other in lines], axis=0)
    reached = np.any([other.reaches(line.joints, line.slack, least, module) for other in lines], axis=0)
    places = line.joints[~known & reached].tolist()
    return [
        one for place in places
        if not line.why_moved(place, lines, [], wall.masonry.least_piece, wall.masonry.module)
        for one in _out_of_plumb(wall, line, place, place, lines)
    ]


def _tell(wall: AsLaid, lines: list[Line], moved: dict[tuple[int, int], str], layered: set[int]) -> str:
    told = ["plumb from footing to top"]
    for reason in sorted(set(moved.values())):
        courses = len({course for (course, _), why in moved.items() if why == reason})
        told.append(f"{courses} {'course has' if courses == 1 else 'courses have'} a joint moved beside {reason}")
    drift = max((int(line.slack.max()) for line in lines if len(line.slack)), default=0)
    if drift > ROUNDING:
        told.append(f"opened or closed joints drift by up to {size(wall, drift)}")
    if layered:
        several = "course is" if len(layered) == 1 else "courses are"
        told.append(f"{len(layered)} {several} laid in layers")
    return "; ".join(told)
