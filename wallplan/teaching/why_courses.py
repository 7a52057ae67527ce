"""Why a course is laid as it is: what it begins and ends with, its lap, what is cut, and what stands in it or on it."""

from __future__ import annotations

from collections.abc import Iterator

from wallplan.layout.model import Piece
from wallplan.lengths import print_length, print_size
from wallplan.teaching.reason import Reason
from wallplan.teaching.runs import SAME, Run, WallRuns, is_layered
from wallplan.teaching.why_bond import explain_joints
from wallplan.teaching.why_headers import explain_courses_bricks
from wallplan.teaching.why_shapes import explain_shape
from wallplan.teaching.why_sizes import SAID, explain_height, explain_length, tell_place


def explain_course(runs: WallRuns, number: int) -> tuple[Reason, ...]:
    """The reasons of a course, what matters most first, none twice. IndexError for a number that the wall has not."""
    parts = (explain_courses_bricks(runs, number) if runs.job.masonry.one_brick else tuple(_explain_parts(runs, number)))
    found = (
        *_explain_lap(runs, number), *parts, *_explain_openings(runs, number),
        *_explain_special(runs, number), *_explain_run_joints(runs, number),
    )
    return tuple(dict.fromkeys(found))


def measure_course_lap(runs: WallRuns, number: int) -> tuple[int, int] | None:
    """The least and the most distance from a course's joints to the nearest ones below, ticks.

    None for course 1, for courses without joints, and beside courses laid in layers.
    """
    below, course = runs.course(number - 1), runs.course(number)
    if below is None or course is None or is_layered(below) or is_layered(course):
        return None
    found = [(middle, runs.nearest(number - 1, middle)) for middle in runs.middles[number - 1]]
    laps = [abs(middle - other) for middle, other in found if other is not None]
    return (min(laps), max(laps)) if laps else None


def _explain_lap(runs: WallRuns, number: int) -> Iterator[Reason]:
    if number == 1:
        yield Reason("first course", "The first course decides all others: lay it dry, mark every joint, then lift it.")
        return
    laps, masonry = measure_course_lap(runs, number), runs.job.masonry
    if laps is None:
        return
    if masonry.bond == "stack":
        yield Reason("stack", f"Stack bond: its joints stand in line with those of course {number - 1}.")
        return
    low, least = (print_size(ticks, runs.job.measure) for ticks in (laps[0], masonry.least_lap))
    more = "" if laps[1] - laps[0] <= SAME else " or more"
    words = f"Its head joints stand {low}{more} from those of course {number - 1}; the lap must be {least} at least."
    yield Reason("lap of the course", words, (*laps, number - 1))


def _explain_parts(runs: WallRuns, number: int) -> Iterator[Reason]:
    """Pieces shorter than full, those with the same name and reasons in one sentence, with how many they are."""
    groups: dict[tuple[str, tuple[Reason, ...]], list[str]] = {}
    for run in runs.runs[number - 1]:
        for piece in run.pieces:
            if piece.piece != "full" and piece.shape != "precast":
                why = (*explain_height(runs, number, piece), *explain_length(runs, number, piece))
                groups.setdefault((_name(runs, piece), why), []).append(tell_place(run, piece))
    for (name, why), places in groups.items():
        kind = "cut" if name.startswith("Cut") else "stock length"
        words = f"{name}, {_list(places)}. {' '.join(reason.words for reason in why)}".rstrip()
        yield Reason("cut" if kind == "cut" else "stock length", words, (len(places),))


def _list(places: list[str]) -> str:
    """Places in words, none twice: at A, at B and at C."""
    *first, last = dict.fromkeys(places)
    return f"{', '.join(first)} and {last}" if first else last


def _name(runs: WallRuns, piece: Piece) -> str:
    size = print_size(piece.length, runs.job.measure)
    return f"Cut {piece.mark}, {size}" if piece.piece == "cut" else f"{SAID[piece.piece]}, {size}"


def _explain_openings(runs: WallRuns, number: int) -> Iterator[Reason]:
    course, measured, bed = runs.course(number), runs.job.measure, max(runs.wall.bed, 0)
    for opening in runs.wall.wall.openings if course is not None else ():
        assert course is not None
        left, right = (print_length(side, measured) for side in (opening.left, opening.right))
        if opening.bottom < course.top and opening.top > course.bottom + bed:
            yield Reason("jambs", f"{opening.name} stops the course from {left} to {right}.", (opening.left, opening.right))
        if course.top <= opening.bottom <= course.top + bed:
            yield Reason("sill", f"The sill of {opening.name} stands on this course, {left} to {right}.",
                         (opening.left, opening.right))
        if opening.lintel == "steel" and course.bottom - SAME <= opening.top <= course.bottom + bed:
            bearing = print_size(opening.bearing, measured)
            yield Reason("head", f"A steel lintel carries this course over {opening.name}, with a bearing of {bearing} on "
                         "either side.", (opening.bearing,))


def _explain_special(runs: WallRuns, number: int) -> Iterator[Reason]:
    """Lintels, bond beams, corners and control joints of a course."""
    course = runs.course(number)
    for piece in course.pieces if course is not None else ():
        if piece.shape in ("lintel", "precast", "return"):
            yield from explain_shape(runs, number, piece)
    if number in runs.wall.wall.bond_beams:
        yield Reason("bond beam course",
                     "A bond-beam course: bars and grout run its whole length, as the designer gives them.")
    for place in runs.wall.wall.control_joints:
        yield Reason("control joint", f"The control joint at {print_length(place, runs.job.measure)} goes straight through.",
                     (place,))


def _explain_run_joints(runs: WallRuns, number: int) -> Iterator[Reason]:
    for run in _plain_runs(runs, number):
        reason = explain_joints(runs, run)
        if reason is not None:
            yield reason


def _plain_runs(runs: WallRuns, number: int) -> tuple[Run, ...]:
    return tuple(run for run in runs.runs[number - 1] if len(run.pieces) > 1)
