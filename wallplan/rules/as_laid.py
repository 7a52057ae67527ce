"""The wall as laid, as numbers: an array entry a piece, rows of pieces side by side, and the gaps between them.

A course laid in one layer is one row. A course whose pieces differ in bottom or top is cut into level bands;
each band that is more than a bed high is a row of its own, and a tall piece stands in several.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from operator import attrgetter

import numpy as np
from numpy.typing import NDArray

from wallplan.layout.model import WallLayout
from wallplan.plan.job import Job, Masonry, Outline
from wallplan.rules.ground import reach_behind
from wallplan.rules.outline import Interval, cut_level, find_risers

Ints = NDArray[np.int64]
Flags = NDArray[np.bool_]

ROUNDING = 2
"""Ticks that rounding to whole ticks may put between two figures that are equal on paper."""

HEAD, OPENING, CONTROL, HOLE, OVERLAP, STEP = range(6)
"""What lies between two neighbours of a row: a head joint, an opening, a control joint, a hole, less than nothing, or the
joint over a step that is no whole course."""


@dataclass(frozen=True, eq=False)
class Rows:
    """``piece`` holds indices of pieces, row by row and left to right; row ``r`` is ``piece[start[r]:start[r + 1]]``."""

    piece: Ints
    row: Ints
    start: Ints
    bottom: Ints
    top: Ints
    course: Ints
    layered: Flags


@dataclass(frozen=True, eq=False)
class Gaps:
    """One entry for each two neighbours of a row: the row, both pieces, both edges, and what lies between."""

    row: Ints
    before: Ints
    after: Ints
    left: Ints
    right: Ints
    kind: Ints

    @cached_property
    def width(self) -> Ints:
        """Ticks between the two pieces; negative where they overlap."""
        return self.right - self.left


@dataclass(frozen=True, eq=False)
class AsLaid:
    """One wall's pieces as arrays in ticks. ``course`` and ``first`` count from 0 in the layout's order of courses."""

    job: Job
    layout: WallLayout
    left: Ints
    right: Ints
    bottom: Ints
    top: Ints
    course: Ints
    first: Ints

    @property
    def masonry(self) -> Masonry:
        """The job's masonry."""
        return self.job.masonry

    @property
    def name(self) -> str:
        """The wall's name."""
        return self.layout.wall.name

    @property
    def start(self) -> int:
        """Where the wall's body begins: behind the other wall's face at an inside corner and where it is tied through it, a
        joint inside of that face where it stops against it in every course."""
        return self._joint_beside("left") - reach_behind(self.layout.wall, "left", self.masonry.thickness)

    @property
    def end(self) -> int:
        """Where the wall's body ends, as ``start``."""
        behind = reach_behind(self.layout.wall, "right", self.masonry.thickness)
        return self.layout.wall.length + behind - self._joint_beside("right")

    def _joint_beside(self, end: str) -> int:
        ties = [one.tie for one in self.layout.wall.abuts if one.end == end]
        return self.masonry.joint if ties and ties[0] != "interlocked" else 0

    @property
    def outline(self) -> Outline | None:
        """The wall's outline, None for a rectangle."""
        return self.layout.wall.outline

    @cached_property
    def raked(self) -> Flags:
        """Which pieces are sawn to a slope. Their ``top`` is read as high as their course's."""
        pieces = (piece for course in self.layout.courses for piece in course.pieces)
        return np.fromiter((piece.rake is not None for piece in pieces), dtype=bool, count=len(self.left))

    @cached_property
    def notched(self) -> Ints:
        """How high each piece is notched from below, 0 for none. Its ``bottom`` is that of its lower part."""
        pieces = (piece for course in self.layout.courses for piece in course.pieces)
        heights = (piece.notch.height if piece.notch else 0 for piece in pieces)
        return np.fromiter(heights, dtype=np.int64, count=len(self.left))

    def cut_level(self, height: float) -> tuple[Interval, ...]:
        """Where the wall is at a height, by its outline."""
        return ((self.start, self.end),) if self.outline is None else cut_level(self.outline, self.start, self.end, height)

    @cached_property
    def beds(self) -> tuple[int, int]:
        """Thinnest and thickest bed: the plan's limits, stretched to hold the bed that the unit's own gauge leaves."""
        own = self.masonry.unit.bed_joint
        return min(self.masonry.tightest_joint, own) - ROUNDING, max(self.masonry.widest_joint, own) + ROUNDING

    @property
    def hole(self) -> int:
        """From this width and height on, a gap is no poor joint but a place where a piece is missing."""
        return 2 * max(self.masonry.widest_joint, self.masonry.joint, self.beds[1])

    @cached_property
    def rows(self) -> Rows:
        """The rows, from the footing up."""
        return _find_rows(self)

    @cached_property
    def gaps(self) -> Gaps:
        """The gaps between neighbours, row by row and left to right."""
        return _find_gaps(self)

    @cached_property
    def shape(self) -> NDArray[np.str_]:
        """The shape of each piece."""
        return self._spelt("shape")

    @cached_property
    def called(self) -> NDArray[np.str_]:
        """The name of each piece: full, half, ... cut."""
        return self._spelt("piece")

    def number(self, course: int) -> int:
        """The number that the layout gives the course at an index."""
        return self.layout.courses[course].number

    def _spelt(self, field: str) -> NDArray[np.str_]:
        pieces = (piece for course in self.layout.courses for piece in course.pieces)
        return np.fromiter(map(attrgetter(field), pieces), dtype="U16", count=len(self.left))


