"""The quiz of a wall: questions whose answers are counted and measured on the layout."""

from __future__ import annotations

from typing import NamedTuple

from wallplan.layout.explain import print_courses
from wallplan.layout.model import Layout, Piece, WallLayout
from wallplan.lengths import print_length, print_size
from wallplan.lists.marks import mark_wall
from wallplan.teaching.runs import read_runs
from wallplan.teaching.why_courses import measure_course_lap


class Question(NamedTuple):
    """A question, its answer, and how it is found. ``kind`` and ``figures`` (ticks, counts, course numbers) are what a test
    measures again."""

    kind: str
    text: str
    answer: str
    how: str
    figures: tuple[int, ...]


def ask_wall(layout: Layout, index: int) -> tuple[Question, ...]:
    """Questions about one wall, by its place in the plan; () for a wall without courses."""
    wall = layout.walls[index]
    if not wall.courses:
        return ()
    one_brick = layout.job.masonry.one_brick
    parts = _ask_bricks(layout, wall) if one_brick else (_ask_pieces(wall), _ask_halves(wall))
    asked = (*parts, *_ask_cuts(layout, wall), _ask_height(layout, wall),
             *_ask_mark(layout, wall), *_ask_lap(layout, index), *_ask_opening(layout, wall))
    return tuple(asked)


def _own(wall: WallLayout, number: int) -> list[Piece]:
    return [piece for piece in wall.courses[number - 1].pieces if piece.shape != "return"]


def _ask_pieces(wall: WallLayout) -> Question:
    """Of the course that has most kinds of pieces, the lowest one."""
    number = max(range(1, len(wall.courses) + 1), key=lambda number: (len({p.piece for p in _own(wall, number)}), -number))
    pieces = _own(wall, number)
    kinds = [(kind, sum(piece.piece == kind for piece in pieces)) for kind in dict.fromkeys(p.piece for p in pieces)]
    how = "Counted along the course: " + ", ".join(f"{count} {kind}" for kind, count in kinds) + "."
    return Question("pieces", f"How many pieces are laid in course {number}, halves and cuts too?", str(len(pieces)), how,
                    (number, len(pieces)))


def _ask_bricks(layout: Layout, wall: WallLayout) -> tuple[Question, ...]:
    """Of a wall one brick thick: bricks in a course, front and back; headers; closers and where they stand."""
    number = max(range(1, len(wall.courses) + 1),
                 key=lambda number: (len({p.shape for p in _own(wall, number)}), -number))
    pieces, behind = _own(wall, number), len(wall.courses[number - 1].backing)
    headers, closers, stretchers = (sum(piece.shape == shape for piece in pieces)
                                    for shape in ("header", "closer", "stretcher"))
    whole = sum(piece.shape == "closer" for course in wall.courses for piece in course.pieces)
    across = sum(piece.shape == "header" for course in wall.courses for piece in course.pieces)
    size = print_size((layout.job.masonry.module // 4) - layout.job.masonry.joint, layout.job.measure)
    return (
        Question("bricks", f"How many bricks are laid in course {number}, those behind the face and closers too?",
                 str(len(pieces) + behind), f"{headers} headers, {closers} closers, {stretchers} stretchers on the face and "
                 f"{behind} behind.", (number, len(pieces) + behind)),
        Question("headers", "How many headers go through the whole wall?", str(across) if across else "none",
                 "Counted over all courses, other walls' bricks left out.", (across,)),
        Question("closers", "How many queen closers has the whole wall, and beside what does each stand?",
                 f"{whole}, each beside a header at an end or a jamb" if whole else "none",
                 f"{size} on the face; each moves the bond a quarter brick along, so that no joint stands over another.",
                 (whole,)),
    )


def _ask_halves(wall: WallLayout) -> Question:
    courses = [course.number for course in wall.courses for piece in course.pieces
               if piece.piece == "half" and piece.shape != "return"]
    told = print_courses(list(dict.fromkeys(courses))).replace("…", "to") if courses else ""
    how = f"In {told}." if courses else "There is none in any course."
    return Question("halves", "How many half units has the whole wall?", str(len(courses)) if courses else "none", how,
                    (len(courses),))


def _ask_cuts(layout: Layout, wall: WallLayout) -> tuple[Question, ...]:
    """The size and the number of the wall's longest cut; or that nothing is cut."""
    cuts = [piece for course in wall.courses for piece in course.pieces if piece.mark]
    if not cuts:
        return (Question("no cuts", "How many pieces of this wall must be sawn?", "none",
                         "Every run is filled by full units and other stock lengths.", (0,)),)
    plain = [piece for piece in cuts if piece.rake is None and piece.notch is None]
    longest = min(plain or cuts, key=lambda piece: (len(piece.mark or ""), piece.mark))
    alike = [piece for piece in cuts if piece.mark == longest.mark]
    size, measured = print_size(longest.length, layout.job.measure), layout.job.measure
    ripped = longest.height < layout.job.masonry.unit.height
    high = f", ripped to {print_size(longest.height, measured)} high" if ripped else ""
    if longest.shape == "closer":
        return (Question("closer size", f"How wide is closer {longest.mark} on the face?", size,
                         "Half a brick's width, less half a joint: two of them and their joint are as wide as a header.",
                         (longest.length,)),)
    return (
        Question("cut size", f"How long is cut {longest.mark}?", f"{size}{high}", "See the cut's letter on the sheet.",
                 (longest.length,)),
        Question("cut count", f"How many pieces of this wall are cut {longest.mark}?", str(len(alike)),
                 "Counted over all courses.", (len(alike),)),
    )


def _ask_height(layout: Layout, wall: WallLayout) -> Question:
    number = max(1, 2 * len(wall.courses) // 3)
    top = wall.courses[number - 1].top
    return Question("height", f"How high is the top of course {number} above the datum?",
                    print_length(top, layout.job.measure), "Read on the pole; a height is never a sum of rounded ones.",
                    (number, top))


def _ask_mark(layout: Layout, wall: WallLayout) -> tuple[Question, ...]:
    odd = mark_wall(wall, layout.job.masonry.joint).odd
    if not odd:
        return ()
    return (Question("last mark", "How far from the left end does the last head joint of the odd courses begin?",
                     print_length(odd[-1].near, layout.job.measure), "The last mark of the odd courses, at its near side.",
                     (odd[-1].near,)),)


def _ask_lap(layout: Layout, index: int) -> tuple[Question, ...]:
    if layout.job.masonry.bond == "stack":
        return ()
    laps = measure_course_lap(read_runs(layout, index), 2)
    if laps is None:
        return ()
    least = print_size(layout.job.masonry.least_lap, layout.job.measure)
    return (Question("lap", "How far from the head joints of course 1 do those of course 2 stand, at the least?",
                     print_size(laps[0], layout.job.measure), f"Joint to joint, middle to middle; {least} is asked for.",
                     (laps[0],)),)


def _ask_opening(layout: Layout, wall: WallLayout) -> tuple[Question, ...]:
    """Of the first opening whose head is on a course line: how many courses stand up to it."""
    for opening in wall.wall.openings:
        count = sum(course.top <= opening.top for course in wall.courses)
        if count and wall.courses[count - 1].top == opening.top:
            return (Question("head", f"How many courses are there from the datum to the head of {opening.name}?", str(count),
                             f"The head is at {print_length(opening.top, layout.job.measure)}, the top of course {count}.",
                             (count, opening.top)),)
    return ()
