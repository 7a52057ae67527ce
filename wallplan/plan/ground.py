"""Walls on the ground, from their lengths, corners and the ends that abut others: where each stands and which way it runs.

A wall's body lies to the left of the way it runs, which is from its left end to its right one as seen from outside; at an
outside corner the way turns left, at an inside one right. Ticks; x to the right and y up.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from wallplan.plan.job import Abutment, EndKind

CORNERS = ("outside corner", "inside corner")


class Line(NamedTuple):
    """What of a wall matters on the ground."""

    name: str
    length: int
    left_end: EndKind
    right_end: EndKind
    abuts: tuple[Abutment, ...] = ()


class Standing(NamedTuple):
    """Where a wall's left end stands on its outside face, the way it runs, and which walls it hangs together with."""

    group: int
    x: int
    y: int
    dx: int
    dy: int

    def at(self, along: int, deep: int) -> tuple[int, int]:
        """The place so far along the wall, and so deep behind its outside face."""
        return self.x + self.dx * along - self.dy * deep, self.y + self.dy * along + self.dx * deep


class Amiss(NamedTuple):
    """An abutting end that does not come where it should: too far on (or short, negative) along its own wall, and aside."""

    wall: int
    abutment: Abutment
    beyond: int
    aside: int


class Ground(NamedTuple):
    """Every wall's standing, and the ends that do not meet the wall that they should."""

    standings: tuple[Standing, ...]
    amiss: tuple[Amiss, ...]


def join_corners(ends: Sequence[tuple[EndKind, EndKind]]) -> tuple[int | None, ...]:
    """For each wall, by its left and right end, the wall that its right corner joins it to; None where there is none.

    That is the next wall; the last of a row of walls joined so goes round to the first of the row, where both ends of the
    row are corners, or else the plan's last wall to its first; walls that abut others do not count there.
    """
    count = len(ends)
    found: list[int | None] = [None] * count
    last = max((index for index, both in enumerate(ends) if "abuts" not in both), default=0)
    for index, (_, right) in enumerate(ends):
        if right not in CORNERS or count < 2:
            continue
        if index + 1 < count and ends[index + 1][0] in CORNERS:
            found[index] = index + 1
            continue
        first = index
        while first and ends[first][0] in CORNERS and ends[first - 1][1] in CORNERS:
            first -= 1
        if ends[first][0] in CORNERS and first != index:
            found[index] = first
        elif index == last and ends[0][0] in CORNERS and index:
            found[index] = 0
    return tuple(found)


def place_walls(lines: Sequence[Line], thickness: int) -> Ground:
    """Place every wall; the first of each group that hangs together runs to the right from (0, 0). () for no walls.

    An abutment that names no wall is passed over.
    """
    places = {line.name: index for index, line in enumerate(lines)}
    links = [(index, abutment, places[abutment.meets]) for index, line in enumerate(lines)
             for abutment in line.abuts if abutment.meets in places]
    found: dict[int, Standing] = {}
    for start in sorted(range(len(lines)), key=lambda index: (bool(lines[index].abuts), index)):
        if start not in found:
            found.update(_follow(lines, start, Standing(len({one.group for one in found.values()}), 0, 0, 1, 0)))
            _hang_on(lines, links, found, thickness)
    amiss = [wrong for link in links if (wrong := _measure(lines, link, found, thickness)) is not None]
    return Ground(tuple(found[index] for index in range(len(lines))), tuple(amiss))


def _hang_on(lines: Sequence[Line], links: list[tuple[int, Abutment, int]], found: dict[int, Standing],
             thickness: int) -> None:
    """Place what is linked to what is placed, until nothing more is."""
    waiting = True
    while waiting:
        waiting = False
        for stem, abutment, main in links:
            if (stem in found) is (main in found):
                continue
            waiting = True
            if main in found:
                found.update(_follow(lines, stem, _place_stem(lines[stem], abutment, found[main], thickness)))
            else:
                # The main wall from the stem: where it stands if the stem stood at the origin, undone.
                trial = _place_stem(lines[stem], abutment, Standing(found[stem].group, 0, 0, 1, 0), thickness)
                found.update(_follow(lines, main, _undo(trial, found[stem])))


def _follow(lines: Sequence[Line], start: int, standing: Standing) -> dict[int, Standing]:
    """The walls that a placed one is joined to by corners, rightwards and leftwards."""
    found = {start: standing}
    joined = join_corners([(line.left_end, line.right_end) for line in lines])
    index = start
    while (following := joined[index]) is not None and following not in found:
        at, turn = found[index], 1 if lines[index].right_end == "outside corner" else -1
        x, y = at.at(lines[index].length, 0)
        found[following] = Standing(at.group, x, y, -turn * at.dy, turn * at.dx)
        index = following
    index = start
    while index in joined and (before := joined.index(index)) not in found:
        at, turn = found[index], 1 if lines[index].left_end == "outside corner" else -1
        dx, dy = turn * at.dy, -turn * at.dx
        found[before] = Standing(at.group, at.x - dx * lines[before].length, at.y - dy * lines[before].length, dx, dy)
        index = before
    return found


def _place_stem(stem: Line, abutment: Abutment, main: Standing, thickness: int) -> Standing:
    """Where a wall stands whose end abuts a placed one."""
    outward = abutment.inside is (abutment.end == "left")  # it runs away from the main wall's outside face
    dx, dy = (-main.dy, main.dx) if outward else (main.dy, -main.dx)
    x, y = main.at(abutment.at + (thickness if outward else 0), thickness if abutment.inside else 0)
    back = stem.length if abutment.end == "right" else 0
    return Standing(main.group, x - dx * back, y - dy * back, dx, dy)


def _undo(trial: Standing, real: Standing) -> Standing:
    """Where what stood at the origin, running right, stands when ``trial`` stands where ``real`` does."""
    # The quarter turn from trial to real as a complex number of ones and noughts.
    cos, sin = real.dx * trial.dx + real.dy * trial.dy, real.dy * trial.dx - real.dx * trial.dy
    return Standing(real.group, real.x - cos * trial.x + sin * trial.y, real.y - sin * trial.x - cos * trial.y, cos, sin)


def _measure(lines: Sequence[Line], link: tuple[int, Abutment, int], found: dict[int, Standing],
             thickness: int) -> Amiss | None:
    stem, abutment, main = link
    real, wanted = found[stem], _place_stem(lines[stem], abutment, found[main], thickness)
    off_x, off_y = real.x - wanted.x, real.y - wanted.y
    if real == wanted:
        return None
    forward = 1 if abutment.end == "right" else -1
    beyond = forward * (off_x * real.dx + off_y * real.dy)
    return Amiss(stem, abutment, beyond, off_x * real.dy - off_y * real.dx)
