"""Ties: a wall that interlocks with the one it abuts runs through it in every other course, and in no two running."""

from __future__ import annotations

from collections.abc import Iterator

from wallplan.findings import Finding
from wallplan.layout.model import Course, Layout, WallLayout
from wallplan.lengths import print_length
from wallplan.plan.job import Abutment
from wallplan.rules.as_laid import ROUNDING
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
    thick, before, tied, broken = layout.job.masonry.unit.thickness, None, 0, False
    for course, other in zip(stem.courses, main.courses, strict=False):
        through = _runs_through(stem, course, abutment, thick)
        shown = [piece for piece in other.pieces if piece.shape == "return" and piece.of == stem.wall.name]
        tied += through
        fits = any(abs(p.left - abutment.at) + abs(p.right - abutment.at - thick) <= ROUNDING for p in shown)
        for figure, remedy in _judge(through, before, bool(shown), fits):
            broken = True
            yield _tell(stem, course, abutment, f"{figure}, wall {main.wall.name}", remedy, held=False)
        before = through
    if not broken:
        at = print_length(abutment.at, layout.job.measure)
        yield _tell(stem, None, abutment, f"{tied} of {len(stem.courses)} courses run through {main.wall.name}, {at} from "
                    "its left end", "", held=True)


def _runs_through(stem: WallLayout, course: Course, abutment: Abutment, thick: int) -> bool:
    """Whether the wall's own unit reaches to the far face of the other."""
    own = [piece for piece in course.pieces if piece.shape != "return"]
    if abutment.end == "left":
        return any(abs(piece.left + thick) <= ROUNDING for piece in own)
    return any(abs(piece.right - stem.wall.length - thick) <= ROUNDING for piece in own)


def _judge(through: bool, before: bool | None, parts: bool, fits: bool) -> Iterator[tuple[str, str]]:
    """What is wrong in a course, and what mends it: ``parts`` says whether the other wall shows this one's end."""
    if through == before:
        yield ("tied in two courses running" if through else "not tied in two courses running", "tie in every other course")
    if through and not fits:
        yield "runs through, but the other wall does not part for it", "leave the tie's place free there"
    if parts and not through:
        yield "stops, but the other wall parts for it", "lay the other wall through"


def _tell(stem: WallLayout, course: Course | None, abutment: Abutment, figure: str, remedy: str, *, held: bool) -> Finding:
    at = 0 if abutment.end == "left" else stem.wall.length
    number = None if course is None else course.number
    return Finding("ties", held, stem.wall.name, number, None if held else at, figure, LIMIT, TIES, remedy)
