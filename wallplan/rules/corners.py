"""Corners: at each, one wall runs through and the other stops against it, in turn from course to course."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from wallplan.findings import Finding
from wallplan.layout.model import Course, Layout, Piece, WallLayout
from wallplan.lengths import print_size
from wallplan.plan.ground import join_corners
from wallplan.rules.as_laid import ROUNDING
from wallplan.rules.sources import CORNERS


@dataclass(frozen=True)
class Corner:
    """Two walls that meet: the first at its right end, the second at its left."""

    first: WallLayout
    second: WallLayout
    thickness: int
    ell_return: int | None

    def width(self, end: Piece) -> int:
        """How wide the unit that runs through returns in the other wall's elevation."""
        return self.ell_return if end.shape == "corner L" and self.ell_return else self.thickness


def check_corners(layout: Layout) -> tuple[Finding, ...]:
    """Every corner of a job: held or broken, told of the wall whose right end it is. () where no walls meet."""
    findings = []
    for corner in _find_corners(layout):
        breaks = list(_judge(corner, layout))
        findings.extend(breaks or [Finding(
            "corners", True, corner.first.wall.name, None, None,
            f"with {corner.second.wall.name}: {len(corner.first.courses)} courses in turn", "in turn", CORNERS, "",
        )])
    return tuple(findings)


def _find_corners(layout: Layout) -> Iterator[Corner]:
    masonry, walls = layout.job.masonry, layout.walls
    joined = join_corners([(wall.wall.left_end, wall.wall.right_end) for wall in walls])
    for wall, other in zip(walls, joined, strict=True):
        if other is not None:
            yield Corner(wall, walls[other], masonry.unit.thickness, masonry.unit.ell_return)


def _judge(corner: Corner, layout: Layout) -> Iterator[Finding]:
    before: str | None = None
    for one, other in zip(corner.first.courses, corner.second.courses, strict=False):
        if not (_stands(corner.first, one, corner) or _stands(corner.second, other, corner)):
            continue  # under a step of the footing, or over the eaves, nothing is laid at the corner
        through = _find_through(corner, one, other)
        if through is None:
            yield _tell(corner, one, "both walls stop, or both run through", "let one wall run through and stop the other")
        elif through == before:
            yield _tell(corner, one, f"{through} runs through in two courses running: a joint runs up the corner",
                        "let the walls run through in turn")
        yield from _judge_return(corner, layout, one, other, through)
        before = through


def _stands(wall: WallLayout, course: Course, corner: Corner) -> bool:
    """Whether a wall has anything at a corner in a course; a wall without steps and gables always should."""
    if wall.wall.outline is None:
        return True
    right, reach = wall is corner.first, corner.thickness * 5 // 4
    piece = _end_piece(course, right=right)
    if piece is None or piece.rake is not None:
        return False
    return piece.right >= wall.wall.length - reach if right else piece.left <= reach


def _find_through(corner: Corner, one: Course, other: Course) -> str | None:
    """The wall that runs through in a course, by name; None where it is neither or both."""
    first, second = _has_return(one, right=True), _has_return(other, right=False)
    if first == second:
        return None
    return corner.second.wall.name if first else corner.first.wall.name


def _end_piece(course: Course, *, right: bool) -> Piece | None:
    """The outermost piece of a course."""
    return max(course.pieces, key=lambda piece: piece.right if right else -piece.left, default=None)


def _has_return(course: Course, *, right: bool) -> bool:
    piece = _end_piece(course, right=right)
    return piece is not None and piece.shape == "return"


def _judge_return(corner: Corner, layout: Layout, one: Course, other: Course, through: str | None) -> Iterator[Finding]:
    """The unit seen end-on is the one that the other wall lays there: as high, as wide as that wall is thick."""
    if through is None:
        return
    shown, laid = (one, other) if through == corner.second.wall.name else (other, one)
    seen, end = _end_piece(shown, right=shown is one), _end_piece(laid, right=laid is one)
    if seen is None or end is None:
        return
    least = corner.thickness + layout.job.masonry.least_piece
    if end.shape == "corner L" and end.length < least - ROUNDING:
        size, wanted = (print_size(length, layout.job.measure) for length in (end.length, least))
        yield _tell(corner, one, f"the L corner unit of {through} is sawn to {size}: its tail is under the least piece",
                    f"leave it {wanted}, or turn the corner with plain units")
    if abs(seen.length - corner.width(end)) > ROUNDING or (seen.bottom, seen.height) != (end.bottom, end.height):
        size = print_size(seen.length, layout.job.measure)
        yield _tell(corner, one, f"the return of {through} is {size} wide and not as its unit",
                    f"make it {print_size(corner.width(end), layout.job.measure)} wide, as high as the unit")
    if seen.of != through:
        yield _tell(corner, one, f"the return is counted in {seen.of}", f"count it in {through}")


def _tell(corner: Corner, course: Course, figure: str, remedy: str) -> Finding:
    wall = corner.first.wall
    return Finding("corners", False, wall.name, course.number, wall.length, figure, "in turn from course to course",
                   CORNERS, remedy)
