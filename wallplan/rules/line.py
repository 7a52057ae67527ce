"""A line of head joints: one row of pieces as the plumb rule sees it. Rows laid alike are one line."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypedDict

import numpy as np

from wallplan.plan.job import Outline
from wallplan.rules.as_laid import HEAD, HOLE, OPENING, ROUNDING, STEP, AsLaid, Flags, Ints
from wallplan.rules.outline import Interval

SLOPE = "the slope"
"""What a run ends at that a slope of the top cuts off."""


@dataclass(frozen=True, eq=False)
class Line:
    """Joints (their left edges) and runs of one row, in ticks, and the indices of the courses that lie so.

    Run ``r`` reaches from ``start[r]`` to ``end[r]``: where a head joint would stand if one did, so a run that
    begins at a jamb starts a joint's width before it. ``at_start`` and ``at_end`` name the opening whose jamb, or
    the lintel or wall whose end, it is; "" at a wall's end or a control joint, where all courses begin alike.
    ``beside`` are joints against another wall's end. ``drift`` is what the run's joints opened or closed by in all;
    ``slack`` is that of each joint's run. ``rakes`` are how much shorter each run is at its top, at both ends.
    """

    odd: bool
    layered: bool
    courses: tuple[int, ...]
    joints: Ints
    beside: Ints
    slack: Ints
    start: Ints
    end: Ints
    drift: Ints
    at_start: tuple[str, ...]
    at_end: tuple[str, ...]
    rakes: tuple[Ints, Ints]

    def clear_of(self, least: int, module: int) -> tuple[Ints, Ints]:
        """How far the joints of each run keep from its start and end: the least piece, or a slope that one unit can take."""
        start, end = (np.where((rake > least) & (rake <= module), rake, least) for rake in self.rakes)
        return start, end

    def has(self, places: Ints, slack: Ints) -> Flags:
        """At which places it has a joint, within their slack and its own."""
        against = np.isin(places, [place + off for place in self.beside.tolist() for off in range(-ROUNDING, ROUNDING + 1)])
        if not len(self.joints):
            return against
        after = np.searchsorted(self.joints, places)
        left, right = np.maximum(after - 1, 0), np.minimum(after, len(self.joints) - 1)
        near = np.abs(places - self.joints[left]) <= slack + self.slack[left] + ROUNDING
        nearby: Flags = against | near | (np.abs(places - self.joints[right]) <= slack + self.slack[right] + ROUNDING)
        return nearby

    def reaches(self, places: Ints, slack: Ints, least: int, module: int) -> Flags:
        """Which places stand in a run with a whole least piece to both of its ends, so that a joint must stand there."""
        if not len(self.start):
            return np.zeros(len(places), dtype=bool)
        run = np.maximum(np.searchsorted(self.start, places, side="right") - 1, 0)
        loose = slack + self.drift[run]
        more = np.where(loose > 0, loose + ROUNDING, -ROUNDING)
        first, last = (clear[run] for clear in self.clear_of(least, module))
        # Where a slope is, the runs of other courses are cut back by it: what is near to its tick is not asked for.
        first, last = first + (first > least) * 2 * ROUNDING, last + (last > least) * 2 * ROUNDING
        clear_of_both: Flags = (places - self.start[run] >= first + more) & (self.end[run] - places >= last + more)
        return clear_of_both

    def is_at(self, place: int) -> bool:
        """Whether one of its joints stands just there."""
        return bool(np.any(np.abs(self.joints - place) <= ROUNDING))

    def nearest(self, place: int, within: int) -> int:
        """The joint nearest to a place; the place itself where none is so near."""
        if not len(self.joints):
            return place
        joint = int(self.joints[np.argmin(np.abs(self.joints - place))])
        return joint if abs(joint - place) <= within else place

    def why_moved(self, place: int, lines: list[Line], lack: list[Line], least: int, module: int) -> str | None:
        """The opening beside which this line's joint at a place was moved: it is the run's outermost, other lines have
        a joint too near that jamb, and none of those that lack it share the jamb. None where that is not so."""
        joint = self.nearest(place, int(self.slack.max(initial=0)) + ROUNDING)
        run = int(np.searchsorted(self.start, joint, side="right")) - 1
        if run < 0 or joint >= self.end[run]:
            return None
        inside = self.joints[(self.joints > self.start[run]) & (self.joints < self.end[run])]
        drift = int(self.drift[run]) + ROUNDING
        reach = [int(clear[run]) + drift for clear in self.clear_of(least, module)]
        start, end = int(self.start[run]), int(self.end[run])
        others = [line for line in lines if line is not self]
        # Where a slope comes down to another wall's end, that run ends there in the courses below as well.
        shared = (self.at_start[run] != SLOPE and any(start in line.start for line in lack),
                  self.at_end[run] != SLOPE and any(end in line.end for line in lack))
        first = joint == inside[0] and not shared[0]
        if first and self.at_start[run] and any(_crowds(line, start, 1, reach[0]) for line in others):
            return self.at_start[run]
        last = joint == inside[-1] and not shared[1]
        if last and self.at_end[run] and any(_crowds(line, end, -1, reach[1]) for line in others):
            return self.at_end[run]
        return None


def _crowds(line: Line, end: int, inward: int, reach: int) -> bool:
    """Whether a line has a joint inside of a run's end and nearer to it than the least piece, its own drift let alone."""
    away = np.concatenate((line.joints - end, line.beside - end)) * inward
    slack = np.concatenate((line.slack, np.zeros(len(line.beside), dtype=np.int64)))
    return bool(np.any((away > 0) & (away - slack < reach)))