def measure_wall(layout: WallLayout, job: Job) -> AsLaid:
    """Read one wall's layout into arrays. A wall without pieces gives empty arrays."""
    counts = np.array([len(course.pieces) for course in layout.courses], dtype=np.int64)
    total = int(counts.sum())

    def read(field: str) -> Ints:
        pieces = (piece for course in layout.courses for piece in course.pieces)
        return np.fromiter(map(attrgetter(field), pieces), dtype=np.int64, count=total)

    left, bottom = read("left"), read("bottom")
    return AsLaid(
        job=job, layout=layout, left=left, right=left + read("length"), bottom=bottom,
        top=bottom + read("height") if layout.wall.outline is None else _read_tops(layout, total),
        course=np.repeat(np.arange(len(counts)), counts), first=np.concatenate(([0], np.cumsum(counts))),
    )


def _read_tops(layout: WallLayout, total: int) -> Ints:
    """The tops of all pieces, of raked ones that of the highest piece in their course."""
    tops = (max(other.top for other in course.pieces) if piece.rake else piece.top
            for course in layout.courses for piece in course.pieces)
    return np.fromiter(tops, dtype=np.int64, count=total)


def _find_rows(wall: AsLaid) -> Rows:
    head = wall.first[wall.course]
    uneven = (wall.bottom != wall.bottom[head]) | (wall.top != wall.top[head])
    layered = np.unique(wall.course[uneven])
    plain = np.flatnonzero(~np.isin(wall.course, layered))
    pieces, keys, levels = [plain], [wall.course[plain] * _BANDS], dict[int, tuple[int, int]]()
    for course in layered.tolist():
        for band, (low, high, members) in enumerate(_cut_bands(wall, course)):
            pieces.append(members)
            keys.append(np.full(len(members), course * _BANDS + band))
            levels[course * _BANDS + band] = (low, high)
    piece, key = np.concatenate(pieces), np.concatenate(keys)
    order = np.lexsort((wall.left[piece], key))
    piece, key = piece[order], key[order]
    unique, start, row = np.unique(key, return_index=True, return_inverse=True)
    bottom, top = wall.bottom[piece[start]], wall.top[piece[start]]
    for index in np.flatnonzero(np.isin(unique, list(levels))).tolist():
        bottom[index], top[index] = levels[int(unique[index])]
    course = unique // _BANDS
    return Rows(piece=piece, row=row, start=np.append(start, len(piece)), bottom=bottom, top=top,
                course=course, layered=np.isin(course, layered))


_BANDS = 1 << 20
"""More bands than any course has, so that course and band make one key."""


def _cut_bands(wall: AsLaid, course: int) -> list[tuple[int, int, Ints]]:
    members = np.arange(wall.first[course], wall.first[course + 1])
    bottom, top = wall.bottom[members], wall.top[members]
    levels = np.unique(np.concatenate((bottom, top))).tolist()
    bands = []
    for low, high in pairwise(levels):
        within = members[(bottom <= low) & (top >= high)]
        if high - low > wall.beds[1] and len(within):
            bands.append((low, high, within))
    return bands


def _find_gaps(wall: AsLaid) -> Gaps:
    rows = wall.rows
    beside = np.flatnonzero(rows.row[1:] == rows.row[:-1])
    row, before, after = rows.row[beside], rows.piece[beside], rows.piece[beside + 1]
    left, right = wall.right[before], wall.left[after]
    kind = np.full(len(row), HEAD)
    for opening in wall.layout.wall.openings:
        beside_it = (rows.bottom < opening.top) & (rows.top > opening.bottom)
        kind[beside_it[row] & (left < opening.right) & (right > opening.left)] = OPENING
    for place in wall.layout.wall.control_joints:
        kind[(kind == HEAD) & (left <= place) & (right >= place)] = CONTROL
    for riser in () if wall.outline is None else find_risers(wall.outline):
        courses = [wall.layout.courses[course] for course in rows.course.tolist()]
        # At a top the courses that are ripped to it are told from those that end on their line.
        least = wall.beds[1] if riser.foot else wall.masonry.unit.bed_joint // 2
        beside_it = np.array([course.bottom + wall.beds[1] < riser.high and course.top - least > riser.low
                              for course in courses], dtype=bool)
        near = (left <= riser.at + ROUNDING) & (right >= riser.at - ROUNDING)
        kind[(kind == HEAD) & near & beside_it[row]] = STEP
    kind[(kind != OPENING) & (right - left > wall.hole)] = HOLE
    kind[right < left] = OVERLAP
    return Gaps(row=row, before=before, after=after, left=left, right=right, kind=kind)
