"""What the page says of a course as a whole: what it takes, and how it differs from the one below."""

from __future__ import annotations

from wallplan.layout.model import Course, Piece
from wallplan.lengths import print_size
from wallplan.teaching.page.texts import name_piece
from wallplan.teaching.runs import WallRuns, is_layered


def count_pieces(runs: WallRuns, course: Course) -> str:
    """The pieces of a course by name: "11 × full block, 2 × half block". Other walls' units are not counted."""
    counted: dict[str, int] = {}
    for piece in course.pieces:
        if piece.shape != "return":
            name = _short_name(runs, piece)
            counted[name] = counted.get(name, 0) + 1
    return ", ".join(f"{count} × {name}" for name, count in counted.items())


def compare_with_below(runs: WallRuns, course: Course) -> str:
    """How a course differs from the one below it: how each begins, and the least lap between them.

    "" for course 1, and where a step leaves nothing in one of them.
    """
    below = runs.course(course.number - 1)
    if below is None or not below.pieces or not course.pieces:
        return ""
    masonry, measure = runs.job.masonry, runs.job.measure
    first, second = (_with_article(_short_name(runs, min(one.pieces, key=lambda piece: piece.left)))
                     for one in (below, course))
    corner = " At that corner the two walls run through in turn." if "end of" in first + second else ""
    told = f"From the left end, course {below.number} begins with {first}, course {course.number} with {second}.{corner}"
    laps = [abs(middle - other) for middle, other in pair_joints(runs, course)]
    if masonry.bond == "stack":
        return f"{told} Stack bond: their joints stand in line on purpose."
    if not laps:
        return told
    return (f"{told} No joint of one is nearer than {print_size(min(laps), measure)} to a joint of the other; "
            f"{print_size(masonry.least_lap, measure)} is the least that will do.")


def pair_joints(runs: WallRuns, course: Course) -> list[tuple[int, int]]:
    """The middle of each head joint and of the nearest one in the course below, ticks; [] for course 1 and in layers."""
    below = runs.course(course.number - 1)
    if below is None or is_layered(course) or is_layered(below):
        return []
    found = [(middle, runs.nearest(below.number, middle)) for middle in runs.middles[course.number - 1]]
    return [(middle, other) for middle, other in found if other is not None]


def _short_name(runs: WallRuns, piece: Piece) -> str:
    name = name_piece(piece, runs.job.masonry.unit)
    if piece.shape == "return":
        return name[:1].lower() + name[1:]
    name = name.partition(",")[0]
    return name if name.startswith("Cut") else name[:1].lower() + name[1:]


def _with_article(name: str) -> str:
    if name.startswith("Cut"):
        return f"cut{name[3:]}"
    return f"{'an' if name[0] in 'aeiou' else 'a'} {name}" if not name.startswith("end of") else f"the {name}"