class _Ends(TypedDict):
    at_start: tuple[str, ...]
    at_end: tuple[str, ...]
    rakes: tuple[Ints, Ints]


def read_lines(wall: AsLaid) -> list[Line]:
    """The lines of a wall, in order of their lowest course."""
    rows, alike = wall.rows, dict[tuple[bool, bool, bytes, bytes], list[int]]()
    cuts = np.searchsorted(wall.gaps.row, np.arange(len(rows.bottom) + 1))
    for row in range(len(rows.bottom)):
        span = slice(rows.start[row], rows.start[row + 1])
        pieces = rows.piece[span]
        edges = np.concatenate((wall.left[pieces], wall.right[pieces]))
        shape = wall.shape[pieces]
        kinds = np.concatenate((wall.gaps.kind[cuts[row]:cuts[row + 1]], shape == "precast", shape == "return"))
        odd = wall.number(int(rows.course[row])) % 2 == 1
        alike.setdefault((odd, bool(rows.layered[row]), edges.tobytes(), kinds.tobytes()), []).append(row)
    return [
        _read_line(wall, same, slice(cuts[same[0]], cuts[same[0] + 1]), odd, layered)
        for (odd, layered, _, _), same in alike.items()
    ]


def _read_line(wall: AsLaid, same: list[int], span: slice, odd: bool, layered: bool) -> Line:
    rows, row = wall.rows, same[0]
    pieces = rows.piece[rows.start[row]:rows.start[row + 1]]
    kind, left, width = wall.gaps.kind[span], wall.gaps.left[span], wall.gaps.width[span]
    returns = wall.shape[pieces] == "return"
    taken = (wall.shape[pieces] == "precast") | returns
    ends = (kind != HEAD) | taken[1:] | taken[:-1]
    breaks = np.flatnonzero(ends)
    joint = wall.masonry.joint
    first, last = np.concatenate(([0], breaks + 1)), np.append(breaks, len(pieces) - 1)
    before = np.concatenate(([joint], np.where(kind == HEAD, width, joint)[breaks]))
    start, right = wall.left[pieces[first]] - before, wall.right[pieces[last]]
    end = np.where(taken[first], start, right)  # a lintel or another wall's end is no run: what it covers is not missing
    inner = np.concatenate(([0], np.cumsum(np.where(ends, 0, width - joint))))
    drift = np.abs(inner[last] - inner[first])
    names = [_name_return(wall, row, pieces[at:at + 2]) if returns[at:at + 2].any() else
             _name_end(wall, int(wall.rows.bottom[row]), int(wall.rows.top[row]), kind[at], left[at], width[at])
             for at in breaks.tolist()]
    told = _read_ends(wall, row, (start + before, end), names)
    # What a slope cuts off of a run has opened or closed joints too.
    off = np.maximum.reduceat(np.append(np.where(ends, 0, np.abs(width - joint)), 0), first) if len(width) else drift
    sloped = (told["rakes"][0] > 0) | (told["rakes"][1] > 0)
    drift = np.where(sloped, np.maximum(drift, off * (-(-(wall.end - wall.start) // wall.masonry.module))), drift)
    run = np.searchsorted(breaks, np.flatnonzero(~ends))
    return Line(
        odd=odd, layered=layered, courses=tuple(int(rows.course[one]) for one in same), joints=left[~ends],
        beside=left[(kind == HEAD) & (returns[1:] | returns[:-1])],
        slack=drift[run], start=start, end=end, drift=drift, **told,
    )


def _read_ends(wall: AsLaid, row: int, ends: tuple[Ints, Ints], names: list[str]) -> _Ends:
    """What each run begins and ends at, and how far slopes shorten it there."""
    at_start, at_end = ["", *names], [*names, ""]
    rakes = np.zeros(len(ends[0]), dtype=np.int64), np.zeros(len(ends[1]), dtype=np.int64)
    if wall.outline is None:
        return {"at_start": tuple(at_start), "at_end": tuple(at_end), "rakes": rakes}
    bottom, top, reach = int(wall.rows.bottom[row]), int(wall.rows.top[row]), wall.masonry.thickness + wall.hole
    feet, tops = wall.cut_level(bottom), wall.cut_level(top)
    for side, (told, places, edge) in enumerate(((at_start, ends[0], wall.start), (at_end, ends[1], wall.end))):
        for run, place in enumerate(places.tolist()):
            outermost = run == (0 if side == 0 else len(places) - 1)
            beside = told[run].startswith("wall ") or (outermost and abs(edge - place) <= reach)
            at_edge = next((foot for foot in feet if abs(foot[side] - place) <= 2 * ROUNDING
                            or (beside and foot[0] < place < foot[1])), None)
            if at_edge is None or abs(place - edge) <= ROUNDING:
                continue
            over = [one for one in tops if one[0] < at_edge[1] and one[1] > at_edge[0]]
            reached = over[0 if side == 0 else -1][side] if over else _highest_at(wall.outline, at_edge)
            # Another wall's end may stand before the slope's foot, or before where it leaves the course.
            short = max((reached - place) * (1 - 2 * side), 0)
            if beside and not short:
                continue
            told[run] = SLOPE if short > 2 * ROUNDING else "a step"
            rakes[side][run] = round(short)
    return {"at_start": tuple(at_start), "at_end": tuple(at_end), "rakes": rakes}


def _highest_at(outline: Outline, stretch: Interval) -> float:
    """Where within a stretch the top is highest."""
    inside = [(level, at) for at, level in outline.top if stretch[0] <= at <= stretch[1]]
    return max(inside)[1] if inside else sum(stretch) / 2


def _name_return(wall: AsLaid, row: int, pieces: Ints) -> str:
    """The other wall whose unit is one of these pieces."""
    course = int(wall.rows.course[row])
    own = [wall.layout.courses[course].pieces[piece - int(wall.first[course])] for piece in pieces.tolist()]
    return next(f"wall {piece.of}" for piece in own if piece.shape == "return")


def _name_end(wall: AsLaid, bottom: int, top: int, kind: int, left: int, width: int) -> str:
    if kind == HEAD:
        return "a lintel"
    if kind != OPENING:
        return "a step" if kind == STEP or (kind == HOLE and wall.outline is not None) else ""
    return next((
        opening.name for opening in wall.layout.wall.openings
        if opening.left < left + width and opening.right > left and opening.bottom < top and opening.top > bottom
    ), "an opening")
