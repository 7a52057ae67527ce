"""Why a piece is as long and as high as it is: full, a stock length, cut, half-high or ripped."""

from __future__ import annotations

from wallplan.bond.bounds import fills_with_stock
from wallplan.layout.model import Piece
from wallplan.layout.tracks import bond_terms
from wallplan.lengths import print_length, print_size
from wallplan.plan.job import Opening
from wallplan.teaching.reason import Reason
from wallplan.teaching.runs import SAME, Run, WallRuns, is_layered

SAID = {"half": "Half unit", "three-quarter": "Three-quarter unit", "quarter": "Quarter unit"}
"""A stock length that is not full, in words."""


def explain_size(runs: WallRuns, number: int, piece: Piece) -> tuple[Reason, ...]:
    """Why the piece has its length and height; () for a precast lintel, which is made to measure."""
    if piece.shape == "precast":
        return ()
    return (*_name_size(runs, number, piece), *explain_height(runs, number, piece), *explain_length(runs, number, piece))


def _name_size(runs: WallRuns, number: int, piece: Piece) -> tuple[Reason, ...]:
    size = print_size(piece.length, runs.job.measure)
    run = runs.run_of(number, piece)
    if piece.piece == "full":
        return (Reason("full", f"Full unit, {size}.", (piece.length,)),)
    place = tell_place(run, piece)
    if piece.piece == "cut":
        return (Reason("cut", f"Cut {piece.mark}, {size}, {place}.", (piece.length,)),)
    return (Reason("stock length", f"{SAID[piece.piece]}, {size}, {place}.", (piece.length,)),)


def tell_place(run: Run, piece: Piece) -> str:
    """Where in its run a piece stands, in words."""
    if len(run.pieces) == 1:
        return f"all of the run from {run.start.words} to {run.end.words}"
    if piece == run.pieces[0]:
        return f"at {run.start.words}"
    if piece == run.pieces[-1]:
        return f"at {run.end.words}"
    return f"between {run.start.words} and {run.end.words}"


def explain_height(runs: WallRuns, number: int, piece: Piece) -> tuple[Reason, ...]:
    """Why a piece is lower than its unit; () for a whole one."""
    unit, course = runs.job.masonry.unit, runs.course(number)
    shaped = explain_outline(runs, number, piece)
    if shaped:
        return shaped
    if piece.height >= unit.height - SAME or course is None:
        return ()
    size = print_size(piece.height, runs.job.measure)
    made = piece.height == unit.half_high
    verb = f"Half-high unit, {size}" if made else f"Ripped to {size} high"
    met = find_level(runs, number, piece) if is_layered(course) else None
    if met is None:
        return (Reason("half-high" if made else "ripped for the height",
                       f"{verb}: the courses under and over it leave no more of the wall's height.", (piece.height,)),)
    opening, level, kind = met
    words = f"{verb}: the {kind} of {opening.name}, at {print_length(level, runs.job.measure)}, is not on a course line."
    return (Reason("half-high" if made else "ripped for an opening", words, (piece.height, level)),)


def explain_outline(runs: WallRuns, number: int, piece: Piece) -> tuple[Reason, ...]:
    """What the footing or the slope of a wall that is no rectangle asks of a piece; () for a square one on a course line."""
    course, measured, found = runs.course(number), runs.job.measure, list[Reason]()
    if piece.notch is not None:
        size = print_size(piece.notch.height, measured)
        found.append(Reason("notched", f"Notched over a step of the footing: {size} is sawn out of its underside.",
                            (piece.notch.height,)))
    elif runs.wall.wall.outline is not None and course is not None and _is_on_footing(runs, piece, course.bottom):
        words = f"Ripped to {print_size(piece.height, measured)} high: the footing under it is not on a course line."
        found.append(Reason("ripped for the footing", words, (piece.height,)))
    if piece.rake is not None:
        left, right = (print_size(max(side, 0), measured) for side in (piece.rake.left, piece.rake.right))
        found.append(Reason("raked", f"Raked: its top is sawn to the slope, {left} high at its left side and {right} at its "
                            "right.", (piece.rake.left, piece.rake.right)))
    return tuple(found)


def _is_on_footing(runs: WallRuns, piece: Piece, bottom: int) -> bool:
    """Whether a piece stands on a footing that lies inside its course, a bed over it."""
    outline = runs.wall.wall.outline
    assert outline is not None
    if piece.bottom <= bottom + runs.wall.bed + SAME:
        return False
    return any(level == piece.bottom - runs.wall.bed for _, level in outline.footing)


