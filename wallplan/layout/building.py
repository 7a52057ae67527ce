"""All walls of a job bonded together: what happens wherever walls meet is chosen for all of them at once.

A wall's bond depends on the other walls only through what happens where it meets them: which runs through in odd courses at
a corner, and by which unit; in which courses the walls that abut it are tied in. Each wall is searched for every way in
which that may be, and the best of all choices is found by ``choices``.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import product
from typing import NamedTuple

from wallplan.bond.cost import BROKEN, CUTTING
from wallplan.bond.effort import ALONE, EACH, Effort
from wallplan.layout.choices import Party, choose
from wallplan.layout.corners import IN_TURN, Choice, OutOfTurn, Stem, Turn, WallEnds, end_wall, joined_to
from wallplan.layout.one_brick import bond_one_brick
from wallplan.layout.outline import find_bays, find_risers, set_rows
from wallplan.layout.piers import bond_to_wall, find_stems
from wallplan.layout.rakes import cut_to_rakes, reach_ends
from wallplan.layout.reach import Reach, reach_openings
from wallplan.layout.runs import LaidTracks, lay_aimed, lay_tracks, settle_doubt
from wallplan.layout.tracks import pose_problem, runs_of_rows
from wallplan.layout.unequal import Stances, compare, count_running, find_stances, list_single
from wallplan.plan.coursing import Row
from wallplan.plan.job import Abutment, Job, Masonry, Wall


class BondedWall(NamedTuple):
    """A wall with its courses, openings against them, ends, and the bond that was found."""

    wall: Wall
    rows: tuple[Row, ...]
    reaches: tuple[Reach, ...]
    ends: WallEnds
    tracks: LaidTracks


Meeting = tuple[str, int]
"""Where walls meet: ("corner", the wall whose right end it is) or ("crossing", the wall that others run through)."""

Answer = tuple[int, bool]
"""Whether that wall runs through at a corner in odd courses (1), and whether by L corner units; or the parity of the courses
in which others run through it, and False."""


class _Meetings(NamedTuple):
    """Where one wall meets others: at its ends, and others and piers in between; names of those at its ends."""

    ends: tuple[Meeting | None, Meeting | None]
    stems: tuple[Stem, ...]
    names: tuple[str | None, str | None]
    out_of_turn: tuple[OutOfTurn, OutOfTurn] = IN_TURN

    def asked(self, index: int) -> tuple[Meeting, ...]:
        """The meetings that the wall hangs on, each once."""
        own = (("crossing", index),) if self.stems else ()
        return tuple(dict.fromkeys(one for one in (*self.ends, *own) if one is not None))


Known = dict[object, BondedWall]
"""Walls of one masonry that were bonded before, by all that their bond hangs on."""


def bond_walls(job: Job, bonded_before: Known | None = None) -> tuple[BondedWall, ...]:
    """Every wall of a job bonded, in the job's order; () for a job without walls.

    ``bonded_before`` saves searching a wall again; what is bonded here is added to it.
    """
    known: Known = {} if bonded_before is None else bonded_before
    rows = _set_all_rows(job)
    meetings = [_find_meetings(job, index, rows) for index in range(len(job.walls))]
    asked = [one.asked(index) for index, one in enumerate(meetings)]
    answers = {name: _answers(name, job.masonry) for names in asked for name in names}
    choices = [{values: _choice(meetings[index], index, dict(zip(names, values, strict=True)))
                for values in product(*(answers[name] for name in names))} for index, names in enumerate(asked)]
    searches = _Searches(job, meetings, choices, known)
    ways = [{values: searches.bond(index, values, settled=False) for values in found} for index, found in enumerate(choices)]
    while True:
        parties = [Party(names, {values: _cost(bonded, job.masonry) for values, bonded in found.items()})
                   for names, found in zip(asked, ways, strict=True)]
        chosen = choose(parties, answers)
        picked = [tuple(chosen[name] for name in names) for names in asked]
        doubtful = [index for index, values in enumerate(picked) if ways[index][values].tracks.doubt is not None]
        if not doubtful:
            return tuple(found[values] for found, values in zip(ways, picked, strict=True))
        for index in doubtful:
            ways[index][picked[index]] = searches.bond(index, picked[index], settled=True)


class _Searches:
    """The searches of a plan, which share one measure of work: a wall for each way in which it may end, and once more where
    what is chosen is in doubt. What comes of a doubt costs no less, so that nothing else would have been chosen before.
    """

    def __init__(self, job: Job, meetings: list[_Meetings], choices: list[dict[tuple[Answer, ...], Choice]],
                 known: Known) -> None:
        self.job, self.meetings, self.choices, self.known = job, meetings, choices, known
        self.left = sum(map(len, choices)) + len(job.walls)
        self.effort = Effort(ALONE + EACH * self.left)

    def bond(self, index: int, values: tuple[Answer, ...], *, settled: bool) -> BondedWall:
        """A wall bonded in one way, ``settled`` or with what is in doubt."""
        share, self.left = self.effort.share(self.left), self.left - 1
        given, choice = share.left, self.choices[index][values]
        bonded = _bond(self.job.walls[index], self.job.masonry, choice, self.meetings[index], (self.known, share), settled)
        self.effort.spend(given - share.left)
        return bonded


def _set_all_rows(job: Job) -> tuple[tuple[Row, ...], ...]:
    """The courses of every wall; of walls that are rectangles of one height they are set once."""
    known: dict[object, tuple[Row, ...]] = {}
    found = []
    for wall in job.walls:
        key = wall.height, wall.outline, wall.laid_with, wall.openings if wall.laid_with is None else ()
        if key not in known:
            known[key] = set_rows(wall, job.masonry)
        found.append(known[key])
    return tuple(found)


def _find_meetings(job: Job, index: int, rows: tuple[tuple[Row, ...], ...]) -> _Meetings:
    wall, (before, after) = job.walls[index], joined_to(job, index)
    places = {other.name: number for number, other in enumerate(job.walls)}
    ends: list[Meeting | None] = [None if before is None else ("corner", before),
                                  None if after is None else ("corner", index)]
    names = [None if place is None else job.walls[place].name for place in (before, after)]
    odd = [OutOfTurn() if place is None else _compare_at_corner(job, rows, index, place, side)
           for side, place in enumerate((before, after))]
    for abutment in wall.abuts:
        side = 0 if abutment.end == "left" else 1
        names[side] = abutment.meets
        if abutment.tie == "interlocked":
            main = places[abutment.meets]
            ends[side] = "crossing", main
            odd[side] = compare(*_stances_in_tee(job, rows, index, main, abutment))
    thick = job.masonry.thickness
    stems = tuple(Stem(one.at, thick, other.name, ((one.at, one.at + thick),), (),
                       list_single(*_stances_in_tee(job, rows, stem, index, one), len(rows[index])))
                  for stem, other in enumerate(job.walls) for one in other.abuts
                  if one.meets == wall.name and one.tie == "interlocked")
    piers = find_stems(wall, job.masonry, rows[index])
    return _Meetings((ends[0], ends[1]), (*stems, *piers), (names[0], names[1]), (odd[0], odd[1]))


def _compare_at_corner(job: Job, rows: tuple[tuple[Row, ...], ...], index: int, other: int, side: int) -> OutOfTurn:
    """The courses of a wall that go out of turn at its left (0) or right (1) corner."""
    if job.walls[index].outline is None and job.walls[other].outline is None and len(rows[index]) == len(rows[other]):
        return OutOfTurn()
    inside = job.walls[index].left_end == "inside corner" if side == 0 else job.walls[index].right_end == "inside corner"
    # At an inside corner the walls meet behind their faces, where they go on as high as at their ends.
    reach, within = (1, 0) if inside else (job.masonry.thickness + job.masonry.joint, job.masonry.joint)
    stances = []
    for number, at_left in ((index, side == 0), (other, side == 1)):
        wall = job.walls[number]
        left, right = (-within, reach) if at_left else (wall.length - reach, wall.length + within)
        stances.append(find_stances(wall, job.masonry, rows[number], left, right, within))
    return compare(*stances)


def _stances_in_tee(job: Job, rows: tuple[tuple[Row, ...], ...], index: int, main: int,
                    abutment: Abutment) -> tuple[Stances, Stances]:
    """What a wall lays where it abuts another, and what that one lays there."""
    stem, crossed, joint, thick = job.walls[index], job.walls[main], job.masonry.joint, job.masonry.thickness
    begin, end = (0, joint) if abutment.end == "left" else (stem.length - joint, stem.length)
    return (find_stances(stem, job.masonry, rows[index], begin, end),
            find_stances(crossed, job.masonry, rows[main], abutment.at - joint, abutment.at + thick + joint))


def _answers(name: Meeting, masonry: Masonry) -> Sequence[Answer]:
    """What may happen at a meeting; of equals the first is taken."""
    if name[0] == "crossing":
        return (1, False), (0, False)
    ells = {"plain": (False,), "L": (True,), "L where it saves": (False, True)}[masonry.corner_unit]
    return tuple((through, ell) for ell in ells for through in (1, 0))


def _choice(meetings: _Meetings, index: int, given: dict[Meeting, Answer]) -> Choice:
    turns = list[Turn | None]()
    for side, meeting in enumerate(meetings.ends):
        if meeting is None:
            turns.append(None)
        elif meeting[0] == "crossing":
            turns.append(Turn(given[meeting][0] == 0))
        else:
            runs, ell = given[meeting]
            turns.append(Turn(bool(runs) is (side == 1), ell))
    return Choice(turns[0], turns[1], given[("crossing", index)][0] if meetings.stems else None)


def _bond(wall: Wall, masonry: Masonry, choice: Choice, meetings: _Meetings, search: tuple[Known, Effort],
          settled: bool) -> BondedWall:
    """The wall bonded in one way, with so much effort. Walls that differ by names alone are searched once."""
    known, effort = search
    ends = end_wall(wall, masonry, choice, meetings.names, meetings.stems, meetings.out_of_turn)
    alike = (replace(wall, name="", abuts=(), piers=()), choice, meetings.out_of_turn,
             tuple(stem._replace(name="") for stem in meetings.stems))
    found = known.get(alike) or bond_wall(wall, masonry, ends, effort, settled=False)
    tracks = settle_doubt(found.tracks, effort) if settled else found.tracks
    if alike not in known or tracks is not found.tracks:
        broken = tracks.broken or _count_short_ells(found._replace(tracks=tracks), masonry) > 0
        known[alike] = found._replace(tracks=tracks._replace(broken=broken))
    bonded = known[alike]
    if masonry.one_brick:
        ends = bond_to_wall(ends, wall, masonry, bonded.tracks.runs)
    return bonded._replace(wall=wall, ends=ends)


def bond_wall(wall: Wall, masonry: Masonry, ends: WallEnds, effort: Effort | None = None, *,
              settled: bool = True) -> BondedWall:
    """One wall bonded, with its ends as given. ``effort`` is the work that may be done; what is done is taken from it.

    Not ``settled``, it may leave a doubt (``layout/runs.py``); a wall with steps or gables leaves none.
    """
    rows = set_rows(wall, masonry)
    reaches = reach_openings(wall, rows)
    runs = runs_of_rows(wall, masonry, rows, reaches, ends)
    if masonry.one_brick:
        return BondedWall(wall, rows, reaches, ends, bond_one_brick(wall, masonry, runs, ends))
    if wall.outline is None:
        left = Effort() if effort is None else effort
        tracks = lay_aimed(pose_problem(wall, masonry, runs, ends), masonry.joint, left)
        return BondedWall(wall, rows, reaches, ends, settle_doubt(tracks, left) if settled else tracks)
    bays = tuple(find_bays(wall, masonry, row) for row in rows)
    problem = pose_problem(wall, masonry, runs, ends, find_risers(wall, masonry, rows, bays))
    reaching = tuple(reach_ends(here, wall.length, ends) for here in bays)
    tracks = cut_to_rakes(lay_tracks(problem, masonry.joint, effort), problem.terms, rows, reaching, masonry.joint, ends)
    return BondedWall(wall, rows, reaches, ends, tracks)


def _cost(bonded: BondedWall, masonry: Masonry) -> int:
    """What the wall's bond costs. An L corner unit counts half a cut, and one without a tail breaks a rule."""
    ells = sum(len(bonded.ends.ells(row.number)) for row in bonded.rows)
    running = sum(count_running(end.through, end.out_of_turn) for end in (bonded.ends.left, bonded.ends.right)
                  if end.returns is not None)
    return bonded.tracks.cost + ells * CUTTING // 2 + BROKEN * (_count_short_ells(bonded, masonry) + running)


def _count_short_ells(bonded: BondedWall, masonry: Masonry) -> int:
    """L corner units sawn so short that their tail, behind the other wall, is under the least piece."""
    short, least = 0, masonry.thickness + masonry.least_piece
    for row in bonded.rows:
        ells = bonded.ends.ells(row.number)
        for run in bonded.tracks.runs if ells else ():
            if run.courses >> row.number & 1:
                short += sum(not ells.isdisjoint((left, left + length)) and length < least
                             for left, length in {run.pieces[0], run.pieces[-1]})
    return short
