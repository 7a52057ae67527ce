"""Job -> Layout: every wall course by course.

In: a checked job. Out: a frozen layout, with every piece to the tick and the cutting proven.
The steps: courses from the height, openings against the courses, runs, the bond by search, then each course's
pieces with rips, lintels, shapes, leads, and the marks of what is sawn.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import partial
from typing import NamedTuple

from wallplan.bond.effort import without_collecting
from wallplan.bond.figures import Terms
from wallplan.layout.building import BondedWall, Known, bond_wall, bond_walls
from wallplan.layout.corners import WallEnds, make_returns
from wallplan.layout.explain import Share, explain
from wallplan.layout.layers import find_parts, lay_in_layers
from wallplan.layout.leads import (
    LeadPlan,
    count_lead_courses,
    find_lead,
    find_rack,
    measure_end_piers,
    plan_leads,
    trim_leads,
)
from wallplan.layout.marks import Marks, give_marks
from wallplan.layout.model import Course, Layout, Piece, WallLayout
from wallplan.layout.one_brick import find_backing, make_bonded_spots
from wallplan.layout.outline import Bay, find_bays, fit_to_bays, levels_between, reaches_ends
from wallplan.layout.piers import PierCourses, lay_piers
from wallplan.layout.piers_as_laid import finish_piers
from wallplan.layout.raised_corners import raise_corners
from wallplan.layout.reach import Reach
from wallplan.layout.runs import LaidRun, LaidTracks
from wallplan.layout.shapes import find_headings, set_lintels, shape_spots
from wallplan.layout.spots import Namer, Spot, count_cuts, make_namer, make_spots
from wallplan.layout.tracks import bond_terms
from wallplan.plan.coursing import Row, bed_range
from wallplan.plan.job import Job, Masonry, Wall


class _Ground(NamedTuple):
    """What all courses of a wall share while their pieces are set."""

    wall: Wall
    ends: WallEnds
    masonry: Masonry
    terms: Terms
    reaches: tuple[Reach, ...]
    namer: Namer
    leads: LeadPlan | None
    feet: tuple[int, int]


class _SetCourse(NamedTuple):
    """A course's spots, and what each of its runs cuts. Courses laid alike share one."""

    spots: tuple[Spot, ...]
    shares: tuple[Share, ...]


class _SetWall(NamedTuple):
    """A wall with its courses set but not yet marked."""

    wall: Wall
    ends: WallEnds
    rows: tuple[Row, ...]
    courses: tuple[_SetCourse, ...]
    tracks: LaidTracks
    one_brick: bool
    piers: tuple[PierCourses, ...] = ()
    leads: LeadPlan | None = None
    feet: tuple[int, int] = (1, 1)

    @property
    def spots(self) -> Iterator[Spot]:
        """Every kind of piece, those of courses laid alike once."""
        different = {id(course): course.spots for course in self.courses}
        yield from (spot for spots in different.values() for spot in spots)
        known = {id(units): units for pier in self.piers for _, units in pier.courses}
        yield from (unit.spot for units in known.values() for unit in units)


def lay(job: Job, bonded_before: Known | None = None) -> Layout:
    """Lay out every wall of a job. Where no layout keeps every rule, the one that breaks fewest is laid.

    Lengths in ticks. A job without walls gives a layout without walls. Raises nothing for a job that the plan room built.
    ``bonded_before`` are walls of this masonry that were laid before.
    """
    leads = count_lead_courses(job)
    walls = [_set_wall(bonded, job.masonry, leads if bonded.ends.has_corners else job.masonry.leads)
             for bonded in bond_walls(raise_corners(job), bonded_before)]
    marks = give_marks(job, (spot for wall in walls for spot in wall.spots))
    finished = (_finish(wall, job, marks) for wall in walls)
    return Layout(job, tuple(replace(laid, wall=wall) for laid, wall in zip(finished, job.walls, strict=True)))


def lay_wall(wall: Wall, job: Job, ends: WallEnds) -> WallLayout:
    """One wall of a job with its ends as given, whatever the other walls do; its cuts are lettered by themselves."""
    bonded = bond_wall(wall, job.masonry, ends)
    set_wall = _set_wall(bonded, job.masonry, count_lead_courses(job) if ends.has_corners else job.masonry.leads)
    return _finish(set_wall, job, give_marks(job, set_wall.spots))


def _set_wall(bonded: BondedWall, masonry: Masonry, leads: int) -> _SetWall:
    wall, rows, tracks = bonded.wall, bonded.rows, bonded.tracks
    ground = _Ground(wall, bonded.ends, masonry, bond_terms(masonry), bonded.reaches, make_namer(masonry),
                     plan_leads(wall.length, masonry.module, leads, find_rack(masonry), measure_end_piers(wall)),
                     _find_feet(wall, masonry, rows))
    known: dict[object, _SetCourse] = {}
    courses = []
    for row, laid in zip(rows, _runs_by_course(tracks, len(rows)), strict=True):
        bays = find_bays(wall, masonry, row)
        alike = _likeness(ground, row, laid), tuple((*bay[:2], bay.low - row.bottom, bay.high - row.bottom) for bay in bays)
        if alike not in known:
            known[alike] = _set_course(ground, row, laid, bays)
        courses.append(known[alike])
    piers = lay_piers(wall, masonry, rows, bonded.ends.crossings, ground.namer)
    return _SetWall(wall, bonded.ends, rows, tuple(courses), tracks, masonry.one_brick, piers, ground.leads, ground.feet)


