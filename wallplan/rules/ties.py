"""Ties: a wall that interlocks with the one it abuts runs through it in every other course, and in no two running."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import zip_longest

from wallplan.findings import Finding
from wallplan.layout.model import Course, Layout, Piece, WallLayout
from wallplan.lengths import print_length
from wallplan.plan.job import Abutment
from wallplan.rules.as_laid import ROUNDING
from wallplan.rules.outline import cut_level
from wallplan.rules.sources import TIES

LIMIT = "tied through in every other course"


def check_ties(layout: Layout) -> tuple[Finding, ...]:
    """Every interlocked end of a job's walls: held with its courses, or each that is wrong. () where none interlock."""
    walls = {wall.wall.name: wall for wall in layout.walls}
    findings: list[Finding] = []
    for stem in layout.walls:
        for abutment in stem.wall.abuts:
            if abutment.tie == "interlocked":
                findings.extend(_check_tie(stem, walls[abutment.meets], abutment, layout))
    return tuple(findings)


def _check_tie(stem: WallLayout, main: WallLayout, abutment: Abutment, layout: Layout) -> Iterator[Finding]:
    thick, before, tied, broken, count = layout.job.masonry.unit.thickness, None, 0, False, 0
    for course, other in zip_longest(stem.courses, main.courses):
        through = course is not None and _runs_through(stem, course, abutment, thick)
        stands = (course is not None and _stands(stem, course, _place_of(stem, abutment, layout.job.masonry.joint)),
                  other is not None and _stands(main, other, (abutment.at, abutment.at + thick)))
        shown = [] if other is None else [one for one in other.pieces if one.shape == "return" and one.of == stem.wall.name]
        fits = any(abs(p.left - abutment.at) + abs(p.right - abutment.at - thick) <= ROUNDING for p in shown)
        count, tied = count + all(stands), tied + (through and all(stands))
        for figure, remedy in _judge(through, before, stands, shown, fits):
            broken = True
            yield _tell(stem, course or other, abutment, f"{figure}, wall {main.wall.name}", remedy, held=False)
        before = through if all(stands) else None
    if not broken:
        at = print_length(abutment.at, layout.job.measure)
        yield _tell(stem, None, abutment, f"{tied} of {count} courses run through {main.wall.name}, {at} from its left end",
                    "", held=True)


def _place_of(stem: WallLayout, abutment: Abutment, joint: int) -> tuple[int, int]:
    """What of the wall's own length says whether it stands at the tie: where the joint against the other wall is."""
    return (0, joint) if abutment.end == "left" else (stem.wall.length - joint, stem.wall.length)


def _stands(wall: WallLayout, course: Course, place: tuple[int, int]) -> bool:
    """Whether a wall has the whole of a place in a course, by its outline; a rectangle up to its last course."""
    if wall.wall.outline is None:
        return True
    low, high = course.bottom + wall.bed + 1, course.top - wall.bed // 2 - 1
    return all(any(span[0] <= place[0] + ROUNDING and span[1] >= place[1] - ROUNDING
                   for span in cut_level(wall.wall.outline, 0, wall.wall.length, level)) for level in (low, high))


def _runs_through(stem: WallLayout, course: Course, abutment: Abutment, thick: int) -> bool:
    """Whether the wall's own unit reaches to the far face of the other."""
    own = [piece for piece in course.pieces if piece.shape != "return"]
    if abutment.end == "left":
        return any(abs(piece.left + thick) <= ROUNDING for piece in own)
    return any(abs(piece.right - stem.wall.length - thick) <= ROUNDING for piece in own)


def _judge(through: bool, before: bool | None, stands: tuple[bool, bool], shown: list[Piece],
           fits: bool) -> Iterator[tuple[str, str]]:
    """What is wrong in a course, and what mends it. ``stands``: whether this wall and the other one have all of the tie's
    place; ``shown``: what the other one shows of this one there; ``fits``: that it is as wide."""
    if all(stands):
        if through is before:
            yield f"{'' if through else 'not '}tied in two courses running", "tie in every other course"
        if through and not fits:
            yield "runs through, but the other wall does not part for it", "leave the tie's place free there"
    if shown and not through:
        yield "stops, but the other wall parts for it", "lay the other wall through"
    elif shown and not stands[0]:
        yield "parts the other wall where not both stand", "lay the other wall through"


def _tell(stem: WallLayout, course: Course | None, abutment: Abutment, figure: str, remedy: str, *, held: bool) -> Finding:
    at = 0 if abutment.end == "left" else stem.wall.length
    number = None if course is None else course.number
    return Finding("ties", held, stem.wall.name, number, None if held else at, figure, LIMIT, TIES, remedy)
