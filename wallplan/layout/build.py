"""Job -> Layout: every wall course by course.

In: a checked job. Out: a frozen layout, with every piece to the tick and the cutting proven.
The steps: courses from the height, openings against the courses, runs, the bond by search, then each course's
pieces with rips, lintels, shapes, leads, and the marks of what is sawn.
"""

from __future__ import annotations

from dataclasses import dataclass

from wallplan.bond.figures import Terms
from wallplan.layout.coursing import Row, bed_range, set_coursing
from wallplan.layout.explain import Share, explain
from wallplan.layout.layers import find_parts, lay_in_layers
from wallplan.layout.leads import LeadPlan, find_lead, plan_leads
from wallplan.layout.marks import Marks, give_marks
from wallplan.layout.model import Course, Layout, Piece, WallLayout
from wallplan.layout.reach import Reach, reach_openings
from wallplan.layout.runs import LaidRun, LaidTracks, lay_tracks
from wallplan.layout.shapes import find_headings, set_lintels, shape_spots
from wallplan.layout.spots import Namer, Spot, count_cuts, make_namer, make_spots
from wallplan.layout.tracks import bond_terms, pose_problem, runs_of_rows
from wallplan.plan.job import Job, Masonry, Wall


@dataclass(frozen=True)
class _Ground:
    """What all courses of a wall share while their pieces are set."""

    wall: Wall
    masonry: Masonry
    terms: Terms
    reaches: tuple[Reach, ...]
    namer: Namer
    leads: LeadPlan | None


@dataclass(frozen=True)
class _SetCourse:
    """A course's spots, and what each of its runs cuts. Courses laid alike share one."""

    spots: tuple[Spot, ...]
    shares: tuple[Share, ...]


@dataclass(frozen=True)
class _SetWall:
    """A wall with its courses set but not yet marked."""

    wall: Wall
    rows: tuple[Row, ...]
    courses: tuple[_SetCourse, ...]
    tracks: LaidTracks


def lay(job: Job) -> Layout:
    """Lay out every wall of a job. Where no layout keeps every rule, the one that breaks fewest is laid.

    Lengths in ticks. A job without walls gives a layout without walls. Raises nothing for a job that the plan room built.
    """
    walls = [_set_wall(wall, job.masonry) for wall in job.walls]
    different = {id(course): course for wall in walls for course in wall.courses}
    marks = give_marks(job, (spot for course in different.values() for spot in course.spots))
    return Layout(job, tuple(_finish(wall, job, marks) for wall in walls))


def _set_wall(wall: Wall, masonry: Masonry) -> _SetWall:
    rows = set_coursing(wall, masonry)
    reaches = reach_openings(wall, rows)
    runs = runs_of_rows(wall, masonry, rows, reaches)
    tracks = lay_tracks(pose_problem(wall, masonry, runs), masonry.joint)
    ground = _Ground(wall, masonry, bond_terms(masonry), reaches, make_namer(masonry),
                     plan_leads(wall.length, masonry.module, masonry.leads))
    known: dict[object, _SetCourse] = {}
    courses = []
    for row, laid in zip(rows, _runs_by_course(tracks, len(rows)), strict=True):
        alike = _likeness(ground, row, laid)
        if alike not in known:
            known[alike] = _set_course(ground, row, laid)
        courses.append(known[alike])
    return _SetWall(wall, rows, tuple(courses), tracks)


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


def _set_course(ground: _Ground, row: Row, laid: tuple[LaidRun, ...]) -> _SetCourse:
    parts = find_parts(row, ground.reaches, ground.masonry)
    headings = find_headings(row, ground.reaches, parts)
    spots, shares = list[Spot](), list[Share]()
    for run in laid:
        plain = make_spots(run.pieces, row, ground.namer)
        layered = lay_in_layers(plain, parts, row, ground.masonry, ground.namer)
        headed = set_lintels(layered, headings)
        spots.extend(_lead_spots(ground, row, run, headed))
        shares.append(_share(ground, row, run, plain, headed))
    beam = row.number in ground.wall.bond_beams
    shaped = shape_spots(spots, ground.wall, ground.masonry, beam)
    return _SetCourse(tuple(sorted(shaped, key=lambda spot: (spot.rise, spot.left))), tuple(shares))


def _lead_spots(ground: _Ground, row: Row, run: LaidRun, spots: list[Spot]) -> list[Spot]:
    span = (run.left, run.right)
    return [
        spot._replace(lead=find_lead(ground.leads, row.number, span, ground.wall.length, (spot.left, spot.right)))
        for spot in spots
    ]


def _share(ground: _Ground, row: Row, run: LaidRun, plain: list[Spot], spots: list[Spot]) -> Share:
    masonry = ground.masonry
    altered = [(s.left, s.length, s.rise, s.height) for s in plain] != [
        (s.left, s.length, s.rise, s.height) for s in spots]
    ripped = row.kind == "ripped" or (row.unit_height not in ground.namer.heights)
    at_least = ground.terms.least_joints(run.right - run.left + masonry.joint) + 1 if ripped else run.at_least
    return Share(run.left, run.right, count_cuts(spots, masonry), 0 if altered else at_least, altered or ripped)


def _finish(set_wall: _SetWall, job: Job, marks: Marks) -> WallLayout:
    shares: dict[Share, list[int]] = {}
    for row, course in zip(set_wall.rows, set_wall.courses, strict=True):
        for share in course.shares:
            shares.setdefault(share, []).append(row.number)
    letters = {id(course): [marks.of(spot) for spot in course.spots] for course in set_wall.courses}
    courses = tuple(
        _finish_course(row, course, letters[id(course)], set_wall.wall.name)
        for row, course in zip(set_wall.rows, set_wall.courses, strict=True)
    )
    joints = [run.joints for run in set_wall.tracks.runs if len(run.pieces) > 1]
    return WallLayout(
        wall=set_wall.wall, courses=courses,
        cutting=sum(share.cutting * len(numbers) for share, numbers in shares.items()),
        cutting_at_least=sum(share.at_least * len(numbers) for share, numbers in shares.items()),
        joints=(min((low for low, _ in joints), default=job.masonry.joint),
                max((high for _, high in joints), default=job.masonry.joint)),
        bed=set_wall.rows[0].bed, why=explain(shares, job.masonry, job.measure),
        settings_proven=set_wall.tracks.settings_proven, doubtful=_is_doubtful(set_wall, job.masonry),
    )


def _is_doubtful(set_wall: _SetWall, masonry: Masonry) -> bool:
    low, high = bed_range(masonry)
    lines = {0, *(row.top for row in set_wall.rows)}
    off_line = any(
        level not in lines for opening in set_wall.wall.openings for level in (opening.bottom, opening.top)
    )
    off_coursing = any(row.kind == "ripped" or not low <= row.bed <= high for row in set_wall.rows)
    return set_wall.tracks.broken or off_line or off_coursing


def _finish_course(row: Row, course: _SetCourse, letters: list[str | None], wall: str) -> Course:
    bottom = row.bottom
    return Course(row.number, bottom, row.top, tuple([
        Piece(left, length, bottom + rise, height, piece, shape, mark, lead, wall)
        for (left, length, rise, height, piece, shape, lead), mark in zip(course.spots, letters, strict=True)
    ]))
