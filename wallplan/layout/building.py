"""All walls of a job bonded together: which wall runs through in odd courses is chosen at every corner at once.

A wall's bond depends on the other walls only through what happens at its two corners, so each wall is searched for
every way in which it may end, and the best of all choices is found along the chain of walls (dynamic programming,
Bellman, 1957). In a closed building the first corner is tried both ways.
"""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

from wallplan.layout.corners import Choice, WallEnds, end_wall, joined_to
from wallplan.layout.coursing import Row
from wallplan.layout.outline import find_bays, find_risers, set_rows
from wallplan.layout.rakes import cut_to_rakes
from wallplan.layout.reach import Reach, reach_openings
from wallplan.layout.runs import LaidTracks, lay_tracks
from wallplan.layout.tracks import pose_problem, runs_of_rows
from wallplan.plan.job import Job, Masonry, Wall


class BondedWall(NamedTuple):
    """A wall with its courses, openings against them, ends, and the bond that was found."""

    wall: Wall
    rows: tuple[Row, ...]
    reaches: tuple[Reach, ...]
    ends: WallEnds
    tracks: LaidTracks


Ways = dict[Choice, BondedWall]


def bond_walls(job: Job) -> tuple[BondedWall, ...]:
    """Every wall of a job bonded, in the job's order; () for a job without walls."""
    known: dict[object, BondedWall] = {}
    ways = [_try_ways(job, index, known) for index in range(len(job.walls))]
    return tuple(ways[index][choice] for index, choice in enumerate(_choose(job, ways)))


def _try_ways(job: Job, index: int, known: dict[object, BondedWall]) -> Ways:
    """The wall bonded for each way in which its corners may go. Walls that differ by name alone are searched once."""
    wall, meets = job.walls[index], joined_to(job, index)
    names = tuple(None if place is None else job.walls[place].name for place in meets)
    found: Ways = {}
    for left in (None,) if meets[0] is None else (True, False):
        for right in (None,) if meets[1] is None else (True, False):
            choice = Choice(left, right)
            ends = end_wall(wall, job.masonry, choice, (names[0], names[1]))
            alike = replace(wall, name=""), choice
            if alike not in known:
                known[alike] = _bond(wall, job.masonry, ends)
            found[choice] = known[alike]._replace(wall=wall, ends=ends)
    return found


def _bond(wall: Wall, masonry: Masonry, ends: WallEnds) -> BondedWall:
    rows = set_rows(wall, masonry)
    reaches = reach_openings(wall, rows)
    runs = runs_of_rows(wall, masonry, rows, reaches, ends)
    if wall.outline is None:
        return BondedWall(wall, rows, reaches, ends, lay_tracks(pose_problem(wall, masonry, runs, ends), masonry.joint))
    bays = tuple(find_bays(wall, masonry, row) for row in rows)
    problem = pose_problem(wall, masonry, runs, ends, find_risers(wall, masonry, rows, bays))
    tracks = cut_to_rakes(lay_tracks(problem, masonry.joint), problem.terms, rows, bays, masonry.joint)
    return BondedWall(wall, rows, reaches, ends, tracks)


def _choose(job: Job, ways: list[Ways]) -> list[Choice]:
    """One way for each wall, so that at every corner one wall runs through where the other stops, at the least cost."""
    best: tuple[int, list[Choice]] | None = None
    closed = bool(ways) and joined_to(job, 0)[0] is not None
    for first in (True, False) if closed else (None,):
        found = _choose_along(ways, first, closed)
        if found is not None and (best is None or found[0] < best[0]):
            best = found
    if best is None:
        raise ValueError("no choice at the corners fits all walls")
    return best[1]


def _choose_along(ways: list[Ways], first: bool | None, closed: bool) -> tuple[int, list[Choice]] | None:
    """The best choices from left to right. The key of a chain is what the next wall's left corner must be."""
    chains: dict[bool | None, tuple[int, list[Choice]]] = {first: (0, [])}
    for wall in ways:
        following: dict[bool | None, tuple[int, list[Choice]]] = {}
        for choice, bonded in wall.items():
            if choice.left not in chains:
                continue
            cost, choices = chains[choice.left]
            needed = None if choice.right is None else not choice.right
            reached = cost + bonded.tracks.cost
            if needed not in following or reached < following[needed][0]:
                following[needed] = reached, [*choices, choice]
        chains = following
    return chains.get(first if closed else None)