def _find_feet(wall: Wall, masonry: Masonry, rows: tuple[Row, ...]) -> tuple[int, int]:
    """The lowest courses at the wall's left and right end."""
    if wall.outline is None:
        return 1, 1
    laid = [(row.number, reaches_ends(find_bays(wall, masonry, row), wall.length)) for row in rows]
    left, right = (next((number for number, ends in laid if ends[side]), 1) for side in (0, 1))
    return left, right


def _runs_by_course(tracks: LaidTracks, courses: int) -> list[tuple[LaidRun, ...]]:
    found: list[list[LaidRun]] = [[] for _ in range(courses)]
    for run in tracks.runs:
        for number in range(1, courses + 1):
            if run.courses >> number & 1:
                found[number - 1].append(run)
    return [tuple(sorted(runs, key=lambda run: run.left)) for runs in found]


def _likeness(ground: _Ground, row: Row, laid: tuple[LaidRun, ...]) -> object:
    """Two courses of which this is equal are laid alike."""
    met = any(row.number in (*reach.partly, reach.lintel_course) for reach in ground.reaches)
    lead = (row.number - 1) % ground.leads.courses if ground.leads else 0
    return (
        tuple(id(run) for run in laid), row.bed, row.unit_height, row.top - row.bottom, row.number if met else 0,
        row.number in ground.wall.bond_beams, lead,
    )


def _set_course(ground: _Ground, row: Row, laid: tuple[LaidRun, ...], bays: tuple[Bay, ...]) -> _SetCourse:
    parts = find_parts(row, ground.reaches, ground.masonry)
    headings = find_headings(row, ground.reaches, parts)
    spots, shares = list[Spot](), list[Share]()
    for run in laid:
        plain = (make_bonded_spots(run, row, ground.masonry, ground.namer, (ground.wall, ground.ends)) if run.kinds
                 else make_spots(run.pieces, row, ground.namer))
        if ground.wall.outline is not None:
            plain = fit_to_bays(plain, ground.wall.outline, row, bays, ground.namer)
        layered = lay_in_layers(plain, parts, row, ground.masonry, ground.namer)
        headed = set_lintels(layered, headings)
        spots.extend(headed)
        shares.append(_share(ground, row, run, plain, headed))
    ends = ground.ends.span(row.number), ground.ends.ells(row.number)
    shaped = [*shape_spots(spots, ground.wall, ground.masonry, row, *ends),
              *make_returns(ground.ends, row, reaches_ends(bays, ground.wall.length), partial(levels_between, bays, row))]
    led = _lead_spots(ground, row, laid, shaped)
    return _SetCourse(tuple(sorted(led, key=lambda spot: (spot.rise, spot.left))), tuple(shares))


def _lead_spots(ground: _Ground, row: Row, laid: tuple[LaidRun, ...], spots: list[Spot]) -> list[Spot]:
    """The pieces with the lead that each belongs to: those of the runs at the wall's ends, and returns beside them."""
    begin, end = _ends_beside_piers(ground, row)
    first = max((run.right for run in laid if run.left == begin), default=begin)
    last = min((run.left for run in laid if run.right == end), default=end)
    gaps = sorted(ground.ends.gaps(row.number, ground.masonry.joint))
    for left, right in gaps:  # a lead goes on past a wall or pier that is tied in
        first = max((run.right for run in laid if run.left == right), default=first) if left == first else first
    for left, right in reversed(gaps):
        last = min((run.left for run in laid if run.right == left), default=last) if right == last else last
    found = []
    for spot in spots:
        span = (0 if spot.right <= first else 1, ground.wall.length if spot.left >= last else -1)
        place = (spot.left, spot.right)
        lead = None if spot.rake else find_lead(ground.leads, row.number, span, ground.wall.length, place, ground.feet)
        found.append(spot._replace(lead=lead))
    return found


def _ends_beside_piers(ground: _Ground, row: Row) -> tuple[int, int]:
    """Where the wall's own masonry begins and ends in a course: beside a pier at its end, where that is tied in."""
    begin, end = ground.ends.span(row.number)
    gaps = ground.ends.gaps(row.number, ground.masonry.joint)
    return (max((right for left, right in gaps if left <= begin), default=begin),
            min((left for left, right in gaps if right >= end), default=end))


