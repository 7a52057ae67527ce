"""Corners: at each, one wall runs through and the other stops against it, in turn from course to course."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

from wallplan.findings import Finding
from wallplan.layout.model import Course, Layout, Piece, WallLayout
from wallplan.lengths import print_size
from wallplan.plan.ground import join_corners
from wallplan.rules.as_laid import ROUNDING
from wallplan.rules.outline import cut_level
from wallplan.rules.sources import CORNERS

CORNER_ENDS = ("outside corner", "inside corner")


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
    findings = list(_find_unmet(layout))
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


def _find_unmet(layout: Layout) -> Iterator[Finding]:
    """Ends that are corners and meet no wall's end of the same kind. A wall that stands for itself is not asked."""
    walls = [wall.wall for wall in layout.walls]
    joined = join_corners([(wall.left_end, wall.right_end) for wall in walls])
    met = {(index, "right", walls[other].left_end) for index, other in enumerate(joined) if other is not None}
    met |= {(other, "left", walls[index].right_end) for index, other in enumerate(joined) if other is not None}
    for index, wall in enumerate(walls if len(walls) > 1 else ()):
        for side, kind, at in (("left", wall.left_end, 0), ("right", wall.right_end, wall.length)):
            if kind in CORNER_ENDS and (index, side, kind) not in met:
                yield Finding("corners", False, wall.name, None, at, f"its {side} end, an {kind}, meets no wall",
                              f"an {kind} of another wall", CORNERS, "say which wall meets it there")


def _judge(corner: Corner, layout: Layout) -> Iterator[Finding]:
    before: str | None = None
    for number in range(max(len(corner.first.courses), len(corner.second.courses))):
        courses = [wall.courses[number] if number < len(wall.courses) else None for wall in (corner.first, corner.second)]
        one, other = courses
        if one is None or other is None:
            break  # over the lower wall the higher one's end is free
        stands = _stand(corner, one, other, layout)
        if stands[0] is stands[1] is not Part.WHOLE:
            before = None  # under a step of the footing, or over the eaves
            continue
        through = _find_through(corner, one, other, stands)
        if through is None:
            yield _tell(corner, one, "both walls stop, or both run through", "let one wall run through and stop the other")
        elif through == before and Part.NONE not in stands:
            yield _tell(corner, one, f"{through} runs through in two courses running: a joint runs up the corner",
                        "let the walls run through in turn")
        if Part.NONE not in stands:
            yield from _judge_return(corner, layout, one, other, through)
        before = None if Part.NONE in stands else through


class Part(Enum):
    """What of a corner's place in a course is a wall's, by its outline."""

    NONE = 0
    SOME = 1
    WHOLE = 2


def _stand(corner: Corner, one: Course, other: Course, layout: Layout) -> list[Part]:
    """How much of the corner each wall has in a course. A slope that comes down to it in front of a higher wall's end alone
    leaves the whole to its wall, whose units go on square into that end."""
    walls = (corner.first, one, other), (corner.second, other, one)
    stands = [_stands(wall, course, corner, beside, layout) for wall, course, beside in walls]
    if set(stands) == {Part.SOME, Part.WHOLE}:
        lower = stands.index(Part.SOME)
        wall, course, beside = walls[lower]
        stands[lower] = _stands(wall, course, corner, beside, layout, beyond=True)
    return stands


def _stands(wall: WallLayout, course: Course, corner: Corner, other: Course, layout: Layout, *,
            beyond: bool = False) -> Part:
    """How much of its corner a wall has in a course, or of what is just ``beyond`` it; the higher of the two walls' courses
    is the whole. At an inside corner they meet behind their faces."""
    outline, length, joint = wall.wall.outline, wall.wall.length, layout.job.masonry.joint
    if outline is None:
        return Part.WHOLE if course.top >= other.top - wall.bed // 2 else Part.SOME
    at_right = wall is corner.first
    inside = (wall.wall.right_end if at_right else wall.wall.left_end) == "inside corner"
    near, far = (-corner.thickness, 1 - joint) if inside else (0, corner.thickness + joint)
    near = far if beyond else near
    left, right = (length - far, length - near) if at_right else (near, far)
    low, high = course.bottom + wall.bed + 1, max(course.top, other.top) - wall.bed // 2 - 1
    found = [[span for span in cut_level(outline, -corner.thickness, length + corner.thickness, level)
              if span[0] < right - (0 if beyond else joint) and span[1] > left + (0 if beyond else joint)]
             for level in (low, high)]
    if not found[0]:
        return Part.NONE
    whole = all(any(span[0] <= left + 1 and span[1] >= right - 1 for span in spans) for spans in found)
    return Part.WHOLE if whole else Part.SOME


def _find_through(corner: Corner, one: Course, other: Course, stands: list[Part]) -> str | None:
    """The wall that runs through in a course, by name; None where it is neither or both, or not the one that must."""
    first, second = _has_return(one, right=True), _has_return(other, right=False)
    names = corner.first.wall.name, corner.second.wall.name
    if Part.NONE in stands:
        standing = 1 - stands.index(Part.NONE)
        return None if (first, second)[standing] else names[standing]
    if first == second or (stands[0] is not stands[1] and (first, second)[stands.index(Part.WHOLE)]):
        return None
    return names[1] if first else names[0]


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