def find_level(runs: WallRuns, number: int, piece: Piece) -> tuple[Opening, int, str] | None:
    """The sill or head inside a course that a piece of it was ripped for: opening, level, and which; the nearest one."""
    course = runs.course(number)
    if course is None:
        return None
    found = [
        (max(opening.left - piece.right, piece.left - opening.right, 0), place, opening, level, kind)
        for place, opening in enumerate(runs.wall.wall.openings)
        for level, kind in ((opening.bottom, "sill"), (opening.top, "head")) if course.bottom < level < course.top
    ]
    return min(found)[2:] if found else None


def explain_length(runs: WallRuns, number: int, piece: Piece) -> tuple[Reason, ...]:
    """Why a piece is shorter than a full unit; () for a full one.

    A cut's run may ask for it. Then, of any piece: a full unit would fall short of the lap, or else its joint stands plumb
    with another course.
    """
    run = runs.run_of(number, piece)
    if piece.piece == "full" or any(other.shape == "precast" or other.rake for other in run.pieces):
        return ()
    closing = explain_closing(runs, run) if piece.piece == "cut" else None
    place = explain_lap_of_full(runs, number, piece) or explain_plumb(runs, number, piece)
    return tuple(reason for reason in (closing, place) if reason is not None)


def explain_closing(runs: WallRuns, run: Run) -> Reason | None:
    """What full units leave of a run that no stock lengths fill at any joint allowed; None where some do."""
    masonry, measured = runs.job.masonry, runs.job.measure
    nominal = run.right - run.left + masonry.joint
    if fills_with_stock(bond_terms(masonry), nominal):
        return None
    full, rest = divmod(nominal, masonry.module)
    left = rest - masonry.joint
    span = f"{run.start.words} to {run.end.words} is {print_length(run.right - run.left, measured)}"
    if full == 0:
        words = f"From {span}: less than a full unit, and no stock length."
    else:
        units = "1 full unit" if full == 1 else f"{full} full units"
        gap = f"{print_size(left, measured)} over" if left > 0 else "no room for a piece"
        leave = "leaves" if full == 1 else "leave"
        words = f"From {span}: {units} {leave} {gap}, and no stock lengths fill it at any joint allowed."
    return Reason("stock lengths do not fill the run", words, (run.right - run.left, full, left))


def explain_lap_of_full(runs: WallRuns, number: int, piece: Piece) -> Reason | None:
    """What lap the joint of a full unit from the same end would have; None where it would be enough, or in stack bond."""
    run, masonry = runs.run_of(number, piece), runs.job.masonry
    ends = [side for side, own in (("left", run.pieces[0]), ("right", run.pieces[-1])) if own == piece]
    if masonry.bond == "stack" or len(run.pieces) == 1 or not ends:
        return None
    reach = masonry.unit.length + masonry.joint // 2
    at = piece.left + reach if ends[0] == "left" else piece.right - reach
    if not run.left < at < run.right:
        return None
    near = [(abs(middle - at), beside) for beside in (number - 1, number + 1)
            if (middle := runs.nearest(beside, at)) is not None]
    lap, beside = min(near, default=(masonry.least_lap, 0))
    if lap >= masonry.least_lap - SAME:
        return None
    place = "in the course below" if beside < number else "in the course above"
    size, least = (print_size(ticks, runs.job.measure) for ticks in (lap, masonry.least_lap))
    short = "in line with a joint" if size.startswith("0") else f"{size} from a joint"
    return Reason("a full unit would fall short of the lap",
                  f"A full unit here would bring its joint {short} {place}; the lap must be {least} at least.",
                  (lap, beside, masonry.least_lap))


def explain_plumb(runs: WallRuns, number: int, piece: Piece) -> Reason | None:
    """Another odd (or even) course that has the piece's inner joint at the same place; None where none near it has."""
    run, joint = runs.run_of(number, piece), runs.job.masonry.joint
    sides = [at for at, own in ((piece.right + joint // 2, run.pieces[-1]), (piece.left - joint // 2, run.pieces[0]))
             if own != piece]
    for beside in (number - 2, number + 2):
        for at in sides:
            middle = runs.nearest(beside, at)
            if middle is not None and abs(middle - at) <= SAME:
                words = f"Its joint stands plumb with one of course {beside}."
                return Reason("plumb with another course", words, (beside, at))
    return None