def _share(ground: _Ground, row: Row, run: LaidRun, plain: list[Spot], spots: list[Spot]) -> Share:
    masonry = ground.masonry
    altered = [(s.left, s.length, s.rise, s.height) for s in plain] != [
        (s.left, s.length, s.rise, s.height) for s in spots]
    ripped = row.kind == "ripped" or any(spot.height not in ground.namer.heights and not spot.rake for spot in plain)
    at_least = ground.terms.least_joints(run.right - run.left + masonry.joint) + 1 if ripped else run.at_least
    return Share(run.left, run.right, count_cuts(spots, masonry), 0 if altered else at_least, altered or ripped)


@without_collecting()
def _finish(set_wall: _SetWall, job: Job, marks: Marks) -> WallLayout:
    shares: dict[Share, list[int]] = {}
    for row, course in zip(set_wall.rows, set_wall.courses, strict=True):
        for share in course.shares:
            shares.setdefault(share, []).append(row.number)
    letters = {id(course): [marks.of(spot) for spot in course.spots] for course in set_wall.courses}
    courses = tuple(
        _finish_course(row, course, letters[id(course)], set_wall)
        for row, course in zip(set_wall.rows, set_wall.courses, strict=True)
    )
    if set_wall.leads:
        courses = trim_leads(courses, set_wall.leads, set_wall.wall.length, set_wall.feet)
    joints = [run.joints for run in set_wall.tracks.runs if len(run.pieces) > 1]
    return WallLayout(
        wall=set_wall.wall, courses=courses,
        cutting=sum(share.cutting * len(numbers) for share, numbers in shares.items()),
        cutting_at_least=sum(share.at_least * len(numbers) for share, numbers in shares.items()),
        joints=(min((low for low, _ in joints), default=job.masonry.joint),
                max((high for _, high in joints), default=job.masonry.joint)),
        bed=set_wall.rows[0].bed, why=explain(shares, job.masonry, job.measure),
        settings_proven=set_wall.tracks.settings_proven, everywhere=set_wall.tracks.everywhere,
        doubtful=_is_doubtful(set_wall, job.masonry) or any(pier.bond.on_faces for pier in set_wall.piers),
        piers=finish_piers(set_wall.piers, set_wall.rows, job.masonry, marks),
    )


def _is_doubtful(set_wall: _SetWall, masonry: Masonry) -> bool:
    low, high = bed_range(masonry)
    lines = {0, *(row.top for row in set_wall.rows)}
    off_line = any(
        level not in lines for opening in set_wall.wall.openings for level in (opening.bottom, opening.top)
    )
    off_coursing = any(row.kind == "ripped" or not low <= row.bed <= high for row in set_wall.rows)
    # Runs of one-brick walls are bonded one after another, and plumb with those beside them as far as may be; courses of
    # headers after those of stretchers too, and a low wall may have none.
    spans = {(run.left, run.right) for run in set_wall.tracks.runs}
    by_runs = set_wall.one_brick and (len(spans) > 2 or masonry.stretcher_courses > 0)
    return (set_wall.tracks.broken or off_line or off_coursing or set_wall.wall.outline is not None or by_runs
            or _bears_short(set_wall.wall))


def _bears_short(wall: Wall) -> bool:
    """Whether a lintel may reach the wall's end, or another opening, before its bearing: from its jambs or between two."""
    edges = [0, wall.length, *(edge for opening in wall.openings for edge in (opening.left, opening.right))]
    return any(
        opening.left - opening.bearing < edge < opening.left or opening.right < edge < opening.right + opening.bearing
        for opening in wall.openings if opening.lintel != "none" for edge in edges
    )


def _find_top(row: Row, wall: Wall) -> int:
    """Where a course ends; the last one of a wall lower than those it is coursed with, at the wall's own top."""
    lower = wall.outline is not None and wall.height < wall.outline.coursed
    return min(row.top, wall.height) if lower else row.top


_make_piece = tuple.__new__
"""A named tuple from its fields in order, a third sooner than by their names: a million are made of a large wall."""


def _finish_course(row: Row, course: _SetCourse, letters: list[str | None], set_wall: _SetWall) -> Course:
    bottom, wall = row.bottom, set_wall.wall.name
    pieces = [
        _make_piece(Piece, (left, length, bottom + rise, height, piece, shape, mark, lead, wall, rake, notch, leaf))
        for (left, length, rise, height, piece, shape, lead, rake, notch, leaf), mark in zip(
            course.spots, letters, strict=True)
    ]
    if set_wall.ends.has_corners or set_wall.ends.crossings:
        pieces = [
            piece._replace(of=set_wall.ends.other_at(piece.left) or wall) if piece.shape == "return" else piece
            for piece in pieces
        ]
    if not set_wall.one_brick:
        return Course(row.number, bottom, _find_top(row, set_wall.wall), tuple(pieces))
    backing = tuple(find_backing(pieces))
    fronted = (piece._replace(leaf="front") if piece.shape == "stretcher" and piece.leaf is None else piece
               for piece in pieces)
    return Course(row.number, bottom, row.top, tuple(fronted), backing)
