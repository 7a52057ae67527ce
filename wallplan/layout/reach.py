"""How far each opening reaches through the courses: which it cuts whole, and which only in part."""

from __future__ import annotations

from bisect import bisect_right
from itertools import pairwise
from typing import NamedTuple

from wallplan.plan.coursing import THINNEST_RIP, Row
from wallplan.plan.job import Opening, Wall


class Reach(NamedTuple):
    """One opening against the courses.

    ``sill`` and ``head`` are its levels, put onto the course line where they are within one bed above it.
    Courses ``first`` to ``last`` are cut whole (none where first > last). ``lintel_course`` stands on the head,
    None where the opening reaches the top of the wall.
    """

    opening: Opening
    sill: int
    head: int
    first: int
    last: int
    sill_course: int | None
    head_course: int | None
    lintel_course: int | None

    @property
    def partly(self) -> tuple[int, ...]:
        """Courses that are laid in layers beside the sill or the head."""
        return tuple(sorted({number for number in (self.sill_course, self.head_course) if number is not None}))


def reach_openings(wall: Wall, rows: tuple[Row, ...]) -> tuple[Reach, ...]:
    """Measure every opening of a wall against its courses, in the wall's order."""
    return tuple(_reach(opening, rows, _find_foot(wall, opening)) for opening in wall.openings)


def _find_foot(wall: Wall, opening: Opening) -> int:
    """The highest that the footing comes under an opening."""
    if wall.outline is None:
        return 0
    places = pairwise(wall.outline.footing)
    return max(level for (left, level), (right, _) in places if left < opening.right and right > opening.left)


def _reach(opening: Opening, rows: tuple[Row, ...], foot: int) -> Reach:
    sill, sill_on = _put_on_line(opening.bottom, rows)
    if not sill_on and opening.bottom <= foot + rows[0].bed:
        # What stands on a footing off the coursing opens the whole of the course that is ripped beside it.
        sill, sill_on = next(row.bottom for row in rows if row.top > sill), True
    if not sill_on and (line := _line_under(sill, rows)) is not None:
        sill, sill_on = line, True  # the bed under the sill takes what no rip is low enough for
    head, head_on = _put_on_line(opening.top, rows)
    lines = [row.bottom for row in rows]
    first = bisect_right(lines, sill) if sill < rows[-1].top else len(rows) + 1
    first += 0 if sill_on else 1
    last = bisect_right(lines, head) - 1 if head < rows[-1].top else len(rows)
    if not head_on and (line := _line_under(head, rows)) is not None:
        # A rip no bed high is no piece: the lintel stands on the course below, and the check says how far it hangs in.
        head, head_on = line, True
    elif not head_on and rows[last].top - head < rows[last].bed + THINNEST_RIP:
        # No lintel can be ripped so thin: the head is laid at the next course line, and the check says by how much.
        head, head_on, last = rows[last].top, True, last + 1
    return Reach(
        opening, sill, head, first, last,
        sill_course=None if sill_on else first - 1,
        head_course=None if head_on else last + 1,
        lintel_course=last + 1 if last < len(rows) else None,
    )


def _line_under(level: int, rows: tuple[Row, ...]) -> int | None:
    """The course line that a level is over by no more than two beds: nothing can be ripped so low. None where it is not."""
    return next((row.bottom for row in rows if row.bottom <= level < row.top and level - row.bottom <= 2 * row.bed), None)


def _put_on_line(level: int, rows: tuple[Row, ...]) -> tuple[int, bool]:
    """A level, moved down onto the course line that it stands on or less than a bed above."""
    for row in rows:
        if row.bottom <= level <= row.bottom + row.bed:
            return row.bottom, True
        if level < row.top:
            return level, False
    return rows[-1].top, True
