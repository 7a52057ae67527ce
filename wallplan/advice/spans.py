"""The lengths of masonry in a wall: its courses' runs, each once, with what stands at both ends and how many courses."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from wallplan.layout.corners import WallEnds, free_ends
from wallplan.layout.outline import set_rows
from wallplan.layout.reach import Reach, reach_openings
from wallplan.layout.tracks import runs_of_rows
from wallplan.plan.coursing import Row
from wallplan.plan.job import Masonry, Wall

Edge = tuple[str, int]
"""What ends a length: ("left end", 0), ("right end", 0), ("left jamb", opening), ("right jamb", opening),
("before joint", control joint) or ("after joint", control joint)."""


@dataclass(frozen=True)
class Length:
    """A length of masonry between two fixed ends, in ticks from the wall's left end, with the courses that have it.

    ``cuts_counted`` are those of them whose cutting the run by run bound counts: in a course that meets a sill or head
    in part, or that carries a precast lintel, pieces are merged or ripped, and nothing is counted.
    ``ripped`` are those of the counted ones in which every piece is ripped.
    """

    left: int
    right: int
    left_edge: Edge
    right_edge: Edge
    courses: int
    cuts_counted: int
    ripped: int

    @property
    def size(self) -> int:
        """From end to end, in ticks."""
        return self.right - self.left


def bond_step(masonry: Masonry) -> int:
    """What lengths are to be a multiple of, with a joint: half a module in half bond, a third in third bond, and so on."""
    return masonry.ideal_lap or masonry.module


def find_lengths(wall: Wall, masonry: Masonry, ends: WallEnds | None = None) -> tuple[Length, ...]:
    """Every length of a wall, from left to right, the shorter first; a wall without openings has one for each panel.

    What ends at a step is left out: the step is the footing's. ``ends`` are the wall's where it meets others; left out, both
    are free.
    """
    rows = set_rows(wall, masonry)
    reaches = reach_openings(wall, rows)
    merged = {number for reach in reaches for number in merging_courses(reach)}
    lefts, rights = _edges(wall, masonry, ends or free_ends(wall))
    found: dict[tuple[int, int], list[Row]] = {}
    for row, spans in zip(rows, runs_of_rows(wall, masonry, rows, reaches, ends), strict=True):
        for span in spans:
            found.setdefault((span.left, span.right), []).append(row)
    return tuple(_count(span, lefts[span[0]], rights[span[1]], found[span], merged, masonry) for span in sorted(found)
                 if span[0] in lefts and span[1] in rights)


def merging_courses(reach: Reach) -> Iterator[int]:
    """Courses in which pieces are merged or ripped beside an opening; none where it lies on the coursing."""
    yield from reach.partly
    if reach.opening.lintel == "precast" and reach.lintel_course is not None:
        yield reach.lintel_course


def _edges(wall: Wall, masonry: Masonry, ends: WallEnds) -> tuple[dict[int, Edge], dict[int, Edge]]:
    """What a length that begins, and one that ends, at a place stands against."""
    lefts: dict[int, Edge] = dict.fromkeys(ends.left.at, ("left end", 0))
    rights: dict[int, Edge] = dict.fromkeys(ends.right.at, ("right end", 0))
    for number, opening in enumerate(wall.openings):
        lefts.setdefault(opening.right, ("right jamb", number))
        rights.setdefault(opening.left, ("left jamb", number))
    for number, centre in enumerate(wall.control_joints):
        start = centre - masonry.joint // 2
        rights.setdefault(start, ("before joint", number))
        lefts.setdefault(start + masonry.joint, ("after joint", number))
    return lefts, rights


def _count(span: tuple[int, int], left: Edge, right: Edge, rows: list[Row], merged: set[int], masonry: Masonry) -> Length:
    unit = masonry.unit
    counted = [row for row in rows if row.number not in merged]
    ripped = [row for row in counted if row.kind == "ripped" or row.unit_height not in (unit.height, unit.half_high)]
    return Length(*span, left, right, len(rows), len(counted), len(ripped))


def count_rips(wall: Wall, masonry: Masonry) -> int:
    """The least number of pieces ripped under sills and over heads that miss the coursing.

    Of each such level, as many pieces as the opening's width takes; none where a half-high unit or a bed may meet it,
    over a precast lintel, or where two openings share the course. A lower bound, found without laying anything.
    """
    rows = set_rows(wall, masonry)
    reaches = reach_openings(wall, rows)
    met = [number for reach in reaches for number in reach.partly]
    rips = 0
    for reach in reaches:
        levels = {reach.sill_course: reach.sill, reach.head_course: reach.head}
        if reach.opening.lintel == "precast":
            levels = {reach.sill_course: reach.sill}
        for number, level in levels.items():
            if number is not None and met.count(number) == 1 and _rips(level, rows[number - 1], masonry):
                rips += _count_across(reach.opening.right - reach.opening.left, masonry)
    return rips


def _rips(level: int, row: Row, masonry: Masonry) -> bool:
    """Whether a level in a course is certain to be met by rips."""
    up, half = level - row.bottom, masonry.unit.half_high
    fitting = () if half is None else (row.bed + half, row.top - row.bottom - row.bed - half)
    if any(up - row.bed <= fit <= up for fit in fitting):
        return False
    return up > 3 * row.bed and row.top - level > 2 * row.bed


def _count_across(width: int, masonry: Masonry) -> int:
    """The fewest pieces that can lie over a width."""
    longest = masonry.unit.length + masonry.widest_joint
    return max(1, -(-(width - 2 * masonry.widest_joint) // longest))
